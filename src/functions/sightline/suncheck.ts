import { isFault } from "../../engine/faults";
import { SUN_FIRST_YEAR, SUN_LAST_YEAR } from "../../engine/sightline/constants";
import { sunCheck } from "../../engine/sightline/sunCheck";
import { declare } from "../core/declare";
import { number, optional } from "../core/parameters";
import { heightM, latitude, longitude, orbitalSlot } from "./parameters";

const isoMinute = (instantMs: number): string =>
  `${new Date(Math.round(instantMs / 60_000) * 60_000).toISOString().slice(0, 16)}Z`;
const isoDay = (instantMs: number): string => new Date(instantMs).toISOString().slice(0, 10);

export const suncheck = declare({
  name: "SUNCHECK",
  group: "Sightline",
  summary: "When the sun stands behind an orbital slot: outages, and the hour of the shadow test.",
  parameters: [
    latitude,
    longitude,
    orbitalSlot,
    number({
      name: "year",
      help: "Calendar year.",
      min: SUN_FIRST_YEAR,
      max: SUN_LAST_YEAR,
      integer: true,
    }),
    optional(
      number({
        name: "dish_m",
        help: "Diameter of the dish; the default is common practice, no source.",
        unit: "m",
        min: 0.3,
        max: 15,
      }),
      0.75,
    ),
    optional(
      number({
        name: "frequency",
        help: "Received frequency; the default is the middle of a downlink band, common practice, no source.",
        unit: "MHz",
        min: 3000,
        max: 32000,
      }),
      12450,
    ),
    heightM,
  ],
  result: {
    shape: "table",
    help: "Two rows, the season near March and the one near September, in UTC as text; the peak to the minute, since a satellite's wander in its box moves it by as much.",
    columns: [
      "peak, UTC",
      "minimum separation, deg",
      "first day, UTC",
      "last day, UTC",
      "outage on the peak day, s",
    ],
  },
  equation:
    "Outage while the angle from sun to slot is at most 35 wavelength / diameter + 0.267 deg (half the beamwidth and the sun's radius).",
  source:
    "limit after ITU-R S.1525-1 and published outage pages; beamwidth 70 wavelength / diameter (Maral and Bousquet, from memory); sun after Meeus, ch. 25",
  accuracy: "30 s at the peak and a day at the ends of the season, against a reference library.",
  tasks: [
    "When will the picture fail because of the sun?",
    "When does the shadow on the dish show whether the slot is clear?",
  ],
  examples: [
    {
      formula: "RIG.SUNCHECK(40,-105,-97,2026,0.75,12450,1600)",
      result: [
        ["2026-03-04T18:35Z", 0.0142, "2026-03-01", "2026-03-07", 671],
        ["2026-10-08T18:11Z", 0.1407, "2026-10-05", "2026-10-12", 668],
      ],
      tolerance: 2,
      source: "astronomy-engine 2.1.19 and satellite.js 7.1.0, rounded to the minute",
    },
  ],
  seeAlso: ["SUNPOSITION", "SETBACK"],
  faultsWhen: ["The slot lies below the horizon."],
  caution:
    "Never look at the sun, least of all along the dish or through a sight. A bright metal dish can also burn its feed at the peak: leave it as it is, and use the shadow.",
  compute: (latitude, longitude, slot, year, dish, frequency, height) => {
    const seasons = sunCheck(latitude, longitude, slot, year, dish, frequency, height);
    if (isFault(seasons)) return seasons;
    return seasons.map(({ peakMs, leastSeparation, firstMs, lastMs, seconds }) => [
      isoMinute(peakMs),
      leastSeparation,
      isoDay(firstMs),
      isoDay(lastMs),
      Math.round(seconds),
    ]);
  },
});
