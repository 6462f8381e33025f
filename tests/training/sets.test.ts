/** Every set over many draws: answerable, unambiguous, plausible; the key as the engine and a reference have it. */
import { allFunctions } from "../../src/functions/all";
import { drawFor, exampleOf, type Drawn } from "../../src/training/drawNumbers";
import { toleranceOf, type AnySet } from "../../src/training/exercise";
import { coarseValues, pointAndSign } from "../../src/training/generalSlips";
import { quoteRows, rightRows, PARTS, type Part, type QuoteNumbers } from "../../src/training/sets/badQuote";
import { trainingSets } from "../../src/training/sets/all";
import { cableRow } from "../../src/training/sets/trainingCables";
import { slipValues } from "../../src/training/slips/slipValues";
import { numbersAmong } from "../../src/training/solve";
import { EXERCISE_WIDTHS } from "../../src/workbooks/layOutExercise";
import { heldTo } from "../support/heldTo";
import { references } from "./referenceAnswers";

/* eslint-disable @typescript-eslint/no-explicit-any -- the drawn numbers of every set, by name */

const DRAWS = 120;
const drawsOf = (set: AnySet): readonly Drawn[] =>
  Array.from({ length: DRAWS }, (_, seed) => drawFor(set, seed, { name: "Demonstration", occurrence: 1 }));

