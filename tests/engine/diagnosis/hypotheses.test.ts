/** Where a cause is looked for, and with which chance, by the rules stated in the sources. */
import { CAUSES, SWAPPED, type Cause } from "../../../src/engine/diagnosis/causes";
import type { Reading } from "../../../src/engine/diagnosis/evidence";
import { hypothesesOf } from "../../../src/engine/diagnosis/hypotheses";

const causeOf = (name: string): Cause => CAUSES.find(({ cause }) => cause === name)!;
const reading = (outlet: string, path: readonly string[], more: Partial<Reading> = {}): Reading => ({
  outlet,
  path,
  frequencies: [950, 2150],
  predicted: [64, 55],
  measured: [64, 55],
  volts: 18,
  voltsPredicted: 18,
  ...more,
});
const places = (readings: readonly Reading[], cause: string, partly: readonly string[] = []) =>
  hypothesesOf("H1", readings, [causeOf(cause)], 950, 2150, new Set(partly)).map(({ where }) => where);

const JOB = [reading("R1", ["B2", "B1"]), reading("R2", ["B2", "B1"]), reading("R3", ["B1"])];

describe("places", () => {
  test("of a head unit's cause: the head unit, with all of its readings", () => {
    const [found, ...more] = hypothesesOf("H1", JOB, [causeOf("misaligned")], 950, 2150);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ where: "H1", at: [0, 1, 2], chance: 0.05 });
  });
  test("of a run's cause: branches that feed two or more, and outlets", () => {
    expect(places(JOB, "wrong or wet cable")).toEqual(["B2", "B1", "R1", "R2", "R3"]);
    expect(places([JOB[0]!, JOB[2]!], "wrong or wet cable")).toEqual(["B1", "R1", "R3"]);
    expect(places([JOB[0]!, JOB[2]!], "wrong or wet cable", ["B2"])).toEqual(["B2", "B1", "R1", "R3"]);
  });
  test("of an outlet's cause: outlets alone", () => {
    expect(places(JOB, "something not in this list")).toEqual(["R1", "R2", "R3"]);
  });
  test("each way of a cause has its share of the chance", () => {
    const found = hypothesesOf("H1", [JOB[2]!], [causeOf("unrated splitter in the run")], 950, 2150);
    expect(found.map(({ chance, effects }) => [Number(chance.toFixed(6)), effects.power.get(0)])).toEqual([
      [0.007, "lost"],
      [0.003, "kept"],
    ]);
  });
});

describe("the head unit's own volts", () => {
  const atHead = reading("H1", [], { frequencies: [], predicted: [], measured: [], volts: 0 });
  test("show a leg without power there, and no cause that keeps the supply", () => {
    expect(places([atHead], "leg that passes no power")).toEqual(["H1"]);
    expect(places([atHead], "wrong or wet cable")).toEqual([]);
    // Of its ways: low, kept, lost, lost and dead.
    expect(places([atHead], "bad connector")).toEqual(["H1", "H1", "H1"]);
  });
});

