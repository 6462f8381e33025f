/** The desk without its page: the grid's model in Node, as the page's desk holds it. */
import { deskHost, type DeskSurroundings, type OpenDesk } from "../../../src/hosts/desk/page/deskHost";
import { registerDeskPlugin, type DeskGuard } from "../../../src/hosts/desk/page/deskPlugin";
import { additionsTo, rowsToAdd } from "../../../src/hosts/desk/page/blocksOnGrid";
import { registerFillPlugin } from "../../../src/hosts/desk/page/fillPlugin";
import { registerPastePlugin } from "../../../src/hosts/desk/page/pastePlugin";
import { registerRowsPlugin } from "../../../src/hosts/desk/page/rowsPlugin";
import { outletsToAdd } from "../../../src/hosts/desk/page/outletsToAdd";
import { readTables } from "../../../src/hosts/file/readTables";
import type { AddedRows } from "../../../src/workbooks/planAddedRows";
import { NO_CHANGES, type RowChanges } from "../../../src/workbooks/survey/merge";
import type { SurveyRow } from "../../../src/workbooks/survey/survey";
import { entriesToType } from "../../../src/hosts/desk/page/entriesToType";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import type { Entry } from "../../../src/standards/entries";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import type { GridModel } from "../../../src/hosts/grid/library";
import { registerShownAsWritten } from "../../../src/hosts/grid/shownAsWritten";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel, recalculate, trials } from "../../../src/hosts/headless/recalculate";
import { MemoryStorage } from "../../../src/hosts/storage/memoryStorage";
import { Reviews } from "../../../src/jobs/reviews";
import { reviewInFull } from "../../../src/review/reviewInFull";
import type { PaneHost, StandardsHere } from "../../../src/pane/host";
import { parseAddress, type Zone } from "../../../src/formula/address";
import type { Book, BookValue } from "../../../src/workbooks/book";
import { templateOf } from "../../../src/workbooks/templates";

// The library folds several edits of one step with a call that every browser has, and Node from 21 on.
(Object as { groupBy?: unknown }).groupBy ??= <T>(items: readonly T[], keyOf: (item: T) => string) => {
  const groups: Record<string, T[]> = {};
  for (const item of items) (groups[keyOf(item)] ??= []).push(item);
  return groups;
};

const library = loadLibrary();
registerShownAsWritten(library);
const guard: DeskGuard = { unlocked: new Set(), refused: (sentence) => refusals.push(sentence) };
const refusals: string[] = [];
registerDeskPlugin(library, guard);
registerRowsPlugin(library, guard);
registerPastePlugin(library, guard);
registerFillPlugin(library);
// As the page does: a row of outlets is copied whole, across frozen columns.
library.registries.clipboardHandlersRegistries.cellHandlers.remove("sheet");

export class DeskInNode implements OpenDesk {
  model: GridModel;
  readonly host: PaneHost;
  readonly copies: Uint8Array[] = [];
  /** Of a firm, among the jobs. */
  standards: readonly StandardsHere[] = [];
  readonly handedOver = new Map<string, Uint8Array>();
  readonly stored = new Map<string, string>();
  editing = false;
  storageRefused = false;
  private readonly reviews = Reviews.open(new MemoryStorage());
  private readonly watchers = new Set<() => void>();

  constructor(book: Book) {
    this.model = openModel(book);
    guard.unlocked.clear();
    refusals.length = 0;
    const around: DeskSurroundings = {
      library,
      guard,
      isEditing: () => this.editing,
      readTables,
      openFile: readXlsx,
      standardsHere: async () => this.standards,
      compute: recalculate,
      review: (given) => reviewInFull(given, trials),
      reviews: {
        marks: () => ["the open job"],
        keep: async (asked) => (await this.reviews).take(asked),
        settle: async (settling) => (await (await this.reviews).settle(settling)) ?? null,
      },
      takeUpgrade: async (given) => {
        await this.replace(given);
        return "upgraded";
      },
      handOver: async (given, kind) =>
        void this.copies.push(
          await writeXlsx(given, kind === "office" ? { frozen: true } : { sealed: true }),
        ),
      handOverPdf: async (wanted) => `${wanted.kind} is made`,
      handOverBook: async (given, file) => void this.handedOver.set(file, await writeXlsx(given)),
      storage: () => {
        if (this.storageRefused) throw new Error("refused");
        return {
          getItem: (key) => this.stored.get(key) ?? null,
          setItem: (key, value) => void this.stored.set(key, value),
        };
      },
    };
    this.host = deskHost(this, around);
  }

