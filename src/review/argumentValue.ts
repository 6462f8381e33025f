/** What an argument of a formula holds, read out of a computed book. */
import type { Argument, Cell } from "../functions/core/cells";
import { address, type Zone } from "../formula/address";
import { literalOf } from "../formula/literalOf";
import { treeOf } from "../formula/parse";
import { areasOf } from "../formula/readAreas";
import { functionName } from "../formula/storedNames";
import { isBookError, type Book, type BookName, type BookResult, type BookSheet } from "../workbooks/book";

/** Whole columns, and whatever else a file may ask for, are not gathered here. */
const MOST_CELLS = 500_000;

/**
 * @param sheet the sheet on which the formula stands
 * @param text the argument as it is written; empty for an omitted one
 * @returns undefined for what only the spreadsheet can work out
 */
export function argumentValue(book: Book, sheet: string, text: string): Argument | undefined {
  if (text === "") return null;
  const sheets = book.sheets.map(({ name }) => name);
  const area = areaIn(book.names, sheets, sheet, text);
  if (area) {
    const { top, bottom, left, right } = area.zone;
    if ((bottom - top + 1) * (right - left + 1) > MOST_CELLS) return undefined;
    return matrixOf(book.sheets[sheets.indexOf(area.sheet)]!, area.zone);
  }
  const tree = treeOf(text);
  return tree && literalOf(tree);
}

/**
 * @param sheet the sheet on which the formula stands
 * @param text an argument as it is written
 * @returns the cells that it names; undefined for anything but a name or a reference
 */
export function areaIn(
  names: readonly BookName[],
  sheets: readonly string[],
  sheet: string,
  text: string,
): { sheet: string; zone: Zone } | undefined {
  const tree = treeOf(text);
  // One cell of a named range, as a formula picks it.
  const picked = tree?.kind === "call" && functionName(tree.name) === "INDEX" ? tree.args : [];
  const [of, row, column] = picked;
  if (picked.length === 3 && of?.kind === "name" && row?.kind === "number" && column?.kind === "number") {
    const whole = areaIn(names, sheets, sheet, of.name);
    if (!whole) return undefined;
    const [top, left] = [whole.zone.top + row.value - 1, whole.zone.left + column.value - 1];
    return { sheet: whole.sheet, zone: { top, left, bottom: top, right: left } };
  }
  if (tree?.kind !== "name" && tree?.kind !== "reference") return undefined;
  const [area] = areasOf({ names, sheets: sheets.map((name) => ({ name })) }, sheet, tree);
  const found = area && sheets.find((one) => one.toLowerCase() === area.sheet.toLowerCase());
  return found === undefined ? undefined : { sheet: found, zone: area!.zone };
}

function matrixOf(sheet: BookSheet, { top, left, bottom, right }: Zone): Cell[][] {
  return Array.from({ length: bottom - top + 1 }, (_, row) =>
    Array.from({ length: right - left + 1 }, (_, column) => {
      const at = address(top + row, left + column);
      return cellOf(sheet.results[at] ?? sheet.cells[at]?.value);
    }),
  );
}

function cellOf(result: BookResult | undefined): Cell {
  if (!isBookError(result)) return result ?? null;
  const code = result.error === "#N/A" ? "#N/A" : "#VALUE!";
  return { kind: "fault", code, message: result.message ?? `A cell that it reads shows ${result.error}.` };
}
