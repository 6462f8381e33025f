/**
 * A survey against what Rooms has already: outlets are told by their names. A blank of the survey says nothing, so
 * what stands there stays; and so does what was typed in columns that the survey does not have.
 */
import { inSigns } from "../typed/jotted";
import { asWord } from "../typed/plainText";
import { nameOf } from "./meanings";
import { inWords, type SurveyRow } from "./survey";

/** A filled row of Rooms. */
export interface RoomsRow {
  /** Counted from the thin row above the block's data. */
  readonly offset: number;
  readonly cells: SurveyRow;
}

export interface CellChange {
  readonly key: string;
  readonly old: number | string | undefined;
  /** Undefined where the cell becomes blank. */
  readonly now: number | string | undefined;
}

export interface RowChange {
  readonly offset: number;
  readonly outlet: string;
  readonly cells: readonly CellChange[];
}

export interface GoneRow {
  readonly offset: number;
  readonly outlet: string;
}

export interface OutletMerge {
  readonly added: readonly SurveyRow[];
  readonly changed: readonly RowChange[];
  /** On Rooms, and not in the survey: kept unless a person says otherwise. */
  readonly gone: readonly GoneRow[];
  /** Outlets that are as the survey has them. */
  readonly same: number;
}

/** What is written into rows that Rooms has. */
export interface RowChanges {
  readonly changed: readonly RowChange[];
  /** Rows whose inputs are all taken out. */
  readonly cleared: readonly GoneRow[];
}

export const NO_CHANGES: RowChanges = { changed: [], cleared: [] };

export function mergeOutlets(rows: readonly SurveyRow[], rooms: readonly RoomsRow[]): OutletMerge {
  // A name that stands twice on Rooms is its first row's.
  const known = new Map(rooms.toReversed().map((row) => [nameKey(row.cells.outlet), row]));
  const named = new Set(rows.map(({ outlet }) => nameKey(outlet)));
  const added: SurveyRow[] = [];
  const changed: RowChange[] = [];
  const met = new Set<number>();
  for (const row of rows) {
    const its = known.get(nameKey(row.outlet));
    if (!its) {
      added.push(row);
      continue;
    }
    met.add(its.offset);
    const cells = changesOf(row, its.cells);
    if (cells.length > 0) changed.push({ offset: its.offset, outlet: String(its.cells.outlet), cells });
  }
  return {
    added,
    changed,
    gone: rooms
      .filter(({ cells }) => !named.has(nameKey(cells.outlet)))
      .map(({ offset, cells }) => ({ offset, outlet: String(cells.outlet) })),
    same: met.size - changed.length,
  };
}

const nameKey = (name: number | string | undefined): string => asWord(String(name ?? ""));

function changesOf(row: SurveyRow, old: SurveyRow): CellChange[] {
  const cells = Object.entries(row).flatMap(([key, now]): CellChange[] =>
    key === "outlet" || isSame(key, old[key], now) ? [] : [{ key, old: old[key], now }],
  );
  // Ends of an earlier range that the new run does not lie between are no ends of it.
  for (const key of ["shortest", "longest"] as const) {
    const end = old[key];
    if (row.run === undefined || row[key] !== undefined || typeof end !== "number") continue;
    if (key === "shortest" ? end > Number(row.run) : end < Number(row.run))
      cells.push({ key, old: end, now: undefined });
  }
  return cells;
}

/** A length that was converted differs in its last digits; a blank quantity is one. */
function isSame(key: string, old: number | string | undefined, now: number | string): boolean {
  if (key === "quantity" && (old ?? 1) === now) return true;
  if (typeof old === "number" && typeof now === "number") return Math.abs(old - now) < 1e-4;
  // Capitals and blanks make no other room.
  return old !== undefined && asWord(String(old)) === asWord(String(now));
}

/** "run: 12 → 14.5". */
export const changeInWords = ({ key, old, now }: CellChange, decimal = "."): string =>
  `${nameOf(key).toLowerCase()}: ${shownCell(old, decimal) ?? "blank"} → ${shownCell(now, decimal) ?? "blank"}`;

/** A name with a point in it stays. */
export const shownCell = (value: number | string | undefined, decimal: string): string | undefined =>
  typeof value === "number" ? inSigns(String(value), decimal) : value;

/** On the button that writes it; undefined where there is nothing to write. */
export function mergeInWords({ added, changed }: OutletMerge, cleared: number): string | undefined {
  const parts = [
    added.length > 0 ? `add ${inWords(added.length, "outlet")}` : "",
    changed.length > 0 ? `change ${changed.length}` : "",
    cleared > 0 ? `take out ${cleared}` : "",
  ].filter((part) => part !== "");
  if (parts.length === 0) return undefined;
  const words = parts.join(", ");
  return `${words[0]!.toUpperCase()}${words.slice(1)}${parts[0]!.startsWith("add") && parts.length === 1 ? " to Rooms" : " on Rooms"}`;
}

/** What was done, in a sentence without its end. */
export function doneInWords(added: number, { changed, cleared }: RowChanges): string {
  const parts = [
    added > 0 ? `${inWords(added, "outlet")} added to Rooms` : "",
    changed.length > 0 ? `${inWords(changed.length, "outlet")} changed` : "",
    cleared.length > 0 ? `${inWords(cleared.length, "outlet")} taken out` : "",
  ].filter((part) => part !== "");
  return parts.join(", ");
}
