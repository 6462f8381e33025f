/** The open job on the page: its model, its autosave, and what the bar can do with it. */
import * as library from "@odoo/o-spreadsheet";
import * as owl from "@odoo/owl";
import { address } from "../../../formula/address";
import type { JobContent, JobDocument } from "../../../jobs/content";
import type { Book } from "../../../workbooks/book";
import type { WorkbookDefinition } from "../../../workbooks/definition";
import { fileNameOf, jobLabelOf, labelInWords } from "../../../workbooks/jobLabel";
import { estimate } from "../../../workbooks/multiRoom/names";
import type { AddedRows } from "../../../workbooks/planAddedRows";
import { shelfLineFrom, type ShelfLine } from "../../../workbooks/shelfLine";
import type { Entry } from "../../../standards/entries";
import { groupedSheets } from "../../../workbooks/sheetGroups";
import { inWords, type SurveyRow } from "../../../workbooks/survey/survey";
import type { RowChanges } from "../../../workbooks/survey/merge";
import type { RoomsNow } from "../../../workbooks/survey/roomsBlock";
import { takesPrices } from "../../../workbooks/prices/takesPrices";
import { templates } from "../../../workbooks/templates";
import { fillingSteps, type FillingStep } from "../../../review/fillingSteps";
import type { BookFacts } from "../../grid/bookFacts";
import { fromModel } from "../../grid/fromModel";
import type { GridModel } from "../../grid/library";
import { toDocument } from "../../grid/toDocument";
import type { Bar, JobFigures } from "./bar";
import { additionsTo, rowsToAdd } from "./blocksOnGrid";
import type { CellEntry } from "./cellEntry";
import { refusalFor, wordsFor } from "./cellLine";
import { cellInWords, CellTold } from "./cellTold";
import type { OpenDesk } from "./deskHost";
import { KEPT, zonesWithout, type DeskGuard } from "./deskPlugin";
import { entriesToType } from "./entriesToType";
import { withLabels } from "./gridLabels";
import type { GridCommand, GridPosition } from "./libraryTypes";
import { outletsToAdd, roomsNow } from "./outletsToAdd";
import { replayed, type Replayed, type Transport } from "./replayed";
import { bringUp } from "./selectCell";
import { sortRows } from "./sortRows";
import { notEntered, unfinishedEntry } from "./unfinished";
import { uuid } from "./uuid";
import { checks } from "../../../workbooks/checkNames";

/** From here on the user is told that something is going on. */
const LONG_MS = 500;

const DELETIONS = new Set(["DELETE_CONTENT", "DELETE_UNFILTERED_CONTENT"]);

type DeskGetters = GridModel["getters"] & {
  getBookFacts(): BookFacts;
  isGuardedSheet(sheetId: string): boolean;
  isKeptCell(position: GridPosition): unknown;
};

interface Rejection {
  readonly command: GridCommand;
  readonly result: { isCancelledBecause(reason: string): boolean };
}

/** By then the grid has taken on its new height. */
const LAID_OUT_MS = 120;

export class Desk implements OpenDesk {
  model!: GridModel;
  private readonly watchers = new Set<() => void>();
  private app: owl.App | undefined;
  private spreadsheet: { focusGrid(): void } | undefined;
  private readonly told = new CellTold();
  private readonly gridTemplates: string;
  private shown = 0;
  private label = "";
  /** Another book is asked for: by the review list, the pane. */
  replaceWith: (book: Book) => Promise<void> = async () => undefined;

  constructor(
    private readonly root: HTMLElement,
    private readonly line: HTMLElement,
    private readonly bar: Bar,
    private readonly guard: DeskGuard,
    private readonly entry: CellEntry,
    gridTemplates: string,
  ) {
    this.gridTemplates = withLabels(gridTemplates);
    line.after(this.told.element);
    entry.changed = (refused) => {
      // The editor itself shows which cell is meant.
      root.classList.toggle("desk-entry-refused", refused !== undefined);
      this.refresh();
    };
    bar.noticeShows = () => this.keepInView();
    entry.dropped = (sentence) => bar.showNotice(sentence, true);
  }

