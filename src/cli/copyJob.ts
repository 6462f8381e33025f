import { existsSync } from "node:fs";
import path from "node:path";
import { aboutSheetOf } from "../hosts/file/copy/aboutCopy";
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

const COPY_HELP = `rigsheet copy JOB.xlsx --office --out FILE.xlsx
rigsheet copy JOB.xlsx --sealed --out FILE.xlsx [--sheet NAME …]

Recalculates a workbook and writes a copy of it; JOB.xlsx is left as it is.

  --office       for people without Rigsheet: what our functions gave is frozen,
                 set in italics and listed on the sheet About; prices, counts,
                 money and checks go on calculating in any spreadsheet program
  --sealed       values only, for the customer or the file
  --sheet NAME   a sealed copy of this sheet and About only; may be repeated
  --out FILE     where to write
  --force        replace FILE if it exists

A copy of every sheet shows costs and margin. For a customer:
  rigsheet copy job.xlsx --sealed --sheet Quote --out quote.xlsx

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
    throw new UsageTrouble("Name one workbook: rigsheet copy job.xlsx --office --out copy.xlsx");
  }
  if (values.office === values.sealed) {
    throw new UsageTrouble("Say which copy: --office or --sealed. See: rigsheet copy --help");
  }
  if (values.office && values.sheet) {
    throw new UsageTrouble(
      "--sheet is for a sealed copy. In an office copy the sheets calculate from one another, so it holds all of them.",
    );
  }
  const out = outFile(values.out, job, "xlsx", values.force);
  const book = recalculate(await readXlsx(await fileBytes(job)));
  const about = aboutSheetOf(book);
  const sheets = values.sheet && [...(about === undefined ? [] : [about]), ...values.sheet];
  const kind = values.office ? "office" : "sealed";
  const facts = { now: now(), version: RIGSHEET_VERSION, sheets };
  await saveAtomically(out, await writeCopy(book, kind, facts, renderPng));

  const errors = errorCells(book, sheets);
  console.out(`${out}: ${kind} copy`);
  if (kind === "sealed" && !sheets) console.out("It holds every sheet, so costs and margin show.");
  if (errors.length > 0) console.err(errorsInWords(errors));
  return errors.length > 0 ? EXIT.look : EXIT.ok;
}

/** Checks where a command is to write. */
export function outFile(out: string | undefined, job: string, ending: string, force: boolean): string {
  if (!out) throw new UsageTrouble(`There is no --out. Name the file to write: --out copy.${ending}`);
  if (!out.toLowerCase().endsWith(`.${ending}`)) {
    throw new UsageTrouble(`--out is "${out}"; its name must end in .${ending}`);
  }
  if (path.resolve(out) === path.resolve(job)) {
    throw new UsageTrouble(`--out is the workbook itself. Give the copy another name, so that ${job} stays.`);
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
