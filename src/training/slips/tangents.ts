/** What a tangent of degrees invites. */
import { cosDeg, sinDeg, toRadians } from "../../engine/sightline/angles";
import type { Earlier, Slip } from "../exercise";

type Tangent = (degrees: number) => number;

/** @param worked the question with another function for the tangent */
export const tangentSlips = <N>(
  worked: (numbers: N, earlier: Earlier, tan: Tangent) => number,
): Slip<N>[] => {
  const slip = (name: string, tan: Tangent, seldom = false): Slip<N> => ({
    name,
    wrong: (n, e) => worked(n, e, tan),
    seldom,
  });
  return [
    slip("degrees used as radians", Math.tan),
    slip("sine for tangent", sinDeg),
    slip("cosine for tangent", cosDeg, true),
    slip("divided and multiplied by the tangent exchanged", (degrees) => 1 / Math.tan(toRadians(degrees))),
    slip("tangent left out", () => 1),
  ];
};
