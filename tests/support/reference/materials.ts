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
  plain,
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

/** A piece of cable that a job needs: what it is for, how long, and how long it may turn out. */
export interface Piece {
  readonly name: string;
  readonly length: number;
  readonly longest: number;
}

/** The cables of a kind on all four sheets, as they were measured; those of no length are none. */
export function piecesOfCable(job: Job, name: Value): Piece[] {
  const stretched = (length: number): number => length * (1 + field(job, "site_run_tolerance"));
  const isOf = (row: Row): boolean => isSame(cableUsed(job, row), name);
  return [
    ...outletRows(job)
      .filter((row) => isFilled(row, "run") && isOf(row))
      .map((row) => {
        const length = figure(row, "run");
        const longest = isFilled(row, "longest") ? figure(row, "longest") : stretched(length);
        return { name: String(row.outlet).trim(), length, longest };
      }),
    ...[...filledRows(job, "branches", "id"), ...headRows(job)]
      .filter((row) => isFilled(row, "length") && isOf(row))
      .map((row) => {
        const length = figure(row, "length");
        return { name: String(row.id).trim(), length, longest: stretched(length) };
      }),
    ...rowsOf(job, "feeders").flatMap((row, at) => {
      if (!isFilled(row, "from") || !isOf(row)) return [];
      const length = orNought(row, "length");
      const cable = {
        name: `${String(row.from).trim()} to ${String(row.to ?? "").trim()}`,
        length,
        longest: stretched(length),
      };
      return Array.from({ length: Number(answersOf(job).FEEDERCHECKS[at]![0]) }, () => cable);
    }),
  ].filter(({ length }) => length !== 0);
}

export const runsOf = (job: Job, name: Value): number[] =>
  piecesOfCable(job, name).map(({ length }) => length);

/** As it is cut: of its likely or its longest length, with slack and waste. */
export function cutsOf(job: Job, cable: Row): { readonly name: string; readonly cut: number }[] {
  const isLongest = plain(job.fields.site_cut_at) === "longest";
  const cuts = piecesOfCable(job, cable.name!).map(({ name, length, longest }) => ({
    name,
    cut:
      ((isLongest ? Math.max(length, longest) : length) + field(job, "site_slack")) *
      (1 + field(job, "site_waste")),
  }));
  const longest = Math.max(0, ...cuts.map(({ cut }) => cut));
  const spare = { name: "spare", cut: longest };
  return [...cuts, ...Array.from({ length: spareRuns(job, cuts.length) }, () => spare)];
}

/** A share of the runs, whole ones, and at least so many of any. */
const spareRuns = (job: Job, runs: number): number =>
  runs === 0
    ? 0
    : Math.max(
        new Decimal(runs).times(orNought(job.fields, "site_spare_runs")).ceil().toNumber(),
        orNought(job.fields, "site_spare_runs_least"),
      );

/** What is left on the reels of a cable that are in stock. */
export const startedOf = (job: Job, cable: Row): number[] =>
  filledRows(job, "rests", "cable")
    .filter((row) => isSame(row.cable, cable.name))
    .map((row) => figure(row, "length"));

export const reelsOf = (job: Job, cable: Row): number =>
  leastReels(
    cutsOf(job, cable).map(({ cut }) => cut),
    figure(cable, "reel"),
    startedOf(job, cable),
  );

/** Which field of Site says how many spare ones of a list are bought. */
const SPARES: Readonly<Record<string, string>> = {
  passives: "site_spare_devices",
  units: "site_spare_heads",
  supplies: "site_spare_heads",
  feeds: "site_spare_heads",
  plates: "site_spare_plates",
  resistors: "site_spare_fittings",
  fittings: "site_spare_fittings",
};

/** A part of one is one. */
const shareOf = (job: Job, block: string, needed: Decimal): number => {
  const share = orNought(job.fields, SPARES[block]!);
  return share < 0 ? NaN : needed.times(share).ceil().toNumber();
};

/** Pieces, and how many of what is sold are bought, of a part of a block. */
export function boughtOf(
  job: Job,
  block: string,
  part: Row,
): { needed: number; spares: number; quantity: number } {
  const same = (count: number) => {
    const spares = shareOf(job, block, new Decimal(count));
    const pack = isFilled(part, "pack") ? figure(part, "pack") : 1;
    const quantity = pack > 0 && count >= 0 ? Math.ceil((count + spares) / pack) * pack : NaN;
    return { needed: count, spares, quantity };
  };
  if (block === "cables") {
    const runs = runsOf(job, part.name!);
    return { needed: sum(runs), spares: spareRuns(job, runs.length), quantity: reelsOf(job, part) };
  }
  if (block === "fittings") {
    const needed = often(job, part);
    const spares = shareOf(job, block, needed);
    const pack = figure(part, "pack");
    return {
      needed: needed.toNumber(),
      spares,
      quantity:
        pack > 0 && !needed.isNegative() ? needed.plus(spares).dividedBy(pack).ceil().toNumber() : NaN,
    };
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

/** In words, what one of the quantity and the price is of. */
export function soldBy(block: string, part: Row): string {
  if (block === "cables") return `reel of ${part.reel}`;
  return (part.pack ?? "") === "" || part.pack === 1
    ? "piece"
    : block === "fittings"
      ? `pack of ${part.pack}`
      : `piece, in packs of ${part.pack}`;
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
      [`${name}_bought_spares`]: column((row) => boughtOf(job, name, row).spares),
      [`${name}_bought_sold`]: column((row) => soldBy(name, row)),
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
      cables_bought_runs: eachRow<Value>(
        rowsOf(job, "cables"),
        "name",
        (row) => runsOf(job, row.name!).length,
        "",
      ),
      pieces_all: PIECES_IN_ORDER.map((piece) => [quantityOf(answersOf(job).NEEDED, "work", piece)]),
    },
    ...["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"].map(block),
  ) as Cells;
}
