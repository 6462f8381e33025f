/** One sheet as the library read it, as a sheet of a book. */
import type { Cell, CellStyle, CellValue, Sheet } from "hucre/xlsx";
import { address, LAST_COLUMN, LAST_ROW, parseRange, rangeOf, type Zone } from "../../formula/address";
import type { BookCell, BookResult, BookSheet } from "../../workbooks/book";
import { stop, troubles } from "./fileTrouble";
import { MAX_CELLS, MAX_SHEET_COLUMNS, MAX_SHEET_ROWS, MAX_STORED_FORMULA } from "./limits";
import { fromConditionalRules } from "./marks";
import { fromPageSetup } from "./printSetup";
import { shiftedFormula } from "../../formula/shiftedFormula";
import { callsUs } from "../../formula/callsUs";
import { fromStoredFormula, isBoundElsewhere } from "../../formula/storedFormula";
import { fromStoredText } from "./storedText";
import { fromDataValidation } from "./validations";

export interface ReadingContext {
  /** The book's index for a style; `undefined` for one without anything of a look. */
  readonly lookFor: (style: CellStyle) => number | undefined;
  /** Cells read so far, in all sheets. */
  cellCount: number;
  /** Some call of ours was stored as another add-in's. */
  boundElsewhere: boolean;
}

const keyOf = (row: number, column: number): number => row * (LAST_COLUMN + 1) + column;

export function readSheet(sheet: Sheet, context: ReadingContext): BookSheet {
  const cells: Record<string, BookCell> = {};
  const results: Record<string, BookResult> = {};
  const spilled = spilledCells(sheet);
  const shared = sharedFormulas(sheet);
  let lastRow = 0;
  let lastColumn = 0;

  const read = (row: number, column: number, content: CellValue, detail: Cell | undefined): void => {
    const at = address(row, column);
    const cell: BookCell = {};
    const result = resultOf(content, detail, at, sheet.name);
    const formula = detail && formulaOf(detail, row, column, shared, sheet.name, context);
    if (formula !== undefined) {
      cell.formula = formula;
      const zone = detail?.formulaType === "array" ? parseRange(detail.formulaRef ?? "") : undefined;
      const fills = zone && { rows: zone.bottom - zone.top + 1, columns: zone.right - zone.left + 1 };
      // A call of ours is stored as an array even where it has one result.
      if (fills && (fills.rows > 1 || fills.columns > 1 || !callsUs(formula))) cell.spill = fills;
    }
    if (result !== undefined) {
      if (formula !== undefined || typeof result === "object" || spilled.has(keyOf(row, column))) {
        results[at] = result;
      } else cell.value = result;
    }
    const look = detail?.style && context.lookFor(detail.style);
    if (look !== undefined) cell.look = look;
    if (detail?.comment) cell.note = fromStoredText(detail.comment.text);
    const holdsSomething =
      formula !== undefined || cell.value !== undefined || look !== undefined || cell.note !== undefined;
    if (holdsSomething) cells[at] = cell;
    if (!holdsSomething && result === undefined) return;
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
    context.cellCount += 1;
    if (row >= MAX_SHEET_ROWS || column >= MAX_SHEET_COLUMNS) {
      stop(troubles.sheetTooLarge(sheet.name, row + 1, column + 1));
    }
    if (context.cellCount > MAX_CELLS) stop(troubles.tooManyCells(sheet.name));
  };

  sheet.rows.forEach((contents, row) => {
    contents.forEach((content, column) => read(row, column, content, sheet.cells?.get(`${row},${column}`)));
  });
  // A note may hang on a cell beyond the last that holds anything.
  for (const [key, detail] of sheet.cells ?? []) {
    const [row, column] = key.split(",").map(Number) as [number, number];
    if (column >= (sheet.rows[row]?.length ?? 0) && isOnSheet(row, column)) read(row, column, null, detail);
  }

  const columnWidths = widthsOf(sheet);
  const rowHeights = heightsOf(sheet);
  const hiddenRows = [...(sheet.rowDefs ?? [])].flatMap(([row, { hidden }]) => (hidden ? [row] : []));
  // Many people hide all the columns to the right of what they use.
  const hiddenColumns = (sheet.columns ?? [])
    .slice(0, lastColumn + 1)
    .flatMap(({ hidden }, column) => (hidden ? [column] : []));
  const merged = (sheet.merges ?? []).map(({ startRow, startCol, endRow, endCol }) =>
    rangeOf({ top: startRow, left: startCol, bottom: endRow, right: endCol }),
  );
  const print = fromPageSetup(sheet.pageSetup, sheet.headerFooter);
  const tabColor = sheet.view?.tabColor?.rgb;
  return {
    name: fromStoredText(sheet.name),
    cells,
    results,
    rowCount: 1 + Math.max(lastRow, ...Object.keys(rowHeights).map(Number)),
    columnCount: 1 + Math.max(lastColumn, ...Object.keys(columnWidths).map(Number)),
    columnWidths,
    rowHeights,
    frozenRows: sheet.freezePane?.rows ?? 0,
    frozenColumns: sheet.freezePane?.columns ?? 0,
    validations: (sheet.dataValidations ?? []).flatMap(fromDataValidation),
    marks: fromConditionalRules(sheet.conditionalRules ?? [], context.lookFor),
    protected: sheet.protection?.sheet ?? false,
    ...(print && { print }),
    ...(tabColor !== undefined && { tabColor }),
    ...((sheet.hidden || sheet.veryHidden) && { hidden: true }),
    ...(hiddenRows.length > 0 && { hiddenRows }),
    ...(hiddenColumns.length > 0 && { hiddenColumns }),
    ...(merged.length > 0 && { merged }),
  };
}

