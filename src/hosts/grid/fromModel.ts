/** Turns a model of the spreadsheet library, with what it has computed, back into a book. */
import { overListIn } from "../../workbooks/overList";
import { areaOf } from "../../formula/areaOf";
import { textsIn } from "../../formula/textsIn";
import { address, parseRange, rangeOf } from "../../formula/address";
import { arrayFormulas } from "../../workbooks/arrayFormulas";
import {
  inputZone,
  lookIndex,
  type Book,
  type BookCell,
  type BookMark,
  type BookResult,
  type BookSheet,
  type BookValidation,
  type Edge,
  type Look,
} from "../../workbooks/book";
import { callsUs } from "../../formula/callsUs";
import { TEXT_FORMAT } from "../../workbooks/looks";
import { holdsText } from "../../workbooks/typed/holdsText";
import { NO_FACTS, type BookFacts } from "./bookFacts";
import { exportedBy } from "./exportedBy";
import type { GridDocument, GridLibrary, GridModel } from "./library";
import { CELL_PADDING_PIXELS, PIXELS_PER_CHARACTER, PIXELS_PER_POINT } from "./toDocument";

type SheetDocument = GridDocument["sheets"][number];

/**
 * @param model a model whose document {@link toDocument} made, edited or not
 * @returns the workbook with its computed values
 */
export function fromModel(library: GridLibrary, model: GridModel): Book {
  const exported = exportedBy(model);
  const getters = model.getters as GridModel["getters"] & { getBookFacts?: () => BookFacts };
  const facts = getters.getBookFacts?.() ?? NO_FACTS;
  const book: Book = {
    template: facts.template,
    templateVersion: facts.templateVersion,
    title: facts.title,
    looks: [],
    sheets: [],
    names: Object.entries(exported.namedRanges).flatMap(([name, text]) => {
      const area = areaOf(text);
      return area ? [{ name, ...area }] : [];
    }),
  };
  // The library's document has no word for it.
  const arrayOf = arrayFormulas(book);
  for (const sheetDocument of exported.sheets) {
    book.sheets.push(sheetFrom(library, model, sheetDocument, exported, facts, book, arrayOf));
  }
  return book;
}

function sheetFrom(
  library: GridLibrary,
  model: GridModel,
  sheet: SheetDocument,
  exported: GridDocument,
  facts: BookFacts,
  book: Book,
  arrayOf: ReturnType<typeof arrayFormulas>,
): BookSheet {
  const { getters } = model;
  const sheetFacts = facts.sheets[sheet.id];
  const cells: Record<string, BookCell> = {};

  paintLooks(sheet, exported, book, cells);
  for (const cell of getters.getCells(sheet.id)) {
    const position = getters.getCellPosition(cell.id);
    const at = address(position.row, position.col);
    const kept = (cells[at] ??= {});
    if (cell.isFormula) {
      kept.formula = cell.compiledFormula.toFormulaString(getters).slice(1);
      const spill = spillOf(model, position) ?? arrayOf(kept.formula);
      if (spill) kept.spill = spill;
    } else if (cell.parsedValue !== null && cell.parsedValue !== "") {
      kept.value = cell.parsedValue;
    }
  }
  for (const [at, note] of Object.entries(sheetFacts?.notes ?? {})) (cells[at] ??= {}).note = note;

  const results = resultsOf(library, model, sheet.id, cells);

  const validations = [...(sheetFacts?.validations ?? [])];
  unlockInputsAndCalls(book, cells, validations);
  return {
    name: sheet.name,
    cells,
    results,
    rowCount: sheet.rowNumber,
    columnCount: sheet.colNumber,
    columnWidths: sizes(sheet.cols, (size) => (size - CELL_PADDING_PIXELS) / PIXELS_PER_CHARACTER),
    rowHeights: sizes(sheet.rows, (size) => size / PIXELS_PER_POINT),
    frozenRows: sheet.panes?.ySplit ?? 0,
    frozenColumns: sheet.panes?.xSplit ?? 0,
    validations,
    marks: marksOf(sheet, book),
    protected: sheetFacts?.protected ?? false,
    print: sheetFacts?.print,
    tabColor: sheet.color?.replace("#", ""),
    hidden: sheet.isVisible ? undefined : true,
  };
}

