/** A definition's rule for an input as the book's rule, with the words that ask for it. */
import type { BookValidation } from "./book";
import type { InputRule } from "./definition";

const DATE_MIN = 36_526; // 2000-01-01
const DATE_MAX = 73_050; // 2099-12-31
const TEXT_MAX = 250;

export function validationOf(input: InputRule, unit: string | undefined, range: string): BookValidation {
  const { rule } = input;
  const tail = [
    unit && `Unit: ${unit}.`,
    limitsOf(rule),
    input.example && `Example: ${input.example}.`,
  ].filter(Boolean);
  return {
    range,
    rule:
      rule.kind === "date"
        ? { kind: "date", min: DATE_MIN, max: DATE_MAX }
        : rule.kind === "text" || rule.kind === "slot"
          ? { kind: "text", maxLength: TEXT_MAX }
          : rule,
    promptTitle: "input",
    prompt: `${input.what}. ${tail.join(" ")}`.trim(),
    refusal: `${input.what}. ${tail.join(" ")}`.trim(),
    // A name that is not on its list yet may be typed first and added to Parts afterwards.
    warnOnly: rule.kind === "named" ? true : undefined,
  };
}

function limitsOf(rule: InputRule["rule"]): string | undefined {
  if (rule.kind === "choice") return `One of: ${rule.choices.join(", ")}.`;
  if (rule.kind !== "number") return undefined;
  const whole = rule.integer ? "A whole number" : "A number";
  if (rule.min !== undefined && rule.max !== undefined) return `${whole} from ${rule.min} to ${rule.max}.`;
  if (rule.min !== undefined) return `${whole}, ${rule.min} or more.`;
  return `${whole}.`;
}
