/**
 * A whole small job: from counting tuners to the price, each answer feeding the next.
 *
 * Key: the engine's functions, as in the other sets.
 */
import { isFault } from "../../engine/faults";
import { sellPrice } from "../../engine/estimate/sellPrice";
import { COPPER_PER_C } from "../../engine/power/constants";
import { loadVolts } from "../../engine/power/loadVolts";
import { loopOhms } from "../../engine/power/loopOhms";
import { cableLoss } from "../../engine/signal/cableLoss";
import { LOSS_PER_C } from "../../engine/signal/constants";
import { METRES_PER_FOOT, toMetres } from "../../engine/signal/lengthUnits";
import { splitterLoss } from "../../engine/signal/splitterLoss";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import { arithmetic, Working } from "../../engine/working/steps";
import { BONDING_CAUTION, MAINS_CAUTION, ROOF_CAUTION } from "../cautionLines";
import { trainingSet, type Earlier } from "../exercise";
import { headUnitsQuestion } from "../questions/headUnitsQuestion";
import { cableLossSlips } from "../slips/cableLosses";
import { receivers, recorders } from "../slips/counts";
import { dropSlips } from "../slips/drops";
import { amperes, megahertz, perHundred } from "../slips/factors";
import { heat } from "../slips/heat";
import { feet, oneWay, timesPerHundred } from "../slips/lengths";
import { levelSlips } from "../slips/levels";
import { ways } from "../slips/logarithms";
import { marginOfPrice, percentAdded } from "../slips/percents";
import { splitterSlips } from "../slips/splitters";
import { added, takenOff } from "../slips/terms";
import { workedBy } from "../workedBy";
import { cableNamed, cableRow, figuresOf, lossFigures, TRAINING_CABLES } from "./trainingCables";

