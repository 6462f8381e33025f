/**
 * Price, markup and margin, line by line: the steps of sellPrice, markupOfMargin
 * and marginOfMarkup, with their definitions and range.
 */
import { isFault, type Fault } from "../faults";
import { marginOfMarkup } from "../estimate/marginOfMarkup";
import { markupOfMargin } from "../estimate/markupOfMargin";
import { sellPrice } from "../estimate/sellPrice";
import { arithmetic, Working, type Step } from "./steps";

const MARGIN = "A margin is a share of the price";
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
export function sellPriceSteps(cost: number, margin: number): readonly Step[] | Fault {
  const price = sellPrice(cost, margin);
  if (isFault(price)) return price;
  const work = new Working();
  work.given("C", "cost", cost, "money");
  work.given("g", "margin, a share of the price", margin);
  const kept = keptShare(work, margin);
  work.worked("S", "price, C/k", price, "money", arithmetic`${cost}/${kept}`, MARGIN);
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
