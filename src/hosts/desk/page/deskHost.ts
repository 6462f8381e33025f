/**
 * The pane's host on the desk: the same pane as in Excel, over the grid
 * library's model. It needs no page of its own kind, so it is tested without one.
 */
import {
  HostTrouble,
  USUAL_PREFERENCES,
  type KeptReviews,
  type PaneHost,
  type Preferences,
  type Selection,
  type StandardsHere,
  type WantedPdf,
} from "../../../pane/host";
import { RIGSHEET_VERSION } from "../../../version";
import { address } from "../../../formula/address";
import type { FullReview } from "../../../review/reviewInFull";
import type { Book, BookResult } from "../../../workbooks/book";
import { callsUs } from "../../../formula/callsUs";
import type { AddedRows } from "../../../workbooks/planAddedRows";
import { templateOf } from "../../../workbooks/templates";
import type { Entry } from "../../../standards/entries";
import type { ImportedTable } from "../../../workbooks/imported/table";
import { doneInWords, NO_CHANGES, type RowChanges } from "../../../workbooks/survey/merge";
import type { SurveyRow } from "../../../workbooks/survey/survey";
import type { CopyKind } from "../../file/copy/copyOf";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridLibrary, GridModel } from "../../grid/library";
import type { DeskGuard } from "./deskPlugin";
import { storedPreferences, storePreferences } from "./deskPreferences";
import type { WhyLeft } from "./leftInWords";
import type { GridPosition } from "./libraryTypes";
import { selectCell } from "./selectCell";

/** The open job. */
export interface OpenDesk {
  readonly model: GridModel;
  /** Where rows would be added for the selected cell, or a sentence that says why there is no such place. */
  readonly rowsToAdd: AddedRows | string;
  book(): Book;
  replace(book: Book): Promise<void>;
  addRows(plan: AddedRows, quantity: number): void;
  /** @returns a sentence where they have no place */
  addOutlets(rows: readonly SurveyRow[], changes: RowChanges): string | undefined;
  /** Types all of it in one step. @returns a sentence where a name that is needed is gone */
  enterAll(entries: readonly Entry[]): string | undefined;
  /** Calls back whenever the selection or a cell changes. @returns a function that ends it */
  watch(changed: () => void): () => void;
}

/** What the page gives beyond the job. */
export interface DeskSurroundings {
  readonly library: GridLibrary;
  readonly guard: DeskGuard;
  /** A cell is being typed into. */
  isEditing(): boolean;
  readTables(bytes: Uint8Array): Promise<readonly ImportedTable[]>;
  openFile(bytes: Uint8Array): Promise<Book>;
  /** The firm's standards among the jobs, the newest first. */
  standardsHere(): Promise<readonly StandardsHere[]>;
  /** In a model of its own. */
  compute(book: Book): Book;
  /** In models of its own. */
  review(book: Book): FullReview;
  readonly reviews: KeptReviews;
  /** Puts it in the place of the open job, which is frozen before. @returns what was done, in a sentence */
  takeUpgrade(book: Book, from: string, to: string): Promise<string>;
  handOver(book: Book, kind: CopyKind): Promise<void>;
  handOverPdf(wanted: WantedPdf, say: (words: string) => void): Promise<string>;
  /** As a file of this name. */
  handOverBook(book: Book, file: string): Promise<void>;
  /** May throw where the browser refuses it. */
  storage(): Pick<Storage, "getItem" | "setItem">;
}

type DeskGetters = GridModel["getters"] & {
  getBookFacts(): BookFacts;
  isGuardedSheet(sheetId: string): boolean;
  whyLeft(position: GridPosition): WhyLeft | undefined;
};

const WHY: Readonly<Record<WhyLeft, string>> = {
  calculated: "The selected cell is calculated.",
  label: "The selected cell is one of the workbook's own labels.",
  unasked: "Nothing is asked for in the selected cell.",
};
const WHERE_INSTEAD =
  "Select a boxed cell, or a cell of a sheet that you have added, or use “Unlock sheet” in the bar.";

export const outletsAdded = (count: number, changes: RowChanges): string =>
  `${doneInWords(count, changes)}. Undo takes all of it back in one step.`;

