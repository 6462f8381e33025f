/** Parts and Branches a second time: decibels, ohms and devices along a path add from row to row. */
import { lossOf, ohmsOf, priceEach, varianceOf } from "./cables";
import {
  corners,
  eachRow,
  field,
  filledRows,
  figure,
  isFilled,
  isSame,
  named,
  rowsOf,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";

export const passiveOf = (job: Job, name: Value | undefined): Row | undefined =>
  named(rowsOf(job, "passives"), "name", name);
const branchOf = (job: Job, name: Value | undefined): Row | undefined =>
  named(rowsOf(job, "branches"), "id", name);
const headOf = (job: Job, name: Value | undefined): Row | undefined =>
  named(rowsOf(job, "heads"), "id", name);

const ENDS = ["low", "low", "high", "high"] as const;
/** To the next branch: through a tap, out of a port of a splitter. */
const onward = (device: Row | undefined, corner: number): number => {
  const end = ENDS[corner]!;
  return device && isFilled(device, `through_${end}`)
    ? figure(device, `through_${end}`)
    : figure(device, `port_${end}`);
};

/** The rows from a name up to the head unit; undefined where they do not end at one. */
export function pathUp(job: Job, from: Value | undefined): { branches: Row[]; head: Row } | undefined {
  const path: Row[] = [];
  for (let at = from; path.length <= rowsOf(job, "branches").length;) {
    const branch = branchOf(job, at);
    if (!branch) {
      const head = headOf(job, at);
      return head && { branches: path, head };
    }
    path.push(branch);
    at = branch.from;
  }
  return undefined;
}

const fedRows = (job: Job, { id }: Row): Row[] =>
  [...filledRows(job, "rooms", "outlet"), ...filledRows(job, "branches", "id")].filter((row) =>
    isSame(row.from, id),
  );

/** Ports in use. A tap's line on to the next branch is none of its ports. */
export function feeds(job: Job, { id, device }: Row): number {
  const onto = (block: string, key: string): number =>
    filledRows(job, block, key).filter((row) => isSame(row.from, id)).length;
  const kind = passiveOf(job, device)?.kind;
  return onto("rooms", "outlet") + (kind === undefined ? NaN : kind === "tap" ? 0 : onto("branches", "id"));
}

/** Its place in the column from the thin row of the formulas on, which counts as the first: taken from the formula. */
const rowNumber = (job: Job, row: Row): number => rowsOf(job, "branches").indexOf(row) + 2;

/** Of one branch by itself: four losses, ohms, stops, ones, place, stretch, forks. */
function ownOf(job: Job, row: Row): number[] {
  const device = passiveOf(job, row.device);
  const trunk = corners((corner) => lossOf(job, row.cable, figure(row, "length"), corner));
  const power = device?.power;
  const stops = power === "no" ? 1 : 0;
  const ones = power === "one port" ? 1 : 0;
  return [
    ...trunk.map((loss, corner) => loss + onward(device, corner)),
    ohmsOf(job, row.cable, figure(row, "length")),
    device ? stops : NaN,
    device ? ones : NaN,
    device ? stops * rowNumber(job, row) : NaN,
    trunk[3]! * field(job, "site_run_tolerance"),
    device ? (ones === 1 && fedRows(job, row).length > 1 ? 1 : 0) : NaN,
  ];
}

/** From the head unit's cable down to a branch, its own device included, in the same ten columns; all NaN off the tree. */
export function soFar(job: Job, id: Value | undefined): number[] {
  const path = pathUp(job, id);
  if (!path) return Array.from({ length: 10 }, () => NaN);
  return path.branches
    .map((row) => ownOf(job, row))
    .reduce(
      (a, b) => a.map((one, at) => one + b[at]!),
      Array.from({ length: 10 }, () => 0),
    );
}

/** What the head unit's cable brings to its end. */
export function headLevel(job: Job, head: Row, corner: number): number {
  const unit = named(rowsOf(job, "units"), "name", head.type);
  return figure(unit, `out_${ENDS[corner]!}`) - lossOf(job, head.cable, figure(head, "length"), corner);
}

/** At a port of a branch. */
export function portLevel(job: Job, branch: Row, corner: number): number {
  const path = pathUp(job, branch.id);
  if (!path) return NaN;
  const above = isSame(branch.from, path.head.id) ? 0 : soFar(job, branch.from)[corner]!;
  const port = figure(passiveOf(job, branch.device), `port_${ENDS[corner]!}`);
  return (
    headLevel(job, path.head, corner) -
    above -
    lossOf(job, branch.cable, figure(branch, "length"), corner) -
    port
  );
}

/** What the first formula of a counted column shows of a name. */
export const keyOf = (value: Value | undefined): Value =>
  (value ?? "") === "" ? "" : typeof value === "number" ? value : `_${value}`;

export function partsSheet(job: Job): Cells {
  const pass = (row: Row): number[] => [0, 2].map((corner) => onward(row, corner));
  return {
    cables_each: eachRow<Value>(
      rowsOf(job, "cables"),
      "name",
      (row) => figure(row, "price") / figure(row, "reel"),
      "",
    ),
    passives_pass: eachRow<Value[]>(rowsOf(job, "passives"), "name", pass, ["", ""]),
  };
}

export function branchesSheet(job: Job): Cells {
  const rows = rowsOf(job, "branches");
  const column = <T extends Value | Value[]>(of: (row: Row) => T, blank: T): T[] =>
    eachRow<T>(rows, "id", of, blank);
  const four = ["", "", "", ""];
  const own = column<Value[]>(
    (row) => ownOf(job, row),
    Array.from({ length: 10 }, () => ""),
  );
  const length = (row: Row): number => figure(row, "length");
  const tolerance = field(job, "site_run_tolerance");
  return {
    branches_head: column<Value>((row) => pathUp(job, row.id)?.head.id ?? NaN, ""),
    branches_level: column<Value[]>((row) => corners((corner) => portLevel(job, row, corner)), four),
    branches_power: column<Value>((row) => passiveOf(job, row.device)?.power ?? NaN, ""),
    branches_fed: column<Value>((row) => feeds(job, row), ""),
    branches_ways: column<Value>((row) => figure(passiveOf(job, row.device), "ways"), ""),
    branches_trunk: column<Value[]>(
      (row) => corners((corner) => lossOf(job, row.cable, length(row), corner)),
      four,
    ),
    branches_own: own.map((row) => row.slice(0, 4)),
    ...Object.fromEntries(
      ["ohms", "stops", "ones", "place", "stretch", "forks"].map((key, at) => [
        `branches_${key}`,
        own.map((row) => row[4 + at]!),
      ]),
    ),
    branches_loss: column<Value[]>(
      (row) => soFar(job, row.id),
      Array.from({ length: 10 }, () => ""),
    ),
    branches_variance: column<Value>(
      (row) =>
        varianceOf(length(row) * (1 - tolerance), length(row) * (1 + tolerance), priceEach(job, row.cable)),
      "",
    ),
    branches_from_key: column<Value>((row) => keyOf(row.from), ""),
    branches_device_key: column<Value>((row) => keyOf(row.device), ""),
    branches_cable_key: column<Value>((row) => keyOf(row.cable), ""),
  };
}
