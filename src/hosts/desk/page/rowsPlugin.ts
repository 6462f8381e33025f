/**
 * Rows of blocks, by whatever road they come: added at the end, brought by a survey, or inserted and removed by
 * the grid's own menus. A block and those that mirror it keep the same rows, new rows look like the rows beside
 * them, and all of it is one step that one undo takes back.
 */
import { callsUs } from "../../../formula/callsUs";
import { inputLook, resultLook } from "../../../workbooks/looks";
import { familyOf, type PlacedBlock } from "../../../workbooks/placedBlocks";
import { holdsText } from "../../../workbooks/typed/holdsText";
import { templateOf } from "../../../workbooks/templates";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridLibrary, GridModel } from "../../grid/library";
import { borderOf, isGridFormat, styleOf } from "../../grid/toDocument";
import { blocksOnGrid } from "./blocksOnGrid";
import { KEPT, type DeskGuard } from "./deskPlugin";
import type { GridCommand, GridZone } from "./libraryTypes";

type Getters = GridModel["getters"] & {
  getBookFacts(): BookFacts;
  isGuardedSheet(sheetId: string): boolean;
};

/** Rows that go into a block, or out of it, as counted from the thin row above its data. */
interface Following {
  readonly chosen: PlacedBlock;
  /** The rows that are removed, or the one place at which rows are inserted. */
  readonly offsets: readonly number[];
}

