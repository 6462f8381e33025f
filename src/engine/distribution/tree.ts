/**
 * The rows of a distribution as one tree of points: the outputs of the head
 * units, the lead of an output that has a cable or a supply of its own, then
 * devices and outlets, each after the point that feeds it.
 *
 * A row that is bad (fed from nothing, twice, in a loop, by a port that is not
 * there or is taken) gets a fault, each row below it one that names it, and all
 * others stand. Time is linear in the rows.
 */
import { faults, isFault, type Fault } from "../faults";
import { distributionTree, type TreeRow } from "../signal/distributionTree";
import { nameKey } from "../signal/nameKey";
import type { DistributionJob, Name, PortWanted } from "./job";
import type { AtEnds, DevicePart, Run } from "./parts";
import { Ports, THROUGH, type Feeding } from "./ports";

/** What a point is. */
export const OUTPUT = 0;
export const LEAD = 1;
export const DEVICE = 2;
export const OUTLET = 3;

export interface OpenPort {
  readonly point: number;
  /** 0 is the through port. */
  readonly port: number;
}

export interface Tree {
  readonly job: DistributionJob;
  readonly count: number;
  /** By point: OUTPUT, LEAD, DEVICE or OUTLET. */
  readonly kind: Uint8Array;
  /** By point: the head unit, the device's row or the outlet's row. */
  readonly row: Int32Array;
  /** By point: the point that feeds it; -1 for an output. */
  readonly parent: Int32Array;
  /** By point: the port of the parent that it is on; of an output its number, from 1. */
  readonly port: Int32Array;
  /** By point: the output at its top, a point. */
  readonly output: Int32Array;
  /** By row of the devices; -1 where the row is bad. */
  readonly pointOfDevice: Int32Array;
  /** By row of the outlets; -1 where the row is bad. */
  readonly pointOfOutlet: Int32Array;
  /** By head unit: the point of its output 1; the others follow. */
  readonly firstOutput: Int32Array;
  /** Ports of splitters, taps and loop-through plates that nothing is on. */
  readonly openPorts: readonly OpenPort[];
  readonly deviceFaults: readonly (Fault | null)[];
  readonly outletFaults: readonly (Fault | null)[];
}

/** @param job with all its parts looked up */
export function buildTree(job: DistributionJob): Tree {
  const { headUnits, devices, outlets } = job;
  const rows = [...devices, ...outlets] as readonly { name: Name; from: Name; port: PortWanted }[];
  const from = feeds(rows);
  const { order, rows: found } = distributionTree(
    rows.map(({ name }) => name),
    from,
    headUnits.map(({ name }) => name),
  );
  const bad: (Fault | null)[] = found.map((row, index) => {
    if (row === null) return faults.missing("name", "a name for this row");
    const own = from[index]!;
    return isFault(own) ? own : isFault(row) ? row : null;
  });
  const headOf = new Map(headUnits.map(({ name }, index) => [nameKey(name), index]));
  /** By row, and after the rows by head unit. */
  const feeding = (row: number): number => {
    const { parent, root } = found[row] as TreeRow;
    return parent >= 0 ? parent : rows.length + headOf.get(nameKey(root))!;
  };
  const offered = (index: number): Feeding => {
    if (index >= rows.length) {
      const { name, kind } = headUnits[index - rows.length]!;
      return { name, ports: kind.outputs, hasThrough: false };
    }
    const name = rows[index]!.name as string;
    if (index >= devices.length)
      return {
        name,
        ports: 0,
        hasThrough: (outlets[index - devices.length]!.plate?.through ?? null) !== null,
      };
    const { ways, through } = devices[index]!.part;
    return { name, ports: ways, hasThrough: through !== null };
  };
  const ports = new Array<Ports | undefined>(rows.length + headUnits.length);
  const portsOf = (index: number): Ports => (ports[index] ??= new Ports(offered(index)));

  const portOf = new Int32Array(rows.length);
  const placed = (row: number): void => {
    if (bad[row]) return;
    const { name, port: wanted } = rows[row]!;
    const asked = { name: name as string, wanted, isDevice: row < devices.length };
    const of = portsOf(feeding(row));
    const port = wanted === null ? of.next(asked) : of.named(asked);
    if (isFault(port)) bad[row] = port;
    else portOf[row] = port;
  };
  rows.forEach(({ port }, row) => port !== null && placed(row));
  rows.forEach(({ port }, row) => port === null && placed(row));
  belowFaults(
    order,
    rows.map(({ name }) => name as string),
    (row) => (found[row] as TreeRow).parent,
    bad,
  );

  const leads = headUnits.map(({ run, supply }) => run !== null || supply?.stands === "in the line");
  const good = order.filter((row) => !bad[row]);
  const count = headUnits.reduce(
    (sum, { kind }, index) => sum + kind.outputs + Number(leads[index]),
    good.length,
  );
  const tree = {
    job,
    count,
    kind: new Uint8Array(count),
    row: new Int32Array(count),
    parent: new Int32Array(count).fill(-1),
    port: new Int32Array(count),
    output: new Int32Array(count),
    pointOfDevice: new Int32Array(devices.length).fill(-1),
    pointOfOutlet: new Int32Array(outlets.length).fill(-1),
    firstOutput: new Int32Array(headUnits.length),
    openPorts: [] as OpenPort[],
    deviceFaults: bad.slice(0, devices.length),
    outletFaults: bad.slice(devices.length),
  };
  let next = 0;
  const enter = (kind: number, row: number, parent: number, port: number): number => {
    const point = next++;
    tree.kind[point] = kind;
    tree.row[point] = row;
    tree.parent[point] = parent;
    tree.port[point] = port;
    tree.output[point] = parent < 0 ? point : tree.output[parent]!;
    return point;
  };
  headUnits.forEach(({ kind }, head) => {
    tree.firstOutput[head] = next;
    for (let output = 1; output <= kind.outputs; output++) enter(OUTPUT, head, -1, output);
  });
  const leadOf = leads.map((has, head) => (has ? enter(LEAD, head, tree.firstOutput[head]!, 1) : -1));
  for (const row of good) {
    const above = feeding(row);
    const head = above - rows.length;
    const port = portOf[row]!;
    const parent =
      head < 0
        ? above < devices.length
          ? tree.pointOfDevice[above]!
          : tree.pointOfOutlet[above - devices.length]!
        : port === 1 && leads[head]
          ? leadOf[head]!
          : tree.firstOutput[head]! + port - 1;
    if (row < devices.length) tree.pointOfDevice[row] = enter(DEVICE, row, parent, port);
    else tree.pointOfOutlet[row - devices.length] = enter(OUTLET, row - devices.length, parent, port);
  }
  for (let point = 0; point < count; point++) {
    const row = tree.row[point]!;
    const at = tree.kind[point] === DEVICE ? row : devices.length + row;
    if (tree.kind[point]! < DEVICE || !closable(tree, point)) continue;
    const { ports: ways, hasThrough } = offered(at);
    for (let port = hasThrough ? THROUGH : 1; port <= ways; port++)
      if (ports[at]?.isOpen(port) ?? true) tree.openPorts.push({ point, port });
  }
  return tree;
}

