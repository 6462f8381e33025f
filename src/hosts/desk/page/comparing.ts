/** Two states of a job side by side, on the screen: what changed, and what each change adds to the price. */
import * as library from "@odoo/o-spreadsheet";
import { compareJobs } from "../../../compare/compareJobs";
import { report } from "../../../compare/report";
import type { JobContent } from "../../../jobs/content";
import type { Book } from "../../../workbooks/book";
import { templateOf } from "../../../workbooks/templates";
import { fromModel } from "../../grid/fromModel";
import { toBareDocument } from "../../grid/toDocument";
import { withResults } from "../../grid/withResults";
import { ask } from "./dialogs";
import { NOWHERE, replayed } from "./replayed";

/** One of the two, as it is called here. */
export interface Side {
  readonly name: string;
  readonly book: Book;
}

export const bookOf = (content: JobContent): Book => fromModel(library, replayed(content, NOWHERE).model);

/** Anew, in a model of its own beside the open job's. */
export const computed = (book: Book): Book =>
  withResults(library, new library.Model(toBareDocument(book)), book);

/** @throws Error with a sentence where the two can't be compared */
export async function showComparison(older: Side, newer: Side): Promise<void> {
  const template = templateOf(newer.book.template);
  if (!template || older.book.template !== newer.book.template)
    throw new Error(
      template
        ? `${older.name} and ${newer.name} were made from different templates, so their rows can't be matched. Open each by itself.`
        : `${newer.name} was not made from one of our templates, so its rows can't be matched. Open each by itself.`,
    );
  const comparison = compareJobs(template.definition, older.book, newer.book, computed);
  const page = new DOMParser().parseFromString(report(comparison, [older.name, newer.name]), "text/html");
  const main = page.querySelector("main")!;
  main.querySelector("h1")?.remove();
  await ask(
    `${older.name} and ${newer.name} compared`,
    [document.adoptNode(main)],
    [{ label: "Close", value: "" }],
    "desk-compared",
  );
}
