import { isFault } from "../../engine/faults";
import { sunPosition } from "../../engine/sightline/sunPosition";
import { declare } from "../core/declare";
import { date } from "../core/parameters";
import { latitude, longitude } from "./parameters";

export const sunposition = declare({
  name: "SUNPOSITION",
  group: "Sightline",
  summary: "Azimuth and elevation of the sun at a site and an instant in UTC, side by side.",
  parameters: [
    latitude,
    longitude,
    date({
      name: "utc",
      help: "Instant in UTC, not in local time: a date and time cell, or text such as 2026-03-04T18:35:24.",
    }),
  ],
  result: {
    shape: "row",
    help: "Two cells: azimuth and true elevation of the sun's centre, both in degrees.",
    columns: ["azimuth, deg", "elevation, deg"],
  },
  equation:
    "Apparent right ascension and declination of the sun, sidereal time, and the turn to the horizon.",
  source: "Meeus, Astronomical Algorithms, 2nd ed., ch. 25, low precision",
  accuracy:
    "0.01 deg from 1950 to 2100, refraction left out. A minute of the clock moves the sun by 0.25 deg, so set the clock first.",
  tasks: ["Which way is the sun, to check the compass by it?"],
  examples: [
    {
      formula: 'RIG.SUNPOSITION(39.742476,-105.1786,"2003-10-17T19:30:30")',
      result: [[194.34024, 39.87195]],
      tolerance: 0.01,
      source:
        "Reda and Andreas, solar position algorithm, table A5.1: azimuth; elevation without air from astronomy-engine 2.1.19",
    },
  ],
  seeAlso: ["SUNCHECK", "COMPASS"],
  faultsWhen: ["The instant lies outside 1950 to 2100."],
  caution: "Never look at the sun, least of all through a sight. Use a shadow.",
  compute: (latitude, longitude, utc) => {
    const sun = sunPosition(latitude, longitude, utc);
    return isFault(sun) ? sun : [sun.azimuth, sun.elevation];
  },
});
