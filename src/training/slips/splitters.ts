/** What the loss of a splitter invites beyond its figures: 10·log10(ways) and the loss beyond the ideal. */
import type { Earlier, Slip } from "../exercise";
import { asPowers } from "./levels";

type Of<N> = (numbers: N, earlier: Earlier) => number;

/** @param before what is lost before it, 0 for one splitter alone */
export const splitterSlips = <N>(ways: Of<N>, excess: Of<N>, before: Of<N> = () => 0): Slip<N>[] => {
  const slip = (name: string, loss: (ways: number, excess: number, ideal: number) => number): Slip<N> => ({
    name,
    wrong: (n, e) => before(n, e) + loss(ways(n, e), excess(n, e), 10 * Math.log10(ways(n, e))),
    seldom: true,
  });
  return [
    slip("loss beyond the ideal added for each way", (count, x, ideal) => ideal + count * x),
    slip("loss of the ways multiplied by that beyond the ideal", (_, x, ideal) => ideal * x),
    slip("loss beyond the ideal taken into the logarithm", (count, x) => 10 * Math.log10(count * x)),
    slip("decibels added as powers", (_, x, ideal) => asPowers([ideal, x])),
  ];
};