export function deskHost(desk: OpenDesk, around: DeskSurroundings): PaneHost {
  const getters = (): DeskGetters => desk.model.getters as DeskGetters;
  const dispatch = (type: string, payload: object): boolean =>
    desk.model.dispatch(type as never, payload as never).isSuccessful;
  let inMemory: Preferences | undefined;

  const notWhileEditing = (): void => {
    if (!around.isEditing()) return;
    throw new HostTrouble(
      "A cell is being typed into. Press Enter to keep what you typed, or Esc to drop it; then try again.",
    );
  };

  return {
    facts: async () => ({ kind: "desk", spills: true, functionsVersion: RIGSHEET_VERSION }),

    startWorkbook: async ({ book }) => {
      notWhileEditing();
      await desk.replace(book);
      return "";
    },

    readBook: async () => desk.book(),

    readFile: async () => desk.book(),

    compute: around.compute,

    review: around.review,

    reviews: around.reviews,

    takeUpgrade: async (book, from, to) => {
      notWhileEditing();
      return await around.takeUpgrade(book, from, to);
    },

    selection: async () => selectionIn(around.library, desk.model),

    watchSelection: (changed) => {
      let last = "";
      return desk.watch(() => {
        const selection = selectionIn(around.library, desk.model);
        const text = JSON.stringify(selection);
        if (text === last) return;
        last = text;
        changed(selection);
      });
    },

    goTo: async (sheet, at) => {
      notWhileEditing();
      selectCell(desk.model, sheet, at);
    },

    enterFormula: async (formula) => {
      notWhileEditing();
      const place = getters().getActivePosition();
      const left = getters().isGuardedSheet(place.sheetId) ? getters().whyLeft(place) : undefined;
      if (left) throw new HostTrouble(`${WHY[left]} ${WHERE_INSTEAD}`);
      // A cell that holds this very formula already refuses it as no change.
      const same = selectionIn(around.library, desk.model).formula === formula;
      if (!same && !dispatch("UPDATE_CELL", { ...place, content: `=${formula}` })) {
        throw new HostTrouble(
          "The grid did not take the formula into the selected cell. Select another cell and try again.",
        );
      }
    },

    addRows: async (count) => {
      notWhileEditing();
      if (!templateOf(getters().getBookFacts().template)) {
        throw new HostTrouble(
          "This workbook was not made from one of our templates, so its blocks are not known. Insert rows by the menu of the row numbers.",
        );
      }
      const plan = desk.rowsToAdd;
      if (typeof plan === "string") throw new HostTrouble(plan);
      desk.addRows(plan, count);
      const mirrored = plan.growing.length > 1 ? ", and to the lists that stand for the same rows" : "";
      return `${count === 1 ? "1 row was" : `${count} rows were`} added to ${plan.heading}${mirrored}.`;
    },

    readTables: (bytes) => around.readTables(bytes),

    addOutlets: async (rows, changes = NO_CHANGES) => {
      notWhileEditing();
      const refused = desk.addOutlets(rows, changes);
      if (refused !== undefined) throw new HostTrouble(refused);
      return outletsAdded(rows.length, changes);
    },

    openFile: (bytes) => around.openFile(bytes),

    standardsHere: () => around.standardsHere(),

    enterAll: async (entries, done) => {
      notWhileEditing();
      const refused = desk.enterAll(entries);
      if (refused !== undefined) throw new HostTrouble(refused);
      return `${done} Undo takes it back in one step.`;
    },

    enterOursAgain: async () => {
      notWhileEditing();
      const cells = unknownCalls(desk.model);
      // They may stand on guarded sheets; the same formula goes back in.
      const locked = cells.map(({ sheetId }) => sheetId).filter((id) => !around.guard.unlocked.has(id));
      for (const id of locked) around.guard.unlocked.add(id);
      try {
        dispatch("RIGSHEET_ENTER_AGAIN", { cells });
      } finally {
        for (const id of locked) around.guard.unlocked.delete(id);
      }
      return cells.length;
    },

    handOverCopy: (kind) => around.handOver(desk.book(), kind),

    handOverPdf: async (wanted, say) => {
      notWhileEditing();
      return await around.handOverPdf(wanted, say);
    },

    handOverBook: (book, file) => around.handOverBook(book, file),

    preferences: async () => inMemory ?? storedPreferences(around.storage) ?? USUAL_PREFERENCES,

    keepPreferences: async (preferences) => {
      inMemory = preferences;
      try {
        storePreferences(around.storage, preferences);
      } catch {
        throw new HostTrouble(
          "The browser does not let this page keep settings. They hold until the page is closed; allow storage for this address to keep them.",
        );
      }
    },
  };
}

function selectionIn(library: GridLibrary, { getters }: GridModel): Selection {
  const place = getters.getActivePosition();
  const cell = getters.getCell(place);
  const { value, message } = getters.getEvaluatedCell(place) as {
    value: number | string | boolean | null;
    message?: string;
  };
  const failed = typeof value === "string" && library.registries.errorTypes.has(value);
  const result: BookResult | undefined = failed ? { error: value, message } : (value ?? undefined);
  return {
    sheet: getters.getSheetName(place.sheetId),
    at: address(place.row, place.col),
    ...(cell?.isFormula && { formula: cell.compiledFormula.toFormulaString(getters).slice(1) }),
    ...(result !== undefined && { result }),
  };
}

/** Calls of ours whose name the grid did not know when they were entered. */
const unknownCalls = ({ getters }: GridModel): GridPosition[] =>
  getters.getSheetIds().flatMap((sheetId) =>
    getters.getCells(sheetId).flatMap((cell) => {
      if (!cell.isFormula || !callsUs(cell.compiledFormula.toFormulaString(getters))) return [];
      const place = getters.getCellPosition(cell.id);
      return getters.getEvaluatedCell(place).value === "#NAME?" ? [place] : [];
    }),
  );
