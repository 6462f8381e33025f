/**
 * A formula moved by rows and columns, as a cell below shares it: Excel stores
 * a formula that was filled down once, with the cells that share it, and the
 * library hands the others over without a text. Relative references move,
 * absolute ones stay; one that leaves the sheet becomes `#REF!`.
 */
import { columnLetters, LAST_COLUMN, LAST_ROW, parseAddress } from "../../formula/address";
import { mapCode } from "./formulaParts";

const START = "(?<![\\w.$\\\\])";
const STOP = "(?![\\w.(!])";
const REFERENCE = new RegExp(
  [
    `${START}(?<c>\\$?[A-Z]{1,3})(?<r>\\$?[1-9]\\d{0,6})${STOP}`,
    `${START}(?<c1>\\$?[A-Z]{1,3}):(?<c2>\\$?[A-Z]{1,3})${STOP}`,
    `${START}(?<r1>\\$?[1-9]\\d{0,6}):(?<r2>\\$?[1-9]\\d{0,6})${STOP}`,
  ].join("|"),
  "gi",
);

export function shiftedFormula(formula: string, rows: number, columns: number): string {
  const row = (text: string): string | undefined => {
    if (text.startsWith("$")) return text;
    const moved = Number(text) + rows;
    return moved >= 1 && moved <= LAST_ROW + 1 ? String(moved) : undefined;
  };
  const column = (text: string): string | undefined => {
    const place = parseAddress(`${text}1`);
    if (text.startsWith("$") || !place) return text;
    const moved = place.column + columns;
    return moved >= 0 && moved <= LAST_COLUMN ? columnLetters(moved) : undefined;
  };
  const both = (first: string | undefined, second: string | undefined, between: string): string =>
    first === undefined || second === undefined ? "#REF!" : `${first}${between}${second}`;

  return mapCode(formula, (code) =>
    code.replace(REFERENCE, (...found: unknown[]) => {
      const { c, r, c1, c2, r1, r2 } = found.at(-1) as Record<string, string>;
      if (c !== undefined && r !== undefined) return both(column(c), row(r), "");
      if (c1 !== undefined && c2 !== undefined) return both(column(c1), column(c2), ":");
      return both(row(r1!), row(r2!), ":");
    }),
  );
}
