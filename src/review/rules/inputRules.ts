import { isFault } from "../../engine/faults";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { inputsIn, type Input, type InputCell } from "../inputsIn";
import { figure, filledCells, isBlank, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";
import { ruleBroken, type Broken } from "../ruleBroken";
import { nearest } from "../spelling";

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
    inputsIn(read, definition).flatMap((input) => [
      ...input.cells
        .filter(({ typed, value }) => typed && !isBlank(value))
        .flatMap((cell) => held(read, input, cell)),
      ...offTheirList(read, input),
    ]),
};

/** Free text, since a name may stand there that is built in. */
const BY_NAME: Readonly<Record<string, readonly string[]>> = {
  [estimate.branches.device.name]: [estimate.passives.name.name, estimate.supplies.name.name],
  [estimate.rooms.receiver.name]: [estimate.receivers.kind.name],
  [estimate.types.receiver.name]: [estimate.receivers.kind.name],
};

/** A part that no list has, and that is a slip away from one that is there. */
function offTheirList(book: Book, { name, label, cells }: Input): Finding[] {
  const listed = (BY_NAME[name] ?? []).flatMap((list) =>
    filledCells(book, list).map(({ value }) => String(value)),
  );
  const known = new Set(listed.map(plainWord));
  return cells.flatMap(({ place, value, called }): Finding[] => {
    if (isBlank(value) || typeof value !== "string" || known.has(plainWord(value))) return [];
    // A number of tuners in words needs no row.
    if (!isFault(tunersOfKind(value))) return [];
    const meant = nearest(value, listed);
    if (meant === undefined) return [];
    return [
      {
        weight: "wrong",
        place,
        message: `${label} of ${called} is “${value}”, which is not on its list.`,
        expected: `“${meant}”, likely.`,
        meant,
        isGuess: true,
        effect: "It is neither priced nor worked out, nor what hangs on it.",
        remedy: "Choose it from the list.",
      },
    ];
  });
}

function held(book: Book, { name, label, input, namesRows }: Input, { place, value }: InputCell): Finding[] {
  const broken = (namesRows && withBlanks(value)) || ruleBroken(book, input.rule, value);
  if (!broken) return [];
  const hidesDiscount = SOLD_AT.has(name) && typeof value === "number" && value < 0;
  return [
    {
      weight: "wrong",
      place,
      message: `${label} is ${shown(value)}.`,
      ...broken,
      effect: hidesDiscount ? "The price is lowered, and the quote does not say so." : undefined,
      remedy:
        hidesDiscount && namedCells(book, estimate.discount.sum.name).length > 0
          ? "Enter a discount in its own cells on Terms, with its reason; then it prints as one."
          : `Enter it again. ${input.what}.`,
    },
  ];
}

/** A name with a blank at an end looks like another and is none. */
function withBlanks(value: BookResult | undefined): Broken | undefined {
  if (typeof value !== "string" || value === value.trim()) return undefined;
  return { expected: `“${value.trim()}”, without a blank at its end.`, meant: value.trim() };
}

const shown = (value: BookResult | undefined): string => {
  if (typeof value === "number") return figure(value);
  return isBookError(value) ? value.error : `“${String(value)}”`;
};
