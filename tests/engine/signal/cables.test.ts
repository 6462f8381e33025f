import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { BUILT_IN_CABLES, type Cable } from "../../../src/engine/signal/cable";
import { cableBook } from "../../../src/engine/signal/cableBook";
import { cableLoss } from "../../../src/engine/signal/cableLoss";
import { cableSlope } from "../../../src/engine/signal/cableSlope";
import { findCable } from "../../../src/engine/signal/findCable";
import { fromMetres, toMetres } from "../../../src/engine/signal/lengthUnits";
import table from "../../fixtures/published/coax-attenuation.json";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck, publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const cableNamed = (name: string): Cable => {
  const found = findCable(name);
  if (isFault(found)) throw new Error(found.message);
  return found;
};
const loss = (name: string, metres: number, frequency: number, temperature = 20): number => {
  const found = cableLoss(cableNamed(name), metres, frequency, temperature);
  if (isFault(found)) throw new Error(found.message);
  return found;
};
const HUNDRED_FEET = 30.48;

describe("every row of the attenuation table", () => {
  const source = "the ANSI/SCTE 74 kind of maximum table";
  const seen = heldTo({ what: "CABLELOSS", source, basis: "published", unit: "dB/100 ft" });
  const remembered = heldTo({ what: "CABLELOSS", source, basis: "from memory", unit: "dB/100 ft" });
  for (const [series, rows] of Object.entries(table.series)) {
    // The fixture's own statement of how sure it is of an entry.
    const limit = series === "7" ? 0.1 : 0.06;
    test.each(rows.f_MHz.map((f, i) => [f, rows.alpha_dB_per_100ft[i]!] as const))(
      `series ${series}, %d MHz`,
      (f, expected) => {
        const held = (rows.confirmed as Record<string, boolean>)[f] ? seen : remembered;
        held.row(`series ${series}, ${f} MHz`, loss(`series ${series}`, HUNDRED_FEET, f), expected, limit);
      },
    );
  }
});

describe("single checks", () => {
  for (const check of publishedChecks("5-coax").filter(({ inputs }) => "series" in inputs)) {
    const [key, expected] = Object.entries(check.expected)[0]! as [string, number];
    const held = heldTo({
      what: "CABLELOSS",
      source: check.source,
      basis: basisOf(check),
      unit: "dB/100 ft",
    });
    test(check.id, () => {
      const { series, f_MHz } = check.inputs as { series: string; f_MHz: number };
      held.row(check.id, loss(`series ${series}`, HUNDRED_FEET, f_MHz), expected, check.tolerance[key]!);
    });
  }
});

describe("typical values of series 6 cable that the fit has not seen", () => {
  const cross = table.independent_cross_check;
  const held = heldTo({
    what: "CABLELOSS",
    source: "a supplier's typical series 6 values",
    basis: "published",
    unit: "dB/100 ft",
  });
  test.each(cross.f_MHz.map((f, i) => [f, cross.dB_per_100ft[i]!] as const))("%d MHz", (f, expected) => {
    held.row(`${f} MHz`, loss("series 6", HUNDRED_FEET, f), expected, 0.15);
  });
});

describe("the physics of a coaxial line sets a floor", () => {
  const check = publishedCheck("conductor-loss-equation");
  test("series 6 loses more than its conductors alone would, were they all copper", () => {
    const { d_in, D_in, Z0, f_MHz } = check.inputs as Record<string, number>;
    const conductors = ((0.435 * Math.sqrt(f_MHz!)) / Z0!) * (1 / d_in! + 1 / D_in!);
    expect(Math.abs(conductors - (check.expected.alpha_dB_per_100ft as number))).toBeLessThanOrEqual(0.01);
    expect(loss("series 6", HUNDRED_FEET, f_MHz!)).toBeGreaterThan(conductors);
    expect(loss("series 6", HUNDRED_FEET, f_MHz!)).toBeLessThan(1.25 * conductors);
  });
});

describe("temperature", () => {
  const check = publishedCheck("temperature-example");
  const held = heldTo({ what: "CABLELOSS", source: check.source, basis: basisOf(check), unit: "dB" });
  test("200 ft of 5.5 dB per 100 ft at 100 °F", () => {
    const flat: Cable = { name: "flat", loss: { k1: 0, k2: 0, k0: 5.5 / 0.3048 }, loop: 0 };
    const celsius = (100 - 32) / 1.8;
    held.row("100 °F", cableLoss(flat, toMetres(200, "ft"), 500, celsius), 11.39, 0.02);
  });
});

