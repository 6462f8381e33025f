/**
 * Keeps calculated cells from being overwritten, by typing, deleting, pasting,
 * filling or dragging, and adds rows to a block in one step that one undo takes
 * back. Only sheets that the workbook marks as protected are guarded.
 */
import type { BookFacts } from "../../grid/bookFacts";
import type { GridLibrary, GridModel } from "../../grid/library";
import type { GridCommand, GridPosition, GridZone } from "./libraryTypes";

/** Why a command was refused, among the library's own reasons. */
const CALCULATED = "RigsheetCalculatedCell";

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
    static getters = ["isCalculatedCell", "isGuardedSheet"];
    static layers = [];
    private left = new Set<string>();
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

    isCalculatedCell(position: GridPosition): boolean {
      return (
        this.all.getCell(position)?.isFormula === true ||
        this.all.getArrayFormulaSpreadingOn(position) !== undefined
      );
    }

    allowDispatch(command: GridCommand): string {
      const { sheetId } = command;
      if (sheetId === undefined || !this.isGuardedSheet(sheetId)) return "Success";
      switch (command.type) {
        case "UPDATE_CELL":
          return command.content === undefined ? "Success" : this.keep(this.cellOf(command));
        case "CLEAR_CELL":
          return this.keep(this.cellOf(command));
        case "DELETE_CONTENT":
        case "CLEAR_CELLS":
        case "ADD_MERGE":
        case "MOVE_RANGES":
          return this.keep(...this.calculatedIn(sheetId, command.target ?? []));
        case "REMOVE_COLUMNS_ROWS":
        case "MOVE_COLUMNS_ROWS":
          return this.keepBlocks(command);
        default:
          return "Success";
      }
    }

    handle(command: GridCommand): void {
      if (command.type !== "RIGSHEET_ADD_ROWS") return;
      for (const { sheetId, endRow } of command.additions ?? []) {
        (this as any).dispatch("ADD_COLUMNS_ROWS", {
          sheetId,
          sheetName: this.all.getSheetName(sheetId),
          dimension: "ROW",
          base: endRow - 1,
          position: "after",
          quantity: command.quantity,
        });
      }
    }

    private cellOf({ sheetId, row, col }: GridCommand): GridPosition {
      return { sheetId: sheetId!, row: row!, col: col! };
    }

    private keep(...positions: GridPosition[]): string {
      const calculated = positions.filter((position) => this.isCalculatedCell(position));
      if (calculated.length === 0) return "Success";
      for (const position of calculated) this.report(position);
      return CALCULATED;
    }

    private calculatedIn(sheetId: string, zones: readonly GridZone[]): GridPosition[] {
      return zones.flatMap(({ top, left, bottom, right }) =>
        Array.from({ length: bottom - top + 1 }, (_, row) =>
          Array.from({ length: right - left + 1 }, (_, col) => ({
            sheetId,
            row: top + row,
            col: left + col,
          })),
        )
          .flat()
          .filter((position) => this.isCalculatedCell(position)),
      );
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
        return CALCULATED;
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
          return CALCULATED;
        }
      }
      return "Success";
    }

    /** One notice for all the cells of one step: a paste asks cell by cell. */
    private report({ sheetId, row, col }: GridPosition): void {
      if (this.left.size === 0) {
        queueMicrotask(() => {
          const count = this.left.size;
          this.left.clear();
          guard.refused(
            `${count === 1 ? "This cell is calculated, so it was" : `${count} cells are calculated, so they were`} left as ${count === 1 ? "it is" : "they are"}. To change ${count === 1 ? "it" : "them"} anyway, use “Unlock sheet” in the bar above.`,
          );
        });
      }
      this.left.add(`${sheetId} ${row} ${col}`);
    }
  }
  library.registries.featurePluginRegistry.add("rigsheet_desk", DeskPlugin as any);
}
/* eslint-enable @typescript-eslint/no-explicit-any */
