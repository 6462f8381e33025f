/** The rules for what may be typed, as the format's data validations, and back. */
import { literalOf } from "../../formula/literalOf";
import { treeOf } from "../../formula/parse";
import { functionName } from "../../formula/storedNames";
import type { DataValidation } from "hucre/xlsx";
import { parseRange } from "../../formula/address";
import type { BookValidation } from "../../workbooks/book";
import { stop, troubles } from "./fileTrouble";
import { MAX_CHOICES_TEXT, MAX_PROMPT, MAX_PROMPT_TITLE } from "./limits";
import { numberOrWord, numberOrWordIn } from "../../workbooks/numberOrWord";
import { cutText, fromStoredText, toStoredText } from "./storedText";

/** Stands for a limit that is not given, where the format wants one. */
const NO_LIMIT = 9.99e307;

type Limits = Pick<DataValidation, "operator" | "formula1" | "formula2">;

type NumberRule = Extract<BookValidation["rule"], { kind: "number" }>;

/** A number as a formula writes it. */
const literal = (value: number): string => String(value).toUpperCase();

function limits(min: number | undefined, max: number | undefined): Limits {
  if (min !== undefined && max !== undefined) {
    return { operator: "between", formula1: literal(min), formula2: literal(max) };
  }
  return max === undefined
    ? { operator: "greaterThanOrEqual", formula1: literal(min ?? -NO_LIMIT) }
    : { operator: "lessThanOrEqual", formula1: literal(max) };
}

/** A limit that another cell sets as well; MIN and MAX pass over a blank one. */
function limitsOf({ min, max, atLeast, atMost }: NumberRule): Limits {
  const plain = limits(min, max);
  if (plain.operator !== "between") return plain;
  return {
    ...plain,
    ...(atLeast && { formula1: `MAX(${plain.formula1},${atLeast})` }),
    ...(atMost && { formula2: `MIN(${plain.formula2},${atMost})` }),
  };
}

export function toDataValidation(validation: BookValidation, sheet: string): DataValidation {
  const { rule, range } = validation;
  const where = `The validation of ${range} on sheet "${sheet}"`;
  const text = (value: string, most: number): string => toStoredText(cutText(value, most), where);
  const common = {
    range,
    allowBlank: true,
    showErrorMessage: true,
    errorStyle: validation.warnOnly ? ("warning" as const) : ("stop" as const),
    ...((validation.prompt || validation.promptTitle) && { showInputMessage: true }),
    ...(validation.promptTitle && { inputTitle: text(validation.promptTitle, MAX_PROMPT_TITLE) }),
    ...(validation.prompt && { inputMessage: text(validation.prompt, MAX_PROMPT) }),
    ...(validation.refusal && { errorMessage: text(validation.refusal, MAX_PROMPT) }),
  };
  switch (rule.kind) {
    case "number":
      return rule.orWords
        ? { ...common, type: "custom", formula1: numberOrWord(rule, range) }
        : { ...common, type: rule.integer ? "whole" : "decimal", ...limitsOf(rule) };
    case "date":
      return { ...common, type: "date", ...limits(rule.min, rule.max) };
    case "text":
      return { ...common, type: "textLength", operator: "lessThanOrEqual", formula1: String(rule.maxLength) };
    case "named":
      return { ...common, type: "list", formula1: rule.name };
    case "choice": {
      // Excel parts such a list at its commas and trims the choices, so these can't hold either.
      const bad = rule.choices.some(
        (choice) => choice.includes(",") || choice !== choice.trim() || choice === "",
      );
      if (bad || rule.choices.length === 0 || rule.choices.join(",").length > MAX_CHOICES_TEXT) {
        stop(troubles.badChoices(`${range} on sheet "${sheet}"`));
      }
      const values = rule.choices.map((choice) => toStoredText(choice, where).replace(/"/g, '""'));
      return { ...common, type: "list", values };
    }
  }
}

/** A validation for each range of the format's; none for a kind that a book does not know. */
export function fromDataValidation(stored: DataValidation): BookValidation[] {
  const rule = ruleOf(stored);
  if (!rule) return [];
  const { inputTitle, inputMessage, errorMessage } = stored;
  return stored.range
    .split(/\s+/)
    .filter((range) => parseRange(range))
    .map((range) => ({
      range,
      rule,
      ...(inputTitle && { promptTitle: fromStoredText(inputTitle) }),
      ...(inputMessage && { prompt: fromStoredText(inputMessage) }),
      ...(errorMessage && { refusal: fromStoredText(errorMessage) }),
      ...((stored.errorStyle === "warning" || stored.errorStyle === "information") && { warnOnly: true }),
    }));
}

function ruleOf(stored: DataValidation): BookValidation["rule"] | undefined {
  const { type, formula1 } = stored;
  const span = spanOf(stored);
  switch (type) {
    case "whole":
      return span && { kind: "number", ...span, integer: true };
    case "decimal":
      return span && { kind: "number", ...span };
    case "custom":
      return numberOrWordIn(formula1);
    case "date":
      return span && { kind: "date", ...numbersOf(span) };
    case "textLength":
      return span?.max === undefined ? undefined : { kind: "text", maxLength: span.max };
    case "list":
      if (stored.values) {
        const choices = stored.values.map((value) => fromStoredText(value.replace(/""/g, '"')).trim());
        return { kind: "choice", choices };
      }
      return namedList(formula1);
    default:
      return undefined;
  }
}

type Span = Pick<NumberRule, "min" | "max" | "atLeast" | "atMost">;

const numbersOf = ({ min, max }: Span): Pick<Span, "min" | "max"> => ({
  ...(min !== undefined && { min }),
  ...(max !== undefined && { max }),
});

/** Numbers, and those that a named cell narrows: any other formula is no rule of a book. */
function spanOf({ operator, formula1, formula2 }: DataValidation): Span | undefined {
  const { limit: first, beside: atLeast } = limitIn(formula1);
  if (first === undefined) return undefined;
  switch (operator ?? "between") {
    case "between": {
      const { limit: second, beside: atMost } = limitIn(formula2);
      if (second === undefined) return undefined;
      return { min: first, max: second, ...(atLeast && { atLeast }), ...(atMost && { atMost }) };
    }
    case "greaterThanOrEqual":
      return first <= -NO_LIMIT ? {} : { min: first };
    case "lessThanOrEqual":
      return { max: first };
    default:
      return undefined;
  }
}

/** A limit, and the named cell that narrows it: `MAX(1,site_least)`. */
function limitIn(formula: string | undefined): { limit?: number; beside?: string } {
  const tree = formula === undefined ? undefined : treeOf(formula);
  const name = tree?.kind === "call" ? functionName(tree.name) : undefined;
  const narrowed = tree?.kind === "call" && (name === "MIN" || name === "MAX") ? tree.args : [];
  const [own = tree, beside] = narrowed;
  const limit = own && literalOf(own);
  if (typeof limit !== "number" || !Number.isFinite(limit)) return {};
  if (narrowed.length === 0) return { limit };
  return narrowed.length === 2 && beside!.kind === "name" && beside!.sheet === undefined
    ? { limit, beside: beside!.name }
    : {};
}

/** The choices lie in a named range. */
function namedList(formula: string | undefined): BookValidation["rule"] | undefined {
  const tree = formula === undefined ? undefined : treeOf(formula);
  return tree?.kind === "name" && tree.sheet === undefined ? { kind: "named", name: tree.name } : undefined;
}
