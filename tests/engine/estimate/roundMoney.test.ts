import Decimal from "decimal.js";
import fc from "fast-check";
import { roundMoney } from "../../../src/engine/estimate/roundMoney";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const RULES = [
  ["half away", Decimal.ROUND_HALF_UP],
  ["half even", Decimal.ROUND_HALF_EVEN],
] as const;

describe("rounding by decimal digits against the published ties", () => {
  for (const check of publishedChecks("12-estimating").filter(({ id }) => id.startsWith("round-"))) {
    const held = heldTo({ what: "ROUNDMONEY", source: check.source, basis: basisOf(check), unit: "money" });
    const { value, places } = check.inputs as { value: number; places: number };
    test(check.id, () => {
      held.row(`${check.id} away`, roundMoney(value, places), check.expected.half_away as number, 0);
      held.row(
        `${check.id} even`,
        roundMoney(value, places, "half even"),
        check.expected.half_even as number,
        0,
      );
    });
  }
});

const isWorkedOut = (value: number): boolean =>
  Math.abs(value).toExponential().split("e")[0]!.replace(".", "").length > 15;
/** Nearer than the noise: 2⁻⁴⁹ of the number, and never more than a billionth. */
function isNearTie(value: number, decimals: number): boolean {
  const magnitude = new Decimal(value).abs();
  const unit = new Decimal(10).pow(decimals);
  const noise = Decimal.min(magnitude.times(2 ** -49), 1e-9).times(unit);
  return magnitude.times(unit).mod(1).minus(0.5).abs().lte(noise);
}

describe("rounding against decimal.js", () => {
  const agrees = (value: number, decimals: number): void => {
    for (const [rule, mode] of RULES) {
      const expected = new Decimal(value).toDecimalPlaces(decimals, mode).toNumber();
      const found = roundMoney(value, decimals, rule);
      // More digits than anybody types are noise (exact.ts): so near a tie either side is right.
      if (isWorkedOut(value) && isNearTie(value, decimals))
        expect(
          new Decimal(found)
            .minus(expected)
            .abs()
            .times(10 ** decimals)
            .lte(1 + 1e-6),
        ).toBe(true);
      // Adding 0 takes the sign off a negative zero.
      else expect(found + 0).toBe(expected + 0);
    }
  };
  const decimals = fc.integer({ min: 0, max: 6 });

  test("any double", () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), decimals, agrees), {
      numRuns: tries(100, 1000),
    });
  });

  test("amounts of a few digits, where ties are common", () => {
    const amount = fc
      .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: 0, max: 8 }))
      .map(([digits, places]) => Number(`${digits}e-${places}`));
    fc.assert(fc.property(amount, decimals, agrees), { numRuns: tries(100, 1000) });
  });

  // Its shortest text is a tie at 5 places, and has 16 digits.
  test("a long number at a tie", () => agrees(-3557678144.192635, 5));

  test.each([1.005, 2.675, -1.005, 0.5, 1.5, 2.5, 0.05, 0.005, 0.0049, 9.995, 1e21, 1e-7, 5e-324, 1e308, 0])(
    "%d",
    (value) => [0, 1, 2, 6].forEach((places) => agrees(value, places)),
  );
});

describe("rounding", () => {
  test("never gives a negative zero", () => {
    expect(Object.is(roundMoney(-0.001), 0)).toBe(true);
    expect(Object.is(roundMoney(-1e-9), 0)).toBe(true);
  });

  test("rounded again is the same", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
        const once = roundMoney(value);
        expect(roundMoney(once)).toBe(once);
        expect(Math.abs(once - value)).toBeLessThanOrEqual(0.005 + 1e-6);
      }),
      { numRuns: tries(100, 1000) },
    );
  });
});
