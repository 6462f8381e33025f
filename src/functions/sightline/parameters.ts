/** The arguments that the sightline functions share. */
import { date, number, optional, slot } from "../core/parameters";

export const latitude = number({
  name: "latitude",
  help: "Latitude of the site, north positive.",
  unit: "deg",
  min: -90,
  max: 90,
  advice: "North is positive, south negative",
});

export const longitude = number({
  name: "longitude",
  help: "Longitude of the site, east positive.",
  unit: "deg",
  min: -180,
  max: 180,
  advice: "East is positive, west negative",
});

export const orbitalSlot = slot({
  name: "slot",
  help: "Orbital slot: degrees east, or text such as 97W or 13E.",
});

export const heightM = optional(
  number({ name: "height_m", help: "Height of the site above sea level.", unit: "m", min: -500, max: 9000 }),
  0,
);

export const onDate = date({
  name: "date",
  help: "Day of the visit: a date cell, text such as 2026-07-04, or a decimal year.",
});

const slotOf = (name: string, which: string) =>
  slot({ name, help: `${which} orbital slot: degrees east, or text such as 97W or 13E.` });
export const slotA = slotOf("slot_a", "One");
export const slotB = slotOf("slot_b", "The other");

export const rayElevation = number({
  name: "elevation",
  help: "Elevation of the slot.",
  unit: "deg",
  min: 0,
  max: 89.9,
  advice: "A ray that is steeper clears whatever stands beside the dish",
});

const LONGEST = 1e6;

export const dishHeight = optional(
  number({
    name: "dish_height",
    help: "Height of the dish, in the unit of the other lengths.",
    min: -LONGEST,
    max: LONGEST,
  }),
  0,
);

export const distance = number({
  name: "distance",
  help: "Level distance from the dish along the azimuth of the slot; metres or feet, the same for all lengths.",
  min: 0,
  max: LONGEST,
});

export const obstacleHeight = number({
  name: "obstacle_height",
  help: "Top of the obstacle; metres or feet, from the same level and in the same unit as dish_height.",
  min: -LONGEST,
  max: LONGEST,
});

export const marginDeg = optional(
  number({
    name: "margin_deg",
    help: "Angle to keep free below the ray: half a beamwidth and growth, 2 to 5 deg (common practice, no source).",
    unit: "deg",
    min: 0,
    max: 30,
  }),
  0,
);
