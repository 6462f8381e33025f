/** A part that one place of the job counts already, counted again in another. */
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { figure, filledCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

const { fittings, types, dishes } = estimate;

export const countedTwice: Rule = {
  id: "part counted twice",
  reason:
    "A part comes into the job by one way: for each piece of the distribution, of a type, of a dish, or so many for the job. Two ways buy it twice.",
  example: "A receiver lead as the fitting of a room type, where one is counted for each receiver already.",
  find: ({ read }) => [...ofTypes(read), ...ofDishes(read)],
};

/** Pieces that an outlet has of itself. */
const AT_AN_OUTLET = new Set(["receiver lead", "outlet to measure", "wall plate"]);

function ofTypes(read: Book): Finding[] {
  const counted = new Map(
    rowsIn(read, fittings.name, { piece: fittings.piece, outlet: fittings.per_outlet }).flatMap(
      ({ called, word, number }) => {
        const by = AT_AN_OUTLET.has(word("piece"))
          ? word("piece")
          : (number("outlet") ?? 0) > 0
            ? "outlet"
            : "";
        return by === "" ? [] : [[plainWord(called), by] as const];
      },
    ),
  );
  return rowsIn(read, types.name, { fitting: types.fitting, pieces: types.pieces }).flatMap(
    ({ called, cell, word }): Finding[] => {
      const [fitting, pieces] = [cell("fitting"), cell("pieces")];
      const by = counted.get(word("fitting"));
      if (!fitting || by === undefined) return [];
      return [
        {
          weight: "doubtful",
          place: fitting.place,
          message: `The type “${called}” adds ${String(fitting.value)}, which Parts counts for each ${by} already.`,
          expected: "One of the two.",
          undoing: [fitting, pieces].flatMap((one) => (one ? [{ place: one.place }] : [])),
          isGuess: true,
          effect: "It is bought twice for each outlet of the type.",
          remedy: "Clear the fitting of the type, or what Parts counts it by.",
        },
      ];
    },
  );
}

function ofDishes(read: Book): Finding[] {
  const bought = new Set(filledCells(read, dishes.part.name).map(({ value }) => plainWord(value)));
  return rowsIn(read, fittings.name, { fixed: fittings.fixed }).flatMap(
    ({ called, cell, number }): Finding[] => {
      const fixed = number("fixed") ?? 0;
      if (fixed === 0 || !bought.has(plainWord(called))) return [];
      const { place } = cell("fixed")!;
      return [
        {
          weight: "doubtful",
          place,
          message: `${called} is bought for its dish on Dishes already, and ${figure(fixed)} more for the job.`,
          expected: "Blank, unless one is kept in store.",
          undoing: [{ place }],
          isGuess: true,
          effect: "A dish is bought twice.",
          remedy: "Clear the cell.",
        },
      ];
    },
  );
}
