import { anyText, day, number } from "../asks";
import { asked, block, fields, result, told } from "../names";
import { slotEntry, slotWords } from "../slotColumns";

export const card = fields("card", {
  job: asked("Job", {}, anyText("Which job and dish", { required: true })),
  date: asked(
    "Date",
    { format: "date" },
    day("Date of the work, for the compass", {
      required: true,
      example: "2026-11-02",
    }),
  ),
  latitude: asked(
    "Latitude",
    { unit: "deg north", format: "three" },
    number(-90, 90, "Latitude of the dish; south is negative", {
      required: true,
    }),
  ),
  longitude: asked(
    "Longitude",
    { unit: "deg east", format: "three" },
    number(-180, 180, "Longitude of the dish; west is negative", {
      required: true,
    }),
  ),
  height: asked("Height", { unit: "m", format: "integer" }, number(-500, 9000, "Height above sea level")),
  offset: asked(
    "Offset angle of the dish",
    { unit: "deg", format: "one" },
    number(0, 60, "Offset angle of the dish; 0 for a centre-fed one", {
      required: true,
      example: "22.6",
    }),
  ),
  dish: asked(
    "Diameter of the dish",
    { unit: "m", format: "two" },
    number(0.3, 15, "Diameter of the dish, to compare the width of its beam; may be blank", {
      example: "0.9",
    }),
  ),
  frequency: asked(
    "Frequency received at the dish",
    { unit: "MHz", format: "integer" },
    number(1000, 50_000, "A frequency in the middle of the band that the dish receives; may be blank", {
      example: "11700",
    }),
  ),
});

export const slots = block("slots", {
  slot: slotEntry,
  ...slotWords,
  face: result("Rim angle, back from upright", { unit: "deg", width: 14, format: "degrees" }),
});

export const pair = fields("pair", {
  a: told("First slot"),
  b: told("Second slot"),
  aim: told("Aim: azimuth and beam elevation", { format: "degrees" }),
  tilt: told("Tilt, clockwise at the dish facing the slots", {
    unit: "deg",
    format: "degrees",
  }),
});