interface Numbers {
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

const RECORDER = "recorder, 2 tuners";
const tunersOf = ({ receivers: ones, recorders: twos }: Numbers): number =>
  ones * (tunersOfKind("receiver") as number) + twos * (tunersOfKind(RECORDER) as number);
const lossFactor = (hot: number): number => 1 + LOSS_PER_C * (hot - 20);
/** As the hint has it. */
const reckoned = ({ k1, k2, k0, high, hot }: Numbers, metres: number): number =>
  ((k1 * Math.sqrt(high) + k2 * high + k0) / 100) * metres * lossFactor(hot);
/** Of the trunk to the head unit, of the same cable. */
const loopOf = (n: Numbers): number => {
  const ohms = loopOhms(cableNamed(n.cable), n.trunk, n.hot);
  return isFault(ohms) ? NaN : ohms;
};
const cost = (n: Numbers, units: number): number => units * n.unitPrice + n.parts + n.hours * n.rate;

/** Prices that come of another reckoning, in cost, margin and tax in percent. */
const TOTAL: readonly (readonly [string, (cost: number, margin: number, tax: number) => number, boolean?])[] =
  [
    ["tax on the cost instead of the price", (c, m, t) => c / (1 - m / 100) + (c * t) / 100],
    ["tax on the profit only", (c, m, t) => c / (1 - m / 100) + ((c / (1 - m / 100) - c) * t) / 100, true],
    ["margin taken as money", (c, m, t) => (c + m) * (1 + t / 100), true],
    ["tax taken as money", (c, m, t) => c / (1 - m / 100) + t, true],
    ["margin and tax added up in one", (c, m, t) => c * (1 + (m + t) / 100), true],
    ["margin and tax taken off together", (c, m, t) => c / (1 - (m + t) / 100), true],
    ["margin and tax exchanged", (c, m, t) => (c / (1 - t / 100)) * (1 + m / 100), true],
  ];

export const smallJobSet = trainingSet<Numbers>({
  id: "small-job",
  title: "A whole small job",
  about: "Tuners, head units, level, volts, cost and price of one small house, each answer feeding the next.",
  cautions: [ROOF_CAUTION, MAINS_CAUTION, BONDING_CAUTION],
  draw: (random) => {
    const cable = random.pick(TRAINING_CABLES.slice(0, 3)).name;
    return {
      receivers: random.whole(6, 16),
      recorders: random.whole(2, 8),
      capacity: random.pick([6, 8, 12]),
      ways: random.pick([2, 3, 4, 6, 8]),
      excess: random.stepped(0.8, 3.2, 0.1),
      cable,
      ...figuresOf(cable),
      feet: random.stepped(60, 220, 5),
      high: random.stepped(1950, 2150, 10),
      hot: random.stepped(45, 65, 1),
      level: random.stepped(76, 92, 0.5),
      plate: random.stepped(0.6, 2, 0.1),
      trunk: random.stepped(12, 45, 1),
      supply: random.pick([13, 13.5, 14, 14.5]),
      amperes: random.stepped(0.18, 0.4, 0.01),
      unitPrice: random.stepped(85, 260, 2.5),
      parts: random.stepped(400, 1600, 5),
      hours: random.stepped(8, 40, 0.5),
      rate: random.stepped(38, 72, 0.5),
      margin: random.whole(15, 35),
      tax: random.pick([7, 8, 10, 19, 20, 21, 25]),
    };
  },
  plausible: (_, { units, level, volts: left }) =>
    Number(units) >= 2 && Number(level) >= 40 && Number(level) <= 80 && Number(left) >= 8,
  questions: [
    {
      key: "tuners",
      heading: "Tuners",
      task: "How many tuners, and so user bands, does the house need?",
      given: (n) => [
        { label: "Receivers", value: n.receivers, unit: "pieces", of: "receivers", invites: [receivers] },
        {
          label: "Recorders of two tuners",
          value: n.recorders,
          unit: "pieces",
          of: "recorders",
          invites: [recorders(2)],
        },
      ],
      answer: { kind: "number", unit: "tuners", decimals: 0, exact: true },
      needs: [],
      solve: tunersOf,
      slips: [
        {
          name: "receivers counted as two, recorders as one",
          wrong: (n) => 2 * n.receivers + n.recorders,
          seldom: true,
        },
        {
          name: "every box counted as two tuners",
          wrong: (n) => 2 * (n.receivers + n.recorders),
          seldom: true,
        },
        {
          name: "multiplied instead of added",
          wrong: (n) => n.receivers * n.recorders * 2,
          seldom: true,
        },
      ],
      hints: ["One tuner takes one user band. A recorder counts with all its tuners."],
      example: (n) => {
        const work = new Working();
        const ones = work.given("r", "receivers", n.receivers);
        const twos = work.given("p", "recorders of two tuners", n.recorders);
        work.worked(
          "n",
          "tuners, r·1 + p·2",
          ones + 2 * twos,
          "tuners",
          arithmetic`${ones}·1 + ${twos}·2`,
          "EN 50494; recorders: common practice, no source",
        );
        return work.steps;
      },
    },
    headUnitsQuestion<Numbers>(
      "How many head units does that take at the least? Use your answer to 1.",
      "Divide and round up.",
      { all: (n) => n.receivers + n.recorders, recorders: (n) => n.recorders },
    ),
    {
      key: "splitter",
      heading: "Loss of the splitter",
      task: "The farthest outlet hangs on a splitter. What does the splitter lose?",
      given: (n) => [
        { label: "Ways of the splitter", value: n.ways, unit: "ways", of: "ways", invites: [ways] },
        {
          label: "Its loss beyond the ideal",
          called: "loss beyond the ideal",
          value: n.excess,
          unit: "dB",
          of: "excess",
          invites: [added],
        },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: [],
      solve: (n) => splitterLoss(n.ways, n.excess),
      slips: splitterSlips<Numbers>(
        (n) => n.ways,
        (n) => n.excess,
      ),
      hints: ["Loss = 10·log10(ways) + loss beyond the ideal."],
      example: (n) => workedBy("SPLITLOSS", [n.ways, n.excess]),
    },
    {
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
    },
    {
      key: "level",
      heading: "Level at the outlet",
      task: "What level is left at that outlet? Use your answers to 3 and 4.",
      given: ({ level, plate }) => [
        { label: "Level of the head unit, high end", value: level, unit: "dBµV", of: "level" },
        { label: "Loss of the outlet", value: plate, unit: "dB", of: "plate", invites: [takenOff] },
      ],
      answer: { kind: "number", unit: "dBµV", decimals: 1 },
      needs: ["splitter", "loss"],
      solve: ({ level, plate }, e) => level - e.splitter! - e.loss! - plate,
      uses: { splitter: [takenOff], loss: [takenOff] },
      slips: [
        {
          name: "heat left out",
          wrong: ({ level, plate, hot }, e) => level - e.splitter! - e.loss! / lossFactor(hot) - plate,
        },
        ...levelSlips<Numbers>(
          ({ level }) => level,
          ({ plate }, e) => [e.splitter!, e.loss!, plate],
        ),
      ],
      hints: ["Level out = level in - all losses on the way."],
      example: ({ level, plate }, e) => {
        const work = new Working();
        const l = work.given("Lin", "level of the head unit", level, "dBµV");
        const s = work.given("S", "loss of the splitter", e.splitter!, "dB");
        const a = work.given("A", "loss of the cable", e.loss!, "dB");
        const p = work.given("p", "loss of the outlet", plate, "dB");
        work.worked(
          "L",
          "level, Lin − S − A − p",
          l - s - a - p,
          "dBµV",
          arithmetic`${l} − ${s} − ${a} − ${p}`,
          "Decibels along a path add",
        );
        return work.steps;
      },
    },
    {
      key: "volts",
      heading: "Volts at the head unit",
      task: "The head unit is fed down its trunk, of the same cable. What volts has it on the hottest day of 4?",
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
    },
    {
      key: "cost",
      heading: "Cost",
      task: "What does the job cost? Use your answer to 2.",
      given: ({ unitPrice, parts, hours, rate }) => [
        { label: "Price of a head unit", value: unitPrice, unit: "money", of: "unitPrice" },
        {
          label: "All other parts",
          called: "other parts",
          value: parts,
          unit: "money",
          of: "parts",
          invites: [added],
        },
        { label: "Labour", value: hours, unit: "hours", of: "hours", invites: [added] },
        { label: "Rate", value: rate, unit: "money/hour", of: "rate" },
      ],
      answer: { kind: "number", unit: "money", decimals: 2 },
      needs: ["units"],
      solve: (n, { units }) => cost(n, units!),
      slips: [
        { name: "one head unit priced only", wrong: (n) => cost(n, 1) },
        { name: "head units left out", wrong: (n) => cost(n, 0) },
        {
          name: "part of a head unit priced instead of whole ones",
          wrong: (n, { tuners }) => (tuners === undefined ? undefined : cost(n, tuners / n.capacity)),
        },
        { name: "one head unit too few priced", wrong: (n, { units }) => cost(n, units! - 1) },
        {
          name: "a head unit priced for each tuner",
          wrong: (n, { tuners }) => (tuners === undefined ? undefined : cost(n, tuners)),
          seldom: true,
        },
        {
          name: "hours added as money",
          wrong: (n, { units }) => units! * n.unitPrice + n.parts + n.hours,
          seldom: true,
        },
        { name: "one hour only", wrong: (n, { units }) => cost({ ...n, hours: 1 }, units!), seldom: true },
        {
          name: "hours taken for minutes",
          wrong: (n, { units }) => cost({ ...n, hours: n.hours / 60 }, units!),
          seldom: true,
        },
        {
          name: "other parts taken for each head unit",
          wrong: (n, { units }) => cost({ ...n, parts: n.parts * units! }, units!),
          seldom: true,
        },
        {
          name: "labour taken for each head unit",
          wrong: (n, { units }) => cost({ ...n, hours: n.hours * units! }, units!),
          seldom: true,
        },
        {
          name: "half an hour read as 50 minutes",
          wrong: (n, { units }) =>
            n.hours % 1 === 0 ? undefined : cost({ ...n, hours: Math.floor(n.hours) + 50 / 60 }, units!),
          seldom: true,
        },
      ],
      hints: ["Head units·price + other parts + hours·rate."],
      example: ({ unitPrice, parts, hours, rate }, { units }) => {
        const work = new Working();
        const h = work.given("h", "head units", units!);
        const p = work.given("p", "price of a head unit", unitPrice, "money");
        const o = work.given("o", "other parts", parts, "money");
        const t = work.given("t", "labour", hours, "hours");
        const r = work.given("r", "rate", rate, "money/hour");
        work.worked(
          "C",
          "cost, h·p + o + t·r",
          h * p + o + t * r,
          "money",
          arithmetic`${h}·${p} + ${o} + ${t}·${r}`,
          "",
        );
        return work.steps;
      },
    },
    {
      key: "total",
      heading: "Price with margin and tax",
      task: "What does the customer pay, with margin and tax? Use your answer to 7.",
      given: ({ margin, tax }) => [
        {
          label: "Margin, of the price without tax",
          called: "margin",
          value: margin,
          unit: "%",
          of: "margin",
          invites: [marginOfPrice],
        },
        {
          label: "Tax on that price",
          called: "tax",
          value: tax,
          unit: "%",
          of: "tax",
          invites: [percentAdded],
        },
      ],
      answer: { kind: "number", unit: "money", decimals: 2 },
      needs: ["cost"],
      solve: ({ margin, tax }, e) => {
        const price = sellPrice(e.cost!, margin / 100);
        return isFault(price) ? price : price * (1 + tax / 100);
      },
      formula: ({ margin, tax }, e) => (e.cost! / (1 - margin / 100)) * (1 + tax / 100),
      slips: TOTAL.map(([name, wrong, seldom = false]) => ({
        name,
        wrong: (n: Numbers, e: Earlier) => wrong(e.cost!, n.margin, n.tax),
        seldom,
      })),
      hints: ["Price = cost/(1 - margin); total = price·(1 + tax). What is taxed is for the local rules."],
      example: ({ margin, tax }, e) => {
        const work = new Working();
        const t = work.given("t", "tax", tax, "%");
        const price = e.cost! / (1 - margin / 100);
        const steps = [...workedBy("SELLPRICE", [e.cost!, margin / 100])];
        work.worked(
          "T",
          "total, S·(1 + t/100)",
          price * (1 + t / 100),
          "money",
          arithmetic`${price}·(1 + ${t}/100)`,
          "",
        );
        return [...steps, ...work.steps];
      },
    },
  ],
});
