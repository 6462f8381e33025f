import { rainFade } from "../../engine/signal/rainFade";
import { declare } from "../core/declare";
import { number, optional } from "../core/parameters";
import { radioFrequency, rainElevation, rainRate, tilt } from "./radioParameters";

export const rainfade = declare({
  name: "RAINFADE",
  group: "Signal",
  summary: "Rain attenuation exceeded for a small part of an average year.",
  parameters: [
    number({
      name: "latitude",
      help: "Latitude of the site, north positive.",
      unit: "deg",
      min: -90,
      max: 90,
    }),
    rainElevation,
    radioFrequency(1000, 55_000),
    rainRate,
    number({
      name: "percent",
      help: "Part of an average year for which the fade is exceeded; 0.01 % is 53 minutes.",
      unit: "%",
      min: 0.001,
      max: 5,
      advice: "Give a percentage: 0.1 for 99.9 % availability",
    }),
    number({
      name: "rain_height_km",
      help: "Rain height above sea level at the site (ITU-R P.839).",
      unit: "km",
      min: 0,
      max: 10,
    }),
    optional(
      number({
        name: "site_height_m",
        help: "Height of the site above sea level.",
        unit: "m",
        min: -500,
        max: 9000,
      }),
      0,
    ),
    tilt,
  ],
  result: { shape: "cell", unit: "dB", help: "Attenuation, positive; 0 above the rain." },
  equation:
    "Attenuation per km at the rate of 0.01 % of the year, times the effective path in rain, scaled to the percentage.",
  source: "ITU-R P.618-13 section 2.2.1.1 with P.838-3.",
  accuracy:
    "The method as printed: ITU Study Group 3's examples to 1e-6 dB, but for one of 0.001 % that is refused, because its curve has turned. Against nature 20 to 30 % of the decibels; cloud, gas and a wet dish come on top.",
  tasks: ["How much margin does 99.9 % of the year need?", "Will a smaller dish still do in the rain?"],
  examples: [
    {
      formula: "RIG.RAINFADE(51.5,31.07699124,14250,26.48052,0.01,2.4527333,31.382984,0)",
      result: 6.798072267,
      tolerance: 1e-6,
      source: "ITU-R Study Group 3 validation examples, P.618-13",
    },
  ],
  seeAlso: ["RAINSPECIFIC", "CARRIERNOISE"],
  faultsWhen: [
    "The percentage is so rare that the method, beyond its reach on this path, would give less fade for a rarer case.",
  ],
  compute: (latitude, elevation, frequency, rain, percent, rainHeight, siteHeightM, tilt) =>
    rainFade({
      latitude,
      elevation,
      frequency: frequency / 1000,
      rain,
      percent,
      rainHeight,
      siteHeight: siteHeightM / 1000,
      tilt,
    }),
});
