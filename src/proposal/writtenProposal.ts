/** A proposal as it goes onto its pages: a draft where these can't show all of its words. */
import type { Book } from "../workbooks/book";
import type { ProposalPart } from "./chosenParts";
import type { PaperDocument } from "./document";
import { proposalOf, type ProposalWanted } from "./proposalOf";

type Paper = "a4" | "letter";

/** What a document became. */
export interface WrittenDocument {
  readonly bytes: Uint8Array;
  /** What of its text could not be set, in words; empty where all could. */
  readonly unset: string;
}

export type WrittenProposal<Written extends WrittenDocument> =
  | {
      /** Why there is none, in sentences. */
      readonly refused: readonly string[];
    }
  | {
      readonly refused?: undefined;
      readonly title: string;
      readonly paper: Paper;
      /** What may be left out and was not. */
      readonly parts: ReadonlySet<ProposalPart>;
      readonly written: Written;
      /** What must be there and is not, and what the office should know before it goes out. */
      readonly look: readonly string[];
    };

/**
 * @param computed a computed book
 * @param asked the paper, before what the job and the firm say
 * @param write lays a document out on pages
 */
export async function writtenProposal<Written extends WrittenDocument>(
  computed: Book,
  wanted: ProposalWanted,
  asked: Paper | undefined,
  write: (document: PaperDocument, paper: Paper) => Promise<Written>,
): Promise<WrittenProposal<Written>> {
  const found = proposalOf(computed, wanted);
  if (found.refused) return found;
  const { document, parts, missing, notes } = found;
  const paper = asked ?? found.paper ?? "a4";
  const first = await write(document, paper);
  // Nobody signs for what is not on the page.
  const draft = first.unset === "" ? undefined : proposalOf(computed, { ...wanted, isIncomplete: true });
  const written = draft && !draft.refused ? await write(draft.document, paper) : first;
  return { title: document.title, paper, parts, written, look: [...missing, ...notes] };
}
