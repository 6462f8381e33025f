/** A workbook with other inputs, all else in it as it was: what a person put there by hand stays. */
import type { WorkbookDefinition } from "../../workbooks/definition";
import type { Book } from "../../workbooks/book";
import type { Entry } from "../../standards/entries";
import { enterOnGrid } from "../grid/entriesOnGrid";
import { fromModel } from "../grid/fromModel";
import { loadLibrary, quietly } from "./loadLibrary";
import { openModel } from "./recalculate";

/** @returns computed; a sentence where a name that is needed is gone */
export function withEntries(
  book: Book,
  definition: WorkbookDefinition,
  entries: readonly Entry[],
): Book | string {
  const model = openModel(book);
  const refused = quietly(() => enterOnGrid(model, definition, entries));
  return refused ?? fromModel(loadLibrary(), model);
}
