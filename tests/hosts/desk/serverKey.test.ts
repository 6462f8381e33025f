/** The desk's key: without it nothing is told, and nobody but the owner of the folder can read it. */
import { createHmac } from "node:crypto";
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import path from "node:path";
import { DESK_HEADER, KEY, KEY_HEADER, type Start } from "../../../src/hosts/desk/protocol";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { sampleBook } from "../../support/books";
import { ask, askJson, BUILD_MS, buildDesk, freePort, keyOf, sentenceOf, startDesk, write } from "./desk";
import { change, edit, filesIn, lineOf, newId, ownDesk, post, put, shelf } from "./ownDesk";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

const server = path.join(__dirname, "../../../src/hosts/desk/server");
const casesIn = (file: string): string[] =>
  [...readFileSync(path.join(server, file), "utf8").matchAll(/case "((?:GET|PUT|POST|DELETE) [^"]*)"/g)].map(
    ([, route]) => route!,
  );

/** The page, its files and its sign of life hold nothing of a job's; the page brings the key with all else. */
const OPEN = new Set(["GET /", "GET /icon.svg", "GET /favicon.ico"]);

/** Every address that the sources of the server name, so that none which is added is forgotten. */
const routesFor = (id: string): [method: string, url: string][] => [
  ...casesIn("serve.ts")
    .filter((route) => !OPEN.has(route))
    .map((route) => route.split(" ") as [string, string]),
  ...casesIn("jobRoutes.ts").map((route): [string, string] => {
    const [method = "", what = ""] = route.split(" ");
    return [method, `/jobs/${id}${what && `/${what.replace("/N", "/1")}`}`];
  }),
  ["GET", `/export?job=${id}`],
  ["GET", `/jobs/${id}?look`],
  ["POST", "/given"],
  ["GET", "/once"],
  ["HEAD", "/jobs"],
  ["GET", "/nothing"],
  ["OPTIONS", "/jobs"],
];

const asked = (
  address: string,
  [method, url]: readonly [string, string],
  headers: Record<string, string> = {},
): Promise<Response> =>
  fetch(new URL(url, address), { method, headers: { [DESK_HEADER]: "1", ...headers }, redirect: "manual" });

const wrongKeyOf = (address: string): string =>
  [...keyOf(address)[KEY_HEADER]!].map((letter) => (letter === "A" ? "B" : "A")).join("");

const SAID = /^This desk is opened by the whole address that Rigsheet printed/;

test("without the key every address but the page, its files and the sign of life is refused, with one sentence", async () => {
  const { address } = await desk.start();
  const id = newId();
  await put(address, id, "r1", { line: lineOf("Hill Lane") });
  const routes = routesFor(id);
  expect(routes.map((route) => route.join(" "))).toEqual(
    expect.arrayContaining(["GET /start", "GET /jobs", `DELETE /jobs/${id}`, `PUT /jobs/${id}/file`]),
  );
  expect(routes.length).toBeGreaterThan(24);
  const wrong = wrongKeyOf(address);
  for (const route of routes)
    for (const headers of <Record<string, string>[]>[
      {},
      { [KEY_HEADER]: wrong },
      { [KEY_HEADER]: "" },
      { Cookie: `rigsheet=${keyOf(address)[KEY_HEADER]}` },
    ]) {
      const answer = await asked(address, route, headers);
      expect([route, answer.status]).toEqual([route, 403]);
      const text = await answer.text();
      if (route[0] !== "HEAD") expect((JSON.parse(text) as { sentence: string }).sentence).toMatch(SAID);
    }
  // A key in the address is the page's matter, and opens nothing by itself.
  expect((await asked(address, ["GET", `/jobs?${KEY}=${keyOf(address)[KEY_HEADER]}`])).status).toBe(403);
  for (const url of ["/", "/alive", "/icon.svg", "/favicon.ico", "/desk.js", "/help/", "/library/owl.js"])
    expect([url, (await asked(address, ["GET", url])).status]).toEqual([url, 200]);
  // Not one of them did anything.
  expect((await shelf(address)).jobs).toMatchObject([{ id, away: false, state: "draft", revisions: [] }]);
});

test("a refusal tells nobody which jobs there are", async () => {
  const { address } = await desk.start();
  const [there, never] = [newId(), newId()];
  await put(address, there, "r1", { line: lineOf("Hill Lane") });
  for (const rest of ["", "?look", "/file", "/revisions/1", "/changes?after=r1"])
    expect(await (await asked(address, ["GET", `/jobs/${there}${rest}`])).text()).toBe(
      await (await asked(address, ["GET", `/jobs/${never}${rest}`])).text(),
    );
  const files = await Promise.all(
    [there, never].map(async (id) => (await asked(address, ["GET", `/export?job=${id}`])).text()),
  );
  expect(files[0]).toBe(files[1]);
  // Nor does what is open to all.
  for (const url of ["/", "/alive", "/alive?ask=x", "/alive?page&ask=x", "/icon.svg", "/desk.js"]) {
    const text = await (await asked(address, ["GET", url])).text();
    for (const secret of [there, "Hill Lane", keyOf(address)[KEY_HEADER]!, desk.folder])
      expect(text).not.toContain(secret);
  }
});

