/** The foot of the printed pages: what the workbook says of its own revision and date. */
import { card } from "./alignmentCard/names";
import type { Book, BookPrint } from "./book";
import { jobLabelOf } from "./jobLabel";
import { estimate } from "./multiRoom/names";
import { namedValue } from "./named";
import { pageBreaks } from "./pageBreaks";
import { review } from "./quoteReview/names";
import { isoDate } from "./sheetDate";

/** Some templates have a date; the first that is there counts. */
const DATES = [estimate.site.date.name, card.date.name, review.date.name];
/** 9999-12-31, the last date of a sheet. */
const LAST_DATE = 2_958_465;

/** @returns job or quote, revision and date as the workbook names them; empty where nothing is filled in */
export function printFootOf(book: Book): string {
  const { number, revision, name } = jobLabelOf((cell) => namedValue(book, cell));
  const date = DATES.map((name) => namedValue(book, name)).find((value) => typeof value === "number");
  return [
    number || name,
    revision && `revision ${revision}`,
    typeof date === "number" && date >= 1 && date <= LAST_DATE ? isoDate(date) : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/**
 * A spreadsheet's foot is fixed text, so it is set whenever the workbook is written.
 * @returns the book with the same right-hand foot on every sheet that prints; as it is where nothing is filled in
 */
export function withPrintFoot(book: Book): Book {
  const footRight = printFootOf(book);
  return footRight === "" ? book : withPrint(book, { footRight });
}

/** @returns the book with some of the print set-up of every sheet that prints changed */
export const withPrint = (book: Book, change: Partial<BookPrint>): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) =>
    sheet.print ? { ...sheet, print: { ...sheet.print, ...change } } : sheet,
  ),
});

/**
 * What another paper had ended is forgotten; a sheet without headings keeps the ends it was made with.
 * @returns the book with the pages of every sheet of headings ended where they should; a copy's rows grow no more
 */
export const withPageBreaks = (book: Book): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) => {
    const breaks = pageBreaks(sheet, book.looks);
    return sheet.print && breaks ? { ...sheet, print: { ...sheet.print, breaks } } : sheet;
  }),
});
