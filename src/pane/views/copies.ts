/** The two kinds of copy for people without the functions. */
import { button, make, paragraph } from "../dom";
import type { View } from "../view";

export const copies: View = {
  id: "copies",
  label: "Copies",
  title: "Make a copy",
  build: ({ host, run }) => {
    const maker = (kind: "office" | "sealed") => (): void =>
      void run(`Making the ${kind} copy…`, async () => {
        await host.handOverCopy(kind);
        return `The ${kind} copy is made. This workbook is as it was.`;
      });
    return {
      body: [
        make("h2", {}, "Office copy"),
        paragraph(
          "For the office: our cells are frozen to their values and say so; sums, prices and totals stay alive. Opens and recalculates anywhere.",
        ),
        button("Make an office copy", maker("office")),
        make("h2", {}, "Sealed copy"),
        paragraph("For the customer or the file: values only, nothing recalculates."),
        button("Make a sealed copy", maker("sealed")),
        paragraph("Check the workbook first: a copy keeps its errors too.", "pane-quiet"),
      ],
    };
  },
};
