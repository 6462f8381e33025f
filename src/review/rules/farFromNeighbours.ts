import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { median } from "../median";
import { filledCells, figure, namedCells, plainWord, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";

/** Deviation from the median over the median deviation, scaled as for a normal spread (1.4826), of logarithms. */
const MAD_TO_SIGMA = 1.4826;
const FARTHEST = 3.5;
/** Jobs whose rows are nearly alike still vary by a quarter. */
const LEAST_SPREAD = 0.25;
const FEWEST = 6;
/** No cable that is run is shorter; a short one is a room next door. */
const SHORTEST_METRES = 0.5;
const FEET_PER_METRE = 3.2808;
/** Parts that differ in size only; fittings are a clip and a dish. */
const ALIKE = ["passives", "units", "plates"] as const;
const FEWEST_PRICES = 3;
/** So many times its neighbours, or so small a part of them: less is a dearer kind. */
const FARTHEST_PRICE = 4;
/** A metre of cable costs a tenth of another kind's or ten times as much: a price for a reel and one for a metre lie farther apart. */
const FARTHEST_PER_METRE = 10;
const FEWEST_CABLES = 3;
/** Reels of one job are of one size or twice it. */
const FARTHEST_REEL = 4;
const FEWEST_LEVELS = 4;
/** Common practice, no source: head units of one job lie within ten decibels. */
const FARTHEST_DB = 12;

const COLUMNS = [
  { name: estimate.rooms.run.name, what: "run", effect: "The outlet's level and the cable to buy go by it." },
  { name: estimate.branches.length.name, what: "trunk", effect: "Every outlet behind it goes by it." },
] as const;

export const farFromNeighbours: Rule = {
  id: "far from neighbours",
  reason:
    "A lost or doubled decimal point gives a figure that its column allows and its neighbours contradict.",
  example: "A run of 185 m among runs of 8 to 27 m: 18.5 was meant; a splitter at 125 among ones at 8 to 18.",
  find: ({ read }) => [
    ...lengths(read),
    ...prices(read),
    ...perMetre(read),
    ...copied(read),
    ...levels(read),
  ],
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
    const shortest =
      SHORTEST_METRES * (namedValue(read, estimate.site.unit.name) === "ft" ? FEET_PER_METRE : 1);
    return cells.flatMap(({ place, length }): Finding[] => {
      if (length >= shortest && Math.log(length) - middle < FARTHEST * spread) return [];
      return [
        {
          weight: "doubtful",
          place,
          message: `A ${what} of ${figure(length)}, where the middle of the column is ${figure(Math.exp(middle))}.`,
          expected: "A length like those around it, or a note that says why not.",
          effect,
          remedy: "Compare with the plan, above all the decimal point.",
        },
      ];
    });
  });

/** Devices that divide; an amplifier costs what no splitter does. */
const DIVIDES: ReadonlySet<string> = new Set(["splitter", "tap"]);

/** A price against those of the other parts of its kind; a splitter's for each of its ways, since it grows with them. */
const prices = (read: Book): Finding[] =>
  ALIKE.flatMap((block) => {
    const [ways, kinds] = (["ways", "kind"] as const).map((key) =>
      block === "passives" ? namedCells(read, estimate.passives[key].name) : [],
    ) as [NamedCell[], NamedCell[]];
    const cells = filledCells(read, estimate[block].price.name).flatMap((cell) => {
      if (block === "passives" && !DIVIDES.has(plainWord(kinds[cell.index]?.value))) return [];
      const size = Number(ways[cell.index]?.value ?? 1);
      return typeof cell.value === "number" && cell.value > 0 && size > 0
        ? [{ ...cell, price: cell.value / size, size, whole: cell.value }]
        : [];
    });
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
          message: `A price of ${figure(cell.whole)}, where the others of its kind are about ${figure(Number((Math.exp(middle) * cell.size).toFixed(2)))}${block === "passives" ? ` for ${figure(cell.size)} ways` : ""}.`,
          expected: "A price like those of its kind, or a note that says why not.",
          effect: "Each piece that is bought carries it into the price.",
          remedy: "Look the price up, above all its decimal point.",
        },
      ];
    });
  });

