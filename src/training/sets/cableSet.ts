/**
 * Loss, slope and level of one run of cable.
 *
 * Key: engine/signal, α = k1·√f + k2·f + k0 at 20 °C, 0.198 % more for each °C.
 */
import { isFault } from "../../engine/faults";
import { cableLoss } from "../../engine/signal/cableLoss";
import { LOSS_PER_C } from "../../engine/signal/constants";
import { METRES_PER_FOOT, toMetres } from "../../engine/signal/lengthUnits";
import { arithmetic, Working } from "../../engine/working/steps";
import { trainingSet } from "../exercise";
import { levelVerdictQuestion, nearVerdictEdge } from "../questions/levelVerdictQuestion";
import { workedBy } from "../workedBy";
import { cableNamed, cableRow, lossFigures, TRAINING_CABLES } from "./trainingCables";

interface Numbers {
  readonly cable: string;
  readonly feet: number;
  readonly low: number;
  readonly high: number;
  readonly hot: number;
  readonly level: number;
  readonly plate: number;
}

const FEET = "feet taken for metres";
/** The factor of the heat, as the engine has it. */
const heat = (hot: number): number => 1 + LOSS_PER_C * (hot - 20);
const at20 = ({ cable }: Numbers, metres: number, frequency: number) =>
  cableLoss(cableNamed(cable), metres, frequency, 20);
const value = (of: ReturnType<typeof cableLoss>): number => (isFault(of) ? NaN : of);

/** Slips that either end of the band invites. */
const lossSlips = (frequency: (n: Numbers) => number) => [
  { name: FEET, wrong: (n: Numbers) => at20(n, n.feet, frequency(n)) },
  {
    name: "constant term k0 left out",
    wrong: (n: Numbers, { metres }: Readonly<Record<string, number>>) =>
      value(at20(n, metres!, frequency(n))) - (cableNamed(n.cable).loss.k0 / 100) * metres!,
  },
  {
    name: "loss of 100 m taken for that of the run",
    wrong: (n: Numbers) => at20(n, 100, frequency(n)),
  },
];

