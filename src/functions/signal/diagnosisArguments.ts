/** The arguments of DIAGNOSE turned into readings below each head unit. */
import { CAUSES, DEAD_DBUV, type Cause } from "../../engine/diagnosis/causes";
import type { HeadReadings } from "../../engine/diagnosis/diagnose";
import type { Above } from "../../engine/diagnosis/hypotheses";
import type { Reading } from "../../engine/diagnosis/evidence";
import { plausible } from "../../engine/diagnosis/plausibility";
import type { Doubt, TypedHead, TypedOutlet } from "../../engine/diagnosis/typedOutlet";
import { typedReading, type TypedReading } from "../../engine/diagnosis/typedReading";
import { faults, isFault, type Fault } from "../../engine/faults";
import { distributionTree } from "../../engine/signal/distributionTree";
import { nameKey } from "../../engine/signal/nameKey";
import { isBlank, type Cell, type Matrix } from "../core/cells";
import { number, text, type ListEntry } from "../core/parameters";
import { firstFault, lengthFault } from "./lists";

const THE_HEAD_UNIT = "the head unit";
const frequency = number({ name: "frequencies", help: "", unit: "MHz", min: 5, max: 3000 });
const predictedLevel = number({ name: "predicted", help: "", unit: "dBµV", min: -200, max: 200 });
const causeName = text({ name: "causes", help: "", wanted: "a cause" });
/** What the columns of a causes table hold, after the cause's name. */
const FIGURES = [
  number({ name: "chance of a cause", help: "", min: 0, max: 0.5 }),
  number({ name: "low-end loss of a cause", help: "", unit: "dB", min: -60, max: 60 }),
  number({ name: "high-end loss of a cause", help: "", unit: "dB", min: -60, max: 60 }),
  number({ name: "spread of a cause", help: "", min: 0, max: 10 }),
  number({ name: "tilt of a cause", help: "", unit: "dB", min: 0, max: 60 }),
] as const;
export const CAUSE_COLUMNS = ["cause", "chance", "low-end loss", "high-end loss", "spread", "tilt"] as const;

/** @returns the causes with the figures that the table gives; blank figures stay as they are */
export function causesOf(matrix: Matrix | undefined): readonly Cause[] | Fault {
  if (!matrix) return CAUSES;
  const columns = matrix[0]!.length;
  if (columns < 2 || columns > CAUSE_COLUMNS.length) {
    return faults.badShape(
      "causes",
      matrix.length,
      columns,
      `two to six columns: ${CAUSE_COLUMNS.join(", ")}`,
    );
  }
  const causes = [...CAUSES];
  for (const row of matrix) {
    if (isBlank(row[0])) continue;
    const name = causeName.read(row[0]!);
    if (isFault(name)) return name;
    const at = causes.findIndex(({ cause }) => nameKey(cause) === nameKey(name));
    if (at < 0)
      return faults.notAChoice(
        "causes",
        name,
        CAUSES.map(({ cause }) => cause),
      );
    const figures: (number | undefined)[] = [];
    for (const [index, figure] of FIGURES.entries()) {
      const cell = row[index + 1];
      const value = isBlank(cell) ? undefined : figure.read(cell);
      if (isFault(value)) return value;
      figures.push(value);
    }
    const was = causes[at]!;
    const [chance = was.chance, low = was.low, high = was.high, spread = was.spread, tilt = was.tilt] =
      figures;
    causes[at] = { ...was, chance, low, high, spread, tilt };
  }
  return causes;
}

/** @returns the frequencies of the columns, rising */
export function frequenciesOf(matrix: Matrix | undefined): number[] | Fault {
  const cells: readonly Cell[] = matrix ? matrix.flat() : [950, 2150];
  const values: number[] = [];
  for (const cell of cells) {
    if (isBlank(cell)) return faults.missing("frequencies", "a frequency in MHz for every column");
    const value = frequency.read(cell);
    if (isFault(value)) return value;
    const before = values.at(-1);
    if (before !== undefined && value <= before) return faults.notRisingFrequencies(before, value);
    values.push(value);
  }
  return values;
}

export interface Given {
  readonly outlets: readonly ListEntry<string>[];
  readonly fedFrom: readonly ListEntry<string>[];
  readonly predicted: Matrix;
  readonly measured: Matrix;
  readonly frequencies: readonly number[];
  readonly volts: readonly Cell[];
  readonly voltsPredicted: readonly ListEntry<number>[];
  readonly branches: readonly ListEntry<string>[];
  readonly branchesFrom: readonly ListEntry<string>[];
  readonly heads: readonly ListEntry<string>[];
  readonly headVolts: readonly Cell[];
  readonly headVoltsPredicted: readonly ListEntry<number>[];
  /** The dish on which each head unit is its feed. */
  readonly headDishes?: readonly ListEntry<string>[];
  readonly feedersFrom?: readonly ListEntry<string>[];
  readonly feedersTo?: readonly ListEntry<string>[];
  readonly dishes?: readonly ListEntry<string>[];
}

export interface Sorted {
  readonly heads: readonly HeadReadings[];
  readonly doubts: readonly Doubt[];
  readonly above: readonly Above[];
}