  /** What the grid itself said when it left a cell as it was. */
  get refusals(): readonly string[] {
    return refusals;
  }

  get rowsToAdd(): AddedRows | string {
    const { getters } = this.model;
    const { template } = (getters as unknown as { getBookFacts(): { template: string } }).getBookFacts();
    return rowsToAdd(this.model, templateOf(template)?.definition);
  }

  addOutlets(rows: readonly SurveyRow[], changes: RowChanges = NO_CHANGES): string | undefined {
    const { template } = (
      this.model.getters as unknown as { getBookFacts(): { template: string } }
    ).getBookFacts();
    const plan = outletsToAdd(this.model, templateOf(template)?.definition, rows, changes);
    if (typeof plan === "string") return plan;
    this.dispatchAs("RIGSHEET_ENTER_ROWS", { ...plan, contents: plan.cells });
    return undefined;
  }

  enterAll(entries: readonly Entry[]): string | undefined {
    const { template } = (
      this.model.getters as unknown as { getBookFacts(): { template: string } }
    ).getBookFacts();
    const typed = entriesToType(this.model, templateOf(template)?.definition, entries);
    if (typeof typed === "string") return typed;
    this.dispatchAs("RIGSHEET_ENTER_ROWS", typed);
    return undefined;
  }

  book(): Book {
    return quietly(() => fromModel(library, this.model));
  }

  async replace(book: Book): Promise<void> {
    this.model = openModel(book);
    this.changed();
  }

  addRows({ growing }: AddedRows, quantity: number): void {
    this.dispatch("RIGSHEET_ADD_ROWS", { additions: additionsTo(growing), quantity });
  }

  watch(changed: () => void): () => void {
    this.watchers.add(changed);
    return () => this.watchers.delete(changed);
  }

  /** What a person types into a cell. */
  type(sheet: string, at: string, content: BookValue): void {
    const { row, column } = parseAddress(at)!;
    const sheetId = this.model.getters.getSheetIdByName(sheet)!;
    this.dispatch("UPDATE_CELL", { sheetId, row, col: column, content: String(content) });
  }

  /** Many cells in one step, as a survey's. */
  enter(cells: readonly (readonly [sheet: string, at: string, content: BookValue])[]): void {
    const contents = cells.map(([sheet, at, content]) => {
      const { row, column } = parseAddress(at)!;
      const sheetId = this.model.getters.getSheetIdByName(sheet)!;
      return { sheetId, row, col: column, content: String(content) };
    });
    this.dispatch("RIGSHEET_ENTER_ROWS", { contents });
  }

  /** Text from the clipboard of the system, as the grid's keys and its menu hand it over. */
  paste(text: string, { asValue = false, zone }: { asValue?: boolean; zone: Zone }): void {
    this.dispatch("PASTE_FROM_OS_CLIPBOARD", {
      target: [zone],
      clipboardContent: { text },
      ...(asValue && { pasteOption: "asValue" }),
    });
  }

  /** Copied, or cut, and pasted as the grid's keys do it. */
  async copyPaste({
    sheet,
    from,
    onto = sheet,
    to,
    cut = false,
    pasteOption,
  }: {
    sheet: string;
    from: Zone;
    onto?: string;
    to: Zone;
    cut?: boolean;
    pasteOption?: "asValue" | "onlyFormat";
  }): Promise<void> {
    const select = (zone: Zone): void =>
      void this.model.selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone });
    await this.host.goTo(sheet, "A1");
    select(from);
    this.dispatch(cut ? "CUT" : "COPY", {});
    if (onto !== sheet) await this.host.goTo(onto, "A1");
    select(to);
    this.dispatch("PASTE", { target: [to], ...(pasteOption && { pasteOption }) });
  }

  undo(): void {
    this.dispatch("REQUEST_UNDO", {});
  }

  redo(): void {
    this.dispatch("REQUEST_REDO", {});
  }

  /** A command of the page's own. */
  dispatchAs(type: string, payload: object): void {
    this.dispatch(type, payload);
  }

  private dispatch(type: string, payload: object): void {
    quietly(() => this.model.dispatch(type as never, payload as never));
    this.changed();
  }

  private changed(): void {
    for (const changed of this.watchers) changed();
  }
}
