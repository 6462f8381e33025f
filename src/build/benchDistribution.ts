/**
 * The engine of the distribution beside the same arithmetic for one shape of
 * job, written out on plain arrays: head units of one output, a 4-way splitter,
 * four of eight ways, 32 receivers.
 */
import { distributionOf } from "../engine/distribution/distribution";
import type { DistributionJob } from "../engine/distribution/job";
import type { DevicePart, Run } from "../engine/distribution/parts";

const WAYS = 4;
const PORTS = 8;
const EACH = WAYS * PORTS;
const CABLE = { name: "drop", loss: { k1: 0.645, k2: 0.00068, k0: 0.446 }, loop: 5 };
const WATTS = 2.6;
const [DROP, PORT_OHMS, REST, COMMAND] = [0.7, 0.1, 13, 18];
const [LOW, HIGH, COLD, HOT] = [950, 2150, -15, 55];
const lengthOf = (outlet: number): number => 6 + (outlet % 17);

const steered = { passes: "towards head unit", drop: DROP, ohms: PORT_OHMS, mostAmperes: 1 } as const;
const splitter = (ways: number, low: number, high: number): DevicePart => ({
  kind: "splitter",
  name: `${ways}-way splitter`,
  ways,
  port: { low, high },
  through: null,
  isolation: 24,
  power: steered,
  passesCommands: true,
  amplifier: null,
  supply: null,
});
const run = (length: number): Run => ({ cable: CABLE, length, route: "clip" });

/** @param headUnits each with 32 outlets */
export function benchedJob(headUnits: number): DistributionJob {
  const heads = Array.from({ length: headUnits }, (_, head) => head);
  return {
    site: {
      low: LOW,
      high: HIGH,
      cold: COLD,
      hot: HOT,
      latitude: 45,
      longitude: 10,
      height: 0,
      dishLoss: 0.8,
      rain: { availability: 99.9, rate: 30, height: 3 },
      endResistor: null,
    },
    slots: [{ name: "13E", east: 13, eirp: 51, symbolRate: 27.5, needed: 9 }],
    dishes: heads.map((head) => ({
      fault: null,
      isAssumed: false,
      name: `D${head}`,
      size: 0.8,
      slots: ["13E"],
      feed: null,
      offFocus: 0,
    })),
    feeders: [],
    headUnits: heads.map((head) => ({
      fault: null,
      name: `H${head}`,
      kind: {
        name: "head unit",
        sits: "on the dish",
        standard: "EN 50607",
        commandsPassBlock: null,
        deafAbove: null,
        outputs: 1,
        bands: Array.from({ length: EACH }, (_, band) => ({
          number: band + 1,
          centre: 970 + 37 * band,
          width: 38,
          standard: "EN 50607" as const,
        })),
        output: { low: 90, high: 88 },
        noiseFigure: 0.7,
        slots: 1,
        feedersPerSlot: 1,
        input: null,
        onward: null,
        leastVolts: 9,
        load: WATTS,
        loadKind: "W",
        outputDrop: null,
        senseAmperes: null,
        powersFeed: false,
      },
      dish: `D${head}`,
      supply: null,
      run: null,
    })),
    devices: heads.flatMap((head) => [
      {
        fault: null,
        name: `S${head}`,
        part: splitter(WAYS, 7.8, 9.4),
        from: `H${head}`,
        port: null,
        run: run(10),
      },
      ...Array.from({ length: WAYS }, (_, way) => ({
        fault: null,
        name: `S${head}-${way}`,
        part: splitter(PORTS, 11.2, 13.5),
        from: `S${head}`,
        port: null,
        run: run(3),
      })),
    ]),
    outlets: Array.from({ length: headUnits * EACH }, (_, outlet) => ({
      fault: null,
      name: `R${outlet}`,
      from: `S${Math.floor(outlet / EACH)}-${Math.floor(outlet / PORTS) % WAYS}`,
      port: null,
      run: run(lengthOf(outlet)),
      plate: null,
      receiver: {
        name: "receiver",
        tuners: 1,
        standard: "EN 50607",
        restVolts: REST,
        commandVolts: COMMAND,
        mostAmperes: 0.4,
        bearsVolts: 19,
        noiseFigure: 10,
      },
      quantity: 1,
      split: null,
      kept: [],
    })),
  };
}

/**
 * The same on plain arrays: levels at four corners, level and noise at the
 * outlet's band, and every state of the supply, for this one shape, its diodes
 * known to conduct where their receiver is on highest or alone.
 *
 * @returns a sum, so that nothing is left out
 */
