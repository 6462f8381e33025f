/** Adding rows to a block. */
import { make, paragraph } from "../dom";
import type { View } from "../view";

export const MOST_ROWS = 10_000;

export const addRows: View = {
  id: "rows",
  label: "Add rows",
  title: "Add rows",
  build: ({ host, run, say }) => {
    const count = make("input", {
      id: "pane-rows",
      className: "pane-input pane-short",
      type: "number",
      min: "1",
      max: String(MOST_ROWS),
      step: "1",
      value: "10",
      required: true,
    });
    const add = (): void => {
      if (!count.validity.valid || !Number.isInteger(count.valueAsNumber)) {
        count.setAttribute("aria-invalid", "true");
        count.focus();
        say(`Not done: give a whole number of rows from 1 to ${MOST_ROWS}.`);
        return;
      }
      count.removeAttribute("aria-invalid");
      void run("Adding rows…", () => host.addRows(count.valueAsNumber));
    };
    const form = make(
      "form",
      { noValidate: true },
      make("label", { htmlFor: count.id }, `How many, 1 to ${MOST_ROWS}`),
      count,
      make("button", { type: "submit", className: "pane-button pane-first" }, "Add rows"),
    );
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      add();
    });
    return {
      body: [
        paragraph(
          "Select a cell of the block that should grow: outlets, devices, parts or the like. The new rows come at its end, and every list that stands for the same rows grows with it.",
        ),
        form,
        paragraph(
          "Formulas, names and rules stretch by themselves; nothing needs copying down.",
          "pane-quiet",
        ),
      ],
      focus: count,
    };
  },
};
