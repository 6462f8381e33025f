/**
 * Direct current on 40 networks of a distribution, 2 to 40 elements each.
 *
 * Source: tests/fixtures/distribution/dc-networks.json: invented networks,
 * solved with ngspice 39 (.op) and again by a nodal solve in Python, by people
 * who had not seen this code; the fixture holds how, and the tolerances.
 */
import {
  supplyState,
  type Passes,
  type SupplyCircuit,
  type SupplyState,
} from "../../../src/engine/distribution/supplyCircuit";
import { SupplyNetwork } from "../../../src/engine/distribution/supplyNetwork";
import { heldTo } from "../../support/heldTo";
import fixture from "../../fixtures/distribution/dc-networks.json";

type Network = (typeof fixture.networks)[number];
type Element = Network["elements"][number] & Readonly<Record<string, unknown>>;

const PASSES: Readonly<Record<string, Passes>> = {
  both: "both ways",
  towards_head: "to the parent",
  away_from_head: "from the parent",
  none: "nothing",
};
/** A head unit with less while none draws is not powered: the fixture's rule (1). */
const LEAST_VOLTS = 0.1;
const LEAK_OHMS = 1e8;

interface Placed {
  readonly circuit: SupplyCircuit;
  readonly place: ReadonlyMap<string, number>;
  /** By element: the node below it, and whether it counts from there to the head. */
  readonly ways: ReadonlyMap<string, { readonly node: number; readonly sign: 1 | -1 }>;
  readonly sources: readonly Element[];
  readonly loads: readonly Element[];
}

/** A tree from the first head unit, in an order in which each node stands after its parent. */
function placed(network: Network, isOn: (receiver: Element) => boolean, draws = true): Placed {
  const elements = network.elements as readonly Element[];
  const of = (...kinds: string[]): Element[] => elements.filter(({ kind }) => kinds.includes(kind));
  const ends = (one: Element): [string, string] =>
    one.kind === "port" ? [String(one.outlet_side), String(one.head_side)] : [String(one.a), String(one.b)];
  const ways = of("cable", "contact", "pass", "port");
  const place = new Map<string, number>();
  const nodes: SupplyCircuit["nodes"][number][] = [];
  const found = new Map<string, { node: number; sign: 1 | -1 }>();
  const enter = (name: string, node: SupplyCircuit["nodes"][number]): void => {
    place.set(name, nodes.push(node) - 1);
    for (const way of ways) {
      const [outlet, head] = ends(way);
      if (found.has(way.id) || (outlet !== name && head !== name)) continue;
      const other = outlet === name ? head : outlet;
      found.set(way.id, { node: nodes.length, sign: head === name ? 1 : -1 });
      const passes = way.kind === "port" ? PASSES[String(way.passes)]! : "both ways";
      // Where the root lies on the outlets' side of a port, its diode looks the other way.
      const turned =
        outlet === name && passes === "to the parent"
          ? "from the parent"
          : outlet === name && passes === "from the parent"
            ? "to the parent"
            : passes;
      enter(other, {
        parent: place.get(name)!,
        ohms: Number(way.R_ohm),
        passes: turned,
        drop: Number(way.drop_V ?? 0),
      });
    }
  };
  enter(String(of("head_unit")[0]!.at), { parent: -1, ohms: 0, passes: "nothing", drop: 0 });
  const sources = of("inserter", "receiver").filter((one) => one.kind === "inserter" || isOn(one));
  const loads = draws ? of("head_unit") : [];
  return {
    place,
    ways: found,
    sources,
    loads,
    circuit: {
      nodes,
      sources: sources.map((one) => ({
        node: place.get(String(one.at))!,
        volts: Number(one.volts_V),
        ohms: Number(one.source_R_ohm),
        drop: one.drop_V === null ? null : Number(one.drop_V),
      })),
      loads: loads.map((one) => ({
        node: place.get(String(one.at))!,
        kind: one.draws === "constant_power" ? "W" : "A",
        amount: Number(one.draws === "constant_power" ? one.P_W : one.I_A),
      })),
      leastVolts: LEAST_VOLTS,
      leakOhms: LEAK_OHMS,
    },
  };
}

const given = (receiver: Element): boolean => receiver.on === true;
const { V, A } = fixture.tolerance.ideal;
const basis = {
  what: "supplyState",
  source: "ngspice 39, ideal diodes (dc-networks.json)",
  basis: "reference library",
} as const;
const volts = heldTo({ ...basis, unit: "V" });
const amperes = heldTo({ ...basis, unit: "A" });

