/** The two kinds of copy for people without the functions, and the cards for the crew. */
import type { CopyKind } from "../../hosts/file/copy/copyOf";
import { button, make, paragraph } from "../dom";
import type { View } from "../view";

export const copies: View = {
  id: "copies",
  label: "Copies",
  title: "Make a copy",
  build: ({ host, run }) => {
    const maker = (kind: CopyKind) => (): void => {
      const what = kind === "cards" ? "cards" : `${kind} copy`;
      void run(`Making the ${what}…`, async () => {
        await host.handOverCopy(kind);
        return `The ${what} ${kind === "cards" ? "are" : "is"} made. This workbook is as it was.`;
      });
    };
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
        make("h2", {}, "Cards for the crew"),
        paragraph(
          "A workbook to print and cut apart: a card for each head unit and each outlet, with what it should show and room for what it shows.",
        ),
        button("Make the cards", maker("cards")),
        paragraph("Check the workbook first: a copy keeps its errors too.", "pane-quiet"),
      ],
    };
  },
};
