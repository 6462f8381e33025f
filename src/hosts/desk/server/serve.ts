/** The desk's server: the page, its libraries, the jobs, and .xlsx in and out. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { Refusal as JobRefusal } from "../../../jobs/refusal";
import type { Book } from "../../../workbooks/book";
import type { ImportedTable } from "../../../workbooks/imported/table";
import type { CopyKind } from "../../file/copy/copyOf";
import { FileTrouble, troubles } from "../../file/fileTrouble";
import { bringIn, exportOf } from "../../file/jobsArchive";
import { MAX_JOBS_FILE_BYTES } from "../../file/limits";
import {
  ALIVE,
  GIVE,
  LEFT,
  ONCE,
  PAGE_HEADER,
  PAGE_NAME,
  STATUS_OF,
  UNREADABLE,
  XLSX_TYPE,
  type Refusal,
  type ShelfList,
  type Start,
} from "../protocol";
import type { Asset } from "./assets";
import { hasKey, refusalOf, setGuardHeaders, signOfLife, type OnceTokens } from "./guard";
import { answerJob, bookOf, type JobRoutes } from "./jobRoutes";
import { ICON_SVG, linkedHead, pageHtml } from "../pageHtml";
import { askingOf, OpenPages } from "./openPages";
import { bodyOf, jsonOf, Refused } from "./requestBody";
import { askedReviewOf, settlingOf } from "./askedReview";

/** What the server needs from outside; tests hand in their own. */
export interface DeskParts extends JobRoutes {
  readonly assets: ReadonlyMap<string, Asset>;
  readonly readXlsx: (bytes: Uint8Array, how?: { readonly forReview: true }) => Promise<Book>;
  readonly readTables: (bytes: Uint8Array) => Promise<readonly ImportedTable[]>;
  readonly writeXlsx: (book: Book) => Promise<Uint8Array>;
  readonly writeCopy: (book: Book, kind: CopyKind) => Promise<Uint8Array>;
  readonly port: number;
  /** By which another that is started on the same folder knows this one. */
  readonly name: string;
  /** Who has it may ask. */
  readonly key: string;
  readonly once: OnceTokens;
  /** Where the jobs lie. */
  readonly place: string;
}

const PAGE_HTML = pageHtml({ head: linkedHead("/", "/icon.svg") });

const TEXT_TYPE = "text/plain; charset=utf-8";

export function createDesk(parts: DeskParts): Server {
  const pages = new OpenPages();
  return createServer((request, response) => {
    setGuardHeaders(response);
    answer(parts, pages, request, response).catch((error: unknown) => sendRefusal(response, error));
  });
}

