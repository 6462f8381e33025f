/**
 * Splitters and taps one behind another, and the level behind them.
 *
 * Key: engine/signal; 10·log10(N) + excess, and what a tap leaves on its way through.
 */
import { splitterLoss } from "../../engine/signal/splitterLoss";
import { tapThroughLoss } from "../../engine/signal/tapThroughLoss";
import { arithmetic, Working } from "../../engine/working/steps";
import { trainingSet, type Given } from "../exercise";
import { levelVerdictQuestion, nearVerdictEdge } from "../questions/levelVerdictQuestion";
import { levelSlips, lossSumSlips } from "../slips/levels";
import { ways } from "../slips/logarithms";
import { splitterSlips } from "../slips/splitters";
import { tapSlips } from "../slips/taps";
import { added, takenOff } from "../slips/terms";
import { drawnVerdict, type Verdict } from "../slips/verdicts";
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
  /** How the level is to come out, so that no verdict is the usual one. */
  readonly wanted: Verdict;
}

const EXCESS = "loss beyond the ideal";

const splitter = (
  which: string,
  count: { readonly of: "ways" | "ways2"; readonly value: number },
  excess: { readonly of: "excess" | "excess2"; readonly value: number },
): Given[] => [
  { label: `Ways of the ${which} splitter`, ...count, unit: "ways", invites: [ways] },
  { label: "Its loss beyond the ideal", called: EXCESS, ...excess, unit: "dB", invites: [added] },
];
const first = (n: Numbers): Given[] =>
  splitter("first", { of: "ways", value: n.ways }, { of: "excess", value: n.excess });
const second = (n: Numbers): Given[] =>
  splitter("second", { of: "ways2", value: n.ways2 }, { of: "excess2", value: n.excess2 });

