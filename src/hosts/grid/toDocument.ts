/** Turns a book into the spreadsheet library's document. */
import { filledOver } from "../../workbooks/overList";
import { quotedText } from "../../formula/print";
import { address, parseAddress, parseRange, quotedSheet, rangeOf, type Zone } from "../../formula/address";
import { areasOf } from "../../formula/readAreas";
import { withAtsResolved } from "../../formula/singles";
import type { Book, BookCell, BookSheet, BookValidation, Edge, Look } from "../../workbooks/book";
import { numberOrWord } from "../../workbooks/numberOrWord";
import { EDGE_COLOR, TEXT_FORMAT } from "../../workbooks/looks";
import { isoDate } from "../../workbooks/sheetDate";
import { templateOf } from "../../workbooks/templates";
import { inputsOf } from "../../workbooks/typed/inputsOf";
import { shownName } from "../../workbooks/typed/shownName";
import { FACTS_KEY, NO_FACTS, type BookFacts } from "./bookFacts";
import { DOCUMENT_VERSION } from "./library";

/** One character of the sheet's default font, and the padding of a cell. */
export const PIXELS_PER_CHARACTER = 7;
export const CELL_PADDING_PIXELS = 5;
export const PIXELS_PER_POINT = 4 / 3;

/** Sheets need ids that survive renaming; the position at loading is one. */
export const sheetId = (index: number): string => `sheet${index + 1}`;

/**
 * @param book the workbook
 * @returns what the library's model loads to compute and not to show: contents and names
 */
export function toBareDocument(book: Book): Record<string, unknown> {
  return {
    version: DOCUMENT_VERSION,
    sheets: book.sheets.map((sheet, index) => ({
      id: sheetId(index),
      name: sheet.name,
      colNumber: sheet.columnCount,
      rowNumber: sheet.rowCount,
      cells: contentsOf(book, sheet),
    })),
    namedRanges: Object.fromEntries(namedRanges(book)),
    revisionId: "START_REVISION",
    // By the template a fault finds the sheet's words.
    [FACTS_KEY]: { ...NO_FACTS, template: book.template, templateVersion: book.templateVersion },
  };
}

/**
 * @param book the workbook
 * @returns what the library's model loads; our own facts lie beside its own
 */
export function toDocument(book: Book): Record<string, unknown> {
  const facts: BookFacts = {
    template: book.template,
    templateVersion: book.templateVersion,
    title: book.title,
    sheets: Object.fromEntries(
      book.sheets.map((sheet, index) => [
        sheetId(index),
        {
          validations: sheet.validations,
          print: sheet.print,
          protected: sheet.protected,
          notes: notesOf(sheet),
        },
      ]),
    ),
  };
  const named = namedRanges(book);
  return {
    version: DOCUMENT_VERSION,
    sheets: book.sheets.map((sheet, index) => sheetOf(book, sheet, sheetId(index), named)),
    styles: Object.fromEntries(book.looks.map((look, index) => [index + 1, styleOf(look)])),
    formats: Object.fromEntries(
      book.looks.flatMap(({ format }, index) => (isGridFormat(format) ? [[index + 1, format]] : [])),
    ),
    borders: Object.fromEntries(
      book.looks.flatMap(({ edges }, index) => (edges ? [[index + 1, borderOf(edges)]] : [])),
    ),
    namedRanges: Object.fromEntries(named),
    pivots: {},
    pivotNextId: 1,
    customTableStyles: {},
    settings: {},
    uniqueFigureIds: true,
    revisionId: "START_REVISION",
    [FACTS_KEY]: facts,
  };
}

const namedRanges = ({ names }: Book): Map<string, string> =>
  new Map(names.map(({ name, sheet, range }) => [name, `${quotedSheet(sheet)}!${range}`]));

function contentsOf(book: Book, sheet: BookSheet): Record<string, string> {
  const cells: Record<string, string> = {};
  for (const at of Object.keys(sheet.cells)) {
    const cell = sheet.cells[at]!;
    const isCutByHand = cell.formula?.includes("@");
    const content = contentOf(isCutByHand ? { formula: withoutSigns(book, sheet, at, cell.formula!) } : cell);
    if (content !== undefined) cells[at] = content;
  }
  return cells;
}

