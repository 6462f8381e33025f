import { movedInWords } from "../compare/movedInWords";
import { whyMoved, type Moved } from "../compare/whyMoved";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import { address } from "../formula/address";
import { readReference } from "../formula/reference";
import { recognised } from "../review/recognised";
import { why, type Reason } from "../review/why";
import { whyInWords } from "../review/whyInWords";
import type { Book } from "../workbooks/book";
import { templateOf } from "../workbooks/templates";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { bookAt } from "./compare";
import { readOptions } from "./options";

const WHY_HELP = `rigsheet why JOB.xlsx "SHEET!CELL" [--deep STEPS] [--most ENTRIES] [--json]
rigsheet why JOB.xlsx "SHEET!CELL" --since OLDER.xlsx [--json]

Recalculates the workbook and tells what the cell is worked out from, in the
sheet's own words and with values, step by step. With --since it tells which
changed inputs moved the cell since an earlier revision of the job, and by how
much: the changes are applied one after another to the older job, as compare
does, and the cell is read after each. The files are read, never written.

  --deep STEPS     so many steps from the cell; 2 if it is left out, at most 20
  --most ENTRIES   so many of a list's largest entries; 3 if it is left out, at
                   most 1000
  --since OLDER    the earlier revision; a row is found there by its own name
  --json           the same as data

For example: rigsheet why job.xlsx "Quote!B23"

Exit: 0 told; 2 the file or the cell could not be used.`;

const MOST_STEPS = 20;
const MOST_ENTRIES = 1000;

export async function whyCell(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      deep: { type: "string" },
      most: { type: "string" },
      since: { type: "string" },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "why",
  );
  if (values.help) {
    console.out(WHY_HELP);
    return EXIT.ok;
  }
  const [file, at, more] = positionals;
  if (file === undefined || at === undefined || more !== undefined)
    throw new UsageTrouble(
      'Name one workbook and one cell: rigsheet why job.xlsx "Quote!B23". See: rigsheet why --help',
    );
  const deep = count("--deep", values.deep, MOST_STEPS);
  const most = count("--most", values.most, MOST_ENTRIES);
  const cell = placeIn(at);
  const read = recognised(await readXlsx(await fileBytes(file)));
  const book = recalculate(read);
  const reason = why(book, cell, { ...(deep && { deep }), ...(most && { most }) });
  if (!reason)
    throw new UsageTrouble(
      `${file} has no sheet "${cell.sheet}". Its sheets: ${book.sheets.map(({ name }) => name).join(", ")}.`,
    );
  if (values.since !== undefined) {
    const moved = movedSince(await bookAt(values.since), values.since, book, reason);
    const { words: label, format } = reason;
    console.out(values.json ? JSON.stringify(moved, null, 2) : movedInWords(label, moved, format).join("\n"));
    return EXIT.ok;
  }
  console.out(values.json ? JSON.stringify(reason, null, 2) : whyInWords(reason).join("\n"));
  return EXIT.ok;
}

/** @throws FileTrouble where the two are no revisions of one job, or the older one has no such cell */
function movedSince(older: Book, file: string, book: Book, { sheet, cell, words }: Reason): Moved {
  const template = templateOf(book.template);
  if (!template)
    throw new FileTrouble(
      "The workbook was not made from a template of Rigsheet, so its rows can't be matched.",
    );
  if (older.template !== template.id)
    throw new FileTrouble(
      `${file} was not made from the template ${template.id} as the other was. Name an earlier revision of the same job.`,
    );
  const moved = whyMoved(template.definition, older, book, { sheet, cell }, recalculate);
  if (!moved)
    throw new FileTrouble(
      `${file} has no cell that stands for ${words}: the row, or the name of its column, is not there.`,
    );
  return moved;
}

function placeIn(written: string): { sheet: string; cell: string } {
  const { sheet, lastSheet, file, from, to } = readReference(written.trim()) ?? {};
  const { row, column } = from ?? {};
  const isOne = !to && file === undefined && lastSheet === undefined;
  if (!isOne || sheet === undefined || row === undefined || column === undefined)
    throw new UsageTrouble(
      `"${written}" is not one cell of a sheet. Write it as "Quote!B23", or "'Head units'!C5" where the sheet's name has a blank.`,
    );
  return { sheet, cell: address(row, column) };
}

function count(option: string, text: string | undefined, most: number): number | undefined {
  if (text === undefined) return undefined;
  const number = /^\d{1,6}$/.test(text) ? Number(text) : Number.NaN;
  if (!(number >= 1 && number <= most))
    throw new UsageTrouble(`${option} is "${text}"; it takes a whole number from 1 to ${most}.`);
  return number;
}
