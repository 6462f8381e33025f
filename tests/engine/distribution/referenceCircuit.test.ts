/**
 * The circuit of the tests' reference program against the 40 networks of tests/fixtures/distribution/dc-networks.json:
 * computed with ngspice 39 and by a nodal solve in Python, invented installations, ours; ideal diodes, its tolerances.
 */
import published from "../../fixtures/distribution/dc-networks.json";
import { operatingPoint, type Branch, type Load } from "../../support/reference/distribution/circuit";

interface Element {
  readonly id: string;
  readonly kind: string;
  readonly at?: string;
  readonly a?: string;
  readonly b?: string;
  readonly outlet_side?: string;
  readonly head_side?: string;
  readonly passes?: string;
  readonly R_ohm?: number;
  readonly source_R_ohm?: number;
  readonly drop_V?: number | null;
  readonly volts_V?: number;
  readonly on?: boolean;
  readonly draws?: string;
  readonly I_A?: number | null;
  readonly P_W?: number | null;
}
interface Network {
  readonly id: string;
  readonly nodes: readonly string[];
  readonly elements: readonly Element[];
  readonly results: {
    readonly ideal: { readonly outcome: string; readonly node_V?: Readonly<Record<string, number>> };
  };
}

const LIMITS = { leakOhms: 1e8, leastVolts: 0.1 };

function pointOf({ nodes, elements }: Network): number[] | undefined {
  const held = new Map<number, number>();
  const branches: Branch[] = [];
  const loads: Load[] = [];
  const at = (name: string | undefined): number => nodes.indexOf(name!);
  let count = nodes.length;
  for (const { kind, passes, ...element } of elements) {
    if (kind === "head_unit") {
      const { P_W, I_A } = element;
      loads.push({
        node: at(element.at),
        ...(element.draws === "constant_power" ? { watts: P_W! } : { amps: I_A! }),
      });
    } else if (kind === "inserter" || kind === "receiver") {
      if (element.on === false) continue;
      const source = count++;
      held.set(source, element.volts_V!);
      const drop = element.drop_V ?? undefined;
      branches.push({ a: source, b: at(element.at), ohms: element.source_R_ohm!, drop });
    } else if (kind === "port") {
      const [outlet, head] = [at(element.outlet_side), at(element.head_side)];
      const ohms = element.R_ohm!;
      if (passes === "both") branches.push({ a: outlet, b: head, ohms, drop: undefined });
      if (passes === "towards_head") branches.push({ a: outlet, b: head, ohms, drop: element.drop_V! });
      if (passes === "away_from_head") branches.push({ a: head, b: outlet, ohms, drop: element.drop_V! });
    } else branches.push({ a: at(element.a), b: at(element.b), ohms: element.R_ohm!, drop: undefined });
  }
  return operatingPoint({ nodes: count, held, branches, loads }, LIMITS)?.volts.slice(0, nodes.length);
}

let worst = 0;
test.each(published.networks as unknown as Network[])("$id", (network) => {
  const { outcome, node_V } = network.results.ideal;
  const volts = pointOf(network);
  expect(volts !== undefined).toBe(outcome === "operating");
  network.nodes.forEach((node, index) => {
    if (!volts) return;
    const off = Math.abs(volts[index]! - node_V![node]!);
    worst = Math.max(worst, off);
    expect({ node, isNear: off <= published.tolerance.ideal.V }).toEqual({ node, isNear: true });
  });
});

afterAll(
  () =>
    void process.stdout.write(
      `  the reference program's circuits against ngspice, worst: ${worst.toExponential(1)} V\n`,
    ),
);
