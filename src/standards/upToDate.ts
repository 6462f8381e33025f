/** What a job and the firm's standards differ by, and what that comes to, before anything is changed. */
import { recognised } from "../review/recognised";
import { originOf } from "../review/rules/origin";
import { isBookError, type Book } from "../workbooks/book";
import type { JobInputs } from "../workbooks/definition";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import { layOut } from "../workbooks/layOut";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn, namedValue } from "../workbooks/named";
import { brought } from "./brought";
import { differences, PART_LISTS, type Difference } from "./differences";
import type { FirmsStandards } from "./firmsStandards";
import { partKey } from "./raisedBy";
import { takenBy } from "./taken";

export interface UpToDate {
  readonly job: JobInputs;
  readonly standards: FirmsStandards;
  readonly differences: readonly Difference[];
  /** Of the job, with tax; undefined where there is none. */
  readonly total?: number;
  readonly currency: string;
  /** Of each part, how many are bought: by list and line. */
  readonly bought: ReadonlyMap<string, number>;
  /** What the reader should know of the two. */
  readonly notes: readonly string[];
}

/**
 * @param stored the job, with computed values
 * @returns a sentence where the job can't be brought up to date
 */
export function upToDate(
  stored: Book,
  standards: FirmsStandards,
  called = "This workbook",
): UpToDate | string {
  const book = recognised(stored);
  const origin = originOf(book);
  if (origin?.template.id !== multiRoom.id)
    return `${called} is no multi-room estimate of ours, so it draws on no standards.`;
  if (origin.made === "earlier")
    return `${called} is of version ${book.templateVersion || "unknown"} of “${multiRoom.title}”, which knew no standards; today's is ${multiRoom.version}. Upgrade it first; then bring it up to date.`;
  if (origin.made === "later")
    return `${called} was made from version ${book.templateVersion} of “${multiRoom.title}”; this Rigsheet is older and knows version ${multiRoom.version}. Take a Rigsheet as new as the workbook.`;
  const job = jobInputsOf(multiRoom, book);
  const refused = unlike(job, standards, called);
  if (refused !== undefined) return refused;
  const total = namedValue(book, estimate.quote.total.name);
  return {
    job,
    standards,
    differences: differences(job, standards),
    ...(typeof total === "number" && { total }),
    currency: String(job.fields?.[estimate.site.currency.name] ?? ""),
    bought: boughtIn(book),
    notes: notesOn(job, standards),
  };
}

/** Prices in another currency and reels in another unit are no other prices and reels: nothing of them is taken. */
function unlike(job: JobInputs, { inputs }: FirmsStandards, called: string): string | undefined {
  const both = ({ name }: { readonly name: string }): [string, string] => [
    String(job.fields?.[name] ?? "").trim(),
    String(inputs.fields?.[name] ?? "").trim(),
  ];
  const [mine, theirs] = both(estimate.site.currency);
  if (mine !== "" && theirs !== "" && mine !== theirs)
    return `${called} is in ${mine} and the standards are in ${theirs}. Nothing was taken: a price in another currency is another price. Use standards in ${mine}.`;
  const [unit, other] = both(estimate.site.unit);
  if (unit !== "" && other !== "" && unit !== other)
    return `Lengths of ${called === "This workbook" ? "this workbook" : called} are in ${unit} and those of the standards in ${other}. Nothing was taken: reels, slack and minutes for a length would all be wrong. Use standards in ${unit}.`;
  return undefined;
}

function notesOn(job: JobInputs, { firm, edition }: FirmsStandards): string[] {
  const { site } = estimate;
  const before = job.fields?.[site.standards.name];
  const had = job.fields?.[site.standards_edition.name];
  if (!takenBy(job))
    return [
      "This job has not drawn on any standards: whatever differs in it is its own, and is kept unless you ask for it.",
    ];
  if (before !== undefined && before !== firm)
    return [`The job drew on the standards of ${before}; these are those of ${firm}.`];
  if (typeof had === "number" && had > edition)
    return [`The job drew on edition ${had}; these are older: edition ${edition}.`];
  return [];
}

function boughtIn(book: Book): Map<string, number> {
  const found = new Map<string, number>();
  for (const list of PART_LISTS) {
    const quantities = namedColumn(book, `${list}_bought_quantity`);
    for (const [index, name] of namedColumn(book, `${list}_bought_name`).entries()) {
      const quantity = quantities[index];
      if (typeof quantity === "number" && !isBookError(name))
        found.set(partKey(list, String(name)), quantity);
    }
  }
  return found;
}

/** What the job's total is with those that are chosen, worked out on a copy; undefined where there is none. */
export function totalWith(
  { job, standards }: UpToDate,
  chosen: readonly Difference[],
  compute: (book: Book) => Book,
): number | undefined {
  const total = namedValue(
    compute(layOut(multiRoom, brought(job, standards, chosen))),
    estimate.quote.total.name,
  );
  return typeof total === "number" ? total : undefined;
}