  /** The grid is about to be shorter: the selected cell stays in sight if it is so now. */
  private keepInView(): void {
    if (!this.app) return;
    const { model } = this;
    const place = model.getters.getActivePosition();
    const getters = model.getters as unknown as { isVisibleInViewport(place: GridPosition): boolean };
    if (!getters.isVisibleInViewport(place)) return;
    setTimeout(() => {
      if (model === this.model) model.dispatch("SCROLL_TO_CELL" as never, place as never);
    }, LAID_OUT_MS);
  }

  /** Puts a book in the place of the open job, which stays among the jobs. */
  replace(book: Book): Promise<void> {
    return this.replaceWith(book);
  }

  /** Counts up with every job that takes the place of another. */
  get jobsShown(): number {
    return this.shown;
  }

  book(): Book {
    return fromModel(library, this.model);
  }

  /** The number, revision and name of the job; what the workbook calls itself where it has none yet. */
  get title(): string {
    const label = jobLabelOf((name) => this.named(name)?.value);
    return labelInWords(label) || this.getters.getBookFacts().title || "Untitled job";
  }

  /** What a file of this job is called, without its ending. */
  get fileTitle(): string {
    return fileNameOf(this.title);
  }

  /** What the list of jobs tells of it. */
  get shelfLine(): ShelfLine {
    return shelfLineOf(this.model);
  }

  get figures(): JobFigures {
    return {
      title: this.label ? `${this.label}: ${this.title}` : this.title,
      template: this.getters.getBookFacts().title,
      total: this.total,
      verdict: this.named(checks.verdict.name)?.formattedValue,
    };
  }

  /** Takes edits, or is only looked at. */
  allowEdits(may: boolean): void {
    this.model.updateMode(may ? "normal" : "readonly");
  }

  dispatch(type: string, payload: object = {}): boolean {
    return this.model.dispatch(type as never, payload as never).isSuccessful;
  }

  /** Calls back whenever the selection or a cell changes, in this job and in the next. */
  watch(changed: () => void): () => void {
    this.watchers.add(changed);
    return () => this.watchers.delete(changed);
  }

  focus(): void {
    this.spreadsheet?.focusGrid();
  }

  /**
   * Draws at once what the library would draw with the next frame. A key that
   * comes before that frame finds the cell editor as it was before the last
   * one, and the library then loses what is typed: it happens to a quick typist
   * while a recalculation holds the page up.
   */
  drawPending(): void {
    this.app?.scheduler.processTasks();
  }

  addRows({ growing }: AddedRows, quantity: number): void {
    this.dispatch("RIGSHEET_ADD_ROWS", { additions: additionsTo(growing), quantity });
  }

  /** What the open workbook has on its Rooms sheet; undefined where it takes no survey. */
  get rooms(): RoomsNow | undefined {
    return this.definition?.id === "multi-room" ? roomsNow(this.model) : undefined;
  }

  /** Adds outlets in one step. @returns a sentence where they have no place */
  addOutlets(rows: readonly SurveyRow[], changes: RowChanges): string | undefined {
    const plan = outletsToAdd(this.model, this.definition, rows, changes);
    if (typeof plan === "string") return plan;
    this.dispatch("RIGSHEET_ENTER_ROWS", {
      additions: plan.additions,
      quantity: plan.quantity,
      contents: plan.cells,
    });
    const [first] = plan.cells;
    if (first) this.goTo(first);
    return undefined;
  }

  /** Types all of it in one step, with rows added where they are wanting. @returns a sentence where a name that is needed is gone */
  enterAll(entries: readonly Entry[]): string | undefined {
    const typed = entriesToType(this.model, this.definition, entries);
    if (typeof typed === "string") return typed;
    this.dispatch("RIGSHEET_ENTER_ROWS", typed);
    return undefined;
  }

