/** Whether what stands in an input cell is what the template's rule asks for. */
import type { Book, BookResult } from "../workbooks/book";
import type { InputRule } from "../workbooks/definition";
import { filledCells, isBlank, lookupWord, namedCells, plainWord } from "./namedCells";
import { numberInText } from "./rules/textNumbers";

export interface Broken {
  readonly expected: string;
  readonly meant?: string;
}

/** @returns what belongs there; undefined when the value may stand */
export function ruleBroken(
  book: Book,
  rule: InputRule["rule"],
  value: BookResult | undefined,
): Broken | undefined {
  switch (rule.kind) {
    case "number": {
      // Text that holds a number has a rule of its own.
      if (rule.orWords?.some((word) => lookupWord(word) === lookupWord(value))) return undefined;
      if (typeof value !== "number")
        return numberInText(value) === undefined ? { expected: "A number." } : undefined;
      const { min = -Infinity, max = Infinity } = rule;
      if (value < min || value > max) return { expected: bounds(min, max) };
      return rule.integer && !Number.isInteger(value) ? { expected: "A whole number." } : undefined;
    }
    case "date":
      return typeof value === "number" ? undefined : { expected: "A date." };
    case "choice": {
      if (rule.choices.some((one) => lookupWord(one) === lookupWord(value))) return undefined;
      const meant = rule.choices.find((one) => plainWord(one) === plainWord(value));
      return { expected: `One of: ${rule.choices.join(", ")}.`, meant };
    }
    case "named":
      return unlisted(book, rule.name, value);
    default:
      return undefined;
  }
}

const bounds = (min: number, max: number): string =>
  max === Infinity ? `${min} or more.` : min === -Infinity ? `${max} or less.` : `From ${min} to ${max}.`;

function unlisted(book: Book, list: string, value: BookResult | undefined): Broken | undefined {
  const offered = filledCells(book, list);
  if (offered.some((one) => lookupWord(one.value) === lookupWord(value))) return undefined;
  const alike = offered.find((one) => plainWord(one.value) === plainWord(value));
  // What is off in the list itself is told there, once: a blank at the end of its name, a row that lost its name.
  if (alike ? lookupWord(value) === plainWord(value) : hasNamelessRow(book, list)) return undefined;
  return alike
    ? { expected: `“${String(alike.value)}”, without a blank at its end.`, meant: String(alike.value) }
    : { expected: "A name of the list that the cell offers." };
}

/** Whether the list has a row that is priced and lost its name. */
function hasNamelessRow(book: Book, list: string): boolean {
  const names = namedCells(book, list);
  return filledCells(book, list.replace(/_name$/, "_price")).some(({ index }) =>
    isBlank(names[index]?.value),
  );
}
