/**
 * From runs of cable to a price: reels, materials, labour, margin, tax, discount.
 *
 * Key: engine/estimate. A margin is a share of the price, a markup of the cost.
 */
import { isFault } from "../../engine/faults";
import { packReels } from "../../engine/estimate/packReels";
import { sellPrice } from "../../engine/estimate/sellPrice";
import { arithmetic, Working } from "../../engine/working/steps";
import { trainingSet } from "../exercise";
import { cutSlips, discountSlips, priceSlips, reelPriceSlips, taxSlips, type Pricing } from "../slips/prices";
import { roundingUp } from "../slips/counts";
import { minuteSlips } from "../slips/minutes";
import { marginOfPrice, percentAdded, percentOff } from "../slips/percents";
import { added } from "../slips/terms";
import { workedBy } from "../workedBy";

interface Numbers extends Pricing {
  readonly outlets: number;
  readonly minutes: number;
  readonly rate: number;
}

const sum = (of: readonly number[]): number => of.reduce((total, one) => total + one, 0);
const cut = ({ runs, slack, waste }: Numbers): number =>
  (sum(runs) + runs.length * slack) * (1 + waste / 100);

function packed({ runs, slack, waste, reel }: Numbers): number | undefined {
  const packing = packReels(
    runs.map((length, index) => ({ label: `Run ${index + 1}`, length })),
    reel,
    slack,
    waste / 100,
  );
  return isFault(packing) ? undefined : packing.reels.length;
}

const MONEY = { kind: "number", unit: "money", decimals: 2 } as const;
const MINUTES_AN_HOUR = 60;

