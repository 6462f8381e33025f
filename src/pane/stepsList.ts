/** The filling steps as a list: what is done, what is missing, and the way there. */
import { pageOfSheet } from "../help/facts";
import { stateInWords, type FillingStep, type OpenPoint } from "../review/fillingSteps";
import { templates } from "../workbooks/templates";
import { button, make, paragraph } from "./dom";

export type GoTo = (sheet: string, cell: string) => void;

/** Of a step that is opened, so many of its points are told. */
const MOST_TOLD = 8;

/**
 * @param openAt the sheet whose points are told at once
 * @param goTo leads to a cell
 */
export function stepsList(
  steps: readonly FillingStep[],
  openAt: string | undefined,
  goTo: GoTo,
): HTMLOListElement {
  return make(
    "ol",
    { className: "steps-list" },
    ...steps.map((step) => {
      const item = make("li", {}, stepParts(step, step.sheet === openAt, goTo));
      item.className = `steps-${step.state.replace(/ /g, "-")}`;
      return item;
    }),
  );
}

function stepParts(step: FillingStep, isOpen: boolean, goTo: GoTo): HTMLElement {
  const { template, sheet, intro, open, look } = step;
  const [first] = [...open, ...look];
  return make(
    "details",
    { open: isOpen },
    make("summary", {}, make("strong", {}, sheet), ` ${stateInWords(step)}`),
    paragraph(intro, "pane-quiet"),
    ...pointsOf(open, goTo),
    ...(look.length > 0 ? [paragraph("To look at:", "pane-quiet"), ...pointsOf(look, goTo)] : []),
    make(
      "p",
      { className: "steps-ways" },
      ...(first ? [] : [button(`Go to ${sheet}`, () => goTo(sheet, "A1"), "pane-jump"), " "]),
      ...(template === templates[0]!.id
        ? [
            make(
              "a",
              { href: `help/${pageOfSheet(sheet)}`, target: "_blank", rel: "noopener" },
              `Help on ${sheet}`,
            ),
          ]
        : []),
    ),
  );
}

function pointsOf(points: readonly OpenPoint[], goTo: GoTo): HTMLElement[] {
  if (points.length === 0) return [];
  const rest = points.length - MOST_TOLD;
  return [
    make(
      "ul",
      {},
      ...points.slice(0, MOST_TOLD).map(({ what, place: { sheet, cell } }) =>
        make(
          "li",
          {},
          `${what} `,
          button(`${sheet} ${cell}`, () => goTo(sheet, cell), "pane-jump"),
        ),
      ),
      ...(rest > 0 ? [make("li", {}, `and ${rest} more`)] : []),
    ),
  ];
}
