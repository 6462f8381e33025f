/** What the page asks of the jobs: `/jobs` and all below it. */
import { isChange, isDocument, JOB_STATES } from "../../../jobs/content";
import type { Shelf } from "../../../jobs/shelf";
import type { Book } from "../../../workbooks/book";
import {
  LONGEST_WHY,
  type Changes,
  type Notes,
  type OpenedJob,
  type Snapshot,
  type TakeTheirs,
} from "../protocol";
import type { GivenFiles } from "./givenFiles";
import type { Asking, OpenPages } from "./openPages";
import { Refused } from "./requestBody";

export interface JobRoutes {
  readonly shelf: Shelf;
  readonly files: GivenFiles;
}

/** Who asks, and the pages that are open. */
interface Asked {
  readonly pages: OpenPages;
  /** Absent where it is none of our pages. */
  readonly asking?: Asking;
}

/** A request for a job, taken apart. */
export interface JobRequest {
  readonly method: string;
  /** What follows `/jobs/`. */
  readonly parts: readonly string[];
  readonly query: URLSearchParams;
  readonly body: () => Promise<unknown>;
}

/** @returns what is answered as JSON; undefined where there is no such address */
export async function answerJob(
  { shelf, files }: JobRoutes,
  { method, parts, query, body }: JobRequest,
  { pages, asking }: Asked,
): Promise<unknown> {
  const [id = "", what = "", number = "", act = ""] = parts;
  const asked = `${method} ${what}${number && "/N"}${act && `/${act}`}`;
  if (asking && (asked === "PUT " || asked === "POST changes")) pages.shows(asking, id, new Date());
  switch (asked) {
    case "GET ": {
      if (query.has("look")) return shelf.held(id);
      const held = await shelf.open(id);
      if (!asking) return held;
      pages.shows(asking, id, new Date());
      return { ...held, elsewhere: pages.elsewhere(asking, id) } satisfies OpenedJob;
    }
    case "PUT ": {
      const { document, changes = [], after, line, given, conflictOf } = snapshotOf(await body());
      if (after !== null) return saved(shelf.fold(id, document, after, line));
      const file = given === undefined ? undefined : files.fileOf(given);
      return saved(shelf.create(id, { document, changes }, { line, file, conflictOf }));
    }
    case "DELETE ":
      await shelf.delete(id);
      return {};
    case "GET changes":
      return { changes: (await shelf.changesSince(id, query.get("after") ?? "")) ?? null };
    case "POST changes": {
      const { changes, line } = ((await body()) ?? {}) as Partial<Changes>;
      if (!Array.isArray(changes) || !changes.every(isChange))
        throw new Refused(400, "These are not changes.");
      return saved(shelf.append(id, changes, line));
    }
    case "POST notes":
      return shelf.note(id, notesOf(await body()));
    case "POST revisions":
      return shelf.freeze(id, whyOf(await body()));
    case "GET revisions/N":
      return shelf.revision(id, Number(number));
    case "POST revisions/N/restore":
      return shelf.restore(id, Number(number));
    case "POST copies/N":
      return { id: await shelf.copy(id, number, numberIn(query)) };
    case "GET file":
      return files.theirs(id);
    case "PUT file":
      return files.save(id, bookOf(await body()), query.has("over"), query.get("after") ?? undefined);
    case "POST theirs": {
      const { document, after, mark, line } = ((await body()) ?? {}) as Partial<TakeTheirs>;
      if (!isDocument(document) || typeof after !== "string" || typeof mark !== "string")
        throw new Refused(400, "This is not a document.");
      return saved(shelf.takeTheirs(id, document, after, mark, line));
    }
    default:
      return undefined;
  }
}

const saved = async (at: Promise<string>): Promise<{ savedAt: string }> => ({ savedAt: await at });

function numberIn(query: URLSearchParams): number | undefined {
  const text = query.get("revision");
  return text === null ? undefined : Number(text);
}

function whyOf(value: unknown): string {
  const { why } = (value ?? {}) as { why?: unknown };
  return typeof why === "string" ? why.trim().slice(0, LONGEST_WHY) : "";
}

function notesOf(value: unknown): Notes {
  const { state, away, file } = (value ?? {}) as Partial<Notes>;
  if (state !== undefined && !JOB_STATES.includes(state))
    throw new Refused(400, `A job is ${JOB_STATES.join(", ")}; "${String(state)}" is none of them.`);
  return {
    ...(state !== undefined && { state }),
    ...(typeof away === "boolean" && { away }),
    ...(file === null && { file }),
    // Only a file that a desk was started with has a path.
    ...(file && { file: { name: String(file.name), mark: String(file.mark) } }),
  };
}

function snapshotOf(value: unknown): Snapshot {
  const snapshot = value as Partial<Snapshot> | null;
  const { changes } = snapshot ?? {};
  if (!snapshot || !isDocument(snapshot.document)) throw new Refused(400, "This is not a document.");
  if (changes !== undefined && (!Array.isArray(changes) || !changes.every(isChange)))
    throw new Refused(400, "These are not changes.");
  return { ...snapshot, document: snapshot.document, after: snapshot.after ?? null };
}

export function bookOf(value: unknown): Book {
  const book = value as Partial<Book> | null;
  if (!book || !Array.isArray(book.sheets) || !Array.isArray(book.names) || !Array.isArray(book.looks)) {
    throw new Refused(400, "This is not a workbook.");
  }
  return book as Book;
}