/** The library knows no `@`, which other programs write before what they cut. */
const withoutSigns = (book: Book, { name }: BookSheet, at: string, formula: string): string =>
  withAtsResolved(formula, parseAddress(at)!, (of) => {
    const areas = areasOf(book, name, of);
    return areas.length === 1 ? areas[0] : undefined;
  });

/** The names of a template's inputs that another program took for numbers and truth values: here they are text. */
function namesOf(
  { template, names, looks }: Book,
  { name: sheet, cells }: BookSheet,
): Record<string, string> {
  const definition = templateOf(template)?.definition;
  const inputs = definition && inputsOf(definition);
  const texts: Record<string, string> = {};
  for (const { name, range } of names.filter((one) => one.sheet === sheet)) {
    const kind = inputs?.get(name)?.kind.kind;
    const zone = kind === "text" || kind === "choice" || kind === "named" ? parseRange(range) : undefined;
    if (!zone) continue;
    for (let row = zone.top; row <= zone.bottom; row++) {
      const at = address(row, zone.left);
      const { value, look = -1 } = cells[at] ?? {};
      if (typeof value !== "number" && typeof value !== "boolean") continue;
      const shown = shownName(value, looks[look]?.format);
      if (shown !== undefined) texts[at] = contentOf({ value: shown })!;
    }
  }
  return texts;
}

function notesOf({ cells }: BookSheet): Record<string, string> {
  const notes: Record<string, string> = {};
  for (const at of Object.keys(cells)) if (cells[at]!.note) notes[at] = cells[at]!.note;
  return notes;
}

/**
 * The document's ids by the ranges that they hold for. A long job has a million cells and few looks, so cells one
 * below the other share an entry; not their borders, of which the library takes the last one that is set at an edge.
 */
function looksOf(
  { looks }: Book,
  { cells }: BookSheet,
): Record<"styles" | "formats" | "borders", Record<string, number>> {
  const styles: Record<string, number> = {};
  const formats: Record<string, number> = {};
  const borders: Record<string, number> = {};
  const columns: number[][] = [];
  for (const at of Object.keys(cells)) {
    const { look } = cells[at]!;
    if (look === undefined) continue;
    const { row, column } = parseAddress(at)!;
    (columns[column] ??= [])[row] = look;
    if (looks[look]?.edges) borders[at] = look + 1;
  }
  columns.forEach((inRow, column) => {
    let top = 0;
    inRow.forEach((look, row) => {
      if (inRow[row - 1] !== look) top = row;
      if (inRow[row + 1] === look) return;
      const range = rangeOf({ top, left: column, bottom: row, right: column });
      styles[range] = look + 1;
      if (isGridFormat(looks[look]?.format)) formats[range] = look + 1;
    });
  });
  return { styles, formats, borders };
}

function sheetOf(
  book: Book,
  sheet: BookSheet,
  id: string,
  named: ReadonlyMap<string, string>,
): Record<string, unknown> {
  const { styles, formats, borders } = looksOf(book, sheet);
  return {
    id,
    name: sheet.name,
    colNumber: sheet.columnCount,
    rowNumber: sheet.rowCount,
    cells: { ...contentsOf(book, sheet), ...namesOf(book, sheet) },
    styles,
    formats,
    borders,
    cols: Object.fromEntries(
      Object.entries(sheet.columnWidths).map(([column, width]) => [
        column,
        { size: Math.round(width * PIXELS_PER_CHARACTER + CELL_PADDING_PIXELS) },
      ]),
    ),
    rows: Object.fromEntries(
      Object.entries(sheet.rowHeights).map(([row, points]) => [
        row,
        { size: Math.round(points * PIXELS_PER_POINT) },
      ]),
    ),
    panes: { xSplit: sheet.frozenColumns, ySplit: sheet.frozenRows },
    merges: [],
    figures: [],
    tables: [],
    conditionalFormats: sheet.marks.map(({ range, words, look, overList }, index) => ({
      id: `${id}mark${index + 1}`,
      ranges: [range],
      rule: {
        type: "CellIsRule",
        operator: words.length === 1 ? "isEqual" : "customFormula",
        values: overList
          ? [`=${filledOver(range, overList)}`]
          : words.length === 1
            ? [words[0]]
            : [oneOf(range, words)],
        style: styleOf(book.looks[look] ?? {}),
      },
    })),
    dataValidationRules: sheet.validations.flatMap((validation, index) => {
      const criterion = criterionOf(validation, named);
      return criterion
        ? [
            {
              id: `${id}rule${index + 1}`,
              criterion,
              ranges: [validation.range],
              // The library asks such a formula about what stands in the cell, not about what is being typed: our own
              // reader of typed values refuses that, and this marks what came otherwise.
              isBlocking:
                !validation.warnOnly && !(validation.rule.kind === "number" && validation.rule.orWords),
            },
          ]
        : [];
    }),
    areGridLinesVisible: false,
    isVisible: !sheet.hidden,
    color: sheet.tabColor ? `#${sheet.tabColor}` : undefined,
  };
}

