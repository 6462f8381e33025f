/** The filling order as steps: what is done, what is missing. */
import { fillingSteps, nextStep } from "../../review/fillingSteps";
import { button, make, paragraph } from "../dom";
import { stepsList } from "../stepsList";
import type { View } from "../view";

export const steps: View = {
  id: "steps",
  label: "Steps",
  title: "What is filled, and what is missing",
  build: ({ host, run }) => {
    const shown = make("div", {});
    const goTo = (sheet: string, cell: string): void =>
      void run("Going there…", async () => {
        await host.goTo(sheet, cell);
        return "";
      });
    const look = (): void =>
      void run("Looking at what is filled…", async () => {
        const found = fillingSteps(await host.readBook());
        shown.replaceChildren();
        if (found.length === 0) return "This workbook has no steps of filling.";
        const next = nextStep(found);
        shown.append(stepsList(found, next?.sheet, goTo));
        const done = found.filter(({ open }) => open.length === 0).length;
        return `${done} of ${found.length} sheets have all that they need.${next ? ` Next: ${next.sheet}.` : ""}`;
      });
    return {
      body: [
        paragraph(
          "The sheets in the order of work. What a check finds wrong with a filled sheet stands beside it.",
          "pane-quiet",
        ),
        shown,
        button("Look again", look),
      ],
      shown: look,
    };
  },
};
