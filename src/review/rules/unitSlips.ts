import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { median } from "../median";
import { filledCells, figure, hasJob, namedCells, PRICED_BLOCKS, plainWord } from "../namedCells";
import type { Rule } from "../rule";

const FEET_PER_METRE = 3.2808;
/** A group of runs this much longer than the others looks like feet; half-way to 3.28 on a scale of ratios. */
const FEET_RATIO = 2;
const FEWEST_IN_GROUP = 3;
/** No cable of this trade carries less to an outlet; a figure below it was meant in GHz. */
const LEAST_MHZ = 100;
/** A price so many times its neighbours' middle was likely typed in cents. */
const CENTS_RATIO = 15;
/** The same of a part that alone makes most of the bill, as a small one in cents does. */
const CENTS_RATIO_OF_MOST = 5;
const MOST_OF_ALL = 0.5;
/** Parts of no one kind, a clip and a cabinet: a dear one is no slip unless it makes this much of the bill. */
const UNLIKE: ReadonlySet<string> = new Set(["fittings"]);
const MUCH_OF_ALL = 0.4;
/** Common practice, no source: an hour costs about as much as half a head unit, in any currency. */
const GREATEST_RATE_IN_UNITS = 10;
/** Nearer, where labour then makes nearly all of the cost or nearly none (it is half of it in these jobs: common practice, no source). */
const MUCH_RATE_IN_UNITS = 2;
const LITTLE_RATE_IN_UNITS = 1 / 10;
const MOST_OF_COST = 0.8;
const LEAST_OF_COST = 0.2;
/** And not less than a fiftieth of one: that is a rate for a minute. */
const LEAST_RATE_IN_UNITS = 1 / 50;
const MINUTES = 60;
const HOURS_OF_A_DAY = 8;
/** Common practice, no source: 250, 500 and 1000 ft are usual. */
const LEAST_REEL_FEET = 200;
/** Under this a head unit's level was meant in dBmV, which is 60 less. */
const LEAST_DBUV = 60;

export const unitSlips: Rule = {
  id: "unit slip",
  reason: "A figure typed in another unit than its column's passes every limit and spoils all that follows.",
  example: "Runs from one splitter are 3.28 times as long as all others: feet among metres.",
  find: ({ read, computed }) => [
    ...frequencies(read),
    ...levels(read),
    ...feet(read),
    ...cents(read),
    ...rates(read, computed),
    ...reelsInFeet(read),
  ],
};

const frequencies = (book: Book): Finding[] =>
  [estimate.site.low.name, estimate.site.high.name].flatMap((name) =>
    filledCells(book, name).flatMap(({ place, value }): Finding[] =>
      typeof value === "number" && value < LEAST_MHZ
        ? [
            {
              weight: "wrong",
              place,
              message: `A frequency of ${figure(value)} MHz.`,
              expected: `${figure(value * 1000)} MHz, if ${figure(value)} GHz was meant.`,
              effect: "Every cable loses far too little, so every outlet seems to get enough.",
              remedy: "Enter the frequency in MHz.",
            },
          ]
        : [],
    ),
  );

const levels = (book: Book): Finding[] =>
  [estimate.units.out_low.name, estimate.units.out_high.name].flatMap((name) =>
    filledCells(book, name).flatMap(({ place, value }): Finding[] =>
      typeof value === "number" && value < LEAST_DBUV
        ? [
            {
              weight: "doubtful",
              place,
              message: `A head unit that gives ${figure(value)} dBµV.`,
              expected: `${figure(value + 60)} dBµV, if ${figure(value)} dBmV was meant.`,
              effect: "Every outlet that it feeds seems to get 60 dB too little.",
              remedy: "Enter the level in dBµV: dBmV and 60.",
            },
          ]
        : [],
    ),
  );

/** Runs from one device against all the others'. */
function feet(book: Book): Finding[] {
  if (!hasJob(book)) return [];
  const from = namedCells(book, estimate.rooms.from.name);
  const runs = filledCells(book, estimate.rooms.run.name).flatMap((cell) =>
    typeof cell.value === "number" && cell.value > 0
      ? [{ ...cell, length: cell.value, feeder: plainWord(from[cell.index]?.value) }]
      : [],
  );
  const feeders = [...new Set(runs.map(({ feeder }) => feeder))];
  return feeders.flatMap((feeder): Finding[] => {
    const group = runs.filter((run) => run.feeder === feeder);
    const others = runs.filter((run) => run.feeder !== feeder);
    if (group.length < FEWEST_IN_GROUP || others.length < FEWEST_IN_GROUP) return [];
    const ratio = median(group.map(({ length }) => length)) / median(others.map(({ length }) => length));
    if (ratio < FEET_RATIO) return [];
    const named = feeder === "" ? "without “fed from”" : `from ${String(from[group[0]!.index]?.value)}`;
    return [
      {
        weight: "doubtful",
        place: group[0]!.place,
        message: `The ${group.length} runs ${named} are ${figure(Number(ratio.toFixed(1)))} times as long as the others.`,
        expected: `For example ${figure(Number((group[0]!.length / FEET_PER_METRE).toFixed(1)))} rather than ${figure(group[0]!.length)}, if they were measured in feet.`,
        effect: "Their outlets seem to get less level, and too much cable is priced.",
        remedy: "Compare with the plan; enter all lengths in the unit that Site names.",
      },
    ];
  });
}

