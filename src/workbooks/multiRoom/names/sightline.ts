import { block, fields, result, told } from "../../names";
import { slotWords } from "../../slotColumns";

export const sight = block("sight", {
  slot: result("Orbital slot", { width: 34 }),
  ...slotWords,
  clearance: result("Margin above the obstacle", { unit: "deg", width: 14, format: "degrees" }),
  verdict: result("Clearance", { width: 14 }),
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
  aim: told("Aim: azimuth and beam elevation", { unit: "", format: "degrees" }),
  tilt: told("Tilt, clockwise at the dish facing the slots", {
    unit: "deg",
    format: "degrees",
    note: "0 is no tilt. A mount's scale may begin elsewhere and count either way: see its drawing.",
  }),
  separation: told("Separation as seen from here", { unit: "deg", format: "degrees" }),
});

export const sun = fields("sun", {
  a: told("Behind the first slot, in spring"),
  a_autumn: told("Behind the first slot, in autumn"),
  b: told("Behind the second slot, in spring"),
  b_autumn: told("Behind the second slot, in autumn"),
});