const isOnSheet = (row: number, column: number): boolean =>
  Number.isInteger(row) &&
  Number.isInteger(column) &&
  row >= 0 &&
  column >= 0 &&
  row <= LAST_ROW &&
  column <= LAST_COLUMN;

function resultOf(
  content: CellValue,
  detail: Cell | undefined,
  at: string,
  sheet: string,
): BookResult | undefined {
  if (content === null) return undefined;
  if (detail?.type === "error") return { error: String(content) };
  // patchedInput hides every date format from the library, so a date here is a mistake of ours.
  if (content instanceof Date) return stop(troubles.unreadable(`a date in ${at} of sheet "${sheet}"`));
  return content;
}

interface Shared {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

/** The formulas that other cells share, by their number. */
function sharedFormulas(sheet: Sheet): Map<number, Shared> {
  const shared = new Map<number, Shared>();
  for (const [key, { formula, formulaSharedIndex }] of sheet.cells ?? []) {
    if (!formula || formulaSharedIndex === undefined) continue;
    const [row, column] = key.split(",").map(Number) as [number, number];
    shared.set(formulaSharedIndex, { formula, row, column });
  }
  return shared;
}

function formulaOf(
  { formula, formulaSharedIndex }: Cell,
  row: number,
  column: number,
  shared: ReadonlyMap<number, Shared>,
  sheet: string,
  context: ReadingContext,
): string | undefined {
  if (formula === undefined) return undefined;
  const owner =
    formula === "" && formulaSharedIndex !== undefined ? shared.get(formulaSharedIndex) : undefined;
  const length = (owner?.formula ?? formula).length;
  if (length > MAX_STORED_FORMULA) {
    stop(troubles.tooLong(`Cell ${address(row, column)} of sheet "${sheet}"`, length, MAX_STORED_FORMULA));
  }
  const stored = owner ? shiftedFormula(owner.formula, row - owner.row, column - owner.column) : formula;
  if (stored === "") return undefined;
  const text = fromStoredText(stored);
  context.boundElsewhere ||= isBoundElsewhere(text);
  return fromStoredFormula(text);
}

/** Cells that an array formula fills, its own left out. */
function spilledCells(sheet: Sheet): Set<number> {
  const spilled = new Set<number>();
  const height = sheet.rows.length;
  const width = sheet.rows.reduce((most, row) => Math.max(most, row.length), 0);
  let looked = 0;
  for (const [key, { formulaType, formulaRef }] of sheet.cells ?? []) {
    const zone = formulaType === "array" ? parseRange(formulaRef ?? "") : undefined;
    if (!zone) continue;
    const inside: Zone = {
      ...zone,
      bottom: Math.min(zone.bottom, height - 1),
      right: Math.min(zone.right, width - 1),
    };
    looked += Math.max(0, inside.bottom - inside.top + 1) * Math.max(0, inside.right - inside.left + 1);
    if (looked > MAX_CELLS) stop(troubles.tooManyCells(sheet.name));
    for (let row = inside.top; row <= inside.bottom; row++) {
      for (let column = inside.left; column <= inside.right; column++) {
        if (`${row},${column}` !== key) spilled.add(keyOf(row, column));
      }
    }
  }
  return spilled;
}

function widthsOf(sheet: Sheet): Record<number, number> {
  const widths: Record<number, number> = {};
  (sheet.columns ?? []).slice(0, MAX_SHEET_COLUMNS).forEach(({ width }, column) => {
    if (width !== undefined) widths[column] = width;
  });
  return widths;
}

function heightsOf(sheet: Sheet): Record<number, number> {
  const heights: Record<number, number> = {};
  for (const [row, { height }] of sheet.rowDefs ?? []) {
    if (height !== undefined && row < MAX_SHEET_ROWS) heights[row] = height;
  }
  return heights;
}
