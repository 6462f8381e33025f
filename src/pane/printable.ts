/** What of a workbook can be printed, and what then stands on the pages. */
import { withPictures } from "../pictures/withPictures";
import { RIGSHEET_VERSION } from "../version";
import type { Book, BookPrint, BookSheet } from "../workbooks/book";
import { cardsOf } from "../workbooks/multiRoom/cards/cardsOf";
import {
  paperParts,
  PLAIN_PRINT,
  shownZone,
  type PaperPart,
  type Typesetting,
} from "../workbooks/paperSheet";
import { printFootOf, withPageBreaks, withPrint } from "../workbooks/printFoot";
import { usualSheets } from "../workbooks/usualSheets";
import { copyOf } from "../hosts/file/copy/copyOf";

export interface PrintChoice {
  /** Of the sheet, or what it is called where it is none. */
  readonly name: string;
  /** What a person should know of it before it is printed; empty for nothing. */
  readonly note: string;
  /** Chosen from the first. */
  readonly chosen: boolean;
  /** The customer's page: everything else is the office's and the crew's. */
  readonly forCustomer: boolean;
  /** The crew's cards, which are no sheet. */
  readonly isCards?: true;
}

export interface Printable {
  /** The customer's page first, then the other sheets in their order; none where nothing can be printed. */
  readonly choices: readonly PrintChoice[];
  /** As the workbook has it. */
  readonly paper: BookPrint["paper"];
  /**
   * @param isDraft whether the customer's page is marked as a draft; where a check fails where absent
   * @param at when they are printed
   * @returns what stands on the pages, values only, in the order of the choices
   */
  parts(
    chosen: readonly PrintChoice[],
    paper: BookPrint["paper"],
    setting: Typesetting,
    isDraft?: boolean,
    at?: Date,
  ): PaperPart[];
}

/** @param book a computed workbook, as its grid shows it */
export function printable(book: Book): Printable {
  const ready = withPictures({ ...book, sheets: book.sheets.map(withPrintSetUp) });
  const usual = usualSheets(book);
  const isUsual = (name: string): boolean => usual?.includes(name) ?? false;
  const sheets = ready.sheets
    .filter((sheet) => !sheet.hidden && (sheet.pictures ?? shownZone(sheet)))
    .map(({ name, pictures }): PrintChoice => ({
      name,
      note: pictures ? picturesInWords(pictures) : noteOn(book, name),
      chosen: usual === undefined || isUsual(name),
      forCustomer: isUsual(name),
    }));
  const cards = sheets.length > 0 ? cardsOf(book) : undefined;
  const cardChoice: PrintChoice = {
    name: "Cards for the crew",
    note: "one for each head unit and each outlet, to be cut apart",
    chosen: false,
    forCustomer: false,
    isCards: true,
  };
  return {
    choices: [
      ...sheets.filter(({ forCustomer }) => forCustomer),
      ...sheets.filter(({ forCustomer }) => !forCustomer),
      ...(cards ? [cardChoice] : []),
    ],
    paper: book.sheets.find(({ print }) => print)?.print?.paper ?? PLAIN_PRINT.paper,
    parts: (chosen, paper, setting, isDraft, at = new Date()) => {
      const names = chosen.filter((one) => one !== cardChoice).map(({ name }) => name);
      const facts = {
        now: at,
        version: RIGSHEET_VERSION,
        sheets: names,
        ...(isDraft !== undefined && { isDraft }),
      };
      const copies = [
        ...(names.length > 0 ? [inOrder(copyOf(ready, "sealed", facts), names)] : []),
        ...(cards && chosen.includes(cardChoice) ? [withPrint(cards, { footRight: printFootOf(book) })] : []),
      ];
      return copies
        .map((copy) => withPageBreaks(withPrint(copy, { paper })))
        .flatMap((copy) => paperParts(copy, setting));
    },
  };
}

const inOrder = (book: Book, names: readonly string[]): Book => ({
  ...book,
  sheets: [...book.sheets].sort((a, b) => names.indexOf(a.name) - names.indexOf(b.name)),
});

const withPrintSetUp = (sheet: BookSheet): BookSheet =>
  sheet.print ? sheet : { ...sheet, print: { ...PLAIN_PRINT, footLeft: sheet.name } };

const picturesInWords = (pictures: NonNullable<BookSheet["pictures"]>): string =>
  `${pictures.length === 1 ? "1 picture" : `${pictures.length} pictures`}, each on a page of its own`;

const noteOn = ({ sheets }: Book, name: string): string =>
  sheets.find((sheet) => sheet.name === name)?.print
    ? ""
    : "no print set-up of its own: all that is filled, one page wide";
