/** A picture of how a sheet begins, drawn from a book that is laid out and not computed. */
import { address } from "../formula/address";
import type { Book, BookCell, BookSheet, Look } from "../workbooks/book";
import { EDGE_COLOR, DATE_FORMAT, INPUT_FILL } from "../workbooks/looks";
import { USUAL_WIDTH } from "../workbooks/pageRoom";
import { isoDate } from "../workbooks/sheetDate";
import { html, Html } from "./html";

/** Pixels. */
const PER_CHARACTER = 6.4;
const PER_POINT = 1.2;
const WIDTH = 860;
const HEIGHT = 330;
const USUAL_HEIGHT = 15;
const TYPE = 11;
const LINE = 13;
const PAD = 4;
/** Of the type's size, on average over letters and figures. */
const LETTER = 0.56;
const WORKED_OUT = "E4E7EB";

/** @returns a drawing with its own description; cells that are worked out are grey and say nothing */
export function sheetPicture(book: Book, sheet: BookSheet): Html {
  const columns = edges(
    sheet.columnCount,
    (at) => (sheet.columnWidths[at] ?? USUAL_WIDTH) * PER_CHARACTER,
    WIDTH,
  );
  const rows = edges(sheet.rowCount, (at) => (sheet.rowHeights[at] ?? USUAL_HEIGHT) * PER_POINT, HEIGHT);
  const [width, height] = [columns.at(-1)!, rows.at(-1)!];
  const shapes: string[] = [];
  for (let row = 0; row < rows.length - 1; row++)
    for (let column = 0; column < columns.length - 1; column++) {
      const cell = sheet.cells[address(row, column)];
      if (!cell) continue;
      const [x, y] = [columns[column]!, rows[row]!];
      const look = book.looks[cell.look ?? -1] ?? {};
      const box = { x, y, width: columns[column + 1]! - x, height: rows[row + 1]! - y };
      const room = roomBeside(sheet, row, column, columns);
      shapes.push(ground(look, cell, box), words(look, cell, box, room));
    }
  return new Html(
    `<svg viewBox="0 0 ${round(width)} ${round(height)}" width="${round(width)}" role="img" aria-label="${
      html`How the sheet ${sheet.name} begins`.markup
    }"><rect width="100%" height="100%" fill="#fff"/><g font-size="${TYPE}">${shapes.join("")}</g></svg>`,
  );
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where each column or row begins, and the end of the last that is shown whole. */
function edges(count: number, size: (at: number) => number, most: number): number[] {
  const found = [0];
  for (let at = 0; at < count && found[at]! + size(at) <= most; at++) found.push(found[at]! + size(at));
  return found;
}

const isWorkedOut = ({ formula, value }: BookCell): boolean => formula !== undefined && value === undefined;

function ground({ fill }: Look, cell: BookCell, { x, y, width, height }: Box): string {
  const paint = isWorkedOut(cell) ? WORKED_OUT : fill;
  if (paint === undefined) return "";
  const edge = fill === INPUT_FILL ? ` stroke="#${EDGE_COLOR}"` : "";
  return `<rect x="${round(x)}" y="${round(y)}" width="${round(width)}" height="${round(height)}" fill="#${paint}"${edge}/>`;
}

/** A text runs over the empty cells beside it, as on the sheet. */
function roomBeside({ cells }: BookSheet, row: number, column: number, columns: readonly number[]): number {
  let end = column + 1;
  while (end < columns.length - 1 && cells[address(row, end)]?.value === undefined) end++;
  return columns[end]! - columns[column]!;
}

function words(look: Look, cell: BookCell, box: Box, room: number): string {
  const text = textOf(cell, look);
  if (text === "") return "";
  const scale = (look.size ?? 10) / 10;
  const isRight = look.align === "right" || (look.align === undefined && typeof cell.value === "number");
  const lines = look.wrap
    ? wrapped(text, box.width - 2 * PAD, scale).slice(0, Math.max(1, Math.floor(box.height / LINE)))
    : [fitted(text, (isRight ? box.width : room) - 2 * PAD, scale)];
  const x = round(isRight ? box.x + box.width - PAD : box.x + PAD);
  const last = box.y + box.height - PAD;
  const first = look.vertical === "top" ? box.y + LINE * scale - 1 : last - (lines.length - 1) * LINE * scale;
  const style = [
    scale === 1 ? "" : ` font-size="${round(TYPE * scale)}"`,
    look.bold ? ' font-weight="600"' : "",
    look.italic ? ' font-style="italic"' : "",
    isRight ? ' text-anchor="end"' : "",
    look.color === undefined ? "" : ` fill="#${look.color}"`,
  ].join("");
  return lines
    .map(
      (line, index) =>
        `<text x="${x}" y="${round(first + index * LINE * scale)}"${style}>${html`${line}`.markup}</text>`,
    )
    .join("");
}

function textOf({ value }: BookCell, { format }: Look): string {
  if (value === undefined || typeof value === "boolean") return "";
  if (typeof value === "string") return value;
  if (format === DATE_FORMAT) return isoDate(value);
  const decimals = /\.(0+)/.exec(format ?? "")?.[1]?.length;
  const figure = format?.endsWith("%") ? value * 100 : value;
  const text = decimals === undefined ? String(figure) : figure.toFixed(decimals);
  return format?.endsWith("%") ? `${text} %` : text;
}

const widthOf = (text: string, scale: number): number => text.length * TYPE * LETTER * scale;

function fitted(text: string, room: number, scale: number): string {
  if (widthOf(text, scale) <= room) return text;
  const letters = Math.max(0, Math.floor(room / (TYPE * LETTER * scale)) - 1);
  return `${text.slice(0, letters).trimEnd()}…`;
}

function wrapped(text: string, room: number, scale: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const line = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && widthOf(line, scale) <= room) lines[lines.length - 1] = line;
    else lines.push(word);
  }
  return lines;
}

const round = (value: number): number => Math.round(value);
