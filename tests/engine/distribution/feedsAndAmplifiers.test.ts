/** Who has to carry a feed, and when an amplifier has to work: on small distributions, by hand. */
import { distributionOf } from "../../../src/engine/distribution/distribution";
import { findings } from "../../../src/engine/distribution/findings";
import {
  amplifier,
  device,
  dish,
  feeder,
  FEED,
  headUnit,
  job,
  outlet,
  receiver,
  run,
  supply,
  switchKind,
} from "../../support/smallDistribution";

/** Ohms a metre of the cable of smallDistribution, at 50 °C: 10 Ω per 100 m at 20 °C, copper 0.393 % a degree. */
const OHMS_A_METRE = 0.1 * (1 + 0.00393 * 30);
const pack = supply({ stands: "at the head unit", volts: 18 });

/** A feed of 0.2 A, two switches of 0.01 A on it with their packs, at 10 and at 20 m. */
const twoSwitches = (second: Parameters<typeof switchKind>[0] = {}) =>
  distributionOf(
    job({
      dishes: [dish("D1", { feed: FEED })],
      feeders: [feeder("D1", "H1", { run: run(10) }), feeder("D1", "H2", { run: run(20) })],
      headUnits: [
        headUnit("H1", { kind: switchKind(second), supply: pack }),
        headUnit("H2", { kind: switchKind(), supply: pack }),
      ],
    }),
  );

test("each of two switches that power one feed has to carry it by itself", () => {
  const { nodes, supply: found } = twoSwitches();
  const volts = new Map(
    nodes.feeds.map(({ head }, feed) => [nodes.common[head], found.feedLeast[feed]!] as const),
  );
  expect(volts.get(nodes.common[0])).toBeCloseTo(18 - 0.2 * 10 * OHMS_A_METRE, 2);
  expect(volts.get(nodes.common[1])).toBeCloseTo(18 - 0.2 * 20 * OHMS_A_METRE, 2);
  for (const amperes of found.supplyMost) expect(amperes).toBeCloseTo(0.21, 6);
});

test("beside one that powers the feed a switch need not", () => {
  const { nodes, supply: found } = twoSwitches({ powersFeed: false });
  expect(nodes.feeds.map(({ head }) => head)).toEqual([1]);
  expect([...found.supplyMost]).toEqual([expect.closeTo(0.01, 6), expect.closeTo(0.21, 6)]);
});

const AMPLIFIER = { noiseFigure: 7, mostOutput: null, load: 0.1, leastVolts: 12 };
const behindAnAmplifier = (connected: ReturnType<typeof receiver> | null) => {
  const found = distributionOf(
    job({
      devices: [device("A1", "H1", amplifier({ amplifier: AMPLIFIER }))],
      outlets: [outlet("1", "A1", { receiver: connected, run: run(100) })],
    }),
  );
  const wanted = { levelLeast: 0, levelMost: 200, slopeMost: 99, isolationLeast: 0 };
  return { found, checks: findings(found, wanted).map(({ check }) => check) };
};

test("an amplifier that only a spare outlet hangs on, and that receivers would feed, has no volts to be judged by", () => {
  const { found, checks } = behindAnAmplifier(null);
  expect(found.supply.amplifierLeast[0]).toBeNaN();
  expect(checks).toEqual([]);
});

test("with a receiver it has those that come down its run", () => {
  // 0.1 A of the amplifier and 0.01 A of the head unit over 100 m.
  const { found, checks } = behindAnAmplifier(receiver());
  expect(found.supply.amplifierLeast[0]).toBeCloseTo(13 - 0.11 * 100 * OHMS_A_METRE, 2);
  expect(checks).toEqual(["amplifier volts"]);
});