/** @returns the readings below each head unit, and those that can't be taken as they stand */
export function readingsOf(given: Given): Sorted | Fault {
  const wrong = unevenIn(given);
  if (wrong) return wrong;
  const names = firstFault([...given.branches, ...given.outlets]);
  const feeds = firstFault([...given.branchesFrom, ...given.fedFrom]);
  if (isFault(names)) return names;
  if (isFault(feeds)) return feeds;
  const from = feeds.map((feed, row) => (names[row] === null ? null : (feed ?? THE_HEAD_UNIT)));
  const known = new Set(names.filter((name) => name !== null).map(nameKey));
  const tops = from.filter((feed): feed is string => feed !== null && !known.has(nameKey(feed)));
  const tree = distributionTree(names, from, tops);
  const feeding = new Set(tree.rows.flatMap((row) => (row && !isFault(row) ? row.parent : [])));
  const paths = new Map<string, string[]>();
  const outlets: TypedOutlet[] = [];
  for (let outlet = 0; outlet < given.outlets.length; outlet += 1) {
    const row = tree.rows[given.branches.length + outlet]!;
    if (row === null) continue;
    if (isFault(row)) return row;
    const own = given.branches.length + outlet;
    // What others are looped through is a place on the way to them, and to itself.
    const path: string[] = feeding.has(own) ? [names[own]!] : [];
    for (let above = row.parent; above >= 0; above = (tree.rows[above] as { parent: number }).parent) {
      path.push(names[above]!);
    }
    const name = names[given.branches.length + outlet]!;
    const typed = typedOutlet(given, outlet, name, row.root);
    if (isFault(typed)) return typed;
    paths.set(name, path);
    outlets.push(typed);
  }
  const heads = typedHeads(given);
  if (isFault(heads)) return heads;
  const { doubts, refused, ...left } = plausible(outlets, heads);
  if (refused) return { heads: [], doubts, above: [] };
  const readings = new Map<string, Reading[]>();
  for (const one of left.outlets) {
    const reading = readingOf(one, paths.get(one.outlet)!);
    readings.set(nameKey(one.head), [...(readings.get(nameKey(one.head)) ?? []), reading]);
  }
  // The volts at a head unit are one more reading below it, where a fault of its own lead shows.
  for (const { head, volts, voltsPredicted } of left.heads) {
    const measured = voltsOf(volts);
    if (measured === null) continue;
    const own = {
      outlet: head,
      path: [],
      frequencies: [],
      predicted: [],
      measured: [],
      volts: measured,
      voltsPredicted,
    };
    readings.set(nameKey(head), [...(readings.get(nameKey(head)) ?? []), own]);
  }
  const called = new Map([...left.outlets, ...left.heads].map(({ head }) => [nameKey(head), head] as const));
  const above = aboveHeads(given, (name) => called.get(nameKey(name)) ?? name);
  if (isFault(above)) return above;
  return {
    heads: [...readings].map(([key, list]) => ({ head: called.get(key)!, readings: list })),
    doubts,
    above,
  };
}

/**
 * Dishes, feeders and switches before others, each with the head units that it reaches.
 * @param called how a head unit's name is written among the readings
 */
function aboveHeads(given: Given, called: (name: string) => string): Above[] | Fault {
  const { heads, headDishes = [], feedersFrom = [], feedersTo = [], dishes = [] } = given;
  const lists = [heads, headDishes, feedersFrom, feedersTo, dishes].map((list) => firstFault(list));
  const fault = lists.find(isFault);
  if (fault) return fault;
  const [names, onDish, from, to, all] = lists as (string | null)[][];
  const known = all!.filter((name) => name !== null);
  const links = from!.flatMap((name, row) =>
    name !== null && to![row] ? [{ from: name, to: to![row] }] : [],
  );
  /** By the key of a name: the head units straight after it. */
  const next = new Map<string, string[]>();
  const link = (name: string, head: string): void => {
    next.set(nameKey(name), [...(next.get(nameKey(name)) ?? []), called(head)]);
  };
  for (const one of links) link(one.from, one.to);
  const fed = new Set(links.map((one) => nameKey(one.to)));
  const sky = new Map(known.map((name) => [nameKey(name), name]));
  names!.forEach((head, row) => {
    // Blank is the only dish.
    const dish = onDish![row] ?? (known.length === 1 ? known[0]! : null);
    if (head === null || dish === null || onDish!.length === 0 || fed.has(nameKey(head))) return;
    if (!sky.has(nameKey(dish))) sky.set(nameKey(dish), dish);
    link(dish, head);
  });
  const after = (name: string): string[] => {
    const found = new Set<string>();
    const waiting = [...(next.get(nameKey(name)) ?? [])];
    for (let head = waiting.shift(); head !== undefined; head = waiting.shift()) {
      if (found.has(head)) continue;
      found.add(head);
      waiting.push(...(next.get(nameKey(head)) ?? []));
    }
    return [...found];
  };
  return [
    ...[...sky.values()].map((where): Above => ({ where, of: "dish", heads: after(where) })),
    ...links.map((one): Above => ({
      where: `${one.from} to ${one.to}`,
      of: "feeder",
      heads: [...new Set([called(one.to), ...after(one.to)])],
    })),
    ...names!.flatMap((head): Above[] => {
      if (head === null || !next.has(nameKey(head))) return [];
      return [
        { where: called(head), of: "switch before", heads: [...new Set([called(head), ...after(head)])] },
      ];
    }),
  ].filter((one) => one.heads.length > 0);
}

