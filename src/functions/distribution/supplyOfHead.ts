/** What head units have of receivers and of supplies, each gathered in one pass. */
import { SLIGHT } from "../../engine/distribution/findingsOfSupply";
import { perSolved } from "./perSolved";

/** By head unit: the tuners of its outlets. */
export const tunersOfHeads = perSolved(({ found: { tree }, job }) => {
  const tuners = new Int32Array(job.headUnits.length);
  job.outlets.forEach(({ receiver, quantity }, outlet) => {
    const point = tree.pointOfOutlet[outlet]!;
    if (receiver && point >= 0) tuners[tree.row[tree.output[point]!]!]! += receiver.tuners * quantity;
  });
  return tuners;
});

/** By head unit with a supply of its own: amperes that it gives most. */
export const ownSupplyMost = perSolved(
  ({ found: { nodes, supply } }) =>
    new Map(nodes.sources.flatMap(({ head }, one) => (head >= 0 ? [[head, supply.supplyMost[one]!]] : []))),
);

/** Head units that hand on to another. */
export const handingOn = perSolved(
  ({ found: { trunks } }) => new Set(trunks.inlets.flatMap((some) => some.map(({ above }) => above))),
);

/** By head unit: whether each feed that it powers has its volts. */
export const feedsOfHeads = perSolved(({ found: { nodes, supply }, job }) => {
  const enough = new Map<number, boolean>();
  nodes.feeds.forEach(({ head, dish }, one) => {
    const has = supply.feedLeast[one]! >= job.dishes[dish]!.feed!.leastVolts - SLIGHT;
    enough.set(head, has && (enough.get(head) ?? true));
  });
  return enough;
});
