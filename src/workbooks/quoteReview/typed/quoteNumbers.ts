/** Figures in the cells and lines of a quote, with what stands around them. */
import type { ImportedCell } from "../../imported/table";
import { withoutCurrencies } from "../../prices/currencies";
import { decimalSignOf, readFigure, type DecimalSign } from "../../prices/listNumbers";
import { asFigures } from "../../typed/plainText";
import { UNIT } from "./quoteWords";

export interface Figure {
  readonly value: number;
  readonly isPercent: boolean;
  /** With cents, or with a currency: no count. */
  readonly isMoney: boolean;
  /** Behind it: "m", "h", "pcs"; after a stroke or "per" what it is for. */
  readonly unit?: string;
}

export interface FoundFigure extends Figure {
  readonly from: number;
  readonly to: number;
}

/** No figure of a quote is longer; patterns are not tried on a page of text. */
export const LONGEST_LINE = 400;

/** As in India: 1,54,000.00. */
const BY_TWOS = String.raw`\d{1,2}(?:,\d\d)+,\d{3}(?:\.\d+)?`;
const DIGITS = String.raw`${BY_TWOS}|\d{1,3}(?:[.,']\d{3})+(?:[.,]\d{1,4})?|\d+(?:[.,]\d+)?`;
const GROUPED_BY_BLANKS = String.raw`\d{1,3}(?: \d{3})+(?:[.,]\d{1,2})?|${DIGITS}`;
const ROUND = String.raw`(?:[.,](?:[-–—]{1,2}|=))?`;
const WHOLE_CELL = new RegExp(
  String.raw`^(?:per |pro |je |à |a |@ ?|= ?|x )?(\(|-|\+)? ?(${GROUPED_BY_BLANKS}|[.,]\d+)${ROUND} ?(\)|-(?![\d]))? ?(%|[\p{L}./ ]{0,16})$`,
  "iu",
);
const CURRENCY = /[€£$¥₹]|\b(?:EUR|GBP|USD|CHF|euros?)\b/i;

/** As a number is looked for: one blank between words, one kind of minus. */
export const plainFigures = (text: string): string =>
  asFigures(
    text
      .slice(0, LONGEST_LINE)
      .replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "")
      // Digits of other scripts, with their own signs.
      .replace(/[٠-٩]/g, (digit) => String(digit.charCodeAt(0) - 0x660))
      .replace(/[۰-۹]/g, (digit) => String(digit.charCodeAt(0) - 0x6f0))
      .replace(/٫/g, ".")
      .replace(/٬/g, ",")
      .replace(/(\d*) ?½/g, (_, whole: string) => `${whole || 0}.5`),
  );

/**
 * By most of its figures that can be read in one way only.
 * @returns "." where none tells
 */
