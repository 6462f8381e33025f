/**
 * A document as a PDF: one family of type in three sizes, thin rules, nothing
 * filled. Which part is set how stands in documentParts.ts.
 */
import { pageSize } from "./pageSize";
import type { BookPrint } from "../../workbooks/book";
import type { PaperDocument } from "../../proposal/document";
import { DocumentParts } from "./documentParts";
import { flow } from "./flow";
import { drawFoot } from "./pageFoot";
import { PdfPages } from "./pdfPages";
import type { PrintType } from "./printType";
import type { Step } from "./step";
import { Setter, type MadePdf } from "./unset";

/** Points. */
const MARGINS = { left: 62, right: 62, top: 54, bottom: 68 } as const;
const FOOT_GAP = 22;
/** What a printer leaves at the paper's edge. */
const UNPRINTED = 14;

export interface DocumentFacts {
  readonly paper: BookPrint["paper"];
  /** When it was made. */
  readonly at: Date;
  readonly step?: Step;
}

/**
 * @returns the PDF, and the parts whose text it could not set
 */
export async function documentPdf(
  document: PaperDocument,
  { paper, at, step }: DocumentFacts,
  type: PrintType,
): Promise<MadePdf> {
  const [width, height] = pageSize({ paper, orientation: "portrait" });
  const room = { left: MARGINS.left, width: width - MARGINS.left - MARGINS.right };
  const down = height - MARGINS.top - MARGINS.bottom;
  const setter = new Setter(type);
  const pages = new PdfPages(type, {
    title: setter.set(document.title, "The title"),
    author: setter.set(document.author, "The firm's name"),
    subject: setter.set(document.subject, "The subject"),
    language: document.language,
    at,
  });
  const left = setter.set(document.foot, "The foot");
  const placed = flow(new DocumentParts(pages, setter, room, down).pieces(document.parts), down);
  for (const [index, pieces] of placed.entries()) {
    await step?.(index, placed.length);
    pages.addPage(width, height);
    for (const { piece, top, isRepeated } of pieces) piece.draw(MARGINS.top + top, isRepeated);
    drawFoot(
      pages,
      type,
      { left, right: "", page: index + 1, pages: placed.length },
      {
        left: MARGINS.left,
        right: width - MARGINS.right,
        top: height - MARGINS.bottom + FOOT_GAP,
        height: MARGINS.bottom - FOOT_GAP - UNPRINTED,
      },
    );
  }
  return { bytes: await pages.bytes(), unset: setter.unset, pages: pages.drawn };
}
