/** The arguments that the estimate functions share. */
import { ROUNDING_RULES } from "../../engine/estimate/exact";
import { choice, list, number, text } from "../core/parameters";

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

export const reelLength = number({
  name: "reel",
  help: "Length of cable on one reel, in the unit of the lengths.",
  min: 0,
  aboveMin: true,
  max: LONGEST,
  advice: "Give the length on one reel",
});

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
