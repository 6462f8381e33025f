/** A new quote review out of somebody else's quote: a file that was chosen or dropped, or text that was pasted. */
import { startFromEstimate, startFromTyped } from "../../../review/ranges/quoteStart";
import type { Book } from "../../../workbooks/book";
import type { ImportedTable } from "../../../workbooks/imported/table";
import { layOut } from "../../../workbooks/layOut";
import { quoteReview } from "../../../workbooks/quoteReview/definition";
import { quoteInWords } from "../../../workbooks/quoteReview/typed/quoteInWords";
import { readTypedQuote } from "../../../workbooks/quoteReview/typed/readQuote";
import { trials } from "./comparing";
import { ask, chooseFile } from "./dialogs";
import { make } from "./dom";

export const isList = ({ name }: File): boolean => /\.(?:csv|txt|tsv)$/i.test(name);

/** @returns undefined where the user thinks better of it */
export async function askForList(): Promise<Blob | undefined> {
  const text = make("textarea", { id: "quote-list", className: "desk-input", rows: 8, dir: "auto" });
  const answer = await ask(
    "Quote review from a list",
    [
      make("label", { htmlFor: text.id }, "Paste somebody else's quote: its lines and its totals"),
      text,
      make("p", {}, "Or choose a file: .csv, .txt, .tsv or .xlsx. What cannot be read is asked on Review."),
    ],
    [
      { label: "Take the text", value: "text" },
      { label: "Choose a file…", value: "file" },
      { label: "Cancel", value: "" },
    ],
  );
  if (answer === "text") return new Blob([text.value]);
  return answer === "file" ? chooseFile(".csv,.txt,.tsv,.xlsx") : undefined;
}

interface Readers {
  readTables(bytes: Blob): Promise<readonly ImportedTable[]>;
  openXlsx(bytes: Blob): Promise<Book>;
}

/** @throws Error with a sentence where no quote is in it */
export async function quoteFromList(
  list: Blob,
  { readTables, openXlsx }: Readers,
): Promise<{ readonly book: Book; readonly said: string }> {
  if (list instanceof File && /\.xlsx$/i.test(list.name)) {
    const book = await openXlsx(list);
    if (book.template === "multi-room")
      return {
        book: layOut(quoteReview, startFromEstimate(trials(book)([]))),
        said: "Filled from the estimate.",
      };
  }
  const quote = readTypedQuote(await readTables(list));
  if (typeof quote === "string") throw new Error(quote);
  const { read, look, words } = quoteInWords(quote);
  const left = look.length > 0 ? ` Look at ${look.join(" ")}` : "";
  const beside = words.length > 0 ? ` Words without a figure: ${words.length} lines.` : "";
  return { book: layOut(quoteReview, startFromTyped(quote)), said: `Read: ${read}.${left}${beside}` };
}
