/** The first threshold of each rule in the whole review, and those that need its readings; each takes a second or more. */
import { sampled } from "../support/tries";
import { pairs, told } from "./thresholds/told";

const firstOfRule = new Set(new Map(pairs.toReversed().map((pair) => [pair.rule, pair])).values());
const together = pairs.filter((pair) => pair.whole === true || (firstOfRule.has(pair) && !pair.folded));
const heldInside = new Set(sampled(together, 2));

describe.each(together.map((pair) => [pair.rule, pair.limit, pair] as const))("%s: %s", (_, __, pair) => {
  if (pair.whole && heldInside.has(pair))
    test("just inside it says nothing", () => {
      expect(told(pair, pair.inside, true).named).toEqual([]);
    });
  test("just beyond it names the cell", () => {
    const { named, wanted } = told(pair, pair.beyond, true);
    expect(named).toContain(wanted);
  });
});
