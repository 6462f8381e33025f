/** Materials and Labour a second time: pieces counted from the rows, whole packs and reels, hours by kind of work. */
import Decimal from "decimal.js";
import { boughtFor, feedOf, headRows } from "./headUnits";
import {
  eachRow,
  field,
  figure,
  filledRows,
  isFilled,
  isSame,
  orNought,
  rowsOf,
  sum,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";
import { leastReels } from "./leastReels";
import { outletRows } from "./rooms";

export const counts = (job: Job) => ({
  outlets: outletRows(job).length,
  branches: filledRows(job, "branches", "id").length,
  heads: headRows(job).length,
});

/** So often in the job: per outlet, per branch, per head unit and once; decimal, so that a whole pack stays whole. */
export function often(job: Job, row: Row): Decimal {
  const { outlets, branches, heads } = counts(job);
  const of = (key: string): Decimal => new Decimal(orNought(row, key));
  return of("per_outlet")
    .times(outlets)
    .plus(of("per_branch").times(branches))
    .plus(of("per_head").times(heads))
    .plus(of("fixed"));
}

/** The runs of a cable on all three sheets, as they were measured. */
export const runsOf = (job: Job, name: Value): number[] => [
  ...outletRows(job)
    .filter((row) => isSame(row.cable, name))
    .map((row) => figure(row, "run")),
  ...filledRows(job, "branches", "id")
    .filter((row) => isSame(row.cable, name))
    .map((row) => figure(row, "length")),
  ...headRows(job)
    .filter((row) => isSame(row.cable, name))
    .map((row) => figure(row, "length")),
];

export const reelsOf = (job: Job, cable: Row): number =>
  leastReels(
    runsOf(job, cable.name!).map((run) => (run + field(job, "site_slack")) * (1 + field(job, "site_waste"))),
    figure(cable, "reel"),
  );

/** Pieces, and how many of what is sold are bought, of a part of a block. */
function boughtOf(job: Job, block: string, part: Row): { needed: number; quantity: number } {
  const same = (count: number) => ({ needed: count, quantity: count });
  if (block === "cables") return { needed: sum(runsOf(job, part.name!)), quantity: reelsOf(job, part) };
  if (block === "fittings") {
    const needed = often(job, part);
    const pack = figure(part, "pack");
    return { needed: needed.toNumber(), quantity: pack > 0 ? needed.dividedBy(pack).ceil().toNumber() : NaN };
  }
  if (block === "supplies")
    return same(
      sum(
        headRows(job)
          .filter((row) => isSame(feedOf(job, row)?.supply, part.name))
          .map((row) => boughtFor(job, row)),
      ),
    );
  const [of, key, column] = {
    passives: ["branches", "id", "device"],
    units: ["heads", "id", "type"],
    plates: ["rooms", "outlet", "plate"],
  }[block]!;
  return same(filledRows(job, of!, key!).filter((row) => isSame(row[column!], part.name)).length);
}

export const costOf = (job: Job, block: string, part: Row): Decimal => {
  const { quantity } = boughtOf(job, block, part);
  return new Decimal(quantity).times(figure(part, "price"));
};

/** Three-point mean (o + 4m + p)/6 where a least and a most are given. */
const minutesOf = (work: Row): Decimal => {
  const likely = new Decimal(figure(work, "minutes"));
  if (!isFilled(work, "low") || !isFilled(work, "high")) return likely;
  return likely.times(4).plus(figure(work, "low")).plus(figure(work, "high")).dividedBy(6);
};
const hoursOf = (job: Job, work: Row): Decimal =>
  often(job, work).times(minutesOf(work)).times(figure(work, "difficulty")).dividedBy(60);
export const labourOf = (job: Job, work: Row): Decimal =>
  often(job, work)
    .times(minutesOf(work))
    .times(figure(work, "difficulty"))
    .times(field(job, "labour_rate"))
    .dividedBy(60);

export function materialsSheet(job: Job): Cells {
  const block = (name: string): Cells => {
    const rows = rowsOf(job, name);
    const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "name", of, "");
    return {
      [`${name}_bought_name`]: column((row) => row.name!),
      [`${name}_bought_needed`]: column((row) => boughtOf(job, name, row).needed),
      [`${name}_bought_quantity`]: column((row) => boughtOf(job, name, row).quantity),
      [`${name}_bought_price`]: column((row) => figure(row, "price")),
      [`${name}_bought_sum`]: column((row) => costOf(job, name, row).toNumber()),
    };
  };
  const { outlets, branches, heads } = counts(job);
  return Object.assign(
    { count_outlets: outlets, count_branches: branches, count_heads: heads },
    ...["cables", "passives", "units", "supplies", "plates", "fittings"].map(block),
  ) as Cells;
}

export function labourSheet(job: Job): Cells {
  const rows = rowsOf(job, "labour");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "name", of, "");
  const spread = (row: Row): number =>
    isFilled(row, "low") && isFilled(row, "high") ? (figure(row, "high") - figure(row, "low")) / 6 : 0;
  return {
    work_name: column((row) => row.name!),
    work_quantity: column((row) => often(job, row).toNumber()),
    work_minutes: column((row) => minutesOf(row).toNumber()),
    work_hours: column((row) => hoursOf(job, row).toNumber()),
    work_sum: column((row) => labourOf(job, row).toNumber()),
    work_variance: column(
      (row) =>
        (((often(job, row).toNumber() * spread(row) * figure(row, "difficulty")) / 60) *
          field(job, "labour_rate")) **
        2,
    ),
    work_total_hours: sum(filledRows(job, "labour", "name").map((row) => hoursOf(job, row).toNumber())),
  };
}
