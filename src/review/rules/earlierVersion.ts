import type { Finding } from "../finding";
import { inWords } from "../earlierDifferences";
import type { Rule } from "../rule";
import { originOf } from "./origin";
import { versionFormulas } from "../../workbooks/versionFormulas";
import { changesSince } from "../../workbooks/versions";

/** How many results a sentence lists. */
const MOST_LISTED = 4;

export const earlierVersion: Rule = {
  id: "earlier version",
  reason:
    "A workbook of an earlier version has other formulas and fewer checks; its inputs are judged by today's template, and what only follows from its age is not held against it.",
  example: "A workbook of last year, made from version 1 of the template.",
  find: ({ read, earlier }) => {
    const origin = originOf(read);
    if (!earlier?.fresh || !origin) return [];
    const { id, title, definition } = origin.template;
    const since = changesSince(id, read.templateVersion);
    const { others } = earlier;
    const finding: Finding = {
      weight: others.length > 0 ? "doubtful" : "worth knowing",
      message: `This workbook was made from version ${read.templateVersion || "unknown"} of “${title}”; today's is ${definition.version}. Its inputs were judged by today's template; formulas, checks and labels that are only otherwise since are not listed.${versionFormulas(id, read.templateVersion) ? "" : " What formulas that version had is not kept, so only what moves the price is told of a formula that was changed."}${since ? ` Since then: ${since}` : ""}`,
      effect:
        others.length > 0
          ? `By today's template ${others.length === 1 ? "one cell comes" : `${others.length} cells or columns come`} to something else: ${listed(others)}.`
          : undefined,
      remedy:
        "Go on with it, or make a workbook of today's version of it: Upgrade in the pane, or rigsheet upgrade THIS.xlsx --out NEW.xlsx.",
    };
    return [finding];
  },
};

function listed(others: NonNullable<Parameters<Rule["find"]>[0]["earlier"]>["others"]): string {
  const words = others
    .slice(0, MOST_LISTED)
    .map(
      ({ place: { sheet, cell }, label, own, today }) =>
        `${label} (${sheet} ${cell}) ${inWords(today)} rather than ${inWords(own)}`,
    );
  const more = others.length - words.length;
  return `${words.join("; ")}${more > 0 ? `; and ${more} more` : ""}`;
}
