/**
 * What runs around the add-in's page in a browser, as Excel on the web does:
 * the stand-in for Excel, which the page in the frame is given as its Office.
 */
import type { Book } from "../../../src/workbooks/book";
import { asked } from "../../support/excel/strict";
import { ExcelStandIn, type StandInOptions } from "../../support/excelStandIn";

/** What the page has asked of Excel so far. */
export interface Asked {
  readonly members: readonly (readonly [member: string, count: number])[];
  readonly requests: readonly { readonly calls: number; readonly bytes: number }[];
}

export interface StandInPage {
  excel: ExcelStandIn;
  /** Opens a workbook, then the add-in's page beside it. */
  open(book: Book | undefined, options: StandInOptions): void;
  asked(): Asked;
}

const page: Partial<StandInPage> = {
  asked: () => ({ members: [...asked.members], requests: asked.requests }),
  open(book, options) {
    const excel = new ExcelStandIn(options);
    if (book) excel.state.open(book);
    page.excel = excel;
    const frame = document.createElement("iframe");
    frame.src = "taskpane.html";
    document.body.append(frame);
  },
};
(globalThis as unknown as { standInPage: Partial<StandInPage> }).standInPage = page;
