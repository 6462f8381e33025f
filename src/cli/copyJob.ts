import { existsSync } from "node:fs";
import path from "node:path";
import { aboutSheetOf } from "../hosts/file/copy/aboutCopy";
import { COPY_NAMES, inSentence } from "../hosts/file/copy/copyNames";
import { writeCopy } from "../hosts/file/copy/writeCopy";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { recalculate } from "../hosts/headless/recalculate";
import { renderPng } from "../hosts/headless/renderPng";
import { RIGSHEET_VERSION } from "../version";
import { isBookError, type Book } from "../workbooks/book";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

const COPY_HELP = `rigsheet copy JOB.xlsx --without-add-in --out FILE.xlsx
rigsheet copy JOB.xlsx --values-only --out FILE.xlsx [--sheet NAME …]

Recalculates a workbook and writes a copy of it; JOB.xlsx is left as it is.

  --without-add-in  for people without Rigsheet: what our functions gave is frozen,
                    set in italics and listed on the sheet About; prices, counts,
                    money and checks go on calculating in any spreadsheet program
  --values-only     for the customer or the file: nothing recalculates
  --sheet NAME      a values-only copy of this sheet and About only; may be repeated
  --out FILE        where to write
  --force           replace FILE if it exists

--office and --sealed are the names that the two copies had before.

A copy of every sheet shows costs and margin. For a customer:
  rigsheet copy job.xlsx --values-only --sheet Quote --out quote.xlsx

Exit: 0 written; 1 written, but some cells show an error; 2 nothing was written.`;

/** @param now when the copy says that it was made */
export async function copyJob(
  words: readonly string[],
  console: Console,
  now: () => Date = () => new Date(),
): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      "without-add-in": { type: "boolean", default: false },
      "values-only": { type: "boolean", default: false },
      office: { type: "boolean", default: false },
      sealed: { type: "boolean", default: false },
      sheet: { type: "string", multiple: true },
      out: { type: "string" },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "copy",
  );
  if (values.help) {
    console.out(COPY_HELP);
    return EXIT.ok;
  }
  const [job, more] = positionals;
  if (job === undefined || more !== undefined) {
    throw new UsageTrouble("Name one workbook: rigsheet copy job.xlsx --without-add-in --out copy.xlsx");
  }
  const withoutAddIn = values["without-add-in"] || values.office;
  if (withoutAddIn === (values["values-only"] || values.sealed)) {
    throw new UsageTrouble("Say which copy: --without-add-in or --values-only. See: rigsheet copy --help");
  }
  if (withoutAddIn && values.sheet) {
    throw new UsageTrouble(
      "--sheet is for a values-only copy. In a copy without add-in the sheets calculate from one another, so it holds all of them.",
    );
  }
  const out = outFile(values.out, job, "xlsx", values.force);
  const book = recalculate(await readXlsx(await fileBytes(job)));
  const about = aboutSheetOf(book);
  const sheets = values.sheet && [...(about === undefined ? [] : [about]), ...values.sheet];
  const kind = withoutAddIn ? "office" : "sealed";
  const facts = { now: now(), version: RIGSHEET_VERSION, sheets };
  await saveAtomically(out, await writeCopy(book, kind, facts, renderPng));

  const errors = errorCells(book, sheets);
  console.out(`${out}: ${inSentence(COPY_NAMES[kind])}`);
  if (kind === "sealed" && !sheets) console.out("It holds every sheet, so costs and margin show.");
  if (errors.length > 0) console.err(errorsInWords(errors));
  return errors.length > 0 ? EXIT.look : EXIT.ok;
}

/** Checks where a command is to write. */
export function outFile(
  out: string | undefined,
  job: string,
  ending: string,
  force: boolean,
  option = "--out",
): string {
  if (!out) throw new UsageTrouble(`There is no ${option}. Name the file to write: ${option} copy.${ending}`);
  if (!out.toLowerCase().endsWith(`.${ending}`)) {
    throw new UsageTrouble(`${option} is "${out}"; its name must end in .${ending}`);
  }
  if (path.resolve(out) === path.resolve(job)) {
    throw new UsageTrouble(
      `${option} is the workbook itself. Give the copy another name, so that ${job} stays.`,
    );
  }
  if (existsSync(out) && !force) {
    throw new UsageTrouble(
      `${out} exists and was left as it is. Choose another name, or add --force to replace it.`,
    );
  }
  return out;
}

/** Where a computed book shows an error: `Rooms!N7`. */
export const errorCells = (book: Book, sheets?: readonly string[]): string[] => {
  const wanted = sheets && new Set(sheets.map((name) => name.toLowerCase()));
  return book.sheets
    .filter(({ name }) => !wanted || wanted.has(name.toLowerCase()))
    .flatMap(({ name, results }) =>
      Object.entries(results).flatMap(([at, result]) => (isBookError(result) ? [`${name}!${at}`] : [])),
    );
};

const SHOWN = 5;

export function errorsInWords(cells: readonly string[]): string {
  const rest = cells.length - SHOWN;
  const list = cells.slice(0, SHOWN).join(", ") + (rest > 0 ? ` and ${rest} more` : "");
  return `${cells.length} ${cells.length === 1 ? "cell shows" : "cells show"} an error: ${list}. rigsheet price says which checks to look at.`;
}
