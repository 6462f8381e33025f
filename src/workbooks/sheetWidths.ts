/** How wide a sheet is: what its parts want, where notes stand, and what of it prints. */
import type { BookSheet } from "./book";
import type { Block, Column, SheetDefinition } from "./definition";
import { CHECK_WIDTHS } from "./layOutChecks";
import { EXERCISE_WIDTHS } from "./layOutExercise";

export const DEFAULT_COLUMN_WIDTH = 11;
/** Right of a field's unit. */
export const BESIDE_COLUMN = 3;
/** The column of the master verdict in every sheet's first row. */
export const VERDICT_COLUMN = 3;
/** A letter of running text, in the digits in which a column's width is counted, with something to spare. */
export const LETTER_WIDTH = 0.85;
/** The longest line of a copy's note on About; it is written when the copy is made. */
const LONGEST_NOTE = 125;
/** Notes further to the right than this run on beside the unit. */
const FARTHEST_NOTE_COLUMN = 6;

/** Lines flow over the blank cells beside them, but print only as far as the last column: it is made wide enough. */
export function makeRoomForLines({ cells, columnWidths }: BookSheet): void {
  const lengths = Object.values(cells).map(({ value }) => (typeof value === "string" ? value.length : 0));
  const needed = Math.ceil(Math.max(LONGEST_NOTE, ...lengths) * LETTER_WIDTH);
  const last = Math.max(VERDICT_COLUMN, ...Object.keys(columnWidths).map(Number));
  const before = Object.entries(columnWidths).reduce(
    (sum, [column, width]) => sum + (Number(column) === last ? 0 : width),
    0,
  );
  columnWidths[last] = Math.max(columnWidths[last] ?? 0, needed - before);
}

/** Where the columns end that the sheet prints; undefined where all of them do. */
export function lastPrinted({ parts, print }: SheetDefinition): number | undefined {
  const block = parts.find((part): part is Block => part.kind === "block");
  if (!block || print.through === undefined) return undefined;
  const columns = block.columns.flatMap(({ key, across }) =>
    across ? across.map((one) => [key, `${key}_${one.key}`]) : [[key]],
  );
  return columns.map((keys) => keys.includes(print.through!)).lastIndexOf(true);
}

/** How many columns the widest part of a sheet takes. */
export const columnsWanted = ({ parts }: SheetDefinition): number =>
  Math.max(
    ...parts.map((part) => {
      if (part.kind === "block") return part.columns.reduce((sum, column) => sum + columnsOf(column), 0);
      if (part.kind === "table") return part.columns.length;
      if (part.kind === "exercise") return EXERCISE_WIDTHS.length;
      if (part.kind === "answer") return part.columns.length;
      if (part.kind === "fields") return BESIDE_COLUMN + (part.besideHeads?.length ?? 0);
      return part.kind === "grid" ? part.heads.length + 1 : part.kind === "checks" ? CHECK_WIDTHS.length : 3;
    }),
  );

/** The first column that no other part of the sheet uses; 0 when it lies too far to the right. */
export function noteColumnOf(definition: SheetDefinition): number {
  const column = columnsWanted(definition);
  return column <= FARTHEST_NOTE_COLUMN ? column : 0;
}

export const columnsOf = ({ across }: Column): number => across?.length ?? 1;