/**
 * The library shows the apostrophe that keeps `=A-07` text in a cell of this format, and takes the text for a
 * formula without it. So text is kept by the apostrophe alone, and the format put back when the book is read.
 */
export const isGridFormat = (format: string | undefined): format is string =>
  format !== undefined && format !== TEXT_FORMAT;

/**
 * What the library is given for a cell. Text is marked as text, so that it is never taken for a number, a date
 * or a formula.
 */
export function contentOf({ value, formula }: BookCell): string | undefined {
  if (formula !== undefined) return `=${formula}`;
  if (value === undefined) return undefined;
  if (typeof value === "string") return plainWord(value) ? value : `'${value}`;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(value);
}

const plainWord = (text: string): boolean => /^[A-Za-z]{2}/.test(text) && !/^(true|false)$/i.test(text);

function oneOf(range: string, words: readonly string[]): string {
  const first = range.split(":")[0];
  return `=OR(${words.map((word) => `${first}=${quotedText(word)}`).join(",")})`;
}

function criterionOf(
  { rule, range }: BookValidation,
  named: ReadonlyMap<string, string>,
): Record<string, unknown> | undefined {
  switch (rule.kind) {
    case "number":
      if (rule.orWords) return { type: "customFormula", values: [`=${numberOrWord(rule, range)}`] };
      if (rule.min !== undefined && rule.max !== undefined) {
        const { min, max, atLeast, atMost } = rule;
        const least = atLeast ? `=MAX(${min},${atLeast})` : String(min);
        return { type: "isBetween", values: [least, atMost ? `=MIN(${max},${atMost})` : String(max)] };
      }
      if (rule.min !== undefined) return { type: "isGreaterOrEqualTo", values: [String(rule.min)] };
      if (rule.max !== undefined) return { type: "isLessOrEqualTo", values: [String(rule.max)] };
      return undefined;
    case "choice":
      return { type: "isValueInList", values: rule.choices, displayStyle: "arrow" };
    case "named": {
      const list = named.get(rule.name);
      return list ? { type: "isValueInRange", values: [list], displayStyle: "arrow" } : undefined;
    }
    case "date": {
      const { min, max } = rule;
      if (min === undefined || max === undefined) return { type: "dateIsValid", values: [] };
      return { type: "dateIsBetween", values: [isoDate(min), isoDate(max)], dateValue: "exactDate" };
    }
    // The library has no rule for a text's length.
    case "text":
      return undefined;
  }
}

export function styleOf(look: Look): Record<string, unknown> {
  const style: Record<string, unknown> = {};
  if (look.bold) style.bold = true;
  if (look.italic) style.italic = true;
  if (look.size) style.fontSize = look.size;
  if (look.color) style.textColor = `#${look.color}`;
  if (look.fill) style.fillColor = `#${look.fill}`;
  if (look.align) style.align = look.align;
  if (look.vertical) style.verticalAlign = look.vertical;
  if (look.wrap) style.wrapping = "wrap";
  return style;
}

export function borderOf(edges: NonNullable<Look["edges"]>): Record<string, unknown> {
  const side = (edge: Edge | undefined) => (edge ? { style: edge, color: `#${EDGE_COLOR}` } : undefined);
  return {
    top: side(edges.top),
    right: side(edges.right),
    bottom: side(edges.bottom),
    left: side(edges.left),
  };
}

/** The zone of a book's range on its sheet; used where a range must be valid. */
export function zoneOf(range: string): Zone {
  const zone = parseRange(range);
  if (!zone) throw new Error(`not a range: ${range}`);
  return zone;
}
