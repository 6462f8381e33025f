/** Materials a second time: pieces counted from the rows, whole packs and reels. */
import Decimal from "decimal.js";
import { quantityOf, WORK } from "./distribution/counts";
import { headRows } from "./headUnits";
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
import { cableUsed, outletRows, plateUsed } from "./rooms";
import { fittingsOfTypes } from "./roomTypes";
import { answersOf } from "./tablesOf";

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
    .plus(of("fixed"))
    .plus(pieces(job, row.piece))
    .plus(isPart(row) ? fittingsOfTypes(job, row) : 0)
    .plus(
      filledRows(job, "dishes", "name").filter(({ part }) => isPart(row) && isSame(part, row.name)).length,
    );
}
/** Fittings have a price or a pack, work has none. */
export const isPart = (row: Row): boolean => "pack" in row || "price" in row;

/** What is counted of a piece of work; nothing of what is no such word. */
export const pieces = (job: Job, word: Value | undefined): number =>
  LISTED.some((piece) => isSame(piece, word)) ? quantityOf(answersOf(job).NEEDED, "work", String(word)) : 0;
/** The words of Parts. */
const LISTED = WORK.filter((piece) => !["outlet", "device", "head unit"].includes(piece));

/** The cables of a kind on all four sheets, as they were measured. */
export const runsOf = (job: Job, name: Value): number[] => [
  ...outletRows(job)
    .filter((row) => isFilled(row, "run") && isSame(cableUsed(job, row), name))
    .map((row) => figure(row, "run")),
  ...[...filledRows(job, "branches", "id"), ...headRows(job)]
    .filter((row) => isFilled(row, "length") && isSame(cableUsed(job, row), name))
    .map((row) => figure(row, "length")),
  ...rowsOf(job, "feeders").flatMap((row, at) =>
    isFilled(row, "from") && isSame(cableUsed(job, row), name)
      ? Array.from({ length: Number(answersOf(job).FEEDERCHECKS[at]![0]) }, () => orNought(row, "length"))
      : [],
  ),
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
  const rows = (of: string, key: string): readonly Row[] => filledRows(job, of, key);
  const named = (list: readonly (Value | undefined)[]): number =>
    list.filter((name) => isSame(name, part.name)).length;
  switch (block) {
    case "supplies":
      return same(
        named(headRows(job).map(({ supply }) => supply)) +
          named(rows("branches", "id").map(({ device }) => device)),
      );
    case "passives":
      return same(
        named(rows("branches", "id").map(({ device }) => device)) +
          named(outletRows(job).map(({ split }) => split)),
      );
    case "plates":
      return same(named(outletRows(job).map((row) => plateUsed(job, row))));
    case "units":
      return same(named(headRows(job).map(({ type }) => type)));
    case "feeds":
      return same(quantityOf(answersOf(job).NEEDED, "part", String(part.name)));
    case "resistors":
      return same(
        isSame(part.name, job.fields.site_closes)
          ? quantityOf(answersOf(job).NEEDED, "work", "end resistor")
          : 0,
      );
    default:
      throw new Error(`no such list of parts: ${block}`);
  }
}

export const costOf = (job: Job, block: string, part: Row): Decimal => {
  const { quantity } = boughtOf(job, block, part);
  return new Decimal(quantity).times(figure(part, "price"));
};

/** In the order of the list on Parts. */
const PIECES_IN_ORDER = [
  ...["connector", "grounding block", "end resistor", "receiver lead", "mains socket"],
  ...["dish", "further slot on a dish", "feed", "head unit on a dish", "switch"],
  ...["splitter", "tap", "amplifier", "equaliser", "attenuator", "filter", "supply", "wall plate"],
  ...["dish bonding conductor", "outlet to measure", "floor"],
];

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
    {
      count_outlets: outlets,
      count_branches: branches,
      count_heads: heads,
      fittings_bought_pieces: eachRow<Value>(
        rowsOf(job, "fittings"),
        "name",
        (row) => pieces(job, row.piece),
        "",
      ),
      pieces_all: PIECES_IN_ORDER.map((piece) => [quantityOf(answersOf(job).NEEDED, "work", piece)]),
    },
    ...["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"].map(block),
  ) as Cells;
}
