/** Rules and prompts of input cells, and marks on verdicts, as Excel has them. */
import { quotedText } from "../../formula/print";
import type { BookSheet, BookValidation, Look } from "../../workbooks/book";
import { numberOrWord } from "../../workbooks/numberOrWord";
import { isoDate } from "../../workbooks/sheetDate";

/** Texts of a rule (Excel specifications and limits). */
const LONGEST_TITLE = 32;
const LONGEST_MESSAGE = 255;

export function addInputRules(target: Excel.Worksheet, { validations }: BookSheet): void {
  for (const validation of validations) {
    const rule = ruleOf(validation);
    const { dataValidation } = target.getRange(validation.range);
    if (rule) {
      dataValidation.rule = rule;
      dataValidation.errorAlert = {
        showAlert: true,
        style: validation.warnOnly ? "Warning" : "Stop",
        title: (validation.promptTitle ?? "input").slice(0, LONGEST_TITLE),
        message: (validation.refusal ?? "").slice(0, LONGEST_MESSAGE),
      };
    }
    if (validation.prompt) {
      dataValidation.prompt = {
        showPrompt: true,
        title: (validation.promptTitle ?? "input").slice(0, LONGEST_TITLE),
        message: validation.prompt.slice(0, LONGEST_MESSAGE),
      };
    }
  }
}

/** @returns nothing for a rule that sets no limit */
function ruleOf({ rule, range }: BookValidation): Excel.DataValidationRule | undefined {
  switch (rule.kind) {
    case "number": {
      if (rule.orWords) return { custom: { formula: `=${numberOrWord(rule, range)}` } };
      const span = spanOf(rule);
      if (!span) return undefined;
      return rule.integer ? { wholeNumber: span } : { decimal: span };
    }
    case "date": {
      const { min, max } = rule;
      if (min === undefined || max === undefined) return undefined;
      return { date: { formula1: isoDate(min), formula2: isoDate(max), operator: "Between" } };
    }
    case "choice":
      return { list: { inCellDropDown: true, source: rule.choices.join(",") } };
    case "named":
      return { list: { inCellDropDown: true, source: `=${rule.name}` } };
    case "text":
      return { textLength: { formula1: rule.maxLength, operator: "LessThanOrEqualTo" } };
  }
}

function spanOf({
  min,
  max,
  atLeast,
  atMost,
}: Extract<BookValidation["rule"], { kind: "number" }>): Excel.BasicDataValidation | undefined {
  if (min !== undefined && max !== undefined)
    return {
      formula1: atLeast ? `=MAX(${min},${atLeast})` : min,
      formula2: atMost ? `=MIN(${max},${atMost})` : max,
      operator: "Between",
    };
  if (min !== undefined) return { formula1: min, operator: "GreaterThanOrEqualTo" };
  return max === undefined ? undefined : { formula1: max, operator: "LessThanOrEqualTo" };
}

/** One rule for each word, "equal to" a quoted text: it depends on no language and on no active cell. */
export function addMarks(target: Excel.Worksheet, { marks }: BookSheet, looks: readonly Look[]): void {
  for (const { range, words, look } of marks) {
    const { bold, italic, color, fill } = looks[look] ?? {};
    for (const word of words) {
      const { cellValue } = target.getRange(range).conditionalFormats.add("CellValue");
      cellValue.rule = { formula1: `=${quotedText(word)}`, operator: "EqualTo" };
      if (bold) cellValue.format.font.bold = true;
      if (italic) cellValue.format.font.italic = true;
      if (color !== undefined) cellValue.format.font.color = `#${color}`;
      if (fill !== undefined) cellValue.format.fill.color = `#${fill}`;
    }
  }
}
