import type { Book } from "../../workbooks/book";
import { jobLabelOf, labelInWords } from "../../workbooks/jobLabel";
import { namedValue } from "../../workbooks/named";
import { printFootOf } from "../../workbooks/printFoot";
import type { PdfFacts } from "./pdfPages";

/** What a PDF of printed sheets says of itself. */
export const sheetsFacts = (book: Book, at: Date): PdfFacts => ({
  title: labelInWords(jobLabelOf((name) => namedValue(book, name))) || book.title,
  author: "",
  subject: printFootOf(book),
  language: "en",
  at,
});