export const cableSet = trainingSet<Numbers>({
  id: "cable",
  title: "Cable loss and slope",
  about: "What a run of cable takes at both ends of the band, cold and hot, and what is left at the outlet.",
  cautions: [],
  draw: (random) => ({
    cable: random.pick(TRAINING_CABLES).name,
    feet: random.stepped(95, 380, 5),
    low: random.stepped(950, 1100, 10),
    high: random.stepped(1950, 2150, 10),
    hot: random.stepped(45, 65, 1),
    level: random.stepped(64, 84, 0.5),
    plate: random.stepped(0.6, 2, 0.1),
  }),
  plausible: (_, { high, level }) =>
    Number(high) >= 5 &&
    Number(high) <= 30 &&
    Number(level) >= 38 &&
    Number(level) <= 86 &&
    !nearVerdictEdge(Number(level)),
  questions: [
    {
      key: "metres",
      heading: "Length in metres",
      task: "The drawing gives the run in feet. How many metres is that?",
      given: ({ feet }) => [{ label: "Length of the run", value: feet, unit: "ft" }],
      answer: { kind: "number", unit: "m", decimals: 1 },
      needs: [],
      solve: ({ feet }) => toMetres(feet, "ft"),
      slips: [
        { name: FEET, wrong: ({ feet }) => feet },
        { name: "multiplied by 3.28 instead of divided", wrong: ({ feet }) => feet / METRES_PER_FOOT },
      ],
      hints: ["A foot is 0.3048 m."],
      example: ({ feet }) => {
        const work = new Working();
        const l = work.given("L", "length of the run", feet, "ft");
        work.worked(
          "m",
          "length in metres, L·0.3048",
          toMetres(l, "ft"),
          "m",
          arithmetic`${l}·0.3048`,
          "The international foot",
        );
        return work.steps;
      },
    },
    {
      key: "lossLow",
      heading: "Loss at the low end",
      task: "What does the run lose at the lowest frequency, at 20 °C? Use your answer to 1.",
      given: (n) => [...lossFigures(n.cable), { label: "Lowest frequency", value: n.low, unit: "MHz" }],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["metres"],
      solve: (n, { metres }) => at20(n, metres!, n.low),
      slips: lossSlips(({ low }) => low),
      hints: ["Loss of 100 m = k1·√f + k2·f + k0 with f in MHz; then by the length over 100."],
      example: (n, { metres }) =>
        workedBy("CABLELOSS", [n.cable, metres!, n.low, 20, "m", [cableRow(n.cable)]]),
    },
    {
      key: "high",
      heading: "Loss at the high end",
      task: "What does it lose at the highest frequency, at 20 °C? Same cable, same run.",
      given: ({ high }) => [{ label: "Highest frequency", value: high, unit: "MHz" }],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["metres"],
      solve: (n, { metres }) => at20(n, metres!, n.high),
      slips: [
        ...lossSlips(({ high }) => high),
        {
          name: "low end's loss scaled by the frequency instead of its root",
          wrong: (n, { lossLow }) => (lossLow! * n.high) / n.low,
        },
      ],
      hints: ["As in 2. The loss grows with little more than the root of the frequency."],
      example: (n, { metres }) =>
        workedBy("CABLELOSS", [n.cable, metres!, n.high, 20, "m", [cableRow(n.cable)]], "k0"),
    },
    {
      key: "hotLoss",
      heading: "The same in heat",
      task: "What does the run lose at the highest frequency on the hottest day? Use your answer to 3.",
      given: ({ hot }) => [{ label: "Hottest cable", value: hot, unit: "°C" }],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["high"],
      solve: ({ hot }, { high }) => high! * heat(hot),
      slips: [
        {
          name: "the whole temperature taken instead of what it is above 20 °C",
          wrong: ({ hot }, { high }) => high! * (1 + LOSS_PER_C * hot),
        },
        {
          name: "heat subtracted instead of added",
          wrong: ({ hot }, { high }) => high! * (1 - LOSS_PER_C * (hot - 20)),
        },
        { name: "heat left out", wrong: (_, { high }) => high },
      ],
      hints: ["Loss in heat = loss at 20 °C·(1 + 0.00198·(T - 20))."],
      example: ({ hot }, { high }) => {
        const work = new Working();
        const a = work.given("A20", "loss at 20 °C", high!, "dB");
        const t = work.given("T", "temperature of the cable", hot, "°C");
        const factor = work.worked(
          "t",
          "factor, 1 + 0.00198·(T − 20)",
          heat(t),
          "",
          arithmetic`1 + ${LOSS_PER_C}·(${t} − 20)`,
          "Published drop-cable rule",
        );
        work.worked("A", "loss in heat", a * factor, "dB", arithmetic`${a}·${factor}`, "");
        return work.steps;
      },
    },
    {
      key: "slope",
      heading: "Slope",
      task: "How much more does the run lose at the high end than at the low end, at 20 °C? Use 2 and 3.",
      given: () => [],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["lossLow", "high"],
      solve: (_, { lossLow, high }) => high! - lossLow!,
      slips: [{ name: "added instead of subtracted", wrong: (_, { lossLow, high }) => high! + lossLow! }],
      hints: ["Slope = loss at the high end - loss at the low end."],
      example: (n, { metres }) =>
        workedBy("CABLESLOPE", [n.cable, metres!, n.low, n.high, 20, "m", [cableRow(n.cable)]], "k0"),
    },
    {
      key: "level",
      heading: "Level at the outlet",
      task: "What level is left at the outlet at the high end on the hottest day? Use your answer to 4.",
      given: ({ level, plate }) => [
        { label: "Level going in, high end", value: level, unit: "dBµV" },
        { label: "Loss of the outlet", value: plate, unit: "dB" },
      ],
      answer: { kind: "number", unit: "dBµV", decimals: 1 },
      needs: ["hotLoss"],
      solve: ({ level, plate }, { hotLoss }) => level - hotLoss! - plate,
      slips: [
        {
          name: "losses added instead of subtracted",
          wrong: ({ level, plate }, { hotLoss }) => level + hotLoss! + plate,
        },
        { name: "loss of the outlet left out", wrong: ({ level }, { hotLoss }) => level - hotLoss! },
        { name: "loss of the cable left out", wrong: ({ level, plate }) => level - plate },
      ],
      hints: ["Level out = level in - all losses on the way."],
      example: ({ level, plate }, { hotLoss }) => {
        const work = new Working();
        const l = work.given("Lin", "level going in", level, "dBµV");
        const a = work.given("A", "loss of the cable in heat", hotLoss!, "dB");
        const p = work.given("p", "loss of the outlet", plate, "dB");
        work.worked(
          "L",
          "level, Lin − A − p",
          l - a - p,
          "dBµV",
          arithmetic`${l} − ${a} − ${p}`,
          "Decibels along a path add",
        );
        return work.steps;
      },
    },
    levelVerdictQuestion("Is that level low, ok or high? Use your answer to 6."),
  ],
});
