/**
 * Loss, slope and level of one run of cable.
 *
 * Key: engine/signal, α = k1·√f + k2·f + k0 at 20 °C, 0.198 % more for each °C.
 */
import { COPPER_PER_C } from "../../engine/power/constants";
import { cableLoss } from "../../engine/signal/cableLoss";
import { LOSS_PER_C } from "../../engine/signal/constants";
import { toMetres } from "../../engine/signal/lengthUnits";
import { arithmetic, Working } from "../../engine/working/steps";
import { trainingSet, type Question } from "../exercise";
import { levelVerdictQuestion, nearVerdictEdge } from "../questions/levelVerdictQuestion";
import { cableLossSlips } from "../slips/cableLosses";
import { megahertz } from "../slips/factors";
import { heat } from "../slips/heat";
import { feet, timesPerHundred } from "../slips/lengths";
import { differenceSlips, levelSlips } from "../slips/levels";
import { takenOff } from "../slips/terms";
import { drawnVerdict, type Verdict } from "../slips/verdicts";
import { workedBy } from "../workedBy";
import { cableNamed, cableRow, figuresOf, lossFigures, TRAINING_CABLES } from "./trainingCables";

interface Numbers {
  readonly cable: string;
  readonly k1: number;
  readonly k2: number;
  readonly k0: number;
  readonly feet: number;
  readonly low: number;
  readonly high: number;
  readonly hot: number;
  readonly level: number;
  readonly plate: number;
  /** How the level is to come out, so that no verdict is the usual one. */
  readonly wanted: Verdict;
}

/** The factor of the heat, as the engine has it. */
const heatFactor = (hot: number): number => 1 + LOSS_PER_C * (hot - 20);
const at20 = ({ cable }: Numbers, metres: number, frequency: number) =>
  cableLoss(cableNamed(cable), metres, frequency, 20);
/** As the hint has it. */
const reckoned = ({ k1, k2, k0 }: Numbers, metres: number, f: number): number =>
  ((k1 * Math.sqrt(f) + k2 * f + k0) / 100) * metres;
const COPPER = { k: COPPER_PER_C, of: "the resistance" };

/** The loss at one end of the band. */
const lossAt = (
  end: "low" | "high",
): Pick<Question<Numbers>, "answer" | "needs" | "solve" | "formula" | "uses" | "slips"> => ({
  answer: { kind: "number", unit: "dB", decimals: 1 },
  needs: ["metres"],
  solve: (n, { metres }) => at20(n, metres!, n[end]),
  formula: (n, { metres }) => reckoned(n, metres!, n[end]),
  uses: { metres: [timesPerHundred(100)] },
  slips: [
    ...cableLossSlips<Numbers>(
      (n, { metres }) => reckoned(n, metres!, n[end]),
      (n) => n[end],
    ),
    ...(["feet taken for metres", "feet multiplied by 3.28 instead of divided"] as const).map(
      (name, index) => ({
        name,
        wrong: (n: Numbers) => reckoned(n, n.feet * [1, 3.28][index]!, n[end]),
      }),
    ),
  ],
});

