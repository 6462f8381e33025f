import { rangeOf } from "./address";
import { isWhole, readReference, zoneOf } from "./reference";

/** The cells of a name, or of a print area: one range on one sheet. */
export interface SheetRange {
  readonly sheet: string;
  readonly range: string;
}

/** @returns the sheet and range of `Site!$C$5` or `='Head units'!$C$5:$C$30`; undefined for anything else, whole columns too */
export function areaOf(text: string): SheetRange | undefined {
  const written = text.trim();
  // What is left of the sheet where it was deleted.
  if (/^=?#REF!/i.test(written)) return undefined;
  const cells = readReference(written.startsWith("=") ? written.slice(1) : written);
  if (cells?.sheet === undefined || cells.lastSheet !== undefined) return undefined;
  if (cells.file !== undefined || isWhole(cells)) return undefined;
  return { sheet: cells.sheet, range: rangeOf(zoneOf(cells)) };
}
