/**
 * Levels, noise and isolation of drawn distributions against each path walked
 * step by step, part by part, from the rows as they are typed: derivation. The
 * steps themselves are held to others' values in noiseChains.test.ts and
 * tests/engine/signal.
 */
import { distributionOf } from "../../../src/engine/distribution/distribution";
import type { DeviceRow, DistributionJob, OutletRow } from "../../../src/engine/distribution/job";
import { condition, lossesOf } from "../../../src/engine/distribution/losses";
import { outletLevel } from "../../../src/engine/distribution/levels";
import { addedNoise } from "../../../src/engine/distribution/outletNoise";
import type { AtEnds, Run } from "../../../src/engine/distribution/parts";
import {
  afterGain,
  afterLoss,
  withNoise,
  type Signal,
} from "../../../src/engine/distribution/signalAndNoise";
import { isFault } from "../../../src/engine/faults";
import { cableLoss } from "../../../src/engine/signal/cableLoss";
import { noiseTemperature } from "../../../src/engine/signal/noiseTemperature";
import { drawn } from "../../support/drawn";
import { heldTo } from "../../support/heldTo";
import {
  amplifier,
  device,
  headUnit,
  headUnitKind,
  inserter,
  job,
  loopPlate,
  outlet,
  plate,
  run,
  SITE,
  splitter,
  supply,
  tap,
} from "../../support/smallDistribution";

const JOBS = 40;
const WARM = SITE.hot + 273.15;

const held = heldTo({
  what: "losses, levels, noise, isolation",
  source: "each path step by step",
  basis: "derivation",
  unit: "dB or K",
});

function drawnJob(seed: number): DistributionJob {
  const draw = drawn(seed);
  const piece = (): Run | null => (draw.chance(0.2) ? null : run(draw.between(1, 40, 1)));
  const devices: DeviceRow[] = [];
  /** Who can feed one more. */
  const open: string[] = ["H1", "H1"];
  const place = (): string => open.splice(draw.whole(0, open.length - 1), 1)[0]!;
  for (let index = 1; index <= draw.whole(2, 8); index++) {
    const name = `P${index}`;
    const part = draw.pick([
      splitter(3),
      tap(2),
      amplifier(),
      inserter({ loss: { low: 0.6, high: 1.2 } }),
      splitter(2, { isolation: null }),
    ]);
    devices.push(device(name, place(), part, { run: piece() }));
    for (let way = 0; way < part.ways; way++) open.push(name);
    if (open.length > 6) break;
  }
  const outlets: OutletRow[] = [];
  for (let index = 1; open.length > 0 && index <= 12; index++) {
    const name = `O${index}`;
    const loops = draw.chance(0.4);
    const split = draw.chance(0.2) ? { split: splitter(2), quantity: 2 } : {};
    outlets.push(
      outlet(name, place(), {
        run: piece(),
        plate: draw.chance(0.1) ? null : loops ? loopPlate() : plate(),
        ...split,
      }),
    );
    if (loops && outlets.at(-1)!.plate) open.push(name);
  }
  const kind = headUnitKind({ outputs: 2, output: { low: 88, high: 84 } });
  return job({
    headUnits: [
      headUnit("H1", {
        kind,
        run: piece(),
        supply: draw.chance(0.5) ? supply({ loss: { low: 0.5, high: 1 } }) : null,
      }),
    ],
    devices,
    outlets,
  });
}

/** What lies between an output and a connector, in order. */
type Step = { readonly at: AtEnds; readonly figure?: number } | { readonly cable: Run };

/** Steps from a head unit's output to the input of a row, and to its connector. */
function pathTo(one: DistributionJob, tree: ReturnType<typeof distributionOf>["tree"], name: string): Step[] {
  const rowOf = (list: readonly { name: unknown }[]): number => list.findIndex((row) => row.name === name);
  const inDevices = rowOf(one.devices);
  const row = inDevices >= 0 ? one.devices[inDevices]! : one.outlets[rowOf(one.outlets)]!;
  const point = inDevices >= 0 ? tree.pointOfDevice[inDevices]! : tree.pointOfOutlet[rowOf(one.outlets)]!;
  const port = tree.port[point]!;
  const above = row.from as string;
  const own: Step[] = row.run ? [{ cable: row.run }] : [];
  const head = one.headUnits.find((unit) => unit.name === above);
  if (head) {
    const lead: Step[] = [];
    if (port === 1 || tree.port[tree.output[point]!] === 1) {
      if (head.run) lead.push({ cable: head.run });
      if (head.supply) lead.push({ at: head.supply.loss });
    }
    return [...lead, ...own];
  }
  const part = one.devices.find((other) => other.name === above)?.part;
  const through = part
    ? port === 0
      ? part.through!
      : part.supply
        ? part.supply.loss
        : part.port
    : one.outlets.find((other) => other.name === above)!.plate!.through!;
  const step: Step = part?.amplifier ? { at: through, figure: part.amplifier.noiseFigure } : { at: through };
  return [...pathTo(one, tree, above), step, ...own];
}

