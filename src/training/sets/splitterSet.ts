/**
 * Splitters and taps one behind another, and the level behind them.
 *
 * Key: engine/signal; 10·log10(N) + excess, and what a tap leaves on its way through.
 */
import { splitterLoss } from "../../engine/signal/splitterLoss";
import { tapThroughLoss } from "../../engine/signal/tapThroughLoss";
import { arithmetic, Working } from "../../engine/working/steps";
import { trainingSet } from "../exercise";
import { levelVerdictQuestion, nearVerdictEdge } from "../questions/levelVerdictQuestion";
import { workedBy } from "../workedBy";

interface Numbers {
  readonly ways: number;
  readonly excess: number;
  readonly ways2: number;
  readonly excess2: number;
  readonly tap: number;
  readonly through: number;
  readonly tap2: number;
  readonly level: number;
  readonly cable: number;
}

const EXCESS = "loss beyond the ideal left out";

export const splitterSet = trainingSet<Numbers>({
  id: "splitters",
  title: "Splitter cascades",
  about: "What splitters and taps take, one behind another, and which level they leave at an outlet.",
  cautions: [],
  draw: (random) => ({
    ways: random.pick([2, 3, 4, 6, 8]),
    excess: random.stepped(0.8, 3.2, 0.1),
    ways2: random.pick([2, 3, 4, 6, 8]),
    excess2: random.stepped(0.8, 3.2, 0.1),
    tap: random.pick([8, 10, 12, 15]),
    through: random.stepped(0.6, 1.8, 0.1),
    tap2: random.stepped(8, 20, 1),
    level: random.stepped(78, 98, 0.5),
    cable: random.stepped(4, 14, 0.1),
  }),
  plausible: ({ ways, ways2, tap, tap2 }, { level }) =>
    ways * ways2 <= 32 &&
    tap !== tap2 &&
    Number(level) >= 38 &&
    Number(level) <= 86 &&
    !nearVerdictEdge(Number(level)),
  questions: [
    {
      key: "first",
      heading: "Loss of the splitter",
      task: "What does a splitter of equal ways lose from its input to one output?",
      given: ({ ways, excess }) => [
        { label: "Ways of the first splitter", value: ways, unit: "ways" },
        { label: "Its loss beyond the ideal", value: excess, unit: "dB" },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: [],
      solve: ({ ways, excess }) => splitterLoss(ways, excess),
      slips: [
        { name: EXCESS, wrong: ({ ways }) => splitterLoss(ways, 0) },
        {
          name: "20·log10 for 10·log10",
          wrong: ({ ways, excess }) => 20 * Math.log10(ways) + excess,
        },
        {
          name: "natural logarithm for log10",
          wrong: ({ ways, excess }) => 10 * Math.log(ways) + excess,
        },
        {
          name: "loss beyond the ideal subtracted",
          wrong: ({ ways, excess }) => splitterLoss(ways, -excess),
        },
      ],
      hints: ["Loss = 10·log10(ways) + loss beyond the ideal."],
      example: ({ ways, excess }) => workedBy("SPLITLOSS", [ways, excess]),
    },
    {
      key: "both",
      heading: "Two splitters one behind another",
      task: "A second splitter hangs on one output of the first. What do both lose together? Use your answer to 1.",
      given: ({ ways2, excess2 }) => [
        { label: "Ways of the second splitter", value: ways2, unit: "ways" },
        { label: "Its loss beyond the ideal", value: excess2, unit: "dB" },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["first"],
      solve: ({ ways2, excess2 }, { first }) => first! + splitterLoss(ways2, excess2),
      slips: [
        {
          name: "ways added instead of multiplied",
          wrong: ({ ways, ways2, excess, excess2 }) => splitterLoss(ways + ways2, excess + excess2),
        },
        { name: EXCESS, wrong: ({ ways2 }, { first }) => first! + splitterLoss(ways2, 0) },
        {
          name: "first splitter left out",
          wrong: ({ ways2, excess2 }) => splitterLoss(ways2, excess2),
        },
      ],
      hints: ["Decibels along a path add."],
      example: ({ ways, ways2, excess, excess2 }) =>
        workedBy("CASCADELOSS", [
          [[ways], [ways2]],
          [[excess], [excess2]],
        ]),
    },
    {
      key: "through",
      heading: "Way through a tap",
      task: "What does a tap take from what passes on through it to the next one?",
      given: ({ tap, through }) => [
        { label: "Tap value, input to branch", value: tap, unit: "dB" },
        { label: "Its loss beyond the ideal, through", value: through, unit: "dB" },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: [],
      solve: ({ tap, through }) => tapThroughLoss(tap, through),
      slips: [
        { name: "tap value taken for the way through", wrong: ({ tap }) => tap },
        { name: EXCESS, wrong: ({ tap }) => tapThroughLoss(tap, 0) },
        {
          name: "what the branch takes left out",
          wrong: ({ through }) => through,
        },
      ],
      hints: [
        "Of the power, 1 - 10^(-tap/10) passes on. Loss = -10·log10 of that share + loss beyond the ideal.",
      ],
      example: ({ tap, through }) => workedBy("TAPTHROUGH", [tap, through]),
    },
    {
      key: "branch",
      heading: "To the branch of the second tap",
      task: "The first splitter feeds that tap, whose way through feeds a second tap. What is lost to the second tap's branch? Use 1 and 3.",
      given: ({ tap2 }) => [{ label: "Value of the second tap", value: tap2, unit: "dB" }],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["first", "through"],
      solve: ({ tap2 }, { first, through }) => first! + through! + tap2,
      slips: [
        {
          name: "way through the first tap left out",
          wrong: ({ tap2 }, { first }) => first! + tap2,
        },
        {
          name: "branch loss of the first tap taken for its way through",
          wrong: ({ tap, tap2 }, { first }) => first! + tap + tap2,
        },
        { name: "splitter left out", wrong: ({ tap2 }, { through }) => through! + tap2 },
      ],
      hints: ["Splitter + way through the first tap + value of the second tap."],
      example: ({ tap2 }, { first, through }) => {
        const work = new Working();
        const l = work.given("L1", "loss of the splitter", first!, "dB");
        const d = work.given("D1", "way through the first tap", through!, "dB");
        const t = work.given("T2", "value of the second tap", tap2, "dB");
        work.worked(
          "L",
          "loss of all of them",
          l + d + t,
          "dB",
          arithmetic`${l} + ${d} + ${t}`,
          "Decibels along a path add",
        );
        return work.steps;
      },
    },
    {
      key: "level",
      heading: "Level behind both splitters",
      task: "What level arrives behind the two splitters and the cable? Use your answer to 2.",
      given: ({ level, cable }) => [
        { label: "Level of the head unit", value: level, unit: "dBµV" },
        { label: "Loss of all cable on the way", value: cable, unit: "dB" },
      ],
      answer: { kind: "number", unit: "dBµV", decimals: 1 },
      needs: ["both"],
      solve: ({ level, cable }, { both }) => level - both! - cable,
      slips: [
        {
          name: "losses added instead of subtracted",
          wrong: ({ level, cable }, { both }) => level + both! + cable,
        },
        { name: "loss of the cable left out", wrong: ({ level }, { both }) => level - both! },
        { name: "second splitter left out", wrong: ({ level, cable }, { first }) => level - first! - cable },
      ],
      hints: ["Level out = level in - all losses on the way."],
      example: ({ level, cable }, { both }) => {
        const work = new Working();
        const l = work.given("Lin", "level of the head unit", level, "dBµV");
        const s = work.given("S", "loss of both splitters", both!, "dB");
        const a = work.given("A", "loss of the cable", cable, "dB");
        work.worked(
          "L",
          "level, Lin − S − A",
          l - s - a,
          "dBµV",
          arithmetic`${l} − ${s} − ${a}`,
          "Decibels along a path add",
        );
        return work.steps;
      },
    },
    levelVerdictQuestion("Is that level low, ok or high at an outlet? Use your answer to 5."),
  ],
});
