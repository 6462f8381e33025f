/** The desk's server: the page, its libraries, the autosaved job, and .xlsx in and out. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { readFile, stat } from "node:fs/promises";
import path from "node:path";
import type { Book } from "../../../workbooks/book";
import type { Survey } from "../../../workbooks/survey/readSurvey";
import type { CopyKind } from "../../file/copy/copyOf";
import { FileTrouble } from "../../file/fileTrouble";
import {
  ALIVE,
  FILE_CHANGED,
  OVER,
  type OpenJob,
  type Refusal,
  type Saved,
  type Snapshot,
} from "../protocol";
import type { Asset } from "./assets";
import { refusalOf, setGuardHeaders } from "./guard";
import { isChange, isDocument, isSameStamp, type FileStamp } from "./heldJob";
import type { JobStore } from "./jobStore";
import { ICON_SVG, PAGE_HTML } from "./pageHtml";
import { bodyOf, jsonOf, Refused } from "./requestBody";

/** What the server needs from outside; tests hand in their own. */
export interface DeskParts {
  readonly assets: ReadonlyMap<string, Asset>;
  readonly store: JobStore;
  readonly readXlsx: (bytes: Uint8Array) => Promise<Book>;
  readonly readSurvey: (bytes: Uint8Array, unit: "m" | "ft", writing?: string) => Promise<Survey>;
  readonly writeXlsx: (book: Book) => Promise<Uint8Array>;
  readonly writeCopy: (book: Book, kind: CopyKind) => Promise<Uint8Array>;
  readonly saveAtomically: (file: string, bytes: Uint8Array) => Promise<void>;
  /** Copies a file into the data folder; answers with its place there. */
  readonly keepAside: (file: string) => Promise<string>;
  /** The file given on the command line, with the book that was read from it. */
  readonly file?: { readonly path: string; readonly book: Book; readonly stamp: FileStamp };
  readonly port: number;
  /** By which another that is started on the same job knows this one. */
  readonly key: string;
}

const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

export function createDesk(parts: DeskParts): Server {
  return createServer((request, response) => {
    setGuardHeaders(response);
    answer(parts, request, response).catch((error: unknown) => sendRefusal(response, error));
  });
}

async function answer(parts: DeskParts, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const refusal = refusalOf(request, parts.port);
  if (refusal) throw new Refused(403, refusal);
  const { pathname, searchParams } = addressOf(request.url ?? "/");
  const method = request.method === "HEAD" ? "GET" : request.method;
  switch (`${method} ${pathname}`) {
    case "GET /":
      return send(response, "text/html; charset=utf-8", PAGE_HTML);
    case "GET /icon.svg":
    case "GET /favicon.ico":
      return send(response, "image/svg+xml", ICON_SVG);
    case `GET /${ALIVE}`:
      return send(response, "text/plain; charset=utf-8", parts.key);
    case "GET /job":
      return sendJson(response, openJob(parts));
    case "PUT /job":
      return sendJson(response, await parts.store.put(snapshotOf(await jsonOf(request)), parts.file?.stamp));
    case "POST /changes": {
      const changes = await jsonOf(request);
      if (!Array.isArray(changes) || !changes.every(isChange))
        throw new Refused(400, "These are not changes.");
      return sendJson(response, await parts.store.append(changes));
    }
    case "POST /open":
      return sendJson(response, await parts.readXlsx(await bodyOf(request)));
    case "POST /survey/m":
    case "POST /survey/ft":
      return sendJson(
        response,
        await parts.readSurvey(
          await bodyOf(request),
          pathname === "/survey/ft" ? "ft" : "m",
          searchParams.get("writing") ?? undefined,
        ),
      );
    case "POST /save":
      return send(response, XLSX_TYPE, await parts.writeXlsx(bookOf(await jsonOf(request))));
    case "POST /copy/office":
    case "POST /copy/sealed":
    case "POST /copy/cards": {
      const kind = pathname.slice("/copy/".length) as CopyKind;
      return send(response, XLSX_TYPE, await parts.writeCopy(bookOf(await jsonOf(request)), kind));
    }
    case "PUT /file":
      return sendJson(response, await saveFile(parts, bookOf(await jsonOf(request)), searchParams.has(OVER)));
  }
  const asset = parts.assets.get(pathname);
  if (asset && method === "GET") return send(response, asset.type, await readFile(asset.file));
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

function openJob({ store, file }: DeskParts): OpenJob {
  const { job, notices } = store;
  // A job that was put in the place of the file's has nothing to do with it.
  const isOfFile = file !== undefined && (!job || job.stamp !== undefined);
  const common = { file: isOfFile ? path.basename(file.path) : undefined, notices };
  return job
    ? { ...common, document: job.document, changes: job.changes, savedAt: job.savedAt }
    : { ...common, book: file?.book, changes: [] };
}

async function saveFile(
  { file, store, writeXlsx, saveAtomically, keepAside }: DeskParts,
  book: Book,
  over: boolean,
): Promise<Saved> {
  const { openName } = store;
  const held = store.job?.stamp;
  if (!file || !held)
    throw new Refused(409, "This job belongs to no file; use Save to download the workbook.");
  const name = path.basename(file.path);
  const now = await fileStamp(file.path).catch(() => undefined);
  const isAsItWas = isSameStamp(now, held);
  if (!isAsItWas && !over) {
    throw new Refused(
      FILE_CHANGED,
      now
        ? `${name} has changed since it was opened or saved here: another program has written it.`
        : `${name} is gone from its folder, or has another name now.`,
    );
  }
  store.mustOwn();
  // What somebody else wrote there is not thrown away.
  const keptAs = now && !isAsItWas ? await keepAside(file.path) : undefined;
  await saveAtomically(file.path, await writeXlsx(book));
  await store.stampFile(await fileStamp(file.path), openName);
  return { savedAt: new Date().toISOString(), keptAs };
}

export async function fileStamp(file: string): Promise<FileStamp> {
  const { mtimeMs, size } = await stat(file);
  return { modified: mtimeMs, size };
}

function snapshotOf(value: unknown): Snapshot {
  const snapshot = value as Partial<Snapshot> | null;
  if (!snapshot || !isDocument(snapshot.document)) throw new Refused(400, "This is not a document.");
  return {
    document: snapshot.document,
    after: snapshot.after ?? null,
    replaces: snapshot.replaces === true,
    fromFile: snapshot.fromFile === true,
  };
}

function bookOf(value: unknown): Book {
  const book = value as Partial<Book> | null;
  if (!book || !Array.isArray(book.sheets) || !Array.isArray(book.names) || !Array.isArray(book.looks)) {
    throw new Refused(400, "This is not a workbook.");
  }
  return book as Book;
}

function send(response: ServerResponse, type: string, body: string | Uint8Array): void {
  response.setHeader("Content-Type", type);
  response.end(body);
}

const sendJson = (response: ServerResponse, value: unknown): void =>
  send(response, "application/json; charset=utf-8", JSON.stringify(value));

function sendRefusal(response: ServerResponse, error: unknown): void {
  // A file that can't be read or written is the user's matter, and has its sentence; all else is ours.
  const status = error instanceof Refused ? error.status : error instanceof FileTrouble ? 422 : 500;
  const sentence =
    error instanceof Refused || error instanceof FileTrouble
      ? error.message
      : `The desk's server could not do this (${error instanceof Error ? error.message : String(error)}). Your job is as it was saved last; try again.`;
  if (!response.headersSent) {
    response.statusCode = status;
    sendJson(response, { sentence } satisfies Refusal);
  } else response.destroy();
}
