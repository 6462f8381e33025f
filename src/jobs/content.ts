/** What a job is made of, whoever keeps it and whoever shows it. */
import type { ShelfLine } from "../workbooks/shelfLine";

/**
 * One change of a document, as the grid library hands it to its transport:
 * which state it follows, which state it makes. The rest is the library's own
 * and passes through unread.
 */
export interface Change {
  readonly type: string;
  readonly serverRevisionId: string;
  readonly nextRevisionId: string;
}

/** The grid library's document with our facts in it; only its revision is read here. */
export interface JobDocument {
  readonly revisionId: string;
  readonly sheets: readonly unknown[];
}

/** A document and what was changed in it since. */
export interface JobContent {
  readonly document: JobDocument;
  readonly changes: readonly Change[];
}

/** How far a job has come; a person says so. */
export const JOB_STATES = ["draft", "checked", "sent", "accepted", "done"] as const;
export type JobState = (typeof JOB_STATES)[number];

/** The file that a job belongs to: Save writes there. */
export interface JobFile {
  readonly name: string;
  /** Absent where the browser holds it. */
  readonly path?: string;
  /** SHA-256 of its bytes when it was last read or written here, in hexadecimal: a time or a length can be the same by chance. */
  readonly mark: string;
  /** That of the bytes that are being written into it: a save whose end was never noted is known by it. */
  readonly saving?: string;
}

/** A frozen state of a job, as its list shows it. */
export interface RevisionNote {
  /** Counts from 1 within the job. */
  readonly number: number;
  readonly at: string;
  /** Tells what was put down for it from what was put down in vain. */
  readonly key: string;
  /** Why it was frozen, in a few words. */
  readonly why: string;
  /** The revision of the document that was frozen. */
  readonly head: string;
  readonly line?: ShelfLine;
}

/** What is kept of a job beside its content. */
export interface JobNotes {
  /** What the list shows, as the page that had it open last told. */
  readonly line?: ShelfLine;
  readonly state: JobState;
  readonly file?: JobFile;
  /** The time of the last edit that a file outside of this storage has too. */
  readonly outside?: string;
  /** Put away: not shown unless asked for. */
  readonly away: boolean;
  readonly revisions: readonly RevisionNote[];
  /**
   * Made of what was typed in a window that had lost the job, or while the
   * server was away, and did not fit any more: the job, and the last revision
   * that the two have in common.
   */
  readonly conflictOf?: { readonly job: string; readonly after: string };
}

export const headOf = ({ document, changes }: JobContent): string =>
  changes.at(-1)?.nextRevisionId ?? document.revisionId;

/** Whether nothing but a save of ours has written a file since. */
export const isAsLeft = ({ mark, saving }: JobFile, now: string): boolean => now === mark || now === saving;

export const isDocument = (value: unknown): value is JobDocument =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as JobDocument).revisionId === "string" &&
  Array.isArray((value as JobDocument).sheets);

export const isChange = (value: unknown): value is Change =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as Change).serverRevisionId === "string" &&
  typeof (value as Change).nextRevisionId === "string";
