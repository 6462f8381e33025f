/**
 * A whole small job: from counting tuners to the price, each answer feeding the next.
 *
 * Key: the engine's functions, as in the other sets.
 */
import { isFault } from "../../engine/faults";
import { sellPrice } from "../../engine/estimate/sellPrice";
import { loadVolts } from "../../engine/power/loadVolts";
import { loopOhms } from "../../engine/power/loopOhms";
import { cableLoss } from "../../engine/signal/cableLoss";
import { toMetres } from "../../engine/signal/lengthUnits";
import { splitterLoss } from "../../engine/signal/splitterLoss";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import { arithmetic, Working } from "../../engine/working/steps";
import { BONDING_CAUTION, MAINS_CAUTION, ROOF_CAUTION } from "../cautionLines";
import { trainingSet } from "../exercise";
import { headUnitsQuestion } from "../questions/headUnitsQuestion";
import { workedBy } from "../workedBy";
import { cableNamed, cableRow, lossFigures, TRAINING_CABLES } from "./trainingCables";

interface Numbers {
  readonly receivers: number;
  readonly recorders: number;
  readonly capacity: number;
  readonly ways: number;
  readonly excess: number;
  readonly cable: string;
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
const tunersOf = ({ receivers, recorders }: Numbers): number =>
  receivers * (tunersOfKind("receiver") as number) + recorders * (tunersOfKind(RECORDER) as number);
const loss = (n: Numbers, metres: number, celsius: number) =>
  cableLoss(cableNamed(n.cable), metres, n.high, celsius);
/** Loop of the trunk to the head unit, of the same cable. */
const loop = (n: Numbers, metres: number, celsius: number): number => {
  const ohms = loopOhms(cableNamed(n.cable), metres, celsius);
  return isFault(ohms) ? NaN : ohms;
};
const volts = (n: Numbers, ohms: number) => loadVolts(n.supply, n.amperes, ohms, "A");
const cost = (n: Numbers, units: number): number => units * n.unitPrice + n.parts + n.hours * n.rate;

export const smallJobSet = trainingSet<Numbers>({
  id: "small-job",
  title: "A whole small job",
  about: "Tuners, head units, level, volts, cost and price of one small house, each answer feeding the next.",
  cautions: [ROOF_CAUTION, MAINS_CAUTION, BONDING_CAUTION],
  draw: (random) => ({
    receivers: random.whole(6, 16),
    recorders: random.whole(2, 8),
    capacity: random.pick([6, 8, 12]),
    ways: random.pick([2, 3, 4, 6, 8]),
    excess: random.stepped(0.8, 3.2, 0.1),
    cable: random.pick(TRAINING_CABLES.slice(0, 3)).name,
    feet: random.stepped(60, 220, 5),
    high: random.stepped(1950, 2150, 10),
    hot: random.stepped(45, 65, 1),
    level: random.stepped(76, 92, 0.5),
    plate: random.stepped(0.6, 2, 0.1),
    trunk: random.stepped(12, 45, 1),
    supply: random.pick([22, 24, 26, 28]),
    amperes: random.stepped(0.18, 0.42, 0.01),
    unitPrice: random.stepped(85, 260, 2.5),
    parts: random.stepped(400, 1600, 5),
    hours: random.stepped(8, 40, 0.5),
    rate: random.stepped(38, 72, 0.5),
    margin: random.whole(15, 35),
    tax: random.pick([7, 8, 10, 19, 20, 21, 25]),
  }),
  plausible: (_, { units, level, volts: left }) =>
    Number(units) >= 2 && Number(level) >= 40 && Number(level) <= 80 && Number(left) >= 15,
  questions: [
    {
      key: "tuners",
      heading: "Tuners",
      task: "How many tuners, and so user bands, does the house need?",
      given: ({ receivers, recorders }) => [
        { label: "Receivers", value: receivers, unit: "pieces" },
        { label: "Recorders of two tuners", value: recorders, unit: "pieces" },
      ],
      answer: { kind: "number", unit: "tuners", decimals: 0, exact: true },
      needs: [],
      solve: tunersOf,
      slips: [
        {
          name: "two-tuner recorder counted as one",
          wrong: ({ receivers, recorders }) => receivers + recorders,
        },
      ],
      hints: ["One tuner takes one user band. A recorder counts with all its tuners."],
      example: ({ receivers, recorders }) => {
        const work = new Working();
        work.given("r", "receivers", receivers);
        work.given("p", "recorders of two tuners", recorders);
        work.worked(
          "n",
          "tuners, r·1 + p·2",
          receivers + 2 * recorders,
          "tuners",
          arithmetic`${receivers}·1 + ${recorders}·2`,
          "EN 50494; recorders: common practice, no source",
        );
        return work.steps;
      },
    },
    headUnitsQuestion(
      "How many head units does that take at the least? Use your answer to 1.",
      "Divide and round up.",
    ),
    {
      key: "splitter",
      heading: "Loss of the splitter",
      task: "The farthest outlet hangs on a splitter. What does the splitter lose?",
      given: ({ ways, excess }) => [
        { label: "Ways of the splitter", value: ways, unit: "ways" },
        { label: "Its loss beyond the ideal", value: excess, unit: "dB" },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: [],
      solve: ({ ways, excess }) => splitterLoss(ways, excess),
      slips: [
        { name: "loss beyond the ideal left out", wrong: ({ ways }) => splitterLoss(ways, 0) },
        { name: "20·log10 for 10·log10", wrong: ({ ways, excess }) => 20 * Math.log10(ways) + excess },
      ],
      hints: ["Loss = 10·log10(ways) + loss beyond the ideal."],
      example: ({ ways, excess }) => workedBy("SPLITLOSS", [ways, excess]),
    },
    {
      key: "loss",
      heading: "Loss of the cable in heat",
      task: "What does the whole cable to that outlet lose at the highest frequency on the hottest day?",
      given: (n) => [
        ...lossFigures(n.cable),
        { label: "Length of cable to the outlet", value: n.feet, unit: "ft" },
        { label: "Highest frequency", value: n.high, unit: "MHz" },
        { label: "Hottest cable", value: n.hot, unit: "°C" },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: [],
      solve: (n) => loss(n, toMetres(n.feet, "ft"), n.hot),
      slips: [
        { name: "feet taken for metres", wrong: (n) => loss(n, n.feet, n.hot) },
        { name: "heat left out", wrong: (n) => loss(n, toMetres(n.feet, "ft"), 20) },
        { name: "loss of 100 m taken for that of the run", wrong: (n) => loss(n, 100, n.hot) },
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
        { label: "Level of the head unit, high end", value: level, unit: "dBµV" },
        { label: "Loss of the outlet", value: plate, unit: "dB" },
      ],
      answer: { kind: "number", unit: "dBµV", decimals: 1 },
      needs: ["splitter", "loss"],
      solve: ({ level, plate }, e) => level - e.splitter! - e.loss! - plate,
      slips: [
        {
          name: "losses added instead of subtracted",
          wrong: ({ level, plate }, e) => level + e.splitter! + e.loss! + plate,
        },
        { name: "loss of the outlet left out", wrong: ({ level }, e) => level - e.splitter! - e.loss! },
        { name: "splitter left out", wrong: ({ level, plate }, e) => level - e.loss! - plate },
        { name: "loss of the cable left out", wrong: ({ level, plate }, e) => level - e.splitter! - plate },
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
          value: cableNamed(n.cable).loop,
          unit: "ohm/100 m",
        },
        { label: "Length of the trunk, one way", value: n.trunk, unit: "m" },
        { label: "Volts of the supply", value: n.supply, unit: "V" },
        { label: "Current of the head unit", value: n.amperes, unit: "A" },
      ],
      answer: { kind: "number", unit: "V", decimals: 2 },
      needs: [],
      solve: (n) => volts(n, loop(n, n.trunk, n.hot)),
      slips: [
        { name: "heat left out", wrong: (n) => volts(n, loop(n, n.trunk, 20)) },
        { name: "there and back counted twice", wrong: (n) => volts(n, loop(n, 2 * n.trunk, n.hot)) },
        {
          name: "added instead of subtracted",
          wrong: (n) => n.supply + n.amperes * loop(n, n.trunk, n.hot),
        },
      ],
      hints: ["Volts = supply - amperes·ohms in heat; copper: 0.393 % more ohms for each °C above 20."],
      example: (n) => [
        ...workedBy("LOOPOHMS", [n.cable, n.trunk, n.hot, "m", [cableRow(n.cable)]]),
        ...workedBy("LOADVOLTS", [n.supply, n.amperes, loop(n, n.trunk, n.hot), "A"]),
      ],
    },
    {
      key: "cost",
      heading: "Cost",
      task: "What does the job cost? Use your answer to 2.",
      given: ({ unitPrice, parts, hours, rate }) => [
        { label: "Price of a head unit", value: unitPrice, unit: "money" },
        { label: "All other parts", value: parts, unit: "money" },
        { label: "Labour", value: hours, unit: "hours" },
        { label: "Rate", value: rate, unit: "money/hour" },
      ],
      answer: { kind: "number", unit: "money", decimals: 2 },
      needs: ["units"],
      solve: (n, { units }) => cost(n, units!),
      slips: [
        { name: "one head unit priced only", wrong: (n) => cost(n, 1) },
        { name: "labour left out", wrong: (n, { units }) => units! * n.unitPrice + n.parts },
        { name: "other parts left out", wrong: (n, { units }) => units! * n.unitPrice + n.hours * n.rate },
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
        { label: "Margin, of the price without tax", value: margin, unit: "%" },
        { label: "Tax on that price", value: tax, unit: "%" },
      ],
      answer: { kind: "number", unit: "money", decimals: 2 },
      needs: ["cost"],
      solve: ({ margin, tax }, e) => {
        const price = sellPrice(e.cost!, margin / 100);
        return isFault(price) ? price : price * (1 + tax / 100);
      },
      slips: [
        {
          name: "margin taken as markup",
          wrong: ({ margin, tax }, e) => e.cost! * (1 + margin / 100) * (1 + tax / 100),
        },
        { name: "tax left out", wrong: ({ margin }, e) => sellPrice(e.cost!, margin / 100) },
        {
          name: "tax on the cost instead of the price",
          wrong: ({ margin, tax }, e) => e.cost! / (1 - margin / 100) + (e.cost! * tax) / 100,
        },
        { name: "margin left out", wrong: ({ tax }, e) => e.cost! * (1 + tax / 100) },
      ],
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