async function answer(
  parts: DeskParts,
  pages: OpenPages,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const refusal = refusalOf(request, parts.port);
  if (refusal) throw new Refused(403, refusal);
  const { pathname, searchParams } = addressOf(request.url ?? "/");
  const method = request.method === "HEAD" ? "GET" : (request.method ?? "GET");
  const asked = `${method} ${pathname}`;
  // What is no secret, and the page itself, which brings the key with all else that it asks.
  switch (asked) {
    case `GET /${ALIVE}`: {
      const name = searchParams.has(PAGE_NAME) ? PAGE_NAME : parts.name;
      return send(response, TEXT_TYPE, signOfLife(parts.key, name, searchParams.get("ask") ?? ""));
    }
    case "GET /icon.svg":
    case "GET /favicon.ico":
      return send(response, "image/svg+xml", ICON_SVG);
    case "GET /":
      return send(response, "text/html; charset=utf-8", PAGE_HTML);
    case `POST /${ONCE}`:
      if (!parts.once.take(String(await jsonOf(request)))) throw new Refused(403, NO_KEY);
      return sendJson(response, parts.key);
  }
  const asset = method === "GET" ? parts.assets.get(pathname) : undefined;
  if (asset) return send(response, asset.type, await readFile(asset.file));
  if (!hasKey(request, parts.key)) throw new Refused(403, NO_KEY);
  const asking = askingOf(request.headers[PAGE_HEADER]);
  if (pathname.startsWith("/jobs/")) {
    const jobs = pathname.slice("/jobs/".length).split("/");
    const body = (): Promise<unknown> => jsonOf(request);
    const found = await answerJob(
      parts,
      { method, parts: jobs, query: searchParams, body },
      { pages, asking },
    );
    if (found === undefined) throw new Refused(404, `There is nothing at ${pathname}.`);
    return sendJson(response, found);
  }
  switch (asked) {
    case `POST /${LEFT}`:
      if (asking) pages.left(asking.page);
      return sendJson(response, {});
    case `GET /${ONCE}`:
      return sendJson(response, parts.once.make());
    case "GET /start":
      return sendJson(response, await startOf(parts, searchParams.has("named")));
    case "GET /jobs":
      return sendJson(response, {
        jobs: parts.shelf.list(),
        notices: parts.shelf.notices.splice(0),
        place: parts.place,
      } satisfies ShelfList);
    case "GET /export": {
      const ids = searchParams.getAll("job");
      return send(response, "application/zip", await exportOf(parts.shelf, ids.length > 0 ? ids : undefined));
    }
    case "POST /import": {
      const bytes = await bodyOf(request, MAX_JOBS_FILE_BYTES, troubles.jobsTooLarge);
      return sendJson(response, await bringIn(parts.shelf, bytes));
    }
    case "POST /reviews":
      return sendJson(response, await parts.shelf.review(askedReviewOf(await jsonOf(request))));
    case "POST /reviews/settled": {
      const settled = await parts.shelf.settle(settlingOf(await jsonOf(request)));
      return sendJson(response, { settled: settled ?? null });
    }
    case `POST /${GIVE}`:
      await parts.files.give(String(await jsonOf(request)));
      return sendJson(response, {});
    case "POST /open":
      return sendJson(response, await parts.readXlsx(await bodyOf(request)));
    case "POST /open-for-review":
      return sendJson(response, await parts.readXlsx(await bodyOf(request), { forReview: true }));
    case "POST /tables":
      return sendJson(response, await parts.readTables(await bodyOf(request)));
    case "POST /save":
      return send(response, XLSX_TYPE, await parts.writeXlsx(bookOf(await jsonOf(request))));
    case "POST /copy/office":
    case "POST /copy/sealed":
    case "POST /copy/cards": {
      const kind = pathname.slice("/copy/".length) as CopyKind;
      return send(response, XLSX_TYPE, await parts.writeCopy(bookOf(await jsonOf(request)), kind));
    }
  }
  throw new Refused(404, `There is nothing at ${pathname}.`);
}

/** An address that begins with two strokes would name another host. */
function addressOf(url: string): URL {
  try {
    return new URL(`http://127.0.0.1/${url.replace(/^\/+/, "")}`);
  } catch {
    throw new Refused(400, "This is no address of the desk.");
  }
}

async function startOf({ shelf, files, key }: DeskParts, isNamed: boolean): Promise<Start> {
  // A page that shows a job by name must not bring another out of step with its file.
  const given = isNamed
    ? undefined
    : await files.last(shelf.notices).catch((error: unknown) => {
        // It was there when the desk was started.
        shelf.notices.push(error instanceof Error ? error.message : String(error));
        return undefined;
      });
  // Known from the key, which is its own in every folder, and not telling it.
  return { given, open: shelf.lastOpen, shelf: createHash("sha256").update(key).digest("hex").slice(0, 16) };
}

const NO_KEY =
  "This desk is opened by the whole address that Rigsheet printed when it was started: it has a key at its end, which keeps other accounts of this computer out. Copy it from there, or start Rigsheet again.";

function send(response: ServerResponse, type: string, body: string | Uint8Array): void {
  response.setHeader("Content-Type", type);
  response.end(body);
}

const sendJson = (response: ServerResponse, value: unknown): void =>
  send(response, "application/json; charset=utf-8", JSON.stringify(value));

function sendRefusal(response: ServerResponse, error: unknown): void {
  // A file that can't be read or written is the user's matter, and has its sentence; all else is ours.
  const status =
    error instanceof Refused
      ? error.status
      : error instanceof JobRefusal
        ? STATUS_OF[error.kind]
        : error instanceof FileTrouble
          ? UNREADABLE
          : 500;
  const sentence =
    error instanceof Refused || error instanceof FileTrouble || error instanceof JobRefusal
      ? error.message
      : `The desk's server could not do this (${error instanceof Error ? error.message : String(error)}). Your job is as it was saved last; try again.`;
  if (!response.headersSent) {
    response.statusCode = status;
    sendJson(response, { sentence } satisfies Refusal);
  } else response.destroy();
}
