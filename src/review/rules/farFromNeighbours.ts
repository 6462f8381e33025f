import type { Finding } from "../finding";
import { median } from "../median";
import { filledCells, figure } from "../namedCells";
import type { Rule } from "../rule";

/** Deviation from the median over the median deviation, scaled as for a normal spread (1.4826), of logarithms. */
const MAD_TO_SIGMA = 1.4826;
const FARTHEST = 3.5;
/** Jobs whose rows are nearly alike still vary by a quarter. */
const LEAST_SPREAD = 0.25;
const FEWEST = 6;

const COLUMNS = [
  { name: "rooms_run", what: "run", effect: "The outlet's level and the cable to buy go by it." },
  { name: "branches_length", what: "trunk", effect: "Every outlet behind it goes by it." },
] as const;

export const farFromNeighbours: Rule = {
  id: "far from neighbours",
  reason:
    "A lost or doubled decimal point gives a figure that its column allows and its neighbours contradict.",
  example: "A run of 185 m among runs of 8 to 27 m: 18.5 was meant.",
  find: ({ read }) =>
    COLUMNS.flatMap(({ name, what, effect }) => {
      const cells = filledCells(read, name).flatMap((cell) =>
        typeof cell.value === "number" && cell.value > 0 ? [{ ...cell, length: cell.value }] : [],
      );
      if (cells.length < FEWEST) return [];
      const logs = cells.map(({ length }) => Math.log(length));
      const middle = median(logs);
      const spread = Math.max(LEAST_SPREAD, MAD_TO_SIGMA * median(logs.map((log) => Math.abs(log - middle))));
      return cells.flatMap(({ place, length }): Finding[] => {
        if (Math.abs(Math.log(length) - middle) < FARTHEST * spread) return [];
        return [
          {
            weight: "doubtful",
            place,
            says: `A ${what} of ${figure(length)}, where the middle of the column is ${figure(Math.exp(middle))}.`,
            should: "A length like those around it, or a note that says why not.",
            effect,
            wayOut: "Compare with the plan, above all the decimal point.",
          },
        ];
      });
    }),
};