export function bareDistribution(headUnits: number): number {
  let sink = 0;
  const decibels = (f: number): number => CABLE.loss.k1 * Math.sqrt(f) + CABLE.loss.k2 * f + CABLE.loss.k0;
  const loop = (CABLE.loop / 100) * (1 + 0.00393 * (HOT - 20));
  const parents = new Int32Array(2 + WAYS + EACH);
  const ohms = new Float64Array(parents.length);
  const volts = new Float64Array(parents.length);
  const conductance = new Float64Array(parents.length);
  const current = new Float64Array(parents.length);
  const conducts = new Uint8Array(parents.length);
  const source = new Float64Array(parents.length);
  const levels = new Float64Array(4 * EACH);
  const solve = (): void => {
    let at = 0;
    // Without load, then the tangent of the load until it stays, as long as diodes switch.
    for (let round = 0; round < 30; round++) {
      conductance.fill(0);
      current.fill(0);
      for (let node = 2 + WAYS; node < parents.length; node++) {
        if (source[node]! <= 0) continue;
        conductance[node] = 1e3;
        current[node] = 1e3 * source[node]!;
      }
      if (at > 0) {
        conductance[0] = -WATTS / (at * at);
        current[0] = (-2 * WATTS) / at;
      }
      for (let node = parents.length - 1; node > 0; node--) {
        if (!conducts[node]) continue;
        const through = 1 + ohms[node]! * conductance[node]!;
        const drop = node > 1 ? DROP : 0;
        conductance[parents[node]!]! += conductance[node]! / through;
        current[parents[node]!]! += (current[node]! - conductance[node]! * drop) / through;
      }
      let switched = false;
      volts[0] = conductance[0]! > 0 ? current[0]! / conductance[0]! : 0;
      for (let node = 1; node < parents.length; node++) {
        const held = volts[parents[node]!]! + (node > 1 ? DROP : 0);
        const free = conductance[node]! > 0 ? current[node]! / conductance[node]! : 0;
        const amperes = (current[node]! - conductance[node]! * held) / (1 + ohms[node]! * conductance[node]!);
        const on = node === 1 || (conducts[node] ? amperes >= -1e-9 : free > held + 1e-9);
        volts[node] = on && conducts[node] ? held + ohms[node]! * amperes : free;
        if (Number(on) === conducts[node]) continue;
        conducts[node] = Number(on);
        switched = true;
      }
      if (!switched && Math.abs(volts[0]! - at) < 1e-9) break;
      at = volts[0]!;
      if (at < 1) break;
    }
    sink += volts[0]!;
  };
  for (let head = 0; head < headUnits; head++) {
    ohms[1] = 10 * loop;
    for (let way = 0; way < WAYS; way++) {
      parents[2 + way] = 1;
      ohms[2 + way] = 3 * loop + PORT_OHMS;
      for (let port = 0; port < PORTS; port++) {
        const node = 2 + WAYS + way * PORTS + port;
        const length = lengthOf(head * EACH + way * PORTS + port);
        parents[node] = 2 + way;
        ohms[node] = length * loop + PORT_OHMS;
        const metres = (13 + length) / 100;
        let corner = 0;
        for (const f of [LOW, HIGH])
          for (const temperature of [COLD, HOT]) {
            const share = (f - LOW) / (HIGH - LOW);
            const passive = 90 - 2 * share - (19 + 3.9 * share);
            const place = (way * PORTS + port) * 4 + corner++;
            levels[place] = passive - decibels(f) * metres * (1 + 0.00198 * (temperature - 20));
            sink += levels[place]!;
          }
        const band = 970 + 37 * (way * PORTS + port);
        const share = (band - LOW) / (HIGH - LOW);
        const loss = 19 + 3.9 * share + decibels(band) * metres * (1 + 0.00198 * (HOT - 20));
        const noise = (HOT + 273.15) * (1 - 10 ** (-loss / 10)) + 290 * (10 - 1);
        sink += 90 - 2 * share - loss - 10 * Math.log10(1.380649e-23 * noise * 27.5e6);
      }
    }
    conducts.fill(1);
    source.fill(0);
    solve();
    for (const [all, one] of [
      [0, REST],
      [REST, COMMAND],
      [COMMAND, 0],
    ] as const) {
      source.fill(all, 2 + WAYS);
      solve();
      for (let node = 2 + WAYS; node < parents.length; node++) {
        source[node] = one;
        solve();
        source[node] = all;
      }
    }
  }
  return sink;
}

export const distributionTimes = async (
  headUnits: number,
  timed: (work: () => unknown, runs: number) => Promise<number>,
): Promise<{ readonly engineMs: number; readonly bareMs: number; readonly outlets: number }> => {
  const job = benchedJob(headUnits);
  // A small one needs more runs before the machine knows it.
  const runs = Math.max(8, Math.ceil(800 / headUnits));
  return {
    engineMs: await timed(() => distributionOf(job), runs),
    bareMs: await timed(() => bareDistribution(headUnits), runs),
    outlets: headUnits * EACH,
  };
};
