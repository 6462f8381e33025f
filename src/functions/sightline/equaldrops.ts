import { faults, isFault } from "../../engine/faults";
import { beamwidth } from "../../engine/signal/beamwidth";
import { equalDrops } from "../../engine/sightline/equalDrops";
import { declare } from "../core/declare";
import { choice, number, optional } from "../core/parameters";

/** Two readings of one level on one meter; an assumption, no source. */
const READING_ERROR_DB = 0.3;

const reading = (name: string, where: string) =>
  number({ name, help: `Reading ${where}, in dBµV or dB.`, unit: "dB", min: -100, max: 200 });

export const equaldrops = declare({
  name: "EQUALDROPS",
  group: "Sightline",
  summary: "How far to turn to the peak from readings a step to either side, and how sure that is.",
  parameters: [
    reading("plus", "after a step to +"),
    reading("here", "at the present setting"),
    reading("minus", "after a step to - from the same setting"),
    number({
      name: "step",
      help: "Step to either side, as turned.",
      unit: "deg",
      min: 0,
      max: 30,
      aboveMin: true,
    }),
    optional(
      choice({
        name: "axis",
        help: "What was turned; without it elevation.",
        choices: ["azimuth", "elevation", "tilt"],
      }),
      "elevation",
    ),
    optional(
      number({
        name: "elevation",
        help: "Elevation of the beam, for a turn in azimuth.",
        unit: "deg",
        min: 0,
        max: 89.9,
      }),
      0,
    ),
    optional(
      number({
        name: "diameter",
        help: "Diameter of the dish; without it the width of the beam is not compared.",
        unit: "m",
        min: 0.3,
        max: 15,
      }),
    ),
    optional(
      number({
        name: "frequency",
        help: "Frequency received at the dish; without it the width of the beam is not compared.",
        unit: "MHz",
        min: 1000,
        max: 50_000,
      }),
    ),
    optional(
      choice({
        name: "reading",
        help: "What the meter shows; dB when left out.",
        choices: ["dB", "percent"],
      }),
      "dB",
    ),
    optional(
      number({
        name: "reading_error",
        help: "Two readings of one level differ from it by at most ± this.",
        unit: "dB",
        min: 0.01,
        max: 5,
      }),
      READING_ERROR_DB,
    ),
  ],
  result: {
    shape: "row",
    help: "Four cells: turn towards + when positive; its doubt (two standard deviations); the width of the beam that the readings show; and a word: peaked, turn, again (turn, then repeat there) or unsure (the drops are too small for this meter: a larger step).",
    columns: ["turn, deg", "uncertainty ±, deg", "beam seen, deg", "verdict"],
  },
  equation:
    "d± = here - reading±, S = d₊ + d₋: turn = (step / 2) (d₋ - d₊) / S; doubt = 2·(step / 2)(s / S)√(2 + 24 (turn / step)²), s = reading_error / √3; beam seen = step·√(24 / S), times cos(elevation) in azimuth.",
  source:
    "derivation from the main lobe 12 (angle / beamwidth)² dB (Maral and Bousquet, from memory); reading_error: our assumption, no source",
  accuracy:
    "Against the patterns of evenly lit and tapered round apertures: within 0.11 beamwidth from up to half a beamwidth away, within 0.02 when repeated. Take steps near 0.4 beamwidth: a wider one may take a side lobe for the main one.",
  tasks: [
    "How far do I turn the dish, and can I trust it?",
    "Is this the main lobe or a side lobe?",
    "Which step is large enough for my meter?",
  ],
  examples: [
    {
      formula: "RIG.EQUALDROPS(61.0493,62,58.1973,1)",
      result: [[0.3, 0.0742, 2.247, "turn"]],
      tolerance: 0.0002,
      source:
        "worked forwards from a beamwidth of 2.247 deg and an offset of 0.3 deg; doubt by hand: (0.3/√3)/4.7534·√(2 + 24·0.09)",
    },
  ],
  seeAlso: ["PEAKOFFSET", "BEAMWIDTH", "COMPASS"],
  faultsWhen: [
    "The readings are in percent.",
    "The drops add up to 0 dB or less, so that there is no peak between.",
    "The drops add up to more than 15.36 dB: the step is over 0.8 of the beamwidth.",
    "The peak would lie more than 2.5 steps, or 0.7 beamwidths, from the present setting.",
    "The dish is smaller than two wavelengths.",
    "The beam seen is narrower than 0.65 or wider than 1.5 of the dish's own: a side lobe, another step, or no decibels.",
  ],
  caution:
    "Keep both feet on firm ground or a secured platform while turning; do not lean out from a ladder. Keep clear of overhead lines.",
  compute: (plus, here, minus, step, axis, elevation, diameter, frequency, reading, readingError) => {
    if (reading === "percent") return faults.notInDecibels();
    const expected =
      diameter === undefined || frequency === undefined ? undefined : beamwidth(diameter, frequency);
    if (isFault(expected)) return expected;
    const found = equalDrops(plus, here, minus, step, { axis, elevation }, readingError, expected);
    return isFault(found) ? found : [found.turn, found.doubt, found.width, found.verdict];
  },
});
