/** A new quote review out of somebody else's quote: a file that was chosen or dropped, or text that was pasted. */
import { startFromEstimate, startFromTyped } from "../review/ranges/quoteStart";
import type { Book } from "../workbooks/book";
import { layOut } from "../workbooks/layOut";
import { quoteReview } from "../workbooks/quoteReview/definition";
import { quoteInWords } from "../workbooks/quoteReview/typed/quoteInWords";
import { readTypedQuote } from "../workbooks/quoteReview/typed/readQuote";
import { HostTrouble, type PaneHost } from "./host";

export const REVIEW_SHEET = "Review";
export const LIST_FILES = ".csv,.txt,.tsv,.xlsx";
export const PASTE_LIST = "Paste somebody else's quote: its lines and its totals";

/** An invented quote, with two slips to find, to see what is read. */
export const EXAMPLE_LIST = `Quotation (invented) for a guest house, 6 outlets
Part;Quantity;Unit;Price each;Sum
dish 85 cm with mount;1;piece;118.00;118.00
head unit, 8 bands;1;piece;131.00;131.00
6-way splitter;1;piece;14.80;14.80
indoor cable;120;m;0.62;74.40
outlet, single;6;piece;6.40;38.40
connector;16;piece;0.72;11.25
fit and measure;9;h;52.00;468.00
Net;;;;855.85
Tax 20 %;;;;171.17
Total;;;;1,072.02
`;

/**
 * @param name of its file; empty for text that was pasted
 * @throws HostTrouble with a sentence where no quote is in it
 */
export async function quoteFromList(
  { bytes, name }: { readonly bytes: Uint8Array; readonly name: string },
  { readTables, openFile, compute }: Pick<PaneHost, "readTables" | "openFile" | "compute">,
): Promise<{ readonly book: Book; readonly said: string }> {
  if (/\.xlsx$/i.test(name)) {
    const book = await openFile(bytes);
    if (book.template === "multi-room")
      return {
        book: layOut(quoteReview, startFromEstimate(compute ? compute(book) : book)),
        said: "Filled from the estimate.",
      };
  }
  const quote = readTypedQuote(await readTables(bytes));
  if (typeof quote === "string") throw new HostTrouble(quote);
  const { read, look, words } = quoteInWords(quote);
  const left = look.length > 0 ? ` Look at ${look.join(" ")}` : "";
  const beside = words.length > 0 ? ` Words without a figure: ${words.length} lines.` : "";
  return { book: layOut(quoteReview, startFromTyped(quote)), said: `Read: ${read}.${left}${beside}` };
}
