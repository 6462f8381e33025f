/**
 * Price, markup and margin, line by line: the steps of sellPrice, markupOfMargin
 * and marginOfMarkup, with their definitions and range.
 */
import { isFault, type Fault } from "../faults";
import type { RoundingRule } from "../estimate/exact";
import { marginOfMarkup } from "../estimate/marginOfMarkup";
import { markupOfMargin } from "../estimate/markupOfMargin";
import { sellPrice } from "../estimate/sellPrice";
import { arithmetic, Working, type Step } from "./steps";

const MARGIN = "A margin is a share of the price";
const ROUNDED = "Rounded once, where it is printed";
const MARKUP = "A markup is a share of the cost";

const keptShare = (work: Working, margin: number): number =>
  work.worked(
    "k",
    "share of the price that covers the cost, 1 − g",
    1 - margin,
    "",
    arithmetic`1 − ${margin}`,
    MARGIN,
  );

/** Parameters as for sellPrice. */
export function sellPriceSteps(
  cost: number,
  margin: number,
  contingency = 0,
  overhead = 0,
  decimals?: number,
  rule?: RoundingRule,
): readonly Step[] | Fault {
  const price = sellPrice(cost, margin, contingency, overhead);
  const rounded = sellPrice(cost, margin, contingency, overhead, decimals, rule);
  if (isFault(price) || isFault(rounded)) return price as Fault;
  const work = new Working();
  work.given("C", "cost", cost, "money");
  work.given("g", "margin, a share of the price", margin);
  let full = cost;
  if (contingency > 0 || overhead > 0) {
    work.given("c", "contingency, a share of the cost", contingency);
    work.given("o", "overhead, a share of cost and contingency", overhead);
    full = work.worked(
      "F",
      "cost with both, C·(1 + c)·(1 + o)",
      cost * (1 + contingency) * (1 + overhead),
      "money",
      arithmetic`${cost}·(1 + ${contingency})·(1 + ${overhead})`,
      "Contingency is added first, overhead to both",
    );
  }
  const kept = keptShare(work, margin);
  const symbol = full === cost ? "C" : "F";
  work.worked("S", `price, ${symbol}/k`, price, "money", arithmetic`${full}/${kept}`, MARGIN);
  if (decimals !== undefined)
    work.worked("R", `price rounded to ${decimals} decimals`, rounded, "money", "", ROUNDED);
  return work.steps;
}

/** Parameters as for markupOfMargin. */
export function markupSteps(margin: number): readonly Step[] | Fault {
  const markup = markupOfMargin(margin);
  if (isFault(markup)) return markup;
  const work = new Working();
  work.given("g", "margin, a share of the price", margin);
  const kept = keptShare(work, margin);
  work.worked("m", "markup, g/k", markup, "", arithmetic`${margin}/${kept}`, MARKUP);
  return work.steps;
}

/** Parameters as for marginOfMarkup. */
export function marginSteps(markup: number): readonly Step[] {
  const work = new Working();
  work.given("m", "markup, a share of the cost", markup);
  const price = work.worked(
    "p",
    "price of a cost of 1, 1 + m",
    1 + markup,
    "",
    arithmetic`1 + ${markup}`,
    MARKUP,
  );
  work.worked("g", "margin, m/p", marginOfMarkup(markup), "", arithmetic`${markup}/${price}`, MARGIN);
  return work.steps;
}
