/**
 * How far a stored sheet reaches, found before the library reads it: the
 * library makes a slot for every cell up to the last, so a file of a few
 * hundred bytes with a cell in the far corner would fill the memory.
 */
import { parseAddress } from "../../formula/address";
import { stop, troubles } from "./fileTrouble";
import { MAX_SHEET_COLUMNS, MAX_SHEET_ROWS } from "./limits";

/** A row's or a cell's opening tag, whatever its prefix; a quoted attribute may hold anything. */
const ROW_OR_CELL = /<(?:[^\s:<>/"'=!?]+:)?(row|c)(?=[\s/>])((?:[^>"']|"[^"]*"|'[^']*')*)>/g;
const POSITION = /\sr\s*=\s*(?:"([^"]*)"|'([^']*)'|(\S*))/;

/**
 * @param xml a worksheet part
 * @param part its name, for the sentence
 * @returns how many slots the sheet needs
 */
export function checkedGrid(xml: string, part: string): number {
  // No spreadsheet program writes comments or declarations here; with them two readers could see two sheets.
  if (xml.includes("<!")) stop(troubles.damaged(part));
  let rows = 0;
  let columns = 0;
  let row = 0;
  let column = 0;
  for (const [, tag, attributes] of xml.matchAll(ROW_OR_CELL)) {
    const found = POSITION.exec(attributes!);
    const position = found ? (found[1] ?? found[2] ?? found[3]!) : undefined;
    if (tag === "row") {
      if (position !== undefined && !/^[1-9]\d{0,6}$/.test(position)) stop(troubles.damaged(part));
      row = position === undefined ? row + 1 : Number(position);
      column = 0;
      continue;
    }
    if (position === undefined) column += 1;
    else {
      const place = /^[A-Z]+\d+$/i.test(position) ? parseAddress(position) : undefined;
      if (!place) return stop(troubles.damaged(part));
      row = place.row + 1;
      column = place.column + 1;
    }
    if (row > MAX_SHEET_ROWS || column > MAX_SHEET_COLUMNS) stop(troubles.sheetTooLarge(part, row, column));
    rows = Math.max(rows, row);
    columns = Math.max(columns, column);
  }
  return rows * columns;
}
