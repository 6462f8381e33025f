/** A definition's rule for an input as the book's rule, with the words that ask for it. */
import type { BookValidation } from "./book";
import type { Format, InputRule } from "./definition";
import { DATES, LONGEST_TEXT, type Asked } from "./typed/typedKind";
import { percent } from "./typed/withinLimits";

/** Excel shows no more of a title. */
const LONGEST_TITLE = 32;

/** Cut between words. */
function inShort(label: string): string {
  if (label.length <= LONGEST_TITLE) return label;
  const words = label.slice(0, LONGEST_TITLE).split(" ").slice(0, -1).join(" ");
  return `${words.replace(/,$/, "")}…`;
}

/**
 * @param label what the cell or its column is called
 * @param asked the column or field: what it asks for, in which unit and shown how
 */
export function validationOf(label: string, { input, unit, format }: Asked, range: string): BookValidation {
  const { what, example, rule } = input!;
  const tail = [unit && `Unit: ${unit}.`, limitsOf(rule, format), example && `Example: ${example}.`].filter(
    Boolean,
  );
  return {
    range,
    rule: heldIn(rule),
    promptTitle: inShort(label),
    prompt: `${what}. ${tail.join(" ")}`.trim(),
    refusal: `${what}. ${tail.join(" ")}`.trim(),
    // A name that is not on its list yet may be typed first and added to Parts afterwards.
    warnOnly: rule.kind === "named" ? true : undefined,
  };
}

function limitsOf(rule: InputRule["rule"], format: Format | undefined): string | undefined {
  if (rule.kind === "choice") return `One of: ${rule.choices.join(", ")}.`;
  if (rule.kind !== "number") return undefined;
  // A bare 0.2 could be two thousandths: shares are asked for as they are typed.
  if (format === "percent" && rule.min !== undefined && rule.max !== undefined)
    return `From ${percent(rule.min)} to ${percent(rule.max)}.`;
  const whole = rule.integer ? "A whole number" : "A number";
  const beside =
    (rule.atLeast ? `, above ${rule.atLeast.words}` : "") +
    (rule.atMost ? `, below ${rule.atMost.words}` : "") +
    (rule.orWords ?? []).map((word) => `, or “${word}”`).join("");
  if (rule.min !== undefined && rule.max !== undefined)
    return `${whole} from ${rule.min} to ${rule.max}${beside}.`;
  if (rule.min !== undefined) return `${whole}, ${rule.min} or more${beside}.`;
  return `${whole}${beside}.`;
}

function heldIn(rule: InputRule["rule"]): BookValidation["rule"] {
  if (rule.kind === "date") return { kind: "date", ...DATES };
  if (rule.kind === "text" || rule.kind === "slot") return { kind: "text", maxLength: LONGEST_TEXT };
  if (rule.kind !== "number") return rule;
  const { atLeast, atMost, ...limits } = rule;
  return {
    ...limits,
    ...(atLeast && { atLeast: atLeast.name }),
    ...(atMost && { atMost: atMost.name }),
  };
}
