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

const known: string[] = [];

/** 0 → A, 25 → Z, 26 → AA. */
export const columnLetters = (column: number): string => (known[column] ??= lettersOf(column));

function lettersOf(column: number): string {
  let letters = "";
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) {
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  }
  return letters;
}

export const address = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

const DOLLAR = 36;
const isDigit = (code: number): boolean => code >= 48 && code <= 57;
/** 1 for A or a to 26 for Z or z, 0 for anything else. */
function letterNumber(code: number): number {
  const capital = code >= 97 ? code - 32 : code;
  return capital >= 65 && capital <= 90 ? capital - 64 : 0;
}

/**
 * `C5` or `$C$5` into its place; `undefined` for anything else or beyond the sheet.
 * Character by character: a big job asks a million times.
 */
export function parseAddress(text: string): Place | undefined {
  let at = text.charCodeAt(0) === DOLLAR ? 1 : 0;
  let column = 0;
  for (let letter; (letter = letterNumber(text.charCodeAt(at))) > 0; at++) {
    column = column * 26 + letter;
    if (column > LAST_COLUMN + 1) return undefined;
  }
  if (text.charCodeAt(at) === DOLLAR) at++;
  const digits = text.slice(at);
  if (column === 0 || digits.length === 0 || digits.length > 7 || digits.startsWith("0")) return undefined;
  for (let index = 0; index < digits.length; index++)
    if (!isDigit(digits.charCodeAt(index))) return undefined;
  const row = Number(digits) - 1;
  return row <= LAST_ROW ? { row, column: column - 1 } : undefined;
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

/** Whether a place lies in a zone, its edges included. */
export const isInside = ({ top, left, bottom, right }: Zone, row: number, column: number): boolean =>
  top <= row && row <= bottom && left <= column && column <= right;
