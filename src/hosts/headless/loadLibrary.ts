/** The spreadsheet library in Node, with our functions registered. */
import * as library from "@odoo/o-spreadsheet";
import type { GridLibrary } from "../grid/library";
import { prepareLibrary } from "../grid/prepareLibrary";

export function loadLibrary(): GridLibrary {
  prepareLibrary(library);
  return library;
}

/** The library reports its timings with console.debug, which in Node would land in a command's output. */
export function quietly<T>(work: () => T): T {
  const { debug, error, warn } = console;
  // It prints the stack of what it answers as an error of the cell.
  console.error = () => undefined;
  console.debug = () => undefined;
  console.warn = (...words: unknown[]) => {
    // The library gives up on a chain of spills that is too long and would leave stale values behind.
    if (String(words[0]).includes("Maximum iteration"))
      throw new Error("the workbook could not be computed to its end");
    warn(...words);
  };
  try {
    return work();
  } finally {
    console.debug = debug;
    console.error = error;
    console.warn = warn;
  }
}
