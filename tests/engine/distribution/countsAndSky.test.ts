/** Counts, minutes, the way from the sky, and what stays unknown, on small distributions: by hand, derivation. */
import { countsOf } from "../../../src/engine/distribution/counts";
import { distributionOf } from "../../../src/engine/distribution/distribution";
import { findings } from "../../../src/engine/distribution/findings";
import type { DistributionJob } from "../../../src/engine/distribution/job";
import { labourMinutes, type LabourRates } from "../../../src/engine/distribution/labourMinutes";
import { amplifierOutputs, carrierDerating } from "../../../src/engine/distribution/levels";
import { lossesOf } from "../../../src/engine/distribution/losses";
import { slotsSeen, type SlotSeen } from "../../../src/engine/distribution/sky";
import { buildTree } from "../../../src/engine/distribution/tree";
import { trunksOf } from "../../../src/engine/distribution/trunks";
import { faults } from "../../../src/engine/faults";
import {
  amplifier,
  device,
  dish,
  feeder,
  FEED,
  headUnit,
  headUnitKind,
  inserter,
  job,
  loopPlate,
  outlet,
  plate,
  power,
  receiver,
  run,
  SITE,
  splitter,
  supply,
  switchKind,
  tap,
} from "../../support/smallDistribution";

const endResistor = { name: "end resistor", ohms: 75, blocksPower: true };
const counted = (one: DistributionJob) => countsOf(buildTree(one), trunksOf(one));

describe("counts", () => {
  test("what sits right at a head unit on the dish sends its cables off the dish", () => {
    const { groundingBlocks, connectors, metresByCable, metresByRoute, parts } = counted(
      job({
        devices: [device("S1", "H1", splitter(2)), device("S2", "S1", splitter(2), { run: run(10) })],
        outlets: [
          outlet("1", "S1", { run: run(7, "duct"), plate: plate() }),
          outlet("2", "S2", { run: run(0), plate: plate() }),
          outlet("3", "S2", { run: run(3), plate: plate() }),
        ],
      }),
    );
    // Off the dish come the cables to S2 and to 1; the one to 3 does not, and there is none to 2.
    expect(groundingBlocks).toBe(2);
    expect(connectors).toBe(2 * 3 + 2 * 2);
    expect([...metresByCable]).toEqual([["drop", 20]]);
    expect([...metresByRoute].sort()).toEqual([
      ["clip", 13],
      ["duct", 7],
    ]);
    expect([...parts].sort()).toEqual([
      ["2-way splitter", 2],
      ["head unit", 1],
      ["plate", 3],
    ]);
  });

  test("nothing below a switch comes off a dish; its feeders do, those between switches do not", () => {
    const onward = { low: 1, high: 1 };
    const kind = switchKind({ onward, feedersPerSlot: 2 });
    const { groundingBlocks, connectors, endResistors, mainsSockets, parts } = counted(
      job({
        site: { ...SITE, endResistor },
        dishes: [dish("D1", { feed: FEED })],
        headUnits: [
          headUnit("A", { kind, run: run(4) }),
          headUnit("B", { kind, supply: supply({ name: "pack", stands: "at the head unit", volts: 18 }) }),
        ],
        feeders: [feeder("D1", "A"), feeder("A", "B", { quantity: 3 })],
        outlets: [outlet("1", "A", { plate: loopPlate() })],
      }),
    );
    expect(groundingBlocks).toBe(2);
    // Two feeders off the dish, three between the switches, one to the outlet: two connectors each, two more a block.
    expect(connectors).toBe(2 * (2 + 3 + 1) + 2 * 2);
    // The onward ports of B and the through port of the plate.
    expect(endResistors).toBe(2 + 1);
    expect(parts.get("end resistor")).toBe(3);
    expect(mainsSockets).toBe(1);
    expect([parts.get("feed"), parts.get("switch"), parts.get("pack")]).toEqual([1, 2, 1]);
  });

  test("leads, and splitters behind plates", () => {
    const { receiverLeads, parts, endResistors } = counted(
      job({
        devices: [device("T1", "H1", tap(2))],
        outlets: [
          outlet("1", "T1", { quantity: 3, split: splitter(4) }),
          outlet("2", "T1", { receiver: null }),
        ],
      }),
    );
    expect(receiverLeads).toBe(3 + 1);
    expect(parts.get("4-way splitter")).toBe(1);
    // Nothing closes ports where no part is named for it.
    expect(endResistors).toBe(0);
  });

  test("a bad row's part counts, its cable does not", () => {
    const { parts, metresByCable } = counted(
      job({
        devices: [device("S1", "H9", splitter(2), { run: run(10) })],
        outlets: [outlet("1", "H1", { run: run(3) })],
      }),
    );
    expect(parts.get("2-way splitter")).toBe(1);
    expect([...metresByCable]).toEqual([["drop", 3]]);
  });
});