describe("sizes", () => {
  const effectsOf = (cause: Cause, at = 0) =>
    hypothesesOf("H1", JOB, [cause], 950, 2150)
      .find(({ where }) => where === "R3")!
      .effects.columns.map(({ mean, sd, effect }) => ({ mean, sd, effect: effect.get(2 + at) }));
  test("a run's typical loss at both ends, and its tilt about the middle", () => {
    // The cable's loss grows with √f, so its share at the high end is all of it.
    expect(effectsOf(causeOf("wrong or wet cable"))).toEqual([
      { mean: 1, sd: 0.5, effect: [-4.5, -7] },
      { mean: 0, sd: 0.6, effect: [0.5, -0.5] },
    ]);
  });
  test("in between: half way by frequency, by its root, or only above 1000 MHz", () => {
    const middle = (cause: string, f: number) => {
      const one = reading("R1", ["B1"], { frequencies: [f], predicted: [60], measured: [60] });
      const { low, high } = causeOf(cause);
      const [column] = hypothesesOf("H1", [one], [causeOf(cause)], 950, 2150).find(
        ({ where }) => where === "R1",
      )!.effects.columns;
      return (-column!.effect.get(0)![0]! - low) / (high - low);
    };
    expect(middle("bad connector", 1550)).toBeCloseTo(0.5, 12);
    expect(middle("wrong or wet cable", 1550)).toBeCloseTo(
      (Math.sqrt(1550) - Math.sqrt(950)) / (Math.sqrt(2150) - Math.sqrt(950)),
      12,
    );
    expect(middle("unrated splitter in the run", 1000)).toBe(0);
    expect(middle("unrated splitter in the run", 1575)).toBeCloseTo(0.5, 12);
  });
  test("one frequency alone has no way to go", () => {
    const one = reading("R1", ["B1"], { frequencies: [950], predicted: [60], measured: [60] });
    const [column] = hypothesesOf("H1", [one], [causeOf("wrong or wet cable")], 950, 950)[0]!.effects.columns;
    expect(column!.effect.get(0)).toEqual([-4.5]);
  });
  test("a cause that takes nothing of the level has no size; a dead outlet neither", () => {
    expect(effectsOf(causeOf("leg that passes no power"))).toEqual([]);
    const dead = hypothesesOf("H1", JOB, [causeOf("bad connector")], 950, 2150).filter(
      ({ effects }) => effects.dead.size > 0,
    );
    expect(dead.length).toBeGreaterThan(0);
    for (const { effects, at } of dead) {
      expect(effects.columns).toEqual([]);
      expect([...effects.dead]).toEqual(at);
    }
  });
  test("a fixed size keeps a little spread, so that it can be solved for", () => {
    const [column] = effectsOf({ ...causeOf("misaligned"), place: "outlet", spread: 0, tilt: 0 });
    expect(column).toMatchObject({ mean: 1, sd: 0.02 });
  });
});

describe("ports exchanged", () => {
  const swapsOf = (readings: readonly Reading[]) =>
    hypothesesOf("H1", readings, [causeOf(SWAPPED)], 950, 2150).filter(({ at }) => at.length === 2);
  const at = (outlet: string, low: number, high: number, more: Partial<Reading> = {}) =>
    reading(outlet, ["B1"], { predicted: [low, high], measured: [low, high], ...more });

  test("what one gains the other loses, where the predictions differ by 2 dB or more at an end", () => {
    const [found, ...more] = swapsOf([at("R1", 64, 55), at("R2", 63, 53), at("R3", 64, 55.9)]);
    expect(found).toMatchObject({ where: "R1 and R2", at: [0, 1] });
    expect([...found!.effects.columns[0]!.effect]).toEqual([
      [0, [-1, -2]],
      [1, [1, 2]],
    ]);
    expect(more.map(({ where }) => where)).toEqual(["R2 and R3"]);
  });
  test("one chance for each outlet is shared out over the pairs", () => {
    const pairs = swapsOf([at("R1", 64, 55), at("R2", 61, 52), at("R3", 58, 49)]);
    // Three pairs for 0.01 · 3/2.
    expect(pairs.map(({ chance }) => Number(chance.toFixed(9)))).toEqual([0.005, 0.005, 0.005]);
    expect(swapsOf([at("R1", 64, 55)])).toEqual([]);
  });
  test("not between outlets that were measured at other frequencies", () => {
    expect(swapsOf([at("R1", 64, 55), at("R2", 61, 52, { frequencies: [950, 1350] })])).toEqual([]);
  });
  test("beyond 40 outlets only below one branch", () => {
    const outlets = (count: number) =>
      Array.from({ length: count }, (_, index) =>
        at(`R${index + 1}`, 64 - 3 * index, 50, { path: [index % 2 ? "B2" : "B1"] }),
      );
    expect(swapsOf(outlets(40))).toHaveLength((40 * 39) / 2);
    // 21 below the one, 20 below the other.
    expect(swapsOf(outlets(41))).toHaveLength((21 * 20) / 2 + (20 * 19) / 2);
  });
});
