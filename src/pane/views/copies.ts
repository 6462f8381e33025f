/** The two kinds of copy for people without the functions, and the cards for the crew. */
import { COPY_NAMES, inSentence } from "../../hosts/file/copy/copyNames";
import type { CopyKind } from "../../hosts/file/copy/copyOf";
import { LogoChoice } from "../logoChoice";
import { button, make, paragraph } from "../dom";
import type { View } from "../view";

const PRINTS = [
  ["usual", "The customer's page; all sheets where there is none"],
  ["all", "All sheets"],
  ["cards", "Cards for the crew"],
] as const;

export const copies: View = {
  id: "copies",
  label: "Copies",
  title: "Make a copy",
  build: ({ host, run, say }) => {
    const maker = (kind: CopyKind) => (): void => {
      const what = kind === "cards" ? "cards" : inSentence(COPY_NAMES[kind]);
      void run(`Making the ${what}…`, async () => {
        await host.handOverCopy(kind);
        return `The ${what} ${kind === "cards" ? "are" : "is"} made. This workbook is as it was.`;
      });
    };
    const logo = new LogoChoice(() => undefined, {
      id: "pane-logo",
      input: "pane-input",
      button: "pane-button",
    });
    const anyway = make("input", { id: "pane-anyway", type: "checkbox" });
    const what = make(
      "select",
      { id: "pane-print", className: "pane-input" },
      ...PRINTS.map(([, label]) => make("option", {}, label)),
    );
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
        make("h2", {}, "Proposal as PDF"),
        paragraph(
          "Of a multi-room estimate: the document for the customer, with no cost and no margin in it. It is a draft, with no place to sign, while something fails or is missing.",
        ),
        logo.root,
        make("label", { htmlFor: anyway.id }, anyway, " To be signed although checks fail"),
        button("Proposal as PDF", () => {
          void run("Making the proposal…", async () => {
            await logo.ready;
            const chosen = { ...(logo.logo && { logo: logo.logo }), anyway: anyway.checked };
            return host.handOverPdf({ kind: "proposal", ...chosen }, say);
          });
        }),
        make("h2", {}, "Print as PDF"),
        make("label", { htmlFor: what.id }, "What"),
        what,
        button("Print as PDF", () => {
          const wanted = { kind: "print", what: PRINTS[what.selectedIndex]![0] } as const;
          void run("Making the pages…", () => host.handOverPdf(wanted, say));
        }),
        paragraph("Check the workbook first: a copy keeps its errors too.", "pane-quiet"),
      ],
    };
  },
};