export function decimalSignIn(texts: Iterable<string>): DecimalSign | undefined {
  const votes = { ".": 0, ",": 0 };
  for (const text of texts)
    for (const [figure] of plainFigures(text)
      .replace(/\d{1,4}([./-])\d{1,2}\1\d{1,4}/g, " ")
      .matchAll(/(?<![\p{L}\d.,])\d[\d.,']*\d(?![\p{L}\d])/gu)) {
      const sign = decimalSignOf(figure);
      // Cents tell more than a length of 0.9 m.
      if (sign) votes[sign] += /[.,]\d\d$/.test(figure) ? 3 : 1;
    }
  return votes["."] === votes[","] ? undefined : votes["."] > votes[","] ? "." : ",";
}

const IS_BY_TWOS = new RegExp(`^${BY_TWOS}$`);

const valueOf = (digits: string, style: DecimalSign | undefined): number | undefined => {
  if (IS_BY_TWOS.test(digits)) return Number(digits.replace(/,/g, ""));
  const read = readFigure(/^[.,]/.test(digits) ? `0${digits}` : digits, style);
  if (!read) return undefined;
  return "value" in read ? read.value : read.grouped;
};

export type CellFigure = Figure | "formula" | "lost" | undefined;

/** @returns "formula" for one that is text, "lost" for digits that are no number; undefined for words and blanks */
export function figureOf(cell: ImportedCell | undefined, style: DecimalSign | undefined): CellFigure {
  if (cell === undefined || cell === "") return undefined;
  if (typeof cell === "object")
    return {
      value: cell.number,
      isPercent: cell.format?.includes("%") ?? false,
      isMoney: !Number.isInteger(cell.number) || /[€£$]/.test(cell.format ?? ""),
      ...(cell.unit !== undefined && { unit: cell.unit }),
    };
  if (/^[=@]|^\+[A-Z(]/i.test(cell.trim()) && !/^[=@] ?[\d.,-]+/.test(cell.trim())) return "formula";
  const plain = plainFigures(cell);
  if (/\d{16,}/.test(plain)) return "lost";
  const bare = withoutCurrencies(plain).replace(/\s+/g, " ").trim();
  const found = WHOLE_CELL.exec(bare);
  if (!found) return undefined;
  const [, before, digits, after, behind = ""] = found;
  if (after === ")" && before !== "(") return undefined;
  const unit = behind.replace(/^(?:\/|per |pro |je |par |por )/i, "").trim();
  if (unit !== "" && unit !== "%" && !UNIT.test(unit.toLowerCase())) return undefined;
  const value = valueOf(digits!, style);
  if (value === undefined) return "lost";
  const negative = before === "-" || before === "(" || after === "-";
  return {
    value: negative ? 0 - value : value,
    isPercent: unit === "%",
    isMoney: CURRENCY.test(plain) || /[.,]\d\d$/.test(digits!),
    ...(unit !== "" && unit !== "%" && { unit: unit.toLowerCase() }),
  };
}

const NUMERAL = (digits: string): RegExp =>
  new RegExp(
    String.raw`(?<![\p{L}\d.,-]|\d[x×*/])(?<sign>[-+(] ?)?(?:(?:EUR|GBP|USD|CHF|[€£$]) ?)?(?<minus>- ?)?(?<digits>${digits})${ROUND}(?![\d]|[.,]\d)(?<after>-(?![\p{L}\d])|\)?)(?: ?(?:EUR|GBP|USD|CHF|euros?|[€£$])(?![\p{L}]))?(?: ?(?<unit>%|(?:\/ ?)?\p{L}+\.?))?`,
    "giu",
  );
const PLAIN = NUMERAL(DIGITS);
const BLANKS = NUMERAL(GROUPED_BY_BLANKS);
/** Of a part: "6-way", "16-band", "75 ohm", "2x3". */
const OF_A_NAME =
  /^(?:way|ways|band|bands|ohm|db|ghz|mhz|mm|cm|v|volt|w|a|ma|fach|voies|vias|banden|bander|bandes|bandas|user|port|ports|output|outputs|inputs?)\.?$/i;

/** @param byBlanks whether blanks may part thousands */
export function figuresIn(text: string, style: DecimalSign | undefined, byBlanks = false): FoundFigure[] {
  const found: FoundFigure[] = [];
  for (const match of text.matchAll(byBlanks ? BLANKS : PLAIN)) {
    const { sign = "", minus = "", digits, after = "", unit = "" } = match.groups!;
    const value = valueOf(digits!, style);
    const behind = text[match.index + match[0].length - unit.length] ?? "";
    if (value === undefined) continue;
    const named = unit.replace(/^\/ ?/, "").toLowerCase();
    // "6-way" and "50er" are of a name.
    if (/^-\p{L}/u.test(text.slice(match.index + match[0].length)) && unit === "") continue;
    const negative =
      sign.startsWith("-") || minus !== "" || after === "-" || (sign.startsWith("(") && after === ")");
    const isUnit = unit === "%" || UNIT.test(named) || OF_A_NAME.test(named) || behind === "/";
    found.push({
      value: negative ? 0 - value : value,
      isPercent: unit === "%",
      isMoney: CURRENCY.test(match[0]) || /[.,]\d\d$/.test(digits!) || /[.,](?:[-–—]|=)/.test(match[0]),
      ...(isUnit && unit !== "%" && { unit: named }),
      from: match.index,
      to: match.index + match[0].length - (isUnit ? 0 : unit.length),
    });
  }
  return found;
}

/** A figure that says what a part is, not how many or how dear. */
export const isOfAName = ({ unit }: Figure): boolean => unit !== undefined && OF_A_NAME.test(unit);
