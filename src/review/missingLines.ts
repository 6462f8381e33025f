/** Lines that a template prints and that a workbook has nowhere on their sheet. */
import type { Book } from "../workbooks/book";
import type { Part, WorkbookDefinition } from "../workbooks/definition";
import { blankBook } from "./blankBook";
import type { FindingPlace } from "./finding";

export interface MissingLine {
  /** Where the template has it. */
  readonly place: FindingPlace;
  readonly line: string;
}

/** @param linesOf the lines of a part that are wanted */
export function missingLines(
  book: Book,
  definition: WorkbookDefinition,
  linesOf: (part: Part) => readonly string[],
): MissingLine[] {
  const blank = blankBook(definition);
  return definition.sheets.flatMap(({ name, parts }) => {
    const cells = book.sheets.find((one) => one.name === name)?.cells;
    if (!cells) return [];
    const there = new Set(Object.values(cells).map(({ value }) => value));
    const template = Object.entries(blank.sheets.find((one) => one.name === name)!.cells);
    return parts.flatMap(linesOf).flatMap((line) => {
      if (there.has(line)) return [];
      const cell = template.find(([, { value }]) => value === line)?.[0] ?? "A1";
      return [{ place: { sheet: name, cell }, line }];
    });
  });
}
