/** A workbook's sheets and its proposal as PDF, made in a page: the same files as the command's. */
import type { DrawnPage } from "../hosts/pdf/pdfPages";
import type { Step } from "../hosts/pdf/step";
import type { ProposalPart } from "../proposal/chosenParts";
import type { ProposalWanted } from "../proposal/proposalOf";
import type { WrittenProposal } from "../proposal/writtenProposal";
import type { Book, BookPrint } from "../workbooks/book";
import type { PaperPart, Typesetting } from "../workbooks/paperSheet";
import { sheetDateOf } from "../workbooks/sheetDate";
import { fileNameOf } from "../workbooks/jobLabel";
import type { JobInputs } from "../workbooks/definition";
import { HostTrouble, type WantedPdf } from "./host";
import type { PdfWriter } from "./loadPdf";
import { beforePrint } from "./beforePrint";
import { printable, type PrintChoice, type Printable } from "./printable";

export interface MadePages {
  readonly bytes: Uint8Array;
  readonly pages: readonly DrawnPage[];
  /** What of the text could not be set, in words; empty where all could. */
  readonly unset: string;
}

export interface Making {
  /** When. */
  readonly at: Date;
  readonly formatted: Typesetting["formatted"];
  readonly step?: Step;
}

export interface WantedSheets {
  readonly chosen: readonly PrintChoice[];
  readonly paper: BookPrint["paper"];
  /** The customer's page is no draft although checks fail. */
  readonly anyway?: boolean;
}

/** @param book of which `printable` is */
export async function sheetsFile(
  { sheetsFacts, sheetsPdf, type, unsetAtHome, unsetInWords }: PdfWriter,
  book: Book,
  printable: Pick<Printable, "parts">,
  { chosen, paper, anyway = false }: WantedSheets,
  { at, formatted, step }: Making,
): Promise<MadePages> {
  const setting = { formatted, textWidth: type.lineWidth.bind(type) };
  const written = async (isDraft: boolean | undefined): ReturnType<typeof sheetsPdf> => {
    const parts: PaperPart[] = [];
    // One by one: of a large job all of them together would hold the page up for seconds.
    for (const one of chosen) {
      await step?.(0, undefined);
      parts.push(...printable.parts([one], paper, setting, isDraft, at));
    }
    return sheetsPdf(parts, sheetsFacts(book, at), type, step);
  };
  const first = await written(anyway ? false : undefined);
  // Nobody signs for what is not on the page; the other pages stay as they are.
  const isWhole = first.unset.length === 0 || !chosen.some(({ forCustomer }) => forCustomer);
  const { bytes, pages, unset } = isWhole ? first : await written(true);
  return { bytes, pages, unset: unsetInWords(unsetAtHome(unset, book)) };
}

/** What a pane's host brings of the open workbook. */
export interface PdfSource {
  readonly load: () => Promise<PdfWriter>;
  /** Computed, as its file would hold it. */
  readonly book: Book;
  /** The same as it is seen: what is hidden has no size. */
  readonly shown: Book;
  readonly formatted: Typesetting["formatted"];
  /** The firm's standards, for what a proposal's job does not say. */
  readonly firm?: () => Promise<JobInputs | undefined>;
}

export interface NamedFile {
  readonly bytes: Uint8Array;
  /** With its ending. */
  readonly name: string;
  /** What is to be known of it, in sentences. */
  readonly said: string;
}

/**
 * @param say is told how far it is
 * @throws HostTrouble where there is nothing to make
 */
