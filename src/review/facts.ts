/** What a report says of the file that it is about, so that its reader knows which one was meant and what was looked at. */
import { checkLines } from "../workbooks/checkLines";
import type { Book } from "../workbooks/book";
import { jobLabelOf, labelInWords } from "../workbooks/jobLabel";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { RIGSHEET_VERSION } from "../version";
import type { Finding } from "./finding";
import { hasJob } from "./namedCells";
import type { Reviewed } from "./rule";
import { rules } from "./ruleList";

export interface Facts {
  /** Quote number, revision and job, as far as they are filled in. */
  readonly job?: string;
  readonly currency?: string;
  readonly template?: string;
  /** Of the program that reviewed it. */
  readonly version: string;
  /** The total as the file shows it, and as its inputs come to. */
  readonly printed?: number;
  readonly computed?: number;
  /** Rules that found nothing. */
  readonly passed: readonly string[];
  /** Rules that lacked what they hold a workbook to, with what that is. */
  readonly notLooked?: readonly { readonly rule: string; readonly what: string }[];
  /** In a large job: of so many findings, the least in money, levels and volts were not computed again. */
  readonly leftOut?: number;
  /** The workbook's own checks, and how many of them are ok. */
  readonly checks?: { readonly all: number; readonly ok: number };
}

/** @param stored the workbook as the file has it */
export function factsOf(
  stored: Book,
  reviewed: Pick<Reviewed, "read" | "own" | "options">,
  findings: readonly Finding[],
): Facts {
  const computed = reviewed.own;
  const job = labelInWords(jobLabelOf((name) => namedValue(stored, name)));
  const currency = namedValue(stored, estimate.site.currency.name);
  const [printed, anew] = [stored, computed].map((book) => namedValue(book, estimate.quote.total.name));
  const told = new Set(
    findings.flatMap(({ rule, leadsTo = [] }) => [rule, ...leadsTo.map((one) => one.rule)]),
  );
  const notLooked = rules.flatMap(({ id, needs }) =>
    // Other workbooks hold nothing of what these look at.
    needs && hasJob(reviewed.read) && !needs.areThere(reviewed) ? [{ rule: id, what: needs.what }] : [],
  );
  const lines = checkLines(computed).filter(({ result }) => result !== "");
  return {
    ...(job !== "" && { job }),
    ...(typeof currency === "string" && { currency }),
    ...(stored.template !== "" && {
      template: `${stored.template}, version ${stored.templateVersion || "unknown"}`,
    }),
    version: RIGSHEET_VERSION,
    ...(typeof printed === "number" && { printed }),
    ...(typeof anew === "number" && { computed: anew }),
    passed: rules.flatMap(({ id, needs }) =>
      told.has(id) || (needs && !needs.areThere(reviewed)) ? [] : [id],
    ),
    ...(notLooked.length > 0 && { notLooked }),
    ...(lines.length > 0 && {
      checks: { all: lines.length, ok: lines.filter(({ result }) => result === "ok").length },
    }),
  };
}

/** @returns a sentence where something was not looked for */
export const notLookedInWords = ({ notLooked = [] }: Facts): string | undefined =>
  notLooked.length === 0
    ? undefined
    : `Not looked for: ${notLooked.map(({ rule, what }) => `${rule} (without ${what})`).join(", ")}.`;

/** @returns a sentence where something was left out */
export const leftOutInWords = ({ leftOut }: Facts): string | undefined =>
  leftOut === undefined
    ? undefined
    : `The job is large: what ${leftOut === 1 ? "one finding, the least in money, does" : `${leftOut} findings, the least in money, do`} to outlets and volts was not computed.`;