/** What a model has computed for its cells without a value of their own, by address. */
export function resultsOf(
  library: GridLibrary,
  { getters }: GridModel,
  id: string,
  cells: Readonly<Record<string, BookCell>>,
): Record<string, BookResult> {
  const results: Record<string, BookResult> = {};
  const errors = library.registries.errorTypes;
  for (const position of getters.getEvaluatedCellsPositions(id)) {
    const at = address(position.row, position.col);
    const cell = cells[at];
    if (cell?.value !== undefined && cell.formula === undefined) continue;
    const { value, message } = getters.getEvaluatedCell(position) as {
      value: number | string | boolean | null;
      message?: string;
    };
    if (value === null) continue;
    results[at] = typeof value === "string" && errors.has(value) ? { error: value, message } : value;
  }
  return results;
}

/** How far a formula's result reaches; undefined for one that fills its own cell only. */
export function spillOf(
  { getters }: GridModel,
  position: { sheetId: string; row: number; col: number },
): BookCell["spill"] {
  const zone = getters.getSpreadZone(position);
  if (!zone) return undefined;
  // Of a result that begins with an error the library tells its first cell only: the rest is looked for.
  const isFilled = (at: { row: number; col: number }): boolean => {
    const by = getters.getArrayFormulaSpreadingOn({ sheetId: position.sheetId, ...at });
    return by?.row === position.row && by.col === position.col;
  };
  let { bottom, right } = zone;
  while (isFilled({ row: bottom + 1, col: position.col })) bottom++;
  while (isFilled({ row: position.row, col: right + 1 })) right++;
  return { rows: bottom - position.row + 1, columns: right - position.col + 1 };
}

/**
 * The library's styles know no lock. An input cell is one under a rule for
 * what may be typed; a cell that holds a call of ours, or shows one's result,
 * must never be locked, because Excel can then get stuck on #NAME?.
 */
export function unlockInputsAndCalls(
  book: Book,
  cells: Record<string, BookCell>,
  validations: readonly BookValidation[],
): void {
  if (book.template !== "") keepNamesText(book, cells, validations);
  const inputRanges = validations.flatMap((validation) => inputZone(validation) ?? []).map(rangeOf);
  const calls = Object.entries(cells).flatMap(([at, { formula, spill }]) => {
    const zone = formula !== undefined && callsUs(formula) ? parseRange(at) : undefined;
    if (!zone) return [];
    return [
      { ...zone, bottom: zone.top + (spill?.rows ?? 1) - 1, right: zone.left + (spill?.columns ?? 1) - 1 },
    ];
  });
  const unlocked = new Map<number | undefined, number>();
  for (const range of [...inputRanges, ...calls.map(rangeOf)]) {
    for (const at of addressesIn(range)) {
      const cell = cells[at];
      let look = unlocked.get(cell?.look);
      if (look === undefined) {
        look = lookIndex(book, {
          ...(cell?.look === undefined ? {} : book.looks[cell.look]),
          locked: false,
        });
        unlocked.set(cell?.look, look);
      }
      if (cell?.look !== look) cells[at] = { ...cell, look };
    }
  }
}

/**
 * In every other program an input that holds names is a cell of text, so that `3-16` stays what it is there too.
 * A formula that a person put there is left alone: in a cell of text it would turn into words when it is edited.
 */
function keepNamesText(
  book: Book,
  cells: Record<string, BookCell>,
  validations: readonly BookValidation[],
): void {
  const texts = new Map<number | undefined, number>();
  const zones = validations.flatMap((one) => (holdsText(one.rule) ? (inputZone(one) ?? []) : []));
  for (const at of zones.map(rangeOf).flatMap(addressesIn)) {
    const cell = cells[at];
    if (cell?.formula !== undefined) continue;
    let look = texts.get(cell?.look);
    if (look === undefined) {
      const own = cell?.look === undefined ? {} : book.looks[cell.look]!;
      look = lookIndex(book, { ...own, format: own.format ?? TEXT_FORMAT });
      texts.set(cell?.look, look);
    }
    if (cell?.look !== look) cells[at] = { ...cell, look };
  }
}