function unevenIn(given: Given): Fault | undefined {
  const count = given.outlets.length;
  const wide = given.frequencies.length;
  for (const [name, matrix] of [
    ["predicted", given.predicted],
    ["measured", given.measured],
  ] as const) {
    if (matrix[0]!.length !== wide) {
      return faults.badShape(
        name,
        matrix.length,
        matrix[0]!.length,
        `${wide} columns, one for each frequency`,
      );
    }
  }
  const lengthOf = (name: string, length: number, least: number, wanted = count, of = "outlets") =>
    length > least ? lengthFault(of, wanted, name, length) : undefined;
  return (
    lengthFault("outlets", count, "fed_from", given.fedFrom.length) ??
    lengthFault("outlets", count, "predicted", given.predicted.length) ??
    lengthFault("outlets", count, "measured", given.measured.length) ??
    lengthOf("volts", given.volts.length, 0) ??
    lengthOf("predicted_volts", given.voltsPredicted.length, 1) ??
    lengthFault("branches", given.branches.length, "branches_from", given.branchesFrom.length) ??
    lengthOf("head_volts", given.headVolts.length, 0, given.heads.length, "heads") ??
    lengthOf("predicted_head_volts", given.headVoltsPredicted.length, 0, given.heads.length, "heads") ??
    lengthOf("head_dishes", given.headDishes?.length ?? 0, 0, given.heads.length, "heads") ??
    lengthFault("feeders_from", given.feedersFrom?.length ?? 0, "feeders_to", given.feedersTo?.length ?? 0)
  );
}

const typedOf = (cell: Cell): TypedReading =>
  typedReading(isFault(cell) ? { error: cell.message } : isBlank(cell) ? null : cell);

function typedOutlet(given: Given, row: number, outlet: string, head: string): TypedOutlet | Fault {
  const levels = given.measured[row]!.map(typedOf);
  const predicted: (number | null)[] = [];
  for (const [column, level] of levels.entries()) {
    const foretold = given.predicted[row]![column]!;
    if (level.kind === "blank" || level.kind === "unread") {
      predicted.push(null);
      continue;
    }
    if (isBlank(foretold)) return faults.missing(`Predicted level of ${outlet}`, "a level in dBµV");
    const value = predictedLevel.read(foretold);
    if (isFault(value)) return value;
    predicted.push(value);
  }
  const voltsPredicted = given.voltsPredicted[given.voltsPredicted.length === 1 ? 0 : row] ?? null;
  const volts = typedOf(given.volts[row] ?? null);
  // A prediction that failed is asked for only where there is something to hold against it.
  if (isFault(voltsPredicted) && volts.kind !== "blank") return voltsPredicted;
  return {
    outlet,
    head,
    frequencies: given.frequencies,
    levels,
    predicted,
    volts,
    voltsPredicted: isFault(voltsPredicted) ? null : voltsPredicted,
  };
}

function typedHeads(given: Given): TypedHead[] | Fault {
  const heads: TypedHead[] = [];
  for (const [row, head] of given.heads.entries()) {
    if (head === null) continue;
    if (isFault(head)) return head;
    const voltsPredicted = given.headVoltsPredicted[row] ?? null;
    const volts = typedOf(given.headVolts[row] ?? null);
    if (isFault(voltsPredicted) && volts.kind !== "blank") return voltsPredicted;
    heads.push({ head, volts, voltsPredicted: isFault(voltsPredicted) ? null : voltsPredicted });
  }
  return heads;
}

const voltsOf = (volts: TypedReading): number | null =>
  volts.kind === "value" ? volts.value : volts.kind === "no signal" ? 0 : null;

/** One outlet's readings: frequencies at which nothing was read are left out. */
function readingOf(typed: TypedOutlet, path: readonly string[]): Reading {
  const read = typed.levels.flatMap((level, column) => {
    const predicted = typed.predicted[column];
    if (predicted === null || predicted === undefined) return [];
    if (level.kind !== "value" && level.kind !== "no signal") return [];
    const silent = level.kind === "no signal";
    return [
      {
        frequency: typed.frequencies[column]!,
        predicted,
        silent,
        measured: silent ? Math.min(DEAD_DBUV, predicted) : level.value,
      },
    ];
  });
  const { outlet, volts, voltsPredicted } = typed;
  return {
    outlet,
    path,
    frequencies: read.map(({ frequency }) => frequency),
    predicted: read.map(({ predicted }) => predicted),
    measured: read.map(({ measured }) => measured),
    silent: read.map(({ silent }) => silent),
    volts: voltsOf(volts),
    voltsPredicted,
  };
}
