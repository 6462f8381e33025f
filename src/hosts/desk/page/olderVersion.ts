/** What is said of a job whose workbook is of an older version. */
import { originOf } from "../../../review/rules/origin";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridModel } from "../../grid/library";

/** @returns undefined for one of today's version, or that is not ours */
export function olderVersion({ getters }: GridModel): string | undefined {
  const { template, templateVersion } = (getters as unknown as { getBookFacts(): BookFacts }).getBookFacts();
  const origin = originOf({ template, templateVersion });
  if (origin?.made !== "earlier") return undefined;
  const { title, definition } = origin.template;
  return `This job is of version ${templateVersion || "unknown"} of “${title}”; today's is ${definition.version}. Go on with it as it is, or see under Pane, Start, Upgrade, what carries over and what it then comes to.`;
}
