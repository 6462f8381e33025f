/** References to another sheet, as the file stores them, and back. */
import { address, parseRange, rangeOf } from "../../formula/address";
import { stop, troubles } from "./fileTrouble";

/** Always quoted: a sheet may be named like a cell or a number. */
export const onSheet = (sheet: string, reference: string): string =>
  `'${sheet.replace(/'/g, "''")}'!${reference}`;

/** `'Head units'!$C$5:$C$30`; a range that is none stops with a sentence. */
export function absoluteRange(sheet: string, range: string, where: string): string {
  const zone = parseRange(range);
  if (!zone) return stop(troubles.badRange(where, range));
  const { top, left, bottom, right } = zone;
  const fixed = (row: number, column: number): string =>
    address(row, column).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
  return onSheet(
    sheet,
    top === bottom && left === right ? fixed(top, left) : `${fixed(top, left)}:${fixed(bottom, right)}`,
  );
}

/** The sheet and range of `Site!$C$5` or `'Head units'!$C$5:$C$30`; `undefined` for anything else. */
export function parseAbsoluteRange(text: string): { sheet: string; range: string } | undefined {
  const found = /^(?:'((?:[^']|'')+)'|([^'!]+))!([^!]+)$/.exec(text.trim());
  const zone = found && parseRange(found[3]!);
  if (!zone) return undefined;
  return { sheet: found[1]?.replace(/''/g, "'") ?? found[2]!, range: rangeOf(zone) };
}
