/** Rooms a second time: what the distribution says of each outlet, and what its own row adds. */
import { keyOf } from "./keys";
import { priceEach, varianceOf } from "./cables";
import { tunersAt } from "./distribution/bands";
import type { Answer } from "./distribution/tables";
import {
  eachRow,
  field,
  figure,
  isFilled,
  orNought,
  named,
  rowsOf,
  word,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "./job";
import { usedColumns } from "./roomTypes";
import { answersOf, tablesOf } from "./tablesOf";

/** A difference below it counts as none. */
const NOTHING = 1e-9;

export const plateUsed = (job: Job, room: Row): Value =>
  isFilled(room, "plate") ? room.plate! : word(job, "site_usual_plate");
export const cableUsed = (job: Job, row: Row): Value =>
  isFilled(row, "cable") ? row.cable! : word(job, "site_usual_cable");
const plateOf = (job: Job, room: Row): Row | undefined =>
  named(rowsOf(job, "plates"), "name", plateUsed(job, room));
export const outletRows = (job: Job): readonly Row[] =>
  rowsOf(job, "rooms").filter((row) => isFilled(row, "outlet"));

/** What the sheet shows of an answer: a blank is empty. */
export const shown = (answer: Answer | undefined): Value => answer ?? "";
const at = (
  job: Job,
  table: "OUTLETPLACES" | "OUTLETLEVELS" | "OUTLETNOISE" | "OUTLETVOLTS" | "OUTLETCHECKS",
  room: Row,
) => answersOf(job)[table][rowsOf(job, "rooms").indexOf(room)] ?? [];

/** Low cold, low hot, high cold, high hot; not a number of an outlet whose row is bad. */
export const levelsOf = (job: Job, room: Row): number[] =>
  [0, 1, 2, 3].map((corner) => Number(at(job, "OUTLETLEVELS", room)[corner] ?? NaN));
export const headNameOf = (job: Job, room: Row): Value => shown(at(job, "OUTLETPLACES", room)[0]);
export const tunersOf = (job: Job, room: Row): number => tunersAt(tablesOf(job), tableRow(job, room));
const tableRow = (job: Job, room: Row): Row => tablesOf(job).outlets[rowsOf(job, "rooms").indexOf(room)]!;

export const leastRun = (job: Job, room: Row): number =>
  isFilled(room, "shortest")
    ? figure(room, "shortest")
    : orNought(room, "run") * (1 - field(job, "site_run_tolerance"));
export const mostRun = (job: Job, room: Row): number =>
  isFilled(room, "longest")
    ? figure(room, "longest")
    : orNought(room, "run") * (1 + field(job, "site_run_tolerance"));

/** Of the four corners, and of its own user bands. */
export function weakestOf(job: Job, room: Row): number {
  const own = at(job, "OUTLETLEVELS", room)[4];
  return Math.min(...levelsOf(job, room), ...(typeof own === "number" ? [own] : []));
}

const GOOD: readonly Value[] = ["ok", "not judged", "said", ""];
/** The word of the first check that does not pass. */
export const verdictOf = (words: readonly (Answer | undefined)[]): Value =>
  words.map(shown).find((one) => !GOOD.includes(one)) ?? "ok";

/** What is wrong: a sentence where something is said, else nothing. */
export const trouble = (said: Answer | undefined): Expected => (said === "said" ? /^[^#].{10,}/s : "");

export function roomsSheet(job: Job): Cells {
  const rows = rowsOf(job, "rooms");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "outlet", of, "");
  const blanks = (width: number): ""[] => Array.from({ length: width }, () => "");
  const columns = (table: Parameters<typeof at>[1], width: number): Value[][] =>
    eachRow<Value[]>(
      rows,
      "outlet",
      (row) => Array.from({ length: width }, (_, index) => shown(at(job, table, row)[index])),
      blanks(width),
    );
  const least = field(job, "site_level_low");
  const ofALevel = (row: Row, of: () => Value): Value => (Number.isNaN(levelsOf(job, row)[1]!) ? "" : of());
  const each = (row: Row): number => priceEach(job, cableUsed(job, row));
  const run = (row: Row): number => orNought(row, "run");
  const stretched = (row: Row): number => Number(at(job, "OUTLETLEVELS", row)[5] ?? NaN);
  const platePrice = (row: Row): number =>
    plateUsed(job, row) === "" ? 0 : figure(plateOf(job, row), "price");
  return {
    rooms_verdict: column((row) => verdictOf(at(job, "OUTLETCHECKS", row))),
    rooms_margin: column((row) => ofALevel(row, () => weakestOf(job, row) - least)),
    rooms_place: columns("OUTLETPLACES", 6),
    rooms_weakest: column((row) => ofALevel(row, () => weakestOf(job, row))),
    rooms_strongest: column((row) =>
      ofALevel(row, () => Math.max(levelsOf(job, row)[0]!, levelsOf(job, row)[2]!)),
    ),
    rooms_level: columns("OUTLETLEVELS", 6),
    rooms_slope: column((row) => ofALevel(row, () => levelsOf(job, row)[1]! - levelsOf(job, row)[3]!)),
    rooms_noise: columns("OUTLETNOISE", 4),
    rooms_volts: columns("OUTLETVOLTS", 5),
    rooms_check: eachRow<Expected[]>(
      rows,
      "outlet",
      (row) => [
        ...Array.from({ length: 9 }, (_, index) => shown(at(job, "OUTLETCHECKS", row)[index])),
        trouble(at(job, "OUTLETCHECKS", row)[9]),
      ],
      blanks(10),
    ),
    rooms_least: column((row) => leastRun(job, row)),
    rooms_most: column((row) => mostRun(job, row)),
    rooms_stretched_check: column((row) =>
      ofALevel(row, () => (stretched(row) >= least - NOTHING ? "ok" : "low")),
    ),
    ...usedColumns(job),
    rooms_cable_used: column((row) => cableUsed(job, row)),
    rooms_plate_used: column((row) => plateUsed(job, row)),
    rooms_parts_cost: column((row) => run(row) * each(row) + platePrice(row)),
    rooms_expected_extra: column(
      (row) => ((leastRun(job, row) + 4 * run(row) + mostRun(job, row)) / 6 - run(row)) * each(row),
    ),
    rooms_variance: column((row) => varianceOf(leastRun(job, row), mostRun(job, row), each(row))),
    rooms_from_key: column((row) => keyOf(row.from)),
    rooms_cable_key: column((row) => keyOf(cableUsed(job, row))),
    rooms_plate_key: column((row) => keyOf(plateUsed(job, row))),
    rooms_head_key: column((row) => keyOf(headNameOf(job, row))),
    rooms_split_key: column((row) => keyOf(row.split)),
    rooms_kind_key: column((row) => keyOf(row.kind)),
  };
}
