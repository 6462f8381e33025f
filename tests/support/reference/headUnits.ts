/** Head units a second time: what the distribution says of each, and what its own row adds. */
import {
  eachRow,
  figure,
  filledRows,
  isSame,
  named,
  rowsOf,
  sum,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "./job";
import { cableOfLength, doubtOfLength } from "./distributionSheets";
import { keyOf } from "./keys";
import { headNameOf, outletRows, shown, trouble, tunersOf, verdictOf } from "./rooms";
import { answersOf } from "./tablesOf";

const unitOf = (job: Job, head: Row): Row | undefined => named(rowsOf(job, "units"), "name", head.type);
export const headRows = (job: Job): readonly Row[] => filledRows(job, "heads", "id");

/** Tuners of the outlets that hang on it. */
export const onHead = (job: Job, head: Row): number =>
  sum(
    outletRows(job)
      .filter((room) => isSame(headNameOf(job, room), head.id))
      .map((room) => tunersOf(job, room)),
  );

export function headUnitsSheet(job: Job): Cells {
  const { HEADVOLTS, HEADCHECKS } = answersOf(job);
  const rows = rowsOf(job, "heads");
  const column = (of: (row: Row, at: number) => Value): Value[] => eachRow<Value>(rows, "id", of, "");
  const first = (answers: readonly (Value | null)[] | undefined, width: number): Value[] =>
    Array.from({ length: width }, (_, at) => shown(answers?.[at]));
  const blanks = (width: number): Expected[] => Array.from({ length: width }, () => "");
  const wanted = sum(
    outletRows(job).flatMap((row) => (headNameOf(job, row) === "" ? [] : [tunersOf(job, row)])),
  );
  const most = Math.max(0, ...filledRows(job, "units", "name").map((row) => figure(row, "bands")));
  return {
    heads_verdict: column((_, at) => verdictOf(HEADCHECKS[at]!)),
    heads_fed: eachRow<Expected[]>(rows, "id", (_, at) => first(HEADVOLTS[at], 15), blanks(15)),
    heads_least: column((row) => figure(unitOf(job, row), "least")),
    heads_spare: column((_, at) => {
      const [tuners, bands] = HEADVOLTS[at]!.slice(7, 9);
      return typeof bands === "number" ? bands - Number(tuners) : "";
    }),
    heads_check: eachRow<Expected[]>(
      rows,
      "id",
      (_, at) => [...first(HEADCHECKS[at], 6), trouble(HEADCHECKS[at]![6])],
      blanks(7),
    ),
    heads_cable_used: column((row) => cableOfLength(job, row)),
    heads_variance: column((row) => doubtOfLength(job, row)),
    heads_type_key: column((row) => keyOf(row.type)),
    heads_supply_key: column((row) => keyOf(row.supply)),
    heads_cable_key: column((row) => keyOf(cableOfLength(job, row))),
    heads_wanted: wanted,
    heads_fewest: most === 0 ? "" : Math.ceil(wanted / most),
  };
}
