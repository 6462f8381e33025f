/** What stands on a page and cannot be read there: colour, size, width, height, merged cells. */
import { address, columnLetters, parseRange } from "../../formula/address";
import { isBookError, type Look } from "../../workbooks/book";
import type { Finding, Weight } from "../finding";
import { isBlank } from "../namedCells";
import { shownNumber } from "../numberFormat";
import type { Reviewed, Rule } from "../rule";
import { isForCustomer, templateSheets, type TemplateCell, type TemplateSheet } from "../templateCells";

/** Points; the usual size of a cell without one. */
const USUAL_SIZE = 10;
/** Below it nobody reads a page of paper (common practice, no source). */
const LEAST_SIZE = 5;
/** A row of letters that can still be made out. */
const LEAST_HEIGHT = 7;
/** Contrast of letters and ground; WCAG 2.2 asks for 4.5, and below this they run together. */
const LEAST_CONTRAST = 1.4;
const BOLD_WIDER = 1.07;
/** Points and commas are so wide, in digits. */
const MARK_WIDTH = 0.5;

export const unreadable: Rule = {
  id: "cannot be read",
  reason: "What cannot be read on the page is not quoted, whatever the cell holds.",
  example: "The tax is white on white; the column of sums is so narrow that it prints ######.",
  find: (reviewed) => {
    const { read, definition, earlier } = reviewed;
    if (!definition || earlier || !read.saved?.file) return [];
    return templateSheets(read, definition).flatMap((sheet) => [
      ...looks(sheet, reviewed),
      ...narrow(sheet, reviewed),
      ...flat(sheet),
      ...merged(sheet, reviewed),
    ]);
  },
};

interface Trouble {
  readonly what: string;
  readonly weight: Weight;
  readonly effect: string;
  readonly remedy: string;
}

function looks(sheet: TemplateSheet, { labelAt }: Reviewed): Finding[] {
  const found = new Map<string, { first: TemplateCell; trouble: Trouble; count: number }>();
  for (const cell of sheet.cells) {
    if (isBlank(cell.value) || cell.look === cell.ownLook || !cell.own) continue;
    const trouble = troubleOf(cell.look, cell.ownLook);
    if (!trouble) continue;
    const before = found.get(trouble.what);
    // Figures matter more than the words beside them.
    if (!before) found.set(trouble.what, { first: cell, trouble, count: 1 });
    else {
      before.count += 1;
      if (typeof before.first.value !== "number" && typeof cell.value === "number") before.first = cell;
    }
  }
  return [...found.values()].map(({ first, trouble, count }) => ({
    weight: trouble.weight,
    place: { sheet: sheet.sheet.name, cell: first.at },
    message: `${called(sheet, first, labelAt)} ${trouble.what}${count > 1 ? `, and ${count - 1} more ${count === 2 ? "cell" : "cells"} of this sheet` : ""}.`,
    effect: trouble.effect,
    remedy: trouble.remedy,
  }));
}

function called(
  sheet: TemplateSheet,
  { at, place, value }: TemplateCell,
  labelAt: Reviewed["labelAt"],
): string {
  const label = labelAt(sheet.sheet.name, place);
  return /^column [A-Z]+$/.test(label) && typeof value === "string"
    ? `“${value.slice(0, 60)}”`
    : `${label} (${at})`;
}

function troubleOf(look: Look, own: Look): Trouble | undefined {
  const ink = look.color ?? "000000";
  const ground = look.fill ?? "FFFFFF";
  if ((look.color !== own.color || look.fill !== own.fill) && contrast(ink, ground) < LEAST_CONTRAST)
    return {
      what: `cannot be seen: its letters have the colour of the fill behind them (${ink === "FFFFFF" && ground === "FFFFFF" ? "white on white" : `${ink} on ${ground}`})`,
      weight: "wrong",
      effect: "It counts and cannot be read, on screen or on paper.",
      remedy: "Give it a dark colour of font again, on a light fill.",
    };
  const size = look.size ?? USUAL_SIZE;
  if (size < LEAST_SIZE && size < (own.size ?? USUAL_SIZE))
    return {
      what: `stands in a size of ${size} point: too small to read`,
      weight: "doubtful",
      effect: "It is on the page and nobody reads it.",
      remedy: "Give it the usual size again (10 point).",
    };
  const { odd } = look;
  if (!odd) return undefined;
  if (odd.symbols)
    return {
      what: `stands in the symbol font ${odd.symbols}: its letters and digits are pictures`,
      weight: "wrong",
      effect: "Nobody can read it.",
      remedy: "Give it a font of letters again.",
    };
  if (odd.repeats)
    return {
      what: "is aligned to fill: it is repeated until the cell is full",
      weight: "wrong",
      effect: "A figure that is repeated reads as another, longer one.",
      remedy: "Set the horizontal alignment to right again (for words, left).",
    };
  if (odd.struck)
    return {
      what: "is struck through",
      weight: "doubtful",
      effect: "A reader takes it as withdrawn; it counts all the same.",
      remedy: "Take the strike-through away, or the figure out of the job.",
    };
  // A slant or a letter on its side is a matter of taste where the row has room.
  if (odd.turned !== undefined)
    return {
      what: `is turned by ${odd.turned === 255 ? "standing its letters one above the other" : `${odd.turned > 90 ? 90 - odd.turned : odd.turned} degrees`}: rotated, it can hardly be read in its row`,
      weight: "doubtful",
      effect: "Of a figure in a low row only a part is seen.",
      remedy: "Set the orientation to 0 degrees again.",
    };
  return undefined;
}

