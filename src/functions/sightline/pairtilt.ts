import { pairTilt } from "../../engine/sightline/pairTilt";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, slotA, slotB } from "./parameters";

export const pairtilt = declare({
  name: "PAIRTILT",
  group: "Sightline",
  summary: "Tilt of a dish for two slots about its aim, clockwise positive at the dish facing the slots.",
  parameters: [latitude, longitude, slotA, slotB, heightM],
  result: {
    shape: "cell",
    unit: "deg",
    help: "Tilt from -90 to 90; positive = the right end lower. A maker's scale that shows 90 for no tilt reads 90 plus or minus this: see its drawing.",
  },
  equation: "sin(tilt) = (sin E_left - sin E_right) / (2 sin(separation / 2) cos E_aim)",
  source: "derivation on WGS84 look angles; no published form",
  accuracy:
    "0.002 deg of an independent calculation. The order of the slots does not matter. A mast out of plumb by e deg twists the dish by up to e sin(elevation).",
  tasks: ["How far is the dish turned for two slots?"],
  examples: [
    {
      formula: 'RIG.PAIRTILT(40,-75,"97W","113W")',
      result: 30.553,
      tolerance: 0.002,
      source: "the same derivation on WGS84, worked apart from this project",
    },
  ],
  seeAlso: ["PAIRAIM", "SEPARATION", "POLSKEW"],
  faultsWhen: [
    "A slot lies below the horizon.",
    "Both slots are the same.",
    "The middle of the two lies straight overhead.",
  ],
  compute: pairTilt,
});
