/**
 * The one reader of typed values, below every host: what a person typed, pasted or wrote into a survey, as the
 * value that its cell holds. It reads what is unmistakable in that column; it refuses the rest with a sentence
 * that says what to type, and never wraps, rounds or guesses.
 */
import { asName, asWord } from "./plainText";
import { readAngle } from "./readAngle";
import { readChoice } from "./readChoice";
import { readDate } from "./readDate";
import { readMeasure } from "./readMeasure";
import { readMoney } from "./readMoney";
import { readShare } from "./readShare";
import { readSlot } from "./readSlot";
import type { Reading, TypedContext } from "./reading";
import { sentences } from "./sentences";
import { LONGEST_TEXT, type NumberKind, type TypedKind } from "./typedKind";

/**
 * @param text as it was typed
 * @param kind what its column asks for
 * @returns the value: a date as a sheet's date number, a share as 0.2 for 20 %, a length in the workbook's unit;
 *   undefined for a cell that was emptied
 */
export function readTyped(
  text: string,
  kind: TypedKind,
  context: TypedContext = {},
): Reading<number | string | undefined> {
  const name = asName(text);
  if (name === "") return { value: undefined };
  const figures = name.length > LONGEST_FIGURES ? `${name.slice(0, LONGEST_FIGURES)}…` : text;
  switch (kind.kind) {
    case "text":
      return asText(name, kind.maxLength);
    case "named":
      return asText(name, LONGEST_TEXT);
    case "choice": {
      const chosen = readChoice(text, kind.choices);
      return kind.open && "refused" in chosen ? asText(name, LONGEST_TEXT) : chosen;
    }
    case "slot":
      return readSlot(figures, context);
    case "date":
      return readDate(figures, kind, context);
    case "number":
      return asNumberOrWord(figures, kind, context);
  }
}

const asText = (name: string, most: number): Reading<string> =>
  name.length > most ? { refused: sentences.tooLong(name.length, most) } : { value: name };

/** No number, date or slot is as long; patterns are not tried on a page of text. */
const LONGEST_FIGURES = 80;

/** @returns the word as its cell holds it; a refusal names the words as well */
function asNumberOrWord(text: string, kind: NumberKind, context: TypedContext): Reading<number | string> {
  const { orWords = [] } = kind;
  const word = orWords.find((one) => asLetters(one) === asLetters(text));
  if (word !== undefined) return { value: word };
  const reading = asNumber(text, kind, context);
  return "refused" in reading && orWords.length > 0
    ? { refused: `${reading.refused} ${sentences.orWords(orWords)}` }
    : reading;
}

/** Neither blanks, hyphens nor points part the words that a meter shows: `NO-SIGNAL`. */
const asLetters = (text: string): string => asWord(text).replace(/[-\s.!]/g, "");

function asNumber(text: string, kind: NumberKind, context: TypedContext): Reading<number> {
  switch (kind.quantity) {
    case "money":
      return readMoney(text, kind, context);
    case "share":
      return readShare(text, kind, context);
    case "latitude":
    case "longitude":
      return readAngle(text, kind, context);
    default:
      return readMeasure(text, kind, context);
  }
}
