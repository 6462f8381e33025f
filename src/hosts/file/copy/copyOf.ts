/**
 * Copies without add-in (here: office copies) and of values only (sealed ones), for every host: the same book becomes the
 * same copy in the command, on the desk and in Excel. Nothing here needs Node.
 */
import type { Book } from "../../../workbooks/book";
import { cardsOf } from "../../../workbooks/multiRoom/cards/cardsOf";
import { withTypes } from "../../../workbooks/multiRoom/withTypes";
import { printFootOf, withPageBreaks, withPrint, withPrintFoot } from "../../../workbooks/printFoot";
import { FileTrouble } from "../fileTrouble";
import { aboutSheetOf, headingsOf, withLines } from "./aboutCopy";
import { COPY_NAMES } from "./copyNames";
import { customersPages } from "./customersPages";
import { officeBook } from "./officeBook";
import { sealedBook } from "./sealedBook";

/** An office copy recalculates without Rigsheet; a sealed copy is values only; cards are for the crew to print. */
export type CopyKind = keyof typeof COPY_NAMES;

export interface CopyFacts {
  readonly now: Date;
  /** Of Rigsheet. */
  readonly version: string;
  /** For a sealed copy: the sheets that it holds, by name; all of them where absent. */
  readonly sheets?: readonly string[];
  /** For a sealed copy: whether the customer's page is marked as a draft; where a check fails where absent. */
  readonly isDraft?: boolean;
}

/**
 * @param book a computed workbook
 * @returns the book to hand to `writeXlsx` with `frozen` or `sealed`; an unknown sheet, or no card to make, throws a FileTrouble
 */
export function copyOf(book: Book, kind: CopyKind, { now, version, sheets, isDraft }: CopyFacts): Book {
  if (kind === "cards") return cardBook(book);
  const printed = withPrintFoot(book);
  const made = `made ${now.toISOString().slice(0, 16).replace("T", " ")} UTC by Rigsheet ${version}.`;
  if (kind === "sealed") {
    const wanted = sheets && wantedSheets(printed, sheets);
    const sealed = withPageBreaks(sealedBook(withTypes(customersPages(printed, isDraft)), wanted));
    if (wanted && aboutSheetOf(sealed) === undefined) return sealed;
    return withLines(sealed, `${COPY_NAMES.sealed}, ${made}`, [
      "Values only: nothing in it calculates, and nothing follows a change. The word error stands where a value could not be worked out.",
    ]);
  }
  const { book: office, frozen, locked } = officeBook(printed);
  const pictures = office.sheets.some((sheet) => sheet.pictures?.length);
  return withLines(office, `${COPY_NAMES.office}, ${made}`, [
    ...(frozen.length === 0
      ? ["No cell of it calls Rigsheet, so nothing more was frozen."]
      : [
          "Italic is frozen: the value that a function of Rigsheet had then. It does not follow changes.",
          "All other formulas are alive in any spreadsheet program: prices, counts, money, checks.",
          ...headingsOf(printed, frozen).map((line) => `Frozen on ${line}.`),
        ]),
    ...(locked.length === 0
      ? []
      : [
          "Locked, in italics and without a box: the inputs that frozen cells were worked out from.",
          "Change those in the working workbook, and make a new copy of it.",
          ...headingsOf(printed, locked).map((line) => `Locked on ${line}.`),
        ]),
    ...(pictures ? ["The pictures are as they were then."] : []),
  ]);
}

function cardBook(book: Book): Book {
  const cards = cardsOf(book);
  if (cards) return withPrint(cards, { footRight: printFootOf(book) });
  throw new FileTrouble(
    "There is nothing to make cards of: the workbook has no outlets and no head units. Fill the sheets Rooms and Head units of a multi-room estimate first.",
  );
}

function wantedSheets({ sheets }: Book, wanted: readonly string[]): ReadonlySet<string> {
  return new Set(
    wanted.map((name) => {
      const plain = (one: string): string => one.trim().toLowerCase();
      const found =
        sheets.find((sheet) => sheet.name === name) ??
        sheets.find((sheet) => plain(sheet.name) === plain(name));
      if (found) return found.name;
      throw new FileTrouble(
        `There is no sheet "${name}". The sheets are: ${sheets.map((sheet) => sheet.name).join(", ")}.`,
      );
    }),
  );
}
