import { peakOffset } from "../../engine/sightline/peakOffset";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

const drop = (name: string, side: string) =>
  number({
    name,
    help: `Fall of the level after a step to ${side}, from the present reading; negative if it rose.`,
    unit: "dB",
    min: -30,
    max: 30,
  });

export const peakoffset = declare({
  name: "PEAKOFFSET",
  group: "Sightline",
  summary: "How far the peak lies from the present setting, from the drops a step to either side.",
  parameters: [
    drop("drop_plus", "+"),
    drop("drop_minus", "-"),
    number({
      name: "step",
      help: "Step to either side: degrees, or marks of the mount's scale.",
      min: 0,
      max: 360,
      aboveMin: true,
    }),
  ],
  result: { shape: "cell", help: "Turn towards + when positive, in the unit of the step." },
  equation: "offset = (step / 2) (drop_minus - drop_plus) / (drop_minus + drop_plus)",
  source: "derivation from the main lobe 12 (angle / beamwidth)^2 dB (Maral and Bousquet, from memory)",
  accuracy:
    "Exact on the parabola, good to about -6 dB. Read level or carrier-to-noise in dB, not quality or percent; steps near half a beamwidth are best.",
  tasks: ["The level falls more to one side: how far do I turn back?"],
  examples: [
    {
      formula: "RIG.PEAKOFFSET(0.9507,3.8027,1)",
      result: 0.3,
      tolerance: 0.0001,
      source: "worked forwards from a beamwidth of 2.247 deg and an offset of 0.3 deg, 1 deg to either side",
    },
  ],
  seeAlso: ["AZIMUTH", "ELEVATION"],
  faultsWhen: [
    "The drops add up to 0 dB or less, so that there is no peak between.",
    "The peak would lie more than 2.5 steps, or 0.7 beamwidths, from the present setting: turn towards it and read again.",
    "The drops add up to more than 15.36 dB: the step is over 0.8 of the beamwidth.",
  ],
  caution:
    "Keep both feet on firm ground or a secured platform while turning; do not lean out from a ladder.",
  compute: peakOffset,
});
