/**
 * A printed sheet parted into pages: each text broken into lines, each row as
 * high as it needs, no row cut. Measures are points of the sheet before it is
 * made smaller by its scale, as in PaperSheet.
 */
import { pageRoom } from "../../workbooks/pageRoom";
import {
  CELL_PADDING,
  FILLED,
  type PaperCell,
  type PaperRow,
  type PaperSheet,
} from "../../workbooks/paperSheet";
import type { PrintFont } from "./printFonts";
import { lines } from "./lines";
import type { PrintType } from "./printType";
import type { Setter } from "./unset";

/** Of a line, in sizes of its type. */
export const LEADING = 1.2;
/** A height's last digits must not end a page. */
const SLACK = 0.05;
/** A row that no page holds is set smaller, step by step. */
const SMALLER = 0.92;
const LEAST_SIZE = 1;
/** Wrapped heads beside each other would read as one. */
const BETWEEN = 4;
/** A part that is a little more than a page is set smaller; one that is more takes several. */
const LEAST_SHARE = 0.85;

export interface PlacedCell {
  readonly cell: PaperCell;
  readonly text: string;
  readonly left: number;
  readonly width: number;
  /** Where its text may begin, and how wide it may be: over empty neighbours too. */
  readonly from: number;
  readonly room: number;
  /** All the rows that it takes. */
  readonly height: number;
  readonly size: number;
  readonly face: PrintFont;
  readonly lines: readonly string[];
}

export interface PlacedRow {
  readonly top: number;
  readonly height: number;
  readonly cells: readonly PlacedCell[];
  readonly is: "head" | "repeated" | "body";
}

export interface SheetPage {
  /** Points on paper for each of the sheet's. */
  readonly scale: number;
  readonly rows: readonly PlacedRow[];
}

/** A row before it has a page. */
interface SetRow {
  readonly height: number;
  readonly cells: readonly PlacedCell[];
  /** A cell of it goes on in the next one. */
  readonly goesOn: boolean;
  readonly isBlank: boolean;
}

export function sheetPages(sheet: PaperSheet, setter: Setter): SheetPage[] {
  const { print } = sheet;
  const { down } = pageRoom(print);
  const place = (rows: readonly PaperRow[]): SetRow[] => placedRows(sheet, rows, setter);
  const [before, head, parts] = [place(sheet.before), place(sheet.head), sheet.parts.map(place)];
  const scale = sheet.scale * Math.min(1, smaller(sheet, { before, head, parts }, down / sheet.scale));
  const room = down / scale;
  // A head that leaves little room for anything else is not repeated.
  const repeated = heightOf(head) <= room / 2 ? head : [];
  const fit = (rows: readonly SetRow[], most: number): SetRow[] =>
    rows.map((row) => fitted(row, most, setter.type));
  return parts.flatMap((part, index) =>
    pagesOf(fit(part, room - heightOf(repeated)), {
      before: index === 0 ? fit(before, room) : [],
      head: index === 0 ? fit(head, room) : [],
      repeated,
      room,
    }).map((rows) => ({ scale, rows })),
  );
}

/** @returns how much smaller still the rows must be set than the sheet's width asks for */
function smaller(
  { print }: PaperSheet,
  { before, head, parts }: Record<"before" | "head", readonly SetRow[]> & { parts: readonly SetRow[][] },
  room: number,
): number {
  const first = heightOf(before);
  if (print.onePage) return (FILLED * room) / (first + heightOf([...head, ...parts.flat()]));
  if (print.breaks === undefined) return 1;
  // Where the ends of pages are named, each part was made for one page.
  const most = Math.max(
    ...parts.map((part, index) => (index === 0 ? first : 0) + heightOf(head) + heightOf(part)),
  );
  return room / most >= LEAST_SHARE ? room / most : 1;
}

interface PageRoom {
  /** What stands above the rows on their first page, and is not repeated. */
  readonly before: readonly SetRow[];
  readonly head: readonly SetRow[];
  readonly repeated: readonly SetRow[];
  readonly room: number;
}

