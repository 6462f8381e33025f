/**
 * “Try this Excel”: what nobody could find out without one. All of it happens
 * on a sheet of its own and on the demonstrations' sheets, which are taken
 * away at the end, and at the beginning where an earlier trial was broken off.
 * The list of lines is fixed: what did not run says why.
 */
import { HostTrouble } from "../../../pane/host";
import type { Trial, TrialHelp, TrialLine } from "../../../pane/trial";
import { asTrouble } from "../excelTrouble";
import { hearing, type HeardCall } from "../heardCalls";
import { hasApi } from "../inExcel";
import { blankAlone, blankInRange, blankRows } from "./blankSteps";
import { enteredAgain, newestApi, notes, takesBack, undoByHand, undoGrouping } from "./changeSteps";
import { demonstrations, tryDemonstration } from "./demonstrations";
import { errorAlone, errorInRange, ourErrors } from "./errorSteps";
import { everyFunction, functionTime, publishedFigures } from "./exampleSteps";
import { fileHere, newWorkbook, ownFile } from "./fileSteps";
import { answers, fresh, omitted, whose } from "./functionSteps";
import { calculationHere } from "./calculationHere";
import { closeJournal, keepJournal, readJournal } from "./journal";
import { dateSystem, numbersAndLanguage } from "./languageSteps";
import { addOwnSheet, ownSheetStands, removeEarlier, removeOwnSheet, type OwnSheet } from "./ownSheet";
import { programFacts } from "./programFacts";
import { insertedRow, protection } from "./protectionSteps";
import { atSign, blocked, longSpill, nativeOverOurs, spill } from "./spillSteps";
import { bad, refusalOf, good, look, notRun, type Found, type Ground, type Step } from "./steps";
import { roundTrip, sizeOfRequest } from "./timeSteps";
import { giveBack, leftBehind, workbookState, type WorkbookState } from "./workbookState";

const STEPS: readonly Step[] = [
  answers,
  whose,
  fresh,
  omitted,
  blankInRange,
  blankAlone,
  errorAlone,
  ourErrors,
  spill,
  atSign,
  blankRows,
  errorInRange,
  longSpill,
  blocked,
  nativeOverOurs,
  everyFunction,
  publishedFigures,
  functionTime,
  numbersAndLanguage,
  dateSystem,
  protection,
  insertedRow,
  takesBack,
  undoGrouping,
  enteredAgain,
  notes,
  sizeOfRequest,
  ownFile,
];

/** All that steps write to, but for the mark. */
const USED = "A2:BZ2200";
const OWN_SHEET = "Own sheet";
const CALCULATION = "Calculation mode";
const LEFT_BEHIND = "Left nothing behind";
const FILE_HERE = "File in this workbook";
const BY_HAND = "Undo by hand";
const NEW_WORKBOOK = "New workbook";
const demonstrationLine = (title: string): string => `Demonstration totals: ${title}`;

/** Every line of a page, in their order. */
export const LINES: readonly string[] = [
  OWN_SHEET,
  CALCULATION,
  roundTrip.what,
  ...STEPS.map(({ what }) => what),
  ...demonstrations.map(({ title }) => demonstrationLine(title)),
  FILE_HERE,
  BY_HAND,
  LEFT_BEHIND,
  NEW_WORKBOOK,
];

let isRunning = false;

/** Throws a {@link HostTrouble} where one is running already. */
export async function tryExcel(help: TrialHelp): Promise<Trial> {
  if (isRunning)
    throw new HostTrouble("A trial is running already. Leave the workbook alone until its page is there.");
  isRunning = true;
  try {
    return await new Run(help).done();
  } finally {
    isRunning = false;
  }
}

/** The page of a trial that did not reach its end, because the pane or Excel was closed. */
export function interruptedTrial(): Trial | undefined {
  return isRunning ? undefined : readJournal();
}

class Run {
  private readonly began = new Date();
  private readonly lines = new Map<string, TrialLine>();
  private facts: Trial["facts"] = [];
  private stopped: string | undefined;
  private own: OwnSheet | undefined;

  constructor(private readonly help: TrialHelp) {}

  async done(): Promise<Trial> {
    this.facts = await programFacts();
    const { removed, before } = await atTheBeginning();
    this.keep();
    try {
      await hearing((heard) => this.all(heard, removed));
    } finally {
      await this.clearedUp(before);
    }
    if (this.stopped === undefined) await this.line(NEW_WORKBOOK, newWorkbook);
    closeJournal();
    return this.page(this.stopped);
  }

