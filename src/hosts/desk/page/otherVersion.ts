/** What is said of a job whose workbook is not of today's version, or is none of ours. */
import { originOf } from "../../../review/rules/origin";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridModel } from "../../grid/library";

export interface OtherVersion {
  readonly sentence: string;
  /** What a newer Rigsheet made may hold what this one would lose. */
  readonly isNewer: boolean;
}

/** @returns undefined for one of today's version */
export function otherVersion({ getters }: GridModel): OtherVersion | undefined {
  const { template, templateVersion } = (getters as unknown as { getBookFacts(): BookFacts }).getBookFacts();
  if (template === "")
    return {
      sentence:
        "This workbook was not made from one of Rigsheet's templates: it has no steps, and nothing of it is checked or priced. It can be changed, saved and printed as it is.",
      isNewer: false,
    };
  const origin = originOf({ template, templateVersion });
  if (!origin || origin.made === "now") return undefined;
  const { title, definition } = origin.template;
  const of = `This job is of version ${templateVersion || "unknown"} of “${title}”; `;
  return origin.made === "later"
    ? {
        sentence: `${of}this Rigsheet knows it up to ${definition.version}. It is shown to be read only, and its file stays as it is. Open it with a Rigsheet as new as the one that made it.`,
        isNewer: true,
      }
    : {
        sentence: `${of}today's is ${definition.version}. Go on with it as it is, or see under Pane, Start, Upgrade, what carries over and what it then comes to.`,
        isNewer: false,
      };
}