export const pricingSet = trainingSet<Numbers>({
  id: "pricing",
  title: "Pricing",
  about: "From lengths and minutes to a cost, and from the cost to a price with margin, tax and discount.",
  cautions: [],
  draw: (random) => ({
    runs: Array.from({ length: 5 }, () => random.stepped(22, 88, 1)),
    slack: random.stepped(1, 4, 0.5),
    waste: random.whole(4, 12),
    reel: random.pick([100, 150, 200]),
    reelPrice: random.stepped(48, 140, 0.5),
    others: random.stepped(300, 1400, 2.5),
    outlets: random.whole(6, 24),
    minutes: random.stepped(25, 70, 5),
    rate: random.stepped(38, 72, 0.5),
    margin: random.whole(15, 35),
    tax: random.pick([7, 8, 10, 19, 20, 21, 25]),
    discount: random.whole(3, 8),
  }),
  // Whole reels are then a matter of the total, not of how the runs are packed.
  plausible: (n, { reels }) =>
    Number(reels) >= 2 && packed(n) === reels && (n.outlets * n.minutes) % 60 !== 0,
  questions: [
    {
      key: "cable",
      heading: "Cable to cut",
      task: "How much cable is cut for these runs, with slack on each run and waste on all of it?",
      given: ({ runs, slack, waste }) => [
        ...runs.map((length, index) => ({ label: `Run ${index + 1}`, value: length, unit: "m" })),
        {
          label: "Slack on each run",
          called: "slack",
          value: slack,
          unit: "m",
          of: "slack",
          invites: [added],
        },
        { label: "Waste", value: waste, unit: "%", of: "waste", invites: [percentAdded] },
      ],
      answer: { kind: "number", unit: "m", decimals: 1 },
      needs: [],
      solve: cut,
      slips: cutSlips<Numbers>(cut),
      hints: ["(Sum of the runs + number of runs·slack)·(1 + waste/100)."],
      example: (n) => {
        const work = new Working();
        const total = work.worked(
          "S",
          "sum of the runs",
          sum(n.runs),
          "m",
          n.runs.map((run) => arithmetic`${run}`).join(" + "),
          "",
        );
        const s = work.given("s", "slack on each run", n.slack, "m");
        const w = work.given("w", "waste", n.waste, "%");
        work.worked(
          "C",
          "cable to cut, (S + 5·s)·(1 + w/100)",
          cut(n),
          "m",
          arithmetic`(${total} + ${n.runs.length}·${s})·(1 + ${w}/100)`,
          "Waste and slack: the office's own figures",
        );
        return work.steps;
      },
    },
    {
      key: "reels",
      heading: "Whole reels",
      task: "How many whole reels are bought? These runs fit onto that many without a joint. Use your answer to 1.",
      given: ({ reel }) => [{ label: "Cable on a reel", value: reel, unit: "m", of: "reel" }],
      answer: { kind: "number", unit: "reels", decimals: 0, exact: true },
      needs: ["cable"],
      solve: ({ reel }, { cable }) => Math.ceil(cable! / reel),
      slips: [
        ...roundingUp<Numbers>(({ reel }, { cable }) => cable! / reel),
        { name: "slack and waste left out", wrong: (n) => Math.ceil(sum(n.runs) / n.reel), seldom: true },
        { name: "a reel for each run", wrong: ({ runs }) => runs.length, seldom: true },
        {
          name: "multiplied instead of divided",
          wrong: ({ reel }, { cable }) => cable! * reel,
          seldom: true,
        },
        {
          name: "metres left on the last reel given",
          wrong: ({ reel }, { cable }) => Math.ceil(cable! / reel) * reel - cable!,
          seldom: true,
        },
        {
          name: "metres of the whole reels given",
          wrong: ({ reel }, { cable }) => Math.ceil(cable! / reel) * reel,
          seldom: true,
        },
      ],
      hints: ["Divide and round up. With few long runs it can take more: a run is not spliced."],
      example: ({ reel }, { cable }) => {
        const work = new Working();
        const c = work.given("C", "cable to cut", cable!, "m");
        const r = work.given("r", "cable on a reel", reel, "m");
        const share = work.worked("C/r", "reels, were they divisible", c / r, "", arithmetic`${c}/${r}`, "");
        work.worked(
          "n",
          "whole reels, rounded up",
          Math.ceil(c / r),
          "reels",
          arithmetic`ceil(${share})`,
          "",
        );
        return work.steps;
      },
    },
    {
      key: "materials",
      heading: "Materials",
      task: "What do the reels and the other parts cost together? Use your answer to 2.",
      given: ({ reelPrice, others }) => [
        { label: "Price of a reel", value: reelPrice, unit: "money", of: "reelPrice" },
        {
          label: "All other parts",
          called: "other parts",
          value: others,
          unit: "money",
          of: "others",
          invites: [added],
        },
      ],
      answer: MONEY,
      needs: ["reels"],
      solve: ({ reelPrice, others }, { reels }) => reels! * reelPrice + others,
      slips: reelPriceSlips,
      hints: ["Whole reels·price of a reel + other parts. Amounts are in the currency of your price list."],
      example: ({ reelPrice, others }, { reels }) => {
        const work = new Working();
        const r = work.given("n", "whole reels", reels!);
        const p = work.given("p", "price of a reel", reelPrice, "money");
        const o = work.given("o", "other parts", others, "money");
        work.worked("M", "materials, n·p + o", r * p + o, "money", arithmetic`${r}·${p} + ${o}`, "");
        return work.steps;
      },
    },
    {
      key: "labour",
      heading: "Labour",
      task: "What does fitting the outlets cost?",
      given: ({ outlets, minutes, rate }) => [
        { label: "Outlets", value: outlets, unit: "pieces" },
        { label: "Time for one", value: minutes, unit: "minutes" },
        { label: "Rate", value: rate, unit: "money/hour" },
      ],
      answer: MONEY,
      needs: [],
      solve: ({ outlets, minutes, rate }) => ((outlets * minutes) / MINUTES_AN_HOUR) * rate,
      slips: minuteSlips<Numbers>(),
      hints: ["Hours = outlets·minutes/60; 7 h 45 min are 7.75 h."],
      example: ({ outlets, minutes, rate }) => {
        const work = new Working();
        const n = work.given("n", "outlets", outlets);
        const t = work.given("t", "minutes for one", minutes, "minutes");
        const r = work.given("r", "rate", rate, "money/hour");
        const h = work.worked("h", "hours, n·t/60", (n * t) / 60, "hours", arithmetic`${n}·${t}/60`, "");
        work.worked("W", "labour, h·r", h * r, "money", arithmetic`${h}·${r}`, "");
        return work.steps;
      },
    },
    {
      key: "price",
      heading: "Price with margin",
      task: "At what price, without tax, does the job keep this margin? Use your answers to 3 and 4.",
      given: ({ margin }) => [
        { label: "Margin, of the price", value: margin, unit: "%", of: "margin", invites: [marginOfPrice] },
      ],
      answer: MONEY,
      needs: ["materials", "labour"],
      solve: ({ margin }, { materials, labour }) => sellPrice(materials! + labour!, margin / 100),
      formula: ({ margin }, { materials, labour }) => (materials! + labour!) / (1 - margin / 100),
      slips: priceSlips,
      hints: ["Price = cost/(1 - margin). Multiplying the cost by (1 + margin) would be a markup."],
      example: ({ margin }, { materials, labour }) =>
        workedBy("SELLPRICE", [materials! + labour!, margin / 100]),
    },
    {
      key: "total",
      heading: "Total with tax",
      task: "What does the customer pay with tax? Use your answer to 5.",
      given: ({ tax }) => [
        {
          label: "Tax on the price",
          called: "tax",
          value: tax,
          unit: "%",
          of: "tax",
          invites: [percentAdded],
        },
      ],
      answer: MONEY,
      needs: ["price"],
      solve: ({ tax }, { price }) => price! * (1 + tax / 100),
      slips: taxSlips,
      hints: ["Total = price·(1 + tax/100). What is taxed, and at which rate, is for the local rules."],
      example: ({ tax }, { price }) => {
        const work = new Working();
        const p = work.given("S", "price without tax", price!, "money");
        const t = work.given("t", "tax", tax, "%");
        work.worked(
          "T",
          "total, S·(1 + t/100)",
          p * (1 + t / 100),
          "money",
          arithmetic`${p}·(1 + ${t}/100)`,
          "",
        );
        return work.steps;
      },
    },
    {
      key: "left",
      heading: "Margin after a discount",
      task: "The customer is given a discount on the price of 5. Which margin is left, in percent of the new price? Use 3, 4 and 5.",
      given: ({ discount }) => [
        { label: "Discount", value: discount, unit: "%", of: "discount", invites: [percentOff] },
      ],
      answer: { kind: "number", unit: "%", decimals: 1 },
      needs: ["materials", "labour", "price"],
      solve: ({ discount }, { materials, labour, price }) =>
        100 * (1 - (materials! + labour!) / (price! * (1 - discount / 100))),
      slips: discountSlips,
      hints: ["Margin = (new price - cost)/new price."],
      example: ({ discount }, { materials, labour, price }) => {
        const work = new Working();
        const c = work.given("C", "cost", materials! + labour!, "money");
        const p = work.given("S", "price without tax", price!, "money");
        const d = work.given("d", "discount", discount, "%");
        const now = work.worked(
          "S'",
          "new price, S·(1 − d/100)",
          p * (1 - d / 100),
          "money",
          arithmetic`${p}·(1 − ${d}/100)`,
          "",
        );
        work.worked(
          "g",
          "margin left, 100·(S' − C)/S'",
          100 * (1 - c / now),
          "%",
          arithmetic`100·(${now} − ${c})/${now}`,
          "A margin is a share of the price",
        );
        return work.steps;
      },
    },
  ],
});
