import { pointingLoss } from "../../engine/signal/pointingLoss";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

export const pointloss = declare({
  name: "POINTLOSS",
  group: "Signal",
  summary: "Loss of a dish that points beside the slot.",
  parameters: [
    number({
      name: "error_deg",
      help: "Angle between the beam's axis and the slot.",
      unit: "deg",
      min: -180,
      max: 180,
    }),
    number({
      name: "beamwidth",
      help: "Beam width between the half-power points, as BEAMWIDTH gives it.",
      unit: "deg",
      min: 0,
      aboveMin: true,
      max: 180,
    }),
  ],
  result: { shape: "cell", unit: "dB", help: "Loss, positive." },
  equation: "12·(error/beamwidth)².",
  source: "Maral & Bousquet, Satellite Communications Systems, 3rd ed., p. 27 (cited).",
  accuracy: "A parabola fits the main lobe down to some 6 dB.",
  tasks: ["What does a dish lose that has moved by half a degree?"],
  examples: [
    {
      formula: "RIG.POINTLOSS(0.5,1)",
      result: 3,
      tolerance: 1e-9,
      source: "Half the beam width is the half-power point",
    },
    { formula: "RIG.POINTLOSS(0.25,1)", result: 0.75, tolerance: 1e-9, source: "12·0.25², worked by hand" },
  ],
  seeAlso: ["BEAMWIDTH"],
  faultsWhen: ["The error lies beyond the 6 dB points of the main lobe."],
  compute: pointingLoss,
});
