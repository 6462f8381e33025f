/** Which job a workbook is, in the words of its own cells. */
import { card } from "./alignmentCard/names";
import { estimate } from "./multiRoom/names";
import { review } from "./quoteReview/names";
import { drop } from "./singleDrop/names";
import { standards } from "./standards/names";

/** Each template names the job or the quote in a cell of its own; the first that is filled counts. */
const NUMBERS = [estimate.site.quote.name, review.quote.name];
const NAMES = [estimate.site.job.name, card.job.name, drop.job.name, review.job.name, standards.firm.name];
const REVISION = estimate.site.revision.name;

export interface JobLabel {
  /** Of the quote. */
  readonly number: string;
  readonly revision: string;
  readonly name: string;
}

/**
 * @param valueOf the value of a named cell, undefined where the workbook has no such name
 * @returns what identifies the job; empty texts where nothing is filled in
 */
export function jobLabelOf(valueOf: (name: string) => unknown): JobLabel {
  const first = (names: readonly string[]): string =>
    names.map((name) => text(valueOf(name))).find((value) => value !== "") ?? "";
  const edition = text(valueOf(standards.edition.name));
  const number = edition === "" ? first(NUMBERS) : `standards, edition ${edition}`;
  return { number, revision: text(valueOf(REVISION)), name: first(NAMES) };
}

const LONGEST_FILE_NAME = 80;

/** @returns a file's name for the job, without its ending and without what some system can't hold in a name */
export const fileNameOf = (words: string): string =>
  words
    .replace(/[^\p{L}\p{M}\p{N} _.,()-]+/gu, " ")
    .replace(/ +/g, " ")
    .slice(0, LONGEST_FILE_NAME)
    // A name may not begin or end with a point on some systems, and elsewhere it hides the file.
    .replace(/^[ .,]+|[ .,]+$/g, "") || "job";

/** @returns for instance "D-24, revision 1, Guest house"; empty where nothing is filled in */
export function labelInWords({ number, revision, name }: JobLabel): string {
  // A revision alone would name nothing.
  if (number === "" && name === "") return "";
  return [number, revision && `revision ${revision}`, name].filter((part) => part !== "").join(", ");
}

const text = (value: unknown): string =>
  typeof value === "string" ? value.trim() : typeof value === "number" ? String(value) : "";