  private async all(heard: readonly HeardCall[], removed: readonly string[]): Promise<void> {
    let noSheet: string | undefined;
    await this.line(OWN_SHEET, async () => {
      try {
        this.own = await addOwnSheet();
      } catch (error) {
        noSheet = error instanceof HostTrouble ? error.message : refusalOf(error);
        return notRun(noSheet);
      }
      const { name, wanted } = this.own;
      const earlier = removed.length > 0 ? "; what an earlier trial had left was removed" : "";
      return name === wanted
        ? good(`“${name}” at the end of the workbook${earlier}`)
        : look(`under another name, “${name}”, as “${wanted}” is taken${earlier}`);
    });
    let manual = false;
    await this.line(CALCULATION, async () => {
      const calculation = await calculationHere();
      manual = calculation.mode !== "Automatic";
      return calculation.found;
    });
    await this.line(roundTrip.what, () => Excel.run((context) => roundTrip.run(context, undefined as never)));
    if (!this.own) {
      for (const what of LINES)
        if (!this.lines.has(what)) this.withoutRun(what, `no sheet of its own: ${noSheet}`);
      return;
    }
    const ground: Ground = {
      sheet: this.own.id,
      heard,
      manual,
      silence: undefined,
      noSpill: undefined,
      oldValues: undefined,
      files: { taken: [], built: 0 },
      leftIn: [],
    };
    for (const step of STEPS) await this.step(step, ground);
    await this.emptied(ground);
    for (const one of demonstrations) {
      const why =
        ground.silence ??
        ground.oldValues ??
        (ground.leftIn.length > 0 ? "an earlier demonstration could not be taken out" : undefined);
      const what = demonstrationLine(one.title);
      if (why !== undefined) this.withoutRun(what, why);
      else await this.line(what, () => tryDemonstration(one, ground));
    }
    const nothingTried = ground.silence ?? ground.oldValues;
    await this.line(FILE_HERE, async () => fileHere(ground, nothingTried));
    const { undone } = this.help;
    if (undone) await this.line(BY_HAND, () => undoByHand(ground, undone));
    else this.withoutRun(BY_HAND, "asked of you, no answer");
    if (ground.leftIn.length > 0) this.leftIn = ground.leftIn;
  }
  private leftIn: readonly string[] = [];

  /** The demonstrations are not held up by what was tried before. */
  private async emptied({ sheet }: Ground): Promise<void> {
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem(sheet).getRange(USED).clear("Contents");
      await context.sync();
    }).catch(() => undefined);
  }

  private async step(step: Step, ground: Ground): Promise<void> {
    const { what, needs, needsApi } = step;
    const why =
      needs === undefined ? undefined : (ground.silence ?? (needs === "spill" ? ground.noSpill : undefined));
    if (why !== undefined) this.withoutRun(what, why);
    else if (needsApi !== undefined && !hasApi(needsApi))
      this.withoutRun(what, `this Excel has ExcelApi ${newestApi()}, and it takes ${needsApi}`);
    else await this.line(what, () => Excel.run((context) => step.run(context, ground)));
  }

  private async line(what: string, run: () => Promise<Found>): Promise<void> {
    if (this.stopped !== undefined) return;
    const began = performance.now();
    let found: Found;
    try {
      found = await run();
    } catch (error) {
      found = (await this.isSheetGone()) ? notRun(this.stopped!) : bad(refusalOf(error));
    }
    const milliseconds = Math.round(performance.now() - began);
    this.note({ what, ...found, milliseconds });
  }

  private withoutRun(what: string, why: string): void {
    if (this.stopped === undefined) this.note({ what, ...notRun(why) });
  }

  private note(line: TrialLine): void {
    this.lines.set(line.what, line);
    this.keep();
    this.help.tell(line);
  }

  private async isSheetGone(): Promise<boolean> {
    const { own } = this;
    if (!own || (await ownSheetStands(own).catch(() => true))) return false;
    this.stopped = "Stopped: the trial's sheet was deleted while it ran.";
    return true;
  }

  private async clearedUp(before: WorkbookState): Promise<void> {
    const { own, leftIn } = this;
    const removal = own && (await removeOwnSheet(own));
    const trouble = [
      ...(leftIn.length > 0
        ? [
            `the sheets ${leftIn.map((one) => `“${one}”`).join(", ")} could not be deleted: remove them by hand`,
          ]
        : []),
      ...(removal === undefined ? [] : [removal]),
    ].join("; ");
    await giveBack(before);
    const found = await leftBehind(before, trouble || undefined);
    this.note({ what: LEFT_BEHIND, ...found });
  }

  private keep(): void {
    const last = [...this.lines.keys()].at(-1);
    const sheet = this.own
      ? ` The sheet “${this.own.name}” may still be there: press “Try it”, and it is removed first.`
      : "";
    keepJournal(
      this.page(
        `Stopped after ${last === undefined ? "its beginning" : `“${last}”`}, before its end.${sheet}`,
      ),
    );
  }

  private page(stopped: string | undefined): Trial {
    return {
      began: this.began.toISOString(),
      seconds: Math.round((Date.now() - this.began.getTime()) / 1000),
      facts: this.facts,
      lines: LINES.map((what) => this.lines.get(what) ?? { what, ...notRun(stopped ?? "not reached") }),
      ...(stopped !== undefined && { stopped }),
    };
  }
}

/** Throws a {@link HostTrouble} where nothing can be done just now, as while a cell is edited. */
async function atTheBeginning(): Promise<{ removed: readonly string[]; before: WorkbookState }> {
  try {
    await workbookState();
    const removed = await removeEarlier().catch(() => []);
    return { removed, before: await workbookState() };
  } catch (error) {
    throw asTrouble(error);
  }
}
