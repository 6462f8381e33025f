/** The open workbook as a book: values, formulas, spills, names, and what template it is. */
import { address, type Place } from "../../formula/address";
import { areaOf } from "../../formula/areaOf";
import { markArrays } from "../../workbooks/arrayFormulas";
import type { Book, BookName, BookResult, BookSheet, SavedState } from "../../workbooks/book";
import { TEMPLATE, TEMPLATE_VERSION } from "../file/documentProperties";
import { fromStoredFormula, isBoundElsewhere } from "../../formula/storedFormula";

/** Excel on the web answers with 5 MB at most; a cell is value, formula and type. */
const CELLS_PER_REQUEST = 50_000;

/** What is asked of a workbook besides its cells. */
export interface WorkbookFacts {
  readonly names: BookName[];
  readonly template: string;
  readonly templateVersion: string;
}

/** Queues the loading; the result may be read after the next sync. */
export function factsOf({ names, properties }: Excel.Workbook): () => WorkbookFacts {
  names.load("items/name,items/formula");
  properties.custom.load("items/key,items/value");
  return () => {
    const own = (key: string): string => {
      const found = properties.custom.items.find((one) => one.key === key);
      return found ? String(found.value) : "";
    };
    return {
      names: names.items.flatMap(({ name, formula }) => nameOf(name, String(formula))),
      template: own(TEMPLATE),
      templateVersion: own(TEMPLATE_VERSION),
    };
  };
}

/** Only names of one range are names of a book. */
function nameOf(name: string, formula: string): BookName[] {
  const area = areaOf(formula);
  return area ? [{ name, ...area }] : [];
}

/** The part of a sheet that is used, as it was loaded. */
export interface UsedCells {
  readonly sheet: Excel.Worksheet;
  readonly name: string;
  readonly hidden: boolean;
  /** 0-based place of the first cell. */
  readonly top: number;
  readonly left: number;
  readonly values: unknown[][];
  /** As people see them, without the equals sign; undefined where there is none. */
  readonly formulas: (string | undefined)[][];
  readonly errors: boolean[][];
  /** A call of ours is bound to another add-in's file. */
  readonly bound: boolean;
  /** Names of this sheet only. */
  readonly ownNames: readonly string[];
}

const bare = (formula: unknown): string | undefined =>
  typeof formula === "string" && formula.startsWith("=") ? fromStoredFormula(formula.slice(1)) : undefined;

/** Every sheet's used cells, in as few requests as their size allows. */
export async function usedCells(context: Excel.RequestContext): Promise<UsedCells[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name,items/visibility");
  await context.sync();
  const used = worksheets.items.map((sheet) => ({ sheet, range: sheet.getUsedRangeOrNullObject(true) }));
  for (const { sheet, range } of used) {
    range.load("rowIndex,columnIndex,rowCount,columnCount");
    sheet.names.load("items/name");
  }
  await context.sync();
  const parts = used.map(({ sheet, range }) => (range.isNullObject ? [] : partsOf(sheet, range)));
  let queued = 0;
  for (const { range, cells } of parts.flat()) {
    if (queued > 0 && queued + cells > CELLS_PER_REQUEST) {
      await context.sync();
      queued = 0;
    }
    range.load("values,formulas,valueTypes");
    queued += cells;
  }
  await context.sync();
  return used.map(({ sheet, range }, index) => {
    const all = <T>(rows: (part: Excel.Range) => T[][]): T[][] =>
      parts[index]!.flatMap((part) => rows(part.range));
    const formulas = all((part) => part.formulas as unknown[][]);
    return {
      sheet,
      name: sheet.name,
      hidden: sheet.visibility !== "Visible",
      top: range.isNullObject ? 0 : range.rowIndex,
      left: range.isNullObject ? 0 : range.columnIndex,
      values: all((part) => part.values as unknown[][]),
      formulas: formulas.map((row) => row.map(bare)),
      errors: all((part) => part.valueTypes).map((row) => row.map((type) => type === "Error")),
      ownNames: sheet.names.items.map(({ name }) => name),
      bound: formulas.some((row) => row.some((one) => typeof one === "string" && isBoundElsewhere(one))),
    };
  });
}

/** What one answer can hold of a range, from the top. */
function partsOf(
  sheet: Excel.Worksheet,
  { rowIndex, columnIndex, rowCount, columnCount }: Excel.Range,
): { readonly range: Excel.Range; readonly cells: number }[] {
  const rows = Math.max(1, Math.floor(CELLS_PER_REQUEST / columnCount));
  const parts = [];
  for (let from = 0; from < rowCount; from += rows) {
    const taken = Math.min(rows, rowCount - from);
    const range = sheet.getRangeByIndexes(rowIndex + from, columnIndex, taken, columnCount);
    parts.push({ range, cells: taken * columnCount });
  }
  return parts;
}