const sizes = (
  headers: Record<number, { size?: number }>,
  convert: (pixels: number) => number,
): Record<number, number> =>
  Object.fromEntries(
    Object.entries(headers).flatMap(([index, { size }]) =>
      size ? [[index, Math.round(convert(size) * 4) / 4]] : [],
    ),
  );

/** The document's ids of a cell's style, number format and border; 0 is none. */
type LookIds = [style: number, format: number, border: number];

/** Gives every styled cell its look; cells with the same three ids share one, so each is made once. */
function paintLooks(
  sheet: SheetDocument,
  exported: GridDocument,
  book: Book,
  cells: Record<string, BookCell>,
): void {
  const ids = new Map<string, LookIds>();
  [sheet.styles, sheet.formats, sheet.borders].forEach((zones, part) => {
    for (const [range, id] of Object.entries(zones)) {
      for (const at of addressesIn(range)) {
        const found = ids.get(at);
        if (found) found[part] = id;
        else ids.set(at, Object.assign([0, 0, 0] as LookIds, { [part]: id }));
      }
    }
  });
  const made = new Map<string, number>();
  for (const [at, key] of ids) {
    const text = key.join();
    let index = made.get(text);
    if (index === undefined) {
      const [style, format, border] = key;
      index = lookIndex(
        book,
        dropUndefined({
          ...lookOfStyle(exported.styles[style] ?? {}),
          edges: edgesOf(exported.borders[border]),
          format: exported.formats[format],
        }),
      );
      made.set(text, index);
    }
    (cells[at] ??= {}).look = index;
  }
}

function addressesIn(range: string): string[] {
  const zone = parseRange(range);
  const found: string[] = [];
  if (!zone) return found;
  for (let row = zone.top; row <= zone.bottom; row++) {
    for (let column = zone.left; column <= zone.right; column++) found.push(address(row, column));
  }
  return found;
}

function edgesOf(border: GridDocument["borders"][number] | undefined): Look["edges"] {
  if (!border) return undefined;
  const edge = (side: { style?: string } | undefined): Edge | undefined =>
    side ? (side.style === "medium" || side.style === "thick" ? "medium" : "thin") : undefined;
  return dropUndefined({
    top: edge(border.top),
    right: edge(border.right),
    bottom: edge(border.bottom),
    left: edge(border.left),
  });
}

function lookOfStyle(style: GridDocument["styles"][number]): Look {
  return dropUndefined({
    bold: style.bold || undefined,
    italic: style.italic || undefined,
    size: style.fontSize,
    color: style.textColor?.replace("#", ""),
    fill: style.fillColor?.replace("#", ""),
    align: style.align,
    vertical: style.verticalAlign,
    wrap: style.wrapping === "wrap" || undefined,
  });
}

function marksOf(sheet: SheetDocument, book: Book): BookMark[] {
  return sheet.conditionalFormats.flatMap(({ ranges, rule }) => {
    if (rule.type !== "CellIsRule") return [];
    const overList =
      rule.operator === "customFormula" ? overListIn(rule.values[0] ?? "", ranges[0] ?? "") : undefined;
    if (overList) {
      const look = lookIndex(book, lookOfStyle(rule.style));
      return ranges.map((range) => ({ range, words: [], overList, look }));
    }
    const words = rule.operator === "isEqual" ? rule.values : textsIn(rule.values[0] ?? "");
    if (words.length === 0) return [];
    const look = lookIndex(book, lookOfStyle(rule.style));
    return ranges.map((range) => ({ range, words, look }));
  });
}

function dropUndefined<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, part]) => part !== undefined)) as T;
}
