/**
 * Devices and outlets, each with what feeds it and the port that it is on, or
 * with its fault. Time is linear in the rows.
 */
import { faults, isFault, type Fault } from "../faults";
import { distributionTree, type TreeRow } from "../signal/distributionTree";
import { nameKey } from "../signal/nameKey";
import type { DistributionJob, HeadUnitRow, Name, PortWanted } from "./job";
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
  readonly fault: Fault | null;
  readonly name: Name;
  readonly from: Name;
  readonly port: PortWanted;
}

export function rowPlaces(job: DistributionJob): RowPlaces {
  const { headUnits, devices, outlets } = job;
  const rows: readonly Row[] = [...devices, ...outlets];
  const headOf = new Map<string, number>();
  headUnits.forEach(({ name }, head) => {
    // A second one of the name has a fault of its own.
    if (!headOf.has(nameKey(name))) headOf.set(nameKey(name), head);
  });
  const from = feeds(rows, headUnits);
  const names = rows.map(({ name }) => name);
  const { order, rows: found } = distributionTree(
    names,
    from,
    headUnits.map(({ name }) => name),
  );
  const bad = found.map((row, index): Fault | null => {
    const { fault } = rows[index]!;
    if (fault) return fault;
    if (row === null) return faults.missing("name", "a name for this row");
    const own = from[index]!;
    return isFault(own) ? own : isFault(row) ? row : null;
  });
  const parent = (row: number): number => (found[row] as TreeRow).parent;
  const headAbove = (row: number): number => headOf.get(nameKey((found[row] as TreeRow).root))!;
  const badHead = (row: number): string | null => {
    const head = headUnits[headAbove(row)]!;
    return head.fault ? head.name : null;
  };
  const below = (): void => belowFaults(order, names as string[], parent, badHead, bad);
  below();
  const feeding = Int32Array.from(found, (row, index) => {
    if (row === null || isFault(row)) return -1;
    return row.parent >= 0 ? row.parent : rows.length + headAbove(index);
  });
  const offered = (index: number): Feeding => offeredBy(job, index);
  const ports = new Array<Ports | undefined>(rows.length + headUnits.length);
  const port = new Int32Array(rows.length);
  const place = (row: number): void => {
    const { name, port: wanted, fault } = rows[row]!;
    // One with a fault of its own is on its port all the same.
    const above = feeding[row]!;
    if (above < 0 || (bad[row] && bad[row] !== fault) || bad[above] || headUnits[above - rows.length]?.fault)
      return;
    const asked = { name: name as string, wanted, isDevice: row < devices.length };
    const of = (ports[feeding[row]!] ??= new Ports(offered(feeding[row]!)));
    const found = wanted === null ? of.next(asked) : of.named(asked);
    if (isFault(found)) bad[row] ??= found;
    else port[row] = found;
  };
  rows.forEach((row, index) => row.port !== null && place(index));
  rows.forEach((row, index) => row.port === null && place(index));
  below();
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

/** Rows fed from nothing, from an unknown or by two are faults before the tree is looked at, as are names given twice. */
function feeds(rows: readonly Row[], headUnits: readonly HeadUnitRow[]): Name[] {
  const first = new Map<string, number>();
  const heads = new Set(headUnits.map(({ name }) => nameKey(name)));
  rows.forEach(({ name }, index) => {
    if (typeof name === "string" && !first.has(nameKey(name))) first.set(nameKey(name), index);
  });
  const from: Name[] = rows.map((row) => row.from);
  for (const [index, { name, from: feeding }] of rows.entries()) {
    if (name === null || isFault(name)) continue;
    const before = first.get(nameKey(name))!;
    if (heads.has(nameKey(name))) from[index] = faults.nameOfHeadUnit(name);
    else if (before !== index) {
      const other = rows[before]!.from;
      from[before] = from[index] =
        typeof other === "string" && typeof feeding === "string"
          ? faults.fedByTwo(name, other, feeding)
          : faults.nameTwice(name);
    } else if (feeding === null) from[index] = faults.notFed(name);
    else if (!isFault(feeding) && nameKey(feeding) === nameKey(name))
      from[index] = faults.fedFromItself(name);
    else if (!isFault(feeding) && !heads.has(nameKey(feeding)) && !first.has(nameKey(feeding)))
      from[index] = faults.fedFromUnknown(name, feeding);
  }
  return from;
}

/** A row below a bad one has a fault that names the one in which the trouble starts. */
function belowFaults(
  order: readonly number[],
  names: readonly string[],
  parent: (row: number) => number,
  badHead: (row: number) => string | null,
  bad: (Fault | null)[],
): void {
  const culprit = new Map<number, string>();
  for (const row of order) {
    const above = parent(row);
    const from = bad[row] ? null : above < 0 ? badHead(row) : bad[above] ? culprit.get(above)! : null;
    if (from !== null) bad[row] = faults.treeBelowFault(names[row]!, from);
    if (bad[row]) culprit.set(row, from ?? names[row]!);
  }
}
