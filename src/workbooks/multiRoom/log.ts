import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { log } from "./names/log";

export const logSheet: SheetDefinition = {
  name: "Log",
  kind: "input",
  intro: "What was changed, by whom and why, and what it did to the total.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(log, {
      heading: "Changes",
      prepared: 20,
      formulas: {},
    }),
  ],
};
