/**
 * The pages that the desk hands over to be printed. A browser without a screen
 * shows no print dialog, so they are taken where they are handed to it, and
 * Chromium makes the PDF of them that its dialog would make.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Console } from "../../../src/cli/console";
import { pdfOfDocument } from "../../../src/cli/pdfOfDocument";
import { printJob } from "../../../src/cli/printJob";
import { proposalJob } from "../../../src/cli/proposalJob";
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
import { withPageBreaks, withPrint } from "../../../src/workbooks/printFoot";
import { recalculated } from "../../support/tools";
import { button, notice, page } from "./onDesk";
import { until } from "../../support/until";
import { pagesOf, type PaperPage } from "../../support/pdfPages";

export const dialog = () => page.getByRole("dialog", { name: "Print" });
export const boxes = () => dialog().getByRole("group", { name: "Sheets" }).getByRole("checkbox");
export const printButton = () => dialog().getByRole("button", { name: "Print…" });

export interface Handed {
  rigsheetPages?: string;
}

let folder: string;
beforeAll(() => void (folder = mkdtempSync(path.join(tmpdir(), "rigsheet-printing-"))));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let stubbed: unknown;
/** What the browser is asked to print is kept; as a browser does, the window is told before. */
export async function takePages(): Promise<void> {
  await page.evaluate(() => delete (window as Handed).rigsheetPages);
  if (stubbed === page) return;
  stubbed = page;
  await page.addInitScript(() => {
    window.print = () => {
      window.dispatchEvent(new Event("beforeprint"));
      (window.top as Handed).rigsheetPages = document.documentElement.outerHTML;
    };
  });
}

/** @param sheets by name; what is chosen from the first where absent */
export async function printed(sheets?: readonly string[], paper?: "A4" | "Letter"): Promise<string> {
  await takePages();
  // Each print begins as on a browser that has printed nothing yet.
  await page.evaluate(() => localStorage.removeItem("rigsheet.paper"));
  // A dialog that is about to go still has the keys.
  await page.locator("dialog").waitFor({ state: "detached" });
  await page.keyboard.press("Control+p");
  await dialog().waitFor();
  if (sheets) {
    for (const box of await boxes().all()) await box.uncheck();
    for (const sheet of sheets)
      await dialog()
        .getByRole("checkbox", { name: new RegExp(`^${sheet}\\b`) })
        .check();
  }
  if (paper) await dialog().getByLabel("Paper").selectOption({ label: paper });
  await printButton().click();
  await dialog().waitFor({ state: "detached" });
  const pages = await until(
    () => page.evaluate(() => (window as Handed).rigsheetPages ?? ""),
    (html) => html !== "",
  );
  return `<!doctype html>${pages}`;
}

/** The pages as Chromium prints them, with "background graphics" off as its dialog has it. */
export async function onPaper(html: string, name = "pages"): Promise<PaperPage[]> {
  const paper = await page.context().newPage();
  await paper.setContent(html);
  const file = path.join(folder, `${name}.pdf`);
  writeFileSync(file, await paper.pdf({ preferCSSPageSize: true, printBackground: false }));
  await paper.close();
  return pagesOf(file);
}

const quiet: Console = { out: () => undefined, err: () => undefined, readInput: async () => "" };

/** The same workbook's copy of values through LibreOffice. */
export async function byLibreOffice(book: Book, sheets: readonly string[] | "cards"): Promise<PaperPage[]> {
  const facts = { now: new Date(), version: "0", ...(sheets !== "cards" && { sheets }) };
  const copy = withPageBreaks(
    withPrint(copyOf(recalculate(book), sheets === "cards" ? "cards" : "sealed", facts), { paper: "a4" }),
  );
  const out = path.join(folder, "libreOffice.pdf");
  writeFileSync(
    out,
    await recalculated(await writeXlsx(copy, { sealed: true }), { to: "pdf", recalculate: false }),
  );
  return pagesOf(out);
}

/** The same workbook's file through the command. */
export async function byCommand(book: Book, sheets: readonly string[] | "cards"): Promise<PaperPage[]> {
  const words = sheets === "cards" ? ["--cards"] : sheets.flatMap((sheet) => ["--sheet", sheet]);
  await commandsFile(book, (job, out) => printJob([job, ...words, "--out", out, "--force"], quiet));
  return pagesOf(path.join(folder, "command.pdf"));
}