function cents(book: Book): Finding[] {
  // What each part comes to on Materials.
  const billOf = (block: (typeof PRICED_BLOCKS)[number]): string => estimate[`${block}Bought`].sum.name;
  const sums = PRICED_BLOCKS.flatMap((block) => filledCells(book, billOf(block)).map(({ value }) => value));
  const all = sums.reduce<number>((sum, value) => sum + (typeof value === "number" ? value : 0), 0);
  return PRICED_BLOCKS.flatMap((block) => {
    const bill = namedCells(book, billOf(block));
    const prices = filledCells(book, estimate[block].price.name).flatMap((cell) =>
      typeof cell.value === "number" && cell.value > 0 ? [{ ...cell, price: cell.value }] : [],
    );
    return prices.flatMap((cell): Finding[] => {
      const others = prices.filter((other) => other !== cell).map(({ price }) => price);
      if (others.length === 0) return [];
      const ratio = cell.price / median(others);
      const sum = bill[cell.index]?.value;
      const share = typeof sum === "number" && all > 0 ? sum / all : 0;
      const takesAll = share > MOST_OF_ALL && ratio >= CENTS_RATIO_OF_MOST;
      const far = ratio >= CENTS_RATIO && (!UNLIKE.has(block) || share > MUCH_OF_ALL);
      if (!far && !takesAll) return [];
      return [
        {
          weight: "doubtful",
          place: cell.place,
          message: `A price of ${figure(cell.price)}, where those beside it are about ${figure(median(others))}.`,
          expected: `${figure(cell.price / 100)}, if it was typed in cents.`,
          effect: "Each piece that is bought raises the price a hundredfold.",
          remedy: "Look the price up and enter it in whole money.",
        },
      ];
    });
  });
}

function rates(book: Book, computed: Book): Finding[] {
  const units = filledCells(book, estimate.units.price.name).flatMap(({ value }) =>
    typeof value === "number" && value > 0 ? [value] : [],
  );
  if (units.length === 0) return [];
  const unit = median(units);
  const [labour, direct] = [estimate.price.labour.name, estimate.price.direct.name].map((name) =>
    Number(namedValue(computed, name)),
  ) as [number, number];
  const share = labour > 0 && direct > 0 ? labour / direct : undefined;
  const ofCost = share === undefined ? "" : `; labour is ${(100 * share).toFixed(0)} % of the cost`;
  return filledCells(book, estimate.crew.rate.name).flatMap(({ place, value }): Finding[] => {
    if (typeof value !== "number" || value <= 0) return [];
    const say = (expected: string, effect: string, remedy: string): Finding[] => [
      {
        weight: "doubtful",
        place,
        message: `An hour costs ${figure(value)}, a head unit about ${figure(unit)}${ofCost}.`,
        expected,
        usual: { low: LITTLE_RATE_IN_UNITS * unit, high: MUCH_RATE_IN_UNITS * unit },
        effect,
        remedy,
      },
    ];
    if (value < LEAST_RATE_IN_UNITS * unit)
      return say(
        `${figure(value * MINUTES)}, if ${figure(value)} was meant for a minute.`,
        "Nearly all labour is given away.",
        "Enter what an hour of the crew costs.",
      );
    if (value > GREATEST_RATE_IN_UNITS * unit)
      return say(
        `${figure(value / 100)}, if it was typed in cents.`,
        "All labour is priced a hundredfold.",
        "Enter the rate in whole money.",
      );
    if (value > MUCH_RATE_IN_UNITS * unit && share !== undefined && share > MOST_OF_COST)
      return say(
        `${figure(Number((value / HOURS_OF_A_DAY).toFixed(2)))}, if it was meant for a day of ${HOURS_OF_A_DAY} hours.`,
        "All labour goes by it.",
        "Enter what an hour of the crew costs.",
      );
    if (value < LITTLE_RATE_IN_UNITS * unit && share !== undefined && share < LEAST_OF_COST)
      return say(
        `${figure(value * 10)}, if a figure was lost.`,
        "Nearly all labour is given away.",
        "Enter what an hour of the crew costs.",
      );
    return [];
  });
}

/** Cable is not sold in reels of so few feet: the lengths stayed those of a job in metres. */
function reelsInFeet(book: Book): Finding[] {
  const [unit] = namedCells(book, estimate.site.unit.name);
  if (!unit || plainWord(unit.value) !== "ft") return [];
  const reels = filledCells(book, estimate.cables.reel.name).flatMap(({ value }) =>
    typeof value === "number" ? [value] : [],
  );
  if (reels.length < FEWEST_IN_GROUP || median(reels) >= LEAST_REEL_FEET) return [];
  return [
    {
      weight: "doubtful",
      place: unit.place,
      message: `All lengths are in feet, and the reels are of about ${figure(median(reels))}.`,
      expected: `m, if these are metres; reels in feet have ${LEAST_REEL_FEET} or more (common practice, no source).`,
      meant: "m",
      effect: "Every run loses a third of what it does, and a third of the cable is bought.",
      remedy: "Compare with the price list; a change of the unit changes no length.",
    },
  ];
}
