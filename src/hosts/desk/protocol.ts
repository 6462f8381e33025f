/** What the desk's page and its server say to each other. */
import type { Book } from "../../workbooks/book";

/**
 * One change of the open document, as the grid library hands it to its
 * transport: which state it follows, which state it makes. The rest is the
 * library's own and passes through unread.
 */
export interface Change {
  readonly type: string;
  readonly serverRevisionId: string;
  readonly nextRevisionId: string;
}

/** The grid library's document with our facts in it; the server reads only its revision. */
export interface DeskDocument {
  readonly revisionId: string;
  readonly sheets: readonly unknown[];
}

/**
 * The answer to `GET /job`: a saved document with the changes since, or the
 * book of the file given at the start. With neither the page opens its
 * demonstration.
 */
export interface OpenJob {
  readonly document?: DeskDocument;
  readonly changes: readonly Change[];
  readonly book?: Book;
  /** Name of the file that Save writes back into. */
  readonly file?: string;
  /** Said once, above the grid. */
  readonly notices: readonly string[];
  readonly savedAt?: string;
}

/** The body of `PUT /job`. */
export interface Snapshot {
  readonly document: DeskDocument;
  /**
   * The revision that the page last heard the server hold; null when it held
   * no job. The server refuses a snapshot that follows anything else.
   */
  readonly after: string | null;
  /** Another job takes the place of the one held, which is kept. */
  readonly replaces: boolean;
  /** It was made from the file that was given at the start, and belongs to it: Save writes there. */
  readonly fromFile: boolean;
}

/** The answer to `PUT /job` and `POST /changes`. */
export interface Saved {
  readonly savedAt: string;
  /** Where the replaced job lies now. */
  readonly keptAs?: string;
}

/** Any answer with a status of 400 or more. */
export interface Refusal {
  readonly sentence: string;
}

/** The status of a save that was not done, since the file has changed: the page asks, and may send it again with {@link OVER}. */
export const FILE_CHANGED = 412;
/** Added to the address of a save that writes over what another program has put there. */
export const OVER = "over";

/** Sent with every request that writes: a page of another origin can't add it unasked. */
export const DESK_HEADER = "x-rigsheet-desk";

/** The address at which a desk says which one it is. */
export const ALIVE = "alive";

/** Beside the help pages: the notices of all that is bundled or shipped. */
export const NOTICES_PAGE = "notices.txt";
