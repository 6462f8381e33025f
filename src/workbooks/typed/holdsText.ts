import { slotName } from "../../engine/sightline/slotName";
import type { BookValidation } from "../book";
import type { InputRule } from "../definition";

const TEXTS: ReadonlySet<string> = new Set(["text", "named", "choice", "slot"]);

type Rule = InputRule["rule"] | BookValidation["rule"];

/** Whether what is typed under a rule is a name or a word, and stays text by whatever road it comes. */
export const holdsText = ({ kind }: Rule): boolean => TEXTS.has(kind);

/** What a person filled in, as its cell holds it; a name is text even where it was given as a number. */
export function heldValue(rule: Rule, value: number | string): number | string {
  if (typeof value === "string" || !holdsText(rule)) return value;
  // Our functions know a slot as a number of degrees east, too.
  return rule.kind === "slot" ? slotName(value) : String(value);
}
