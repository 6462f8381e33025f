/** Checking this workbook: one list of what is found and of the checks that do not pass. */
import { askForReview } from "../../jobs/askForReview";
import { placesNow } from "../../review/again/noted";
import { reviewByRules } from "../../review/reviewByRules";
import { button, make, paragraph } from "../dom";
import { countsOf, FindingList, linesBefore, type Listed } from "../findingList";
import type { KeptReview } from "../../review/again/keptReview";
import type { Book } from "../../workbooks/book";
import type { FullReview } from "../../review/reviewInFull";
import type { PaneHost } from "../host";
import type { View } from "../view";

export const check: View = {
  id: "check",
  label: "Findings",
  title: "Check this workbook",
  build: ({ host, run, say }) => {
    const list = new FindingList();
    const results = make("div", {});
    const goTo = (sheet: string, cell: string): void =>
      void run(`Going to ${sheet} ${cell}…`, async () => {
        await host.goTo(sheet, cell);
        return `${sheet} ${cell} is selected.`;
      });
    const read = (): void =>
      void run("Checking the workbook…", async () => {
        results.replaceChildren();
        const book = await host.readBook();
        const full = (host.review ?? reviewByRules)(book);
        const kept = await keptOf(host, book, full);
        list.show([
          {
            lines: [
              ...linesBefore(full),
              ...(typeof kept === "string" && kept !== "" ? [paragraph(kept, "pane-quiet")] : []),
            ],
            findings: full.findings,
            goTo,
            placeNow: placesNow(book),
            ...(typeof kept === "object" && {
              kept,
              settle: async (key, reason) => {
                const settled = await host.reviews!.settle({
                  id: kept.id,
                  key,
                  ...(reason !== undefined && { reason }),
                });
                say(
                  settled
                    ? "Settled. It stands under Settled, where it can be taken back."
                    : "Taken back: it is open again.",
                );
                return settled;
              },
            }),
          } satisfies Listed,
        ]);
        results.replaceChildren(list.root);
        return summaryOf(full);
      });
    return {
      body: [
        button("Check again", read, "pane-button pane-first"),
        results,
        paragraph(
          "The list is of the moment when you checked: check again after a change. It goes by the rules of the command rigsheet review: errors, changed formulas, units, feeds, limits, parts, prices, totals, texts, and the workbook's own checks. It flags, it certifies nothing: read the figures, and prove every outlet by measurement.",
          "pane-quiet",
        ),
      ],
      shown: read,
    };
  },
};

/** @returns a sentence where nothing can be kept */
async function keptOf(host: PaneHost, book: Book, full: FullReview): Promise<KeptReview | string> {
  const { reviews } = host;
  if (!reviews) return "";
  const asked = askForReview(book, full, "", reviews.marks());
  if (asked.job.number === "" && asked.job.marks.length === 0)
    return "Give the quote a number: by it a finding that you settle is known again.";
  return await reviews
    .keep(asked)
    .catch(
      (error: unknown) =>
        `Nothing can be settled now: ${error instanceof Error ? error.message : String(error)}`,
    );
}

export function summaryOf({ findings }: Pick<FullReview, "findings">): string {
  if (findings.length === 0) return "Nothing found: no rule has anything to say.";
  return `Found: ${countsOf(findings)}.`;
}
