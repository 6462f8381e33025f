/** The crew's record of peaking by equal drops, for every template that has one. */
import { f, type Named } from "../formula/build";
import { anyText, number, oneOf } from "./asks";
import type { Block, Text } from "./definition";
import { block, entry, fields, results, told } from "./names";
import { blockPart } from "./parts";

const reading = (head: string, what: string) =>
  entry(head, { unit: "dBµV or dB", width: 14, format: "one" }, number(-100, 200, what, { example: "62.4" }));

export const peaking = fields("peaks", {
  elevation: told("Beam elevation while peaking", { unit: "deg", format: "degrees" }),
});

export const peaks = block("peaks", {
  what: entry("Dish and slot", { width: 34 }, anyText("Which dish and which slot", { example: "H1, 97W" })),
  axis: entry("Axis", { width: 14 }, oneOf(["azimuth", "elevation", "tilt"], "What was turned")),
  kind: entry(
    "The meter shows",
    { width: 14 },
    oneOf(["dB", "percent"], "dB for dBµV or carrier-to-noise; percent for quality"),
  ),
  step: entry(
    "Step",
    { unit: "deg", width: 14, format: "two" },
    number(0.01, 30, "How far it was turned each way; near 0.4 of the beamwidth is best", { example: "1" }),
  ),
  here: reading("Reading where it was", "The reading before turning"),
  plus: reading("Reading a step to plus", "The reading after the step to plus"),
  minus: reading("Reading a step to minus", "The reading after the step to minus"),
  found: results(
    "Result",
    { width: 14, format: "two" },
    {
      turn: { head: "turn from where it was, to plus", unit: "deg" },
      doubt: { head: "uncertainty ± (about 95 %)", unit: "deg" },
      beam: { head: "beam width seen", unit: "deg" },
      verdict: { head: "verdict" },
    },
  ),
});

/**
 * @param dish the cell with the dish's diameter in metres
 * @param frequency the cell with the frequency received at the dish
 */
export const peaksBlock = (prepared: number, dish: Named, frequency: Named): Block =>
  blockPart(peaks, {
    heading:
      "Peaking by equal drops: read, turn a step to plus and read, turn the same step to minus and read",
    prepared,
    byHand: true,
    formulas: {
      found: f`RIG.EQUALDROPS(${peaks.plus},${peaks.here},${peaks.minus},${peaks.step},${peaks.axis},${peaking.elevation},${dish},${frequency},${peaks.kind})`,
    },
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
