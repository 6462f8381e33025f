/**
 * Pasting. Into a guarded sheet only values go: its boxes keep their looks and their rules, a block becomes as long
 * as what is pasted into it, and what could not be taken is named. Elsewhere the library (19.3.7) pastes in its own
 * way, but reads what other programs put on the clipboard as they mean it: it took the line break at the end for one
 * row more, knew no quotes, and pasted nothing in the place of such text "as value".
 */
import { address } from "../../../formula/address";
import { jotted } from "../../../workbooks/typed/jotted";
import { templateOf } from "../../../workbooks/templates";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridLibrary, GridModel } from "../../grid/library";
import { clipboardRows } from "./clipboardText";
import { zonesWithout, type DeskGuard } from "./deskPlugin";
import { entered } from "./entered";
import { leftInWords, type WhyLeft } from "./leftInWords";
import type { GridPosition, GridZone } from "./libraryTypes";
import { blocksOnGrid } from "./blocksOnGrid";
import { roomForRows } from "./roomForRows";
import { contextIn } from "./typedCell";
import { valueToPaste, type CopiedCell } from "./valueToPaste";
import { notListed, notTaken, rowsAdded, type NotTaken } from "./pasteInWords";

type Cells = readonly (readonly (CopiedCell | undefined)[])[];
interface Corner {
  readonly row: number;
  readonly col: number;
}
interface Copied {
  readonly cells?: Cells;
  readonly zones?: readonly GridZone[];
  readonly sheetId?: string;
}
interface PasteOptions {
  readonly pasteOption?: "asValue" | "onlyFormat";
  readonly isCutOperation?: boolean;
  readonly selectTarget?: boolean;
}
interface PasteCommand {
  readonly type: string;
  readonly clipboardContent?: {
    readonly text?: string;
    readonly data?: unknown;
    readonly imageData?: unknown;
  };
}
type Getters = GridModel["getters"] & {
  getBookFacts(): BookFacts;
  isGuardedSheet(sheetId: string): boolean;
  isKeptCell(position: GridPosition): WhyLeft | undefined;
  whyLeft(position: GridPosition): WhyLeft | undefined;
};

/** Why a command was refused, among the library's own reasons. */
const WHOLE_ROWS = "RigsheetWholeRows";

