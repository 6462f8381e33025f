/** Print: what is chosen is made into pages, which the browser's own print dialog puts on paper. */
import * as library from "@odoo/o-spreadsheet";
import { pageRoom } from "../../../workbooks/pageRoom";
import type { PaperSheet, Typesetting } from "../../../workbooks/paperSheet";
import { escaped } from "../../../help/html";
import type { StandardsHere } from "../../../pane/host";
import type { PdfWriter } from "../../../pane/loadPdf";
import {
  endOfName,
  PROPOSAL_END,
  proposalFile,
  sheetsFile,
  type Making,
  type PdfSource,
} from "../../../pane/pdfFiles";
import { beforePrint, otherTotal } from "../../../pane/beforePrint";
import { printable, type Printable } from "../../../pane/printable";
import { sameRevision } from "../../../proposal/sameRevision";
import type { Book } from "../../../workbooks/book";
import { failingCount } from "../../../workbooks/failingCount";
import { labelInWords } from "../../../workbooks/jobLabel";
import type { DrawnPage } from "../../pdf/pdfPages";
import type { Step } from "../../pdf/step";
import { formattedAs } from "../../grid/asWritten";
import { shownOnGrid } from "../../grid/shownOnGrid";
import type { GridLibrary, GridModel } from "../../grid/library";
import type { Desk } from "./desk";
import { api } from "./api";
import { download, make, pause } from "./dom";
import { keptPaper } from "./keptPaper";
import { FONTS, paperHtml } from "./paperHtml";
import { addType, pdfWriter } from "./pdfHere";
import { askWhatToPrint, type PageMakers } from "./printDialog";
import { keepHandedOver, lastHandedOver, type HandedOver } from "../../storage/handedOver";
import { selectCell } from "./selectCell";
import { inputsOfFirm, standardsHere } from "./standardsHere";
import { writingIn } from "./typedCell";
import type { UnfinishedEntry } from "./unfinished";

const PIXELS_PER_POINT = 4 / 3;
const LARGE = 10;
/** A page holds a little less than it measures. */
const FILLED = 0.98;
/** A browser that prints begins at once. */
const BEGUN_MS = 1000;
const NOT_PRINTED =
  "This browser printed nothing and does not say why. Save the workbook as .xlsx and print it from a spreadsheet program, or open the desk in another browser.";

export interface PrintAround {
  /** What is being typed and is not entered yet. */
  readonly unfinished: UnfinishedEntry | undefined;
  /** Says that work begins, and lets it be painted. */
  readonly started: (words: string) => Promise<void>;
  /** Of the open job; undefined for a state that is only looked at. */
  readonly id: string | undefined;
}

/**
 * @returns what is to be known of it, in a sentence; empty where nothing is
 * @throws Error with a sentence where there is nothing to print, or the browser does not print
 */
export async function printPages(desk: Desk, { unfinished, started, id }: PrintAround): Promise<string> {
  const stored = desk.book();
  const book = shownOnGrid(desk.model, stored);
  const made = printable(book);
  if (made.choices.length === 0)
    throw new Error(
      "There is nothing to print: every sheet of this workbook is empty or hidden. Fill a sheet first.",
    );
  await started("");
  const left = unfinished
    ? `What is being typed into ${unfinished.sheet} ${unfinished.cell} is not entered yet, and is not printed.`
    : "";
  const { jobs, firms } = stored.template === PROPOSED ? await besides(id) : { jobs: [], firms: [] };
  const before = id === undefined ? undefined : await lastHandedOver(id);
  const forCustomer = made.choices.some((choice) => choice.forCustomer);
  const wanted = await askWhatToPrint(
    {
      ...made,
      paper: keptPaper() ?? made.paper,
      job: desk.title,
      left,
      doubts: forCustomer ? beforePrint(stored, before) : [],
      isDraft: forCustomer && failingCount(stored) !== 0,
      firms,
    },
    pageMakers(desk, { stored, book, made, jobs, before }),
  );
  if (!wanted) return "";
  if (wanted.kind === "place") {
    selectCell(desk.model, wanted.place.sheet, wanted.place.cell);
    return "";
  }
  const isHandedOver = !("chosen" in wanted) || (wanted.chosen ?? []).some((choice) => choice.forCustomer);
  if (id !== undefined && isHandedOver)
    await keepHandedOver(id, { at: new Date().toISOString(), line: desk.shelfLine });
  if (wanted.kind === "file") {
    const name = `${desk.fileTitle}${wanted.chosen ? endOfName(wanted.chosen) : PROPOSAL_END}.pdf`;
    downloadPdf(wanted.made.bytes, name);
    return `Saved as ${name} where the browser puts its downloads.`;
  }
  await started("Making the pages…");
  if (wanted.kind === "proposal") {
    const writer = await pdfWriter();
    const frame = await frameWith(drawnHtml(desk.fileTitle, wanted.made.pages, writer));
    await addType(writer, frame.contentWindow!);
    await handOver(frame.contentWindow!);
    return "";
  }
  const isDraft = wanted.anyway ? false : undefined;
  const parts = made.parts(wanted.chosen, wanted.paper, typesetting(desk.model), isDraft);
  const frame = await frameWith(paperHtml(desk.fileTitle, parts));
  const tall = parts.filter((part): part is PaperSheet => "parts" in part && !!part.print.onePage);
  fitOnePages(frame.contentDocument!, tall);
  await handOver(frame.contentWindow!);
  return "";
}

