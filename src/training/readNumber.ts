/**
 * The number in what somebody typed: "15,5", "about 15.5 dB", "2+3 = 140.7",
 * "1 234,50 €". One number is read, or none: of two, of a range and of a word
 * that turns the meaning round the trainer must judge.
 */
export interface TypedNumber {
  /** Ways to read it, the likeliest first. */
  readonly readings: readonly number[];
  /** What stands behind it: a unit, a remark. */
  readonly behind: string;
  /** Letters touch the digits. */
  readonly attached: boolean;
}

const LEADING =
  /^(?:[=≈~]|about\b|approx(?:imately|\.)?|ca\.|circa\b|roughly\b|answer\s*\d*\s*:|[\p{L} ]{1,20}:)\s*/iu;
/** Brackets without a figure in them, and what says where a rounded number came from. */
const REMARKS = [/\([^\d()]*\)\s*$/, /\s+rounded from\s.*$/i, /\s*±\s*[\d.,]+\s*\S{0,4}$/, /\s*[?!]+$/];
/** The last of several steps is the answer. */
const STEP = /(?:=|->|→|⇒)/;
const NUMBER =
  /^(?<currency>\p{Sc}\s*)?(?<sign>[+-]?)\s*(?<digits>\d[\d .,'’]*?|[.,]\d+)(?<exponent>e[+-]?\d+)?(?<gap>\s*)(?<behind>[\p{L}°%\p{Sc}(][^\d]*)?$/iu;

/** @returns undefined where there is no number, or more than one */
export function readNumber(text: string): TypedNumber | undefined {
  let rest = plain(text);
  for (const remark of REMARKS) rest = rest.replace(remark, "").trim();
  if (STEP.test(rest)) rest = rest.split(STEP).at(-1)!.trim();
  rest = rest.replace(LEADING, "").replace(/^minus\s+(?=\d)/i, "-");
  // A full stop that ends the sentence.
  rest = rest.replace(/(?<=[\d\p{L}])\.$/u, "").trim();
  const found = NUMBER.exec(rest)?.groups;
  if (!found) return undefined;
  const { sign, digits, exponent = "", gap, behind = "" } = found as Record<string, string>;
  const money = found.currency !== undefined || /\p{Sc}|^money\b/u.test(behind);
  const readings = readingsOf(digits!.trim(), money).map((one) => Number(`${sign}${one}${exponent}`));
  if (readings.length === 0 || readings.some(Number.isNaN)) return undefined;
  return { readings, behind: behind.trim(), attached: gap === "" && /^\p{L}/u.test(behind) };
}

/** Digits of any script and width, one kind of minus, blank, quotation mark and decimal mark. */
const plain = (text: string): string =>
  [...text]
    .map((letter) => (/\p{Nd}/u.test(letter) ? String(digitOf(letter)) : letter))
    .join("")
    .replace(/[−–﹣－]/g, "-")
    .replace(/[\u00a0\u2007\u2009\u202f]/g, " ")
    .replace(/[．٫]/g, ".")
    .replace(/(?<=\d)·(?=\d+$)/, ".")
    .trim()
    .replace(/^['"“”‘’]+|['"“”‘’]+$/g, "")
    .trim();

/** Digits of a script stand in a row of ten; a few rows touch, as those of bold and hollow ones. */
function digitOf(letter: string): number {
  const code = letter.codePointAt(0)!;
  let first = code;
  while (/\p{Nd}/u.test(String.fromCodePoint(first - 1))) first--;
  return (code - first) % 10;
}

const THOUSANDS = /^\d{1,3}(?:[ '’]\d{3})+(?:[.,]\d+)?$/;

/** The digits with a decimal point; two ways where a single mark with three digits behind it can be either. */
function readingsOf(typed: string, money: boolean): string[] {
  if (/[ '’]/.test(typed) && !THOUSANDS.test(typed)) return [];
  const digits = typed.replace(/[ '’]/g, "");
  const marks = [...digits.matchAll(/[.,]/g)].map(([mark]) => mark);
  const kinds = new Set(marks);
  if (marks.length === 0) return [digits];
  if (/[.,]{2}/.test(digits) || /[.,]$/.test(digits)) return [];
  if (kinds.size === 2) {
    const decimal = marks.at(-1)!;
    if (marks.filter((mark) => mark === decimal).length > 1) return [];
    const thousands = decimal === "." ? /,/g : /\./g;
    return [digits.replace(thousands, "").replace(decimal, ".")];
  }
  if (marks.length > 1) return /^\d{1,3}(?:[.,]\d{3})+$/.test(digits) ? [digits.replace(/[.,]/g, "")] : [];
  const asDecimal = digits.replace(",", ".");
  const either = money ? /^\d{1,3}[.,]\d{3}$/ : /^\d{1,3},\d{3}$/;
  return either.test(digits) ? [asDecimal, digits.replace(/[.,]/, "")] : [asDecimal];
}
