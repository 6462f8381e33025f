/** Everything of a new sheet around its cells: widths, heights, frozen panes, tab, print. */
import { columnLetters, rangeOf } from "../../formula/address";
import type { BookSheet } from "../../workbooks/book";
import { addressLists } from "./lookAreas";

/** A character of the base font in pixels, the padding of a cell, and a pixel in points. */
const CHARACTER_PX = 7;
const PADDING_PX = 5;
const POINTS_PER_PIXEL = 0.75;

/** @returns the keys that share a value, by the value */
function grouped(sizes: Readonly<Record<number, number>>): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  for (const [key, size] of Object.entries(sizes)) {
    const group = groups.get(size);
    if (group) group.push(Number(key));
    else groups.set(size, [Number(key)]);
  }
  return groups;
}

export function setFrame(target: Excel.Worksheet, sheet: BookSheet): void {
  for (const [width, columns] of grouped(sheet.columnWidths)) {
    const lists = addressLists(columns.map((one) => `${columnLetters(one)}:${columnLetters(one)}`));
    const points = Math.trunc(width * CHARACTER_PX + PADDING_PX) * POINTS_PER_PIXEL;
    for (const list of lists) target.getRanges(list).format.columnWidth = points;
  }
  for (const [height, rows] of grouped(sheet.rowHeights)) {
    const lists = addressLists(rows.map((row) => `${row + 1}:${row + 1}`));
    for (const list of lists) target.getRanges(list).format.rowHeight = height;
  }
  const { frozenRows, frozenColumns } = sheet;
  if (frozenRows > 0 && frozenColumns > 0) {
    target.freezePanes.freezeAt(
      target.getRange(rangeOf({ top: 0, left: 0, bottom: frozenRows - 1, right: frozenColumns - 1 })),
    );
  } else if (frozenRows > 0) target.freezePanes.freezeRows(frozenRows);
  else if (frozenColumns > 0) target.freezePanes.freezeColumns(frozenColumns);
  target.showGridlines = false;
  if (sheet.tabColor !== undefined) target.tabColor = `#${sheet.tabColor}`;
  if (sheet.print) setPrint(target.pageLayout, sheet.print);
}

function setPrint(layout: Excel.PageLayout, print: NonNullable<BookSheet["print"]>): void {
  layout.orientation = print.orientation === "landscape" ? "Landscape" : "Portrait";
  layout.paperSize = print.paper === "letter" ? "Letter" : "A4";
  layout.zoom = { horizontalFitToPages: 1, ...(print.onePage && { verticalFitToPages: 1 }) };
  if (print.area !== undefined) layout.setPrintArea(print.area);
  if (print.repeatTo !== undefined) {
    layout.setPrintTitleRows(`$${print.repeatFrom ?? print.repeatTo}:$${print.repeatTo}`);
  }
  const foot = layout.headersFooters.defaultForAllPages;
  // An ampersand begins a code of the foot; two are one that prints.
  const plain = (text: string | undefined): string => (text ?? "").replace(/&/g, "&&");
  foot.leftFooter = plain(print.footLeft);
  foot.centerFooter = "Page &P of &N";
  foot.rightFooter = plain(print.footRight);
}