export const downloadPdf = (bytes: Uint8Array, name: string): void =>
  download(new Blob([Uint8Array.from(bytes)], { type: "application/pdf" }), name);

/** The open job for the pane beside it. */
export function pdfSource(desk: Desk): PdfSource {
  const book = desk.book();
  return {
    load: pdfWriter,
    book,
    shown: shownOnGrid(desk.model, book),
    formatted: formattedOn(desk.model),
    firm: async () => {
      const [first] = await standardsHere();
      return first && inputsOfFirm(first);
    },
  };
}

/** The template of which a proposal is made. */
const PROPOSED = "multi-room";

/** @returns the other jobs, and the firm's standards among all; none where the list can't be had now */
async function besides(
  id: string | undefined,
): Promise<{ readonly jobs: OtherJobs; readonly firms: readonly StandardsHere[] }> {
  try {
    const { jobs } = await api.jobs();
    return {
      jobs: jobs.flatMap(({ id: other, line, away }) =>
        line && !away && other !== id ? [{ called: labelInWords(line), line }] : [],
      ),
      firms: await standardsHere(),
    };
  } catch {
    return { jobs: [], firms: [] };
  }
}

type OtherJobs = Parameters<typeof sameRevision>[1];

interface Printed {
  /** As its file would hold it, and as its grid shows it. */
  readonly stored: Book;
  readonly book: Book;
  readonly made: Printable;
  readonly jobs: OtherJobs;
  /** The last time that a customer's page was made of the job. */
  readonly before: HandedOver | undefined;
}

function pageMakers(desk: Desk, { stored, book, made, jobs, before }: Printed): PageMakers {
  const making = (step: Step): Making => ({
    at: new Date(),
    formatted: formattedOn(desk.model),
    step,
  });
  return {
    load: pdfWriter,
    sheets: (writer, wanted, step) => sheetsFile(writer, book, made, wanted, making(step)),
    ...(stored.template === PROPOSED && {
      proposal: async (writer, wanted, step) => {
        const found = await proposalFile(writer, stored, wanted, making(step));
        return found.refused
          ? found
          : {
              ...found,
              look: [
                ...found.look,
                ...sameRevision(desk.shelfLine, jobs),
                ...(before ? otherTotal(stored, before).map(({ what }) => what) : []),
              ],
            };
      },
    }),
  };
}

/** Pages that are drawn already, each as large as its paper. */
function drawnHtml(title: string, pages: readonly DrawnPage[], { pageSvg, type }: PdfWriter): string {
  const [first] = pages;
  const { width, height } = first ?? { width: 0, height: 0 };
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><style>
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
@page{size:${width}pt ${height}pt;margin:0}
body{margin:0}
section{height:${height - 1}pt;overflow:hidden}
section+section{break-before:page}
svg{display:block}
</style></head><body>${pages.map((page) => `<section>${pageSvg(page, type)}</section>`).join("\n")}</body></html>`;
}

/** The grid library's own printing knows no print set-up: it would print a sheet's workings beside it. */
export const printByMenu = ({ registries }: GridLibrary, print: () => void): void =>
  void registries.topbarMenuRegistry.replaceChild("print", ["file"], {
    name: "Print…",
    sequence: 190,
    execute: print,
    isReadonlyAllowed: true,
    isEnabledOnLockedSheet: true,
    icon: "o-spreadsheet-Icon.PRINT",
  });

/** Figures as the open workbook writes them. */
export function formattedOn(model: GridModel): Typesetting["formatted"] {
  const writing = writingIn(model);
  return (value, format) => formattedAs(library, value, format, writing);
}

/** The page's own measure of a line, in the type that prints it. */
function typesetting(model: GridModel): Typesetting {
  const pen = document.createElement("canvas").getContext("2d")!;
  return {
    formatted: formattedOn(model),
    textWidth: (text, size, bold) => {
      // Large: on a screen the letters of small type are moved to whole pixels.
      pen.font = `${bold ? "bold " : ""}${LARGE * size}px ${FONTS}`;
      return pen.measureText(text).width / LARGE;
    },
  };
}

let frame: HTMLIFrameElement | undefined;

/** It stays until the next one: a browser may go on reading it after it has said that it has printed. */
function frameWith(html: string): Promise<HTMLIFrameElement> {
  frame?.remove();
  const made = make("iframe", {
    className: "print-frame",
    title: "The pages that are printed",
    ariaHidden: "true",
    tabIndex: -1,
    srcdoc: html,
  });
  frame = made;
  return new Promise((resolve) => {
    made.addEventListener("load", () => resolve(made), { once: true });
    document.body.append(made);
  });
}

/** Lines that broke otherwise than they were reckoned must not push the end of a sheet onto a second page. */
function fitOnePages(pages: Document, sheets: readonly PaperSheet[]): void {
  pages.querySelectorAll<HTMLElement>("section.one").forEach((section, index) => {
    const { print, scale } = sheets[index]!;
    const room = FILLED * pageRoom(print).down * PIXELS_PER_POINT;
    const height = section.getBoundingClientRect().height;
    if (height > room) section.style.setProperty("--p", `${((scale * room) / height).toFixed(4)}pt`);
  });
}

async function handOver(pages: Window): Promise<void> {
  let begun = false;
  pages.addEventListener("beforeprint", () => (begun = true), { once: true });
  try {
    pages.print();
  } catch {
    throw new Error(NOT_PRINTED);
  }
  for (let waited = 0; !begun && waited < BEGUN_MS; waited += 50) await pause(50);
  if (!begun) throw new Error(NOT_PRINTED);
}