  private goTo({ sheetId, row }: GridPosition): void {
    bringUp(this.model, sheetId);
    this.model.selection.selectCell(0, row);
  }

  private get definition(): WorkbookDefinition | undefined {
    const { template } = this.getters.getBookFacts();
    return templates.find(({ id }) => id === template)?.definition;
  }

  /** Where rows would be added for the selected cell, or a sentence that says why there is no such place. */
  get rowsToAdd(): AddedRows | string {
    return rowsToAdd(this.model, this.definition);
  }

  toggleLock(): void {
    const { sheetId } = this.place;
    if (!this.guard.unlocked.delete(sheetId)) this.guard.unlocked.add(sheetId);
    this.refresh();
    this.focus();
  }

  private get getters(): DeskGetters {
    return this.model.getters as DeskGetters;
  }

  /** The sheets that can be seen, in groups. */
  get sheetGroups(): ReturnType<typeof groupedSheets> {
    const { getters } = this.model;
    const seen = getters.getSheetIds().filter((id) => getters.isSheetVisible(id));
    return groupedSheets(
      this.definition,
      seen.map((id) => getters.getSheetName(id)),
    );
  }

  /** What is filled of it, and what is missing. */
  steps(): FillingStep[] {
    return fillingSteps(this.book());
  }

  showSheet(name: string): void {
    const sheetId = this.model.getters.getSheetIdByName(name);
    if (sheetId) bringUp(this.model, sheetId);
  }

  /** The sheet and the cell that are selected. */
  get placeShown(): { sheet: string; cell: string } {
    const { sheetId, row, col } = this.place;
    return { sheet: this.model.getters.getSheetName(sheetId), cell: address(row, col) };
  }

  private get place(): GridPosition {
    return this.model.getters.getActivePosition();
  }

  /**
   * Shows a job in the place of the one that is shown.
   * @param label said before its title, for what is not the job itself
   * @returns its model, and how many of the last changes could not be shown
   * @throws Error with a sentence where it can't be shown at all; the open one then stays
   */
  async show(content: JobContent, transport: Transport, readonly: boolean, label = ""): Promise<Replayed> {
    const { model, lost } = replayed(content, transport);
    // Not from the first: the library would then never send a change of it.
    if (readonly) model.updateMode("readonly");
    // The library's editor goes with its grid, and what stands in it.
    const left = this.app && unfinishedEntry(this.model, this.title, this.entry.begun);
    if (left) this.bar.showNotice(notEntered("another job was opened", left), true);
    this.entry.set(undefined);
    this.shown++;
    this.app?.destroy();
    this.model = model;
    this.label = label;
    this.guard.unlocked.clear();
    this.timeRecalculations();
    model.on("update", this, () => this.refresh());
    model.on("command-rejected", this, (rejection) => {
      this.deleteRest(rejection as unknown as Rejection);
      this.sortRows(rejection as unknown as Rejection);
    });
    model.selection.observe(this, { handleEvent: () => this.refresh() });
    this.app = new owl.App(
      library.Spreadsheet as never,
      {
        props: {
          model,
          notifyUser: ({ text }: { text: string }) => this.bar.showNotice(text),
          raiseError: (text: string, done?: () => void) => {
            const sentence = refusalFor(model, this.place, text);
            if (sentence) this.bar.showNotice(sentence);
            done?.();
          },
          askConfirmation: (text: string, confirm: () => void, cancel?: () => void) =>
            window.confirm(text) ? confirm() : cancel?.(),
        } as never,
        templates: this.gridTemplates,
      } as never,
    );
    this.spreadsheet = (await this.app.mount(this.root)) as unknown as { focusGrid(): void };
    this.refresh();
    this.focus();
    return { model, lost };
  }

