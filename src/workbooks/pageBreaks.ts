/**
 * Where the pages of a sheet should end, so that a heading does not stand alone
 * at the foot of one and a part that fits a page is not parted without need.
 *
 * How much a page holds depends on fonts that are not at hand: it is taken
 * rather small, because a break after a page that ended by itself would leave
 * the next one nearly empty. Excel leaves such breaks aside where a sheet is
 * fitted to a page's width (from memory); LibreOffice keeps them.
 */
import { address, parseRange } from "../formula/address";
import type { BookPrint, BookSheet, Look } from "./book";
import { LOOKS } from "./looks";
import { pageRoom, POINTS_PER_CHARACTER, USUAL_WIDTH } from "./pageRoom";
import { LINE_POINTS } from "./sheetLayout";

/** A page that is emptier than this takes the beginning of a part that fits no page, or not the rest of this one. */
const FULL_ENOUGH = 0.45;
/** A heading, its heads and units, and the first rows: so much of a part stands together. */
const LEAD_POINTS = 8 * LINE_POINTS;

/**
 * @param sheet as it will print: without its empty rows, with its paper chosen
 * @param looks of its book
 * @returns rows (1-based) after which a page ends; undefined for a sheet that has no headings to end it by
 */
export function pageBreaks(sheet: BookSheet, looks: readonly Look[]): number[] | undefined {
  const { print } = sheet;
  const area = parseRange(print?.area ?? "");
  if (!print || !area || print.onePage) return undefined;
  const room = pagePoints(print, widthOf(sheet, area.left, area.right));
  const repeated =
    print.repeatTo === undefined
      ? 0
      : heightOf(sheet, (print.repeatFrom ?? print.repeatTo) - 1, print.repeatTo);
  const starts = headings(sheet, looks, area.top, area.bottom);
  if (starts.length === 0) return undefined;
  // No page would have room for anything else.
  if (repeated >= room) return [];

  const breaks: number[] = [];
  let used = heightOf(sheet, area.top, starts[0]!);
  for (const [index, start] of starts.entries()) {
    const height = heightOf(sheet, start, starts[index + 1] ?? area.bottom + 1);
    if (used + height <= room) {
      used += height;
      continue;
    }
    const fitsAPage = repeated + height <= room;
    const lead = Math.min(height, LEAD_POINTS);
    if (used + lead > room || (fitsAPage && used > FULL_ENOUGH * room)) {
      breaks.push(start);
      used = repeated;
    }
    // LibreOffice now and then counts a page too many of a sheet that it fits to a width and parts by itself.
    const end = starts[index + 1] ?? area.bottom + 1;
    for (let row = start; row < end; row++) {
      const points = heightOf(sheet, row, row + 1);
      if (used + points > room) {
        breaks.push(row);
        used = repeated;
      }
      used += points;
    }
  }
  return breaks;
}

/** What a page holds, in points of the sheet before it is made smaller to fit. */
function pagePoints(print: BookPrint, width: number): number {
  const { across, down } = pageRoom(print);
  return down / Math.min(1, across / width);
}

function widthOf({ columnWidths }: BookSheet, from: number, to: number): number {
  let characters = 0;
  for (let column = from; column <= to; column++) characters += columnWidths[column] ?? USUAL_WIDTH;
  return characters * POINTS_PER_CHARACTER;
}

/** @param to the first row that no longer counts */
function heightOf({ rowHeights }: BookSheet, from: number, to: number): number {
  let points = 0;
  for (let row = from; row < to; row++) points += rowHeights[row] ?? LINE_POINTS;
  return points;
}

/** The rows whose first cell has the look of a heading. */
function headings({ cells }: BookSheet, looks: readonly Look[], top: number, bottom: number): number[] {
  const { bold, size, edges } = LOOKS.heading;
  const rows: number[] = [];
  for (let row = top; row <= bottom; row++) {
    const look = looks[cells[address(row, 0)]?.look ?? -1];
    if (look?.bold === bold && look.size === size && look.edges?.bottom === edges.bottom) rows.push(row);
  }
  return rows;
}
