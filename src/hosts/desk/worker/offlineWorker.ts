/**
 * Keeps a release of the static folder in the browser, whole or not at all, and
 * hands it out: with no network, from a slow server, and though the server has
 * another one by now. Which release pages get is written down apart from the
 * workers' own coming and going: a browser wakes a new worker once all windows
 * are closed, asked or not, and that must not change what an office works with.
 */
import type { Asked, NotKept, Release, Which } from "./release";

type Answer = Awaited<ReturnType<typeof fetch>>;

/** Of the browser's types for such workers, which exclude those for pages, what is used here. */
interface Window {
  readonly url: string;
  postMessage(message: unknown): void;
}
interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Messaged extends Waiting {
  readonly data: unknown;
  readonly ports: readonly MessagePort[];
}
interface Worker {
  readonly registration: {
    readonly scope: string;
    /** Of workers, only that there is one is of interest here. */
    readonly installing: object | null;
    readonly waiting: object | null;
    readonly active: object | null;
  };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(which: object): Promise<readonly Window[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(name: "install" | "activate", listener: (event: Waiting) => void): void;
  addEventListener(name: "fetch", listener: (event: Fetching) => void): void;
  addEventListener(name: "message", listener: (event: Messaged) => void): void;
  /** Put before this script by the build. */
  readonly rigsheetRelease: Release;
}

const worker = self as unknown as Worker;
const { edition, version, files, packs, later } = worker.rigsheetRelease;
const { scope } = worker.registration;

/** An address may hold several folders like this one, each with caches of its own. */
const PREFIX = `rigsheet ${scope} `;
const cacheOf = (release: string): string => `${PREFIX}${release}`;
/** Holds one thing: which release is handed out. */
const POINTER = `${PREFIX}pointer`;
const HASH = "x-sha256";
const PAGE = "index.html";
/** A phone's network and a busy server break off now and then. */
const TRIES = 3;
const BETWEEN_TRIES_MS = 500;
const SERVER_FAILS = 500;
/** What servers send in the place of a file that they lack, whatever they call it. */
const OTHER_PAGE = /^\s*<(?:!doctype html|html)\b/i;
const HEAD_BYTES = 200;
/** Needs its own office program and network; kept by neither. */
const ADD_IN = "addin/";
const ABROAD = /^(?:addin|help)\//;

const TYPES: Readonly<Record<string, string>> = {
  html: "text/html; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
  txt: "text/plain; charset=utf-8",
  xml: "application/xml; charset=utf-8",
  svg: "image/svg+xml",
  png: "image/png",
  woff2: "font/woff2",
  woff: "font/woff",
  ttf: "font/ttf",
  wasm: "application/wasm",
  webmanifest: "application/manifest+json",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

worker.addEventListener("install", (event) => event.waitUntil(keep()));
worker.addEventListener("activate", (event) => event.waitUntil(begin()));
worker.addEventListener("message", (event) => {
  const asked = (event.data as { rigsheet?: Asked } | null)?.rigsheet;
  if (asked) event.waitUntil(answered(asked).then((answer) => event.ports[0]?.postMessage(answer)));
});
worker.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  const name = nameOf(url);
  if (method === "GET" && name !== undefined && !name.startsWith(ADD_IN))
    event.respondWith(handedOut(name, event.request));
});

/** @returns the file that an address means; undefined outside of the folder */
function nameOf(url: string): string | undefined {
  const { origin, pathname } = new URL(url);
  const place = `${origin}${pathname}`;
  if (!place.startsWith(scope)) return undefined;
  const name = decodeURIComponent(place.slice(scope.length));
  return name === "" || name.endsWith("/") ? `${name}${PAGE}` : name;
}

/** Fetches what is not here yet. A server may send anything under any name: each file is known by its content. */
async function keep(): Promise<void> {
  const cache = await caches.open(cacheOf(edition));
  const before = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== POINTER);
  try {
    for (const [name, hash] of Object.entries(files)) {
      const known = hash === null ? undefined : await foundIn(before, name, hash);
      const file = known ?? (await fetched(name, hash));
      for (const [held, text] of await heldIn(name, file))
        await cache.put(keyOf(held), new Response(text, { headers: { "Content-Type": typeOf(held) } }));
      await cache.put(keyOf(name), file);
    }
    if (!(await isWhole())) throw new Error("the browser threw some of it away again.");
  } catch (error) {
    const current = await pointer();
    if (current !== edition) await caches.delete(cacheOf(edition));
    const told: NotKept = { notKept: inWords(error), isFirst: current === undefined };
    for (const window of await worker.clients.matchAll({ type: "window", includeUncontrolled: true }))
      window.postMessage(told);
    throw error;
  }
}

/** What does not come now is asked for again by the next page that starts, and by whoever prints. */
async function keepLater(): Promise<void> {
  const cache = await caches.open(cacheOf(edition));
  const before = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== POINTER);
  for (const [name, hash] of Object.entries(later))
    await foundIn(before, name, hash)
      .then(async (known) => cache.put(keyOf(name), known ?? (await fetched(name, hash))))
      .catch(() => undefined);
}

const inWords = (error: unknown): string =>
  error instanceof DOMException && error.name === "QuotaExceededError"
    ? "the browser has no more room for it."
    : error instanceof Error
      ? error.message
      : String(error);

const isKept = (): Promise<boolean> =>
  keep().then(
    () => true,
    () => false,
  );

/** Every file of this release is here. */
async function isWhole(): Promise<boolean> {
  if (!(await caches.has(cacheOf(edition)))) return false;
  const held = new Set((await (await caches.open(cacheOf(edition))).keys()).map(({ url }) => url));
  return Object.keys(files).every((name) => held.has(keyOf(name)));
}

