/** Money as fractions: how a number is read, and that nothing is lost on the way. */
import Decimal from "decimal.js";
import fc from "fast-check";
import { addMoney } from "../../../src/engine/estimate/addMoney";
import { Exact } from "../../../src/engine/estimate/exact";
import { tries } from "../../support/tries";

const D = Decimal.clone({ precision: 60 });
const of = (value: number): Exact => Exact.of(value);
const typed = fc
  .tuple(fc.integer({ min: -999_999_999, max: 999_999_999 }), fc.integer({ min: 0, max: 9 }))
  .map(([digits, places]) => Number(`${digits}e-${places}`));

describe("how a number is read", () => {
  test("typed, by its decimal digits; worked out, without the noise of its last bits", () => {
    expect(
      of(0.1 * 3)
        .minus(of(0.3))
        .toNumber(),
    ).toBe(0);
    expect(
      of(5855.65 * 0.1)
        .minus(of(585.565))
        .toNumber(),
    ).toBe(0);
    expect(of(1.004).minus(of(1.005)).toNumber()).toBe(-0.001);
  });

  test.each([1 / 3, 2 / 3, 1 / 7, 22 / 7, 1000 / 3, 35 / 12, 127 + 11 / 24])("%d as a fraction", (value) => {
    // 168 is a multiple of 3, 7, 12 and 24.
    const whole = of(value).times(of(168));
    expect(whole.minus(of(Math.round(value * 168))).toNumber()).toBe(0);
  });

  test("the noise of a sum over its parts is read away, for every amount of cents up to 2,000.00", () => {
    for (let cents = 1; cents <= 200_000; cents += 7) {
      const noisy = (cents / 100) * 1.1 * 1.03;
      const exact = new D(cents).dividedBy(100).times("1.133");
      expect(new D(of(noisy).toNumber()).equals(exact)).toBe(true);
    }
  });

  test("what is no simple fraction keeps its own digits", () => {
    for (const value of [Math.PI, Math.SQRT2 * 1e6, 1234567890.1234567, 1e21 / 7, 1e308, 5e-324, -Math.E]) {
      expect(Math.abs(of(value).toNumber() - value)).toBeLessThanOrEqual(2 ** -49 * Math.abs(value));
    }
  });
});

test("what is no simple fraction keeps the very double that it was", () => {
  for (const value of [
    Math.PI,
    Math.E,
    Math.SQRT2,
    Math.LN2,
    Math.SQRT2 * 1e6,
    -Math.PI * 1e-5,
    1234.567890123456,
  ]) {
    expect(of(value).toNumber()).toBe(value);
  }
});

describe("arithmetic against decimal.js with 60 digits", () => {
  test("sums, differences, products and quotients, rounded to the nearest double", () => {
    fc.assert(
      fc.property(typed, typed, (a, b) => {
        const [x, y] = [new D(a), new D(b)];
        expect(of(a).plus(of(b)).toNumber() + 0).toBe(x.plus(y).toNumber() + 0);
        expect(of(a).minus(of(b)).toNumber() + 0).toBe(x.minus(y).toNumber() + 0);
        expect(of(a).times(of(b)).toNumber() + 0).toBe(x.times(y).toNumber() + 0);
        if (b !== 0) expect(of(a).dividedBy(of(b)).toNumber() + 0).toBe(x.dividedBy(y).toNumber() + 0);
      }),
      { numRuns: tries(300, 3000) },
    );
  });

  test("a double comes back as it went in", () => {
    fc.assert(
      fc.property(typed, (value) => expect(of(value).toNumber() + 0).toBe(value + 0)),
      { numRuns: tries(300, 3000) },
    );
  });

  test("ten thousand lines of 3.335 come to 33,350 to the last digit, which binary addition misses", () => {
    const lines = Array.from({ length: 10_000 }, () => 3.335);
    expect(addMoney(lines)).toBe(33_350);
    expect(lines.reduce((sum, line) => sum + line, 0)).not.toBe(33_350);
  });

  test("sums of many lines of a quantity times a price", () => {
    const line = fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 99_999 }));
    fc.assert(
      fc.property(fc.array(line, { maxLength: 60 }), (lines) => {
        const exact = lines.reduce(
          (sum, [n, price]) => sum.plus(new D(price).dividedBy(1000).times(n)),
          new D(0),
        );
        expect(addMoney(lines.map(([n, price]) => n * (price / 1000)))).toBe(exact.toNumber());
      }),
      { numRuns: tries(50, 500) },
    );
  });
});
