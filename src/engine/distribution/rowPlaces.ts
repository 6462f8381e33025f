/**
 * Devices and outlets, each with what feeds it and the port that it is on, or
 * with its fault. Time is linear in the rows.
 */
import { faults, isFault, type Fault } from "../faults";
import { distributionTree, type TreeRow } from "../signal/distributionTree";
import { nameKey } from "../signal/nameKey";
import type { DistributionJob, Name, PortWanted } from "./job";
import { Ports, type Feeding } from "./ports";

/** Rows are devices, then outlets; what feeds is a row or, counted on behind the rows, a head unit. */
export interface RowPlaces {
  /** Rows without a fault, each after the row that feeds it. */
  readonly order: readonly number[];
  readonly faults: readonly (Fault | null)[];
  /** By row without a fault: what feeds it. */
  readonly feeding: Int32Array;
  /** By row without a fault: its port of that, 0 for a through port. */
  readonly port: Int32Array;
  /** What a row or a head unit has to offer. */
  readonly offered: (index: number) => Feeding;
  readonly isOpen: (index: number, port: number) => boolean;
}

interface Row {
  readonly name: Name;
  readonly from: Name;
  readonly port: PortWanted;
}

export function rowPlaces(job: DistributionJob): RowPlaces {
  const { headUnits, devices, outlets } = job;
  const rows: readonly Row[] = [...devices, ...outlets];
  const from = feeds(rows);
  const { order, rows: found } = distributionTree(
    rows.map(({ name }) => name),
    from,
    headUnits.map(({ name }) => name),
  );
  const bad = found.map((row, index): Fault | null => {
    if (row === null) return faults.missing("name", "a name for this row");
    const own = from[index]!;
    return isFault(own) ? own : isFault(row) ? row : null;
  });
  const headOf = new Map<string, number>();
  headUnits.forEach(({ name }, head) => {
    // A second one of the name has a fault of its own.
    if (!headOf.has(nameKey(name))) headOf.set(nameKey(name), head);
  });
  const feeding = Int32Array.from(found, (row, index) => {
    if (bad[index]) return -1;
    const { parent, root } = row as TreeRow;
    return parent >= 0 ? parent : rows.length + headOf.get(nameKey(root))!;
  });
  const offered = (index: number): Feeding => offeredBy(job, index);
  const ports = new Array<Ports | undefined>(rows.length + headUnits.length);
  const port = new Int32Array(rows.length);
  const place = (row: number): void => {
    if (bad[row]) return;
    const { name, port: wanted } = rows[row]!;
    const asked = { name: name as string, wanted, isDevice: row < devices.length };
    const of = (ports[feeding[row]!] ??= new Ports(offered(feeding[row]!)));
    const found = wanted === null ? of.next(asked) : of.named(asked);
    if (isFault(found)) bad[row] = found;
    else port[row] = found;
  };
  rows.forEach((row, index) => row.port !== null && place(index));
  rows.forEach((row, index) => row.port === null && place(index));
  belowFaults(
    order,
    rows.map(({ name }) => name as string),
    (row) => (found[row] as TreeRow).parent,
    bad,
  );
  return {
    order: order.filter((row) => !bad[row]),
    faults: bad,
    feeding,
    port,
    offered,
    isOpen: (index, port) => ports[index]?.isOpen(port) ?? true,
  };
}

function offeredBy({ headUnits, devices, outlets }: DistributionJob, index: number): Feeding {
  if (index < devices.length) {
    const { name, part } = devices[index]!;
    return { name: name as string, ports: part.ways, hasThrough: part.through !== null };
  }
  const outlet = outlets[index - devices.length];
  if (outlet) return { name: outlet.name as string, ports: 0, hasThrough: Boolean(outlet.plate?.through) };
  const { name, kind } = headUnits[index - devices.length - outlets.length]!;
  return { name, ports: kind.outputs, hasThrough: false };
}

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
