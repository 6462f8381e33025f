/**
 * Printed sheets as a PDF, from what the desk's own printing works from: every
 * cell's text, fills and lines, the head on each page, a foot, pictures on pages
 * of their own.
 */
import type { StructureElement } from "pdfkit";
import type { BookPrint } from "../../workbooks/book";
import { EDGE_COLOR } from "../../workbooks/looks";
import { PAGE_MARGINS } from "../../workbooks/pageRoom";
import {
  PAPER_EDGE_POINTS,
  pictureOnPage,
  type PaperPart,
  type PaperPictures,
  type PaperSheet,
} from "../../workbooks/paperSheet";
import { drawFoot } from "./pageFoot";
import { pageSize } from "./pageSize";
import { PdfPages, type PdfFacts } from "./pdfPages";
import type { PrintType } from "./printType";
import { LEADING, sheetPages, type PlacedCell, type PlacedRow, type SheetPage } from "./sheetPages";
import type { Step } from "./step";
import { Setter, type MadePdf } from "./unset";

const POINTS_PER_INCH = 72;
const BLACK = "#000000";
/** From the top of a line to its base, in sizes of its type. */
const BASE = 0.92;
/** Between a line and the text beside it, in points of the sheet, where there is room. */
const INSET = 2;
/** A figure at the end of its cell must not meet one at the beginning of the next: 1 and 1 would be 11. */
const RIGHT_INSET = 4;
/** Between the pages' edge of what prints and the foot. */
const FOOT_GAP = 8;
/** What a printer leaves at the paper's edge. */
const UNPRINTED = 12;

/** A page that is yet to be drawn: how many there are stands on each. */
type Draw = (pages: PdfPages) => void;

/**
 * @param parts what prints, in its order; their texts measured in this type
 * @returns the PDF, and the cells whose text it could not set
 */
export async function sheetsPdf(
  parts: readonly PaperPart[],
  facts: PdfFacts,
  type: PrintType,
  step?: Step,
): Promise<MadePdf> {
  const setter = new Setter(type);
  const title = setter.type.settable(facts.title).text;
  const pages = new PdfPages(type, { ...facts, title });
  const drawn: { readonly draw: Draw; readonly print: BookPrint; readonly name: string }[] = [];
  for (const part of parts) {
    await step?.(0, undefined);
    const draws = "pictures" in part ? pictureDraws(part, setter) : sheetDraws(part, setter);
    drawn.push(...draws.map((draw) => ({ draw, print: part.print, name: part.name })));
  }
  let named = "";
  for (const [index, { draw, print, name }] of drawn.entries()) {
    await step?.(index, drawn.length);
    const [width, height] = pageSize(print);
    pages.addPage(width, height);
    if (name !== named) pages.addToOutline(name);
    named = name;
    draw(pages);
    const { left, right, bottom } = PAGE_MARGINS;
    const foot = {
      left: setter.set(print.footLeft ?? "", `The foot of ${name}`),
      right: setter.set(print.footRight ?? "", `The foot of ${name}`),
      page: index + 1,
      pages: drawn.length,
    };
    drawFoot(pages, type, foot, {
      left: left * POINTS_PER_INCH,
      right: width - right * POINTS_PER_INCH,
      top: height - bottom * POINTS_PER_INCH + FOOT_GAP,
      height: bottom * POINTS_PER_INCH - FOOT_GAP - UNPRINTED,
    });
  }
  return { bytes: await pages.bytes(), unset: setter.unset, pages: pages.drawn };
}

function pictureDraws({ name, print, pictures }: PaperPictures, setter: Setter): Draw[] {
  return pictures.map((picture): Draw => {
    const svg = setter.set(picture.svg, `The picture “${picture.title}” of ${name}`);
    const [left, top] = [PAGE_MARGINS.left * POINTS_PER_INCH, PAGE_MARGINS.top * POINTS_PER_INCH];
    const { width, height } = pictureOnPage(picture, print);
    return (pages) => {
      const alt = `${picture.title}. ${picture.description}`;
      const bbox = [left, top, left + width, top + height] as const;
      const figure = pages.element("Figure", { alt, bbox });
      figure.add(() => pages.svg(svg, { left, top, width, height }));
    };
  });
}

