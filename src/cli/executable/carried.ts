/** What a single executable carries: the files of the built package, and a list of them. */
import { createHash } from "node:crypto";
import { getAsset, getRawAsset } from "node:sea";

export interface CarriedFile {
  /** From the folder's top, with strokes. */
  readonly path: string;
  readonly size: number;
  readonly sha256: string;
}

export interface Carried {
  /** Of the list, and so of all that it names: names the folder that the files are put into. */
  readonly id: string;
  readonly files: readonly CarriedFile[];
  readonly bytesOf: (path: string) => Uint8Array;
}

/** The list's name among the parts; build/executables/makeExecutable.mjs puts it in. */
const LIST = "files.json";
const ID_LENGTH = 16;

export const hashOf = (bytes: Uint8Array | string): string =>
  createHash("sha256").update(bytes).digest("hex");

/** Those of the program that runs. */
export function carriedFiles(): Carried {
  const list = getAsset(LIST, "utf8");
  return {
    id: hashOf(list).slice(0, ID_LENGTH),
    files: JSON.parse(list) as CarriedFile[],
    // Not copied; it must not be written to.
    bytesOf: (path) => new Uint8Array(getRawAsset(path) as ArrayBuffer),
  };
}
