/** The change order to a customer, from two states of a job: what a person says of it, what is to be settled, the file. */
import { changeOrder } from "../../../compare/order/changeOrder";
import type { Book } from "../../../workbooks/book";
import {
  changeOrderBook,
  datesInOrder,
  type OrderWords,
} from "../../../workbooks/changeOrder/changeOrderBook";
import { order } from "../../../workbooks/changeOrder/names";
import { sheetDate } from "../../../workbooks/sheetDate";
import { api } from "./api";
import { ask } from "./dialogs";
import { download, make } from "./dom";

const TITLE = "Change order";

interface Side {
  readonly name: string;
  readonly book: Book;
}

/** @param computed computes a book */
export async function saveChangeOrder(
  older: Side,
  newer: Side,
  computed: (book: Book) => Book,
): Promise<void> {
  const words = await askForWords(older.name);
  if (!words) return;
  const made = changeOrder(older.book, newer.book, words, computed);
  if (made.refused) {
    await ask(TITLE, listed(made.refused), [{ label: "Close", value: "" }]);
    return;
  }
  const { doubts, notes } = made;
  if (doubts.length + notes.length > 0) {
    const answer = await ask(
      doubts.length > 0 ? "To settle before a customer gets it" : "For the office to know",
      listed([...doubts, ...notes]),
      [
        { label: doubts.length > 0 ? "Save it all the same" : "Save", value: "save" },
        { label: "Cancel", value: "" },
      ],
    );
    if (answer !== "save") return;
  }
  const name = `${["change order", words.number]
    .filter(Boolean)
    .join(" ")
    .replace(/[\\/:*?"<>|]+/g, "-")}.xlsx`;
  download(await api.saveXlsx(changeOrderBook(made.paper)), name);
  await ask(
    TITLE,
    [make("p", {}, `Saved as ${name} where the browser puts its downloads.`)],
    [{ label: "Close", value: "" }],
  );
}

const listed = (sentences: readonly string[]): Node[] => [
  make("ul", {}, ...sentences.map((sentence) => make("li", {}, sentence))),
];

/** @returns undefined where the user thinks better of it */
async function askForWords(older: string): Promise<OrderWords | undefined> {
  const field = (id: string, type: "text" | "date") => make("input", { id, className: "desk-input", type });
  const fields = {
    number: field("order-number", "text"),
    reason: field("order-reason", "text"),
    date: field("order-date", "date"),
    until: field("order-until", "date"),
  };
  const trouble = make("p", {});
  for (;;) {
    const answer = await ask(
      TITLE,
      [
        make(
          "p",
          {},
          `What changes against ${older}, the quotation that was accepted, as a page for the customer. Costs and margins stay inside. What is left out here is a blank on it.`,
        ),
        trouble,
        ...Object.entries(fields).flatMap(([key, input]) => [
          make("label", { htmlFor: input.id }, order[key as keyof typeof fields].words.label),
          input,
        ]),
      ],
      [
        { label: "Make it", value: "make" },
        { label: "Cancel", value: "" },
      ],
    );
    if (answer !== "make") return undefined;
    const [number, reason] = [fields.number.value.trim(), fields.reason.value.trim()];
    const [date, until] = [dayIn(fields.date.value), dayIn(fields.until.value)];
    const words: OrderWords = {
      ...(number && { number }),
      ...(reason && { reason }),
      ...(date !== undefined && { date }),
      ...(until !== undefined && { until }),
    };
    const sentence = datesInOrder(words);
    if (sentence === undefined) return words;
    trouble.textContent = sentence;
  }
}

/** Of an input of days, which gives the year first or nothing. */
function dayIn(text: string): number | undefined {
  const [year, month, day] = text.split("-").map(Number);
  return year && month && day ? sheetDate(year, month, day) : undefined;
}
