/** A job as the store holds it and the page asks for it. */
import type { Change, DeskDocument } from "../protocol";

/** The file that a job was opened from, as it was then; tells whether another program has changed it since. */
export interface FileStamp {
  readonly modified: number;
  readonly size: number;
}

export interface HeldJob {
  readonly document: DeskDocument;
  readonly changes: readonly Change[];
  readonly savedAt: string;
  /** The file that it belongs to, as it was last read or written; absent where it belongs to none. */
  readonly stamp?: FileStamp;
}

/** A file that nothing has written between the two. */
export const isSameStamp = (one: FileStamp | undefined, other: FileStamp): boolean =>
  one?.modified === other.modified && one.size === other.size;

export const isDocument = (value: unknown): value is DeskDocument =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as DeskDocument).revisionId === "string" &&
  Array.isArray((value as DeskDocument).sheets);

export const isChange = (value: unknown): value is Change =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as Change).serverRevisionId === "string" &&
  typeof (value as Change).nextRevisionId === "string";
