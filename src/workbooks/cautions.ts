/** The cautions that every template shows on its About sheet. */
import type { Text } from "./definition";

export const cautions: Text = {
  kind: "text",
  heading: "Cautions",
  lines: [
    "Falls: work on roofs and ladders needs training, the right gear and a second person. Overhead lines: keep well clear; a mast or ladder that touches one kills.",
    "Lightning and bonding: what must be bonded, and with what, is decided by the local code and by licensed practice. Mains work is for licensed people.",
    "This workbook predicts and flags; it is not a safety certificate. Prove every outlet by measurement.",
  ],
};

export const keyToTheMarks: Text = {
  kind: "text",
  heading: "Key to the marks",
  lines: [
    "input: a box with a pale fill. Yours to fill.",
    "result: no box and no fill. Calculated; a fault carries a sentence that says what to do.",
    "verdict: a word. ok passes; low, high, look, error and missing are bold on a tint; note is advisory.",
  ],
};

export const madeAfter: Text = {
  kind: "text",
  heading: "Made after",
  lines: [
    "ICAEW, Twenty principles for good spreadsheet practice; ICAEW, Financial Modelling Code (2018); The FAST Standard; WCAG 2.2.",
  ],
};
