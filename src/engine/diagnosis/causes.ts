/**
 * What can be wrong with an installation and what each cause does to the
 * levels, as figures that a sheet can replace.
 *
 * Every figure is our assumption, no source, where no other word stands beside
 * it; a crew's own tally of faults is better and belongs into the sheet.
 */
import type { Decibels, DecibelMicrovolts, Megahertz, Volts } from "../quantity";

/** How the loss runs between the lowest and the highest frequency measured. */
export type Shape = "flat" | "root" | "above";

/** What the supply does where the cause sits. */
export type Power = "kept" | "lost" | "low";

export type Place = "head unit" | "outlet or branch" | "outlet";

/** Above a head unit: a dish, a bundle of feeders, a switch that hands on to others. */
export type PlaceAbove = "dish" | "feeder" | "switch before";

export interface Cause {
  readonly cause: string;
  /** Chance that it is there, for each place where it can be. */
  readonly chance: number;
  /** Typical loss at the lowest and at the highest frequency; a gain is negative. */
  readonly low: Decibels;
  readonly high: Decibels;
  /** Standard deviation of the loss as a share of the typical one. */
  readonly spread: number;
  /** Standard deviation of a further difference between the two ends. */
  readonly tilt: Decibels;
  readonly shape: Shape;
  readonly place: Place;
  /** Where above the head units it can be as well, and reach all of those that come after. */
  readonly above?: PlaceAbove;
  /** What it may do to the supply and to the whole signal, with weights. */
  readonly ways: readonly { readonly power: Power; readonly dead?: boolean; readonly weight: number }[];
  /** What to measure next to tell it from the others. */
  readonly next: string;
}

export const SWAPPED = "wrong port";

export const CAUSES: readonly Cause[] = [
  {
    cause: "misaligned",
    chance: 0.05,
    low: 5,
    high: 5,
    spread: 0.5,
    tilt: 0.3,
    shape: "flat",
    place: "head unit",
    above: "dish",
    // The dish has no part in the supply.
    ways: [{ power: "kept", weight: 1 }],
    next: "Peak the dish by equal drops either side, then measure one outlet again: a misaligned dish gains at all outlets alike.",
  },
  {
    cause: "wrong or wet cable",
    chance: 0.01,
    low: 4.5,
    high: 7,
    spread: 0.5,
    tilt: 0.6,
    shape: "root",
    place: "outlet or branch",
    above: "feeder",
    ways: [{ power: "kept", weight: 1 }],
    next: "Measure at both ends of this run, at the lowest and the highest frequency: water or a wrong type loses along the run, most at the highest frequency; read the cable's print.",
  },
  {
    cause: "unrated splitter in the run",
    chance: 0.01,
    low: 3.5,
    high: 12,
    spread: 0.35,
    tilt: 1.5,
    shape: "above",
    place: "outlet or branch",
    // Splitters for the terrestrial band seldom pass a supply: from memory.
    ways: [
      { power: "lost", weight: 0.7 },
      { power: "kept", weight: 0.3 },
    ],
    next: "Measure in the middle of the band, near 1000 and 1500 MHz, and follow the run: an unrated splitter falls off steeply above 1000 MHz.",
  },
  {
    cause: "bad connector",
    chance: 0.015,
    low: 7,
    high: 5,
    spread: 0.5,
    tilt: 2.5,
    shape: "flat",
    place: "outlet or branch",
    above: "feeder",
    ways: [
      { power: "low", weight: 0.5 },
      { power: "kept", weight: 0.25 },
      { power: "lost", weight: 0.1 },
      { power: "lost", dead: true, weight: 0.15 },
    ],
    next: "Make the connectors of this run anew one by one and measure after each; move the cable: a reading that jumps is a bad contact.",
  },
  {
    cause: "leg that passes no power",
    chance: 0.01,
    low: 0,
    high: 0,
    spread: 0,
    tilt: 0,
    shape: "flat",
    place: "outlet or branch",
    ways: [{ power: "lost", weight: 1 }],
    next: "Measure volts at the port of the splitter that feeds it and at its input: power in and none out is the leg.",
  },
  {
    cause: SWAPPED,
    chance: 0.01,
    low: -8,
    high: -8,
    spread: 0.4,
    tilt: 0.5,
    shape: "flat",
    place: "outlet",
    ways: [{ power: "kept", weight: 1 }],
    next: "Send a tone down the cable from this outlet, or unplug it, and see which port it is on.",
  },
  {
    cause: "inserter missing or weak",
    chance: 0.03,
    low: 4,
    high: 4,
    spread: 0.7,
    tilt: 0.5,
    shape: "flat",
    place: "head unit",
    above: "switch before",
    ways: [
      { power: "lost", dead: true, weight: 0.5 },
      { power: "low", weight: 0.3 },
      { power: "low", dead: true, weight: 0.2 },
    ],
    next: "Measure volts at the inserter's output and at the head unit under load.",
  },
  {
    cause: "over-level",
    chance: 0.03,
    low: -6,
    high: -6,
    spread: 0.5,
    tilt: 0.5,
    shape: "flat",
    place: "head unit",
    ways: [{ power: "kept", weight: 1 }],
    next: "Measure at the head unit's output: if it is high there too, check its kind and gain, and attenuate before the first branch.",
  },
  {
    cause: "something not in this list",
    chance: 0.001,
    low: 4,
    high: 4,
    spread: 2,
    tilt: 6,
    shape: "flat",
    place: "outlet",
    ways: [{ power: "kept", weight: 1 }],
    next: "Measure this outlet once more with another meter and lead, before anything is taken apart.",
  },
];

/** Meter error: a reading lies anywhere within ± this with equal chance. Figure of the trade, no source. */
export const METER_ERROR_DB: Decibels = 1.5;
/** Standard deviation of what a prediction misses at one outlet: run lengths, plates. */
export const OUTLET_SPREAD_DB: Decibels = 0.5;
/** Standard deviation of the level that a head unit gives by itself. */
export const HEAD_SPREAD_DB: Decibels = 0.8;
/** At or below it a hand meter shows its own noise: no signal. From memory. */
export const DEAD_DBUV: DecibelMicrovolts = 30;
/** Standard deviation of volts read against volts predicted. */
export const VOLTS_SPREAD: Volts = 0.5;
/** Volts from which a leg counts as fed. */
export const NO_VOLTS: Volts = 1;
/** Above it an unrated splitter's loss climbs. */
export const RATED_TO_MHZ: Megahertz = 1000;
/** A swap is looked at where the two predictions differ by this or more. */
export const LEAST_SWAP_DB: Decibels = 2;
/** Chance of a reading that no model covers: a slip of the pen. */
export const SLIP = 1e-5;
