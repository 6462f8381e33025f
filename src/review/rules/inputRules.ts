import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import type { InputRule } from "../../workbooks/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { inputsIn, type Input, type InputCell } from "../inputsIn";
import { filledCells, figure, isBlank, lookupWord, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";
import { numberInText } from "./textNumbers";

/** Sums in which a discount was hidden while there was no cell for one. */
const SOLD_AT: ReadonlySet<string> = new Set([
  estimate.provisional.sum.name,
  estimate.options.each.name,
  estimate.options.quantity.name,
]);

export const inputRules: Rule = {
  id: "input outside its rule",
  reason: "A pasted value passes by the rule that refuses a typed one.",
  example: "A tax of 20 where a share from 0 to 1 belongs; a part's name with a blank at its end.",
  find: ({ read, definition }) =>
    inputsIn(read, definition).flatMap((input) =>
      input.cells
        .filter(({ typed, value }) => typed && !isBlank(value))
        .flatMap((cell) => held(read, input, cell)),
    ),
};

interface Broken {
  readonly should: string;
  readonly meant?: string;
}

function held(book: Book, { name, label, input, namesRows }: Input, { place, value }: InputCell): Finding[] {
  const broken = (namesRows && withBlanks(value)) || brokenBy(book, input.rule, value);
  if (!broken) return [];
  const hidesDiscount = SOLD_AT.has(name) && typeof value === "number" && value < 0;
  return [
    {
      weight: "wrong",
      place,
      says: `${label} is ${shown(value)}.`,
      ...broken,
      effect: hidesDiscount ? "The price is lowered, and the quote does not say so." : undefined,
      wayOut:
        hidesDiscount && namedCells(book, estimate.discount.sum.name).length > 0
          ? "Enter a discount in its own cells on Terms, with its reason; then it prints as one."
          : `Enter it again. ${input.what}.`,
    },
  ];
}

/** A name with a blank at an end looks like another and is none. */
function withBlanks(value: BookResult | undefined): Broken | undefined {
  if (typeof value !== "string" || value === value.trim()) return undefined;
  return { should: `“${value.trim()}”, without a blank at its end.`, meant: value.trim() };
}

/** @returns what belongs there; undefined when the value may stand */
function brokenBy(book: Book, rule: InputRule["rule"], value: BookResult | undefined): Broken | undefined {
  switch (rule.kind) {
    case "number": {
      // Text that holds a number has a rule of its own.
      if (rule.orWords?.some((word) => lookupWord(word) === lookupWord(value))) return undefined;
      if (typeof value !== "number")
        return numberInText(value) === undefined ? { should: "A number." } : undefined;
      const { min = -Infinity, max = Infinity } = rule;
      if (value < min || value > max) return { should: bounds(min, max) };
      return rule.integer && !Number.isInteger(value) ? { should: "A whole number." } : undefined;
    }
    case "date":
      return typeof value === "number" ? undefined : { should: "A date." };
    case "choice": {
      if (rule.choices.some((one) => lookupWord(one) === lookupWord(value))) return undefined;
      const meant = rule.choices.find((one) => plainWord(one) === plainWord(value));
      return { should: `One of: ${rule.choices.join(", ")}.`, meant };
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
    ? { should: `“${String(alike.value)}”, without a blank at its end.`, meant: String(alike.value) }
    : { should: "A name of the list that the cell offers." };
}

/** Whether the list has a row that is priced and lost its name. */
function hasNamelessRow(book: Book, list: string): boolean {
  const names = namedCells(book, list);
  return filledCells(book, list.replace(/_name$/, "_price")).some(({ index }) =>
    isBlank(names[index]?.value),
  );
}

const shown = (value: BookResult | undefined): string => {
  if (typeof value === "number") return figure(value);
  return isBookError(value) ? value.error : `“${String(value)}”`;
};
