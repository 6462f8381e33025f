/** What a trainee's sheet says: whose it is, and what stands in its answer cells. */
import { callsUs } from "../formula/callsUs";
import { address, parseAddress } from "../formula/address";
import type { Book, BookSheet } from "../workbooks/book";
import { namedValue, placeOfName } from "../workbooks/named";
import { answerName, givenName, SHEET_CODE, SHEET_TEMPLATE, SHEET_TRAINEE } from "./answerName";
import { TRAINING_VERSION, type Drawn } from "./drawNumbers";
import type { AnySet } from "./exercise";
import type { TypedCell } from "./typedCell";

/** The unit, the gap and the worked example. */
const COLUMNS_BESIDE = 7;

/** The name that stands in the sheet; a trainee may have written another. */
export const nameIn = (book: Book): string => String(namedValue(book, SHEET_TRAINEE) ?? "").trim();

/** @returns the code of a trainee's sheet; a sentence where the book is none, or of another version */
export function codeOf(book: Book): { readonly code: string } | { readonly trouble: string } {
  if (book.template !== SHEET_TEMPLATE) return { trouble: "It is no trainee's sheet of Rigsheet's." };
  if (book.templateVersion !== TRAINING_VERSION) {
    return {
      trouble: `It was made by version ${book.templateVersion || "unknown"} of the exercises, which draws other numbers; this is version ${TRAINING_VERSION}. Mark it with the Rigsheet that made it.`,
    };
  }
  const code = namedValue(book, SHEET_CODE);
  return typeof code === "string" && code !== ""
    ? { code }
    : {
        trouble: `Its code is gone; the name in it is "${nameIn(book).slice(0, 40)}". Mark it by hand with the key.`,
      };
}

/** @returns what is wrong with the sheet's own figures, where they are not those that were handed out */
export function changedFigures(set: AnySet, { numbers }: Drawn, book: Book): string | undefined {
  for (const [index, question] of set.questions.entries()) {
    if (!book.names.some(({ name }) => name === answerName(question.key))) {
      return `The answer cell of question ${index + 1} is gone.`;
    }
    for (const [at, { label, value }] of question.given(numbers as never).entries()) {
      const stands = namedValue(book, givenName(question.key, at));
      if (stands !== value) {
        const now =
          stands === undefined ? "nothing" : typeof stands === "object" ? stands.error : String(stands);
        return `Its figures were changed: "${label}" of question ${index + 1} is ${now.slice(0, 40)}, handed out was ${value}.`;
      }
    }
  }
  return undefined;
}

/** @returns what stands in a question's answer cell */
export const answerIn =
  (book: Book) =>
  (key: string): TypedCell => {
    const place = placeOfName(book, answerName(key));
    const cell = place && book.sheets.find(({ name }) => name === place.sheet)?.cells[place.at];
    const value = namedValue(book, answerName(key));
    return {
      ...(value !== undefined && { value }),
      ...(cell?.formula !== undefined && { formula: cell.formula }),
      ...(cell?.note !== undefined && { note: cell.note }),
      format: (cell?.look === undefined ? undefined : book.looks[cell.look]?.format) ?? "General",
    };
  };

/** @returns what was typed in the row of an answer cell, beside it: the cell and its content */
export function besideAnswer(book: Book, handedOut: Book, key: string): string | undefined {
  const find = (of: Book): { row: number; column: number; cells: BookSheet["cells"] } | undefined => {
    const place = placeOfName(of, answerName(key));
    const cells = place && of.sheets.find(({ name }) => name === place.sheet)?.cells;
    const at = place && parseAddress(place.at);
    return cells && at ? { ...at, cells } : undefined;
  };
  const [now, before] = [find(book), find(handedOut)];
  if (!now || !before) return undefined;
  for (let right = 1; right <= COLUMNS_BESIDE; right++) {
    const where = address(now.row, now.column + right);
    const value = now.cells[where]?.value;
    const was = before.cells[address(before.row, before.column + right)]?.value;
    if (value !== undefined && value !== "" && value !== was)
      return `${where} holds ${String(value).slice(0, 40)}`;
  }
  return undefined;
}

/** @returns what was typed over on a sheet whose answers are all empty: a cell and its content */
export function typedOver(book: Book, handedOut: Book): string | undefined {
  const [before] = handedOut.sheets;
  const now = book.sheets.find(({ name }) => name === before!.name);
  const where = Object.keys(before!.cells).find((at) => {
    const was = before!.cells[at]!;
    const value = now?.cells[at]?.value;
    return was.formula === undefined && was.value !== undefined && value !== undefined && value !== was.value;
  });
  return (
    where && `${where} holds ${String(now!.cells[where]!.value).slice(0, 40)}, which was not handed out so`
  );
}

/** Whether a function of ours answered instead of the trainee. */
export const isAnsweredByOurFunction = (book: Book, key: string): boolean =>
  callsUs(answerIn(book)(key).formula ?? "");
