/** Proposals of computed jobs, and all that a reader or a program can find in one. */
import { formattedIn } from "../../src/hosts/headless/formattedIn";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { PaperDocument } from "../../src/proposal/document";
import { proposalOf, type Proposal, type ProposalWanted } from "../../src/proposal/proposalOf";
import { proposalPictures } from "../../src/proposal/proposalPictures";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { textsIn } from "./pictureJobs";

export type Made = Extract<Proposal, { refused?: undefined }>;

export const computedJob = (job: JobInputs): Book => recalculate(layOut(multiRoom, job));

export const proposalIn = (book: Book, more: Partial<ProposalWanted> = {}): Proposal =>
  proposalOf(book, {
    formatted: formattedIn(book),
    pictures: proposalPictures,
    today: sheetDate(2026, 11, 10),
    ...more,
  });

/** @throws with the reasons where there is none */
export function madeOf(book: Book, more?: Partial<ProposalWanted>): Made {
  const found = proposalIn(book, more);
  if (found.refused) throw new Error(found.refused.join(" "));
  return found;
}

/** Every word of it: on its pages, in its pictures, beside them, and in its properties; a box to tick as it is drawn. */
export const wordsIn = ({ title, author, subject, foot, parts }: PaperDocument): string[] => [
  title,
  author,
  subject,
  foot,
  ...parts.flatMap((part): string[] => {
    switch (part.kind) {
      case "letterhead":
        return [part.name, ...part.lines, ...(part.logo ? [part.logo.alt] : [])];
      case "facts":
        return part.rows.flatMap(({ label, value }) => [label, value]);
      case "list":
        return [...part.items];
      case "table":
        return [
          ...part.columns.map(({ label }) => label),
          ...part.rows.flatMap(({ cells, box }) => [...(box ? ["☐"] : []), ...cells]),
        ];
      case "picture":
        return [part.alt, part.caption ?? "", ...textsIn(part.svg)];
      case "signature":
        return [part.text, ...part.lines];
      default:
        return [part.text];
    }
  }),
];

/** The headings, in their order. */
export const headingsOf = ({ parts }: PaperDocument): string[] =>
  parts.flatMap((part) => (part.kind === "heading" ? [part.text] : []));
