import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { taken } from "./names/taken";

export const takenSheet: SheetDefinition = {
  name: "Taken",
  kind: "workings",
  intro: "What the job took from the firm's standards. Rigsheet reads it.",
  print: { orientation: "landscape", through: "line" },
  parts: [blockPart(taken, { heading: "Taken from the standards", prepared: 2, record: true, formulas: {} })],
};
