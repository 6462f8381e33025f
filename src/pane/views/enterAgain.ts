/** Entering our formulas again where they stand at an unknown name. */
import { button, paragraph } from "../dom";
import type { View } from "../view";

export const enterAgain: View = {
  id: "again",
  label: "Repair formulas",
  title: "Repair formulas",
  build: ({ host, run }) => ({
    body: [
      paragraph(
        "A workbook that was opened before the functions were there can go on showing #NAME?. This enters those formulas again as they are; nothing else is touched.",
      ),
      button(
        "Repair formulas",
        () =>
          void run("Repairing the formulas…", async () => {
            const count = await host.enterOursAgain();
            if (count === 0) return "No Rigsheet formula shows #NAME?. There was nothing to do.";
            return `${count === 1 ? "1 formula was" : `${count} formulas were`} repaired. One that still shows #NAME? calls a function that is not known: look at its spelling under Functions.`;
          }),
        "pane-button pane-first",
      ),
    ],
  }),
};
