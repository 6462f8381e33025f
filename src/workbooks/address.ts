/** A1 addresses and 0-based rows and columns. */

export interface Place {
  readonly row: number;
  readonly column: number;
}

export interface Zone {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** The last row and column that an .xlsx sheet can have, 0-based. */
export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

/** 0 → A, 25 → Z, 26 → AA. */
export function columnLetters(column: number): string {
  let letters = "";
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) {
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  }
  return letters;
}

export const address = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** `C5` or `$C$5` into its place; `undefined` for anything else or beyond the sheet. */
export function parseAddress(text: string): Place | undefined {
  const found = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i.exec(text);
  if (!found) return undefined;
  let column = 0;
  for (const letter of found[1]!.toUpperCase()) column = column * 26 + (letter.charCodeAt(0) - 64);
  const place = { row: Number(found[2]) - 1, column: column - 1 };
  return place.row <= LAST_ROW && place.column <= LAST_COLUMN ? place : undefined;
}

export const rangeOf = ({ top, left, bottom, right }: Zone): string =>
  top === bottom && left === right ? address(top, left) : `${address(top, left)}:${address(bottom, right)}`;

/** `B2:D9`, `$B$2:$D$9` or a single address into its zone. */
export function parseRange(text: string): Zone | undefined {
  const [first, last, ...rest] = text.split(":");
  const from = parseAddress(first ?? "");
  const to = last === undefined ? from : parseAddress(last);
  if (!from || !to || rest.length > 0) return undefined;
  return {
    top: Math.min(from.row, to.row),
    left: Math.min(from.column, to.column),
    bottom: Math.max(from.row, to.row),
    right: Math.max(from.column, to.column),
  };
}

/** A sheet's name as a formula needs it: quoted where it holds more than letters, digits and underscores. */
export const quotedSheet = (name: string): string =>
  /^[A-Za-z_]\w*$/.test(name) ? name : `'${name.replace(/'/g, "''")}'`;
