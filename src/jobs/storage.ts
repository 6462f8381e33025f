/**
 * Where logs lie: a disk in Node, a database in a browser. Few verbs, each a
 * single step that has either happened and stays, or has not.
 */
export interface Storage {
  /** @returns the names of everything that was put here and is whole; what it tells of, stays */
  list(): Promise<string[]>;
  /** @returns undefined where there is nothing of that name; what it tells of, stays, even if the write of it was never confirmed */
  read(name: string): Promise<Uint8Array | undefined>;
  /** @returns how much there is of a thing: another number once something was added to it; undefined where there is none */
  size(name: string): Promise<number | undefined>;
  /** The sizes of all at once, where that costs less than one after the other. */
  sizes?(): Promise<ReadonlyMap<string, number>>;
  /**
   * Puts a new thing here, whole or not at all; once it returns, it stays.
   * @throws WrittenElsewhere where there is one of that name
   */
  create(name: string, bytes: Uint8Array): Promise<void>;
  /**
   * Adds to the end; once it returns, the bytes stay. Where it throws, or the
   * program ends in the middle, any part of them may stand at the end.
   * @throws WrittenElsewhere where it is noticed that another has added to it since this one read it or added to it
   */
  append(name: string, bytes: Uint8Array): Promise<void>;
  /** Gives a thing another name, keeping it as it is; nothing happens where it is gone already. Where it throws, or is cut off, the thing may have either name, or both. */
  moveAside(name: string, to: string): Promise<void>;
  /** Takes away what a later thing holds whole; once it returns, it stays away. */
  drop(name: string): Promise<void>;
}

/**
 * Another program, or another window, has written what this one has not seen.
 * The message is a sentence for the user. A host may wrap it in a kind of its
 * own, with this as the cause.
 */
export class WrittenElsewhere extends Error {
  override readonly name = "WrittenElsewhere";
}

export const isWrittenElsewhere = (error: unknown): boolean =>
  [error, (error as Error | undefined)?.cause].some((one) => one instanceof WrittenElsewhere);
