/** The areas of a workbook that a formula reads. */
import { parseRange, type Zone } from "../../../formula/address";
import type { Book } from "../../../workbooks/book";
import { namesIn } from "../../../review/namesIn";

export interface Area {
  readonly sheet: string;
  readonly zone: Zone;
}

const REFERENCE =
  /(?:(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!)?(?<![\p{L}\p{N}_.$])(\$?[A-Z]{1,3}\$?[1-9]\d*(?::\$?[A-Z]{1,3}\$?[1-9]\d*)?)(?![\p{L}\p{N}_.(])/giu;

/** @param sheet the sheet on which the formula stands */
export function readAreas(book: Book, sheet: string, formula: string): Area[] {
  const named = namesIn(book, formula).flatMap((name): Area[] => {
    const zone = parseRange(name.range);
    return zone ? [{ sheet: name.sheet, zone }] : [];
  });
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""');
  const written = [...bare.matchAll(REFERENCE)].flatMap(([, quoted, plain, range]): Area[] => {
    const zone = parseRange(range!);
    return zone ? [{ sheet: quoted?.replace(/''/g, "'") ?? plain ?? sheet, zone }] : [];
  });
  return [...named, ...written];
}

export const meet = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.zone.top <= b.zone.bottom &&
  b.zone.top <= a.zone.bottom &&
  a.zone.left <= b.zone.right &&
  b.zone.left <= a.zone.right;
