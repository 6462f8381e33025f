/** Whether a quotation of the same number and revision, and yet another one, is known. */
import type { ShelfLine } from "../workbooks/shelfLine";

const key = ({ number, revision }: ShelfLine): string =>
  `${number.trim().toLowerCase()}\n${revision.trim().toLowerCase()}`;
const said = (line: ShelfLine): string =>
  JSON.stringify([line.name, line.customer, line.date, line.total, line.currency]);

/**
 * @param others each with what a sentence calls it
 * @returns a sentence for each that a customer could take for the job, though it says something else
 */
export const sameRevision = (
  job: ShelfLine,
  others: readonly { readonly called: string; readonly line: ShelfLine }[],
): string[] =>
  job.number === ""
    ? []
    : others
        .filter(({ line }) => !line.standards && key(line) === key(job) && said(line) !== said(job))
        .map(
          ({ called }) =>
            `${called} is number ${job.number}, revision ${job.revision === "" ? "none" : job.revision}, too, and says something else: raise “Revision” on Site before the second goes out.`,
        );
