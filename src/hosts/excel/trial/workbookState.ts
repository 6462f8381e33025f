/** The person's workbook before and after: what the trial must leave as it was. Addresses and names only, no contents. */
import { cellsOf } from "../cellsOf";
import { bad, refusalOf, good, look, type Found } from "./steps";

export interface WorkbookState {
  /** Each sheet with the address of what is used on it. */
  readonly sheets: readonly string[];
  readonly names: readonly string[];
  readonly properties: readonly string[];
  readonly calculation: string;
  /** What is selected, with its sheet; nothing where a picture or several ranges are. */
  readonly selection: { readonly sheet: string; readonly range: string | undefined };
}

export const workbookState = (without?: string): Promise<WorkbookState> =>
  Excel.run(async (context) => {
    const { application, workbook } = context;
    const { worksheets, names, properties } = workbook;
    const active = worksheets.getActiveWorksheet();
    active.load("id");
    worksheets.load("items/name,items/id");
    names.load("items/name,items/formula");
    properties.custom.load("items/key");
    application.load("calculationMode");
    await context.sync();
    const theirs = worksheets.items.filter(({ id }) => id !== without);
    const used = theirs.map((sheet) => sheet.getUsedRangeOrNullObject(true));
    for (const range of used) range.load("address");
    await context.sync();
    return {
      sheets: theirs.map(
        ({ name }, index) => `${name}: ${used[index]!.isNullObject ? "empty" : used[index]!.address}`,
      ),
      names: names.items.map(({ name, formula }) => `${name} ${String(formula)}`).sort(),
      properties: properties.custom.items.map(({ key }) => key).sort(),
      calculation: application.calculationMode,
      selection: { sheet: active.id, range: await selectedRange(context) },
    };
  });

async function selectedRange(context: Excel.RequestContext): Promise<string | undefined> {
  try {
    const range = context.workbook.getSelectedRange();
    range.load("address");
    await context.sync();
    return cellsOf(range);
  } catch {
    return undefined;
  }
}

/** Gives the person's sheet and selection back. */
export async function giveBack({ selection }: WorkbookState): Promise<void> {
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(selection.sheet);
    sheet.load("name");
    await context.sync();
    if (sheet.isNullObject) return;
    sheet.activate();
    if (selection.range !== undefined) sheet.getRange(selection.range).select();
    await context.sync();
  }).catch(() => undefined);
}

/** @param own the trial's sheet, where it still stands */
export async function leftBehind(
  before: WorkbookState,
  trouble: string | undefined,
  own?: string,
): Promise<Found> {
  if (trouble !== undefined) return bad(trouble);
  try {
    const after = await workbookState(own);
    const differing = [
      ...difference("sheets", before.sheets, after.sheets),
      ...difference("names", before.names, after.names),
      ...difference("properties", before.properties, after.properties),
      ...(before.calculation === after.calculation ? [] : ["the calculation mode"]),
    ];
    const counted = `${after.sheets.length} sheets, ${after.names.length} names, calculation ${after.calculation}`;
    if (differing.length === 0) return good("the workbook is as it was before", counted);
    return look(
      `not as before: ${differing.join("; ")}. If nobody else has changed the workbook meanwhile, the trial has`,
      counted,
    );
  } catch (error) {
    return bad(`whether something is left could not be read (${refusalOf(error)})`);
  }
}

/** Names of sheets and cells are the person's: only how many there are is told. */
function difference(what: string, before: readonly string[], after: readonly string[]): string[] {
  const gone = before.filter((one) => !after.includes(one)).length;
  const come = after.filter((one) => !before.includes(one)).length;
  return gone + come === 0 ? [] : [`${what}: ${gone} gone or changed, ${come} new`];
}