async function commandsFile(book: Book, run: (job: string, out: string) => Promise<number>): Promise<Buffer> {
  const job = path.join(folder, "job.xlsx");
  const out = path.join(folder, "command.pdf");
  writeFileSync(job, await writeXlsx(recalculate(book)));
  await run(job, out);
  return readFileSync(out);
}

/** The quote, and the proposal, as the command writes them at a moment. */
export const quoteByCommand = (book: Book, at: Date): Promise<Buffer> =>
  commandsFile(book, (job, out) => printJob([job, "--out", out, "--force"], quiet, () => at));
export const proposalByCommand = (book: Book, at: Date): Promise<Buffer> =>
  commandsFile(book, (job, out) =>
    proposalJob([job, "--out", out, "--force"], quiet, pdfOfDocument, () => at),
  );

export interface SavedPdf {
  readonly name: string;
  readonly bytes: Buffer;
  readonly pages: readonly PaperPage[];
  /** When it was made, as it says itself (ISO 32000-1, 7.9.4). */
  readonly at: Date;
}

/** @param act has the page hand out a PDF */
export async function savedPdf(act: () => Promise<void>): Promise<SavedPdf> {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  const file = path.join(folder, "saved.pdf");
  await download.saveAs(file);
  const bytes = readFileSync(file);
  const date = /\(D:(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)Z\)/.exec(bytes.toString("latin1"))!;
  const [year, month, day, hour, minute, second] = date.slice(1).map(Number) as [number, ...number[]];
  return {
    name: download.suggestedFilename(),
    bytes,
    pages: pagesOf(file),
    at: new Date(Date.UTC(year, month! - 1, day, hour, minute, second)),
  };
}

export const preview = () => dialog().getByRole("region", { name: "The pages as they come out" });
/** @returns what the preview says once its pages are there */
export const previewed = (words: RegExp): Promise<void> =>
  preview().locator(".preview-told").filter({ hasText: words }).waitFor();

export const linesOf = (pages: readonly PaperPage[]): string[] => pages.flatMap(({ lines }) => lines);
export const wordsOf = (pages: readonly PaperPage[]): string[] =>
  linesOf(pages).flatMap((line) => line.split(" "));

export function expectWithinPages(pages: readonly PaperPage[]): void {
  for (const { width, height, words } of pages) {
    const outside = words.filter(({ left, right, bottom }) => left < 0 || right > width || bottom > height);
    expect(outside).toEqual([]);
  }
}

/** Texts that their cell, or the cells that they run over, do not hold: they would be cut on paper. */
export const cutTexts = async (html: string): Promise<string[]> => {
  const paper = await page.context().newPage();
  await paper.setContent(html);
  // Large: on a screen the letters of small type are moved to whole pixels, which they are not on paper.
  await paper.evaluate(() => {
    for (const section of document.querySelectorAll("section")) section.style.setProperty("--p", "10pt");
    // A blank at the end of a line hangs over the edge, and would be measured.
    for (const cell of document.querySelectorAll("td"))
      if (getComputedStyle(cell).whiteSpace === "pre-wrap") cell.style.whiteSpace = "pre-line";
  });
  const cut = await paper.evaluate(() =>
    [...document.querySelectorAll("td")].flatMap((cell) => {
      const box = cell.querySelector("div") ?? cell;
      const room = box.getBoundingClientRect();
      const range = document.createRange();
      range.selectNodeContents(box);
      const text = range.getBoundingClientRect();
      const isCut = text.width > room.width + 1 || text.height > room.height + 1;
      return cell.textContent && isCut ? [cell.textContent] : [];
    }),
  );
  await paper.close();
  return cut;
};

/** A workbook opened from a file, as a person opens one. */
export async function open(book: Book): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Open .xlsx…").click()]);
  await chooser.setFiles({ name: "job.xlsx", mimeType: "", buffer: Buffer.from(await writeXlsx(book)) });
  await until(
    () => notice().innerText(),
    (text) => text.endsWith("is kept, under Jobs."),
  );
  await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
}
