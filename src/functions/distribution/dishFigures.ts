/** What dishes have of their slots and feeds, each gathered in one pass. */
import { isUnseen } from "../../engine/distribution/sky";
import { perSolved } from "./perSolved";

type Leasts = Map<number, number>;
const note = (into: Leasts, dish: number, value: number): void => {
  if (!(into.get(dish)! <= value)) into.set(dish, value);
};

/** By dish: the least carrier to noise in a clear sky at its feed, of slots of which it is asked. */
export const leastClear = perSolved(({ found: { seen } }) => {
  const least: Leasts = new Map();
  for (const slots of seen)
    for (const one of slots)
      if (!isUnseen(one) && one.slot.needed !== null && one.atFeed) note(least, one.dish, one.atFeed.clear);
  return least;
});

/** By dish: the least volts of its feed. */
export const leastFeedVolts = perSolved(({ found: { nodes, supply } }) => {
  const least: Leasts = new Map();
  nodes.feeds.forEach(({ dish }, one) => note(least, dish, supply.feedLeast[one]!));
  return least;
});
