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
    const here = make("input", { type: "checkbox", id: "pane-start-here" });
    const begin = (kind: Start): void =>
      void run("Starting the workbook…", async () => {
        const template = templates[choice.selectedIndex]!;
        const started = startedBook(template, kind, await preferences());
        const note =
          host.startHere && here.checked ? await host.startHere(started) : await host.startWorkbook(started);
        const ready =
          kind === "empty"
            ? "The empty workbook is ready. Begin on the sheet Site."
            : "The demonstration is ready. Its job and its prices are invented.";
        return [ready, note].filter((sentence) => sentence !== "").join(" ");
      });
    return {
      body: [
        make("label", { htmlFor: choice.id }, "Template"),
        choice,
        ...(host.startHere
          ? [
              make(
                "label",
                { htmlFor: here.id, className: "pane-choice" },
                here,
                " As sheets of this workbook, not as a new one",
              ),
            ]
          : []),
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
