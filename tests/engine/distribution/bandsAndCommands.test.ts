/**
 * User bands and commands on small distributions, tried out in full.
 *
 * Expected: an exhaustive search for bands, the path written out by hand for
 * commands; neither uses the engine: derivation.
 */
import { bandPlan } from "../../../src/engine/distribution/bandPlan";
import { distributionOf } from "../../../src/engine/distribution/distribution";
import { findings } from "../../../src/engine/distribution/findings";
import type { ControlStandard, PowerPassing } from "../../../src/engine/distribution/parts";
import { buildTree } from "../../../src/engine/distribution/tree";
import {
  amplifier,
  device,
  headUnit,
  headUnitKind,
  job,
  outlet,
  power,
  receiver,
  splitter,
  supply,
  tap,
} from "../../support/smallDistribution";

const bandsOf = (standards: readonly ControlStandard[]) =>
  standards.map((standard, index) => ({
    number: index + 1,
    centre: 1000 + 100 * index,
    width: 40,
    standard,
  }));

/** An EN 50607 receiver uses both, an EN 50494 receiver its own only. */
const usable = (receiver: ControlStandard, band: ControlStandard): boolean =>
  receiver === "EN 50607" || band === "EN 50494";

/** Whether all can have their bands, by trying every way. */
function fits(
  wants: readonly { standard: ControlStandard; tuners: number }[],
  plan: readonly ControlStandard[],
): boolean {
  const each = wants.flatMap(({ standard, tuners }) => Array.from({ length: tuners }, () => standard));
  const place = (at: number, taken: number): boolean =>
    at === each.length ||
    plan.some(
      (band, index) =>
        !(taken & (1 << index)) && usable(each[at]!, band) && place(at + 1, taken | (1 << index)),
    );
  return place(0, 0);
}

const sequences = <T>(of: readonly T[], length: number): T[][] =>
  length === 0 ? [[]] : sequences(of, length - 1).flatMap((some) => of.map((one) => [...some, one]));

describe("user bands", () => {
  const kinds = [
    { standard: "EN 50494" as const, tuners: 1 },
    { standard: "EN 50607" as const, tuners: 1 },
    { standard: "EN 50607" as const, tuners: 2 },
  ];
  const plans = [1, 2, 3, 4].flatMap((length) =>
    sequences<ControlStandard>(["EN 50494", "EN 50607"], length),
  );

  test("are handed out whenever there is a way, each once, to who can use it, lowest first", () => {
    let tried = 0;
    for (const plan of plans)
      for (const count of [1, 2, 3])
        for (const wants of sequences(kinds, count)) {
          tried += 1;
          const tree = buildTree(
            job({
              headUnits: [
                headUnit("H1", { kind: headUnitKind({ standard: "EN 50607", bands: bandsOf(plan) }) }),
              ],
              devices: [device("S1", "H1", splitter(3))],
              outlets: wants.map((more, index) => outlet(`${index}`, "S1", { receiver: receiver(more) })),
            }),
          );
          const { bands, findings } = bandPlan(tree, 27.5);
          const numbers = bands.flatMap((some) => some.map(({ number }) => number));
          expect(new Set(numbers).size).toBe(numbers.length);
          bands.forEach((some, row) =>
            some.forEach(({ standard }) => expect(usable(wants[row]!.standard, standard!)).toBe(true)),
          );
          expect({ plan, wants, complete: findings.length === 0 }).toEqual({
            plan,
            wants,
            complete: fits(wants, plan),
          });
          if (findings.length === 0)
            wants.forEach(({ tuners }, row) => expect(bands[row]!.length).toBe(tuners));
        }
    expect(tried).toBe(plans.length * (3 + 9 + 27));
  });

  const plan = bandsOf(["EN 50494", "EN 50494", "EN 50494", "EN 50607"]);
  const four = (
    kept: readonly (readonly number[])[],
    more: Parameters<typeof receiver>[0] = {},
    widest = 27.5,
  ) =>
    bandPlan(
      buildTree(
        job({
          headUnits: [headUnit("H1", { kind: headUnitKind({ bands: plan }) })],
          devices: [device("S1", "H1", splitter(4))],
          outlets: kept.map((numbers, index) =>
            outlet(`${index}`, "S1", { kept: numbers, receiver: receiver(more) }),
          ),
        }),
      ),
      widest,
    );

  test("kept ones stay, and what cannot be kept is named", () => {
    const { bands, findings } = four([[], [1], [1], [7]]);
    expect(bands.map((some) => some.map(({ number }) => number))).toEqual([[2], [1], [], []]);
    expect(findings).toEqual([
      { outlet: 2, trouble: "taken", band: 1 },
      { outlet: 3, trouble: "no such band", band: 7 },
    ]);
    expect(four([[4]]).findings).toEqual([{ outlet: 0, trouble: "standard", band: 4 }]);
    expect(four([[1, 2]]).findings).toEqual([{ outlet: 0, trouble: "too many kept", band: null }]);
    expect(four([[]], { standard: "maker's own" }).findings).toEqual([
      { outlet: 0, trouble: "standard", band: null },
    ]);
    expect(four([[], [], [], []]).findings).toEqual([{ outlet: 3, trouble: "none left", band: null }]);
    // 30 Msym/s take 40.5 MHz, the bands have 40: derivation.
    expect(four([[]], {}, 30).findings).toEqual([{ outlet: 0, trouble: "too narrow", band: 1 }]);
  });

  test("a row put in before others changes no kept band", () => {
    const before = four([[3], [2]]).bands;
    const after = four([[], [3], [2]]).bands;
    expect(after.slice(1)).toEqual(before);
    expect(after[0]!.map(({ number }) => number)).toEqual([1]);
  });
});

