/** The pane's host in Excel. Everything that it asks for is done in a file of its own. */
import {
  HostTrouble,
  type HostFacts,
  type PaneHost,
  type Preferences,
  type Selection,
  type StartedBook,
  type WantedPdf,
} from "../../pane/host";
import type { Trial, TrialHelp } from "../../pane/trial";
import type { Book } from "../../workbooks/book";
import type { Entry } from "../../standards/entries";
import type { CopyKind } from "../file/copy/copyOf";
import type { ImportedTable } from "../../workbooks/imported/table";
import type { RowChanges } from "../../workbooks/survey/merge";
import type { SurveyRow } from "../../workbooks/survey/survey";
import { FileTrouble } from "../file/fileTrouble";
import { readTables } from "../file/readTables";
import { addingOutlets } from "./addOutlets";
import { addingRows } from "./addRows";
import { enteringAll } from "./enterAll";
import { enteringFormula } from "./enterFormula";
import { enteringOursAgain } from "./enterOursAgain";
import { troubles } from "./excelTrouble";
import { functionsVersion } from "./functionsVersion";
import { handOverBook, handOverCopy, readDocument, readFile } from "./handOverCopy";
import { changeExcel, readExcel, settleOwed, spillsHere } from "./inExcel";
import { keptReviews } from "./keptReviews";
import { keepPreferences, readPreferences } from "./preferences";
import { handOverPdf } from "./pdfHere";
import { readWorkbook } from "./readWorkbook";
import { openingOfPane } from "./openingOfPane";
import { selectedCell } from "./selectedCell";
import { startAsNew, startHere } from "./start";
import { trialBook } from "./trial/trialBook";
import { interruptedTrial, tryExcel } from "./trial/tryExcel";

/** Without formulas that spill, no workbook of ours works. */
function refuseOld(): void {
  if (!spillsHere()) throw new HostTrouble(troubles.noSpilling());
}

function refuseUnable(): void {
  refuseOld();
  if (Office.context.platform === Office.PlatformType.iOS) throw new HostTrouble(troubles.noFunctions());
}

export class ExcelHost implements PaneHost {
  async facts(): Promise<HostFacts> {
    return { kind: "excel", spills: spillsHere(), functionsVersion: functionsVersion() };
  }

  async startWorkbook(started: StartedBook): Promise<string> {
    refuseUnable();
    return await startAsNew(started);
  }

  async startHere(started: StartedBook): Promise<string> {
    refuseUnable();
    return await startHere(started);
  }

  readonly openingOfPane = openingOfPane;

  readonly reviews = keptReviews;

  async readBook(): Promise<Book> {
    refuseOld();
    // What is read would have in it what is taken back before the next change.
    await settleOwed();
    return await readExcel(readWorkbook);
  }

  readFile(): Promise<Book> {
    return readDocument();
  }

  async takeUpgrade(book: Book, _: string, to: string): Promise<string> {
    await handOverBook(book);
    return `The workbook of version ${to} is open as a new one. This one is as it was.`;
  }

  selection(): Promise<Selection> {
    return readExcel(selectedCell);
  }

  watchSelection(changed: (selection: Selection) => void): () => void {
    const tell = async (): Promise<void> => {
      try {
        changed(await this.selection());
      } catch (error) {
        // No cell to tell of, or one that is being edited: the next change tells.
        if (!(error instanceof HostTrouble)) throw error;
      }
    };
    const added = readExcel(async (context) => {
      const handler = context.workbook.onSelectionChanged.add(tell);
      await context.sync();
      return handler;
    });
    // Where it could not be added, the pane still asks for the selection when it needs it.
    added.catch(() => undefined);
    return () => {
      added
        .then((handler) =>
          Excel.run(handler.context, async (context) => {
            handler.remove();
            await context.sync();
          }),
        )
        .catch(() => undefined);
    };
  }

  async goTo(sheet: string, at: string): Promise<void> {
    await readExcel(async (context) => {
      const target = context.workbook.worksheets.getItemOrNullObject(sheet);
      target.load("visibility");
      await context.sync();
      if (target.isNullObject) throw new HostTrouble(troubles.noSheet(sheet));
      if (target.visibility !== "Visible")
        throw new HostTrouble(troubles.hiddenSheet(sheet, target.visibility === "VeryHidden"));
      target.activate();
      target.getRange(at).select();
      await context.sync();
    });
  }

  async enterFormula(formula: string): Promise<void> {
    refuseOld();
    await changeExcel(enteringFormula(formula));
  }

  async addRows(count: number): Promise<string> {
    refuseOld();
    return await changeExcel(addingRows(count));
  }

  readTables(bytes: Uint8Array): Promise<readonly ImportedTable[]> {
    return readTables(bytes).catch((error: unknown) => {
      throw error instanceof FileTrouble ? new HostTrouble(error.message, { cause: error }) : error;
    });
  }

  async addOutlets(rows: readonly SurveyRow[], changes?: RowChanges): Promise<string> {
    refuseOld();
    return await changeExcel(addingOutlets(rows, changes));
  }

  openFile(bytes: Uint8Array): Promise<Book> {
    return readFile(bytes);
  }

  async enterAll(entries: readonly Entry[], done: string): Promise<string> {
    refuseOld();
    return await changeExcel(enteringAll(entries, done));
  }

  async enterOursAgain(): Promise<number> {
    refuseOld();
    const { count, refused, unguarded, still } = await changeExcel(enteringOursAgain);
    const left = [...refused.values()].reduce((sum, one) => sum + one, 0);
    const troubled = [
      ...(left > 0 ? [troubles.repairRefused(count, count + left, refused)] : []),
      ...(unguarded.length > 0 ? [troubles.unguarded(unguarded)] : []),
      ...(still !== undefined ? [troubles.stillUnknown(count, still)] : []),
    ];
    if (troubled.length > 0) throw new HostTrouble(troubled.join(" "));
    return count;
  }

  handOverCopy(kind: CopyKind): Promise<void> {
    return handOverCopy(kind);
  }

  handOverPdf(wanted: WantedPdf, say: (words: string) => void): Promise<string> {
    return handOverPdf(wanted, say);
  }

  handOverBook(book: Book): Promise<void> {
    return handOverBook(book);
  }

  tryExcel(help: TrialHelp): Promise<Trial> {
    return tryExcel(help);
  }

  interruptedTrial(): Trial | undefined {
    return interruptedTrial();
  }

  handOverTrial(trial: Trial): Promise<void> {
    return handOverBook(trialBook(trial));
  }

  async preferences(): Promise<Preferences> {
    return readPreferences();
  }

  async keepPreferences(preferences: Preferences): Promise<void> {
    keepPreferences(preferences);
  }
}
