/** What the parts of a sum invite. */
import type { Family } from "../exercise";

const term =
  (turned: string): Family =>
  (value, what) => [
    { name: `${what} left out`, as: 0 },
    { name: `${what} ${turned}`, as: -value },
    { name: `${what} counted twice`, as: 2 * value, seldom: true },
  ];

/** A part that is taken off. */
export const takenOff: Family = term("added instead of subtracted");

/** A part that is added. */
export const added: Family = term("subtracted instead of added");

/** A part of which only that it's forgotten is common. */
export const forgotten: Family = (value, what) => [
  { name: `${what} left out`, as: 0 },
  { name: `${what} with the wrong sign`, as: -value, seldom: true },
  { name: `decimal point of ${what} misplaced`, as: 10 * value, seldom: true },
  { name: `decimal point of ${what} misplaced`, as: value / 10, seldom: true },
];

/** An angle east or west. */
export const eastOrWest: Family = (value, what) => [{ name: `sign of the ${what} exchanged`, as: -value }];

/** An angle north or south. */
export const northOrSouth: Family = (value, what) =>
  eastOrWest(value, what).map((one) => ({ ...one, seldom: true }));