test("minutes: difficulty stretches all but floors and job", () => {
  const rates: LabourRates = {
    route: new Map([["clip", 2]]),
    throughWall: 10,
    termination: 1,
    dish: 100,
    furtherSlot: 30,
    feed: 7,
    headUnitOnDish: 20,
    switch: 25,
    device: { splitter: 8, tap: 9, amplifier: 11, equaliser: 12, attenuator: 13, filter: 14 },
    supply: 3,
    plate: 5,
    endResistor: 1,
    groundingBlock: 6,
    dishBond: 40,
    measuredOutlet: 4,
    floor: 15,
    job: 60,
  };
  const one = job({
    dishes: [dish("D1", { slots: ["13E", "19E"] })],
    devices: [
      device("F1", "H1", splitter(1, { kind: "filter" }), { run: run(10) }),
      device("P1", "F1", inserter()),
      device("A1", "P1", splitter(1, { kind: "attenuator" })),
    ],
    outlets: [
      outlet("1", "A1", { run: run(5, "lift shaft"), plate: plate(), split: splitter(2), quantity: 2 }),
    ],
  });
  const counts = counted(one);
  const found = labourMinutes(buildTree(one), counts, rates, { floors: 2, throughWalls: 3, difficulty: 1.5 });
  expect(Object.fromEntries(found.routes)).toEqual({ clip: 20, "lift shaft": 0 });
  expect(found).toMatchObject({
    throughWalls: 30,
    terminations: 2 * 2 + 2,
    dishes: 130,
    feeds: 0,
    headUnits: 20,
    supplies: 3,
    devices: 14 + 13 + 8,
    plates: 5,
    groundingBlocks: 6,
    dishBonds: 40,
    measuring: 4,
    floors: 30,
    job: 60,
  });
  const stretched = 20 + 30 + 6 + 130 + 20 + 3 + 35 + 5 + 6 + 40 + 4;
  expect(found.total).toBeCloseTo(stretched * 1.5 + 30 + 60, 9);
});

describe("from the sky", () => {
  const lit = (more: Partial<DistributionJob> = {}) =>
    job({ slots: [{ name: "13E", east: 13, eirp: 50, symbolRate: 27.5, needed: 9 }], ...more });
  const first = (one: DistributionJob): SlotSeen => slotsSeen(one, trunksOf(one))[0]![0] as SlotSeen;

  test("without EIRP or noise figure carrier to noise is not asked, without availability only a clear sky", () => {
    expect(first(job())).toMatchObject({ atFeed: null, atOutput: null, input: null, rain: null });
    expect(
      first(lit({ headUnits: [headUnit("H1", { kind: headUnitKind({ noiseFigure: null }) })] })).atOutput,
    ).toBeNull();
    expect(first(lit()).atOutput).toMatchObject({ rain: null });
    const rain = { availability: 99.9, rate: 30, height: 3 };
    const { atOutput, rain: fade } = first(lit({ site: { ...SITE, rain } }));
    expect(fade as number).toBeGreaterThan(0);
    // Rain takes its own decibels and adds noise.
    expect(atOutput!.clear - atOutput!.rain!).toBeGreaterThan(fade as number);
  });

  test("a decibel lost at the dish or off its focus is a decibel of carrier to noise", () => {
    const clear = (one: DistributionJob): number => first(one).atFeed!.clear;
    expect(clear(lit()) - clear(lit({ site: { ...SITE, dishLoss: 1.8 } }))).toBeCloseTo(1, 9);
    expect(clear(lit()) - clear(lit({ dishes: [dish("D1", { offFocus: 2 })] }))).toBeCloseTo(2, 9);
  });

  test("a slot that the site cannot see, and one without a row", () => {
    const said = (one: DistributionJob) =>
      findings(distributionOf(one), { levelLeast: 0, levelMost: 200, slopeMost: 99, isolationLeast: 0 }).map(
        ({ fault }) => fault.message,
      );
    expect(said(lit({ dishes: [dish("D1", { slots: ["19E"] })] }))).toEqual([
      '"D1" has the slot "19E", which has no row. Known are "13E". Give one of these, or add the slot.',
    ]);
    // Near the equator, low above the horizon, ITU-R P.618 turns before so rare a part of the year.
    const site = {
      ...SITE,
      latitude: 0.5,
      longitude: -56,
      rain: { availability: 99.999, rate: 150, height: 5 },
    };
    expect(said(lit({ site }))).toEqual([expect.stringMatching(/^percent is 0\.001 %/)]);
    const hidden = { name: "113W", east: -113, eirp: 50, symbolRate: 27.5, needed: 9 };
    expect(said(lit({ slots: [hidden], dishes: [dish("D1", { slots: ["113W"] })] }))).toEqual([
      expect.stringMatching(/^The slot at -113 deg east stands at an elevation of -/),
    ]);
  });

  test("a switch's input out of its window, and a feeder of no known cable", () => {
    const fed = (input: { least: number; most: number }, cable = run(30)) =>
      lit({
        dishes: [dish("D1", { feed: FEED })],
        headUnits: [headUnit("H1", { kind: switchKind({ input }) })],
        feeders: [feeder("D1", "H1", { run: cable })],
      });
    const said = (one: DistributionJob) =>
      findings(distributionOf(one), { levelLeast: 0, levelMost: 200, slopeMost: 99, isolationLeast: 0 })
        .filter(({ check }) => check.startsWith("switch input"))
        .map(({ fault }) => fault.message);
    const { input } = first(fed({ least: 0, most: 200 }));
    expect(input!.least).toBeLessThan(input!.most);
    expect(said(fed({ least: 0, most: 200 }))).toEqual([]);
    expect(said(fed({ least: input!.least + 0.1, most: 200 }))).toEqual([
      expect.stringMatching(/^An input of "H1" for "13E" has .* it must be from .* Shorten the feeders/),
    ]);
    expect(said(fed({ least: 0, most: input!.most - 0.1 }))).toEqual([
      expect.stringMatching(/Put attenuators in the feeders/),
    ]);
    const unknown = faults.unknownCable("odd", ["drop"]);
    const broken = fed({ least: 0, most: 200 }, { ...run(30), cable: unknown });
    expect(slotsSeen(broken, trunksOf(broken))[0]![0]).toEqual({ dish: 0, fault: unknown });
  });
});

