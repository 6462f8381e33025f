import { aboutSheetOf } from "../hosts/file/copy/aboutCopy";
import { copyOf } from "../hosts/file/copy/copyOf";
import { failingInWords } from "../workbooks/failingCount";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { formattedAs } from "../hosts/grid/asWritten";
import { loadLibrary } from "../hosts/headless/loadLibrary";
import { recalculate } from "../hosts/headless/recalculate";
import { withPictures } from "../pictures/withPictures";
import { RIGSHEET_VERSION } from "../version";
import type { Book } from "../workbooks/book";
import { hiddenOnPaper } from "../workbooks/hiddenOnPaper";
import { namedValue } from "../workbooks/named";
import { paperParts } from "../workbooks/paperSheet";
import { withPageBreaks, withPrint } from "../workbooks/printFoot";
import { WRITING_FIELD, writingOf } from "../workbooks/typed/writing";
import { usualSheets } from "../workbooks/usualSheets";
import { EXIT, UsageTrouble, type Console } from "./console";
import { errorCells, errorsInWords, outFile } from "./copyJob";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { pdfWriter } from "./pdfWriter";

const PRINT_HELP = `rigsheet print JOB.xlsx --out FILE.pdf [--sheet NAME …] [--paper a4|letter]
rigsheet print JOB.xlsx --cards --out FILE.pdf [--paper a4|letter]

Recalculates a workbook and prints sheets of it into a PDF, one page wide, with
the head row on every page, and page, revision and date at the foot.
JOB.xlsx is left as it is. Figures are written as Site says.

  --sheet NAME   print this sheet; may be repeated; "all" prints every one.
                 Without it the quote, or all sheets where there is none
  --cards        print a card for each head unit and each outlet instead, to be
                 cut apart: predicted values, room for the measured ones
  --paper a4     or letter
  --anyway       the customer's page is no draft although checks fail; without
                 it a quote of such a job says at its head that it is one
  --out FILE     where to write
  --force        replace FILE if it exists

  rigsheet print job.xlsx --out quote.pdf
  rigsheet print job.xlsx --sheet Alignment --sheet Commissioning --out crew.pdf
  rigsheet print job.xlsx --cards --paper letter --out cards.pdf

Exit: 0 printed; 1 printed, but the quote is a draft, some cells show the word
error, or hold signs that the type of the page does not have; 2 nothing was
written.`;

const PAPERS = ["a4", "letter"] as const;
/** Where the figures of the cards come from. */
const BEHIND_CARDS = ["Commissioning", "Head units", "Alignment"];

export async function printJob(
  words: readonly string[],
  console: Console,
  clock: () => Date = () => new Date(),
): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      sheet: { type: "string", multiple: true },
      cards: { type: "boolean", default: false },
      paper: { type: "string", default: "a4" },
      out: { type: "string" },
      anyway: { type: "boolean", default: false },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "print",
  );
  if (values.help) {
    console.out(PRINT_HELP);
    return EXIT.ok;
  }
  const [job, more] = positionals;
  if (job === undefined || more !== undefined) {
    throw new UsageTrouble("Name one workbook: rigsheet print job.xlsx --out quote.pdf");
  }
  const paper = PAPERS.find((one) => one === values.paper.toLowerCase());
  if (!paper) throw new UsageTrouble(`--paper is "${values.paper}"; it can be ${PAPERS.join(" or ")}.`);
  const out = outFile(values.out, job, "pdf", values.force);

  if (values.cards && values.sheet) {
    throw new UsageTrouble("Cards are printed by themselves: leave out --sheet, or leave out --cards.");
  }
  const read = recalculate(await readXlsx(await fileBytes(job)));
  const book = values.cards ? read : withPictures(read);
  const sheets = values.cards ? undefined : sheetsToPrint(book, values.sheet);
  // A workbook without an About sheet would get a page that says only that it is a copy.
  const printed =
    sheets ?? (aboutSheetOf(book) === undefined ? book.sheets.map(({ name }) => name) : undefined);
  const at = clock();
  const facts = { now: at, version: RIGSHEET_VERSION, sheets: printed };
  const copied = (isDraft: boolean | undefined): Book =>
    withPageBreaks(
      withPrint(
        copyOf(book, values.cards ? "cards" : "sealed", {
          ...facts,
          ...(isDraft !== undefined && { isDraft }),
        }),
        { paper },
      ),
    );
  const copy = copied(values.anyway ? false : undefined);
  const first = await pdfOf(copy, book, at);
  const { unset } = first;
  // Nobody signs for what is not on the page.
  const { bytes } = unset === "" || values.cards ? first : await pdfOf(copied(true), book, at);
  await saveAtomically(out, bytes);

  const errors = errorCells(book, values.cards ? BEHIND_CARDS : sheets);
  console.out(
    `${out}: ${values.cards ? copy.sheets.map(({ name }) => name).join(", ") : (sheets?.join(", ") ?? "all sheets")}`,
  );
  if (errors.length > 0) console.err(errorsInWords(errors));
  if (unset !== "") console.err(unset);
  const draft = values.cards || values.anyway ? "" : draftInWords(book, copy);
  if (draft !== "") console.err(draft);
  return errors.length > 0 || unset !== "" || draft !== "" ? EXIT.look : EXIT.ok;
}

/**
 * @param copy what is printed
 * @param book of which it is a copy
 * @returns the pages, and in words what of their text could not be set
 */
async function pdfOf(
  copy: Book,
  book: Book,
  at: Date,
): Promise<{ readonly bytes: Uint8Array; readonly unset: string }> {
  const { sheetsFacts, sheetsPdf, type, unsetAtHome, unsetInWords } = await pdfWriter();
  const library = loadLibrary();
  const writing = writingOf(namedValue(book, WRITING_FIELD));
  const parts = paperParts(hiddenOnPaper(copy), {
    formatted: (value, format) => formattedAs(library, value, format, writing),
    textWidth: (...line) => type.lineWidth(...line),
  });
  const { bytes, unset } = await sheetsPdf(parts, sheetsFacts(book, at), type);
  return { bytes, unset: unsetInWords(unsetAtHome(unset, book)) };
}

/** @returns why the customer's page among what is printed is a draft; empty where it is none, or there is none */
function draftInWords(book: Book, { sheets }: Book): string {
  const failing = failingInWords(book);
  const [page] = usualSheets(book) ?? [];
  return failing === "" || !sheets.some(({ name }) => name === page)
    ? ""
    : `${page} is marked as a draft: ${failing}. See Checks, or print with --anyway.`;
}

/** @returns undefined for all of them */
function sheetsToPrint(book: Book, wanted: readonly string[] | undefined): string[] | undefined {
  if (wanted?.some((name) => name.toLowerCase() === "all")) return undefined;
  return wanted ? [...wanted] : usualSheets(book);
}
