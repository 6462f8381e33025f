/** The causes that the diagnosis knows, with the chances and sizes that a crew may change. */
import { CAUSES } from "../../engine/diagnosis/causes";
import type { Column, Filling, SheetDefinition } from "../definition";

/** What the diagnosis would take of itself, written out so that it can be seen and changed. */
export const usualCauses: NonNullable<Filling["blocks"]>[string] = CAUSES.map(
  ({ cause, chance, low, high, spread, tilt }) => ({ cause, chance, low, high, spread, tilt }),
);

const figure = (
  key: string,
  head: string,
  unit: string,
  what: string,
  rule: { min: number; max: number },
  format: Column["format"] = "two",
): Column => ({
  key,
  head,
  unit,
  width: 15,
  format,
  input: { what: `${what}; blank takes the built-in figure`, rule: { kind: "number", ...rule } },
});

export const causes: SheetDefinition = {
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
        "What a cause takes: its loss at the low and the high end, more or less by its spread,",
        "    and a further tilt between the two ends.",
        "Volts: a cause keeps the supply (deviation 0.5 V), lowers it or cuts it.",
        "At 30 dBµV or less a meter shows its own noise, which is no signal.",
        "Weight = chance × how well it explains all readings of that head unit together (Bayes' rule);",
        "    probability = its share of all weights.",
        "Nothing is certain: the probabilities are of this model. A fault outside of it shows up",
        "    under the nearest name, or as something not in this list.",
      ],
    },
    {
      kind: "block",
      name: "causes",
      heading: "Causes, with their chances before any reading",
      prepared: 9,
      columns: [
        {
          key: "cause",
          head: "Cause",
          width: 34,
          input: {
            what: "A cause that the diagnosis knows; a line that is cleared keeps the built-in figures",
            rule: { kind: "choice", choices: CAUSES.map(({ cause }) => cause) },
          },
        },
        figure(
          "chance",
          "Chance",
          "for each place",
          "Chance that it is there, for each place where it can be: head unit, branch or outlet",
          { min: 0, max: 0.5 },
          "three",
        ),
        figure("low", "Loss, low end", "dB", "What it takes at the low end; a gain is negative", {
          min: -60,
          max: 60,
        }),
        figure("high", "Loss, high end", "dB", "What it takes at the high end; a gain is negative", {
          min: -60,
          max: 60,
        }),
        figure("spread", "Spread", "share of the loss", "Standard deviation of the loss as a share of it", {
          min: 0,
          max: 10,
        }),
        figure("tilt", "Further tilt", "dB", "Standard deviation of a further difference between the ends", {
          min: 0,
          max: 60,
        }),
      ],
      groups: [{ name: "causes_table", from: "cause", to: "tilt" }],
    },
  ],
};
