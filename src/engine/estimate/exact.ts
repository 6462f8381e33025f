/**
 * Money as fractions of whole numbers, so that products, quotients and sums are
 * exact until they are rounded: in binary 5855.65 × 0.1 is 585.5649999999999,
 * and a tie that must go up goes down.
 *
 * How a number is read: one of up to 15 significant digits (all that a sheet
 * takes) is the decimal that was typed. A longer one was worked out, and its
 * last bits are noise: it is read as the simplest fraction within 2⁻⁴⁹ of it,
 * sixteen roundings' worth, and within a billionth; =1/3 is a third. Where that
 * fraction is so long that it says nothing, the shortest decimal text counts.
 *
 * Accuracy: exact; `toNumber` gives the nearest double.
 * Range: finite numbers.
 */

export const ROUNDING_RULES = ["half away", "half even"] as const;
export type RoundingRule = (typeof ROUNDING_RULES)[number];

/** Digits that a spreadsheet keeps of a number that is typed. */
const TYPED_DIGITS = 15;
/** Noise of what was worked out: a share of it, and never more than this part of a unit. */
const NOISE_BITS = 49n;
const MOST_NOISE = 10n ** 9n;
/** Two fractions with denominators up to q lie 1/q² apart or more; a quarter of that is no chance. */
const APART = 4n;

export class Exact {
  private readonly over: bigint;
  /** More than 0. */
  private readonly under: bigint;

  private constructor(over: bigint, under: bigint) {
    // In lowest terms, or the numbers of a long sum would grow with each of its terms.
    const common = under < 0n ? -divisorOf(over, under) : divisorOf(over, under);
    this.over = over / common;
    this.under = under / common;
  }

  /** Reads a number as described above. */
  static of(value: number): Exact {
    const [mantissa, exponent] = Math.abs(value).toExponential().split("e") as [string, string];
    const digits = mantissa.replace(".", "");
    const power = Number(exponent) - (digits.length - 1);
    const [over, under] =
      power < 0 ? [BigInt(digits), 10n ** BigInt(-power)] : [BigInt(digits) * 10n ** BigInt(power), 1n];
    const [read, by] = (digits.length > TYPED_DIGITS ? simplestNear(over, under) : undefined) ?? [
      over,
      under,
    ];
    return new Exact(value < 0 ? -read : read, by);
  }

  plus(other: Exact): Exact {
    return new Exact(this.over * other.under + other.over * this.under, this.under * other.under);
  }

  minus(other: Exact): Exact {
    return this.plus(new Exact(-other.over, other.under));
  }

  times(other: Exact): Exact {
    return new Exact(this.over * other.over, this.under * other.under);
  }

  /** @param other not 0 */
  dividedBy(other: Exact): Exact {
    return new Exact(this.over * other.under, this.under * other.over);
  }

  isZero(): boolean {
    return this.over === 0n;
  }

  /** The nearest double. */
  toNumber(): number {
    const magnitude = this.over < 0n ? -this.over : this.over;
    const shift = Math.max(0, 64 + bitsOf(this.under) - bitsOf(magnitude));
    const shifted = magnitude << BigInt(shift);
    // Sixty bits and more, the last of which says that there is a rest: enough to round 53 of them right.
    const quotient = shifted / this.under;
    const rest = shifted % this.under === 0n ? 0n : 1n;
    const half = Math.floor(shift / 2);
    const found = Number(quotient | rest) * 2 ** -half * 2 ** (half - shift);
    return this.over < 0n ? -found : found;
  }

  /** @param decimals places kept after the point, 0 or more */
  rounded(decimals: number, rule: RoundingRule): number {
    const magnitude = (this.over < 0n ? -this.over : this.over) * 10n ** BigInt(decimals);
    const kept = magnitude / this.under;
    const twiceRest = 2n * (magnitude % this.under);
    const tieUp = rule === "half away" || kept % 2n === 1n;
    const up = twiceRest > this.under || (twiceRest === this.under && tieUp);
    const found = Number(`${up ? kept + 1n : kept}e-${decimals}`);
    return this.over < 0n && found > 0 ? -found : found;
  }
}

/** The greatest common divisor (Euclid), more than 0. */
function divisorOf(a: bigint, b: bigint): bigint {
  let [one, other] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (other > 0n) [one, other] = [other, one % other];
  return one;
}

const bitsOf = (whole: bigint): number => whole.toString(16).length * 4;

/** The simplest fraction as near to over/under as noise may be; undefined where it says nothing. */
function simplestNear(over: bigint, under: bigint): readonly [bigint, bigint] | undefined {
  // The noise as a fraction, the lesser of the two.
  const [most, per] =
    over * MOST_NOISE > under << NOISE_BITS ? [1n, MOST_NOISE] : [over, under << NOISE_BITS];
  const found = simplestBetween(
    over * per - most * under,
    under * per,
    over * per + most * under,
    under * per,
  );
  return 2n * most * found[1] ** 2n * APART < per ? found : undefined;
}

/** Of the fractions from a/b to c/d, both above 0, that with the least denominator (by continued fractions). */
function simplestBetween(a: bigint, b: bigint, c: bigint, d: bigint): readonly [bigint, bigint] {
  const whole = a / b;
  if (whole * b === a) return [whole, 1n];
  if ((whole + 1n) * d <= c) return [whole + 1n, 1n];
  const [over, under] = simplestBetween(d, c - whole * d, b, a - whole * b);
  return [whole * over + under, over];
}
