/**
 * The four corners of a prediction: the lowest and the highest frequency, each
 * with the cable at its coldest and at its hottest. A formula over the corners
 * spills four columns sideways.
 */
import { f } from "../../formula/build";

/** A line holds "frequency,". */
const WIDTH = 11;

export const CORNERS = {
  low_cold: { head: "lowest frequency, cold", width: WIDTH },
  low_hot: { head: "lowest frequency, hot", width: WIDTH },
  high_cold: { head: "highest frequency, cold", width: WIDTH },
  high_hot: { head: "highest frequency, hot", width: WIDTH },
} as const;

/** The corners among other columns, with what they are of before them. */
export const cornersOf = (what: string, unit: string) =>
  ({
    low_cold: { head: `${what}, ${CORNERS.low_cold.head}`, unit, width: WIDTH, format: "one" },
    low_hot: { head: `${what}, ${CORNERS.low_hot.head}`, unit, width: WIDTH, format: "one" },
    high_cold: { head: `${what}, ${CORNERS.high_cold.head}`, unit, width: WIDTH, format: "one" },
    high_hot: { head: `${what}, ${CORNERS.high_hot.head}`, unit, width: WIDTH, format: "one" },
  }) as const;

/** Heads of a table with a column for each. */
export const CORNER_HEADS = Object.values(CORNERS).map(({ head }) => head);

/** Picks from a pair (lowest, highest frequency) the one that belongs to each corner. */
export const PAIR_TO_CORNERS = f`{1,1,2,2}`;
/** Takes a four-column block as it is. */
export const ALL_CORNERS = f`{1,2,3,4}`;
