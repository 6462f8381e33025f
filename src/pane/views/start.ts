/** Starting a workbook. */
import { templates } from "../../workbooks/templates";
import { button, make, paragraph } from "../dom";
import { startedBook, type Start } from "../startedBook";
import type { View } from "../view";

export const start: View = {
  id: "start",
  label: "Start",
  title: "Start a workbook",
  build: ({ host, run, preferences }) => {
    const choice = make(
      "select",
      { id: "pane-template", className: "pane-input" },
      ...templates.map(({ id, title }) => make("option", { value: id }, title)),
    );
    const begin = (kind: Start): void =>
      void run("Starting the workbook…", async () => {
        const template = templates[choice.selectedIndex]!;
        await host.startWorkbook(startedBook(template, kind, await preferences()));
        return kind === "empty"
          ? "The empty workbook is ready. Begin on the sheet Site."
          : "The demonstration is ready. Its job and its prices are invented.";
      });
    return {
      body: [
        make("label", { htmlFor: choice.id }, "Template"),
        choice,
        make(
          "div",
          { className: "pane-row" },
          button("Empty", () => begin("empty"), "pane-button pane-first"),
          button("Demonstration", () => begin("demonstration")),
        ),
        make(
          "dl",
          { className: "pane-facts" },
          make("dt", {}, "Empty"),
          make("dd", {}, "Your job: unit and currency from Settings, usual figures, no prices."),
          make("dt", {}, "Demonstration"),
          make("dd", {}, "An invented job with its prices, and faults in it to find."),
        ),
        paragraph("Fill the boxed cells, sheet by sheet. Then use Check.", "pane-quiet"),
      ],
    };
  },
};