// The library's plugin types can't be named from outside; these are the parts used here.
/* eslint-disable @typescript-eslint/no-explicit-any */
export function registerPastePlugin(library: GridLibrary, guard: Pick<DeskGuard, "refused">): void {
  const plugins = library.registries.statefulUIPluginRegistry;
  const OfLibrary = plugins.get("clipboard") as any;

  class Clipboard extends OfLibrary {
    /** What is pasted was not copied here: from another program, or from another tab with a job of its own. */
    private fromOutside = false;

    private get all(): Getters {
      return (this as any).getters;
    }

    allowDispatch(command: PasteCommand): string {
      const moves = command.type === "INSERT_CELL" || command.type === "DELETE_CELL";
      if (!moves || !this.all.isGuardedSheet(this.all.getActiveSheetId()))
        return super.allowDispatch(command);
      guard.refused(
        "Cells of a row of this sheet belong together, so none were moved alone. Insert or delete whole rows by the menu of the row numbers, or use “Unlock sheet” in the bar above.",
      );
      return WHOLE_ROWS;
    }

    handle(command: PasteCommand): void {
      const { text, data, imageData } = command.clipboardContent ?? {};
      if (command.type === "PASTE_FROM_OS_CLIPBOARD" && !text && !data && !imageData)
        guard.refused("The clipboard holds no text, so nothing was pasted.");
      this.fromOutside = command.type === "PASTE_FROM_OS_CLIPBOARD";
      super.handle(command);
      this.fromOutside = false;
    }

    convertTextToClipboardData(text: string): Copied {
      const rows = clipboardRows(text);
      if (rows.length === 0) return {};
      const width = Math.max(...rows.map((row) => row.length));
      const filled = rows.map((row) => Array.from({ length: width }, (_, index) => row[index]));
      const cells = filled.map((row) => row.map(cellOf));
      // Where the library pastes in its own way, no rule says what a text is.
      const plain = filled.map((row) => row.map((one) => cellOf(one && this.asContent(one))));
      return { cells, cell: { cells: plain } } as Copied;
    }

    /** What another program's text means where it is not asked for. */
    private asContent(text: string): string {
      const { writing } = contextIn({ getters: this.all });
      if (!writing || /[\t\r\n]/.test(text)) return text;
      return jotted(text, writing) ?? super.convertTextToClipboardData(text).cells[0][0].content;
    }

    /** Of a result that spills the library copies what is shown, with its signs, and not the number. */
    copy(zones: readonly GridZone[], mode?: string): Copied {
      const copied = super.copy(zones, mode) as Copied;
      for (const cell of copied.cells?.flat() ?? []) {
        const value = cell?.evaluatedCell.value;
        if (cell && !cell.compiledFormula && cell.content !== "" && typeof value === "number")
          (cell as { content: string }).content = String(value);
      }
      return copied;
    }

    paste(zones: readonly GridZone[], copied: Copied | undefined, options: PasteOptions): void {
      if (!copied) return;
      const sheetId = this.all.getActiveSheetId();
      const guarded = this.all.isGuardedSheet(sheetId);
      const moves = options.isCutOperation === true;
      // Names and boxes stay where they are: of what is cut from a guarded sheet, or into one, the values move.
      const values = guarded || (copied.sheetId !== undefined && this.all.isGuardedSheet(copied.sheetId));
      if (!guarded || !copied.cells) {
        super.paste(zones, copied, values ? { ...options, isCutOperation: false } : options);
      } else if (options.pasteOption === "onlyFormat") {
        guard.refused(
          "The looks of this sheet's boxes say what they are for, so they were left as they are.",
        );
        return;
      } else {
        const { zone, said, whole } = this.pasteValues(sheetId, zones, copied.cells, options);
        // Nothing is lost of what was not taken, nor of what rows that were added have moved away.
        const stays = moves && !whole && "What was cut stands where it stood as well.";
        if (said.length > 0) guard.refused([...said, stays].filter(Boolean).join(" "));
        if (moves && whole) this.clear(copied, { sheetId, zone });
        return;
      }
      if (moves && values) this.clear(copied);
    }

    /** @returns where the values went, what is to be said of it, and whether all were taken into the rows there were */
    private pasteValues(
      sheetId: string,
      zones: readonly GridZone[],
      copied: Cells,
      { pasteOption }: PasteOptions,
    ): { zone: GridZone; said: string[]; whole: boolean } {
      const heads = this.beginsWithHeads(sheetId, zones, copied);
      const all = heads ? copied.slice(1) : copied;
      const corners = zones.flatMap((zone) => cornersIn(zone, zones.length > 1 ? [] : all));
      const [only, ...more] = corners;
      const room = more.length === 0 ? this.roomAt(sheetId, only!, all) : undefined;
      if (room && room.quantity > 0) {
        const { additions, quantity } = room;
        (this as any).dispatch("RIGSHEET_ADD_ROWS", { additions, quantity });
      }
      const cells = room ? all.slice(0, room.height) : all;
      const left: WhyLeft[] = [];
      const refused: NotTaken[] = [];
      const unlisted: Omit<NotTaken, "sentence">[] = [];
      for (const { row, col } of room ? [{ ...only!, row: room.top }] : corners) {
        for (const [down, line] of cells.entries()) {
          for (const [aside, cell] of line.entries()) {
            const place = { sheetId, row: row + down, col: col + aside };
            const why = cell && this.enter(place, cell, pasteOption === "asValue");
            if (typeof why === "string") left.push(why);
            else if (why) {
              const at = address(place.row, place.col);
              if (why.sentence === undefined) unlisted.push({ at, text: why.text });
              else refused.push({ at, text: why.text, sentence: why.sentence });
            }
          }
        }
      }
      const said = [
        heads && "The first row was left out: it holds the heads.",
        room && room.quantity > 0 && rowsAdded(room),
        notTaken(refused),
        notListed(unlisted),
        leftInWords(left),
      ].filter((sentence) => typeof sentence === "string" && sentence !== "") as string[];
      const zone = around(room ? [{ ...only!, row: room.top }] : corners, cells);
      this.select(zones[0]!, zone);
      return { zone, said, whole: left.length + refused.length + (room?.quantity ?? 0) === 0 };
    }

    /** The place in a block that one copy goes into, with as many rows as it needs there. */
    private roomAt(sheetId: string, { row, col }: Corner, cells: Cells) {
      const filled = lastFilled(cells) + 1;
      const bottom = row + Math.max(filled, 1) - 1;
      const zone = { top: row, left: col, bottom, right: col + cells[0]!.length - 1 };
      const room = roomForRows(this.all, this.blocks, sheetId, zone);
      // Rows that are blank at the end blank what the block has there, and nothing beyond it.
      return room && { ...room, ...(filled === 0 && { quantity: 0 }), height: Math.max(filled, room.rows) };
    }

    /** @returns why it was not taken; its text alone where it was, but is on no list that the cell offers */
    private enter(
      place: GridPosition,
      cell: CopiedCell,
      asValue: boolean,
    ): WhyLeft | { readonly text: string; readonly sentence?: string } | undefined {
      const isValue = asValue || this.fromOutside || this.isCalculated(cell);
      const pasted = valueToPaste(this.all, place, cell, isValue);
      const why = this.all.whyLeft(place);
      if (why) return pasted.text === "" ? undefined : why;
      const taken = "content" in pasted ? pasted : entered({ getters: this.all }, place, pasted.text);
      if ("refused" in taken) return { text: pasted.text, sentence: taken.refused };
      (this as any).dispatch("UPDATE_CELL", { ...place, content: taken.content });
      return "unlisted" in taken && taken.unlisted ? { text: pasted.text } : undefined;
    }

    /** Its formula fills a whole column, which is no thing to copy. */
    private isCalculated({ position }: CopiedCell): boolean {
      return position !== undefined && this.all.isKeptCell(position) === "calculated";
    }

    private get blocks() {
      return blocksOnGrid({ getters: this.all }, templateOf(this.all.getBookFacts().template)?.definition);
    }

    /** Whether heads were copied along with a list; one word alone may as well be a name. */
    private beginsWithHeads(sheetId: string, [zone]: readonly GridZone[], cells: Cells): boolean {
      const words = cells[0]!.flatMap((cell) => (cell?.content && !cell.position ? [cell.content] : []));
      const placed = this.blocks.find(
        (one) => one.sheet === sheetId && zone && one.zone.top < zone.top && zone.top <= one.zone.bottom,
      );
      const heads = new Set(placed?.block.columns.map(({ head }) => head.toLowerCase()));
      const found = words.map((word) => word.trim().toLowerCase()).filter((word) => heads.has(word));
      return cells.length > 1 && words.length > 1 && new Set(found).size === words.length;
    }

    private select({ top, left }: GridZone, zone: GridZone): void {
      if (zone.top === zone.bottom && zone.left === zone.right) return;
      const { selection } = this as any;
      selection.getBackToDefault();
      selection.selectZone(
        { cell: { col: left, row: Math.max(top, zone.top) }, zone },
        { scrollIntoView: false },
      );
    }

    /** What was cut leaves its cells, but for those that it was pasted into. */
    private clear({ sheetId, zones = [] }: Copied, onto?: { sheetId: string; zone: GridZone }): void {
      const isTarget = ({ row, col }: GridPosition): boolean =>
        onto?.sheetId === sheetId &&
        onto!.zone.top <= row &&
        row <= onto!.zone.bottom &&
        onto!.zone.left <= col &&
        col <= onto!.zone.right;
      const isGuarded = this.all.isGuardedSheet(sheetId!);
      const isKept = (place: GridPosition): boolean =>
        isTarget(place) || (isGuarded && this.all.isKeptCell(place) !== undefined);
      const rest = zonesWithout(isKept, sheetId!, zones);
      if (rest.length > 0) (this as any).dispatch("DELETE_CONTENT", { sheetId, target: rest });
    }
  }
  plugins.replace("clipboard", Clipboard as never);
}
/* eslint-enable @typescript-eslint/no-explicit-any */

