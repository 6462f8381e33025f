/**
 * The trial's own sheet: made under a name that is free, known from then on by
 * Excel's own id and by a mark in its first cell, and taken away again.
 */
import { areaOf } from "../../../formula/areaOf";
import { HostTrouble } from "../../../pane/host";
import { TEMPLATE, TEMPLATE_VERSION } from "../../file/documentProperties";
import { hasApi } from "../inExcel";
import { refusalOf } from "./steps";

const NAME = "Rigsheet trial";
/** In A1; beside it what of a demonstration is in the workbook just now. */
const MARK = "A trial of Rigsheet runs on this sheet; it goes away by itself.";
const MOST_SHEETS = 99;

export interface OwnSheet {
  readonly id: string;
  readonly name: string;
  /** The name that it would have had, where that was taken. */
  readonly wanted: string;
}

export async function addOwnSheet(): Promise<OwnSheet> {
  return Excel.run(async (context) => {
    const { worksheets, protection } = context.workbook;
    worksheets.load("items/name");
    if (hasApi("1.7")) protection.load("protected");
    await context.sync();
    if (hasApi("1.7") && protection.protected)
      throw new HostTrouble(
        "the workbook's structure is protected, so no sheet can be added; try it in a new workbook",
      );
    const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
    const name = [NAME, ...Array.from({ length: MOST_SHEETS }, (_, index) => `${NAME} (${index + 2})`)].find(
      (one) => !taken.has(one.toLowerCase()),
    );
    if (name === undefined) throw new HostTrouble(`there are too many sheets named “${NAME}”`);
    const sheet = worksheets.add(name);
    sheet.getRange("A1").values = [[MARK]];
    sheet.load("id");
    await context.sync();
    return { id: sheet.id, name, wanted: NAME };
  });
}

/** Sheets of a demonstration that are in the workbook, by name and Excel's own id. */
export type Inserted = readonly (readonly [name: string, id: string])[];

/** Kept on the trial's sheet, for a trial that is broken off. */
export const noteInserted = (own: string, inserted: Inserted): Promise<void> =>
  Excel.run(async (context) => {
    const cell = context.workbook.worksheets.getItem(own).getRange("B1");
    cell.values = [[inserted.length === 0 ? "" : `'${JSON.stringify(inserted)}`]];
    await context.sync();
  });

/** @returns whether all of it is gone; what no longer has both its name and its id is somebody's and stays */
export async function removeInserted(context: Excel.RequestContext, inserted: Inserted): Promise<boolean> {
  const { worksheets, names, properties } = context.workbook;
  worksheets.load("items/name,items/id");
  names.load("items/name,items/formula");
  await context.sync();
  const ours = worksheets.items.filter(({ name, id }) =>
    inserted.some(([its, known]) => name === its && id === known),
  );
  const sheets = new Set(ours.map(({ name }) => name));
  for (const { name, formula } of names.items)
    if (sheets.has(areaOf(String(formula))?.sheet ?? "")) names.getItemOrNullObject(name).delete();
  for (const sheet of ours) sheet.delete();
  // Before them there were none, or no demonstration would have been put in.
  const marks = [TEMPLATE, TEMPLATE_VERSION].map((key) => properties.custom.getItemOrNullObject(key));
  await context.sync();
  if (ours.length > 0) for (const mark of marks) if (!mark.isNullObject) mark.delete();
  await context.sync();
  return ours.length === inserted.length;
}

/** What a trial that was broken off has left, taken away. @returns its sheets' names */
export async function removeEarlier(): Promise<string[]> {
  return Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    const likely = worksheets.items.filter(({ name }) => name.startsWith(NAME));
    const heads = likely.map((sheet) => ({ sheet, head: sheet.getRange("A1:B1") }));
    for (const { head } of heads) head.load("values");
    await context.sync();
    const removed: string[] = [];
    for (const { sheet, head } of heads) {
      const [mark, inserted] = head.values[0]!.map(String);
      if (mark !== MARK) continue;
      if (inserted) await removeInserted(context, insertedFrom(inserted));
      removed.push(sheet.name);
      await deleteGuarded(context, sheet);
    }
    return removed;
  });
}

function insertedFrom(text: string): Inserted {
  try {
    const read: unknown = JSON.parse(text);
    return Array.isArray(read) ? (read as Inserted) : [];
  } catch {
    return [];
  }
}

async function deleteGuarded(context: Excel.RequestContext, sheet: Excel.Worksheet): Promise<void> {
  const { protection } = sheet;
  protection.load("protected");
  await context.sync();
  if (protection.protected) protection.unprotect();
  sheet.delete();
  await context.sync();
}

/** Whether it is still there, whatever its name is now. */
export const ownSheetStands = ({ id }: OwnSheet): Promise<boolean> =>
  Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(id);
    sheet.load("name");
    await context.sync();
    return !sheet.isNullObject;
  });

/** Only where the mark is there. @returns what to do where it did not work */
export async function removeOwnSheet(own: OwnSheet): Promise<string | undefined> {
  try {
    return await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(own.id);
      sheet.load("name");
      await context.sync();
      if (sheet.isNullObject) return undefined;
      const mark = sheet.getRange("A1");
      mark.load("values");
      await context.sync();
      if (mark.values[0]![0] !== MARK)
        return `the mark on the sheet “${sheet.name}” is gone, so it was left: delete it by hand if it is the trial's`;
      await deleteGuarded(context, sheet);
      return undefined;
    });
  } catch (error) {
    return `the sheet “${own.name}” could not be deleted (${refusalOf(error)}): remove it by hand (right click, Delete)`;
  }
}
