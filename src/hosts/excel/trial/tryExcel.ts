/**
 * “Try this Excel”: what nobody could find out without one. All of it happens
 * on a sheet of its own and on the demonstrations' sheets, which are taken
 * away at the end, and at the beginning where an earlier trial was broken off.
 */
import { HostTrouble } from "../../../pane/host";
import type { Trial, TrialLine } from "../../../pane/trial";
import type { Book } from "../../../workbooks/book";
import { takeBookBack } from "../buildBook";
import { asTrouble } from "../excelTrouble";
import { hasApi } from "../inExcel";
import { demonstrations, tryDemonstration } from "./demonstrations";
import { newWorkbook, ownFile } from "./fileSteps";
import * as functionSteps from "./functionSteps";
import { programFacts } from "./programFacts";
import * as sheetSteps from "./sheetSteps";
import { bad, codeOf, notRun, type Ground, type Step } from "./steps";

const SHEET = "Rigsheet trial";
/** In A1 of the trial's sheet; beside it the file of the demonstration that is in the workbook just now. */
const MARK = "A trial of Rigsheet runs on this sheet; it goes away by itself.";
const MOST_SHEETS = 99;

const STEPS: readonly Step[] = [
  functionSteps.answers,
  functionSteps.blanks,
  functionSteps.errorsInCells,
  sheetSteps.spills,
  sheetSteps.readBack,
  sheetSteps.blocked,
  sheetSteps.names,
  sheetSteps.undo,
  sheetSteps.protection,
  sheetSteps.ownRefusal,
  sheetSteps.notes,
  sheetSteps.roundTrip,
  sheetSteps.largeRequest,
  functionSteps.publishedExamples,
  functionSteps.speed,
  ownFile,
];

export async function tryExcel(tell: (line: TrialLine) => void): Promise<Trial> {
  const began = new Date();
  const lines: TrialLine[] = [];
  const note = (line: TrialLine): void => {
    lines.push(line);
    tell(line);
  };
  const facts = await programFacts();
  const before = await begun();
  try {
    const ground: Ground = { sheet: before.sheet, silence: undefined };
    for (const step of STEPS) for (const line of await outcomeOf(step, ground)) note(line);
    for (const one of demonstrations) {
      const what = `Demonstration: ${one.title}`;
      if (ground.silence !== undefined) note({ what, ...notRun(ground.silence) });
      else {
        const noted = (file: string) => (): Promise<void> => noteOnSheet(before.sheet, file);
        note(
          await tryDemonstration(one, noted(one.file), noted("")).catch((error: unknown) => ({
            what,
            ...bad(codeOf(error)),
          })),
        );
      }
    }
    for (const line of await outcomeOf(newWorkbook, ground)) note(line);
  } finally {
    const left = await takenAway(before);
    if (left !== undefined) note({ what: "The trial's own sheet", ...bad(left) });
  }
  return {
    began: began.toISOString(),
    seconds: Math.round((Date.now() - began.getTime()) / 1000),
    facts,
    lines,
  };
}

async function outcomeOf(step: Step, ground: Ground): Promise<readonly TrialLine[]> {
  const { what, needsApi, needsFunctions, run } = step;
  if (needsApi !== undefined && !hasApi(needsApi))
    return [{ what, ...notRun(`this Excel lacks ExcelApi ${needsApi}`) }];
  if (needsFunctions && ground.silence !== undefined) return [{ what, ...notRun(ground.silence) }];
  try {
    const outcome = await Excel.run((context) => run(context, ground));
    return "verdict" in outcome ? [{ what, ...outcome }] : outcome;
  } catch (error) {
    return [{ what, ...bad(codeOf(error)) }];
  }
}

interface Before {
  readonly sheet: string;
  /** The sheet that the person looks at. */
  readonly active: string;
}

async function begun(): Promise<Before> {
  try {
    return await Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load("items/name");
      const active = worksheets.getActiveWorksheet();
      active.load("name");
      await context.sync();
      const left = worksheets.items.map(({ name }) => name).filter((name) => name.startsWith(SHEET));
      for (const name of left) await clearedAway(context, name);
      const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
      const sheet = [
        SHEET,
        ...Array.from({ length: MOST_SHEETS }, (_, index) => `${SHEET} ${index + 2}`),
      ].find((name) => !taken.has(name.toLowerCase()));
      if (sheet === undefined)
        throw new HostTrouble(`There are too many sheets named “${SHEET}”. Delete them, then try again.`);
      worksheets.add(sheet).getRange("A1").values = [[MARK]];
      await context.sync();
      return { sheet, active: left.includes(active.name) ? "" : active.name };
    });
  } catch (error) {
    throw asTrouble(error);
  }
}

/** A trial that was broken off left its sheet, and perhaps a demonstration. */
async function clearedAway(context: Excel.RequestContext, name: string): Promise<void> {
  const head = context.workbook.worksheets.getItem(name).getRange("A1:B1");
  head.load("values");
  await context.sync();
  const [mark, file] = head.values[0]!.map(String);
  if (mark !== MARK) return;
  const book = bookOf(file!);
  if (book) await takeBookBack(context, book);
  context.workbook.worksheets.getItem(name).delete();
  await context.sync();
}

const bookOf = (file: string): Book | undefined => demonstrations.find((one) => one.file === file)?.book();

const noteOnSheet = (sheet: string, file: string): Promise<void> =>
  Excel.run(async (context) => {
    context.workbook.worksheets.getItem(sheet).getRange("B1").values = [[file]];
    await context.sync();
  });

/** @returns what to do where it did not work */
async function takenAway({ sheet, active }: Before): Promise<string | undefined> {
  try {
    await Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const back = worksheets.getItemOrNullObject(active);
      back.load("name");
      worksheets.getItem(sheet).delete();
      await context.sync();
      if (!back.isNullObject) back.activate();
      await context.sync();
    });
    return undefined;
  } catch (error) {
    return `it could not be taken away (${codeOf(error)}): delete “${sheet}” by hand`;
  }
}
