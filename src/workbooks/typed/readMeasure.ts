/** A number, alone or with its unit, in the unit of its column. */
import { feetAndInches, metresAndCentimetres } from "./compoundLength";
import { hoursAndMinutes } from "./hoursAndMinutes";
import { asFigures } from "./plainText";
import { readNumeral, type Numeral } from "./readNumeral";
import type { Reading, TypedContext } from "./reading";
import { sentences } from "./sentences";
import type { NumberKind } from "./typedKind";
import { converterFor, fromMetresInto, storedUnit } from "./units";
import { withinLimits } from "./withinLimits";

/** The numeral; behind it a unit, which begins with a letter or a sign of its own. */
const PARTS = /^([+-]? ?[\d.,](?:[\d.,' /]*[\d.,])?) ?([^\d .,/][^]*)?$/;

export function readMeasure(text: string, kind: NumberKind, context: TypedContext): Reading<number> {
  const unit = storedUnit(kind, context.lengths);
  const notTaken = { refused: sentences.notTaken(text, kind, unit) };
  const plain = asFigures(text);
  const compound = compoundOf(plain, kind, unit);
  if (compound !== undefined) {
    return Number.isNaN(compound) ? notTaken : withinLimits(text, compound, kind, unit);
  }
  const [, figures, behind] = PARTS.exec(plain) ?? [];
  if (figures === undefined) return notTaken;
  const convert =
    behind === undefined ? (value: number) => value : converterFor(kind, behind, context.lengths);
  if (!convert) return notTaken;
  const numeral = readNumeral(figures, {
    context,
    apostrophes: kind.quantity !== "length",
    mixed: true,
    fractions: kind.quantity === "length",
  });
  if (!numeral) return notTaken;
  const value = theOneOf(numeral, convert, kind);
  if (value !== undefined) return withinLimits(text, value, kind, unit);
  const { grouped, decimal } = numeral as Exclude<Numeral, { readonly value: number }>;
  const tail = behind === undefined ? "" : ` ${behind}`;
  const shown = String(decimal).replace(".", context.writing?.decimal ?? ".");
  return { refused: sentences.twoNumbers(text, `${grouped}${tail}`, `${shown}${tail}`) };
}

/** Written with two units or more; not a number where it begins so and goes on wrongly. */
function compoundOf(plain: string, { quantity }: NumberKind, unit: string | undefined): number | undefined {
  if (quantity === "minutes") return hoursAndMinutes(plain);
  if (quantity !== "length") return undefined;
  const metres = feetAndInches(plain) ?? metresAndCentimetres(plain);
  return metres === undefined ? undefined : fromMetresInto(unit, metres);
}

/** Degrees that a circle has. */
const CIRCLE = 360;

/** One of two readings is none if what the column asks for cannot be so at all. */
function theOneOf(
  numeral: Numeral,
  convert: (value: number) => number,
  kind: NumberKind,
): number | undefined {
  if ("value" in numeral) return convert(numeral.value);
  const [grouped, decimal] = [convert(numeral.grouped), convert(numeral.decimal)];
  if (kind.integer && !Number.isInteger(decimal)) return grouped;
  if (kind.quantity === "angle" && Math.abs(grouped) > CIRCLE) return decimal;
  // Only a foreign list would part thousands so: a number that the column never holds is not read into it.
  if (numeral.foreign && (grouped > (kind.max ?? Infinity) || grouped < (kind.min ?? -Infinity)))
    return decimal;
  return undefined;
}
