/** The two kinds of copy for people without the functions, and the cards for the crew. */
import { COPY_NAMES, inSentence } from "../../hosts/file/copy/copyNames";
import type { CopyKind } from "../../hosts/file/copy/copyOf";
import { button, make, paragraph } from "../dom";
import type { View } from "../view";

export const copies: View = {
  id: "copies",
  label: "Copies",
  title: "Make a copy",
  build: ({ host, run }) => {
    const maker = (kind: CopyKind) => (): void => {
      const what = kind === "cards" ? "cards" : inSentence(COPY_NAMES[kind]);
      void run(`Making the ${what}…`, async () => {
        await host.handOverCopy(kind);
        return `The ${what} ${kind === "cards" ? "are" : "is"} made. This workbook is as it was.`;
      });
    };
    return {
      body: [
        make("h2", {}, COPY_NAMES.office),
        paragraph(
          "For people without Rigsheet: our cells are frozen to their values and say so; sums, prices and totals stay alive. Opens and recalculates anywhere.",
        ),
        button(`Make a ${inSentence(COPY_NAMES.office)}`, maker("office")),
        make("h2", {}, COPY_NAMES.sealed),
        paragraph("For the customer or the file: nothing recalculates."),
        button(`Make a ${inSentence(COPY_NAMES.sealed)}`, maker("sealed")),
        make("h2", {}, COPY_NAMES.cards),
        paragraph(
          "A workbook to print and cut apart: a card for each head unit and each outlet, with what it should show and room for what it shows.",
        ),
        button("Make the cards", maker("cards")),
        paragraph("Check the workbook first: a copy keeps its errors too.", "pane-quiet"),
      ],
    };
  },
};
