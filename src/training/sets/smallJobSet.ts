/**
 * A whole small job: from counting tuners to the price, each answer feeding the next.
 *
 * Key: the engine's functions, as in the other sets.
 */
import { isFault } from "../../engine/faults";
import { sellPrice } from "../../engine/estimate/sellPrice";
import { splitterLoss } from "../../engine/signal/splitterLoss";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import { arithmetic, Working } from "../../engine/working/steps";
import { BONDING_CAUTION, MAINS_CAUTION, ROOF_CAUTION } from "../cautionLines";
import { trainingSet } from "../exercise";
import { headUnitsQuestion } from "../questions/headUnitsQuestion";
import { receivers, recorders } from "../slips/counts";
import { jobCostSlips, jobTotalSlips } from "../slips/jobCosts";
import { levelSlips } from "../slips/levels";
import { ways } from "../slips/logarithms";
import { marginOfPrice, percentAdded } from "../slips/percents";
import { splitterSlips } from "../slips/splitters";
import { added, takenOff } from "../slips/terms";
import { workedBy } from "../workedBy";
import { cableInHeat, lossFactor, trunkVolts, type JobNumbers } from "./smallJobCable";
import { figuresOf, TRAINING_CABLES } from "./trainingCables";

type Numbers = JobNumbers;
const RECORDER = "recorder, 2 tuners";
const tunersOf = ({ receivers: ones, recorders: twos }: Numbers): number =>
  ones * (tunersOfKind("receiver") as number) + twos * (tunersOfKind(RECORDER) as number);
const cost = (n: Numbers, units: number): number => units * n.unitPrice + n.parts + n.hours * n.rate;

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
      task: "The farthest outlet is fed by a splitter. What does the splitter lose?",
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
    cableInHeat,
    {
      key: "level",
      heading: "Level at the outlet",
      task: "What level is left at that outlet? Use your answers to 3 and 4.",
      given: ({ level, plate }) => [
        { label: "Head unit's level, highest frequency", value: level, unit: "dBµV", of: "level" },
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
    trunkVolts,
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
      slips: jobCostSlips<Numbers>(cost),
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
      slips: jobTotalSlips,
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