const keyOf = (name: string): string => new URL(encodeURI(name), scope).href;

async function foundIn(
  caches_: readonly string[],
  name: string,
  hash: string,
): Promise<Response | undefined> {
  for (const one of caches_) {
    const found = await (await caches.open(one)).match(keyOf(name));
    if (found?.headers.get(HASH) === hash) return found;
  }
  return undefined;
}

async function fetched(name: string, hash: string | null): Promise<Response> {
  for (let tries = 1; ; tries++)
    try {
      return await fetchedOnce(name, hash);
    } catch (error) {
      if (!(error instanceof BrokenOff)) throw error;
      if (tries === TRIES) throw new Error(error.message);
      await new Promise((resolve) => setTimeout(resolve, BETWEEN_TRIES_MS));
    }
}

/** May be better in a moment. */
class BrokenOff extends Error {}

async function fetchedOnce(name: string, hash: string | null): Promise<Response> {
  if (hash === null) {
    const [answer, bytes] = await read(name, "no-cache");
    const head = new TextDecoder().decode(bytes.slice(0, HEAD_BYTES));
    const isPage = /html/i.test(answer.headers.get("Content-Type") ?? "") || OTHER_PAGE.test(head);
    if (bytes.byteLength === 0 || isPage) throw new Error(somethingElse(name));
    return new Response(bytes, { headers: { "Content-Type": typeOf(name) } });
  }
  const headers = { "Content-Type": typeOf(name), [HASH]: hash };
  // What the page has fetched itself is not fetched twice where its content proves it; a cache may hold a failure too.
  const [, known] = await read(name, "force-cache").catch(() => [undefined, undefined]);
  if (known && hash === (await sha256(known))) return new Response(known, { headers });
  const [, bytes] = await read(name, "no-store");
  if (hash !== (await sha256(bytes))) throw new Error(somethingElse(name));
  return new Response(bytes, { headers });
}

const somethingElse = (name: string): string =>
  `the server sends something else for ${name} than this release has there. The folder may be half copied, or the server answers with another page.`;

async function read(name: string, cache: RequestCache): Promise<[Answer, ArrayBuffer]> {
  try {
    const answer = await fetch(keyOf(name), { cache, credentials: "same-origin" });
    if (answer.status >= SERVER_FAILS)
      throw new BrokenOff(`the server answers ${answer.status} for ${name}.`);
    if (!answer.ok) throw new Error(`the server answers ${answer.status} for ${name}.`);
    return [answer, await answer.arrayBuffer()];
  } catch (error) {
    // So does a browser call what the network did.
    if (!(error instanceof TypeError) && !(error instanceof DOMException)) throw error;
    throw new BrokenOff(`${name} could not be fetched: the network or the server broke off.`);
  }
}

async function heldIn(name: string, file: Response): Promise<[string, string][]> {
  const under = packs[name];
  if (under === undefined) return [];
  const plain = file.clone().body!.pipeThrough(new DecompressionStream("gzip"));
  const held = (await new Response(plain).json()) as Readonly<Record<string, string>>;
  return Object.entries(held).map(([one, text]) => [`${under}${one}`, text]);
}

async function sha256(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

const typeOf = (name: string): string =>
  TYPES[name.slice(name.lastIndexOf(".") + 1)] ?? "application/octet-stream";

/** The first release that is kept here is handed out at once; another only when it is asked for. */
async function begin(): Promise<void> {
  if ((await pointer()) !== undefined) return;
  await point();
  await worker.clients.claim();
}

async function pointer(): Promise<string | undefined> {
  const found = await (await caches.open(POINTER)).match(scope);
  const release = await found?.text();
  return release !== undefined && (await caches.has(cacheOf(release))) ? release : undefined;
}

const point = async (): Promise<void> => (await caches.open(POINTER)).put(scope, new Response(edition));

async function handedOut(name: string, request: Request): Promise<Response> {
  const current = await pointer();
  const found =
    (current !== undefined && (await (await caches.open(cacheOf(current))).match(keyOf(name)))) ||
    // A page of a release before this one goes on with its own parts, whose names no other release has.
    (await anywhere(name));
  return found || fetch(request);
}

async function anywhere(name: string): Promise<Response | undefined> {
  for (const one of await caches.keys()) {
    if (!one.startsWith(PREFIX) || one === POINTER) continue;
    const found = await (await caches.open(one)).match(keyOf(name));
    if (found) return found;
  }
  return undefined;
}

async function answered(asked: Asked): Promise<Which> {
  const desks = (await worker.clients.matchAll({ type: "window", includeUncontrolled: true })).filter(
    ({ url }) => {
      const name = nameOf(url);
      return name !== undefined && !ABROAD.test(name);
    },
  );
  // Browsers may throw it away while it waits.
  if (asked === "use" && desks.length <= 1 && ((await isWhole()) || (await isKept()))) {
    await point();
    await worker.skipWaiting();
  }
  const current = await pointer();
  if (asked === "later" && (current ?? edition) === edition) await keepLater();
  const { installing, waiting, active } = worker.registration;
  // What another worker fetches or holds ready is no page's yet, and known to that one only.
  if (asked === "tidy" && desks.length <= 1 && !installing && !(waiting && active))
    for (const one of await caches.keys())
      if (one.startsWith(PREFIX) && ![POINTER, cacheOf(edition), cacheOf(current ?? edition)].includes(one))
        await caches.delete(one);
  return { edition, version, current, windows: desks.length };
}
