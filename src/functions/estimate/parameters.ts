/** The arguments that the estimate functions share. */
import { CUT_AT, type Cutting } from "../../engine/estimate/cutting";
import { ROUNDING_RULES } from "../../engine/estimate/exact";
import type { RunList } from "../../engine/estimate/runsOfCable";
import { faults, isFault, type Fault } from "../../engine/faults";
import { choice, list, number, optional, text, type ListEntry } from "../core/parameters";

export const cost = number({
  name: "cost",
  help: "What the work or the part costs you.",
  unit: "money",
  min: 0,
  max: 1e12,
  advice: "Enter a credit as a line of its own",
});

export const margin = number({
  name: "margin",
  help: "Margin as a share of the price, from 0 to less than 1: 0.2 or 20%.",
  min: 0,
  advice: "A margin is a share of the price, such as 0.2 or 20%",
});

export const decimals = number({
  name: "decimals",
  help: "Places kept after the decimal point.",
  integer: true,
  min: 0,
  max: 6,
});

export const rule = choice({
  name: "rule",
  help: 'Where a tie goes: "half away" from zero, or "half even" to the even digit.',
  choices: ROUNDING_RULES,
});

const LONGEST = 1_000_000;

/** A list of run lengths under the argument's own name. */
export const runLengths = (name: string, help: string) =>
  list(number({ name, help, min: 0, max: LONGEST, advice: "Enter the length of one run" }));

/** The cable of each run, beside a list of lengths. */
export const runCables = (name: string, help: string) =>
  list(text({ name, help, wanted: "the cable's name" }));

const reelUnder = (name: string, help: string) =>
  number({
    name,
    help,
    min: 0,
    aboveMin: true,
    max: LONGEST,
    advice: "Give the length on one reel",
  });

export const reelLength = reelUnder("reel", "Length of cable on one reel, in the unit of the lengths.");

/** Of several cables. */
export const reelLengths = list(reelUnder("reels", "Length of cable on a reel of each of them, as a list."));

export const slack = number({
  name: "slack",
  help: "Length added to each run for both its ends together, in the unit of the lengths.",
  min: 0,
  max: LONGEST,
});

export const waste = number({
  name: "waste",
  help: "Share added to each run and its slack for waste: 0.1 or 10%.",
  min: 0,
  max: 1,
  advice: "Write 0.1 or 10% for ten per cent",
});

const MOST_IN_A_BUNDLE = 256;

export const bundleCounts = optional(
  list(
    number({
      name: "bundle_counts",
      help: "How many like cables each bundle has; left out, 1.",
      integer: true,
      min: 0,
      max: MOST_IN_A_BUNDLE,
      advice: "Count the cables of the bundle",
    }),
  ),
);

/** What is cut and bought beyond the runs as they are; the last arguments of whatever packs them. */
export const cuttingParameters = [
  optional(
    choice({
      name: "cut_at",
      help: "Which length of a run is cut: likely, as it stands in the lists, or longest.",
      choices: CUT_AT,
    }),
    "likely",
  ),
  optional(
    runLengths(
      "longest",
      "The longest that each run in lengths may have; a blank one is its length and the tolerance.",
    ),
  ),
  optional(
    number({
      name: "tolerance",
      help: "Share by which a run may turn out longer, for the longest lengths: 0.1 or 10%.",
      min: 0,
      max: 1,
      advice: "Write 0.1 or 10% for ten per cent",
    }),
    0,
  ),
  optional(
    number({
      name: "spare_share",
      help: "Spare runs as a share of the runs of a cable, at least one, each as long as its longest; 0 is none.",
      min: 0,
      max: 1,
      advice: "Write 0.1 or 10% for ten per cent",
    }),
    0,
  ),
  optional(
    number({
      name: "spare_least",
      help: "Spare runs of each cable at the least; 0 is as the share says.",
      integer: true,
      min: 0,
      max: MOST_IN_A_BUNDLE,
      advice: "Count the runs",
    }),
    0,
  ),
  optional(runLengths("stock_lengths", "What is left on each reel in stock, which is used first.")),
  optional(runCables("stock_cables", "The cable of each reel in stock.")),
] as const;

type Entries<T> = readonly ListEntry<T>[] | undefined;

/** The values of the cutting parameters, in their order. */
export type CuttingGiven = readonly [
  at: Cutting["at"] | undefined,
  longest: Entries<number>,
  tolerance: number | undefined,
  spareShare: number | undefined,
  spareLeast: number | undefined,
  stockLengths: Entries<number>,
  stockCables: Entries<string>,
];

/** Which length of a run counts, how many spare runs there are, and what is in stock, of those values. */
export const cuttingOf = ([
  at = "likely",
  longest,
  tolerance = 0,
  share = 0,
  least = 0,
  stockLengths,
  stockCables,
]: CuttingGiven) => ({
  cutting: { at, tolerance },
  spare: { share, least },
  /** The first list has the longest lengths beside it. */
  withLongest: ([first, ...others]: readonly [RunList, ...RunList[]]): RunList[] => [
    // What is not asked for can't be wrong.
    at === "longest" ? { ...first, longest } : first,
    ...others,
  ],
  started: (cable?: string): number[] | Fault => inStock(stockLengths, stockCables, cable),
});

function inStock(lengths: Entries<number>, cables: Entries<string>, cable?: string): number[] | Fault {
  if (!lengths) return [];
  if (cable !== undefined && !cables)
    return faults.missing("stock_cables", "the cable of each reel in stock");
  if (cables && cables.length !== lengths.length)
    return faults.shortColumn("stock_cables", cables.length, lengths.length);
  const found: number[] = [];
  for (const [index, length] of lengths.entries()) {
    if (length === null || length === 0) continue;
    if (isFault(length)) return faults.atRow("stock_lengths", index + 1, length);
    const own = cables?.[index] ?? null;
    if (isFault(own)) return faults.atRow("stock_cables", index + 1, own);
    if (cable === undefined || own?.toLowerCase() === cable.toLowerCase()) found.push(length);
  }
  return found;
}
