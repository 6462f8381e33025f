/**
 * The tables of a job worked out, kept for the last few sets of tables: twelve
 * functions ask for the same distribution, and it is solved once.
 */
import { distributionOf, type Distribution } from "../../engine/distribution/distribution";
import { ADVICE, type CheckOfDistribution, type RowList } from "../../engine/distribution/finding";
import { findings } from "../../engine/distribution/findings";
import { isFault, type Fault } from "../../engine/faults";
import { isBlank, type Cell, type Matrix } from "../core/cells";
import { jobOf, type JobRead } from "./jobOf";
import { TABLE_NAMES } from "./tables";

export interface Solved extends JobRead {
  readonly found: Distribution;
  /** What is said of the rows of each list, by row. */
  readonly said: Readonly<Record<RowList, ReadonlyMap<number, Said>>>;
}

export interface Said {
  readonly checks: ReadonlySet<CheckOfDistribution>;
  /** Those whose first row this is. */
  readonly sentences: readonly string[];
}

/** As a function is given them, in the order of {@link TABLE_NAMES}. */
export type Given = readonly (Matrix | undefined)[];

interface Kept {
  readonly given: Given;
  readonly solved: Solved | Fault | null;
}

/** An edit and the state before it, and as much again for a second job. */
const MOST_KEPT = 4;
const kept: Kept[] = [];

/** @returns the distribution; null for tables without any row, a fault where a table as a whole cannot be read */
export function solved(given: Given): Solved | Fault | null {
  const place = kept.findIndex((one) => sameTables(one.given, given));
  const found = place < 0 ? { given, solved: solve(given) } : kept.splice(place, 1)[0]!;
  kept.unshift(found);
  kept.length = Math.min(kept.length, MOST_KEPT);
  return found.solved;
}

const sameTables = (one: Given, other: Given): boolean =>
  TABLE_NAMES.every((_, table) => sameCells(one[table], other[table]));

function sameCells(one: Matrix | undefined, other: Matrix | undefined): boolean {
  if (one === other) return true;
  if (!one || !other || one.length !== other.length) return false;
  return one.every(
    (row, index) =>
      row.length === other[index]!.length &&
      row.every((cell, column) => sameCell(cell, other[index]![column]!)),
  );
}

const sameCell = (one: Cell, other: Cell): boolean =>
  Object.is(one, other) ||
  (isFault(one) ? isFault(other) && one.message === other.message : isBlank(one) && isBlank(other));

function solve(given: Given): Solved | Fault | null {
  const read = jobOf(Object.fromEntries(TABLE_NAMES.map((name, table) => [name, given[table]])));
  if (read === null || isFault(read)) return read;
  const found = distributionOf(read.job);
  return { ...read, found, said: saidOf(found, read) };
}

function saidOf(found: Distribution, { wanted }: JobRead): Solved["said"] {
  const { trunks, tree } = found;
  const lists: Record<RowList, Map<number, { checks: Set<CheckOfDistribution>; sentences: string[] }>> = {
    dishes: new Map(),
    headUnits: new Map(),
    devices: new Map(),
    outlets: new Map(),
  };
  const at = (list: RowList, row: number) => {
    const before = lists[list].get(row);
    if (before) return before;
    const fresh = { checks: new Set<CheckOfDistribution>(), sentences: [] };
    lists[list].set(row, fresh);
    return fresh;
  };
  const say = (list: RowList, row: number, { message }: Fault): void => {
    const { sentences } = at(list, row);
    if (!sentences.includes(message)) sentences.push(message);
  };
  const ownFaults = {
    dishes: trunks.dishFaults,
    headUnits: trunks.headFaults,
    devices: tree.deviceFaults,
    outlets: tree.outletFaults,
  };
  for (const list of Object.keys(lists) as RowList[])
    ownFaults[list].forEach((fault, row) => fault && say(list, row, fault));
  for (const { check, rows, fault } of findings(found, wanted)) {
    // Advice is never a failing check.
    if (ADVICE.has(check)) continue;
    say(rows[0]!.list, rows[0]!.row, fault);
    for (const { list, row } of rows) at(list, row).checks.add(check);
  }
  return lists;
}