describe.each(trainingSets.map((set) => [set.id, set] as const))("%s", (id, set) => {
  const draws = drawsOf(set);
  const reference = references[id];

  test("four to nine questions, each with hints, figures that fit their columns and an example", () => {
    expect(set.questions.length).toBeGreaterThanOrEqual(4);
    expect(set.questions.length).toBeLessThanOrEqual(9);
    const keys = set.questions.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    const example = exampleOf(set);
    set.questions.forEach((question, index) => {
      expect(question.key).toMatch(/^[A-Za-z0-9]+$/);
      expect(question.hints.length).toBeGreaterThan(0);
      expect(keys.slice(0, index)).toEqual(expect.arrayContaining([...question.needs]));
      for (const drawn of [...draws.slice(0, 20), example]) {
        for (const { label, value, unit = "" } of question.given(drawn.numbers as never)) {
          expect(label.length).toBeLessThanOrEqual(EXERCISE_WIDTHS[0]);
          expect(String(value).length).toBeLessThanOrEqual(EXERCISE_WIDTHS[1]);
          expect(unit.length).toBeLessThanOrEqual(EXERCISE_WIDTHS[2] + 1);
        }
      }
      const steps = question.example(example.numbers as never, numbersAmong(example.key));
      expect(steps.length).toBeGreaterThan(0);
      const last = steps.at(-1)!.value;
      const right = example.key[question.key]!;
      if (typeof right === "number" && typeof last === "number" && id !== "bad-quote") {
        expect(Math.abs(last - right)).toBeLessThan(1e-9 * Math.max(1, Math.abs(right)));
      }
    });
  });

  test("each common mistake lies farther than twice the tolerance from the right answer and from a coarse one; few share theirs", () => {
    let slips = 0;
    let shared = 0;
    for (const { numbers, key } of draws) {
      for (const question of set.questions) {
        const right = key[question.key];
        if (typeof right !== "number") continue;
        const least = 2 * toleranceOf(question.answer);
        const all = slipValues(set, question, numbers, numbersAmong(key), "often");
        all.forEach((one, at) => {
          slips++;
          const value = one.value as number;
          expect(Math.abs(value - right)).toBeGreaterThan(least);
          for (const coarse of coarseValues(question.answer, right))
            expect(Math.abs(value - coarse)).toBeGreaterThan(least);
          // Counts are few, and some mistakes are one whatever the numbers: both share an answer by nature.
          if (least === 0) return;
          shared += all
            .slice(at + 1)
            .filter((other) => other.name !== one.name)
            .map((other) => Math.abs((other.value as number) - value))
            .filter((apart) => apart <= least && apart > 1e-9 * Math.abs(value)).length;
        });
        for (const general of pointAndSign(question.answer, right))
          expect(Math.abs(general.value - right)).toBeGreaterThan(least);
      }
    }
    expect(slips).toBeGreaterThan(DRAWS);
    process.stdout.write(
      `  ${id}: ${(slips / DRAWS).toFixed(0)} common mistakes a sheet, ${(shared / DRAWS).toFixed(1)} pairs that share their answer\n`,
    );
    expect(shared / slips).toBeLessThan(0.05);
  });

  test("the formula that mistakes are worked out by is the engine's, as far as the tolerance can tell", () => {
    for (const { numbers, key } of draws) {
      for (const { formula, answer, key: name } of set.questions) {
        if (!formula) continue;
        const apart = Math.abs(formula(numbers as never, numbersAmong(key)) - (key[name] as number));
        expect(apart).toBeLessThanOrEqual(
          Math.max(0.35 * toleranceOf(answer), 1e-9 * Math.abs(key[name] as number)),
        );
      }
    }
  });

  test("no answer is the usual one where there are few to choose from", () => {
    const choices = set.questions.filter(({ answer }) => answer.kind === "choice" || answer.unit === "row");
    for (const { key: name, answer } of choices) {
      const times = new Map<unknown, number>();
      for (const { key } of draws) times.set(key[name], (times.get(key[name]) ?? 0) + 1);
      const most = Math.max(...times.values()) / DRAWS;
      if (answer.kind === "choice" && answer.choices.length === 3) {
        expect(times.size).toBe(3);
        // A third of 120 is 40; three deviations are 15.5.
        expect(most).toBeLessThan(0.47);
      } else expect(most).toBeLessThan(0.66);
    }
  });

  test("answers of an order that is met on site", () => {
    const unitLimits: Record<string, readonly [number, number]> = {
      deg: [-40, 360],
      m: [0.5, 600],
      dB: [0.3, 60],
      dBµV: [30, 110],
      tuners: [4, 80],
      "head units": [2, 20],
      bands: [0, 32],
      band: [2, 32],
      ohm: [0.3, 40],
      V: [0.05, 30],
      money: [10, 60_000],
      "%": [1, 40],
      reels: [1, 20],
      row: [1, 13],
      "": [0, 2100],
    };
    for (const { key } of draws) {
      for (const { key: name, answer } of set.questions) {
        const right = key[name]!;
        if (answer.kind === "choice") expect(answer.choices).toContain(right);
        else {
          const [least, most] = unitLimits[answer.unit]!;
          expect(right).toBeGreaterThanOrEqual(least);
          expect(right).toBeLessThanOrEqual(most);
        }
      }
    }
  });

  test("two trainees hardly ever get the same numbers, and nobody gets the worked example's", () => {
    const texts = new Set(draws.map(({ numbers }) => JSON.stringify(numbers)));
    expect(texts.size).toBe(DRAWS);
    expect(texts.has(JSON.stringify(exampleOf(set).numbers))).toBe(false);
  });

  test("no question of a sheet has the worked example's figures, or an answer that it would make right", () => {
    const example = exampleOf(set);
    const repeated: string[] = [];
    // Drawn here, so that how they are drawn is what is looked at.
    for (const [seed, { numbers, key }] of drawsOf(set).entries()) {
      for (const { key: name, answer, given } of set.questions) {
        const figures = [numbers, example.numbers].map((of) => JSON.stringify(given(of as never)));
        if (answer.kind === "number" && figures[0] !== "[]" && figures[0] === figures[1])
          repeated.push(`seed ${seed}: figures of ${name}`);
        const apart = Math.abs(Number(key[name]) - Number(example.key[name]));
        if (toleranceOf(answer) > 0 && apart <= 2 * toleranceOf(answer))
          repeated.push(`seed ${seed}: answer to ${name}`);
      }
    }
    expect(repeated).toEqual([]);
  });

  if (reference) {
    const held = heldTo({
      what: `training set ${id}`,
      source: "tests/training/referenceAnswers.ts, handbook equations",
      basis: "derivation",
      unit: "the answer's own unit",
    });
    test("every key as the reference has it", () => {
      for (const [seed, { numbers, key }] of draws.entries()) {
        const expected = reference(numbers);
        expect(Object.keys(expected).sort()).toEqual(Object.keys(key).sort());
        for (const [name, { value, limit }] of Object.entries(expected)) {
          const label = `seed ${seed}, ${name}`;
          if (typeof value === "string") held.same(label, key[name], value);
          else held.row(label, key[name], value, limit * Math.max(1, limit < 1e-7 ? Math.abs(value) : 1));
        }
      }
    });
  }
});