export const splitterSet = trainingSet<Numbers>({
  id: "splitters",
  title: "Splitter cascades",
  about: "What splitters and taps take, one behind another, and which level they leave at an outlet.",
  cautions: [],
  draw: (random, once) => ({
    wanted: drawnVerdict(once),
    ways: random.pick([2, 3, 4, 6, 8]),
    excess: random.stepped(0.8, 3.2, 0.1),
    ways2: random.pick([2, 3, 4, 6, 8]),
    excess2: random.stepped(0.8, 3.2, 0.1),
    tap: random.pick([8, 10, 12, 15]),
    through: random.stepped(0.6, 1.8, 0.1),
    tap2: random.stepped(8, 20, 1),
    level: random.stepped(66, 102, 0.5),
    cable: random.stepped(4, 14, 0.1),
  }),
  plausible: ({ ways: one, ways2, tap, tap2, wanted }, { level, verdict }) =>
    one * ways2 <= 32 &&
    verdict === wanted &&
    tap !== tap2 &&
    Number(level) >= 38 &&
    Number(level) <= 86 &&
    !nearVerdictEdge(Number(level)),
  questions: [
    {
      key: "first",
      heading: "Loss of the splitter",
      task: "What does a splitter of equal ways lose from its input to one output?",
      given: first,
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: [],
      solve: ({ ways: count, excess }) => splitterLoss(count, excess),
      slips: [
        ...splitterSlips<Numbers>(
          (n) => n.ways,
          (n) => n.excess,
        ),
        { name: "share of the power in percent given", wrong: (n) => 100 / n.ways, seldom: true },
        { name: "second splitter taken", wrong: (n) => splitterLoss(n.ways2, n.excess2), seldom: true },
      ],
      hints: ["Loss = 10·log10(ways) + loss beyond the ideal."],
      example: ({ ways: count, excess }) => workedBy("SPLITLOSS", [count, excess]),
    },
    {
      key: "both",
      heading: "Two splitters one behind another",
      task: "A second splitter is fed from one output of the first. What do both lose together? Use your answer to 1.",
      given: second,
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["first"],
      solve: ({ ways2, excess2 }, { first: before }) => before! + splitterLoss(ways2, excess2),
      uses: { first: [added] },
      slips: [
        {
          name: "ways added instead of multiplied",
          wrong: (n) => splitterLoss(n.ways + n.ways2, n.excess + n.excess2),
        },
        ...splitterSlips<Numbers>(
          (n) => n.ways2,
          (n) => n.excess2,
          (_, e) => e.first!,
        ),
        ...lossSumSlips<Numbers>((n, e) => [e.first!, splitterLoss(n.ways2, n.excess2)]),
        {
          name: "second less first",
          wrong: (n, e) => splitterLoss(n.ways2, n.excess2) - e.first!,
          seldom: true,
        },
        { name: "first splitter taken twice", wrong: (_, e) => 2 * e.first!, seldom: true },
        { name: "second splitter left out", wrong: (_, e) => e.first },
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
        { label: "Tap value, input to branch", value: tap, unit: "dB", of: "tap" },
        {
          label: "Its loss beyond the ideal, through",
          called: EXCESS,
          value: through,
          unit: "dB",
          of: "through",
          invites: [added],
        },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: [],
      solve: ({ tap, through }) => tapThroughLoss(tap, through),
      slips: tapSlips,
      hints: [
        "Of the power, 1 - 10^(-tap/10) passes on. Loss = -10·log10 of that share + loss beyond the ideal.",
      ],
      example: ({ tap, through }) => workedBy("TAPTHROUGH", [tap, through]),
    },
    {
      key: "branch",
      heading: "To the branch of the second tap",
      task: "The first splitter feeds that tap, whose way through feeds a second tap. What is lost to the second tap's branch? Use 1 and 3.",
      given: ({ tap2 }) => [
        {
          label: "Value of the second tap",
          called: "second tap",
          value: tap2,
          unit: "dB",
          of: "tap2",
          invites: [added],
        },
      ],
      answer: { kind: "number", unit: "dB", decimals: 1 },
      needs: ["first", "through"],
      solve: ({ tap2 }, { first: before, through }) => before! + through! + tap2,
      uses: { first: [added], through: [added] },
      slips: [
        {
          name: "branch loss of the first tap taken for its way through",
          wrong: ({ tap, tap2 }, e) => e.first! + tap + tap2,
        },
        {
          name: "way through the second tap taken instead of its branch",
          wrong: ({ tap2, through }, e) => e.first! + e.through! + tapThroughLoss(tap2, through),
          seldom: true,
        },
        {
          name: "loss beyond the ideal counted again",
          wrong: ({ tap2, through }, e) => e.first! + e.through! + tap2 + through,
          seldom: true,
        },
        {
          name: "loss beyond the ideal left out",
          wrong: ({ tap2, through }, e) => e.first! + e.through! + tap2 - through,
          seldom: true,
        },
        {
          name: "second splitter taken",
          wrong: (n, e) => splitterLoss(n.ways2, n.excess2) + e.through! + n.tap2,
          seldom: true,
        },
        {
          name: "difference of the taps taken",
          wrong: ({ tap, tap2 }, e) => e.first! + Math.abs(tap2 - tap),
          seldom: true,
        },
        ...lossSumSlips<Numbers>(({ tap2 }, e) => [e.first!, e.through!, tap2]),
      ],
      hints: ["Splitter + way through the first tap + value of the second tap."],
      example: ({ tap2 }, { first: before, through }) => {
        const work = new Working();
        const l = work.given("L1", "loss of the splitter", before!, "dB");
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
        { label: "Level of the head unit", value: level, unit: "dBµV", of: "level" },
        {
          label: "Loss of all cable on the way",
          called: "loss of the cable",
          value: cable,
          unit: "dB",
          of: "cable",
          invites: [takenOff],
        },
      ],
      answer: { kind: "number", unit: "dBµV", decimals: 1 },
      needs: ["both"],
      solve: ({ level, cable }, { both }) => level - both! - cable,
      uses: { both: [takenOff] },
      slips: [
        { name: "second splitter left out", wrong: ({ level, cable }, e) => level - e.first! - cable },
        {
          name: "first splitter left out",
          wrong: ({ level, cable }, e) => level - (e.both! - e.first!) - cable,
        },
        ...levelSlips<Numbers>(
          ({ level }) => level,
          ({ cable }, { both }) => [both!, cable],
        ),
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
    levelVerdictQuestion<Numbers>("Is that level low, ok or high at an outlet? Use your answer to 5.", [
      { name: "level of the head unit compared", value: ({ level }) => level },
      { name: "loss compared instead of the level", value: ({ cable }, { both }) => both! + cable },
      {
        name: "losses added instead of subtracted",
        value: ({ level, cable }, { both }) => level + both! + cable,
      },
      { name: "splitters left out", value: ({ level, cable }) => level - cable },
    ]),
  ],
});
