/** The causes that the diagnosis knows, with the chances and sizes that a crew may change. */
import { CAUSES } from "../../engine/diagnosis/causes";
import type { JobInputs, SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { causes } from "./names/causes";

/** What the diagnosis would take of itself, written out so that it can be seen and changed. */
export const usualCauses: NonNullable<JobInputs["blocks"]>[string] = CAUSES.map(
  ({ cause, chance, low, high, spread, tilt }) => ({ cause, chance, low, high, spread, tilt }),
);

export const causesSheet: SheetDefinition = {
  name: "Causes",
  kind: "parts",
  intro:
    "The model behind Diagnosis. Its chances and sizes are our assumptions, no source; your own tally of faults is better.",
  print: { orientation: "landscape" },
  parts: [
    {
      kind: "text",
      heading: "The model",
      lines: [
        "Below each head unit nothing is wrong, or one cause is, or two are.",
        "Each cause at each place has its chance before any reading: the column Chance.",
        "A level read = predicted + an offset of the head unit (deviation 0.8 dB)",
        "    + an offset of the outlet (0.5 dB) + meter error - what the causes take; all normal.",
        "What a cause takes: its loss at the lowest and the highest frequency, more or less by its spread,",
        "    and a further tilt between the two.",
        "Volts: a cause keeps the supply (deviation 0.5 V), lowers it or cuts it.",
        "At 30 dBµV or less a meter shows its own noise, which is no signal.",
        "Weight = chance × how well it explains all readings of that head unit together (Bayes' rule);",
        "    probability = its share of all weights.",
        "Nothing is certain: the probabilities are of this model. A fault outside of it shows up",
        "    under the nearest name, or as something not in this list.",
      ],
    },
    blockPart(causes, {
      heading: "Causes, with their chances before any reading",
      prepared: 9,
      formulas: {},
    }),
  ],
};
