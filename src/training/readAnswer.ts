/**
 * What a trainee typed into an answer cell, as people type: a number, text with
 * a decimal comma, a unit behind it, a percentage that the program turned into a share.
 */
import type { AnswerKind } from "./exercise";

export type ReadAnswer =
  | { readonly kind: "blank" }
  /** Ways to read it, the likeliest first. */
  | { readonly kind: "number"; readonly readings: readonly number[]; readonly unit?: string }
  | { readonly kind: "word"; readonly word: string }
  | { readonly kind: "unclear"; readonly text: string };

/** A number, its unit behind it; blanks and apostrophes part thousands. */
const TYPED = /^(?:[=≈~]\s*)?([+-]?)(\d[\d\s'’.,]*?|[.,]\d+)(e[+-]?\d+)?\s*([\p{L}°%\p{Sc}][^\d]*)?$/iu;

/** Ways to write a unit, by what is asked; money may bear any sign. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  deg: ["°", "degree", "degrees", "deg."],
  m: ["metre", "metres", "meter", "meters"],
  dB: ["db"],
  dBµV: ["dbµv", "dbμv", "dbuv"],
  ohm: ["ohms", "ω", "Ω"],
  V: ["v", "volt", "volts"],
  "%": ["percent", "per cent"],
};
/** Units that say something else was answered. */
const UNITS = [
  "deg",
  "rad",
  "m",
  "ft",
  "feet",
  "mm",
  "cm",
  "km",
  "db",
  "dbm",
  "dbmv",
  "dbµv",
  "v",
  "mv",
  "a",
  "ma",
  "w",
  "ohm",
  "%",
];

/** @param raw the cell's value; `undefined` for an empty one */
export function readAnswer(answer: AnswerKind, raw: unknown): ReadAnswer {
  if (raw === undefined || raw === null || (typeof raw === "string" && raw.trim() === ""))
    return { kind: "blank" };
  if (answer.kind === "choice") return { kind: "word", word: String(raw).trim() };
  if (typeof raw === "number") return { kind: "number", readings: withShare(answer.unit, [raw]) };
  if (typeof raw !== "string") return { kind: "unclear", text: "an error or no number" };
  const found = TYPED.exec(raw.trim().replace(/[−–]/g, "-"));
  if (!found) return { kind: "unclear", text: raw };
  const [, sign, digits, exponent = "", behind = ""] = found;
  const readings = readingsOf(digits!).map((text) => Number(`${sign}${text}${exponent}`));
  if (readings.length === 0 || readings.some(Number.isNaN)) return { kind: "unclear", text: raw };
  const unit = otherUnit(answer.unit, behind.trim());
  return { kind: "number", readings: withShare(answer.unit, readings), ...(unit !== undefined && { unit }) };
}

/** A cell that shows 21.1 % holds 0.211. */
const withShare = (unit: string, readings: readonly number[]): number[] =>
  unit === "%"
    ? readings.flatMap((value) => (Math.abs(value) <= 1 ? [value, value * 100] : [value]))
    : [...readings];

/** The digits with a decimal point; two ways where a single mark with three digits behind it can be either. */
function readingsOf(typed: string): string[] {
  const plain = typed.replace(/[\s'’]/g, "");
  const marks = [...plain.matchAll(/[.,]/g)].map(([mark]) => mark);
  const kinds = new Set(marks);
  if (marks.length === 0) return [plain];
  if (kinds.size === 2) {
    const decimal = marks.at(-1)!;
    if (marks.filter((mark) => mark === decimal).length > 1) return [];
    const thousands = decimal === "." ? /,/g : /\./g;
    return [plain.replace(thousands, "").replace(decimal, ".")];
  }
  if (marks.length > 1) return [plain.replace(/[.,]/g, "")];
  const asDecimal = plain.replace(",", ".");
  return /^\d{1,3},\d{3}$/.test(plain) ? [asDecimal, plain.replace(",", "")] : [asDecimal];
}

/** @returns the unit that was typed where it is known and not the one asked for */
function otherUnit(asked: string, typed: string): string | undefined {
  const key = typed.toLowerCase().replace("μ", "µ");
  if (key === "" || asked === "money") return undefined;
  if (key === asked.toLowerCase() || SAME[asked]?.includes(key)) return undefined;
  return UNITS.includes(key) ? typed : undefined;
}
