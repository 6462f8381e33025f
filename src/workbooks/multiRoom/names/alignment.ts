import { block, fields, result, told } from "../../names";

export const align = block("align", {
  slot: result("Orbital slot", { width: 34 }),
  azimuth: result("True azimuth", { unit: "deg", width: 14, format: "degrees" }),
  compass: result("Compass bearing, magnetic", { unit: "deg", width: 14, format: "degrees" }),
  elevation: result("Beam elevation, above the horizon", {
    unit: "deg",
    width: 14,
    format: "degrees",
  }),
  face: result("Rim angle, back from upright", { unit: "deg", width: 14, format: "degrees" }),
  skew: result("Polarisation skew", { unit: "deg", width: 14, format: "degrees" }),
});

/** Of each dish, for the first two of its slots. */
export const aimed = block("aimed", {
  dish: result("Dish", { width: 34 }),
  a: result("First slot", { width: 14 }),
  b: result("Second slot", { width: 14 }),
  azimuth: result("Aim: true azimuth", { unit: "deg", width: 14, format: "degrees" }),
  compass: result("Aim: compass bearing, magnetic", { unit: "deg", width: 14, format: "degrees" }),
  elevation: result("Aim: beam elevation", { unit: "deg", width: 14, format: "degrees" }),
  face: result("Aim: rim angle, back from upright", { unit: "deg", width: 14, format: "degrees" }),
  tilt: result("Tilt, clockwise facing the slots", { unit: "deg", width: 14, format: "degrees" }),
});

export const alignment = fields("align", {
  date: told("Bearings are for", { format: "date" }),
  declination: told("Magnetic declination", {
    unit: "deg east",
    format: "degrees",
    note: "True less compass. Iron on a roof or mast turns a compass much further: take a bearing from a few steps away.",
  }),
});
