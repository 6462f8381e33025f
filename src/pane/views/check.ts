/** Checking this workbook: findings that lead to their cells. */
import type { Finding } from "../../review/finding";
import { review } from "../../review/review";
import { button, make, paragraph } from "../dom";
import { countsOf, findingList } from "../findingList";
import type { View } from "../view";

export const check: View = {
  id: "check",
  label: "Check",
  title: "Check this workbook",
  build: ({ host, run }) => {
    const results = make("div", {});
    const goTo = (sheet: string, cell: string): void =>
      void run(`Going to ${sheet} ${cell}…`, async () => {
        await host.goTo(sheet, cell);
        return `${sheet} ${cell} is selected.`;
      });
    const read = (): void =>
      void run("Checking the workbook…", async () => {
        results.replaceChildren();
        const findings = review(await host.readBook());
        results.replaceChildren(...findingList(findings, goTo));
        return summaryOf(findings);
      });
    return {
      body: [
        button("Check again", read, "pane-button pane-first"),
        results,
        paragraph(
          "Looks by the rules of the command rigsheet review: errors, changed formulas, units, feeds, limits, parts, prices, totals, texts, and the workbook's own checks. It flags, it certifies nothing: read the figures, and prove every outlet by measurement.",
          "pane-quiet",
        ),
      ],
      shown: read,
    };
  },
};

export function summaryOf(findings: readonly Finding[]): string {
  if (findings.length === 0) return "Nothing found: no rule has anything to say.";
  return `Found: ${countsOf(findings)}.`;
}
