/**
 * A mark, a look for cells that show one of a few words, as conditional
 * formats and back. Each word is a rule of its own, "equal to" a quoted text:
 * the kind that every program shows in its list of rules and that depends on
 * no language.
 */
import { treeOf } from "../../formula/parse";
import { quotedText } from "../../formula/print";
import type { CellStyle, ConditionalRule } from "hucre/xlsx";
import { parseRange } from "../../formula/address";
import type { BookMark, Look, OverList } from "../../workbooks/book";
import { filledOver, overListIn } from "../../workbooks/overList";
import { markStyle } from "./cellStyle";
import { fromStoredText, toStoredText } from "./storedText";

export function toConditionalRules(
  marks: readonly BookMark[],
  looks: readonly Look[],
  sheet: string,
): ConditionalRule[] {
  let priority = 0;
  return marks.flatMap(({ range, words, look, overList }) => {
    const style = markStyle(looks[look] ?? {});
    if (overList) {
      priority += 1;
      return [{ type: "expression", formula: filledOver(range, overList), priority, range, style }];
    }
    return words.map((word): ConditionalRule => {
      const text = toStoredText(word, `A mark of ${range} on sheet "${sheet}"`);
      priority += 1;
      return {
        type: "cellIs",
        operator: "equal",
        formula: quotedText(text),
        priority,
        range,
        style,
      };
    });
  });
}

/** @param lookFor gives the book's index for a style */
export function fromConditionalRules(
  rules: readonly ConditionalRule[],
  lookFor: (style: CellStyle) => number | undefined,
): BookMark[] {
  const marks: { range: string; words: string[]; look: number; overList?: OverList }[] = [];
  for (const rule of [...rules].sort((a, b) => a.priority - b.priority)) {
    const text = typeof rule.formula === "string" ? treeOf(rule.formula) : undefined;
    const look = rule.style && lookFor(rule.style);
    if (rule.type === "expression" && look !== undefined) {
      const overList = overListIn(typeof rule.formula === "string" ? rule.formula : "", rule.range);
      if (overList) marks.push({ range: rule.range, words: [], look, overList });
      continue;
    }
    if (rule.type !== "cellIs" || rule.operator !== "equal" || text?.kind !== "text" || look === undefined)
      continue;
    const word = fromStoredText(text.value);
    const last = marks.at(-1);
    if (last && !last.overList && last.range === rule.range && last.look === look) last.words.push(word);
    else marks.push({ range: rule.range, words: [word], look });
  }
  return marks.flatMap(({ range, ...mark }) =>
    range
      .split(/\s+/)
      .filter((one) => parseRange(one))
      .map((one) => ({ range: one, ...mark })),
  );
}