// The library's plugin types can't be named from outside; these are the parts used here.
/* eslint-disable @typescript-eslint/no-explicit-any */
export function registerRowsPlugin(library: GridLibrary, guard: Pick<DeskGuard, "refused">): void {
  class RowsPlugin extends (library.UIPlugin as any) {
    static getters = [];
    static layers = [];
    /** What follows from a command, found while the rows lie as before it. */
    private readonly following = new WeakMap<GridCommand, Following>();
    /** The rows that are inserted or removed are the plugin's own doing. */
    private own = false;

    private get all(): Getters {
      return (this as any).getters;
    }

    private get blocks(): PlacedBlock[] {
      return blocksOnGrid({ getters: this.all }, templateOf(this.all.getBookFacts().template)?.definition);
    }

    allowDispatch(command: GridCommand): string {
      const { type, dimension, sheetId, elements = [] } = command;
      if (this.own || type !== "REMOVE_COLUMNS_ROWS" || dimension !== "ROW") return "Success";
      if (!this.all.isGuardedSheet(sheetId!)) return "Success";
      const mirror = this.blocks.find(
        (one) => one.block.mirrors && one.sheet === sheetId && elements.some((row) => isData(one.zone, row)),
      );
      if (!mirror) return "Success";
      const master = this.blocks.find(({ block }) => block.name === mirror.block.mirrors);
      guard.refused(
        `The rows of ${mirror.block.heading} stand for rows of another sheet, so they were left. ${master ? `Remove the rows on ${this.all.getSheetName(master.sheet)}: these go with them.` : ""}`.trim(),
      );
      return KEPT;
    }

    beforeHandle(command: GridCommand): void {
      const following = this.own ? undefined : this.followingOf(command);
      if (following) this.following.set(command, following);
    }

    handle(command: GridCommand): void {
      if (command.type === "RIGSHEET_ADD_ROWS" || command.type === "RIGSHEET_ENTER_ROWS") {
        this.byItself(() => {
          for (const { block, offset, quantity = command.quantity ?? 0 } of command.additions ?? [])
            this.insertAt(block, offset, quantity);
        });
        for (const cell of command.contents ?? []) (this as any).dispatch("UPDATE_CELL", cell);
      }
      const following = this.following.get(command);
      if (following) this.byItself(() => this.follow(command, following));
    }

    private byItself(work: () => void): void {
      this.own = true;
      try {
        work();
      } finally {
        this.own = false;
      }
    }

    private followingOf(command: GridCommand): Following | undefined {
      const { type, dimension, sheetId, elements = [], base = 0, position } = command;
      if (dimension !== "ROW") return undefined;
      const here = this.blocks.filter((one) => one.sheet === sheetId);
      if (type === "ADD_COLUMNS_ROWS") {
        const first = position === "before" ? base : base + 1;
        const chosen = here.find(({ zone }) => zone.top < first && first <= zone.bottom);
        return chosen && { chosen, offsets: [first - chosen.zone.top] };
      }
      if (type !== "REMOVE_COLUMNS_ROWS") return undefined;
      const chosen = here.find(
        ({ block, zone }) => !block.mirrors && elements.some((row) => isData(zone, row)),
      );
      return (
        chosen && {
          chosen,
          offsets: elements.filter((row) => isData(chosen.zone, row)).map((row) => row - chosen.zone.top),
        }
      );
    }

    private follow(command: GridCommand, { chosen, offsets }: Following): void {
      const { sheetId, base = 0, quantity = 0 } = command;
      const [offset] = offsets;
      if (offset === undefined) return;
      const inserts = command.type === "ADD_COLUMNS_ROWS";
      if (inserts) {
        const first = chosen.zone.top + offset;
        // What is inserted beside a thin row is as thin as that.
        if (base === chosen.zone.top || base === chosen.zone.bottom) {
          this.remove(
            sheetId!,
            Array.from({ length: quantity }, (_, index) => first + index),
          );
          this.insertAt(chosen.block.name, offset, quantity);
        } else this.box(sheetId!, first, quantity, base < first ? base : base + quantity);
      }
      for (const { block } of familyOf(this.blocks, chosen)) {
        if (block.name === chosen.block.name) continue;
        if (inserts) this.insertAt(block.name, offset, quantity);
        else this.removeFrom(block.name, offsets);
      }
    }

    /** Rows of a block that look like the row above them; like the one below where they come first. */
    private insertAt(name: string, offset: number, quantity: number): void {
      const placed = this.blocks.find(({ block }) => block.name === name);
      if (!placed) return;
      const { sheet, zone } = placed;
      const first = Math.min(zone.top + offset, zone.bottom);
      if (first - 1 > zone.top) this.insert(sheet, first - 1, "after", quantity);
      else if (first < zone.bottom) this.insert(sheet, first, "before", quantity);
      else {
        this.insert(sheet, first - 1, "after", quantity);
        this.paint(placed, first, quantity);
      }
    }

    /** Rows between two thin rows, where none is left that they could look like. */
    private paint({ block, sheet: sheetId }: PlacedBlock, first: number, quantity: number): void {
      const rows = Array.from({ length: quantity }, (_, index) => first + index);
      (this as any).dispatch("RESIZE_COLUMNS_ROWS", {
        sheetId,
        dimension: "ROW",
        elements: rows,
        size: null,
      });
      for (const { key, input, formula = "", format = "text" } of block.columns) {
        const zone = this.all.getNamedRange(`${block.name}_${key}`)?.range.zone;
        if (!zone) continue;
        const look = input ? inputLook(format, holdsText(input.rule)) : resultLook(format, callsUs(formula));
        const style = styleOf(look);
        const shown = isGridFormat(look.format) ? look.format : "";
        for (const row of rows) {
          for (let col = zone.left; col <= zone.right; col++)
            (this as any).dispatch("UPDATE_CELL", { sheetId, row, col, style, format: shown });
        }
        const target = [{ ...zone, top: first, bottom: first + quantity - 1 }];
        if (look.edges)
          (this as any).dispatch("SET_BORDERS_ON_TARGET", { sheetId, target, border: borderOf(look.edges) });
      }
    }

    private removeFrom(name: string, offsets: readonly number[]): void {
      const placed = this.blocks.find(({ block }) => block.name === name);
      if (!placed) return;
      const rows = offsets
        .map((offset) => placed.zone.top + offset)
        .filter((row) => isData(placed.zone, row));
      this.remove(placed.sheet, rows);
    }

    private insert(sheetId: string, base: number, position: "before" | "after", quantity: number): void {
      const sheetName = this.all.getSheetName(sheetId);
      const command = { sheetId, sheetName, dimension: "ROW", base, position, quantity };
      (this as any).dispatch("ADD_COLUMNS_ROWS", command);
      if (position === "after") this.box(sheetId, base + 1, quantity, base);
      else this.box(sheetId, base, quantity, base + quantity);
    }

    /** The library (19.3.7) gives new rows the looks of the row beside them, but at the edge of a block not its boxes. */
    private box(sheetId: string, first: number, quantity: number, like: number): void {
      for (let col = 0; col < this.all.getNumberCols(sheetId); col++) {
        const border = this.all.getCellBorder({ sheetId, row: like, col });
        if (!border) continue;
        const target = [{ top: first, bottom: first + quantity - 1, left: col, right: col }];
        (this as any).dispatch("SET_BORDERS_ON_TARGET", { sheetId, target, border });
      }
    }

    private remove(sheetId: string, elements: readonly number[]): void {
      const sheetName = this.all.getSheetName(sheetId);
      (this as any).dispatch("REMOVE_COLUMNS_ROWS", { sheetId, sheetName, dimension: "ROW", elements });
    }
  }
  library.registries.featurePluginRegistry.add("rigsheet_rows", RowsPlugin as any);
}
/* eslint-enable @typescript-eslint/no-explicit-any */

const isData = (zone: GridZone, row: number): boolean => zone.top < row && row < zone.bottom;
