/** Of a small job: what its cable takes in heat, and the volts that its trunk leaves. */
import { isFault } from "../../engine/faults";
import { COPPER_PER_C } from "../../engine/power/constants";
import { loadVolts } from "../../engine/power/loadVolts";
import { loopOhms } from "../../engine/power/loopOhms";
import { cableLoss } from "../../engine/signal/cableLoss";
import { LOSS_PER_C } from "../../engine/signal/constants";
import { METRES_PER_FOOT, toMetres } from "../../engine/signal/lengthUnits";
import type { Question } from "../exercise";
import { cableLossSlips } from "../slips/cableLosses";
import { dropSlips } from "../slips/drops";
import { amperes, megahertz, perHundred } from "../slips/factors";
import { heat } from "../slips/heat";
import { feet, oneWay, timesPerHundred } from "../slips/lengths";
import { workedBy } from "../workedBy";
import { cableNamed, cableRow, lossFigures } from "./trainingCables";

export interface JobNumbers {
  readonly receivers: number;
  readonly recorders: number;
  readonly capacity: number;
  readonly ways: number;
  readonly excess: number;
  readonly cable: string;
  readonly k1: number;
  readonly k2: number;
  readonly k0: number;
  readonly loop: number;
  readonly feet: number;
  readonly high: number;
  readonly hot: number;
  readonly level: number;
  readonly plate: number;
  readonly trunk: number;
  readonly supply: number;
  readonly amperes: number;
  readonly unitPrice: number;
  readonly parts: number;
  readonly hours: number;
  readonly rate: number;
  readonly margin: number;
  readonly tax: number;
}

type Numbers = JobNumbers;

export const lossFactor = (hot: number): number => 1 + LOSS_PER_C * (hot - 20);
/** As the hint has it. */
const reckoned = ({ k1, k2, k0, high, hot }: Numbers, metres: number): number =>
  ((k1 * Math.sqrt(high) + k2 * high + k0) / 100) * metres * lossFactor(hot);
/** Of the trunk to the head unit, of the same cable. */
const loopOf = (n: Numbers): number => {
  const ohms = loopOhms(cableNamed(n.cable), n.trunk, n.hot);
  return isFault(ohms) ? NaN : ohms;
};
export const cableInHeat: Question<Numbers> = {
  key: "loss",
  heading: "Loss of the cable in heat",
  task: "What does the whole cable to that outlet lose at the highest frequency on the hottest day?",
  given: (n) => [
    ...lossFigures(n),
    {
      label: "Length of cable to the outlet",
      called: "length",
      value: n.feet,
      unit: "ft",
      of: "feet",
      invites: [feet, timesPerHundred(100 / METRES_PER_FOOT)],
    },
    { label: "Highest frequency", value: n.high, unit: "MHz", of: "high", invites: [megahertz] },
    {
      label: "Hottest cable",
      value: n.hot,
      unit: "°C",
      of: "hot",
      invites: [heat(LOSS_PER_C, { k: COPPER_PER_C, of: "the resistance" })],
    },
  ],
  answer: { kind: "number", unit: "dB", decimals: 1 },
  needs: [],
  solve: (n) => cableLoss(cableNamed(n.cable), toMetres(n.feet, "ft"), n.high, n.hot),
  formula: (n) => reckoned(n, toMetres(n.feet, "ft")),
  slips: [
    ...cableLossSlips<Numbers>(
      (n) => reckoned(n, toMetres(n.feet, "ft")),
      (n) => n.high,
    ),
    {
      name: "what heat adds taken as decibels",
      wrong: (n) => reckoned({ ...n, hot: 20 }, toMetres(n.feet, "ft")) + LOSS_PER_C * (n.hot - 20),
      seldom: true,
    },
  ],
  hints: [
    "Loss of 100 m at 20 °C = k1·√f + k2·f + k0; 0.198 % more for each °C above 20. A foot is 0.3048 m.",
  ],
  example: (n) => workedBy("CABLELOSS", [n.cable, n.feet, n.high, n.hot, "ft", [cableRow(n.cable)]]),
};

export const trunkVolts: Question<Numbers> = {
  key: "volts",
  heading: "Volts at the head unit",
  task: "The head unit is fed down its trunk, of the same cable. What voltage reaches it at question 4's temperature?",
  given: (n) => [
    {
      label: "Loop resistance at 20 °C",
      value: n.loop,
      unit: "ohm/100 m",
      of: "loop",
      invites: [perHundred],
    },
    { label: "Length of the trunk, one way", value: n.trunk, unit: "m", of: "trunk", invites: [oneWay] },
    { label: "Volts of the supply", value: n.supply, unit: "V", of: "supply" },
    {
      label: "Current of the head unit",
      called: "current",
      value: n.amperes,
      unit: "A",
      of: "amperes",
      invites: [amperes],
    },
  ],
  before: (n) => [
    {
      label: "Hottest cable",
      value: n.hot,
      unit: "°C",
      of: "hot",
      invites: [heat(COPPER_PER_C, { k: LOSS_PER_C, of: "the signal's loss" })],
    },
  ],
  answer: { kind: "number", unit: "V", decimals: 2 },
  needs: [],
  solve: (n) => loadVolts(n.supply, n.amperes, loopOf(n), "A"),
  formula: (n) => n.supply - n.amperes * (n.loop / 100) * n.trunk * (1 + COPPER_PER_C * (n.hot - 20)),
  slips: [
    { name: "added instead of subtracted", wrong: (n) => n.supply + n.amperes * loopOf(n) },
    { name: "volts of the supply given", wrong: (n) => n.supply },
    {
      name: "figure of 100 m taken for that of the trunk",
      wrong: (n) => n.supply - (n.amperes * loopOf(n) * 100) / n.trunk,
      seldom: true,
    },
    {
      name: "length to the outlet taken for the trunk",
      wrong: (n) => n.supply - (n.amperes * loopOf(n) * toMetres(n.feet, "ft")) / n.trunk,
      seldom: true,
    },
    {
      name: "loss in decibels subtracted from volts",
      wrong: (n, { loss }) => (loss === undefined ? undefined : n.supply - loss),
      seldom: true,
    },
    ...dropSlips<Numbers>(
      (n) => n.supply,
      (n) => n.amperes * loopOf(n),
      loopOf,
      (n) => n.amperes,
    ).filter(({ name }) => name !== "there and back counted twice"),
  ],
  hints: ["Volts = supply - amperes·ohms in heat; copper: 0.393 % more ohms for each °C above 20."],
  example: (n) => [
    ...workedBy("LOOPOHMS", [n.cable, n.trunk, n.hot, "m", [cableRow(n.cable)]]),
    ...workedBy("LOADVOLTS", [n.supply, n.amperes, loopOf(n), "A"]),
  ],
};
