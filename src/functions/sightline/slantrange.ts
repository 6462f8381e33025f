import { slantRange } from "../../engine/sightline/slantRange";
import { slantRangeSteps } from "../../engine/working/sightSteps";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, orbitalSlot } from "./parameters";

export const slantrange = declare({
  name: "SLANTRANGE",
  group: "Sightline",
  summary: "Straight distance from a site to an orbital slot.",
  parameters: [latitude, longitude, orbitalSlot, heightM],
  result: { shape: "cell", unit: "km", help: "Distance in kilometres, for the free-space loss." },
  equation: "Length of the line from the site on WGS84 to the slot at 42164.17 km.",
  source: "WGS84 (NGA.STND.0036); method after Roddy, Satellite Communications, 4th ed., ch. 3",
  accuracy: "1 m against a reference library; a real satellite wanders by tens of kilometres in its box.",
  tasks: ["How far away is the satellite?"],
  examples: [
    {
      formula: "RIG.SLANTRANGE(35,-100,-90)",
      result: 37215,
      tolerance: 15,
      source:
        "Roddy, Satellite Communications, 4th ed., example 3.2 (sphere; the ellipsoid differs by up to 15 km)",
    },
    {
      formula: "RIG.SLANTRANGE(40,-105,-97,1600)",
      result: 37546.308,
      tolerance: 0.001,
      source: "satellite.js 7.1.0, ecfToLookAngles on WGS84",
    },
  ],
  seeAlso: ["LOOKANGLES", "ELEVATION"],
  compute: slantRange,
  working: slantRangeSteps,
});