export async function namedPdf(
  wanted: WantedPdf,
  { load, book, shown, formatted, firm }: PdfSource,
  say: (words: string) => void,
): Promise<NamedFile> {
  const writer = await load();
  const making: Making = { at: new Date(), formatted, step: tellingStep(say) };
  const job = fileNameOf(writer.sheetsFacts(book, making.at).title);
  const saved = (name: string, { pages }: MadePages): string =>
    `${name} is made: ${pages.length === 1 ? "1 page" : `${pages.length} pages`}. This workbook is as it was.`;
  if (wanted.kind === "print") {
    const made = printable(shown);
    const chosen = choicesOf(made, wanted.what);
    if (chosen.length === 0) throw new HostTrouble(wanted.what === "cards" ? NO_CARDS : NO_SHEETS);
    const file = await sheetsFile(writer, shown, made, { chosen, paper: made.paper }, making);
    const name = `${job}${endOfName(chosen)}.pdf`;
    const doubts = chosen.some(({ forCustomer }) => forCustomer) ? beforePrint(book) : [];
    const said = [saved(name, file), file.unset, ...doubts.map(({ what }) => what)];
    return { bytes: file.bytes, name, said: said.filter(Boolean).join(" ") };
  }
  const { logo, anyway } = wanted;
  const inputs = await firm?.();
  const choice = { anyway, ...(logo && { logo }), ...(inputs && { firm: inputs }) };
  const found = await proposalFile(writer, book, choice, making);
  if (found.refused) throw new HostTrouble(found.refused.join(" "));
  const { written, look } = found;
  const name = `${job}${PROPOSAL_END}.pdf`;
  return {
    bytes: written.bytes,
    name,
    said: [saved(name, written), ...look, written.unset].filter(Boolean).join(" "),
  };
}

const NO_SHEETS =
  "There is nothing to print: every sheet of this workbook is empty or hidden. Fill a sheet first.";
const NO_CARDS =
  "There is nothing to make cards of: the workbook has no outlets and no head units. Fill the sheets Rooms and Head units of a multi-room estimate first.";
export const PROPOSAL_END = " - proposal";

/** @returns what a file of these is called behind the job's name, without its ending */
export function endOfName(chosen: readonly PrintChoice[]): string {
  const [only, another] = chosen;
  return only && !another ? ` - ${only.isCards ? "cards" : fileNameOf(only.name)}` : "";
}

const choicesOf = (
  { choices }: Printable,
  what: (WantedPdf & { readonly kind: "print" })["what"],
): PrintChoice[] =>
  choices.filter(({ chosen, isCards = false }) =>
    what === "cards" ? isCards : !isCards && (what === "all" || chosen),
  );

/** So long a page may stand still while pages are made. */
const MOST_STILL_MS = 30;

/** @param tell is told how far the work is, whenever the screen is let go on */
export function tellingStep(tell: (words: string) => void): Step {
  let paused = performance.now();
  return async (done, of) => {
    if (performance.now() - paused < MOST_STILL_MS) return;
    tell(of === undefined ? "Making the pages…" : `Making the pages: ${done} of ${of}…`);
    await new Promise((resolve) => setTimeout(resolve));
    paused = performance.now();
  };
}

export interface ProposalChoice extends Pick<ProposalWanted, "firm" | "logo" | "anyway"> {
  readonly with?: readonly ProposalPart[];
  readonly without?: readonly ProposalPart[];
  /** As the job says, else the firm, where absent. */
  readonly paper?: BookPrint["paper"];
}

export async function proposalFile(
  { documentPdf, proposalPictures, type, unsetInWords, writtenProposal }: PdfWriter,
  book: Book,
  { with: more, without, paper: asked, ...choice }: ProposalChoice,
  { at, formatted, step }: Making,
): Promise<WrittenProposal<MadePages>> {
  const wanted: ProposalWanted = {
    ...choice,
    formatted,
    parts: { ...(more && { with: more }), ...(without && { without }) },
    today: sheetDateOf(at),
    pictures: proposalPictures,
  };
  return writtenProposal(book, wanted, asked, async (document, paper) => {
    const { bytes, pages, unset } = await documentPdf(document, { paper, at, ...(step && { step }) }, type);
    return { bytes, pages, unset: unsetInWords(unset) };
  });
}
