/**
 * Keeps calculated cells and the workbook's own labels from being overwritten, by typing, deleting, pasting,
 * filling or dragging, and cells in which nothing is asked for from being filled. Only sheets that the workbook
 * marks as protected are guarded.
 */
import { templateOf } from "../../../workbooks/templates";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridLibrary, GridModel } from "../../grid/library";
import { validationAt } from "./cellLine";
import { leftInWords, type WhyLeft } from "./leftInWords";
import type { GridCommand, GridPosition, GridZone } from "./libraryTypes";

/** Why a command was refused, among the library's own reasons. */
export const KEPT = "RigsheetKeptCell";

export interface DeskGuard {
  /** Sheets that the user has unlocked, until the page is loaded again. */
  readonly unlocked: Set<string>;
  /** Told once for each step of the user's, with the sentence to show. */
  refused: (sentence: string) => void;
}

type Getters = GridModel["getters"] & { getBookFacts(): BookFacts };

// The library's plugin types can't be named from outside; these are the parts used here.
/* eslint-disable @typescript-eslint/no-explicit-any */
export function registerDeskPlugin(library: GridLibrary, guard: DeskGuard): void {
  class DeskPlugin extends (library.UIPlugin as any) {
    static getters = ["isKeptCell", "isGuardedSheet", "whyLeft"];
    static layers = [];
    private left = new Map<string, WhyLeft>();
    private guarded = new Map<string, boolean>();

    private get all(): Getters {
      return (this as any).getters;
    }

    isGuardedSheet(sheetId: string): boolean {
      let guarded = this.guarded.get(sheetId);
      if (guarded === undefined) {
        guarded = this.all.getBookFacts().sheets[sheetId]?.protected ?? false;
        this.guarded.set(sheetId, guarded);
      }
      return guarded && !guard.unlocked.has(sheetId);
    }

    /** Whether a cell of a guarded sheet must stay, and why. */
    isKeptCell(position: GridPosition): "calculated" | "label" | undefined {
      const cell = this.all.getCell(position);
      if (this.all.getArrayFormulaSpreadingOn(position)) return "calculated";
      // An input may be typed as a sum, and stays an input.
      if (cell?.isFormula) return validationAt({ getters: this.all }, position) ? undefined : "calculated";
      // A label is text that came with the template's look; what a person jotted beside it has none.
      const styled = cell?.content && Object.keys(cell.style ?? {}).length > 0;
      if (!styled || this.all.getBookFacts().template === "") return undefined;
      return validationAt({ getters: this.all }, position) ? undefined : "label";
    }

    /**
     * Why a cell of a guarded sheet takes no content. In a workbook of our templates that is every cell which is no
     * box: what stands anywhere else is neither counted nor printed.
     */
    whyLeft(position: GridPosition): WhyLeft | undefined {
      const kept = this.isKeptCell(position);
      if (kept || !templateOf(this.all.getBookFacts().template)) return kept;
      return validationAt({ getters: this.all }, position) ? undefined : "unasked";
    }

    allowDispatch(command: GridCommand): string {
      const { sheetId } = command;
      if (command.type === "DELETE_NAMED_RANGE") return this.keepName(command.name);
      if (command.type === "UPDATE_NAMED_RANGE") return this.keepName(command.oldRangeName);
      if (sheetId === undefined || !this.isGuardedSheet(sheetId)) return "Success";
      switch (command.type) {
        case "UPDATE_CELL":
          if (command.content === undefined) return "Success";
          // What strayed into a cell may always be taken out of it.
          return this.keep([this.cellOf(command)], command.content === "" ? this.isKept : this.isLeft);
        case "CLEAR_CELL":
          return this.keep([this.cellOf(command)]);
        case "DELETE_CONTENT":
        case "DELETE_UNFILTERED_CONTENT":
        case "CLEAR_CELLS":
        case "ADD_MERGE":
        case "MOVE_RANGES":
          return this.keep(cellsOf(sheetId, command.target ?? []));
        case "REMOVE_COLUMNS_ROWS":
        case "MOVE_COLUMNS_ROWS":
          return this.keepBlocks(command);
        case "SORT_CELLS":
          // The desk sorts whole rows in its place.
          return KEPT;
        default:
          return "Success";
      }
    }

    handle(command: GridCommand): void {
      if (command.type === "RIGSHEET_ENTER_AGAIN") this.enterAgain(command.cells ?? []);
      if (command.type === "RIGSHEET_SORT_ROWS")
        for (const cell of command.contents ?? []) (this as any).dispatch("UPDATE_CELL", cell);
    }

    /** The library takes no content that a cell has already, so each is emptied first. */
    private enterAgain(cells: readonly GridPosition[]): void {
      for (const { sheetId, row, col } of cells) {
        const cell = this.all.getCell({ sheetId, row, col });
        if (!cell?.isFormula) continue;
        const content = cell.compiledFormula.toFormulaString(this.all);
        (this as any).dispatch("UPDATE_CELL", { sheetId, row, col, content: "" });
        (this as any).dispatch("UPDATE_CELL", { sheetId, row, col, content });
      }
    }

    private cellOf({ sheetId, row, col }: GridCommand): GridPosition {
      return { sheetId: sheetId!, row: row!, col: col! };
    }

    private readonly isKept = (position: GridPosition): WhyLeft | undefined => this.isKeptCell(position);
    private readonly isLeft = (position: GridPosition): WhyLeft | undefined => this.whyLeft(position);

    private keep(positions: Iterable<GridPosition>, whyOf = this.isKept): string {
      let kept = false;
      for (const position of positions) {
        const why = whyOf(position);
        if (why) this.report(position, why);
        kept ||= why !== undefined;
      }
      return kept ? KEPT : "Success";
    }

    /** Formulas, the pane and the review know the workbook's cells by their names. */
    private keepName(name: string | undefined): string {
      const sheetId = name && this.all.getNamedRange(name)?.range.sheetId;
      if (!sheetId || this.all.getBookFacts().template === "" || !this.isGuardedSheet(sheetId))
        return "Success";
      guard.refused(
        `The workbook's formulas know cells of the sheet ${this.all.getSheetName(sheetId)} by the name “${name}”, so it was left. To change it anyway, choose that sheet and use “Unlock sheet” in the bar above.`,
      );
      return KEPT;
    }

    /** A row or column may go unless a column's one formula stands in it, or all of a named range. */
    private keepBlocks({ sheetId, dimension, elements }: GridCommand): string {
      const taken = new Set(elements);
      const within = (from: number, to: number) => {
        for (let index = from; index <= to; index++) if (!taken.has(index)) return false;
        return true;
      };
      const along = (zone: GridZone): [number, number] =>
        dimension === "ROW" ? [zone.top, zone.bottom] : [zone.left, zone.right];
      const named = this.all
        .getNamedRanges()
        .find(({ range }) => range.sheetId === sheetId && within(...along(range.zone)));
      if (named) {
        guard.refused(
          `The workbook's formulas use the cells named “${named.name}” here, so they were left. Clear the inputs instead.`,
        );
        return KEPT;
      }
      for (const cell of this.all.getCells(sheetId!)) {
        if (!cell.isFormula) continue;
        const position = this.all.getCellPosition(cell.id);
        if (!taken.has(dimension === "ROW" ? position.row : position.col)) continue;
        const zone = this.all.getSpreadZone(position);
        if (zone && !within(...along(zone))) {
          guard.refused(
            `This ${dimension === "ROW" ? "row holds the formulas" : "column holds part of the formulas"} of a whole block, so it was left. Clear its inputs instead, or remove another ${dimension === "ROW" ? "row" : "column"}.`,
          );
          return KEPT;
        }
      }
      return "Success";
    }

    /** One notice for all the cells of one step: a paste asks cell by cell. */
    private report({ sheetId, row, col }: GridPosition, why: WhyLeft): void {
      if (this.left.size === 0) {
        queueMicrotask(() => {
          guard.refused(leftInWords([...this.left.values()]));
          this.left.clear();
        });
      }
      this.left.set(`${sheetId} ${row} ${col}`, why);
    }
  }
  library.registries.featurePluginRegistry.add("rigsheet_desk", DeskPlugin as any);
}
/* eslint-enable @typescript-eslint/no-explicit-any */

function* cellsOf(sheetId: string, zones: readonly GridZone[]): Generator<GridPosition> {
  for (const { top, left, bottom, right } of zones) {
    for (let row = top; row <= bottom; row++) {
      for (let col = left; col <= right; col++) yield { sheetId, row, col };
    }
  }
}

/**
 * What is left of zones without the cells that must stay, as one zone for each
 * stretch of a row: deleting a selection that holds some of them clears the rest.
 */
export function zonesWithout(
  isKept: (position: GridPosition) => unknown,
  sheetId: string,
  zones: readonly GridZone[],
): GridZone[] {
  const rest: { top: number; left: number; bottom: number; right: number }[] = [];
  for (const position of cellsOf(sheetId, zones)) {
    if (isKept(position)) continue;
    const { row, col } = position;
    const last = rest.at(-1);
    if (last?.top === row && last.right === col - 1) last.right = col;
    else rest.push({ top: row, left: col, bottom: row, right: col });
  }
  return rest;
}
