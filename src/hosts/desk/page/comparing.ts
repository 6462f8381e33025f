/** Two states of a job side by side, on the screen: what changed, and what each change adds to the price. */
import * as library from "@odoo/o-spreadsheet";
import { compareJobs } from "../../../compare/compareJobs";
import { movedInWords } from "../../../compare/movedInWords";
import { report } from "../../../compare/report";
import type { CellOf } from "../../../compare/sameCell";
import { whyMoved } from "../../../compare/whyMoved";
import type { JobContent } from "../../../jobs/content";
import type { Undoing } from "../../../review/finding";
import { why } from "../../../review/why";
import type { Book } from "../../../workbooks/book";
import type { WorkbookDefinition } from "../../../workbooks/definition";
import { templateOf } from "../../../workbooks/templates";
import { fromModel } from "../../grid/fromModel";
import { toBareDocument } from "../../grid/toDocument";
import { trialsOn } from "../../grid/trialsOn";
import { withResults } from "../../grid/withResults";
import { ask } from "./dialogs";
import { make } from "./dom";
import { saveChangeOrder } from "./orderDialog";
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

/** A book that stays open, for what it would come to with some cells changed. */
export const trials = (book: Book): ((changes: readonly Undoing[]) => Book) =>
  trialsOn(library, new library.Model(toBareDocument(book)), book);

/**
 * @param at a cell of the newer one: what moved it is offered too
 * @throws Error with a sentence where the two can't be compared
 */
export async function showComparison(older: Side, newer: Side, at?: CellOf): Promise<void> {
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
  const chosen = await ask(
    `${older.name} and ${newer.name} compared`,
    [document.adoptNode(main)],
    [
      { label: "Close", value: "" },
      ...(template.id === "multi-room" ? [{ label: "Change order…", value: "order" }] : []),
      ...(at ? [{ label: `What moved ${at.sheet} ${at.cell}?`, value: "moved" }] : []),
    ],
    "desk-compared",
  );
  if (chosen === "order") await saveChangeOrder(older, newer, computed);
  if (chosen === "moved") await showMoved(template.definition, older, newer, at!);
}

/** Which changed inputs moved one cell, and by how much. */
async function showMoved(
  definition: WorkbookDefinition,
  older: Side,
  newer: Side,
  at: CellOf,
): Promise<void> {
  const now = computed(newer.book);
  const { words, format } = why(now, at, { deep: 0 })!;
  const moved = whyMoved(definition, older.book, now, at, computed);
  const [told, ...lines] = moved
    ? movedInWords(words, moved, format)
    : [
        `${older.name} has no cell that stands for ${words}: the row, or the name of its column, is not there.`,
      ];
  await ask(
    `What moved ${words}`,
    [make("p", {}, told!), make("ul", {}, ...lines.map((line) => make("li", {}, line.trim())))],
    [{ label: "Close", value: "" }],
    "desk-compared",
  );
}
