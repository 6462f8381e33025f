/**
 * Levels that are in another unit, have lost their point, or are no levels at all.
 *
 * Source: dBmV = dBµV − 60; dBm = dBµV − 108.75 in 75 Ω; dBµV = 20·log10(µV): by definition.
 * Accuracy: a unit is only suspected where most readings fit it and do not fit dBµV. How near counts as fitting
 *   is our assumption, no source.
 */
import type { DecibelMicrovolts, Decibels } from "../quantity";
import { DEAD_DBUV } from "./causes";
import type { Doubt, Level } from "./typedOutlet";

/** Around the prediction: a usual fault may lie in it. */
const NEAR_DB: Decibels = 9;
/** Where the noise of a dead outlet could lie as well. */
const NEARER_DB: Decibels = 5;
/** Share of the readings that must agree. */
const MOST = 0.7;
/** Of fewer readings nothing is said as a whole. */
export const FEWEST = 4;
/** No hand meter shows more. */
export const MOST_LEVEL: DecibelMicrovolts = 130;
/** Nor, with nothing connected, less than this of its own noise: our assumption, no source. */
const LEAST_NOISE: DecibelMicrovolts = 15;
const FAR_TOO_MUCH_DB: Decibels = 15;
/** Predictions that differ less can't be told from one value that was filled down. */
const SOME_RANGE_DB: Decibels = 3;
/** Qualities lie closer together than a meter's noise at dead outlets. */
const QUALITY_RANGE_DB: Decibels = 12;

const near = (value: number, predicted: DecibelMicrovolts): boolean => Math.abs(value - predicted) <= NEAR_DB;

export interface Mistaken {
  readonly what: string;
  readonly next: string;
  fits(level: Level): boolean;
}

const TENFOLD: Mistaken = {
  what: "they are 10 times too large, so a decimal point may be missing",
  next: "Enter each level with its decimal point.",
  fits: ({ value, predicted }) => value > MOST_LEVEL && near(value / 10, predicted),
};
const SIGN: Mistaken = {
  what: "only the sign is wrong",
  next: "Enter the levels without a minus sign.",
  fits: ({ value, predicted }) => value < 0 && near(-value, predicted),
};

/** What keeps to the prediction reading by reading, in a way that no dead outlet's noise does. */
const CONVERTED: readonly Mistaken[] = [
  {
    what: "60 less is what dBmV shows",
    next: "Set the meter to dBµV, or add 60 to each level.",
    fits: ({ value, predicted }) =>
      value !== 0 && Math.abs(value + 60 - predicted) <= (value < 0 ? NEAR_DB : NEARER_DB),
  },
  {
    what: "108.75 less is what dBm shows in 75 Ω",
    next: "Set the meter to dBµV, or add 108.75 to each level.",
    fits: ({ value, predicted }) => value < 0 && near(value + 108.75, predicted),
  },
  {
    what: "they may be µV",
    next: "Set the meter to dBµV, or enter 20·log10 of each.",
    fits: ({ value, predicted }) => value > MOST_LEVEL && near(20 * Math.log10(value), predicted),
  },
  TENFOLD,
  SIGN,
];

/** What is no level at all. A dead head unit reads alike, so only of a whole job. */
const NO_LEVELS: readonly Mistaken[] = [
  {
    what: "0 stands in all of them",
    next: "Leave blank what was not measured, and enter “no signal” where the meter found none.",
    fits: ({ value }) => value === 0,
  },
  {
    what: "they may be percent",
    next: "Enter the level, not the quality in percent.",
    fits: ({ value }) => value > 0 && value <= 1,
  },
];
const NOT_LEVELS: readonly Mistaken[] = [
  {
    what: "they may be differences from the prediction",
    next: "Enter the level itself.",
    fits: ({ value, predicted }) => Math.abs(value) <= 10 && predicted > DEAD_DBUV,
  },
  {
    what: "they may be carrier to noise in dB",
    next: "Enter the level, not the quality.",
    fits: ({ value, predicted }) => value > 4 && value < LEAST_NOISE + 6 && predicted > DEAD_DBUV + 6,
  },
];

