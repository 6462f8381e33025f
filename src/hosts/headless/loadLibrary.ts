/** The spreadsheet library in Node, with our functions registered. */
import * as library from "@odoo/o-spreadsheet";
import { troublesOf, type Part } from "../grid/gridContract";
import type { GridLibrary } from "../grid/library";
import { prepareLibrary } from "../grid/prepareLibrary";

/** @param without parts that are left to the library's own way, to measure them */
export function loadLibrary(without: readonly Part[] = []): GridLibrary {
  quietly(() => prepareLibrary(library, without));
  return library;
}

/** What the library that was loaded lacks, in sentences; nothing where none was needed. */
export const gridTroubles = (): readonly string[] => troublesOf(library);

/** The library reports its timings with console.debug, which in Node would land in a command's output. */
export function quietly<T>(work: () => T): T {
  const { debug, error, warn } = console;
  // It prints the stack of what it answers as an error of the cell.
  console.error = () => undefined;
  console.debug = () => undefined;
  console.warn = (...words: unknown[]) => {
    // Heard where it comes from, in iterationLimit.ts.
    if (!String(words[0]).includes("Maximum iteration")) warn(...words);
  };
  try {
    return work();
  } finally {
    console.debug = debug;
    console.warn = warn;
    console.error = error;
  }
}