describe("keys as the sheet functions answer", () => {
  const call = (name: string, ...args: unknown[]): unknown =>
    allFunctions.find((one) => one.name === name)!.call(args as never);
  const byId = (id: string) => trainingSets.find((set) => set.id === id)!;
  const each = (id: string, look: (n: any, key: any) => void): void => {
    for (const { numbers, key } of drawsOf(byId(id)).slice(0, 40)) look(numbers, key);
  };

  test("look angles and compass", () => {
    each("look-angles", (n, key) => {
      expect(key.azimuth).toBeCloseTo(call("AZIMUTH", n.latitude, n.longitude, n.slot) as number, 9);
      expect(key.elevation).toBeCloseTo(call("ELEVATION", n.latitude, n.longitude, n.slot) as number, 9);
      // The chart's declination is rounded to 0.1 deg.
      const compass = call("COMPASS", n.latitude, n.longitude, n.slot, "2026-07-01") as number;
      expect(Math.abs(key.compass - compass)).toBeLessThan(0.0501);
      expect(key.setback).toBeCloseTo(
        call("SETBACK", key.elevation, n.obstacle, n.dish, n.margin) as number,
        9,
      );
      expect(key.ray).toBeCloseTo(call("RAYHEIGHT", key.elevation, n.chimney, n.dish) as number, 9);
      expect(key.offset).toBeCloseTo(call("OFFSETANGLE", n.rimWidth, n.rimHeight) as number, 9);
    });
  });

  test("cable, splitters, tuners", () => {
    each("cable", (n, key) => {
      const table = [cableRow(n.cable)];
      const loss = (f: number, t: number) => call("CABLELOSS", n.cable, n.feet, f, t, "ft", table) as number;
      expect(key.lossLow).toBeCloseTo(loss(n.low, 20), 9);
      expect(key.hotLoss).toBeCloseTo(loss(n.high, n.hot), 9);
      expect(key.slope).toBeCloseTo(
        call("CABLESLOPE", n.cable, n.feet, n.low, n.high, 20, "ft", table) as number,
        9,
      );
      expect(key.verdict).toBe(call("WINDOW", key.level, 47, 77));
    });
    each("splitters", (n, key) => {
      expect(key.both).toBeCloseTo(
        call("CASCADELOSS", [[n.ways], [n.ways2]], [[n.excess], [n.excess2]]) as number,
        9,
      );
      expect(key.through).toBeCloseTo(call("TAPTHROUGH", n.tap, n.through) as number, 9);
    });
    each("tuners", (n, key) => {
      const count = (kind: string, quantity: number) => call("TUNERCOUNT", kind, quantity) as number;
      expect(key.tuners).toBe(
        count("receiver", n.receivers) +
          count("recorder, 2 tuners", n.two) +
          count("recorder, 4 tuners", n.four),
      );
      expect(key.units).toBe(call("HEADUNITS", key.tuners, n.capacity));
      expect(key.word).toBe(call("TUNINGWORD", n.frequency, n.band, "EN 50494"));
      expect(key.word2).toBe(call("TUNINGWORD", n.frequency, null, "EN 50607"));
    });
  });

  test("volts and prices", () => {
    each("supply", (n, key) => {
      const table = [["run", null, 0, 0, 0, n.loop]];
      const ohms = call("LOOPOHMS", "run", n.feet, n.hot, "ft", table) as number;
      expect(key.hotOhms).toBeCloseTo(ohms, 9);
      expect(key.volts).toBeCloseTo(call("LOADVOLTS", n.supply, n.milliamperes / 1000, ohms) as number, 9);
      expect(key.power).toBeCloseTo(call("LOADVOLTS", n.supply, n.watts, ohms, "W") as number, 9);
    });
    each("pricing", (n, key) => {
      expect(key.price).toBeCloseTo(
        call("SELLPRICE", key.materials + key.labour, n.margin / 100) as number,
        9,
      );
      const reels = call(
        "REELS",
        n.runs.map((run: number) => [run]),
        n.reel,
        n.slack,
        n.waste / 100,
      );
      expect(reels).toBe(key.reels);
    });
  });
});

