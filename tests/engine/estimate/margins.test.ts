import fc from "fast-check";
import { faults } from "../../../src/engine/faults";
import { marginOfMarkup } from "../../../src/engine/estimate/marginOfMarkup";
import { markupOfMargin } from "../../../src/engine/estimate/markupOfMargin";
import { sellPrice } from "../../../src/engine/estimate/sellPrice";
import { threePoint } from "../../../src/engine/estimate/threePoint";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck } from "../../support/published";
import { tries } from "../../support/tries";

describe("margin and markup", () => {
  const check = publishedCheck("markup-to-margin");
  const held = heldTo({ what: "MARGIN, MARKUP", source: check.source, basis: basisOf(check), unit: "share" });
  test("25 % markup is 20 % margin, and 30 % margin is 42.857 % markup", () => {
    const { markup } = check.inputs as { markup: number };
    held.row("margin of 25 %", marginOfMarkup(markup), check.expected.margin as number, 1e-12);
    // By hand: 0.3 ÷ 0.7 = 3/7.
    held.row("markup of 30 %", markupOfMargin(0.3), 3 / 7, 1e-12);
  });

  const share = fc.double({ min: 0, max: 0.9, noNaN: true });

  test("go there and back", () => {
    fc.assert(
      fc.property(share, (margin) => {
        expect(marginOfMarkup(markupOfMargin(margin) as number)).toBeCloseTo(margin, 12);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("give the price both ways", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), share, (cost, margin) => {
        const price = sellPrice(cost, margin) as number;
        expect(price).toBeCloseTo(cost * (1 + (markupOfMargin(margin) as number)), 5);
        expect(price * (1 - margin)).toBeCloseTo(cost, 5);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("boundary: a margin of 1 or more is refused with the way to write it", () => {
    for (const margin of [1, 20, 1e308]) {
      expect(sellPrice(80, margin)).toEqual(faults.marginTooHigh(margin));
      expect(markupOfMargin(margin)).toEqual(faults.marginTooHigh(margin));
    }
    expect(sellPrice(80, 0)).toBe(80);
  });
});

describe("three-point estimate", () => {
  const held = heldTo({
    what: "THREEPOINT",
    source: "(o + 4m + p)/6 and (p − o)/6 worked by hand",
    basis: "derivation",
    unit: "hours",
  });
  test("by hand", () => {
    const found = threePoint(2, 3, 10);
    expect(found).toEqual({ mean: expect.any(Number), deviation: expect.any(Number) });
    const { mean, deviation } = found as { mean: number; deviation: number };
    held.row("mean", mean, 4, 1e-12);
    held.row("deviation", deviation, 4 / 3, 1e-12);
  });

  test("the mean lies between the ends, and mirrored estimates give a mirrored mean", () => {
    const value = fc.integer({ min: -1000, max: 1000 });
    fc.assert(
      fc.property(value, value, value, (...values) => {
        const [low, likely, high] = values.sort((a, b) => a - b) as [number, number, number];
        const { mean, deviation } = threePoint(low, likely, high) as { mean: number; deviation: number };
        const mirrored = threePoint(-high, -likely, -low) as { mean: number; deviation: number };
        expect(mean).toBeGreaterThanOrEqual(low);
        expect(mean).toBeLessThanOrEqual(high);
        expect(mirrored.mean).toBeCloseTo(-mean, 9);
        expect(mirrored.deviation).toBeCloseTo(deviation, 9);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("estimates out of order are refused", () => {
    expect(threePoint(5, 3, 8)).toEqual(faults.notRising(5, 3, 8));
    expect(threePoint(1, 9, 8)).toEqual(faults.notRising(1, 9, 8));
    expect(threePoint(3, 3, 3)).toEqual({ mean: 3, deviation: 0 });
  });
});