export const cableSet = trainingSet<Numbers>({
  id: "cable",
  title: "Cable loss and slope",
  about:
    "What a run of cable takes at the lowest and the highest frequency, cold and hot, and what is left at the outlet.",
  cautions: [],
  draw: (random, once) => {
    const wanted = drawnVerdict(once);
    const cable = random.pick(TRAINING_CABLES).name;
    return {
      cable,
      ...figuresOf(cable),
      feet: random.stepped(95, 380, 5),
      low: random.stepped(950, 1100, 10),
      high: random.stepped(1950, 2150, 10),
      hot: random.stepped(45, 65, 1),
      level: random.stepped(62, 102, 0.5),
      plate: random.stepped(0.6, 2, 0.1),
      wanted,
    };
  },
  plausible: ({ wanted }, { high, level, verdict }) =>
    Number(high) >= 5 &&
    Number(high) <= 30 &&
    Number(level) >= 38 &&
    Number(level) <= 86 &&
    verdict === wanted &&
    !nearVerdictEdge(Number(level)),
  questions: [
    {
      key: "metres",
      heading: "Length in metres",
      task: "The drawing gives the run in feet. How many metres is that?",
      given: ({ feet: length }) => [
        { label: "Length of the run", value: length, unit: "ft", of: "feet", invites: [feet] },
      ],
      answer: { kind: "number", unit: "m", decimals: 1 },
      needs: [],
      solve: ({ feet: length }) => toMetres(length, "ft"),
      slips: [],
      hints: ["A foot is 0.3048 m."],
      example: ({ feet: length }) => {
        const work = new Working();
        const l = work.given("L", "length of the run", length, "ft");
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
      heading: "Loss at the lowest frequency",
      task: "What does the run lose at the lowest frequency, at 20 °C? Use your answer to 1.",
      given: (n) => [
        ...lossFigures(n),
        { label: "Lowest frequency", value: n.low, unit: "MHz", of: "low", invites: [megahertz] },
      ],
      ...lossAt("low"),
      hints: ["Loss of 100 m = k1·√f + k2·f + k0 with f in MHz; then by the length over 100."],
      example: (n, { metres }) =>
        workedBy("CABLELOSS", [n.cable, metres!, n.low, 20, "m", [cableRow(n.cable)]]),
    },
    {
      key: "high",
      heading: "Loss at the highest frequency",
      task: "What does it lose at the highest frequency, at 20 °C? Same cable, same run.",
      given: ({ high }) => [
        { label: "Highest frequency", value: high, unit: "MHz", of: "high", invites: [megahertz] },
      ],
      before: lossFigures,
      ...lossAt("high"),
      slips: [
        ...lossAt("high").slips,
        {
          name: "lowest frequency's loss scaled by the frequency instead of its root",
          wrong: (n, { lossLow }) => (lossLow! * n.high) / n.low,
        },
        {
          name: "lowest frequency's loss scaled by the root of the frequency",
          wrong: (n, { lossLow }) => lossLow! * Math.sqrt(n.high / n.low),
          seldom: true,
        },
        {
          name: "difference of the frequencies taken",
          wrong: (n, { metres }) => reckoned(n, metres!, n.high - n.low),
          seldom: true,
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
      given: ({ hot }) => [
        { label: "Hottest cable", value: hot, unit: "°C", of: "hot", invites: [heat(LOSS_PER_C, COPPER)] },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["high"],
      solve: ({ hot }, { high }) => high! * heatFactor(hot),
      slips: [
        {
          name: "what heat adds taken as decibels",
          wrong: ({ hot }, { high }) => high! + LOSS_PER_C * (hot - 20),
          seldom: true,
        },
      ],
      hints: ["Loss in heat = loss at 20 °C·(1 + 0.00198·(T - 20))."],
      example: ({ hot }, { high }) => {
        const work = new Working();
        const a = work.given("A20", "loss at 20 °C", high!, "dB");
        const t = work.given("T", "temperature of the cable", hot, "°C");
        const factor = work.worked(
          "t",
          "factor, 1 + 0.00198·(T − 20)",
          heatFactor(t),
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
      task: "How much more does the run lose at the highest frequency than at the lowest, at 20 °C? Use 2 and 3.",
      given: () => [],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["lossLow", "high"],
      solve: (_, { lossLow, high }) => high! - lossLow!,
      slips: [
        ...differenceSlips<Numbers>(
          (_, { high }) => high!,
          (_, { lossLow }) => lossLow!,
        ),
        {
          name: "heat reckoned in at the highest frequency",
          wrong: ({ hot }, { lossLow, high }) => high! * heatFactor(hot) - lossLow!,
          seldom: true,
        },
        {
          name: "heat reckoned in at both frequencies",
          wrong: ({ hot }, { lossLow, high }) => (high! - lossLow!) * heatFactor(hot),
          seldom: true,
        },
        {
          name: "slope of 100 m given",
          wrong: (_, { lossLow, high, metres }) => ((high! - lossLow!) / metres!) * 100,
          seldom: true,
        },
        { name: "difference of the frequencies given", wrong: ({ low, high }) => high - low, seldom: true },
      ],
      hints: ["Slope = loss at the highest frequency - loss at the lowest."],
      example: (n, { metres }) =>
        workedBy("CABLESLOPE", [n.cable, metres!, n.low, n.high, 20, "m", [cableRow(n.cable)]], "k0"),
    },
    {
      key: "level",
      heading: "Level at the outlet",
      task: "What level is left at the outlet at the highest frequency on the hottest day? Use your answer to 4.",
      given: ({ level, plate }) => [
        { label: "Input level, highest frequency", value: level, unit: "dBµV", of: "level" },
        { label: "Loss of the outlet", value: plate, unit: "dB", of: "plate", invites: [takenOff] },
      ],
      answer: { kind: "number", unit: "dBµV", decimals: 1 },
      needs: ["hotLoss"],
      solve: ({ level, plate }, { hotLoss }) => level - hotLoss! - plate,
      uses: { hotLoss: [takenOff] },
      slips: [
        {
          name: "heat left out",
          wrong: ({ level, plate, hot }, { hotLoss }) => level - hotLoss! / heatFactor(hot) - plate,
        },
        ...levelSlips<Numbers>(
          ({ level }) => level,
          ({ plate }, { hotLoss }) => [hotLoss!, plate],
        ),
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
    levelVerdictQuestion<Numbers>("Is that level low, ok or high? Use your answer to 6.", [
      { name: "level going in compared", value: ({ level }) => level },
      { name: "loss compared instead of the level", value: (_, { hotLoss }) => hotLoss! },
      {
        name: "losses added instead of subtracted",
        value: ({ level, plate }, { hotLoss }) => level + hotLoss! + plate,
      },
      {
        name: "loss not divided by 100",
        value: ({ level, plate }, { hotLoss }) => level - 100 * hotLoss! - plate,
      },
    ]),
  ],
});
