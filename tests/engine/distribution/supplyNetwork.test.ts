/**
 * A circuit asked for state after state, each starting from the diodes of the
 * one before, held to the same state worked out by itself in the other way, and
 * to Kirchhoff's laws and the diodes' own: derivation.
 */
import {
  LEAST_OHMS,
  supplyState,
  type Passes,
  type SupplyNode,
} from "../../../src/engine/distribution/supplyCircuit";
import {
  SupplyNetwork,
  type NetworkLoad,
  type NetworkSource,
} from "../../../src/engine/distribution/supplyNetwork";
import { drawn } from "../../support/drawn";
import { tries } from "../../support/tries";

const NETWORKS = tries(150, 600);
const STATES = 12;
/** Near the least supply that carries a load the other way's rounds close in slowly, and end a little early. */
const LIMIT = 1e-4;

const MOSTLY: readonly Passes[] = [
  "both ways",
  "both ways",
  "to the parent",
  "to the parent",
  "from the parent",
  "nothing",
];

test(`${NETWORKS} drawn networks in ${STATES} states each`, () => {
  let [operating, none, fellBack] = [0, 0, 0];
  for (let seed = 1; seed <= NETWORKS; seed++) {
    const draw = drawn(seed);
    const leakOhms = draw.pick([1e7, undefined]);
    const options = { leastVolts: 1, ...(leakOhms === undefined ? {} : { leakOhms }) };
    // Without leaks a part that nothing holds but a diode to what stands at 0 or is turned away from the root may
    // stand anywhere on its own side of the diode.
    const drawnFrom =
      leakOhms === undefined ? MOSTLY.filter((passes) => passes !== "from the parent") : MOSTLY;
    const nodes: SupplyNode[] = [{ parent: -1, ohms: 0, passes: "nothing", drop: 0 }];
    const count = draw.whole(2, 30);
    while (nodes.length < count)
      nodes.push({
        parent: draw.whole(0, nodes.length - 1),
        ohms: draw.whole(0, 60) / 10,
        passes: draw.pick(drawnFrom),
        drop: draw.pick([0, 0.3, 0.7]),
      });
    const sources = Array.from({ length: draw.whole(1, 8) }, (): NetworkSource => ({
      node: draw.whole(0, count - 1),
      volts: draw.pick([13, 18, 24]),
      ohms: draw.pick([0, 0.2, 1]),
      drop: draw.pick([null, 0, 0.4]),
    }));
    const loads = Array.from({ length: draw.whole(0, 3) }, (): NetworkLoad =>
      draw.pick([true, false])
        ? { node: draw.whole(0, count - 1), kind: "W", amount: draw.whole(1, 60) / 10 }
        : { node: draw.whole(0, count - 1), kind: "A", amount: draw.whole(1, 30) / 100 },
    );
    const resistors =
      leakOhms !== undefined && draw.pick([true, false]) ? [{ node: count - 1, ohms: 75 }] : [];
    const network = new SupplyNetwork(nodes, sources, loads, resistors, options);
    for (let state = 1; state <= STATES; state++) {
      sources.forEach(({ volts }, index) => {
        network.isOn[index] = Number(draw.whole(0, 3) > 0);
        network.sourceVolts[index] = draw.pick([volts, 13, 18]);
      });
      const on = [...sources.keys()].filter((index) => network.isOn[index]);
      const wanted = supplyState({
        ...options,
        nodes,
        loads,
        sources: [
          ...on.map((index) => ({
            ...sources[index]!,
            ohms: Math.max(LEAST_OHMS, sources[index]!.ohms!),
            volts: network.sourceVolts[index]!,
          })),
          ...resistors.map(({ node, ohms }) => ({ node, volts: 0, ohms, drop: null })),
        ],
      });
      const found = network.solve();
      expect({ seed, state, found }).toEqual({ seed, state, found: wanted !== undefined });
      if (!wanted) {
        none += 1;
        continue;
      }
      operating += 1;
      const worst = Math.max(
        ...nodes.map((_, node) => Math.abs(network.volts[node]! - wanted.volts[node]!)),
        ...nodes.map((_, node) => Math.abs(network.upwards[node]! - wanted.upwards[node]!) * 10),
      );
      if (!(worst < LIMIT)) throw new Error(`network ${seed}, state ${state}: ${worst} V apart`);
    }
    fellBack += network.fellBack;
  }
  process.stdout.write(
    `  SupplyNetwork: ${operating} states with and ${none} without an operating point; ${fellBack} fell back\n`,
  );
  expect(operating).toBeGreaterThan(NETWORKS * STATES * 0.5);
  expect(none).toBeGreaterThan(NETWORKS / 50);
});
