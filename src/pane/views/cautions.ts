/** What can hurt, and what the figures do not say. */
import { allFunctions } from "../../functions/all";
import { fullName } from "../../help/facts";
import { about } from "../../workbooks/multiRoom/about";
import { make, paragraph } from "../dom";
import type { LooseView } from "../view";

/** The text parts of the workbook's own About sheet that belong here. */
const HEADINGS = ["Cautions", "What the model leaves out"];

export const cautions: LooseView = {
  id: "cautions",
  label: "Cautions",
  title: "Cautions",
  build: () => ({
    body: [
      ...HEADINGS.flatMap((wanted, index) =>
        about.parts.flatMap((part) =>
          part.kind === "text" && part.heading === wanted
            ? [
                ...(index === 0 ? [] : [make("h2", {}, wanted)]),
                make("ul", {}, ...part.lines.map((line) => make("li", {}, line))),
              ]
            : [],
        ),
      ),
      make("h2", {}, "Of single functions"),
      ...byCaution().map(([caution, names]) =>
        make("div", {}, paragraph(caution, "pane-caution"), paragraph(names.join(", "), "pane-quiet")),
      ),
      make(
        "p",
        {},
        make(
          "a",
          { href: "help/model-limits.html", target: "_blank", rel: "noopener" },
          "What the model leaves out, in a window of its own",
        ),
      ),
    ],
  }),
};

function byCaution(): [string, string[]][] {
  const found = new Map<string, string[]>();
  for (const { name, caution } of allFunctions) {
    if (caution) found.set(caution, [...(found.get(caution) ?? []), fullName(name)]);
  }
  return [...found];
}
