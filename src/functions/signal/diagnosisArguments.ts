/** The arguments of DIAGNOSE turned into readings below each head unit. */
import { CAUSES, type Cause } from "../../engine/diagnosis/causes";
import type { HeadReadings } from "../../engine/diagnosis/diagnose";
import type { Reading } from "../../engine/diagnosis/evidence";
import { faults, isFault, type Fault } from "../../engine/faults";
import { distributionTree } from "../../engine/signal/distributionTree";
import { nameKey } from "../../engine/signal/nameKey";
import { isBlank, type Cell, type Matrix } from "../core/cells";
import { number, text, type ListEntry } from "../core/parameters";
import { firstFault, lengthFault } from "./lists";

const THE_HEAD_UNIT = "the head unit";
const frequency = number({ name: "frequencies", help: "", unit: "MHz", min: 5, max: 3000 });
const predictedLevel = number({ name: "predicted", help: "", unit: "dBµV", min: -200, max: 200 });
const measuredLevel = number({ name: "measured", help: "", unit: "dBµV", min: -200, max: 200 });
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
  readonly volts: readonly ListEntry<number>[];
  readonly voltsPredicted: readonly ListEntry<number>[];
  readonly branches: readonly ListEntry<string>[];
  readonly branchesFrom: readonly ListEntry<string>[];
}

export function headsOf(given: Given): HeadReadings[] | Fault {
  const count = given.outlets.length;
  const branchCount = given.branches.length;
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
  const uneven =
    lengthFault("outlets", count, "fed_from", given.fedFrom.length) ??
    lengthFault("outlets", count, "predicted", given.predicted.length) ??
    lengthFault("outlets", count, "measured", given.measured.length) ??
    (given.volts.length > 0 ? lengthFault("outlets", count, "volts", given.volts.length) : undefined) ??
    (given.voltsPredicted.length > 1
      ? lengthFault("outlets", count, "predicted_volts", given.voltsPredicted.length)
      : undefined) ??
    lengthFault("branches", branchCount, "branches_from", given.branchesFrom.length);
  if (uneven) return uneven;
  const names = firstFault([...given.branches, ...given.outlets]);
  const feeds = firstFault([...given.branchesFrom, ...given.fedFrom]);
  if (isFault(names)) return names;
  if (isFault(feeds)) return feeds;
  const from = feeds.map((feed, row) => (names[row] === null ? null : (feed ?? THE_HEAD_UNIT)));
  const known = new Set(names.filter((name) => name !== null).map(nameKey));
  const tops = from.filter((feed): feed is string => feed !== null && !known.has(nameKey(feed)));
  const tree = distributionTree(names, from, tops);
  const heads = new Map<string, Reading[]>();
  for (let outlet = 0; outlet < count; outlet += 1) {
    const row = tree.rows[branchCount + outlet]!;
    if (row === null) continue;
    if (isFault(row)) return row;
    const path: string[] = [];
    for (let above = row.parent; above >= 0; above = (tree.rows[above] as { parent: number }).parent) {
      path.push(names[above]!);
    }
    const reading = readingOf(given, outlet, names[branchCount + outlet]!, path);
    if (isFault(reading)) return reading;
    heads.set(row.root, [...(heads.get(row.root) ?? []), reading]);
  }
  return [...heads].map(([head, readings]) => ({ head, readings }));
}

/** One outlet's readings: frequencies without a measured level are left out. */
function readingOf(given: Given, row: number, outlet: string, path: string[]): Reading | Fault {
  const frequencies: number[] = [];
  const predicted: number[] = [];
  const measured: number[] = [];
  for (const [column, frequency] of given.frequencies.entries()) {
    const cell = given.measured[row]![column]!;
    if (isBlank(cell)) continue;
    const level = measuredLevel.read(cell);
    if (isFault(level)) return level;
    const foretold = given.predicted[row]![column]!;
    if (isBlank(foretold)) return faults.missing(`Predicted level of ${outlet}`, "a level in dBµV");
    const value = predictedLevel.read(foretold);
    if (isFault(value)) return value;
    frequencies.push(frequency);
    predicted.push(value);
    measured.push(level);
  }
  const volts = given.volts[row] ?? null;
  const voltsPredicted = given.voltsPredicted[given.voltsPredicted.length === 1 ? 0 : row] ?? null;
  if (isFault(volts)) return volts;
  if (isFault(voltsPredicted)) return voltsPredicted;
  return { outlet, path, frequencies, predicted, measured, volts, voltsPredicted };
}
