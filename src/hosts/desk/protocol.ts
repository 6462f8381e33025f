/** What the desk's page and its server say to each other. */
import type { ShelfEntry } from "../../jobs/catalogue";
import type { Change, JobDocument, JobNotes, JobState } from "../../jobs/content";
import type { Refusal as JobRefusal } from "../../jobs/refusal";
import type { HeldJob } from "../../jobs/shelf";
import type { Book } from "../../workbooks/book";
import type { ShelfLine } from "../../workbooks/shelfLine";

/** The answer to `GET /start`: what a page without a job's name in its address shows. */
export interface Start {
  /** The file given at the start. */
  readonly given?: GivenFile;
  /** The job that was open last; absent where there is none. */
  readonly open?: string;
  /** By it a page knows whether a desk that answers is the one of its jobs. */
  readonly shelf: string;
  /** Why nothing of it is kept once the page is closed, in a sentence. */
  readonly unkept?: string;
}

/** A file that a desk was started with. */
export interface GivenFile {
  /** By which the page names it. */
  readonly number: number;
  readonly name: string;
  /** The job that was made of it before, and still goes with it. */
  readonly job?: string;
  /** What stands in it, where there is no such job. */
  readonly book?: Book;
}

/** The answer to `GET /jobs`. */
export interface ShelfList {
  readonly jobs: readonly ShelfEntry[];
  /** Said once, above the grid. */
  readonly notices: readonly string[];
  /** Where all of it lies. */
  readonly place: string;
}

/** The answer to `GET /jobs/ID`. */
export interface OpenedJob extends HeldJob {
  /** Since when another browser has had it open, as far as the server knows: ISO 8601. */
  readonly elsewhere?: string;
}

/** The body of `PUT /jobs/ID`: a new job, or the whole of one in the place of it and its changes. */
export interface Snapshot {
  readonly document: JobDocument;
  /** The changes since, for one that is new here. */
  readonly changes?: readonly Change[];
  /** The revision that it follows; null for a new job. The server refuses one that follows anything else. */
  readonly after: string | null;
  readonly line?: ShelfLine;
  /** The number of the file that it was made from. */
  readonly given?: number;
  readonly conflictOf?: JobNotes["conflictOf"];
}

/** The body of `POST /jobs/ID/changes`. */
export interface Changes {
  readonly changes: readonly Change[];
  readonly line?: ShelfLine;
}

/** The body of `POST /jobs/ID/notes`. */
export interface Notes {
  readonly state?: JobState;
  readonly away?: boolean;
  /** A file that the browser holds; null lets go of the job's file. */
  readonly file?: { readonly name: string; readonly mark: string } | null;
  /** See {@link JobNotes.outside}; where the browser keeps the jobs. */
  readonly outside?: string;
}

/** The answer to what saves. */
export interface Saved {
  readonly savedAt: string;
  /** Where lies what stood in the file before. */
  readonly keptAs?: string;
}

/** The answer to `GET /jobs/ID/file`: the job's file as it is now. */
export interface Theirs {
  readonly book: Book;
  readonly mark: string;
}

/** The body of `POST /jobs/ID/theirs`: the file's content in the place of the job's, which is frozen first. */
export interface TakeTheirs {
  readonly document: JobDocument;
  readonly after: string;
  readonly line?: ShelfLine;
  readonly mark: string;
}

/** Any answer with a status of 400 or more. */
export interface Refusal {
  readonly sentence: string;
}

/** The status of what was asked for a job that another window has changed. */
export const CHANGED_ELSEWHERE = 409;
/** That of a file, or a job, that can't be read. */
export const UNREADABLE = 422;
/** That of each kind of refusal of the jobs' keeper. */
export const STATUS_OF: Readonly<Record<JobRefusal["kind"], number>> = {
  conflict: CHANGED_ELSEWHERE,
  missing: 404,
  unreadable: UNREADABLE,
  taken: 423,
};
/** The status of a save that was not done, since the file has changed: the page asks, and may send it again with {@link OVER}. */
export const FILE_CHANGED = 412;
/** The status of one that was not done, since there is no such file any more, or it can't be read. */
export const FILE_GONE = 410;
/** Added to the address of a save that writes over what another program has put there. */
export const OVER = "over";

/** A reason for freezing is cut to so many characters. */
export const LONGEST_WHY = 200;
/** What a workbook is called on the way. */
export const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Sent with every request that writes: a page of another origin can't add it unasked. */
export const DESK_HEADER = "x-rigsheet-desk";

/** The address at which a desk says which one it is. */
export const ALIVE = "alive";
/** What a second start asks the desk that runs to open. */
export const GIVE = "given";
/** The name in the address under which the key of the desk comes. */
export const KEY = "key";
/** The name in the address under which a word comes that is good for the key once. */
export const ONCE = "once";
/** What a page asks the sign of life for, which has heard no other name. */
export const PAGE_NAME = "page";
/** Brings the key, with everything that is asked of jobs and files. */
export const KEY_HEADER = "x-rigsheet-key";

/** Brings the names of the page that asks and of its browser, with a space between. */
export const PAGE_HEADER = "x-rigsheet-page";
/** The address at which a page says that it is closed. */
export const LEFT = "left";

/** Beside the help pages: the notices of all that is bundled or shipped. */
export const NOTICES_PAGE = "notices.txt";