/** Cable by the metre, whatever the reel. */
function perMetre(read: Book): Finding[] {
  const reels = namedCells(read, estimate.cables.reel.name);
  const cells = filledCells(read, estimate.cables.price.name).flatMap((cell) => {
    const reel = reels[cell.index]?.value;
    return typeof cell.value === "number" && cell.value > 0 && typeof reel === "number" && reel > 0
      ? [{ ...cell, price: cell.value, each: cell.value / reel, length: reel, reel: reels[cell.index]! }]
      : [];
  });
  if (cells.length < FEWEST_CABLES) return [];
  return cells.flatMap((cell): Finding[] => {
    const others = cells.flatMap((other) => (other === cell ? [] : [Math.log(other.each)]));
    const middle = Math.exp(median(others));
    if (cell.each * FARTHEST_PER_METRE > middle && cell.each < middle * FARTHEST_PER_METRE) return [];
    const lengths = cells.filter((other) => other !== cell).map(({ length }) => length);
    const usual = median(lengths);
    const off = cell.length / usual;
    // A reel that is the odd one has the slip in its length, where its price would then be usual.
    if (off >= FARTHEST_REEL || off <= 1 / FARTHEST_REEL)
      return [
        {
          weight: "doubtful",
          place: cell.reel.place,
          message: `A reel of ${figure(cell.length)} at ${figure(cell.price)}, where the other reels are of about ${figure(usual)}: ${figure(Number(cell.each.toPrecision(2)))} for each metre or foot, where the other cables are about ${figure(Number(middle.toPrecision(2)))}.`,
          expected: `A reel of about ${figure(usual)}, or the price of so long a one.`,
          usual: { low: Math.min(...lengths), high: Math.max(...lengths) },
          effect: "Too few reels are bought, or too many.",
          remedy: "Look up the length and the price of one reel.",
        },
      ];
    return [
      {
        weight: "doubtful",
        place: cell.place,
        message: `A reel at ${figure(cell.price)}: ${figure(Number(cell.each.toPrecision(2)))} for each metre or foot, where the other cables are about ${figure(Number(middle.toPrecision(2)))}.`,
        expected: "The price of a whole reel.",
        effect: "Each reel that is bought carries it into the price.",
        remedy: "Look the price up: of a reel, not of a metre.",
      },
    ];
  });
}

/** A part twice the size of another at its price to the cent: a row's price copied into the next. */
const COPIED = [
  { block: "passives", size: estimate.passives.ways.name, what: "ways" },
  { block: "units", size: estimate.units.bands.name, what: "user bands" },
] as const;

const copied = (read: Book): Finding[] =>
  COPIED.flatMap(({ block, size, what }) => {
    const sizes = namedCells(read, size);
    const names = namedCells(read, estimate[block].name.name);
    const kinds = namedCells(read, estimate[block].kind.name);
    const parts = filledCells(read, estimate[block].price.name).flatMap((cell) => {
      const of = sizes[cell.index]?.value;
      return typeof cell.value === "number" && cell.value > 0 && typeof of === "number" && of > 0
        ? [{ ...cell, of, name: String(names[cell.index]?.value ?? ""), kind: kinds[cell.index]?.value }]
        : [];
    });
    return parts.flatMap((part): Finding[] => {
      const smaller = parts.find(
        (one) =>
          one.value === part.value && (block === "units" || one.kind === part.kind) && one.of * 2 <= part.of,
      );
      if (!smaller) return [];
      return [
        {
          weight: "doubtful",
          place: part.place,
          message: `${part.name} of ${figure(part.of)} ${what} costs what ${smaller.name} of ${figure(smaller.of)} costs, ${figure(part.value as number)}.`,
          expected: "A price of its own.",
          effect: "Each piece that is bought carries it into the price.",
          remedy: "Look both prices up: was one copied from the other's row?",
        },
      ];
    });
  });

/** The levels that head units give: a few decibels lie between one kind and the next. */
function levels(read: Book): Finding[] {
  const cells = [estimate.units.out_low.name, estimate.units.out_high.name].flatMap((name) =>
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
            message: `A level of ${figure(level)} dBµV, where the other head units and ends of the band have about ${figure(middle)}.`,
            expected: "A level like those of the others, or a note that says why not.",
            effect: "Every outlet that it feeds goes by it.",
            remedy: "Compare with the maker's sheet.",
          },
        ],
  );
}
