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
import { ORDER_HELP, ORDER_OPTIONS, orderAsked, writeOrder } from "./orderOfChanges";

const COMPARE_HELP = `rigsheet compare OLD.xlsx NEW.xlsx [--json] [--html REPORT.html]
rigsheet compare OLD.xlsx NEW.xlsx --change-order CHANGE.xlsx [--number … …]

What changed between two revisions of a job: fields, and rows matched by their
outlet, id or name, wherever they stand. Then how much of the difference in
price each change explains: the changes are applied one after another to the
older job, in the order printed, and the job is computed anew after each, so
the parts add up to the difference exactly. With more than ${MOST_STEPS} changes those of
one table are applied together. Then what is otherwise in levels, volts, user bands and
checks. What is only called otherwise takes one line, rows that moved one note.

  --json               print everything as JSON, sums in cents
  --html REPORT.html   write a page to read or print
${ORDER_HELP}

The workbooks are read, never written.
${CAPS_IN_WORDS}

Exit: 0 nothing changed; 1 something did; 2 a file could not be used. With
--change-order: 0 written; 1 there is none to write, or something to settle first.`;

export async function compare(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      json: { type: "boolean", default: false },
      html: { type: "string" },
      ...ORDER_OPTIONS,
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
  const toCustomer = values["change-order"];
  if (toCustomer === undefined && (values.number ?? values.reason ?? values.date ?? values["valid-until"]))
    throw new UsageTrouble("--number, --reason, --date and --valid-until are said of a --change-order.");
  if (toCustomer !== undefined && (values.json || values.html !== undefined))
    throw new UsageTrouble(
      "--change-order is for the customer, --json and --html for the office: ask for them one after the other.",
    );
  const asked =
    toCustomer === undefined
      ? undefined
      : orderAsked({ ...values, "change-order": toCustomer }, [older, newer]);
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
  if (asked) {
    if (template.id !== "multi-room")
      throw new FileTrouble(
        `A change order is made of two multi-room estimates; ${older} was made from the template ${template.id}.`,
      );
    const [one, other] = [await fileBytes(older), await fileBytes(newer)];
    if (Buffer.compare(one, other) === 0)
      throw new FileTrouble(`${older} and ${newer} are the same file, so there is nothing to order.`);
    return writeOrder(olderBook, newerBook, asked, console);
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