describe("the bad quote", () => {
  const set = trainingSets.find(({ id }) => id === "bad-quote")!;

  test("a worked example tells each row of its part right or wrong, and what it should be", () => {
    for (const { numbers, key } of drawsOf(set).slice(0, 40)) {
      const n = numbers as QuoteNumbers;
      const sums = quoteRows(n).map(({ sum }) => sum);
      const lines = sums.slice(0, 9).reduce((all, sum) => all + sum, 0);
      const [cost, price, tax] = sums.slice(9) as [number, number, number];
      // By an office's arithmetic, each from what stands above it.
      const expected = [lines, (100 * cost) / (100 - n.margin), (price * n.tax) / 100, price + tax];
      const totals = set.questions.find((one) => one.key === "totalsRow")!;
      const steps = totals.example(numbers as never, {});
      expect(steps.map(({ symbol }) => symbol)).toEqual(["10", "11", "12", "13"]);
      for (const [at, { symbol, meaning, value, line }] of steps.entries()) {
        expect(Math.abs((value as number) - expected[at]!)).toBeLessThan(0.011);
        const isWrong = symbol === String(key.totalsRow);
        expect([symbol, meaning.endsWith(": wrong"), meaning.endsWith(": right")]).toEqual([
          symbol,
          isWrong,
          !isWrong,
        ]);
        expect(line).toBe(
          isWrong
            ? `stands ${sums[9 + at]!.toFixed(2)}; should be ${(value as number).toFixed(2)}`
            : sums[9 + at]!.toFixed(2),
        );
      }
    }
  });

  const money = (amount: number): number => Math.round(amount * 100 + 1e-6) / 100;

  test("in each part exactly one row is wrong in itself, checked by an office's own arithmetic", () => {
    for (const { numbers, key } of drawsOf(set)) {
      const n = numbers as QuoteNumbers;
      const rows = quoteRows(n);
      const units = Math.ceil((n.receivers + 2 * n.recorders) / 8);
      const quantities = [
        units,
        units,
        1,
        Math.round(n.dropFeet * 3.048) / 10,
        Math.round(n.trunkFeet * 3.048) / 10,
        units,
        Math.round((n.outlets * n.outletMinutes * 100) / 60) / 100,
        Math.round((units * n.unitMinutes * 100) / 60) / 100,
        2,
      ];
      const wrong = quantities.flatMap((quantity, at) => {
        const row = rows[at]!;
        return row.quantity === quantity && Math.abs(row.sum - money(quantity * row.price!)) < 0.011
          ? []
          : [at + 1];
      });
      const [cost, price, tax, total] = rows.slice(9).map(({ sum }) => sum) as [
        number,
        number,
        number,
        number,
      ];
      const all = rows.slice(0, 9).reduce((sum, row) => sum + row.sum, 0);
      if (Math.abs(cost - all) > 0.005) wrong.push(10);
      if (Math.abs(price - (100 * cost) / (100 - n.margin)) > 0.011) wrong.push(11);
      if (Math.abs(tax - (price * n.tax) / 100) > 0.011) wrong.push(12);
      if (Math.abs(total - price - tax) > 0.006) wrong.push(13);
      expect(wrong).toEqual((Object.keys(PARTS) as Part[]).map((part) => key[`${part}Row`]));
      const cableRow = key.cableRow as number;
      expect(key.cableSum).toBeCloseTo(money(quantities[cableRow - 1]! * rows[cableRow - 1]!.price!), 1);
      expect(rightRows(n)[cableRow - 1]!.sum).toBe(key.cableSum);
    }
  });
});
