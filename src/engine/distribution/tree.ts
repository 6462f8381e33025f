/**
 * The rows of a distribution as one tree of points: the outputs of the head
 * units, the lead of an output that has a cable or a supply of its own, then
 * devices and outlets, each after the point that feeds it.
 *
 * A row that is bad (fed from nothing, twice, in a loop, by a port that is not
 * there or is taken) gets a fault, each row below it one that names it, and all
 * others stand. Time is linear in the rows.
 */
import type { Fault } from "../faults";
import type { DistributionJob } from "./job";
import type { AtEnds, DevicePart, Run } from "./parts";
import { THROUGH } from "./ports";
import { rowPlaces, type RowPlaces } from "./rowPlaces";

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
  const places = rowPlaces(job);
  const rows = devices.length + outlets.length;
  const leads = headUnits.map(({ run, supply }) => run !== null || supply?.stands === "in the line");
  const above = headUnits.reduce((sum, { kind }, head) => sum + kind.outputs + Number(leads[head]), 0);
  const count = above + places.order.length;
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
    deviceFaults: places.faults.slice(0, devices.length),
    outletFaults: places.faults.slice(devices.length),
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
  const pointOf = (feeding: number, port: number): number => {
    if (feeding < devices.length) return tree.pointOfDevice[feeding]!;
    if (feeding < rows) return tree.pointOfOutlet[feeding - devices.length]!;
    const head = feeding - rows;
    return port === 1 && leads[head] ? leadOf[head]! : tree.firstOutput[head]! + port - 1;
  };
  for (const row of places.order) {
    const port = places.port[row]!;
    const parent = pointOf(places.feeding[row]!, port);
    if (row < devices.length) tree.pointOfDevice[row] = enter(DEVICE, row, parent, port);
    else tree.pointOfOutlet[row - devices.length] = enter(OUTLET, row - devices.length, parent, port);
  }
  return { ...tree, openPorts: openPorts(tree, places) };
}

/** Parts that divide the signal have ports to close; a line amplifier with nothing behind it has not. */
function openPorts(tree: Omit<Tree, "openPorts">, { offered, isOpen }: RowPlaces): OpenPort[] {
  const { job, count, kind, row } = tree;
  const open: OpenPort[] = [];
  for (let point = 0; point < count; point++) {
    if (kind[point]! < DEVICE) continue;
    const isDevice = kind[point] === DEVICE;
    if (isDevice && !["splitter", "tap"].includes(job.devices[row[point]!]!.part.kind)) continue;
    const at = isDevice ? row[point]! : job.devices.length + row[point]!;
    const { ports, hasThrough } = offered(at);
    for (let port = hasThrough ? THROUGH : 1; port <= ports; port++)
      if (isOpen(at, port)) open.push({ point, port });
  }
  return open;
}

/** @returns the device at a point; undefined at others */
export const deviceAt = ({ job, kind, row }: Tree, point: number): DevicePart | undefined =>
  kind[point] === DEVICE ? job.devices[row[point]!]!.part : undefined;

/** @returns whether a supply feeds into the line at a point */
export const feedsInAt = ({ job, kind, row }: Tree, point: number): boolean =>
  kind[point] === DEVICE
    ? job.devices[row[point]!]!.part.supply !== null
    : kind[point] === LEAD && job.headUnits[row[point]!]!.supply?.stands === "in the line";

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

/** @returns its name as the job has it; of a lead that of the supply on it */
export function nameOf({ job, kind, row }: Tree, point: number): string {
  const at = row[point]!;
  if (kind[point] === DEVICE) return job.devices[at]!.name as string;
  if (kind[point] === OUTLET) return job.outlets[at]!.name as string;
  const { name } = job.headUnits[at]!;
  return kind[point] === LEAD ? `supply of ${name}` : name;
}
