/** The arguments that the dish, rain and noise functions share. */
import { DISH_EFFICIENCY } from "../../engine/signal/radioConstants";
import { number, optional, type EachParameter } from "../core/parameters";

/** A frequency in the air, not in the cable. */
export const radioFrequency = (min: number, max: number): EachParameter<number> =>
  number({
    name: "frequency",
    help: "Frequency in the air, before the head unit converts it.",
    unit: "MHz",
    min,
    max,
    advice: "Give MHz, not GHz",
  });

export const dishFrequency = radioFrequency(300, 100_000);

export const diameterM = number({
  name: "diameter_m",
  help: "Diameter of the dish; of an offset dish the width of its rim.",
  unit: "m",
  min: 0,
  aboveMin: true,
  max: 100,
});

export const efficiency = optional(
  number({
    name: "efficiency",
    help: "Aperture efficiency of the dish, a fraction.",
    min: 0,
    aboveMin: true,
    max: 1,
    advice: "Give a fraction, such as 0.6, not a percentage",
  }),
  DISH_EFFICIENCY,
);

export const rangeKm = number({
  name: "range_km",
  help: "Distance to the satellite.",
  unit: "km",
  min: 0,
  aboveMin: true,
  max: 1_000_000,
});

export const rainRate = number({
  name: "rain_mm_h",
  help: "Rain rate; for RAINFADE the rate exceeded for 0.01 % of an average year at the site (ITU-R P.837).",
  unit: "mm/h",
  min: 0,
  max: 300,
});

/** P.618's method starts at 5°. */
export const rainElevation = number({
  name: "elevation",
  help: "Elevation of the path.",
  unit: "deg",
  min: 5,
  max: 90,
});

/** Circular polarisation, or a linear one of unknown tilt, lies midway. */
const MIDWAY_DEG = 45;

export const tilt = optional(
  number({
    name: "tilt",
    help: "Tilt of the polarisation from the horizontal: 0 horizontal, 90 vertical, 45 circular or unknown.",
    unit: "deg",
    min: -180,
    max: 180,
  }),
  MIDWAY_DEG,
);