/** Relative luminance and contrast ratio (WCAG 2.2). */
function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(color: string): number {
  const part = (from: number): number => {
    const share = parseInt(color.slice(-6).slice(from, from + 2), 16) / 255 || 0;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * part(0) + 0.7152 * part(2) + 0.0722 * part(4);
}

/** The width that a figure needs, in digits of the usual size. */
function neededWidth(text: string, look: Look): number {
  const digits = [...text].reduce((sum, letter) => sum + (/[.,:;'’]/.test(letter) ? MARK_WIDTH : 1), 0);
  return digits * ((look.size ?? USUAL_SIZE) / USUAL_SIZE) * (look.bold ? BOLD_WIDER : 1);
}

function narrow(sheet: TemplateSheet, { labelAt }: Reviewed): Finding[] {
  const { columnWidths, name, hiddenColumns = [] } = sheet.sheet;
  const narrowed = new Map<number, TemplateCell[]>();
  for (const cell of sheet.cells) {
    const width = columnWidths[cell.place.column];
    // Only what was made narrower than the template has it; how wide a program's letters are is its own affair.
    if (typeof cell.value !== "number" || width === undefined || !cell.own) continue;
    if (width >= (sheet.fresh.columnWidths[cell.ownPlace.column] ?? 0)) continue;
    if (hiddenColumns.includes(cell.place.column)) continue;
    const { text } = shownNumber(cell.look.format ?? "General", cell.value);
    // General rounds its decimals into the room that there is.
    const shown = cell.look.format === undefined ? text.replace(/\..*$/, "") : text;
    if (neededWidth(shown, cell.look) <= width) continue;
    const column = cell.place.column;
    const known = narrowed.get(column);
    if (known) known.push(cell);
    else narrowed.set(column, [cell]);
  }
  return [...narrowed].map(([column, cells]): Finding => {
    const first = cells.find(({ look }) => look.bold) ?? cells[0]!;
    return {
      weight: "wrong",
      place: { sheet: name, cell: first.at },
      message: `Column ${columnLetters(column)} is ${columnWidths[column]} wide, too narrow for ${cells.length === 1 ? "a figure" : `${cells.length} figures`}: ${labelAt(name, first.place)} and what is like it shows ####${first.look.odd?.shrinks ? ", or shrinks to a few points" : ""}.`,
      expected: `A width of ${sheet.fresh.columnWidths[first.ownPlace.column] ?? "more"}.`,
      effect: "Page and screen show no figure there.",
      remedy: "Make the column wider: double-click the edge of its head.",
    };
  });
}

function flat(sheet: TemplateSheet): Finding[] {
  const { rowHeights, name, hiddenRows = [] } = sheet.sheet;
  const rows = new Map<number, TemplateCell>();
  for (const cell of sheet.cells) {
    const height = rowHeights[cell.place.row];
    if (height === undefined || height >= LEAST_HEIGHT || isBlank(cell.value)) continue;
    if (hiddenRows.includes(cell.place.row)) continue;
    const own = sheet.fresh.rowHeights[cell.ownPlace.row];
    if (own !== undefined && own <= height) continue;
    if (!rows.has(cell.place.row) || typeof cell.value === "number") rows.set(cell.place.row, cell);
  }
  return [...rows].map(([row, { at }]) => ({
    weight: isForCustomer(sheet) ? "wrong" : "doubtful",
    place: { sheet: name, cell: at },
    message: `Row ${row + 1} has a height of ${rowHeights[row]} points: what stands there cannot be read.`,
    effect: "It counts without being seen.",
    remedy: "Give the row its usual height again: double-click the edge below its number.",
  }));
}

function merged(sheet: TemplateSheet, { labelAt }: Reviewed): Finding[] {
  const { name, cells, results } = sheet.sheet;
  return (sheet.sheet.merged ?? []).flatMap((range): Finding[] => {
    const zone = parseRange(range);
    if (!zone) return [];
    // A merged whole row or column would be a long walk.
    const bottom = Math.min(zone.bottom, zone.top + MOST_MERGED);
    const right = Math.min(zone.right, zone.left + MOST_MERGED);
    const covered: string[] = [];
    for (let row = zone.top; row <= bottom; row++)
      for (let column = zone.left; column <= right; column++) {
        const at = address(row, column);
        const value = results[at] ?? cells[at]?.value;
        if ((row !== zone.top || column !== zone.left) && (isBookError(value) || !isBlank(value)))
          covered.push(at);
      }
    const [first] = covered;
    if (first === undefined) return [];
    const place = parseRange(first)!;
    return [
      {
        weight: isForCustomer(sheet) ? "wrong" : "doubtful",
        place: { sheet: name, cell: first },
        message: `${range} is merged into one cell, which covers ${labelAt(name, { row: place.top, column: place.left })} (${first})${covered.length > 1 ? ` and ${covered.length - 1} more` : ""}.`,
        effect: "What is covered counts and is not shown.",
        remedy: "Take the merging back (Home, Merge & Center).",
      },
    ];
  });
}

const MOST_MERGED = 200;
