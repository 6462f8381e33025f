/** Print: what is chosen is made into pages, which the browser's own print dialog puts on paper. */
import * as library from "@odoo/o-spreadsheet";
import { pageRoom } from "../../../workbooks/pageRoom";
import type { PaperSheet, Typesetting } from "../../../workbooks/paperSheet";
import type { ShownWriting } from "../../../workbooks/typed/writing";
import { formattedAs } from "../../grid/asWritten";
import { shownOnGrid } from "../../grid/shownOnGrid";
import type { GridLibrary } from "../../grid/library";
import type { Desk } from "./desk";
import { make, pause } from "./dom";
import { FONTS, paperHtml } from "./paperHtml";
import { printable } from "./printable";
import { askWhatToPrint } from "./printDialog";
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

/**
 * @param unfinished what is being typed and is not entered yet
 * @param started says that work begins, and lets it be painted
 * @throws Error with a sentence where there is nothing to print, or the browser does not print
 */
export async function printPages(
  desk: Desk,
  unfinished: UnfinishedEntry | undefined,
  started: (words: string) => Promise<void>,
): Promise<void> {
  const made = printable(shownOnGrid(desk.model, desk.book()));
  if (made.choices.length === 0)
    throw new Error(
      "There is nothing to print: every sheet of this workbook is empty or hidden. Fill a sheet first.",
    );
  await started("");
  const left = unfinished
    ? `What is being typed into ${unfinished.sheet} ${unfinished.cell} is not entered yet, and is not printed.`
    : "";
  const wanted = await askWhatToPrint(made, desk.title, left);
  if (!wanted) return;
  await started("Making the pages…");
  const parts = made.parts(wanted.chosen, wanted.paper, typesetting(writingIn(desk.model)));
  const frame = await frameWith(paperHtml(desk.fileTitle, parts));
  const tall = parts.filter((part): part is PaperSheet => "parts" in part && !!part.print.onePage);
  fitOnePages(frame.contentDocument!, tall);
  await handOver(frame.contentWindow!);
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

/** The page's own measure of a line, in the type that prints it. */
function typesetting(writing: ShownWriting | undefined): Typesetting {
  const pen = document.createElement("canvas").getContext("2d")!;
  return {
    formatted: (value, format) => formattedAs(library, value, format, writing),
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