/** Of one reading beside others that are fine: what is read as a slip of its own. */
export const slipOf = (level: Level): Mistaken | undefined =>
  [
    TENFOLD,
    SIGN,
    {
      what: "they are 10 times too small, so the decimal point may stand one place too far left",
      next: "",
      fits: ({ value, predicted }: Level) => predicted > DEAD_DBUV && near(value * 10, predicted),
    },
  ].find(({ fits }) => fits(level));

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

/** Its supply is there, so that what little is read is not the noise of dead outlets. */
function isFed(levels: readonly Level[]): boolean {
  const outlets = new Set(levels.map(({ outlet }) => outlet));
  const read = [...outlets].flatMap(({ volts, voltsPredicted }) =>
    volts.kind === "value" && voltsPredicted !== null ? [volts.value > voltsPredicted * 0.7] : [],
  );
  return read.length > 0 && read.filter(Boolean).length > read.length / 2;
}

const range = (of: readonly number[]): number => Math.max(...of) - Math.min(...of);

/**
 * @param levels that go together: those of the job, of a head unit, of an outlet
 * @param where what they are called
 * @param of the job as a whole, or a part of it
 * @returns a doubt about all of them, if most can't be dBµV
 */
export function mistakenUnit(
  levels: readonly Level[],
  where: string,
  of: "job" | "part" | "outlet",
): Doubt | undefined {
  if (levels.length < (of === "outlet" ? 2 : FEWEST)) return undefined;
  const most = (test: (level: Level) => boolean): boolean =>
    levels.filter(test).length >= MOST * levels.length;
  // A dish off its aim or a dead cable is a finding, not a slip.
  if (most(({ value, predicted }) => near(value, predicted))) return undefined;
  const values = levels.map(({ value }) => value);
  const typical = `typically ${shown(median(values))} where ${shown(median(levels.map(({ predicted }) => predicted)))} is predicted`;
  const doubt = (what: string, next: string): Doubt => ({
    where,
    message: `These readings do not look like dBµV: ${typical}; ${what}.`,
    next: `${next} Until then no cause is told from them.`,
  });
  // Two readings of one outlet can be noise that happens to fit; none of it is below zero.
  if (of === "outlet" && !values.some((value) => value < 0 || value > MOST_LEVEL)) return undefined;
  const units =
    of !== "job"
      ? CONVERTED
      : [
          ...NO_LEVELS,
          ...CONVERTED,
          ...(isFed(levels) && range(values) <= QUALITY_RANGE_DB ? NOT_LEVELS : []),
        ];
  const unit = units.find(({ fits }) => most(fits));
  if (unit) return doubt(unit.what, unit.next);
  if (of !== "job") return undefined;
  if (
    levels.length >= 2 * FEWEST &&
    range(values) === 0 &&
    range(levels.map((one) => one.predicted)) > SOME_RANGE_DB
  )
    return {
      where,
      message: `The same value, ${shown(values[0]!)} dBµV, stands in all of these readings, where the prediction differs: it may have been filled down.`,
      next: "Enter what was measured at each outlet. Until then no cause is told from them.",
    };
  // Far too much everywhere is no fault of a distribution; far too little may be one.
  if (!most(({ value, predicted }) => value > predicted + FAR_TOO_MUCH_DB)) return undefined;
  return most(({ value }) => Number.isInteger(value) && value <= 100)
    ? doubt("whole numbers up to 100 may be percent", "Enter the level, not the quality in percent.")
    : doubt("no fault makes levels so high", "Look at the unit that the meter was set to.");
}

export const shown = (value: number): string =>
  Math.abs(value) >= 1e6 ? value.toExponential(1) : String(Math.round(value * 10) / 10).replace("-", "−");
