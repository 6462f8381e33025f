/** What an argument of a formula holds, read out of a computed book. */
import type { Argument, Cell } from "../functions/core/cells";
import { exampleCall } from "../help/exampleCall";
import { address, parseRange, type Zone } from "../formula/address";
import { isBookError, type Book, type BookName, type BookResult, type BookSheet } from "../workbooks/book";

/**
 * @param sheet the sheet on which the formula stands
 * @param text the argument as it is written; empty for an omitted one
 * @returns undefined for what only the spreadsheet can work out
 */
export function argumentValue(book: Book, sheet: string, text: string): Argument | undefined {
  if (text === "") return null;
  const sheets = book.sheets.map(({ name }) => name);
  const area = areaIn(book.names, sheets, sheet, text);
  if (area) return matrixOf(book.sheets[sheets.indexOf(area.sheet)]!, area.zone);
  try {
    const { args } = exampleCall(`RIG.X(${text})`);
    return args.length === 1 ? args[0] : undefined;
  } catch {
    return undefined;
  }
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
  // One cell of a named range, as a formula picks it.
  const picked = /^INDEX\(([a-z_][\w.]*),(\d+),(\d+)\)$/i.exec(text);
  if (picked) {
    const whole = areaIn(names, sheets, sheet, picked[1]!);
    if (!whole) return undefined;
    const [top, left] = [whole.zone.top + Number(picked[2]) - 1, whole.zone.left + Number(picked[3]) - 1];
    return { sheet: whole.sheet, zone: { top, left, bottom: top, right: left } };
  }
  const name = names.find((one) => one.name.toLowerCase() === text.toLowerCase());
  const written = /^(?:(?:'((?:[^']|'')+)'|([^'!]+))!)?([$A-Z0-9:]+)$/i.exec(text);
  const on = name?.sheet ?? written?.[1]?.replace(/''/g, "'") ?? written?.[2] ?? sheet;
  const zone = parseRange(name?.range ?? written?.[3] ?? "");
  const found = sheets.find((one) => one.toLowerCase() === on.toLowerCase());
  return found !== undefined && zone ? { sheet: found, zone } : undefined;
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