describe("limits and faults", () => {
  test("an amplifier's limit falls with its carriers, from three on", () => {
    expect([1, 2, 3, 11].map(carrierDerating)).toEqual([0, 0, 7.5 * Math.log10(2), 7.5]);
    const one = job({ devices: [device("A1", "H1", amplifier())] });
    // 85 dBµV and a gain of 20 to 24 dB; four bands: 110 - 7.5·log10(3).
    expect(amplifierOutputs(buildTree(one), lossesOf(buildTree(one)))).toEqual([
      { device: 0, most: 109, limit: 110 - 7.5 * Math.log10(3), carriers: 4 },
    ]);
  });

  test("a cable at fault leaves what is behind it without level, and its circuit without volts", () => {
    const cable = faults.unknownCable("odd", ["drop"]);
    const one = job({
      devices: [device("S1", "H1", splitter(2), { run: { ...run(5), cable } })],
      outlets: [outlet("1", "S1")],
    });
    const found = distributionOf(one);
    expect(found.levels.lowCold[0]).toBeNaN();
    expect(found.supply.given[0]).toBeNaN();
    expect(found.commands[0]).toEqual({ can: "not judged" });
    expect(
      findings(found, { levelLeast: 0, levelMost: 200, slopeMost: 99, isolationLeast: 0 }).map(
        ({ rows, fault }) => ({
          rows,
          fault,
        }),
      ),
    ).toContainEqual({ rows: [{ list: "headUnits", row: 0 }], fault: cable });
  });

  test("a head unit that nothing can carry", () => {
    // 12.5 V behind 0.5 V of diode and 11.18 ohm give 3.49 W at most; 4 W are asked.
    const heavy = job({
      headUnits: [headUnit("H1", { kind: headUnitKind({ load: 4, loadKind: "W" }) })],
      devices: [device("S1", "H1", splitter(2, { power: power("towards head unit") }))],
      outlets: [outlet("1", "S1", { run: run(100) }), outlet("2", "S1", { run: run(1) })],
    });
    const found = distributionOf(heavy);
    expect([...found.supply.faults.values()].map(({ message }) => message)).toEqual([
      expect.stringMatching(/^There is no operating point with the receiver of "1" on alone/),
    ]);
    // What the other does alone is still told.
    expect(found.supply.headUnits[0]!.alone.get(1)).toBeCloseTo(12.46, 1);
  });

  test("limits of current: a supply, a splitter, a receiver; isolation as advice", () => {
    const one = job({
      headUnits: [
        headUnit("H1", {
          kind: headUnitKind({ load: 0.5, senseAmperes: 0.6 }),
          supply: supply({ stands: "at the head unit", mostAmperes: 0.4, volts: 18 }),
        }),
      ],
      devices: [
        device("S1", "H1", splitter(2, { power: { ...power("towards head unit"), mostAmperes: 0.5 } })),
      ],
      outlets: [outlet("1", "S1"), outlet("2", "S1")],
    });
    const said = findings(distributionOf(one), {
      levelLeast: 0,
      levelMost: 200,
      slopeMost: 99,
      isolationLeast: 30,
    });
    expect(said.map(({ check, fault }) => `${check}: ${fault.message.split(";")[0]}`)).toEqual([
      'current: The supply of "H1" carries 0.50 A',
      'current: "S1" carries 0.60 A',
      'current: The receiver of "1" carries 0.60 A',
      'current: The receiver of "2" carries 0.60 A',
      'isolation: "1" and "2" are 20.0 dB apart',
    ]);
    expect(receiver().mostAmperes).toBe(0.4);
  });

  test("level, slope and amplifier beyond their limits", () => {
    const one = job({
      devices: [
        device(
          "A1",
          "H1",
          amplifier({ amplifier: { noiseFigure: 7, mostOutput: 110, load: 0.01, leastVolts: 0 } }),
        ),
      ],
      outlets: [outlet("1", "A1", { run: run(100) })],
    });
    const said = findings(distributionOf(one), {
      levelLeast: 47,
      levelMost: 77,
      slopeMost: 5,
      isolationLeast: 0,
    });
    expect(said.map(({ check }) => check)).toEqual(["level too high", "slope", "amplifier output"]);
  });
});