/** How often the quick way has to ask the slow one, over all states. */
let [asked, fellBack] = [0, 0];
function byNetwork({ nodes, sources, loads, leastVolts, leakOhms }: SupplyCircuit): SupplyState | undefined {
  const network = new SupplyNetwork(nodes, sources, loads, [], { leastVolts, leakOhms });
  const operates = network.solve();
  asked += 1;
  fellBack += network.fellBack;
  const { volts, upwards, given, drawn } = network;
  return operates
    ? {
        volts: [...volts],
        upwards: [...upwards],
        given: [...given],
        drawn: [...drawn],
        powered: [...drawn].map((amperes) => amperes > 0),
      }
    : undefined;
}
const ways = { supplyState, byNetwork };

const cases = Object.entries(ways).flatMap(([way, solved]) =>
  fixture.networks.map((network) => [way, network.id, solved, network] as const),
);

describe.each(cases)("%s %s", (way, number, solved, network) => {
  const id = `${way} ${number}`;
  const ideal = network.results.ideal as unknown as {
    outcome: string;
    node_V?: Record<string, number>;
    current_A?: Record<string, number>;
    head_units?: Record<string, { V: number; A: number; state: string }>;
    standing_V: Record<string, Record<"loads_drawing" | "loads_off", number | null>>;
    head_V_by_state: Record<string, Record<string, number | null>>;
  };
  const elements = network.elements as readonly Element[];
  const receivers = elements.filter(({ kind }) => kind === "receiver");
  const heads = elements.filter(({ kind }) => kind === "head_unit");

  test("as it stands", () => {
    const { circuit, place, ways, sources, loads } = placed(network, given);
    const state = solved(circuit);
    expect(state ? "operating" : "none").toBe(ideal.outcome);
    if (!state) return;
    for (const [name, wanted] of Object.entries(ideal.node_V!))
      volts.row(`${id} ${name}`, state.volts[place.get(name)!], wanted, V);
    for (const [name, wanted] of Object.entries(ideal.current_A!)) {
      const way = ways.get(name);
      const source = sources.findIndex((one) => one.id === name);
      const load = loads.findIndex((one) => one.id === name);
      const found = way
        ? way.sign * state.upwards[way.node]!
        : source >= 0
          ? state.given[source]
          : load >= 0
            ? state.drawn[load]
            : 0;
      amperes.row(`${id} ${name}`, found, wanted, A);
    }
    for (const [name, { state: wanted }] of Object.entries(ideal.head_units!)) {
      const load = loads.findIndex((one) => one.id === name);
      const at = state.volts[circuit.loads[load]!.node]!;
      const found = !state.powered[load]
        ? "unpowered"
        : at < Number(loads[load]!.least_V)
          ? "below_least"
          : "ok";
      expect({ name, found }).toEqual({ name, found: wanted });
    }
  });

  test("what stands at each receiver from the others", () => {
    for (const [name, wanted] of Object.entries(ideal.standing_V)) {
      for (const [loads, value] of Object.entries(wanted)) {
        const others = (one: Element): boolean => given(one) && one.id !== name;
        const { circuit, place } = placed(network, others, loads === "loads_drawing");
        const state: SupplyState | undefined = solved(circuit);
        const at = String(receivers.find((one) => one.id === name)!.at);
        if (value === null) expect(state).toBeUndefined();
        else volts.row(`${id} ${name} ${loads}`, state?.volts[place.get(at)!], value, V);
      }
    }
  });

  test("the head units with none on, each alone, all on", () => {
    for (const [which, wanted] of Object.entries(ideal.head_V_by_state)) {
      const isOn = (one: Element): boolean =>
        which === "all on" || (which.startsWith("only ") && which === `only ${one.id}`);
      const { circuit, place } = placed(network, isOn);
      const state = solved(circuit);
      for (const [name, value] of Object.entries(wanted)) {
        const at = String(heads.find((one) => one.id === name)!.at);
        if (value === null) expect(state).toBeUndefined();
        else volts.row(`${id} ${which} ${name}`, state?.volts[place.get(at)!], value, V);
      }
    }
  });
});

test("the quick way leaves few states to the slow one: those without an operating point among them", () => {
  expect(asked).toBeGreaterThan(200);
  process.stdout.write(`  ${fellBack} of ${asked} states fell back\n`);
  expect(fellBack / asked).toBeLessThan(0.1);
});
