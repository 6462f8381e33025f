/** What a trainee's sheet says: whose it is, and what stands in its answer cells. */
import { parseRange, address } from "../workbooks/address";
import type { Book } from "../workbooks/book";
import { namedValue } from "../workbooks/named";
import { answerName, givenName, SHEET_CODE, SHEET_TEMPLATE } from "./answerName";
import { TRAINING_VERSION, type Drawn } from "./drawNumbers";
import type { AnySet } from "./exercise";

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
    : { trouble: "Its code is gone, so it is nobody's sheet." };
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

/** @returns the raw content of a question's answer cell */
export const answerIn =
  (book: Book) =>
  (key: string): unknown =>
    namedValue(book, answerName(key));

/** Whether a function of ours answered instead of the trainee. */
export function answeredByUs(book: Book, key: string): boolean {
  const found = book.names.find(({ name }) => name === answerName(key));
  const zone = found && parseRange(found.range);
  const cells = book.sheets.find(({ name }) => name === found?.sheet)?.cells;
  const formula = zone && cells?.[address(zone.top, zone.left)]?.formula;
  return formula !== undefined && /\bRIG\./i.test(formula);
}
