/** How precise an answer is asked for, in words, and how a key is shown. */
import type { Answer, AnswerKind } from "./exercise";

/** "to 0.1 dB", "to a whole deg", "exactly"; nothing for a choice. */
export function precisionInWords(answer: AnswerKind): string {
  if (answer.kind === "choice") return "from the list";
  if (answer.exact) return "exactly";
  const unit = answer.unit === "" ? "" : ` ${answer.unit}`;
  return answer.decimals === 0
    ? `to a whole${unit}`
    : `to ${(10 ** -answer.decimals).toFixed(answer.decimals)}${unit}`;
}

/** A key as it is asked for: rounded to its decimals, for print. */
export const asAsked = (answer: AnswerKind, key: Answer): Answer =>
  answer.kind === "choice" || typeof key === "string" ? key : Number(key.toFixed(answer.decimals));
