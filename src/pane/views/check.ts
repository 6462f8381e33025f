/** Checking this workbook: findings that lead to their cells. */
import { WEIGHTS, type Finding, type FindingPlace, type Weight } from "../../review/finding";
import { quickFindings } from "../../review/quickFindings";
import { button, make, paragraph } from "../dom";
import { placeInWords, type View } from "../view";

const HEADS: Readonly<Record<Weight, string>> = {
  wrong: "Wrong",
  doubtful: "Doubtful",
  "worth knowing": "Worth knowing",
};

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
        const findings = quickFindings(await host.readBook());
        results.replaceChildren(...groups(findings, goTo));
        return summaryOf(findings);
      });
    return {
      body: [
        button("Check again", read, "pane-button pane-first"),
        results,
        paragraph(
          "Looks at the workbook's own checks, at errors and at changed formulas. It flags, it certifies nothing: read the figures, and prove every outlet by measurement.",
          "pane-quiet",
        ),
      ],
      shown: read,
    };
  },
};

export function summaryOf(findings: readonly Finding[]): string {
  if (findings.length === 0) return "Nothing found: the checks pass, no errors, formulas as in the template.";
  const counts = WEIGHTS.map((weight) => [weight, findings.filter((one) => one.weight === weight).length]);
  return `Found: ${counts
    .filter(([, count]) => count !== 0)
    .map(([weight, count]) => `${count} ${weight}`)
    .join(", ")}.`;
}

function groups(findings: readonly Finding[], goTo: (sheet: string, cell: string) => void): HTMLElement[] {
  if (findings.length === 0) return [paragraph("Nothing found.")];
  return WEIGHTS.flatMap((weight) => {
    const own = findings.filter((one) => one.weight === weight);
    if (own.length === 0) return [];
    return [
      make("h2", {}, `${HEADS[weight]} (${own.length})`),
      make(
        "ol",
        { className: `pane-findings pane-${weight.replace(" ", "-")}` },
        ...own.map((one) => entry(one, goTo)),
      ),
    ];
  });
}

function entry(
  { place, cause, says, should, wayOut }: Finding,
  goTo: (sheet: string, cell: string) => void,
): HTMLLIElement {
  const jump = ({ sheet, cell }: FindingPlace): HTMLButtonElement =>
    button(placeInWords({ sheet, at: cell }), () => goTo(sheet, cell), "pane-button pane-jump");
  const places = [place, cause].flatMap((one) => (one ? [jump(one)] : []));
  return make(
    "li",
    {},
    ...(places.length > 0 ? [make("div", { className: "pane-row" }, ...places)] : []),
    paragraph(says),
    ...(should ? [paragraph(`Should be: ${should}`, "pane-quiet")] : []),
    paragraph(wayOut, "pane-way"),
  );
}
