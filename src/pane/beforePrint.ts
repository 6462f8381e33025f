/** What somebody should know before the customer's page is made. */
import type { HandedOver } from "../hosts/storage/handedOver";
import type { FindingPlace } from "../review/finding";
import { fillingSteps, nextStep } from "../review/fillingSteps";
import { timeInWords, totalInWords } from "../jobs/entryInWords";
import type { Book } from "../workbooks/book";
import { failingInWords } from "../workbooks/failingCount";
import { estimate } from "../workbooks/multiRoom/names";
import { placeOfName } from "../workbooks/named";
import { shelfLineOf } from "../workbooks/shelfLine";

export interface PrintDoubt {
  /** In sentences. */
  readonly what: string;
  /** Where it is looked at, or put right. */
  readonly place?: FindingPlace;
}

/** So many blank entries are named. */
const MOST_NAMED = 3;

/**
 * @param book computed
 * @param before the last time that the page was made of the job
 */
export function beforePrint(book: Book, before?: HandedOver): PrintDoubt[] {
  const doubts: PrintDoubt[] = [];
  const failing = failingInWords(book);
  if (failing !== "")
    doubts.push({
      what: `The customer's page is marked as a draft: ${failing}.`,
      place: { sheet: "Checks", cell: "A1" },
    });
  const steps = fillingSteps(book);
  const next = nextStep(steps);
  if (next && shelfLineOf(book).total === undefined && book.template === "multi-room")
    doubts.push({
      what: `There is no price to print yet. ${next.sheet} comes first.`,
      place: next.open[0]!.place,
    });
  const open = steps.flatMap((step) => step.open);
  doubts.push(
    ...open.slice(0, MOST_NAMED).map(({ what, place }) => ({ what: `${place.sheet}: ${what}`, place })),
  );
  if (open.length > MOST_NAMED)
    doubts.push({ what: `${open.length - MOST_NAMED} more are missing: Start, or the steps, say which.` });
  return [...(before ? otherTotal(book, before) : []), ...doubts];
}

/** Two that differ under one revision end in a dispute. */
export function otherTotal(book: Book, { at, line }: HandedOver): PrintDoubt[] {
  const now = shelfLineOf(book);
  if (line.number !== now.number || line.revision !== now.revision || line.total === now.total) return [];
  const sum = (of: HandedOver["line"]): string => totalInWords(of) || "no sum";
  const revision = placeOfName(book, estimate.site.revision.name);
  return [
    {
      what: `${now.revision === "" ? "This job, without a revision," : `Revision ${now.revision}`} was made on ${timeInWords(at)} with ${sum(line)}, and comes to ${sum(now)} now. Raise “Revision” on Site, if the other one has gone out.`,
      ...(revision && { place: { sheet: revision.sheet, cell: revision.at } }),
    },
  ];
}
