/**
 * How a supplier writes numbers, judged by the whole column: one cell that can be read in one way only settles
 * the others. What stays open, or is written in both ways in one column, is asked.
 */
import { readNumeral } from "../typed/readNumeral";
import type { Writing } from "../typed/writing";
import { asFigures } from "../typed/plainText";

export type DecimalSign = "." | ",";
/** Undefined: no cell tells. "mixed": cells tell different things. */
export type ColumnStyle = DecimalSign | "mixed" | undefined;

/** Signs that can be nothing but decimal signs: a leading nought, other than three digits behind, four and more before. */
const DECIMAL = /^[+-]?(?:(?:0|\d{4,})?([.,])\d+|\d{1,3}([.,])(?:\d{1,2}|\d{4,}))$/;
/** Both signs, or the same one twice. */
const BOTH = /^[+-]?\d{1,3}(?:([.,' ])\d{3})+([.,])\d+$/;
const TWICE = /^[+-]?\d{1,3}(?:([.,])\d{3}){2,}$/;

/** @param figure as `asFigures` gives it, without currency and unit */
export function decimalSignOf(figure: string): DecimalSign | undefined {
  const decimal = DECIMAL.exec(figure);
  if (decimal) return (decimal[1] ?? decimal[2]) as DecimalSign;
  const both = BOTH.exec(figure);
  if (both && both[1] !== both[2]) return both[2] as DecimalSign;
  const twice = TWICE.exec(figure);
  return twice ? (twice[1] === "." ? "," : ".") : undefined;
}

export function columnStyle(figures: Iterable<string>): ColumnStyle {
  const signs = new Set<DecimalSign>();
  for (const figure of figures) {
    const sign = decimalSignOf(figure);
    if (sign) signs.add(sign);
  }
  if (signs.size > 1) return "mixed";
  return [...signs][0];
}

const WRITINGS: Readonly<Record<DecimalSign, Writing>> = {
  ".": { label: "", tag: "", decimal: ".", group: ",", points: false },
  ",": { label: "", tag: "", decimal: ",", group: ".", points: false },
};

export type ReadFigure =
  | { readonly value: number }
  /** Thousands or decimals: nothing says which. */
  | { readonly grouped: number; readonly decimal: number }
  | undefined;

/** @param style of the column, where it tells */
export function readFigure(text: string, style: ColumnStyle): ReadFigure {
  const figure = asFigures(text);
  const sure = style === "." || style === ",";
  const numeral = readNumeral(figure, {
    context: sure ? { writing: WRITINGS[style] } : { mixedSigns: true },
    apostrophes: true,
  });
  if (!numeral || "value" in numeral) return numeral;
  // The other sign than the column's decimals stands between thousands.
  return sure ? { value: numeral.grouped } : { grouped: numeral.grouped, decimal: numeral.decimal };
}
