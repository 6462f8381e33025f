/**
 * Cutting plan and Order list a second time. Which run comes off which reel has more than one answer: the workbook's is
 * read, and held to be a plan: every run cut once, at its length, from a reel of its cable that is not overfull, the
 * longest first, and as many new reels as are the least.
 */
import Decimal from "decimal.js";
import { isBookError, type Book } from "../../../src/workbooks/book";
import { namedRows } from "../../../src/workbooks/named";
import {
  eachRow,
  field,
  figure,
  filledRows,
  isFilled,
  orNought,
  plain,
  rowsOf,
  sum,
  word,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "./job";
import { boughtOf, cutsOf, soldBy, startedOf } from "./materials";
import { cableUsed, outletRows } from "./rooms";

interface Cut {
  readonly name: string;
  readonly cut: number;
}
type Shown = readonly unknown[];

const NEAR = 1e-5;
const isNear = (a: unknown, b: number): boolean => typeof a === "number" && Math.abs(a - b) < NEAR;
/** As people round: a half up. */
const written = (cut: number): string =>
  String(new Decimal(cut.toFixed(9)).toDecimalPlaces(2, Decimal.ROUND_HALF_UP).toNumber());

/** Every way in which a line begins with cuts of those that are left, tried until all of it is read. */
function cutsIn(text: string, pool: readonly Cut[]): Cut[] | undefined {
  if (text === "") return [];
  const tried = new Set<string>();
  for (const { name, cut } of pool) {
    const same = pool.filter((one) => one.name === name && written(one.cut) === written(cut));
    for (const times of [same.length, ...same.keys()].filter((count) => count > 0)) {
      const entry = `${name}: ${times === 1 ? "" : `${times} × `}${written(cut)}`;
      if (tried.has(entry)) continue;
      tried.add(entry);
      if (!text.startsWith(entry)) continue;
      const after = text.slice(entry.length);
      if (after !== "" && !after.startsWith("; ")) continue;
      const taken = same.slice(0, times);
      const rest = cutsIn(
        after.slice(2),
        pool.filter((one) => !taken.includes(one)),
      );
      if (rest) return [...taken, ...rest];
    }
  }
  return undefined;
}

/** What is wrong with the lines of one cable; nothing of a plan. */
function troubleOf(job: Job, cable: Row, lines: readonly Shown[]): string | undefined {
  const reel = figure(cable, "reel");
  const started = startedOf(job, cable);
  const most = Math.max(reel, ...started);
  // Like ones are told apart by being objects of their own.
  const all = cutsOf(job, cable).map((one) => ({ ...one }));
  const tooLong = all.filter(({ cut }) => cut > most + NEAR);
  let pool: Cut[] = all.filter((one) => !tooLong.includes(one));
  const lost = lines.filter(([, , from]) => from === "not planned");
  if (lost.length !== tooLong.length) return `${lost.length} runs not planned, not ${tooLong.length}`;
  for (const [index, { name }] of tooLong.entries())
    if (!String(lost[index]![3]).startsWith(`${name}: `)) return `${name} is not told as too long`;
  const left = [...started];
  let news = 0;
  let expected = 0;
  let held = { length: 0, used: 0, shown: 0, last: Infinity, number: 0 };
  for (const [, number, from, cuts, pieces, length, used, remains] of lines.slice(lost.length)) {
    const read = cutsIn(String(cuts), pool);
    if (!read) return `“${String(cuts)}” is not of the runs that are left`;
    pool = pool.filter((one) => !read.includes(one));
    if (read.length !== pieces) return `${read.length} pieces, not ${String(pieces)}`;
    if (length !== "") {
      if (!isNear(held.used, held.shown))
        return `reel ${held.number} has ${held.used} cut, not ${held.shown}`;
      held = { length: Number(length), used: 0, shown: Number(used), last: Infinity, number: ++expected };
      if (!isNear(remains, held.length - held.shown) || Number(remains) < 0)
        return `what is left of reel ${expected}`;
      if (from === "new") {
        news++;
        if (held.length !== reel) return `a new reel of ${held.length}`;
      } else {
        const at = left.findIndex((one) => isNear(one, held.length));
        if (at < 0) return `no reel of ${held.length} in stock`;
        left.splice(at, 1);
      }
    }
    if (number !== held.number) return `reel ${String(number)} stands at ${held.number}`;
    for (const { cut } of read) {
      if (cut > held.last + NEAR) return `reel ${held.number}: a longer one after a shorter`;
      held.last = cut;
      held.used += cut;
    }
  }
  if (!isNear(held.used, held.shown)) return `the last reel has ${held.used} cut, not ${held.shown}`;
  if (pool.length > 0) return `${pool.length} runs are cut from nothing`;
  const least = boughtOf(job, "cables", cable).quantity;
  return tooLong.length === 0 && news !== least ? `${news} new reels, not ${least}` : undefined;
}

const bad = (about: string): Expected => ({ about, holds: () => false });
const any: Expected = { about: "what a plan has there", holds: (got) => !isBookError(got as never) };
const anError: Expected = { about: "the reason", holds: (got) => isBookError(got as never) };

export function cuttingPlanSheet(job: Job, book: Book): Cells {
  const cables = rowsOf(job, "cables");
  const shown = namedRows(book, "cutplan_plan").map((row) => row.map((cell) => cell ?? "") as Shown);
  const filled = shown.filter(([cable, , from]) => cable !== "" || from !== "");
  const ofCable = (cable: Row): Shown[] =>
    filled.filter(([name]) => plain(name as Value) === plain(cable.name));
  const known = new Set(cables.map(({ name }) => plain(name)));
  // Outlets that have no length, or none that counts, stand before all cables.
  const unknown = filled.filter(([name]) => !known.has(plain(name as Value)));
  const without = outletRows(job).filter(
    (row) => !isFilled(row, "run") || (figure(row, "run") !== 0 && !known.has(plain(cableUsed(job, row)))),
  );
  const others = [...filledRows(job, "branches", "id"), ...filledRows(job, "heads", "id")].filter(
    (row) => orNought(row, "length") !== 0 && !known.has(plain(cableUsed(job, row))),
  );
  const troubles = filledRows(job, "cables", "name").map((row) => troubleOf(job, row, ofCable(row)));
  const trouble =
    troubles.find(Boolean) ??
    (unknown.length === without.length + others.length
      ? undefined
      : `${unknown.length} lines of no cable, not ${without.length + others.length}`);
  const totals = (column: number) => (row: Row) =>
    sum(ofCable(row).map((line) => (typeof line[column] === "number" ? (line[column] as number) : 0)));
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(cables, "name", of, "");
  const bought = (row: Row): number => boughtOf(job, "cables", row).quantity;
  const least = (row: Row): number => {
    const length = totals(6)(row) - sum(startedOf(job, row));
    return Math.max(0, new Decimal(length.toFixed(9)).dividedBy(figure(row, "reel")).ceil().toNumber());
  };
  const all = (row: Row): number => totals(6)(row) + totals(7)(row);
  return {
    cables_cut_cable: column((row) => row.name!),
    cables_cut_bought: column(bought),
    cables_cut_least: column(least),
    cables_cut_share: column((row) => (all(row) === 0 ? "" : totals(7)(row) / all(row))),
    cables_cut_remark: column((row) => {
      if (Number.isNaN(bought(row))) return "a run cannot be planned";
      if (bought(row) !== least(row)) return "runs are not joined: length alone would need fewer";
      return totals(4)(row) === 0 ? "none is needed" : "no fewer reels are possible";
    }),
    cables_cut_pieces: column(totals(4)),
    cables_cut_used: column(totals(6)),
    cables_cut_left: column(totals(7)),
    cutting_at: [[word(job, "site_cut_at") || "likely"]],
    cutting_tolerance: [[word(job, "site_cut_at") === "longest" ? field(job, "site_run_tolerance") : 0]],
    cutting_slack: [[field(job, "site_slack")]],
    cutting_waste: [[field(job, "site_waste")]],
    cutting_spare: [[orNought(job.fields, "site_spare_runs")]],
    cutting_spare_least: [[orNought(job.fields, "site_spare_runs_least")]],
    cutplan_plan: filled.map((line, index): readonly Expected[] => {
      if (trouble !== undefined && index === 0) return [bad(trouble), any, any, any, any, any, any, any];
      return line[2] === "not planned"
        ? [any, "", "not planned", any, "", anError, "", ""]
        : line.map(() => any);
    }),
    cutplan_cable_key: filled.map(([cable]) => (cable === "" ? "" : `_${String(cable)}`)),
  };
}

/** In the order of Parts. */
const LISTS = ["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"];

export function ordered(
  job: Job,
): { readonly block: string; readonly part: Row; readonly quantity: number }[] {
  return LISTS.flatMap((block) =>
    filledRows(job, block, "name").map((part) => ({ block, part, ...boughtOf(job, block, part) })),
  ).filter(({ quantity }) => quantity !== 0);
}

export function orderListSheet(job: Job): Cells {
  const lines = ordered(job);
  const suppliers = [...new Set(lines.map(({ part }) => plain(part.supplier)))].sort((a, b) =>
    a === "" ? 1 : b === "" ? -1 : a < b ? -1 : 1,
  );
  const day = field(job, "site_date");
  const places = isFilled(job.fields, "site_decimals") ? field(job, "site_decimals") : 2;
  const rows = suppliers.flatMap((supplier) => {
    const own = lines.filter(({ part }) => plain(part.supplier) === supplier);
    const sums = own.map(({ part, quantity }) => {
      const cost = new Decimal(quantity).times(orNought(part, "price"));
      return cost.isNaN() ? NaN : cost.toDecimalPlaces(places, Decimal.ROUND_HALF_UP).toNumber();
    });
    const total =
      sums.some(Number.isNaN) || own.some(({ part }) => !isFilled(part, "price"))
        ? "open"
        : sums.reduce((all, one) => all.plus(one), new Decimal(0)).toNumber();
    return own.map(({ block, part, quantity }, index): Value[] => {
      const note = () => {
        if (!isFilled(part, "price")) return "no price";
        if (part.price === 0) return "free";
        if (!isFilled(part, "until")) return "no last day";
        return figure(part, "until") < day ? "expired" : "";
      };
      return [
        supplier === "" ? "no supplier" : String(own[0]!.part.supplier).trim(),
        String(part.article ?? ""),
        String(part.name).trim(),
        quantity,
        soldBy(block, part),
        part.price ?? "",
        part.priced ?? "",
        part.until ?? "",
        note(),
        sums[index]!,
        index === own.length - 1 ? total : "",
      ];
    });
  });
  const keys = [
    "supplier",
    "article",
    "part",
    "quantity",
    "sold",
    "price",
    "priced",
    "until",
    "note",
    "sum",
    "together",
  ];
  // A list of fixed length: as many rows as its answer has.
  return Object.fromEntries(
    keys.map((key, column) => [
      `orders_${key}`,
      Array.from({ length: 60 }, (_, row) => rows[row]?.[column] ?? ""),
    ]),
  );
}
