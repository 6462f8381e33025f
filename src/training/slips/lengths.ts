/** What lengths invite. */
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
import type { Family } from "../exercise";

const FEET = "feet taken for metres";
const TIMES = "feet multiplied by 3.28 instead of divided";
const TWICE = "there and back counted twice";

/** A length in feet that is worked with in metres. */
export const feet: Family = (length) => [
  { name: FEET, as: length / METRES_PER_FOOT },
  // Each by its own way to remember the foot.
  ...[3.28, 3.281, 3.3, 1 / METRES_PER_FOOT].map((times) => ({
    name: TIMES,
    as: (length * times) / METRES_PER_FOOT,
  })),
  { name: TWICE, as: 2 * length },
  { name: "three feet taken for a metre", as: length / 3 / METRES_PER_FOOT, seldom: true },
  { name: "a yard taken for a foot", as: 3 * length, seldom: true },
  { name: "an inch taken for a foot", as: length / 12, seldom: true },
  { name: "0.3 taken for 0.3048", as: (length * 0.3) / METRES_PER_FOOT, seldom: true },
  { name: "digits of 0.3048 exchanged", as: (length * 0.3408) / METRES_PER_FOOT, seldom: true },
  { name: "feet divided by 3.048", as: length / 3.048 / METRES_PER_FOOT, seldom: true },
];

/** A length in metres, one way. */
export const oneWay: Family = (length) => [
  { name: TWICE, as: 2 * length },
  { name: "metres converted as if they were feet", as: METRES_PER_FOOT * length, seldom: true },
];

/**
 * The length by which a figure for 100 m is multiplied.
 *
 * @param hundred 100 m in the unit of the length
 */
export const timesPerHundred =
  (hundred: number): Family =>
  (length) => [
    { name: "not divided by 100", as: 100 * length },
    { name: "figure of 100 m taken for that of the run", as: hundred },
    { name: TWICE, as: 2 * length },
    { name: "divided by 1000 instead of 100", as: length / 10, seldom: true },
    { name: "divided by the length instead of multiplied", as: hundred ** 2 / length, seldom: true },
  ];
