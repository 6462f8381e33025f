/**
 * A share, typed as a percentage: `20%`, `20 %` and a bare `20` are a fifth. A bare number between 0 and 1 is
 * refused: people who know spreadsheets mean a fifth by 0.2, and people who read the column mean two thousandths.
 */
import { asFigures } from "./plainText";
import { readNumeral } from "./readNumeral";
import type { Reading, TypedContext } from "./reading";
import { sentences } from "./sentences";
import type { NumberKind } from "./typedKind";
import { percent, withinLimits } from "./withinLimits";

const SIGN = / ?(?:%|per ?cent|pct|prozent|pour ?cent|procent)$/i;

export function readShare(text: string, kind: NumberKind, context: TypedContext): Reading<number> {
  const plain = asFigures(text);
  const figures = plain.replace(SIGN, "");
  const numeral = readNumeral(figures, { context, mixed: figures !== plain });
  if (!numeral) return { refused: sentences.notTaken(text, kind, undefined) };
  if (!("value" in numeral)) {
    const sign = context.writing?.decimal ?? ".";
    return {
      refused: sentences.twoNumbers(
        text,
        `${numeral.grouped}%`,
        `${String(numeral.decimal).replace(".", sign)}%`,
      ),
    };
  }
  const { value } = numeral;
  if (figures === plain && Math.abs(value) > 0 && Math.abs(value) < 1)
    return { refused: sentences.bareShare(text, percent(value), percent(value / 100)) };
  return withinLimits(text, Number((value / 100).toPrecision(15)), kind, undefined);
}
