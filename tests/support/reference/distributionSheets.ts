/** Parts, Dishes and Distribution a second time: what the distribution says of their rows, and what these add. */
import { priceEach, varianceOf } from "./cables";
import type { Answer } from "./distribution/tables";
import {
  eachRow,
  field,
  figure,
  isFilled,
  named,
  orNought,
  rowsOf,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "./job";
import { keyOf } from "./keys";
import { cableUsed, shown, trouble, verdictOf } from "./rooms";
import { answersOf } from "./tablesOf";

export const partsSheet = (job: Job): Cells => ({
  cables_each: eachRow<Value>(
    rowsOf(job, "cables"),
    "name",
    (row) => figure(row, "price") / figure(row, "reel"),
    "",
  ),
});

const blanks = (width: number): Expected[] => Array.from({ length: width }, () => "");
const first = (answers: readonly Answer[] | undefined, width: number): Value[] =>
  Array.from({ length: width }, (_, at) => shown(answers?.[at]));

/** Of a length that is not sure by so much to either side; nothing without a cable. */
const doubtOf = (job: Job, row: Row, length: number): Value => {
  const tolerance = field(job, "site_run_tolerance");
  return varianceOf(length * (1 - tolerance), length * (1 + tolerance), priceEach(job, cableUsed(job, row)));
};
export const doubtOfLength = (job: Job, row: Row): Value =>
  isFilled(row, "length") ? doubtOf(job, row, figure(row, "length")) : 0;
export const cableOfLength = (job: Job, row: Row): Value =>
  isFilled(row, "length") ? cableUsed(job, row) : "";

export function dishesSheet(job: Job): Cells {
  const { DISHCHECKS, FEEDERCHECKS } = answersOf(job);
  const dishes = rowsOf(job, "dishes");
  const feeders = rowsOf(job, "feeders");
  const cables = (at: number): number => Number(FEEDERCHECKS[at]?.[0] ?? NaN);
  const together = (row: Row, at: number): number => cables(at) * orNought(row, "length");
  return {
    dishes_verdict: eachRow<Value>(dishes, "name", (_, at) => verdictOf([DISHCHECKS[at]?.[4]]), ""),
    dishes_seen: eachRow<Expected[]>(
      dishes,
      "name",
      (_, at) => [...first(DISHCHECKS[at], 5), trouble(DISHCHECKS[at]?.[5])],
      blanks(6),
    ),
    dishes_feed_key: eachRow<Value>(dishes, "name", (row) => keyOf(row.feed), ""),
    dishes_part_key: eachRow<Value>(dishes, "name", (row) => keyOf(row.part), ""),
    feeders_verdict: eachRow<Value>(feeders, "from", (_, at) => verdictOf([FEEDERCHECKS[at]?.[1]]), ""),
    feeders_check: eachRow<Expected[]>(
      feeders,
      "from",
      (_, at) => [...first(FEEDERCHECKS[at], 2), trouble(FEEDERCHECKS[at]?.[2])],
      blanks(3),
    ),
    feeders_cable_used: eachRow<Value>(feeders, "from", (row) => cableUsed(job, row), ""),
    feeders_together: eachRow<Value>(feeders, "from", together, ""),
    feeders_variance: eachRow<Value>(feeders, "from", (row, at) => doubtOf(job, row, together(row, at)), ""),
    feeders_cable_key: eachRow<Value>(feeders, "from", (row) => keyOf(cableUsed(job, row)), ""),
  };
}

export function distributionSheet(job: Job): Cells {
  const { DEVICELEVELS, DEVICECHECKS } = answersOf(job);
  const rows = rowsOf(job, "branches");
  const column = (of: (row: Row, at: number) => Value): Value[] => eachRow<Value>(rows, "id", of, "");
  const checks = (at: number): readonly Answer[] => DEVICECHECKS[at]!.slice(2);
  return {
    branches_verdict: column((_, at) => verdictOf(checks(at))),
    branches_level: eachRow<Expected[]>(rows, "id", (_, at) => first(DEVICELEVELS[at], 10), blanks(10)),
    branches_check: eachRow<Expected[]>(
      rows,
      "id",
      (_, at) => [...first(DEVICECHECKS[at], 7), trouble(DEVICECHECKS[at]![7])],
      blanks(8),
    ),
    // An inserter stands among the supplies and has one port; so is what no list knows.
    branches_ways: column((row) => {
      const part = named(rowsOf(job, "passives"), "name", row.device);
      return part ? figure(part, "ways") : 1;
    }),
    branches_cable_used: column((row) => cableOfLength(job, row)),
    branches_variance: column((row) => doubtOfLength(job, row)),
    branches_from_key: column((row) => keyOf(row.from)),
    branches_device_key: column((row) => keyOf(row.device)),
    branches_cable_key: column((row) => keyOf(cableOfLength(job, row))),
  };
}
