/**
 * Reads one column of figures of a survey, by the reader of everything that is typed. A column that writes its
 * decimals otherwise than the workbook's people do is found out by its own cells; then no sign of it is taken for
 * the one or the other where it could be either.
 */
import { textOf, type ImportedCell } from "../imported/table";
import { asFigures } from "../typed/plainText";
import { readTyped } from "../typed/readTyped";
import type { Reading, TypedContext } from "../typed/reading";
import { typedKind, type NumberKind } from "../typed/typedKind";
import { rounded } from "../typed/units";
import { withinLimits } from "../typed/withinLimits";
import type { Writing } from "../typed/writing";
import { bareLength } from "./bareLength";
import { columnOf, factorBetween, LENGTHS, unitSpelled, type LengthUnit } from "./meanings";

export interface ColumnReader {
  /** @returns undefined for a blank cell; a length in the workbook's unit */
  read(cell: ImportedCell): Reading<number | undefined>;
  /** A bare number of the column in the workbook's unit, whatever a single run may be. */
  convert(value: number): number;
  /** A cell with a decimal comma that is read; undefined where there is none. */
  readonly comma: string | undefined;
  /** What a bare number is in; undefined for what is no length. */
  readonly unit: LengthUnit | undefined;
}

/** Signs that can be nothing but decimal signs. */
const DECIMAL = /^[+-]?(?:(?:0|\d{4,})?([.,])\d+|\d{1,3}([.,])(?:\d{1,2}|\d{4,}))(?=$|[^\d.,])/;
const BARE = /^[+-]? ?[\d.,][\d.,' ]*$/;
const LONGEST = 80;
/** In metres; the rule of the column itself. */
const LONGEST_RUN = 2000;

/** Millimetres in thousands, or feet written as no run is. */
const GROUPED = /^(\d{1,3})([.,'])(\d{3})( ?(?:mm|cm|m))?$/;

/** 12.500 mm can only be twelve and a half metres: nobody runs a cable of a centimetre. */
function withoutGroups(text: string, unit: LengthUnit): string {
  const [, before, sign, behind, own = ""] = GROUPED.exec(asFigures(text.slice(0, LONGEST))) ?? [];
  const its = own.trim() || unit;
  if (before === undefined) return text;
  // Nor does anybody run one of ten kilometres.
  if (its === "m" && sign !== "'" && Number(before + behind) > LONGEST_RUN)
    return `${before}.${behind}${own}`;
  if (its !== "mm" && its !== "cm") return text;
  return sign === "'" || its === "mm" || Number(before) < 10 ? `${before}${behind}${own}` : text;
}

/**
 * @param key of a column of figures
 * @param cells of the whole column
 * @param own what a bare number of the column is in
 * @param into the unit of the workbook's lengths
 */
export function columnReader(
  key: string,
  cells: readonly ImportedCell[],
  { own, into, writing }: { own?: LengthUnit; into: "m" | "ft"; writing?: Writing },
): ColumnReader {
  const kind = typedKind(columnOf(key)) as NumberKind;
  const texts = cells.filter((cell) => typeof cell === "string").map((text) => text.slice(0, LONGEST));
  const signOf = (text: string): string | undefined => {
    const found = DECIMAL.exec(LENGTHS.has(key) ? bareLength(text).text : asFigures(text));
    return found?.[1] ?? found?.[2];
  };
  const signs = new Set(texts.map(signOf));
  const mixedSigns = signs.has((writing?.decimal ?? ".") === "." ? "," : ".");
  const unit = LENGTHS.has(key) ? (own ?? into) : undefined;
  // What the reader of typed lengths takes bare; a bare number in another unit has that written behind it.
  const taken = unit === "m" || unit === "ft" ? unit : into;
  // "in" behind a figure would be a word that was not finished.
  const spelled = unit === "in" ? '"' : ` ${unit}`;
  const context: TypedContext = { ...(writing && { writing }), lengths: taken, mixedSigns };
  const factor = unit === undefined ? 1 : factorBetween(taken, into);
  const inWorkbook = (reading: Reading<number | undefined>): Reading<number | undefined> =>
    "refused" in reading || reading.value === undefined || factor === 1
      ? reading
      : { value: rounded(reading.value * factor) };
  const readText = (given: string): Reading<number | undefined> => {
    const text = unit === undefined ? given : withoutGroups(given, unit);
    const plain = asFigures(text.slice(0, LONGEST));
    const written = unit !== undefined && unit !== taken && BARE.test(plain) ? `${plain}${spelled}` : text;
    return inWorkbook(readTyped(written, kind, context) as Reading<number | undefined>);
  };
  const read = (cell: ImportedCell): Reading<number | undefined> => {
    if (typeof cell === "string") return readText(cell);
    const its = cell.unit === undefined ? unit : unitSpelled(cell.unit);
    if (unit !== undefined && its === undefined) return readText(textOf(cell));
    const value = unit === undefined ? cell.number : rounded(cell.number * factorBetween(its!, taken));
    return inWorkbook(withinLimits(String(cell.number), value, kind, unit && taken));
  };
  const convert = (value: number): number =>
    unit === undefined ? value : rounded(value * factorBetween(unit, into));
  return {
    read,
    convert,
    comma: texts.find((text) => signOf(text) === "," && !("refused" in read(text))),
    unit,
  };
}
