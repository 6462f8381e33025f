/** The spreadsheet library in Node, with our functions registered. */
import * as library from "@odoo/o-spreadsheet";
import { allFunctions } from "../../functions/all";
import { registerBookFacts } from "../grid/bookFacts";
import type { GridLibrary } from "../grid/library";
import { registerFunctions } from "../grid/registerFunctions";

let ready = false;

export function loadLibrary(): GridLibrary {
  if (!ready) {
    ready = true;
    registerFunctions(library, allFunctions);
    registerBookFacts(library);
  }
  return library;
}

/** The library reports its timings with console.debug, which in Node would land in a command's output. */
export function quietly<T>(work: () => T): T {
  const { debug } = console;
  console.debug = () => undefined;
  try {
    return work();
  } finally {
    console.debug = debug;
  }
}
