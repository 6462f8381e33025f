/** What the desk's server does, done in the page: jobs in the browser's storage, workbooks read and written here. */
import { isWrittenElsewhere } from "../../../jobs/storage";
import { Refusal } from "../../../jobs/refusal";
import type { Shelf } from "../../../jobs/shelf";
import { RIGSHEET_VERSION } from "../../../version";
import { writeCopy } from "../../file/copy/writeCopy";
import { FileTrouble } from "../../file/fileTrouble";
import { bringIn, exportOf } from "../../file/jobsArchive";
import { jobFile } from "../../file/jobFile";
import { readTables } from "../../file/readTables";
import { readXlsx } from "../../file/readXlsx";
import { pngRenderer } from "../../headless/pngRenderer";
import { BrowserStorage } from "../../storage/browserStorage";
import { MemoryStorage } from "../../storage/memoryStorage";
import { SharedShelf } from "../../storage/sharedShelf";
import { CHANGED_ELSEWHERE, LONGEST_WHY, STATUS_OF, UNREADABLE, XLSX_TYPE, type Saved } from "../protocol";
import { messageOf, ServerTrouble } from "./deskTrouble";
import { partsOf } from "./pageParts";
import { placeInWords } from "./persistence";
import type { serverApi } from "./serverApi";
import type { Stand } from "./stand";

const FAILED = 500;
const NO_FILE = 409;
/** One storage for all pages of an address: what waits there is always this one's. */
const SHELF = "browser";

interface Kept {
  readonly shelf: SharedShelf;
  readonly unkept?: string;
}

async function open(): Promise<Kept> {
  try {
    return { shelf: new SharedShelf(await BrowserStorage.open()) };
  } catch (error) {
    return { shelf: new SharedShelf(new MemoryStorage()), unkept: messageOf(error) };
  }
}

export function inPageApi(stand: Exclude<Stand, "server">): typeof serverApi {
  const parts = partsOf(stand);
  const renderPng = pngRenderer(() => parts.renderer());
  let kept: Promise<Kept> | undefined;
  const use = <T>(work: (shelf: Shelf) => Promise<T>): Promise<T> =>
    told(async () => (await (kept ??= open())).shelf.use(work));
  /** Neither side may change what the other holds, as if it had gone over a wire. */
  const handed = <T>(work: (shelf: Shelf) => Promise<T>): Promise<T> =>
    use(async (shelf) => structuredClone(await work(shelf)));
  const saved = (work: (shelf: Shelf) => Promise<string>): Promise<Saved> =>
    use(async (shelf) => ({ savedAt: await work(shelf) }));
  const noFile = (): never => {
    throw new ServerTrouble("This job belongs to no file; use Save to download the workbook.", NO_FILE);
  };

  return {
    start: async () => {
      const last = await use(async (shelf) => shelf.lastOpen);
      const { unkept } = await kept!;
      return { open: last, shelf: SHELF, ...(unkept !== undefined && { unkept }) };
    },
    jobs: async () => {
      const jobs = await handed(async (shelf) => shelf.list());
      const { shelf, unkept } = await kept!;
      return { jobs, notices: shelf.notices.splice(0), place: await placeInWords(stand, unkept) };
    },
    openJob: (id) => handed((shelf) => shelf.open(id)),
    left: async () => ({}),
    held: (id) => handed((shelf) => shelf.held(id)),
    putJob: (id, { document, changes = [], after, line, conflictOf }) =>
      saved((shelf) =>
        after !== null
          ? shelf.fold(id, document, after, line)
          : shelf.create(id, structuredClone({ document, changes }), { line, conflictOf }),
      ),
    deleteJob: (id) =>
      use(async (shelf) => {
        await shelf.delete(id);
        return {};
      }),
    postChanges: (id, { changes, line }) =>
      saved((shelf) => shelf.append(id, structuredClone(changes), line)),
    changesSince: (id, revision) => handed(async (shelf) => (await shelf.changesSince(id, revision)) ?? null),
    noteJob: (id, notes) => handed((shelf) => shelf.note(id, notes)),
    freeze: (id, why) => handed((shelf) => shelf.freeze(id, why.trim().slice(0, LONGEST_WHY))),
    revision: (id, number) => handed((shelf) => shelf.revision(id, number)),
    restore: (id, number) => handed((shelf) => shelf.restore(id, number)),
    copyJob: (id, to, revision) => use(async (shelf) => ({ id: await shelf.copy(id, to, revision) })),
    takeTheirs: (id, { document, after, mark, line }) =>
      saved((shelf) => shelf.takeTheirs(id, structuredClone(document), after, mark, line)),
    exportJobs: (ids = []) =>
      use(async (shelf) => zip(await exportOf(shelf, ids.length > 0 ? ids : undefined))),
    bringIn: (file) => use(async (shelf) => bringIn(shelf, await bytesOf(file))),
    review: (asked) => handed((shelf) => shelf.review(structuredClone(asked))),
    settle: (settling) => handed(async (shelf) => (await shelf.settle(settling)) ?? null),
    // Only a file that a desk was started with has a place; those that a browser holds are the page's own affair.
    theirs: async () => noFile(),
    saveFile: async () => noFile(),
    openXlsx: (bytes) => told(async () => readXlsx(await bytesOf(bytes))),
    reviewXlsx: (bytes) => told(async () => readXlsx(await bytesOf(bytes), { forReview: true })),
    readTables: (bytes) => told(async () => readTables(await bytesOf(bytes))),
    saveXlsx: (book) => told(async () => xlsx(await jobFile(book, renderPng))),
    copyXlsx: (book, kind) =>
      told(async () =>
        xlsx(await writeCopy(book, kind, { now: new Date(), version: RIGSHEET_VERSION }, renderPng)),
      ),
    gridTemplates: () => parts.gridTemplates(),
  };
}

const bytesOf = async (blob: Blob): Promise<Uint8Array> => new Uint8Array(await blob.arrayBuffer());

const xlsx = (bytes: Uint8Array): Blob => new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX_TYPE });

const zip = (bytes: Uint8Array): Blob =>
  new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/zip" });

/** Troubles as the page knows them from a server. */
async function told<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof ServerTrouble ? error : new ServerTrouble(messageOf(error), statusOf(error));
  }
}

function statusOf(error: unknown): number {
  if (isWrittenElsewhere(error)) return CHANGED_ELSEWHERE;
  if (error instanceof Refusal) return STATUS_OF[error.kind];
  return error instanceof FileTrouble ? UNREADABLE : FAILED;
}