const pathToConnector = (
  one: DistributionJob,
  tree: ReturnType<typeof distributionOf>["tree"],
  row: OutletRow,
): Step[] => [
  ...pathTo(one, tree, row.name as string),
  ...(row.plate ? [{ at: row.plate.port }] : []),
  ...(row.split ? [{ at: row.split.port }] : []),
];

function lossOf(step: Step, frequency: number, temperature: number): number {
  if ("cable" in step) {
    const { cable, length } = step.cable;
    if (isFault(cable)) throw new Error(cable.message);
    return cableLoss(cable, length, frequency, temperature) as number;
  }
  const share = (frequency - SITE.low) / (SITE.high - SITE.low);
  return step.at.low * (1 - share) + step.at.high * share;
}

test(`${JOBS} drawn distributions`, () => {
  let [amplified, looped, pairs] = [0, 0, 0];
  for (let seed = 1; seed <= JOBS; seed++) {
    const one = drawnJob(seed);
    const { tree, isolation } = distributionOf(one);
    const losses = lossesOf(tree);
    const paths = one.outlets.map((row) => pathToConnector(one, tree, row));
    one.outlets.forEach(({ name, from }, row) => {
      if (paths[row]!.some((step) => "figure" in step)) amplified += 1;
      if (one.outlets.some((other) => other.name === from)) looped += 1;
      for (const [frequency, temperature] of [
        [950, -10],
        [1433, 21],
        [2150, 50],
      ] as const) {
        const where = condition(SITE, frequency, temperature);
        const share = (frequency - 950) / 1200;
        const start = 88 * (1 - share) + 84 * share;
        const level = paths[row]!.reduce((so, step) => so - lossOf(step, frequency, temperature), start);
        held.row(`${seed} ${String(name)} ${frequency}`, outletLevel(tree, losses, row, where), level, 1e-9);
      }
      const hot = condition(SITE, 1433, SITE.hot);
      let signal: Signal = { level: 0, noise: 0 };
      for (const step of paths[row]!) {
        const loss = lossOf(step, 1433, SITE.hot);
        signal = "figure" in step ? afterGain(signal, -loss, step.figure!) : afterLoss(signal, loss, WARM);
      }
      const wanted = withNoise(signal, noiseTemperature(10)).noise;
      held.row(
        `${seed} ${String(name)} noise`,
        addedNoise(tree, losses, row, hot, 10).noise,
        wanted,
        1e-9 * wanted,
      );
    });

    /** Every pair: where their ways part, the part's isolation and what follows its ports on both. */
    const least = new Map<number, number>();
    const chain = (row: OutletRow): { name: string; port: number }[] => {
      const up: { name: string; port: number }[] = [{ name: row.name as string, port: -1 }];
      for (let at: DeviceRow | OutletRow | undefined = row; at;) {
        const { from, name }: DeviceRow | OutletRow = at;
        const inDevices = one.devices.findIndex((other) => other.name === name);
        const point =
          inDevices >= 0
            ? tree.pointOfDevice[inDevices]!
            : tree.pointOfOutlet[one.outlets.findIndex((other) => other.name === name)]!;
        up.unshift({ name: from as string, port: tree.port[point]! });
        at = [...one.devices, ...one.outlets].find((other) => other.name === from);
      }
      return up;
    };
    one.outlets.forEach((a, first) =>
      one.outlets.forEach((b, second) => {
        if (second <= first) return;
        const [up, down] = [chain(a), chain(b)];
        let common = 0;
        while (
          up[common] &&
          down[common] &&
          up[common]!.name === down[common]!.name &&
          up[common]!.port === down[common]!.port
        )
          common += 1;
        if (common === 0 && up[0]!.port !== down[0]!.port) return;
        const { name } = up[common]!;
        if (name !== down[common]!.name) throw new Error("ways part between parts");
        const part = one.devices.find((other) => other.name === name)?.part;
        const own = part
          ? part.isolation
          : (one.outlets.find((other) => other.name === name)?.plate?.isolation ?? null);
        if (own === null) return;
        pairs += 1;
        const beyond = (row: OutletRow, port: number): number => {
          const path = pathToConnector(one, tree, row);
          // From the outlet's own plate only what splits receivers follows.
          if (port === -1) return row.split ? lossOf({ at: row.split.port }, 950, -10) : 0;
          const before = pathTo(one, tree, name).length + 1;
          return path.slice(before).reduce((so, step) => so + lossOf(step, 950, -10), 0);
        };
        const output = tree.output[tree.pointOfOutlet[first]!]!;
        const decibels = own + beyond(a, up[common]!.port) + beyond(b, down[common]!.port);
        least.set(output, Math.min(least.get(output) ?? Infinity, decibels));
      }),
    );
    expect(isolation.map(({ output }) => output).sort()).toEqual([...least.keys()].sort());
    for (const { output, decibels } of isolation)
      held.row(`${seed} isolation ${output}`, decibels, least.get(output)!, 1e-9);
  }
  expect(amplified).toBeGreaterThan(20);
  expect(looped).toBeGreaterThan(20);
  expect(pairs).toBeGreaterThan(100);
});
