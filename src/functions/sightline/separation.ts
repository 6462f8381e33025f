import { separation as separationSeen } from "../../engine/sightline/separation";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, slotA, slotB } from "./parameters";

export const separation = declare({
  name: "SEPARATION",
  group: "Sightline",
  summary: "Angle between two slots as seen from a site.",
  parameters: [latitude, longitude, slotA, slotB, heightM],
  result: {
    shape: "cell",
    unit: "deg",
    help: "Angle between the two directions; more than the difference of the slots.",
  },
  equation: "cos(separation) = sin E1 sin E2 + cos E1 cos E2 cos(A1 - A2)",
  source:
    "the cosine rule; equal to the three-sides form of Radio Regulations Appendix 8, which is from memory",
  accuracy: "0.0005 deg of an independent calculation; satellites wander by about 0.1 deg.",
  tasks: ["How far apart do two slots look from here?"],
  examples: [
    {
      formula: 'RIG.SEPARATION(40,-75,"97W","113W")',
      result: 17.6061,
      tolerance: 0.0005,
      source: "three-sides cosine formula, worked apart from this project",
    },
  ],
  seeAlso: ["PAIRAIM", "PAIRTILT"],
  faultsWhen: ["A slot lies below the horizon."],
  compute: separationSeen,
});
