/**
 * Reads digits with their signs. Whether a point or a comma is a decimal sign or stands between thousands is
 * told by the numeral itself wherever it can be (two signs, other than three digits behind it, a leading nought);
 * by the document's way of writing where the sign is its decimal sign; and else it is two numbers.
 */
import type { TypedContext } from "./reading";

export type Numeral =
  | { readonly value: number }
  /** Two readings: as thousands, and as decimals. */
  | {
      readonly grouped: number;
      readonly decimal: number;
      /** The sign is none of the document's own: only a foreign list would group so. */
      readonly foreign: boolean;
    };

export interface NumeralRules {
  readonly context: TypedContext;
  /** An apostrophe may part thousands: not where it marks feet. */
  readonly apostrophes?: boolean;
  /** `9 1/2`. */
  readonly mixed?: boolean;
  /** `1/2` alone. */
  readonly fractions?: boolean;
}

/** What is assumed until somebody chooses: the signs in which the sheets themselves show numbers. */
const USUAL = { decimal: ".", group: "," } as const;
const NONE = { decimal: "", group: "" } as const;

const SIGN = /^([+-]?) ?(.*)$/s;
const BY_BLANKS = /^\d{1,3}(?: \d{3})+([.,]\d+)?$/;
const BY_APOSTROPHES = /^\d{1,3}(?:'\d{3})+([.,]\d+)?$/;
const BOTH = /^\d{1,3}(?:,\d{3})+\.\d+$|^\d{1,3}(?:\.\d{3})+,\d+$/;
const GROUPS = /^[1-9]\d{0,2}(?:(?:,\d{3}){2,}|(?:\.\d{3}){2,})$/;
const ONE = /^(\d*)([.,])(\d*)$/;
const FRACTION = /^(?:(\d+) )?(\d+)\/(\d+)$/;
/** As rules and tape measures have them. */
const DENOMINATORS: readonly number[] = [2, 3, 4, 8, 16, 32];
/** Digits beyond these would be lost. */
const EXACT_DIGITS = 15;

/**
 * @param text as `asFigures` gives it
 * @returns undefined for what is no numeral
 */
export function readNumeral(text: string, rules: NumeralRules): Numeral | undefined {
  const [, sign, digits] = SIGN.exec(text)!;
  if (digits!.replace(/\D/g, "").replace(/^0+/, "").length > EXACT_DIGITS) return undefined;
  const found = unsigned(digits!, rules);
  if (!found || sign !== "-") return found;
  return "value" in found
    ? { value: 0 - found.value }
    : { ...found, grouped: -found.grouped, decimal: -found.decimal };
}

function unsigned(
  text: string,
  { context, apostrophes, mixed, fractions }: NumeralRules,
): Numeral | undefined {
  if (/^\d+$/.test(text)) return { value: Number(text) };
  if (BY_BLANKS.test(text) || (apostrophes && BY_APOSTROPHES.test(text)))
    return { value: Number(text.replace(/[ ']/g, "").replace(",", ".")) };
  if (BOTH.test(text)) {
    const decimal = text.includes(".") && text.lastIndexOf(".") > text.lastIndexOf(",") ? "." : ",";
    return { value: Number(text.replace(decimal === "." ? /,/g : /\./g, "").replace(",", ".")) };
  }
  if (GROUPS.test(text)) return { value: Number(text.replace(/[.,]/g, "")) };
  const fraction = mixed || fractions ? fractionOf(text, mixed ?? false, fractions ?? false) : undefined;
  if (fraction !== undefined) return { value: fraction };
  const one = ONE.exec(text);
  if (!one || text.length === 1) return undefined;
  const [, before, sign, behind] = one;
  const decimal = Number(`${before || "0"}.${behind || "0"}`);
  const maybeGroups = behind!.length === 3 && /^[1-9]\d{0,2}$/.test(before!);
  const own = context.mixedSigns ? NONE : (context.writing ?? USUAL);
  if (!maybeGroups || sign === own.decimal) return { value: decimal };
  return { grouped: Number(before! + behind!), decimal, foreign: sign !== own.group };
}

function fractionOf(text: string, mixed: boolean, alone: boolean): number | undefined {
  const found = FRACTION.exec(text);
  if (!found) return undefined;
  const [whole, over, under] = found.slice(1).map((part) => (part === undefined ? undefined : Number(part)));
  const proper =
    over! > 0 && over! < under! && DENOMINATORS.includes(under!) && (over! % 2 === 1 || under === 3);
  if (!proper || (whole === undefined ? !alone : !mixed)) return undefined;
  return (whole ?? 0) + over! / under!;
}
