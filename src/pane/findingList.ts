/** Findings as lists, the weightiest first, each with buttons that lead to its cells. */
import { WEIGHTS, type Finding, type FindingPlace, type Weight } from "../review/finding";
import { leadsToInWords } from "../review/leadsToInWords";
import { button, make, paragraph } from "./dom";
import { placeInWords } from "./view";

const HEADS: Readonly<Record<Weight, string>> = {
  wrong: "Wrong",
  doubtful: "Doubtful",
  "worth knowing": "Worth knowing",
};

export function countsOf(findings: readonly Finding[]): string {
  return WEIGHTS.map((weight) => [weight, findings.filter((one) => one.weight === weight).length])
    .filter(([, count]) => count !== 0)
    .map(([weight, count]) => `${count} ${weight}`)
    .join(", ");
}

export function findingList(
  findings: readonly Finding[],
  goTo: (sheet: string, cell: string) => void,
): HTMLElement[] {
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
  { place, cause, message, expected, effect, remedy, leadsTo = [] }: Finding,
  goTo: (sheet: string, cell: string) => void,
): HTMLLIElement {
  const jump = ({ sheet, cell }: FindingPlace): HTMLButtonElement =>
    button(placeInWords({ sheet, at: cell }), () => goTo(sheet, cell), "pane-button pane-jump");
  const places = [place, cause].flatMap((one) => (one ? [jump(one)] : []));
  return make(
    "li",
    {},
    ...(places.length > 0 ? [make("div", { className: "pane-row" }, ...places)] : []),
    paragraph(message),
    ...(expected ? [paragraph(`Should be: ${expected}`, "pane-quiet")] : []),
    ...(effect ? [paragraph(`Effect: ${effect}`, "pane-quiet")] : []),
    ...leadsToInWords(leadsTo).map((line) => paragraph(`Because of it: ${line}`, "pane-quiet")),
    paragraph(remedy, "pane-way"),
  );
}
