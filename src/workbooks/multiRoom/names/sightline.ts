import { block, fields, result, results, told } from "../../names";
import { slotWords } from "../../slotColumns";
import { keyed } from "../nameKeys";

export const sight = block("sight", {
  slot: result("Orbital slot", { width: 34 }),
  ...slotWords,
  obstacle: result("Highest obstacle, from its dish", { unit: "deg", width: 14, format: "one" }),
  clearance: result("Margin above the obstacle", { unit: "deg", width: 14, format: "degrees" }),
  verdict: result("Clearance", { width: 14 }),
  own: result("Dishes that give an obstacle of their own", { width: 14, format: "integer" }),
});

export const compass = fields("sight", {
  declination: told("Magnetic declination at the first slot", {
    unit: "deg east",
    format: "degrees",
    note: "True less compass, on the date on Site. Iron nearby turns a compass much further.",
  }),
});

export const pair = fields("pair", {
  a: told("First slot"),
  b: told("Second slot"),
});

/** Of each dish, or of the one dish where Dishes has no row. */
export const aims = block("aims", {
  dish: result("Dish", { width: 34 }),
  a: result("First slot", { width: 14 }),
  b: result("Second slot", { width: 14 }),
  to: results(
    "Aim",
    { width: 14, format: "degrees" },
    {
      azimuth: { head: "azimuth, true", unit: "deg" },
      elevation: { head: "beam elevation", unit: "deg" },
    },
  ),
  tilt: result("Tilt, clockwise at the dish facing the slots", { unit: "deg", width: 14, format: "degrees" }),
  separation: result("Separation as seen from here", { unit: "deg", width: 14, format: "degrees" }),
  clearance: result("Margin above the obstacle", { unit: "deg", width: 14, format: "degrees" }),
  verdict: result("Clearance", { width: 14 }),
  further: result("Slots after the first", { width: 14 }),
  given: result("Obstacles of its own", { width: 14, format: "integer" }),
  a_key: keyed("First slot"),
  b_key: keyed("Second slot"),
});

export const sun = fields("sun", {
  a: told("Behind the first slot, in spring"),
  a_autumn: told("Behind the first slot, in autumn"),
  b: told("Behind the second slot, in spring"),
  b_autumn: told("Behind the second slot, in autumn"),
});