describe("the address with the key", () => {
  test("a word that stands for the key is good once, and only the owner can ask for one", async () => {
    const { address } = await desk.start();
    const word = await askJson<string>(address, "once");
    expect(word).not.toBe(keyOf(address)[KEY_HEADER]);
    const used = (): Promise<Response> =>
      fetch(new URL("once", address), {
        method: "POST",
        body: JSON.stringify(word),
        headers: { [DESK_HEADER]: "1" },
      });
    const first = await used();
    expect([first.status, await first.json()]).toEqual([200, keyOf(address)[KEY_HEADER]]);
    expect((await used()).status).toBe(403);
    expect((await asked(address, ["GET", "/once"])).status).toBe(403);
    // No cookie: a browser would hand it to every port of the address.
    expect(first.headers.get("set-cookie")).toBeNull();
  });
});

describe("what lies on the disk", () => {
  const keyFile = (): string => path.join(desk.folder, "desk.key");

  (process.platform === "win32" ? test.skip : test)(
    "the folder and every file in it are their owner's alone (not on Windows, whose files have no such bits)",
    async () => {
      const data = path.join(desk.folder, "made", "here");
      const book = sampleBook();
      const file = path.join(desk.folder, "job.xlsx");
      writeFileSync(file, await writeXlsx(book), { mode: 0o644 });
      const started = await startDesk("--data", data, "--port", String(await freePort()), file);
      try {
        const { address } = started;
        const { given } = await askJson<Start>(address, "start");
        const id = newId();
        await put(address, id, "r1", { given: given!.number });
        await edit(address, id, change("r1", "r2"));
        await post(address, `jobs/${id}/revisions`, { why: "kept" });
        writeFileSync(file, await writeXlsx({ ...book, title: "theirs" }));
        expect((await write(address, `jobs/${id}/file?over`, "PUT", JSON.stringify(book))).status).toBe(200);
        const modes = filesIn(data).map((one) => [path.relative(data, one), statSync(one).mode & 0o077]);
        expect(modes.length).toBeGreaterThan(5);
        expect(modes.map(([name]) => String(name))).toEqual(
          expect.arrayContaining(["desk.key", "desk.lock", expect.stringMatching(/^replaced\//)]),
        );
        expect(modes.filter(([, others]) => others !== 0)).toEqual([]);
        expect(statSync(path.join(data, "desk.key")).mode & 0o777).toBe(0o600);
        for (const folder of [data, path.dirname(data), path.join(data, "replaced")])
          expect(statSync(folder).mode & 0o777).toBe(0o700);
      } finally {
        await started.kill();
      }
    },
  );

  test("the key is the same after a restart, another after its file was damaged, and then the old one opens nothing", async () => {
    const first = await desk.start();
    await first.kill();
    const second = await desk.start();
    expect(keyOf(second.address)).toEqual(keyOf(first.address));
    const { shelf: name } = await askJson<Start>(second.address, "start");
    await second.kill();
    writeFileSync(keyFile(), "short");
    const third = await desk.start();
    expect(keyOf(third.address)).not.toEqual(keyOf(first.address));
    expect(keyOf(third.address)[KEY_HEADER]).toMatch(/^[\w-]{32}$/);
    expect((await asked(third.address, ["GET", "/jobs"], keyOf(first.address))).status).toBe(403);
    expect((await askJson<Start>(third.address, "start")).shelf).not.toBe(name);
  });
});

/**
 * Another account can ask for the sign of life, and can listen at the port once
 * the desk was killed. What it learned must not make it look like the desk: the
 * next start would hand the key to it.
 */
test("a program that repeats what the desk said at its sign of life is not taken for it", async () => {
  const first = await desk.start();
  const { port } = new URL(first.address);
  const heard = await (await fetch(new URL("alive", first.address))).text();
  await first.kill();
  const told: string[] = [];
  const pretender = createServer((request, response) => {
    told.push(`${request.url} ${JSON.stringify(request.headers)}`);
    response.end(heard);
  });
  await new Promise<void>((resolve) => pretender.listen(Number(port), "127.0.0.1", resolve));
  try {
    const second = await desk.start();
    expect(new URL(second.address).port).not.toBe(String((pretender.address() as AddressInfo).port));
    const key = keyOf(first.address)[KEY_HEADER]!;
    expect(told.length).toBeGreaterThan(0);
    expect(told.join("\n")).not.toContain(key);
  } finally {
    await new Promise((resolve) => pretender.close(resolve));
  }
});

test("the sign of life proves that the desk knows the key, by RFC 2104's code of it over what was asked", async () => {
  const { address } = await desk.start();
  const lock = JSON.parse(readFileSync(path.join(desk.folder, "desk.lock"), "utf8")) as { key: string };
  const answer = await (await fetch(new URL("alive?ask=any words", address))).text();
  const expected = createHmac("sha256", keyOf(address)[KEY_HEADER]!)
    .update(`${lock.key} any words`)
    .digest("hex");
  expect(answer).toBe(expected);
  expect((await ask(address, "alive")).status).toBe(200);
  expect(await sentenceOf(await asked(address, ["GET", "/jobs"]))).toMatch(SAID);
});
