/** A reference to cells, read from its text and written again. */
import { address, columnLetters, LAST_COLUMN, LAST_ROW, parseAddress, type Zone } from "./address";

/** One corner; of whole rows it has no column, of whole columns no row. 0-based. */
export interface Corner {
  readonly row?: number;
  readonly column?: number;
  /** Written with a dollar sign: it stays when its formula is filled down. */
  readonly rowFixed: boolean;
  readonly columnFixed: boolean;
}

export interface Sheets {
  /** `[1]` or `[prices.xlsx]`, with what stands before it: cells of another file. */
  readonly file?: string;
  readonly sheet: string;
  /** The last of several sheets, first to last. */
  readonly lastSheet?: string;
}

export interface Reference extends Partial<Sheets> {
  readonly from: Corner;
  /** Undefined for one cell. */
  readonly to?: Corner;
}

/** @returns undefined for anything but cells, rows or columns that a sheet can have */
export function readReference(text: string): Reference | undefined {
  const mark = text.lastIndexOf("!");
  const sheets = mark < 0 ? undefined : sheetsIn(text.slice(0, mark));
  if (mark >= 0 && sheets === undefined) return undefined;
  const [first, last, ...rest] = text.slice(mark + 1).split(":");
  const from = cornerOf(first!);
  const to = last === undefined ? undefined : cornerOf(last);
  if (!from || rest.length > 0 || (last !== undefined && !to)) return undefined;
  if (isWhole({ from }) && !to) return undefined;
  if (to && (from.row === undefined) !== (to.row === undefined)) return undefined;
  if (to && (from.column === undefined) !== (to.column === undefined)) return undefined;
  return { ...sheets, from, ...(to && { to }) };
}

/** `Rooms`, `'Head units'`, `[1]Rooms` or `'May:June'`, without the exclamation mark. */
function sheetsIn(text: string): Sheets | undefined {
  const plain = isQuoted(text) ? text.slice(1, -1).replaceAll("''", "'") : text;
  const end = plain.lastIndexOf("]") + 1;
  const [sheet, lastSheet, ...rest] = plain.slice(end).split(":");
  if (!sheet || rest.length > 0) return undefined;
  return {
    ...(end > 0 && { file: plain.slice(0, end) }),
    sheet,
    ...(lastSheet !== undefined && { lastSheet }),
  };
}

const isQuoted = (text: string): boolean => text.length > 2 && text.startsWith("'") && text.endsWith("'");

/** `$B$3`, `$B` or `3`. */
function cornerOf(text: string): Corner | undefined {
  const columnFixed = text.startsWith("$");
  const bare = columnFixed ? text.slice(1) : text;
  if (isDigit(bare)) {
    const place = parseAddress(`A${bare}`);
    return place && { row: place.row, rowFixed: columnFixed, columnFixed: false };
  }
  const letters = lettersAtStart(bare);
  const rest = bare.slice(letters);
  const rowFixed = rest.startsWith("$");
  if (rest === "") {
    const place = parseAddress(`${bare}1`);
    return place && { column: place.column, rowFixed: false, columnFixed };
  }
  const place = isDigit(rowFixed ? rest.slice(1) : rest) ? parseAddress(bare) : undefined;
  return place && { ...place, rowFixed, columnFixed };
}

const isDigit = (text: string): boolean => text.charAt(0) >= "0" && text.charAt(0) <= "9";

function lettersAtStart(text: string): number {
  const isLetter = (letter: string): boolean => letter.toUpperCase() >= "A" && letter.toUpperCase() <= "Z";
  let count = 0;
  while (count < text.length && isLetter(text.charAt(count))) count++;
  return count;
}

/** Whether it is of whole rows or whole columns. */
export const isWhole = ({ from }: Reference): boolean => from.row === undefined || from.column === undefined;

/** All the cells of a reference, on whatever sheet. */
export function zoneOf({ from, to = from }: Reference): Zone {
  const [rows, columns] = [
    [from.row ?? 0, to.row ?? LAST_ROW],
    [from.column ?? 0, to.column ?? LAST_COLUMN],
  ] as const;
  return {
    top: Math.min(...rows),
    bottom: Math.max(...rows),
    left: Math.min(...columns),
    right: Math.max(...columns),
  };
}

/** `C5`, `$C5`, `$C` or `5`. */
export function cornerText({ row, column, rowFixed, columnFixed }: Corner): string {
  if (row !== undefined && column !== undefined && !rowFixed && !columnFixed) return address(row, column);
  const letters = column === undefined ? "" : `${columnFixed ? "$" : ""}${columnLetters(column)}`;
  return row === undefined ? letters : `${letters}${rowFixed ? "$" : ""}${row + 1}`;
}
