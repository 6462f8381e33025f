/** The crew's record of peaking by equal drops, for every template that has one. */
import type { Block, Column, Text } from "./definition";

const reading = (key: string, head: string, what: string): Column => ({
  key,
  head,
  unit: "dBµV or dB",
  width: 14,
  format: "one",
  input: { what, example: "62.4", rule: { kind: "number", min: -100, max: 200 } },
});

/**
 * @param dish name of the cell with the dish's diameter in metres
 * @param frequency name of the cell with the frequency received at the dish
 */
export const peaksBlock = (prepared: number, dish: string, frequency: string): Block => ({
  kind: "block",
  name: "peaks",
  heading: "Peaking by equal drops: read, turn a step to plus and read, turn the same step to minus and read",
  prepared,
  byHand: true,
  columns: [
    {
      key: "what",
      head: "Dish and slot",
      width: 34,
      input: { what: "Which dish and which slot", example: "H1, 97W", rule: { kind: "text" } },
    },
    {
      key: "axis",
      head: "Axis",
      width: 14,
      input: {
        what: "What was turned",
        rule: { kind: "choice", choices: ["azimuth", "elevation", "tilt"] },
      },
    },
    {
      key: "kind",
      head: "The meter shows",
      width: 14,
      input: {
        what: "dB for dBµV or carrier-to-noise; percent for quality",
        rule: { kind: "choice", choices: ["dB", "percent"] },
      },
    },
    {
      key: "step",
      head: "Step",
      unit: "deg",
      width: 14,
      format: "two",
      input: {
        what: "How far it was turned each way; near 0.4 of the beamwidth is best",
        example: "1",
        rule: { kind: "number", min: 0.01, max: 30 },
      },
    },
    reading("here", "Reading where it was", "The reading before turning"),
    reading("plus", "Reading a step to plus", "The reading after the step to plus"),
    reading("minus", "Reading a step to minus", "The reading after the step to minus"),
    {
      key: "found",
      head: "Result",
      width: 14,
      format: "two",
      formula: `RIG.EQUALDROPS(peaks_plus,peaks_here,peaks_minus,peaks_step,peaks_axis,peaks_elevation,${dish},${frequency},peaks_kind)`,
      across: [
        { key: "turn", head: "turn from where it was, to plus", unit: "deg" },
        { key: "doubt", head: "give or take, two deviations", unit: "deg" },
        { key: "beam", head: "width of the beam seen", unit: "deg" },
        { key: "verdict", head: "verdict" },
      ],
    },
  ],
});

export const peakingHelp: Text = {
  kind: "text",
  heading: "When the readings cannot be right",
  lines: [
    "An error in the result says why; choose the cell to read it: no peak between the two sides (a side lobe or a dip), a step too wide, a quality percentage instead of dB, a beam too narrow or too wide for this dish.",
    "again: the peak is more than half a step away; turn, then repeat from there. unsure: the drops are too small for the meter, take a larger step. peaked: leave it.",
    "Turn by hand only as far as your footing allows. Two people, secured; tools and dish secured; stop in wind or lightning; keep clear of overhead lines.",
  ],
};
