import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { made, options } from "../../workbooks/multiRoom/names/terms";
import { taxClass, taxes } from "../../workbooks/multiRoom/names/site";
import { doubtfulWith, type Finding } from "../finding";
import { inputsIn, type Input } from "../inputsIn";
import { figure, filledCells, namedCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import { takenFrom } from "../ranges/firm";
import { filling, freeRows } from "../rowCells";
import type { Rule } from "../rule";
import { rowsIn, type ReadRow } from "../rowsIn";

/** Common practice, no source: what one option asks beside the dearest part that its name speaks of, as it is sold. */
const FARTHEST_PRICE = 4;
/** Blocks of Parts by the words in which an option speaks of one. */
const HEAD_UNIT = /\bhead units?\b|\bswitch(?:es)?\b/i;

export const alternates: Rule = {
  id: "options, alternates and tax classes",
  reason:
    "An alternate takes something out and puts something in; with the one without the other the customer pays for both, or for nothing.",
  example:
    "An outlet of another kind for 36 rooms, and the usual one is not taken out; a tax class that no line has.",
  find: ({ read, computed, definition }) => [
    ...exchanges(read, computed, inputsIn(read, definition)),
    ...chosenTwice(read),
    ...farPriced(read, computed),
    ...idle(read),
  ],
};

const doubtful = doubtfulWith("Compare with what was offered; correct the cell, or say on Log why it is so.");

const OF_OPTIONS = { each: options.each, chosen: options.chosen, instead: options.instead };
const OF_MADE = { part: made.part, quantity: made.quantity, each: made.each, hours: made.hours };

/** What each alternate takes out against what it puts in. */
function exchanges(read: Book, computed: Book, inputs: readonly Input[]): Finding[] {
  const rows = rowsIn(read, made.option, OF_MADE);
  const bought = boughtOf(computed);
  return rowsIn(read, options.name, OF_OPTIONS).flatMap((option): Finding[] => {
    const replaced = option.word("instead");
    // A price under 0 has taken the old part out already.
    if ((option.number("each") ?? 0) < 0) return [];
    const own = rows.filter(({ called }) => plainWord(called) === plainWord(option.called));
    const pieces = own.filter((row) => row.number("quantity") !== undefined && row.word("part") !== "");
    // An alternate at a price of its own says nothing of its parts.
    if (replaced === "" || pieces.length === 0) return [];
    const [out, into] = [pieces.filter(isOut), pieces.filter((row) => !isOut(row))];
    if (out.length === 0) {
      const base = pieces.find(
        (row) => pieces.length > 1 && sharesWord(row.word("part"), replaced, option.called),
      );
      const quantity = base?.number("quantity");
      return [
        doubtful(
          base?.cell("quantity")?.place ?? option.cell("instead")!.place,
          `${option.called} is instead of ${String(option.cell("instead")!.value)}, and nothing is taken out.`,
          base
            ? `${figure(-quantity!)} of ${String(base.cell("part")!.value)}.`
            : "What it replaces, with a minus before its number.",
          "The customer would pay for both.",
          quantity !== undefined
            ? { meant: -quantity }
            : takenOut(read, inputs, option.called, replaced, pieces),
        ),
      ];
    }
    if (out.length !== 1 || into.length !== 1) return [];
    const [taken, given] = [-out[0]!.number("quantity")!, into[0]!.number("quantity")!];
    if (taken === given) return [];
    // The number that the job buys of the usual part is the one that was meant.
    const isTaken = bought.get(out[0]!.word("part")) === given;
    const odd = isTaken ? out[0]! : into[0]!;
    return [
      doubtful(
        odd.cell("quantity")!.place,
        `${option.called} takes out ${figure(taken)} of ${String(out[0]!.cell("part")!.value)} and puts in ${figure(given)} of ${String(into[0]!.cell("part")!.value)}.`,
        `As many in as out: ${figure(isTaken ? -given : taken)}.`,
        "Its price is that of other pieces than it changes.",
        { meant: isTaken ? -given : taken },
      ),
    ];
  });
}

/** The row that is missing, where the part that is replaced stands on Parts by its name. */
function takenOut(
  read: Book,
  inputs: readonly Input[],
  option: string,
  replaced: string,
  into: readonly ReadRow<"quantity">[],
): Partial<Finding> {
  const one = replaced.replace(/s$/, "");
  const part = PRICED_BLOCKS.flatMap((block) => filledCells(read, estimate[block].name.name)).find(
    ({ value }) => plainWord(value) === replaced || plainWord(value) === one,
  );
  const quantity = into.length === 1 ? into[0]!.number("quantity") : undefined;
  const [row] = freeRows(inputs, "made", into.at(-1)!.index + 1);
  if (!part || quantity === undefined || row === undefined) return {};
  const values = { option, part: String(part.value), quantity: -quantity };
  return { undoing: filling(inputs, "made", row, values), isGuess: true };
}

const isOut = (row: ReadRow<"quantity">): boolean => row.number("quantity")! < 0;

/** Whether a part is what is replaced, by a word that the alternate's own name has not. */
function sharesWord(part: string, replaced: string, alternate: string): boolean {
  const words = (text: string): string[] =>
    plainWord(text)
      .split(/[^\p{L}\p{N}]+/u)
      .map((word) => word.replace(/s$/, ""))
      .filter((word) => word.length > 2);
  const own = new Set(words(alternate));
  const wanted = new Set(words(replaced).filter((word) => !own.has(word)));
  return words(part).some((word) => wanted.has(word));
}

/** How many of each part the job needs. */
const boughtOf = (computed: Book): ReadonlyMap<string, unknown> =>
  new Map(
    (["plates", "units", "passives", "supplies"] as const).flatMap((block) => {
      const needed = namedCells(computed, estimate[`${block}Bought`].needed.name);
      return filledCells(computed, estimate[block].name.name).map(
        ({ value, index }) => [plainWord(value), needed[index]?.value] as const,
      );
    }),
  );

/** Two alternates of one thing, both chosen. */
function chosenTwice(read: Book): Finding[] {
  const seen = new Map<string, string>();
  return rowsIn(read, options.name, OF_OPTIONS).flatMap(({ called, cell, word }): Finding[] => {
    const replaced = word("instead");
    if (replaced === "" || word("chosen") !== "yes") return [];
    const first = seen.get(replaced);
    seen.set(replaced, first ?? called);
    if (first === undefined) return [];
    return [
      doubtful(
        cell("chosen")!.place,
        `${called} and ${first} are both chosen, and both are instead of ${String(cell("instead")!.value)}.`,
        "One of them.",
        "What they replace is taken out twice, or paid for twice.",
      ),
    ];
  });
}

/** A price far from that of the parts that the option's name speaks of. */
function farPriced(read: Book, computed: Book): Finding[] {
  const factor = Number(namedCells(computed, estimate.price.factor.name)[0]?.value) || 1;
  return rowsIn(read, options.name, OF_OPTIONS).flatMap(({ called, cell, number, word }): Finding[] => {
    const each = number("each");
    if (each === undefined || each <= 0 || !HEAD_UNIT.test(called) || word("instead") !== "") return [];
    const prices = filledCells(read, estimate.units.price.name).flatMap(({ value }) =>
      typeof value === "number" && value > 0 ? [value] : [],
    );
    if (prices.length === 0) return [];
    const [least, most] = [Math.min(...prices), factor * Math.max(...prices)];
    if (each >= least / FARTHEST_PRICE && each <= most * FARTHEST_PRICE) return [];
    return [
      doubtful(
        cell("each")!.place,
        `${called} is offered at ${figure(each)}; such parts cost from ${figure(least)} and are sold for up to ${most.toFixed(2)}.`,
        "A price like that of the part, with its work.",
        "It is printed, and in the price where it is chosen.",
        { usual: { low: least, high: most } },
      ),
    ];
  });
}

/** A class of tax that is listed, and that nothing is taxed by. */
function idle(read: Book): Finding[] {
  const used = new Set(
    [...Object.values(taxClass), options.tax, estimate.provisional.tax].flatMap(({ name }) =>
      filledCells(read, name).map(({ value }) => plainWord(value)),
    ),
  );
  return filledCells(read, taxes.name.name)
    .filter(({ value }) => !used.has(plainWord(value)))
    .map(({ place, value }) =>
      doubtful(
        place,
        `Nothing is taxed by the class “${String(value)}”.`,
        "A line, an option or a provisional sum that has it; or no such row.",
        "What it was meant for is taxed otherwise.",
        // The firm's own list has more classes than each job needs.
        takenFrom(read) ? { weight: "worth knowing" } : {},
      ),
    );
}