  /** A recalculation holds the page up, so a long one is told of once it is over. */
  private timeRecalculations(): void {
    const { model, bar } = this;
    const dispatch = model.dispatch;
    let depth = 0;
    model.dispatch = ((type: never, payload: never) => {
      const start = performance.now();
      depth++;
      try {
        return dispatch(type, payload);
      } finally {
        depth--;
        const took = performance.now() - start;
        if (depth === 0) bar.showWork(took > LONG_MS ? `recalculated in ${(took / 1000).toFixed(1)} s` : "");
      }
    }) as typeof dispatch;
  }

  /** Deleting a selection that holds calculated cells too clears the others. */
  private deleteRest({ command, result }: Rejection): void {
    const { type, sheetId, target } = command;
    if (!DELETIONS.has(type) || !result.isCancelledBecause(KEPT)) return;
    const rest = zonesWithout((position) => this.getters.isKeptCell(position), sheetId!, target ?? []);
    if (rest.length > 0) this.dispatch(type, { sheetId, target: rest });
  }

  /** The rows of a block are sorted with all of their inputs, whatever of them was selected. */
  private sortRows({ command, result }: Rejection): void {
    if (command.type !== "SORT_CELLS" || !result.isCancelledBecause(KEPT)) return;
    const sorted = sortRows(this.model, this.definition, command);
    if (typeof sorted === "string") return this.bar.showNotice(sorted);
    this.dispatch("RIGSHEET_SORT_ROWS", { contents: sorted.cells });
    this.bar.showNotice(
      `${inWords(sorted.rows, "row")} sorted by “${sorted.by}”, each with all of its inputs. Undo takes it back in one step.`,
    );
  }

  private refresh(): void {
    const { getters, place } = this;
    this.bar.showFigures(this.figures);
    this.bar.showSurvey(getters.getBookFacts().template === "multi-room");
    this.bar.showPrices(takesPrices(getters.getBookFacts().template) !== undefined);
    this.bar.showLock(
      getters.isGuardedSheet(place.sheetId) || this.guard.unlocked.has(place.sheetId),
      this.guard.unlocked.has(place.sheetId),
    );
    // Above the grid, where it covers no cell, least of all the one that is being typed into.
    const { refused } = this.entry;
    const { kind, text } = refused
      ? { kind: "refused", text: `Not taken: ${refused.sentence} Esc leaves the cell as it was.` }
      : wordsFor(this.model, place);
    this.line.className = `desk-line desk-${kind}`;
    this.line.role = refused ? "alert" : null;
    this.line.textContent = text;
    this.line.title = text;
    this.told.tell(() => cellInWords(this.model, this.place, this.definition));
    for (const changed of this.watchers) changed();
  }

  private get total(): string | undefined {
    const cell = this.named(estimate.quote.total.name);
    if (!cell) return undefined;
    // The customer's page shows a word, or nothing, where there is no sum.
    return cell.type === "number" ? `Total ${cell.formattedValue}` : "Total not known yet";
  }

  private named(name: string): NamedCell | undefined {
    return namedCell(this.model, name);
  }
}

type NamedCell = ReturnType<GridModel["getters"]["getEvaluatedCell"]>;

function namedCell({ getters }: GridModel, name: string): NamedCell | undefined {
  const range = getters.getNamedRange(name)?.range;
  if (!range) return undefined;
  const { sheetId, zone } = range;
  return getters.getEvaluatedCell({ sheetId, row: zone.top, col: zone.left });
}

/** What the list of jobs tells of a job that is shown. */
export const shelfLineOf = (model: GridModel): ShelfLine =>
  shelfLineFrom(
    (name) => {
      const cell = namedCell(model, name);
      return cell?.type === "error" ? undefined : (cell?.value ?? undefined);
    },
    (model.getters as DeskGetters).getBookFacts().title,
  );

/** A fresh document has a revision of its own, so that two fresh jobs are never taken for one another. */
export const documentOf = (book: Book): JobDocument =>
  ({ ...toDocument(book), revisionId: uuid() }) as unknown as JobDocument;