/** Parts that divide the signal have ports to close; a line amplifier with nothing behind it has not. */
const closable = (tree: Tree, point: number): boolean =>
  tree.kind[point] === OUTLET || ["splitter", "tap"].includes(deviceAt(tree, point)!.kind);

/** Rows fed from nothing, or by two, are faults before the tree is looked at. */
function feeds(rows: readonly { name: Name; from: Name }[]): Name[] {
  const first = new Map<string, number>();
  const from: Name[] = rows.map((row) => row.from);
  for (const [index, { name, from: feeding }] of rows.entries()) {
    if (name === null || isFault(name)) continue;
    if (feeding === null) from[index] = faults.notFed(name);
    const before = first.get(nameKey(name));
    if (before === undefined) first.set(nameKey(name), index);
    else {
      const other = rows[before]!.from;
      if (typeof other !== "string" || typeof feeding !== "string" || nameKey(other) === nameKey(feeding))
        continue;
      from[before] = from[index] = faults.fedByTwo(name, other, feeding);
    }
  }
  return from;
}

/** A row below one that found no port has a fault that names it. */
function belowFaults(
  order: readonly number[],
  names: readonly string[],
  parent: (row: number) => number,
  bad: (Fault | null)[],
): void {
  const culprit = new Map<number, string>();
  for (const row of order) {
    const above = parent(row);
    if (bad[row]) culprit.set(row, names[row]!);
    else if (above >= 0 && bad[above]) {
      const name = culprit.get(above)!;
      culprit.set(row, name);
      bad[row] = faults.treeBelowFault(names[row]!, name);
    }
  }
}

/** @returns the device at a point; undefined at others */
export const deviceAt = ({ job, kind, row }: Tree, point: number): DevicePart | undefined =>
  kind[point] === DEVICE ? job.devices[row[point]!]!.part : undefined;

/** @returns the cable that leads to a point from the one that feeds it */
export function runTo({ job, kind, row }: Tree, point: number): Run | null {
  const at = row[point]!;
  if (kind[point] === LEAD) return job.headUnits[at]!.run;
  if (kind[point] === DEVICE) return job.devices[at]!.run;
  return kind[point] === OUTLET ? job.outlets[at]!.run : null;
}

const NO_LOSS: AtEnds = { low: 0, high: 0 };

/** @returns what a point loses between its input and one of its ports */
export function lossToPort(tree: Tree, point: number, port: number): AtEnds {
  const { job, kind, row } = tree;
  const at = row[point]!;
  if (kind[point] === LEAD) {
    const { supply } = job.headUnits[at]!;
    return supply?.stands === "in the line" ? supply.loss : NO_LOSS;
  }
  if (kind[point] === OUTLET) return job.outlets[at]!.plate?.through ?? NO_LOSS;
  if (kind[point] === OUTPUT) return NO_LOSS;
  const part = job.devices[at]!.part;
  if (part.supply) return part.supply.loss;
  return port === THROUGH ? part.through! : part.port;
}

/** @returns its name as the job has it; of a lead its head unit's */
export function nameOf({ job, kind, row }: Tree, point: number): string {
  const at = row[point]!;
  if (kind[point] === DEVICE) return job.devices[at]!.name as string;
  return kind[point] === OUTLET ? (job.outlets[at]!.name as string) : job.headUnits[at]!.name;
}
