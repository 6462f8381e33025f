/** What the page and the worker that keeps it for use without a network say to each other. */

/** A release as the build lists it, at the head of the worker's script. */
export interface Release {
  /** Of the release's content: another for every change. */
  readonly edition: string;
  /** As people name it. */
  readonly version: string;
  /**
   * Each file by its address under the folder, with the SHA-256 of its bytes. Null for what an office may replace by
   * another version: the libraries under the LGPL.
   */
  readonly files: Readonly<Record<string, string | null>>;
  /** Of these files, those that hold others as packed JSON, by name and text; with the folder that they belong into. */
  readonly packs: Readonly<Record<string, string>>;
  /** Further files, with their SHA-256: no visit waits for them, and they are fetched once a page has started. */
  readonly later: Readonly<Record<string, string>>;
}

/** What a page asks of the worker. */
export type Asked =
  | "which"
  /** To hand out the worker's own release from now on. */
  | "use"
  /** To fetch what no visit waits for. */
  | "later"
  /** To throw away what no page needs any more. */
  | "tidy";

export interface Which {
  readonly edition: string;
  readonly version: string;
  /** The release that pages are handed. */
  readonly current: string | undefined;
  /** Windows with the desk in them. */
  readonly windows: number;
}

/** Told to all pages by a worker that could not keep a release. */
export interface NotKept {
  readonly notKept: string;
  /** No release is kept so far. */
  readonly isFirst: boolean;
}
