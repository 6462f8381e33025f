/**
 * Reads one column of figures of a survey, by the reader of everything that is typed. A column that writes its
 * decimals otherwise than the workbook's people do is found out by its own cells; then no sign of it is taken for
 * the one or the other where it could be either.
 */
import { rooms } from "../multiRoom/names/rooms";
import { OF, type ColumnWords } from "../names";
import { asFigures } from "../typed/plainText";
import { readTyped } from "../typed/readTyped";
import type { Reading, TypedContext } from "../typed/reading";
import { typedKind, type NumberKind } from "../typed/typedKind";
import { withinLimits } from "../typed/withinLimits";
import type { ImportedCell } from "../imported/table";

export interface ColumnReader {
  /** @returns undefined for a blank cell */
  read(cell: ImportedCell): Reading<number | undefined>;
  /** A cell with a decimal comma that is read; undefined where there is none. */
  readonly comma: string | undefined;
}

/** Signs that can be nothing but decimal signs. */
const DECIMAL = /^[+-]?(?:(?:0|\d{4,})?([.,])\d+|\d{1,3}([.,])(?:\d{1,2}|\d{4,}))(?=$|[^\d.,])/;

/**
 * @param key of a column of figures
 * @param cells of the whole column
 * @param context its `lengths` are what a bare number of the column is in
 */
export function columnReader(
  key: string,
  cells: readonly ImportedCell[],
  context: TypedContext,
): ColumnReader {
  const kind = kindOf(key);
  const texts = cells.filter((cell) => typeof cell === "string");
  const signOf = (text: string): string | undefined => {
    const found = DECIMAL.exec(asFigures(text.slice(0, LONGEST)));
    return found?.[1] ?? found?.[2];
  };
  const signs = new Set(texts.map(signOf));
  const own = context.writing?.decimal ?? ".";
  const mixedSigns = signs.has(own === "." ? "," : ".");
  const read = (cell: ImportedCell): Reading<number | undefined> =>
    typeof cell === "string"
      ? (readTyped(cell, kind, { ...context, mixedSigns }) as Reading<number | undefined>)
      : withinLimits(String(cell.number), cell.number, kind, context.lengths);
  return { read, comma: texts.find((text) => signOf(text) === "," && !("refused" in read(text))) };
}

const LONGEST = 80;

/** The column of the Rooms block itself says what it takes. */
function kindOf(key: string): NumberKind {
  const columns: Readonly<Record<string, ColumnWords>> = rooms[OF].columns;
  return typedKind(columns[key] ?? {}) as NumberKind;
}
