/**
 * Builds a book's sheets in the open workbook, where Excel does not take its
 * file. Everything goes by whole ranges, so the round trips do not depend on
 * the number of rows.
 *
 * Sheets are left unprotected: of the calls that this needs, protecting is the
 * one that would clear what the person can take back (Office add-ins
 * documentation, "Undo support with the Excel JavaScript API"). Every cell
 * carries its lock, so that Review, Protect Sheet does the rest.
 */
import { HostTrouble } from "../../pane/host";
import type { Book, BookSheet } from "../../workbooks/book";
import { TEMPLATE, TEMPLATE_VERSION } from "../file/documentProperties";
import { troubles, type OwnWords } from "./excelTrouble";
import { addInputRules, addMarks } from "./inputRules";
import { hasApi, type Change } from "./inExcel";
import { paintLooks } from "./paintLooks";
import { setFrame } from "./sheetFrame";
import { sheetMatrix } from "./sheetMatrix";

/** Excel on the web takes 5 MB in one request; a cell of a matrix is about ten bytes. */
const CELLS_PER_REQUEST = 200_000;
/** Notes came to the programming interface with this set. */
const NOTES_API = "1.18";

export const buildingBook = (book: Book): Change<void, void> => ({
  plan: (context) => refuseClashes(context, book),
  carryOut: (context) => buildBook(context, book),
  takeBack: (context) => takeBookBack(context, book),
  left: () => bookLeft(book),
  words: () => structureWords,
});

/** What of a book may be left, in words. */
export const bookLeft = ({ sheets }: Book): string =>
  `the sheets ${sheets.map(({ name }) => `“${name}”`).join(", ")} may stand there in part, and may be deleted`;

/** A workbook that takes no sheets says so by either code. */
export const structureWords: OwnWords = {
  AccessDenied: troubles.structure,
  InvalidOperation: troubles.structure,
};

/** What stands there under its names is this try's: nothing did before. */
export async function takeBookBack(context: Excel.RequestContext, { sheets, names }: Book): Promise<void> {
  const { workbook } = context;
  const begun = [
    ...names.map(({ name }) => workbook.names.getItemOrNullObject(name)),
    ...sheets.map(({ name }) => workbook.worksheets.getItemOrNullObject(name)),
    ...[TEMPLATE, TEMPLATE_VERSION].map((key) => workbook.properties.custom.getItemOrNullObject(key)),
  ];
  await context.sync();
  for (const one of begun) if (!one.isNullObject) one.delete();
  await context.sync();
}

async function buildBook(context: Excel.RequestContext, book: Book): Promise<void> {
  const { workbook, application } = context;
  application.suspendApiCalculationUntilNextSync();
  application.suspendScreenUpdatingUntilNextSync();
  const targets = new Map(book.sheets.map(({ name }) => [name, workbook.worksheets.add(name)]));
  for (const { name, sheet, range } of book.names) {
    workbook.names.add(name, targets.get(sheet)!.getRange(range));
  }
  addProperties(workbook, book);
  let queued = 0;
  for (const sheet of book.sheets) {
    queued += fillSheet(targets.get(sheet.name)!, sheet, book);
    if (queued < CELLS_PER_REQUEST) continue;
    await context.sync();
    application.suspendApiCalculationUntilNextSync();
    queued = 0;
  }
  targets.get(book.sheets[0]!.name)!.activate();
  await context.sync();
}

/** Queues what says of the workbook that it is ours. */
export function addProperties({ properties }: Excel.Workbook, { template, templateVersion }: Book): void {
  properties.custom.add(TEMPLATE, template);
  properties.custom.add(TEMPLATE_VERSION, templateVersion);
}

/** Nothing of the person's is overwritten or renamed. */
export async function refuseClashes(context: Excel.RequestContext, book: Book): Promise<void> {
  const { worksheets, names, protection } = context.workbook;
  worksheets.load("items/name");
  names.load("items/name");
  protection.load("protected");
  await context.sync();
  if (protection.protected) throw new HostTrouble(troubles.structure());
  const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  const named = new Set(names.items.map(({ name }) => name.toLowerCase()));
  const sheets = book.sheets.map(({ name }) => name).filter((name) => taken.has(name.toLowerCase()));
  const clashing = book.names.map(({ name }) => name).filter((name) => named.has(name.toLowerCase()));
  if (sheets.length + clashing.length > 0) throw new HostTrouble(troubles.taken(sheets, clashing));
}

/** @returns the cells that were queued */
function fillSheet(target: Excel.Worksheet, sheet: BookSheet, { looks }: Book): number {
  const matrix = sheetMatrix(sheet, looks);
  let cells = 0;
  if (matrix) {
    const range = target.getRange(matrix.range);
    // Formats last: the apostrophe that keeps a name text is understood in an ordinary cell, and what it does in
    // a cell of text is not documented. From then on whatever is typed there stays text.
    range.formulas = matrix.formulas;
    range.numberFormat = matrix.numberFormats;
    paintLooks(target, sheet, looks, matrix.range);
    cells = matrix.formulas.length * matrix.formulas[0]!.length * 2;
  }
  addInputRules(target, sheet);
  addMarks(target, sheet, looks);
  setFrame(target, sheet);
  if (hasApi(NOTES_API)) {
    for (const [at, { note }] of Object.entries(sheet.cells)) if (note) target.notes.add(at, note);
  }
  return cells;
}
