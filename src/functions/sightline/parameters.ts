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
  help: "Orbital slot: degrees east, or text such as 97W or 28.2E.",
});

export const heightM = optional(
  number({ name: "height_m", help: "Height of the site above sea level.", unit: "m", min: -500, max: 9000 }),
  0,
);

export const onDate = date({
  name: "date",
  help: "Day of the visit: a date cell, text such as 2026-07-04, or a decimal year.",
});