describe("commands along two parts, every case", () => {
  const passings: readonly PowerPassing[] = ["no", "one port", "all ports", "towards head unit"];
  /** What a part is, on which port the next one is, and by hand what that port passes towards the head unit. */
  const links = passings.flatMap((passes) => [
    {
      part: splitter(2, { power: power(passes, 0.3) }),
      port: 1 as const,
      power: passes !== "no",
      commands: true,
    },
    {
      part: splitter(2, { power: power(passes, 0.3) }),
      port: 2 as const,
      power: passes === "all ports" || passes === "towards head unit",
      commands: true,
    },
    {
      part: tap(1, { power: power(passes, 0.3) }),
      port: 1 as const,
      power: passes === "all ports" || passes === "towards head unit",
      commands: true,
    },
    {
      part: tap(1, { power: power(passes, 0.3) }),
      port: "through" as const,
      power: passes !== "no",
      commands: true,
    },
    {
      part: amplifier({ power: power(passes, 0.3), passesCommands: passes !== "all ports" }),
      port: 1 as const,
      power: passes !== "no",
      commands: passes !== "all ports",
    },
  ]);
  const standards = [
    { standard: "EN 50494", commandsPassBlock: null },
    { standard: "maker's own", commandsPassBlock: true },
    { standard: "maker's own", commandsPassBlock: false },
    { standard: "maker's own", commandsPassBlock: null },
    { standard: null, commandsPassBlock: null },
  ] as const;

  test(`${links.length ** 2 * standards.length} cases`, () => {
    const wrong: unknown[] = [];
    for (const first of links)
      for (const second of links)
        for (const how of standards) {
          const bands = bandsOf(["EN 50494", "EN 50494"]).map((band) => ({
            ...band,
            standard: how.standard ?? band.standard,
          }));
          const found = distributionOf(
            job({
              headUnits: [headUnit("H1", { kind: headUnitKind({ ...how, bands }) })],
              devices: [device("A", "H1", first.part), device("B", "A", second.part, { port: first.port })],
              outlets: [
                outlet("1", "B", {
                  port: second.port,
                  receiver: receiver({ standard: how.standard ?? "EN 50494" }),
                }),
              ],
            }),
          ).commands[0]!;
          const isPowered = first.power && second.power;
          const isHeard = first.commands && second.commands;
          const wanted =
            how.standard === null
              ? "not judged"
              : !isHeard
                ? "no"
                : how.standard === "EN 50494"
                  ? isPowered
                    ? "yes"
                    : "no"
                  : how.commandsPassBlock === null
                    ? "not judged"
                    : how.commandsPassBlock || isPowered
                      ? "yes"
                      : "no";
          if (found.can !== wanted) wrong.push({ first, second, how, wanted, found });
        }
    expect(wrong).toEqual([]);
  });
});