export async function readWorkbook(context: Excel.RequestContext): Promise<Book> {
  const facts = factsOf(context.workbook);
  context.application.load("calculationMode");
  const used = await usedCells(context);
  const sheets = new Map(used.map((one) => [one, sheetFrom(one)]));
  await findSpills(context, sheets, anchorsOf);
  // Two equal formulas side by side: the second was passed over, and still stands.
  await findSpills(context, sheets, (one) =>
    repeatsOf(one).filter(({ row, column }) => sheets.get(one)!.cells[address(row, column)]),
  );
  const { names, template, templateVersion } = facts();
  // Excel writes an @ into a formula where it cuts; one without has been computed over arrays.
  markArrays({ names, sheets: [...sheets.values()] });
  const known = new Set(names.map(({ name }) => name.toLowerCase()));
  const twice = used.flatMap(({ name: sheet, ownNames }) =>
    ownNames.flatMap((name) => (known.has(name.toLowerCase()) ? [{ name, sheet }] : [])),
  );
  const saved: SavedState = {
    ...(context.application.calculationMode === "Manual" && { manual: true }),
    ...(used.some(({ bound }) => bound) && { boundElsewhere: true }),
    ...(twice.length > 0 && { twice }),
  };
  return {
    template,
    templateVersion,
    title: "",
    looks: [],
    sheets: [...sheets.values()],
    names,
    ...(Object.keys(saved).length > 0 && { saved }),
  };
}

/** Asks where the given formulas spill, all in one round trip. */
async function findSpills(
  context: Excel.RequestContext,
  sheets: ReadonlyMap<UsedCells, BookSheet>,
  cellsOf: (used: UsedCells) => Place[],
): Promise<void> {
  const asked = [...sheets].flatMap(([used, sheet]) =>
    cellsOf(used).map(({ row, column }) => {
      const spill = used.sheet.getCell(row, column).getSpillingToRangeOrNullObject();
      spill.load("rowCount,columnCount");
      return { sheet, row, column, spill };
    }),
  );
  if (asked.length === 0) return;
  await context.sync();
  for (const { sheet, row, column, spill } of asked) {
    if (!spill.isNullObject) keepSpill(sheet, row, column, spill);
  }
}

const formulaCells = ({ formulas, top, left }: UsedCells, wanted: (repeats: boolean) => boolean): Place[] =>
  formulas.flatMap((line, row) =>
    line.flatMap((formula, column) => {
      if (formula === undefined) return [];
      const repeats = formula === formulas[row - 1]?.[column] || formula === line[column - 1];
      return wanted(repeats) ? [{ row: top + row, column: left + column }] : [];
    }),
  );

/**
 * A cell that a formula spills into may show that formula too, so one that
 * repeats its neighbour above or to the left most likely begins no spill.
 */
const anchorsOf = (used: UsedCells): Place[] => formulaCells(used, (repeats) => !repeats);
const repeatsOf = (used: UsedCells): Place[] => formulaCells(used, (repeats) => repeats);

function sheetFrom({ name, hidden, top, left, values, formulas, errors }: UsedCells): BookSheet {
  const sheet: BookSheet = {
    name,
    cells: {},
    results: {},
    rowCount: top + values.length,
    columnCount: left + (values[0]?.length ?? 0),
    columnWidths: {},
    rowHeights: {},
    frozenRows: 0,
    frozenColumns: 0,
    validations: [],
    marks: [],
    protected: false,
    ...(hidden && { hidden: true }),
  };
  values.forEach((line, row) =>
    line.forEach((value, column) => {
      const at = address(top + row, left + column);
      const formula = formulas[row]![column];
      const result = resultOf(value, errors[row]![column]!);
      if (formula !== undefined) {
        sheet.cells[at] = { formula };
        sheet.results[at] = result;
      } else if (value !== "") {
        if (typeof result === "object") sheet.results[at] = result;
        else sheet.cells[at] = { value: result };
      }
    }),
  );
  return sheet;
}

export const resultOf = (value: unknown, isError: boolean): BookResult =>
  isError
    ? { error: String(value) }
    : typeof value === "number" || typeof value === "boolean"
      ? value
      : String(value);

/** What a formula filled is its result, not something typed. */
function keepSpill(
  sheet: BookSheet,
  top: number,
  left: number,
  { rowCount: rows, columnCount: columns }: Excel.Range,
): void {
  const anchor = sheet.cells[address(top, left)];
  // It lies in the spill of another, which was found first.
  if (!anchor) return;
  anchor.spill = { rows, columns };
  for (let row = top; row < top + rows; row++) {
    for (let column = left; column < left + columns; column++) {
      if (row === top && column === left) continue;
      const at = address(row, column);
      const typed = sheet.cells[at]?.value;
      sheet.results[at] ??= typed ?? "";
      delete sheet.cells[at];
    }
  }
}
