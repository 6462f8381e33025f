/**
 * The four corners of a prediction: the low and the high end of the band, each
 * with the cable at its coldest and at its hottest. A formula over the corners
 * spills four columns sideways.
 */
import { f } from "../../formula/build";

export const CORNERS = {
  low_cold: { head: "low cold" },
  low_hot: { head: "low hot" },
  high_cold: { head: "high cold" },
  high_hot: { head: "high hot" },
} as const;

/** Picks from a pair (low end, high end) the one that belongs to each corner. */
export const PAIR_TO_CORNERS = f`{1,1,2,2}`;
/** Takes a four-column block as it is. */
export const ALL_CORNERS = f`{1,2,3,4}`;