function pagesOf(part: readonly SetRow[], { before, head, repeated, room }: PageRoom): PlacedRow[][] {
  const pages: PlacedRow[][] = [];
  let rows: PlacedRow[] = [];
  let top = 0;
  const put = (row: SetRow, is: PlacedRow["is"]): void => {
    rows.push({ top, height: row.height, cells: row.cells, is });
    top += row.height;
  };
  const begin = (): void => {
    rows = [];
    top = 0;
    for (const row of repeated) put(row, "repeated");
  };
  const fits = (height: number): boolean => top + height <= room + SLACK;
  const isBegun = (): boolean => rows.some(({ is }) => is !== "repeated");
  const end = (): void => {
    if (isBegun()) pages.push(rows);
    begin();
  };
  if (before.length + head.length === 0) begin();
  for (const row of before) {
    if (!fits(row.height)) end();
    put(row, "body");
  }
  if (!fits(heightOf(head))) end();
  for (const row of head) put(row, "head");

  const blocks = blocksOf(part);
  const lastFilled = blocks.findLastIndex((block) => block.some(({ isBlank }) => !isBlank));
  blocks.forEach((block, index) => {
    // The last rows of a part, often a sum, are not left alone on a page.
    const along = index === lastFilled - 1 ? heightOf(blocks[lastFilled]!) : 0;
    const together = heightOf(block) + along;
    const needed = heightOf(repeated) + together <= room ? together : heightOf(block);
    if (isBegun() && !fits(needed)) end();
    for (const row of block) {
      if (isBegun() && !fits(row.height)) end();
      put(row, "body");
    }
  });
  end();
  return pages;
}

/** Rows that share a cell stand together. */
function blocksOf(rows: readonly SetRow[]): SetRow[][] {
  const blocks: SetRow[][] = [];
  let open = false;
  for (const row of rows) {
    if (open) blocks.at(-1)!.push(row);
    else blocks.push([row]);
    open = row.goesOn;
  }
  return blocks;
}

const heightOf = (rows: readonly { readonly height: number }[]): number =>
  rows.reduce((sum, { height }) => sum + height, 0);

/** @returns the row, its type made smaller until a page holds it */
function fitted(row: SetRow, room: number, type: PrintType): SetRow {
  if (row.height <= room) return row;
  const cells = row.cells.map((placed): PlacedCell => {
    let smaller = { ...placed, height: Math.min(placed.height, room) };
    while (
      smaller.lines.length * smaller.size * LEADING > smaller.height + SLACK &&
      smaller.size > LEAST_SIZE
    )
      smaller = { ...smaller, ...broken(smaller.text, smaller, smaller.size * SMALLER, type) };
    return smaller;
  });
  return { ...row, height: room, cells };
}

type Broken = Pick<PlacedCell, "size" | "lines">;

function broken(
  text: string,
  { cell, face, room }: Pick<PlacedCell, "cell" | "face" | "room">,
  size: number,
  type: PrintType,
): Broken {
  if (text === "") return { size, lines: [] };
  const width = (line: string): number => type.width(line, size, face);
  return {
    size,
    lines: cell.look.wrap ? lines(text, Math.max(room - BETWEEN, room / 2), width) : text.split("\n"),
  };
}

/** @returns rows with their cells in their places, each as high as its texts need */
function placedRows({ name, columns }: PaperSheet, rows: readonly PaperRow[], setter: Setter): SetRow[] {
  const edges = columns.reduce((all, width) => [...all, all.at(-1)! + width], [0]);
  /** For each column, in how many rows more a cell from above stands. */
  const taken = columns.map(() => 0);
  const heights = rows.map(({ height }) => height);
  const cellsOf = rows.map(({ cells }, row) => {
    let column = 0;
    const placed = cells.map((cell) => {
      while (taken[column]! > 0) column++;
      const from = column;
      column += cell.columns;
      const down = Math.min(cell.rows, rows.length - row);
      taken.fill(down, from, column);
      const { left: before, right: behind } = cell.over ?? { left: 0, right: 0 };
      const [left, right] = [edges[from]!, edges[Math.min(column, columns.length)]!];
      const face: PrintFont = cell.look.bold ? "strong" : cell.look.italic ? "italic" : "regular";
      const text = cell.text === "" ? "" : setter.set(cell.text, `${name}!${cell.at}`);
      const room = right - left - 2 * CELL_PADDING + before + behind;
      const set = {
        cell,
        text,
        left,
        width: right - left,
        from: left + CELL_PADDING - before,
        room,
        face,
        down,
      };
      return { ...set, ...broken(text, set, cell.size, setter.type) };
    });
    taken.forEach((count, at) => (taken[at] = Math.max(0, count - 1)));
    return placed;
  });
  cellsOf.forEach((cells, row) => {
    for (const { down, size, lines: set } of cells) {
      const has = heightOf(heights.slice(row, row + down).map((height) => ({ height })));
      const needed = set.length * size * LEADING;
      if (needed > has + SLACK) heights[row + down - 1]! += needed - has;
    }
  });
  /** The last row that a cell which began above reaches. */
  let reaches = 0;
  return cellsOf.map((cells, row) => {
    for (const { down } of cells) reaches = Math.max(reaches, row + down - 1);
    return {
      height: heights[row]!,
      cells: cells.map(({ down, ...cell }) => ({
        ...cell,
        height: heights.slice(row, row + down).reduce((sum, one) => sum + one, 0),
      })),
      goesOn: reaches > row,
      isBlank: cells.every(({ text }) => text === ""),
    };
  });
}