describe("what volts do to commands", () => {
  const verdict = (
    kind: Parameters<typeof headUnitKind>[0],
    more: Parameters<typeof headUnit>[1] = {},
    rest = 13,
  ) =>
    distributionOf(
      job({
        headUnits: [headUnit("H1", { kind: headUnitKind(kind), ...more })],
        devices: [device("S1", "H1", splitter(2, { power: power("towards head unit", 0.5) }))],
        outlets: [
          outlet("1", "S1", {
            receiver: receiver({ standard: kind?.standard ?? "EN 50494", restVolts: rest }),
          }),
        ],
      }),
    ).commands[0];
  const own = { standard: "maker's own", commandsPassBlock: true, bands: [] } as const;

  test("a tone hears nobody while an inserter's volts stand on its output", () => {
    // 24 V at the output, whatever the receiver does: derivation.
    const open = supply({ otherSide: "all ports" });
    expect(verdict({}, { supply: open })).toMatchObject({
      can: "no",
      because: "too much at rest",
      volts: expect.closeTo(24, 1),
    });
    expect(verdict({}, { supply: supply({ stands: "at the head unit", volts: 18 }) })).toMatchObject({
      because: "too much at rest",
    });
    expect(
      verdict({ senseAmperes: 0.01 }, { supply: supply({ stands: "at the head unit", volts: 18 }) }),
    ).toEqual({ can: "yes" });
  });

  test("a receiver that rests too high, a rise that does not arrive", () => {
    expect(verdict({}, {}, 16)).toMatchObject({
      because: "too much at rest",
      volts: expect.closeTo(15.5, 2),
    });
    expect(verdict({ load: 0.4, outputDrop: 0.4 })).toEqual({ can: "yes" });
    const long = distributionOf(
      job({
        headUnits: [headUnit("H1", { kind: headUnitKind({ load: 0.3 }) })],
        outlets: [
          outlet("1", "H1", {
            run: {
              cable: { name: "drop", loss: { k1: 1, k2: 0, k0: 0 }, loop: 20 },
              length: 60,
              route: "clip",
            },
          }),
        ],
      }),
    ).commands[0];
    // 60 m of 20 ohm a 100 m at 50 °C: 13.415 ohm, 0.3 A, so 18 - 4.024 V arrive: derivation.
    expect(long).toMatchObject({ because: "too little while commanding", volts: expect.closeTo(13.975, 2) });
  });

  test("a maker's own kind is deaf above its volts", () => {
    const open = supply({ otherSide: "all ports" });
    expect(verdict({ ...own, deafAbove: 20 }, { supply: open })).toMatchObject({
      because: "too much at rest",
    });
    expect(verdict({ ...own, deafAbove: 25 }, { supply: open })).toEqual({ can: "yes" });
    expect(verdict({ ...own, deafAbove: null }, { supply: open })).toEqual({ can: "yes" });
  });

  test("an inserter that blocks its other side is named where it stands in a tone's way", () => {
    const one = job({ headUnits: [headUnit("H1", { supply: supply() })], outlets: [outlet("1", "H1")] });
    const said = findings(distributionOf(one), {
      levelLeast: 0,
      levelMost: 200,
      slopeMost: 99,
      isolationLeast: 0,
    });
    expect(said.map(({ fault }) => fault.message)).toEqual([
      expect.stringMatching(
        /^24\.0 V stand on the output of "H1" while all receivers rest, from the supply of "H1" with 24 V; above 15 V/,
      ),
    ]);
  });

  test("a receiver of another standard is not heard", () => {
    const found = distributionOf(
      job({
        headUnits: [
          headUnit("H1", { kind: headUnitKind({ standard: "maker's own", commandsPassBlock: true }) }),
        ],
        outlets: [outlet("1", "H1"), outlet("2", "H9")],
      }),
    ).commands;
    expect(found).toEqual([{ can: "no", because: "standard" }, null]);
  });
});
