import path from "node:path";
import { compareJobs, hasChanged } from "../compare/compareJobs";
import { MOST_STEPS } from "../compare/inSteps";
import { report } from "../compare/report";
import { inWords } from "../compare/words";
import { CAPS_IN_WORDS } from "../hosts/file/capsInWords";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { recalculate } from "../hosts/headless/recalculate";
import { recognised } from "../review/recognised";
import type { Book } from "../workbooks/book";
import { templateOf } from "../workbooks/templates";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

const COMPARE_HELP = `rigsheet compare OLD.xlsx NEW.xlsx [--json] [--html REPORT.html]

What changed between two revisions of a job: fields, and rows matched by their
outlet, id or name, wherever they stand. Then how much of the difference in
price each change explains: the changes are applied one after another to the
older job, in the order printed, and the job is computed anew after each, so
the parts add up to the difference exactly. With more than ${MOST_STEPS} changes those of
one table are applied together.

  --json               print everything as JSON, sums in cents
  --html REPORT.html   write a page to read or print

The workbooks are read, never written.
${CAPS_IN_WORDS}

Exit: 0 nothing changed; 1 something did; 2 a file could not be used.`;

export async function compare(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      json: { type: "boolean", default: false },
      html: { type: "string" },
      help: { type: "boolean", default: false },
    },
    "compare",
  );
  if (values.help) {
    console.out(COMPARE_HELP);
    return EXIT.ok;
  }
  const [older, newer, more] = positionals;
  if (older === undefined || newer === undefined || more !== undefined) {
    throw new UsageTrouble(
      "Name two workbooks, the older first: rigsheet compare old.xlsx new.xlsx. See: rigsheet compare --help",
    );
  }
  if (values.html !== undefined && !/\.html?$/i.test(values.html)) {
    throw new UsageTrouble(`--html is "${values.html}"; its name must end in .html`);
  }
  const [olderBook, newerBook] = [await bookAt(older), await bookAt(newer)];
  const template = templateOf(olderBook.template);
  if (!template) {
    throw new FileTrouble(`${older} was not made from a template of Rigsheet, so its rows can't be matched.`);
  }
  if (newerBook.template !== template.id) {
    throw new FileTrouble(
      `${newer} was not made from the template ${template.id} as ${older} was. Compare two revisions of one job.`,
    );
  }
  const comparison = compareJobs(template.definition, olderBook, newerBook, recalculate);
  if (values.html !== undefined) {
    const page = report(comparison, [path.basename(older), path.basename(newer)]);
    await saveAtomically(values.html, new TextEncoder().encode(page));
  }
  console.out(values.json ? JSON.stringify(comparison, null, 2) : inWords(comparison));
  return hasChanged(comparison) ? EXIT.look : EXIT.ok;
}

/** A workbook with the template that it says it is of. @throws FileTrouble that names the file */
export async function bookAt(file: string): Promise<Book> {
  try {
    return recognised(await readXlsx(await fileBytes(file)));
  } catch (error) {
    // Two files are named, so the sentence must say which one it means.
    if (error instanceof FileTrouble && !error.message.includes(file)) {
      throw new FileTrouble(`${file}: ${error.message}`, { cause: error });
    }
    throw error;
  }
}