function sheetDraws(sheet: PaperSheet, setter: Setter): Draw[] {
  let table: StructureElement | undefined;
  return sheetPages(sheet, setter).map((page): Draw => (pages) => {
    // One table goes on over all of its pages.
    table ??= pages.element("Table", { title: sheet.name }, pages.element("Sect", { title: sheet.name }));
    drawPage(pages, page, table);
  });
}

/** Points on paper of a page of a sheet. */
class Place {
  private readonly left = PAGE_MARGINS.left * POINTS_PER_INCH;
  private readonly top = PAGE_MARGINS.top * POINTS_PER_INCH;

  constructor(readonly scale: number) {}

  x(points: number): number {
    return this.left + this.scale * points;
  }

  y(points: number): number {
    return this.top + this.scale * points;
  }
}

function drawPage(pages: PdfPages, { scale, rows }: SheetPage, table: StructureElement): void {
  const place = new Place(scale);
  pages.artifact("Layout", () => {
    for (const row of rows) for (const cell of row.cells) drawFill(pages, cell, row, place);
    for (const row of rows) for (const cell of row.cells) drawEdges(pages, cell, row, place);
  });
  for (const row of rows) {
    if (row.is === "repeated") {
      pages.artifact("Pagination", () => {
        for (const cell of row.cells) drawText(pages, cell, row, place);
      });
      continue;
    }
    const above = pages.element("TR", {}, table);
    // Blank cells behind the last text say nothing.
    const last = row.cells.findLastIndex(({ text }) => text !== "");
    row.cells.slice(0, last + 1).forEach((cell) => {
      const element =
        row.is === "head" ? pages.element("TH", { scope: "Column" }, above) : pages.element("TD", {}, above);
      if (cell.text !== "") element.add(() => drawText(pages, cell, row, place));
      element.end();
    });
    above.end();
  }
}

function drawFill(
  pages: PdfPages,
  { cell, left, width, height }: PlacedCell,
  { top }: PlacedRow,
  place: Place,
): void {
  if (!isColor(cell.look.fill)) return;
  const box = {
    left: place.x(left),
    top: place.y(top),
    width: width * place.scale,
    height: height * place.scale,
  };
  pages.fill(box, `#${cell.look.fill}`);
}

function drawEdges(
  pages: PdfPages,
  { cell, left, width, height }: PlacedCell,
  { top }: PlacedRow,
  place: Place,
): void {
  const { edges } = cell.look;
  if (!edges) return;
  const [x1, x2] = [place.x(left), place.x(left + width)];
  const [y1, y2] = [place.y(top), place.y(top + height)];
  const ends = {
    top: [
      [x1, y1],
      [x2, y1],
    ],
    right: [
      [x2, y1],
      [x2, y2],
    ],
    bottom: [
      [x1, y2],
      [x2, y2],
    ],
    left: [
      [x1, y1],
      [x1, y2],
    ],
  } as const;
  for (const side of ["top", "right", "bottom", "left"] as const) {
    const edge = edges[side];
    if (edge) pages.line(...ends[side], PAPER_EDGE_POINTS[edge], `#${EDGE_COLOR}`);
  }
}

function drawText(pages: PdfPages, placed: PlacedCell, row: PlacedRow, place: Place): void {
  const { cell, from, room, height, size, face, lines } = placed;
  const used = lines.length * size * LEADING;
  const { vertical = "bottom", color, edges } = cell.look;
  const free = Math.max(0, height - used);
  const above = vertical === "top" ? Math.min(free / 2, INSET) : vertical === "middle" ? free / 2 : free;
  lines.forEach((line, index) => {
    // Nobody sees a blank at a line's end, but it would move the line.
    const shown = line.trimEnd();
    const width = pages.type.width(shown, size, face);
    const spare = Math.max(0, room - width);
    const left =
      from +
      (cell.align === "right"
        ? Math.max(spare / 2, spare - RIGHT_INSET)
        : cell.align === "center"
          ? spare / 2
          : Math.min(spare / 2, edges?.left ? INSET : 0));
    pages.text(shown, place.x(left), place.y(row.top + above + (index * LEADING + BASE) * size), {
      size: size * place.scale,
      face,
      color: isColor(color) ? `#${color}` : BLACK,
    });
  });
}

/** A file from elsewhere may hold anything there. */
const isColor = (color: string | undefined): color is string => /^[\da-f]{6}$/i.test(color ?? "");