/** A cell that a short row of text does not have leaves what it is pasted onto. */
const cellOf = (content: string | undefined): CopiedCell | undefined =>
  content === undefined ? undefined : { content, evaluatedCell: { value: content, formattedValue: content } };

/** The places at which a copy begins: one, or as many as fit into what is selected. */
function cornersIn(zone: GridZone, cells: Cells): Corner[] {
  const height = Math.max(cells.length, 1);
  const width = Math.max(cells[0]?.length ?? 0, 1);
  const corners: Corner[] = [];
  for (let row = zone.top; row === zone.top || row + height - 1 <= zone.bottom; row += height) {
    for (let col = zone.left; col === zone.left || col + width - 1 <= zone.right; col += width)
      corners.push({ row, col });
  }
  return corners;
}

/** What copies at these places cover together. */
function around(corners: readonly Corner[], cells: Cells): GridZone {
  const height = Math.max(cells.length, 1);
  const rows = corners.map(({ row }) => row);
  const columns = corners.map(({ col }) => col);
  return {
    top: Math.min(...rows),
    left: Math.min(...columns),
    bottom: Math.max(...rows) + height - 1,
    right: Math.max(...columns) + (cells[0]?.length ?? 1) - 1,
  };
}

function lastFilled(cells: Cells): number {
  for (let row = cells.length - 1; row >= 0; row--)
    if (cells[row]!.some((cell) => cell && cell.content !== "")) return row;
  return -1;
}
