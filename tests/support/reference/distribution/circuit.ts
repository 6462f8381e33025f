/**
 * Direct current of a small circuit: nodal analysis with a full matrix. A diode has a constant drop and otherwise none of
 * its own; diodes are switched on and off until all agree: all that disagree at once at first, then only the one of the
 * least number, which always ends. Constant power is worked from no load upwards, which comes to the higher root.
 */
export interface Branch {
  /** Node numbers; current is counted from a to b. */
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  /** Volts of its diode, which lets current pass from a to b only; none without one. */
  readonly drop: number | undefined;
}
export interface Load {
  readonly node: number;
  readonly amps?: number;
  readonly watts?: number;
}
export interface Circuit {
  readonly nodes: number;
  /** Nodes that an ideal source holds, with their volts. */
  readonly held: ReadonlyMap<number, number>;
  readonly branches: readonly Branch[];
  readonly loads: readonly Load[];
}
export interface Limits {
  /** What leads from every node to the return, so that none floats. */
  readonly leakOhms: number;
  /** A load that would have less with nothing drawn draws nothing. */
  readonly leastVolts: number;
  /** Of the contacts behind every source; equal sources share a load by them. */
  readonly contactOhms: number;
}
/** What the product takes; leaks so small that nobody sees them. */
export const OURS: Limits = { leakOhms: 1e9, leastVolts: 1, contactOhms: 1e-3 };

export interface Point {
  readonly volts: readonly number[];
  /** By branch, from a to b. */
  readonly amps: readonly number[];
  /** By load. */
  readonly drawn: readonly number[];
}

/** Less than any contact; a branch must have some. */
const LEAST_OHMS = 1e-6;
const VOLTS_EXACT = 1e-7;
const AMPS_EXACT = 1e-7;

/** Gauss with the greatest pivot. */
function solved(matrix: Float64Array[], right: Float64Array): Float64Array {
  const size = right.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++)
      if (Math.abs(matrix[row]![column]!) > Math.abs(matrix[pivot]![column]!)) pivot = row;
    [matrix[column], matrix[pivot]] = [matrix[pivot]!, matrix[column]!];
    [right[column], right[pivot]] = [right[pivot]!, right[column]!];
    for (let row = column + 1; row < size; row++) {
      const times = matrix[row]![column]! / matrix[column]![column]!;
      if (times === 0) continue;
      for (let k = column; k < size; k++) matrix[row]![k]! -= times * matrix[column]![k]!;
      right[row]! -= times * right[column]!;
    }
  }
  for (let row = size - 1; row >= 0; row--) {
    for (let k = row + 1; k < size; k++) right[row]! -= matrix[row]![k]! * right[k]!;
    right[row]! /= matrix[row]![row]!;
  }
  return right;
}

const ohmsOf = (branch: Branch): number => Math.max(branch.ohms, LEAST_OHMS);

function voltsFor(
  { nodes, held, branches, loads }: Circuit,
  { leakOhms }: Pick<Limits, "leakOhms">,
  drawn: readonly number[],
  conducts: readonly boolean[],
): number[] {
  const free = Array.from({ length: nodes }, (_, node) => node).filter((node) => !held.has(node));
  const place = new Map(free.map((node, index) => [node, index]));
  const matrix = free.map(() => new Float64Array(free.length));
  const right = new Float64Array(free.length);
  free.forEach((_, index) => (matrix[index]![index] = 1 / leakOhms));
  branches.forEach((branch, index) => {
    if (!conducts[index]) return;
    const siemens = 1 / ohmsOf(branch);
    for (const [here, there, sign] of [
      [branch.a, branch.b, 1],
      [branch.b, branch.a, -1],
    ] as const) {
      const row = place.get(here);
      if (row === undefined) continue;
      matrix[row]![row]! += siemens;
      right[row]! += sign * siemens * (branch.drop ?? 0);
      const column = place.get(there);
      if (column === undefined) right[row]! += siemens * held.get(there)!;
      else matrix[row]![column]! -= siemens;
    }
  });
  loads.forEach(({ node }, index) => {
    const row = place.get(node);
    if (row !== undefined) right[row]! -= drawn[index]!;
  });
  const volts = solved(matrix, right);
  return Array.from({ length: nodes }, (_, node) => held.get(node) ?? volts[place.get(node)!]!);
}

const ROUNDS_OF_ALL = 30;
const MOST_ROUNDS = 100_000;

/** @returns volts with which every diode agrees; `conducts` is where to start from, and where it ended */
function agreed(
  circuit: Circuit,
  limits: Pick<Limits, "leakOhms">,
  drawn: readonly number[],
  conducts: boolean[],
): number[] {
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const volts = voltsFor(circuit, limits, drawn, conducts);
    const disagree = circuit.branches.flatMap((branch, index) => {
      if (branch.drop === undefined) return [];
      const over = volts[branch.a]! - volts[branch.b]! - branch.drop;
      return (conducts[index] ? over / ohmsOf(branch) < -AMPS_EXACT : over > VOLTS_EXACT) ? [index] : [];
    });
    if (disagree.length === 0) return volts;
    for (const index of round < ROUNDS_OF_ALL ? disagree : disagree.slice(0, 1))
      conducts[index] = !conducts[index];
  }
  throw new Error("the diodes of a circuit never agreed");
}

const MOST_STEPS = 20_000;

/** @returns nothing where the loads have no operating point */
export function operatingPoint(circuit: Circuit, limits: Omit<Limits, "contactOhms">): Point | undefined {
  const { branches, loads } = circuit;
  const conducts = branches.map(({ drop }) => drop === undefined);
  let drawn = loads.map(() => 0);
  let volts = agreed(circuit, limits, drawn, conducts);
  const isFed = loads.map(({ node }) => volts[node]! >= limits.leastVolts);
  for (let step = 0; ; step++) {
    const next = loads.map(({ node, amps, watts }, index) => {
      if (!isFed[index]) return 0;
      return amps ?? watts! / volts[node]!;
    });
    const isSettled = next.every((amps, index) => Math.abs(amps - drawn[index]!) < 1e-10);
    drawn = next;
    if (isSettled) break;
    volts = agreed(circuit, limits, drawn, conducts);
    if (step > MOST_STEPS || loads.some(({ node }, index) => isFed[index] && volts[node]! <= 0))
      return undefined;
  }
  const amps = branches.map((branch, index) =>
    conducts[index] ? (volts[branch.a]! - volts[branch.b]! - (branch.drop ?? 0)) / ohmsOf(branch) : 0,
  );
  return { volts, amps, drawn };
}
