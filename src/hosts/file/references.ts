/** References to another sheet, as the file stores them. */
import { parseRange } from "../../formula/address";
import { cornerText } from "../../formula/reference";
import { stop, troubles } from "./fileTrouble";

/** Always quoted: a sheet may be named like a cell or a number. */
export const onSheet = (sheet: string, reference: string): string =>
  `'${sheet.replaceAll("'", "''")}'!${reference}`;

/** `'Head units'!$C$5:$C$30`; a range that is none stops with a sentence. */
export function absoluteRange(sheet: string, range: string, where: string): string {
  const zone = parseRange(range);
  if (!zone) return stop(troubles.badRange(where, range));
  const fixed = (row: number, column: number): string =>
    cornerText({ row, column, rowFixed: true, columnFixed: true });
  const { top, left, bottom, right } = zone;
  return onSheet(
    sheet,
    top === bottom && left === right ? fixed(top, left) : `${fixed(top, left)}:${fixed(bottom, right)}`,
  );
}
