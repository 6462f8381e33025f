import type { Book } from "../../workbooks/book";
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
/** Parts that differ in size only; fittings are a clip and a dish. */
const ALIKE = ["passives", "units", "plates"] as const;
const FEWEST_PRICES = 4;
/** So many times its neighbours, or so small a part of them: less is a dearer kind. */
const FARTHEST_PRICE = 4;
const FEWEST_LEVELS = 4;
/** Common practice, no source: head units of one job lie within ten decibels. */
const FARTHEST_DB = 12;

const COLUMNS = [
  { name: "rooms_run", what: "run", effect: "The outlet's level and the cable to buy go by it." },
  { name: "branches_length", what: "trunk", effect: "Every outlet behind it goes by it." },
] as const;

export const farFromNeighbours: Rule = {
  id: "far from neighbours",
  reason:
    "A lost or doubled decimal point gives a figure that its column allows and its neighbours contradict.",
  example: "A run of 185 m among runs of 8 to 27 m: 18.5 was meant; a splitter at 125 among ones at 8 to 18.",
  find: ({ read }) => [...lengths(read), ...prices(read), ...levels(read)],
};

const lengths = (read: Book): Finding[] =>
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
  });

/** A price against those of the other parts of its kind. */
const prices = (read: Book): Finding[] =>
  ALIKE.flatMap((block) => {
    const cells = filledCells(read, `${block}_price`).flatMap((cell) =>
      typeof cell.value === "number" && cell.value > 0 ? [{ ...cell, price: cell.value }] : [],
    );
    if (cells.length < FEWEST_PRICES) return [];
    return cells.flatMap((cell): Finding[] => {
      const others = cells.flatMap((other) => (other === cell ? [] : [Math.log(other.price)]));
      const middle = median(others);
      const spread = Math.max(
        LEAST_SPREAD,
        MAD_TO_SIGMA * median(others.map((log) => Math.abs(log - middle))),
      );
      const far = Math.abs(Math.log(cell.price) - middle);
      if (far < FARTHEST * spread || far < Math.log(FARTHEST_PRICE)) return [];
      return [
        {
          weight: "doubtful",
          place: cell.place,
          says: `A price of ${figure(cell.price)}, where the others of its kind are about ${figure(Number(Math.exp(middle).toFixed(2)))}.`,
          should: "A price like those of its kind, or a note that says why not.",
          effect: "Each piece that is bought carries it into the price.",
          wayOut: "Look the price up, above all its decimal point.",
        },
      ];
    });
  });

/** The levels that head units give: a few decibels lie between one kind and the next. */
function levels(read: Book): Finding[] {
  const cells = ["units_out_low", "units_out_high"].flatMap((name) =>
    filledCells(read, name).flatMap((cell) =>
      typeof cell.value === "number" ? [{ ...cell, level: cell.value }] : [],
    ),
  );
  if (cells.length < FEWEST_LEVELS) return [];
  const middle = median(cells.map(({ level }) => level));
  return cells.flatMap(({ place, level }): Finding[] =>
    Math.abs(level - middle) < FARTHEST_DB
      ? []
      : [
          {
            weight: "doubtful",
            place,
            says: `A level of ${figure(level)} dBµV, where the other head units and ends of the band have about ${figure(middle)}.`,
            should: "A level like those of the others, or a note that says why not.",
            effect: "Every outlet that it feeds goes by it.",
            wayOut: "Compare with the maker's sheet.",
          },
        ],
  );
}
