/** As much of a workbook as some of its cells are worked out from. */
import { parseRange } from "../formula/address";
import { AreasFound } from "../formula/areasFound";
import { readAreas, type Area } from "../formula/readAreas";
import { tokensOf } from "../formula/tokens";
import { isBookError, type Book, type BookCell } from "../workbooks/book";
import type { Undoing } from "./finding";
import { filledArea } from "./followersOf";

/** How far an error would reach as a result is not known: all that lies below and beside it may be its. */
const ANY_REACH = { rows: 1_048_576, columns: 16_384 } as const;

const ANYWHERE: ReadonlySet<string> = new Set(["INDIRECT", "OFFSET"]);

interface Filled {
  readonly sheet: string;
  readonly cell: string;
  readonly area: Area;
  readonly formula: string;
}

/**
 * @param names of cells whose values are wanted
 * @param changes that may be made: what their formulas read stays too
 * @returns the book without the formulas that nothing wanted reads; what was typed stays
 */
export function sliced(book: Book, names: readonly string[], changes: readonly Undoing[] = []): Book {
  // What such a formula reads stands nowhere in it.
  const readsAnywhere = ({ formula }: { readonly formula?: string }): boolean =>
    formula !== undefined &&
    tokensOf(formula).some(({ kind, text }) => kind === "function" && ANYWHERE.has(text.toUpperCase()));
  if (
    book.sheets.some(({ cells }) => Object.values(cells).some(readsAnywhere)) ||
    changes.some(readsAnywhere)
  )
    return book;
  const formulas = [
    ...book.sheets.flatMap(({ name, cells, results }) =>
      Object.entries(cells).flatMap(([cell, { formula, spill }]) =>
        formula === undefined
          ? []
          : [filled(name, cell, formula, isBookError(results[cell]) ? ANY_REACH : spill)],
      ),
    ),
    ...changes.flatMap(({ place: { sheet, cell }, formula }) =>
      formula === undefined ? [] : [filled(sheet, cell, formula)],
    ),
  ];
  const take = new AreasFound(formulas.map((one) => [one.area, one] as const)).taker();
  const found = new Set<Filled>();
  const needed = new Set<string>();
  const wanted = book.names.flatMap(({ name, sheet, range }): Area[] => {
    const zone = names.includes(name) ? parseRange(range) : undefined;
    return zone ? [{ sheet, zone }] : [];
  });
  // It grows while it is gone through.
  for (const area of wanted)
    for (const one of take(area)) {
      if (found.has(one)) continue;
      found.add(one);
      needed.add(`${one.sheet}!${one.cell}`);
      wanted.push(...readAreas(book, one.sheet, one.formula));
    }
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      cells: Object.fromEntries(
        Object.entries(sheet.cells).filter(
          ([at, { formula, value }]) =>
            value !== undefined || (formula !== undefined && needed.has(`${sheet.name}!${at}`)),
        ),
      ),
    })),
  };
}

const filled = (sheet: string, cell: string, formula: string, spill?: BookCell["spill"]): Filled => ({
  sheet,
  cell,
  area: filledArea(sheet, cell, spill),
  formula,
});
