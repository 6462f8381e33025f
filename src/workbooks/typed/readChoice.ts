/** One of a cell's words, whatever its capitals and blanks. */
import { asName, asWord } from "./plainText";
import type { Reading } from "./reading";
import { sentences } from "./sentences";

export function readChoice(text: string, choices: readonly string[]): Reading<string> {
  const typed = asName(text);
  if (choices.includes(typed)) return { value: typed };
  const fitting = choices.filter((choice) => asWord(choice) === asWord(typed));
  return fitting.length === 1 ? { value: fitting[0]! } : { refused: sentences.noChoice(text, choices) };
}