describe("properties", () => {
  const name = fc.constantFrom(...BUILT_IN_CABLES);
  const metres = fc.double({ min: 0, max: 10_000, noNaN: true });
  const frequency = fc.double({ min: 5, max: 3000, noNaN: true });
  const celsius = fc.double({ min: -60, max: 90, noNaN: true });
  const often = { numRuns: tries(100, 1000) };

  test("a longer cable never gains", () => {
    fc.assert(
      fc.property(name, metres, metres, frequency, celsius, (cable, a, b, f, t) => {
        const [short, long] = a < b ? [a, b] : [b, a];
        expect(loss(cable, long, f, t)).toBeGreaterThanOrEqual(loss(cable, short, f, t));
        expect(loss(cable, short, f, t)).toBeGreaterThanOrEqual(0);
      }),
      often,
    );
  });

  test("loss is additive in length", () => {
    fc.assert(
      fc.property(name, metres, metres, frequency, celsius, (cable, a, b, f, t) => {
        const sum = loss(cable, a, f, t) + loss(cable, b, f, t);
        expect(Math.abs(loss(cable, a + b, f, t) - sum)).toBeLessThanOrEqual(1e-12 * Math.max(1, sum));
      }),
      often,
    );
  });

  test("a hotter cable never loses less, and a higher frequency never less either", () => {
    fc.assert(
      fc.property(name, metres, frequency, frequency, celsius, celsius, (cable, l, f1, f2, t1, t2) => {
        expect(loss(cable, l, Math.max(f1, f2), Math.max(t1, t2))).toBeGreaterThanOrEqual(
          loss(cable, l, Math.min(f1, f2), Math.min(t1, t2)),
        );
      }),
      often,
    );
  });

  test("the slope is the difference of the losses at its ends", () => {
    fc.assert(
      fc.property(name, metres, frequency, frequency, celsius, (cable, l, f1, f2, t) => {
        const [low, high] = f1 < f2 ? [f1, f2] : [f2, f1];
        const slope = cableSlope(cableNamed(cable), l, low, high, t);
        expect(slope).toBeCloseTo(loss(cable, l, high, t) - loss(cable, l, low, t), 9);
        expect(slope).toBeGreaterThanOrEqual(0);
      }),
      often,
    );
  });

  test("feet and metres round trip", () => {
    fc.assert(
      fc.property(metres, (length) => {
        expect(Math.abs(fromMetres(toMetres(length, "ft"), "ft") - length)).toBeLessThanOrEqual(
          1e-12 * Math.max(1, length),
        );
        expect(toMetres(length, "m")).toBe(length);
      }),
      often,
    );
  });
});

describe("a user's own table", () => {
  const blank = { like: null, k1: null, k2: null, k0: null, loop: null };
  test("an empty table leaves the built-in types", () => {
    expect(findCable("series 6", cableBook([]))).toBe(findCable("Series 6"));
  });
  test("each half has its own fault", () => {
    const found = findCable("a", cableBook([{ ...blank, name: "a", loop: 10 }]));
    if (isFault(found)) throw new Error(found.message);
    expect(found.loop).toBe(10);
    expect(isFault(found.loss)).toBe(true);
  });
  test("a name three times is still a fault", () => {
    const book = cableBook([1, 2, 3].map((k1) => ({ ...blank, name: "a", k1, k2: 0, k0: 0 })));
    expect(isFault(findCable("A", book))).toBe(true);
    expect(book.size).toBe(1);
  });
  test("a loss of exactly 0 is allowed, the least gain is not", () => {
    const flat = (k0: number): Cable => ({ name: "a", loss: { k1: 0, k2: 0, k0 }, loop: 1 });
    expect(cableLoss(flat(0), 100, 100, 20)).toBe(0);
    expect(isFault(cableLoss(flat(-1e-9), 100, 100, 20))).toBe(true);
  });
  test("a slope takes over the fault of either end", () => {
    const falling = findCable("a", cableBook([{ ...blank, name: "a", k1: 0, k2: -1, k0: 500 }]));
    if (isFault(falling)) throw new Error(falling.message);
    expect(cableSlope(falling, 10, 100, 400, 20)).toBe(-30);
    expect(cableSlope(falling, 10, 100, 600, 20)).toMatchObject({ kind: "fault" });
  });
});
