/**
 * Lays a workbook definition out into a book: places every cell, names every
 * column, and puts a person's inputs in.
 *
 * A block lies between two thin rows. The upper one carries the column
 * formulas, so that no data row is special: rows may be inserted, sorted or
 * cleared from the first to the last. The lower one closes the block: a row
 * inserted above it stretches the names. The names reach from the one to the
 * other; in both thin rows the inputs are blank and every result is empty.
 */
import { rangeOf } from "../formula/address";
import { markArrays } from "./arrayFormulas";
import type { Book, BookSheet } from "./book";
import { checks as checkNames } from "./checkNames";
import type { Block, JobInputs, SheetDefinition, WorkbookDefinition } from "./definition";
import { layOutBlock } from "./layOutBlock";
import { layOutChecks } from "./layOutChecks";
import { layOutExercise, layOutTable } from "./layOutExercise";
import { layOutFields } from "./layOutFields";
import { layOutAnswer, layOutGrid, layOutText, layOutWords } from "./layOutLists";
import { linesOf } from "./linesOf";
import { ALERT_WORDS, LOOKS } from "./looks";
import { DECIMALS_FIELD, withMoneyShown } from "./moneyShown";
import { pageBreaks } from "./pageBreaks";
import { makeRoom, put, widen, type SheetLayout } from "./sheetLayout";
import { columnsWanted, lastPrinted, makeRoomForLines, noteColumnOf, VERDICT_COLUMN } from "./sheetWidths";

/** A printed page fills the width of the paper with the three columns that it has. */
const PRINTED_WIDTHS = [40, 38, 14] as const;
/** Columns that a sheet shows beyond those it uses. */
const SPARE_COLUMNS = 2;
/** The master verdict, of the workbooks that have one. */
const VERDICT = checkNames.verdict.name;
/** "12 checks need attention", in bold. */
const VERDICT_WIDTH = 25;
/** Rows ready beyond those that are filled. */
const SPARE_ROWS = 4;

/**
 * @param definition the template
 * @param inputs what to fill in; the blocks get enough rows for it
 * @returns a book without computed values
 */
export function layOut(definition: WorkbookDefinition, inputs: JobInputs = {}): Book {
  const book: Book = {
    template: definition.id,
    templateVersion: definition.version,
    title: definition.title,
    looks: [],
    sheets: [],
    names: [],
  };
  const rows = preparedRows(definition, inputs);
  const hasVerdict = definition.sheets.some(({ parts }) =>
    parts.some((part) => part.kind === "fields" && part.fields.some((field) => field.name === VERDICT)),
  );
  for (const sheet of definition.sheets) layOutSheet(book, sheet, inputs, rows, hasVerdict);
  // Once every name is known.
  markArrays(book);
  return { ...book, looks: [...withMoneyShown(book.looks, inputs.fields?.[DECIMALS_FIELD])] };
}

function preparedRows(definition: WorkbookDefinition, inputs: JobInputs): ReadonlyMap<string, number> {
  const blocks = definition.sheets.flatMap((sheet) =>
    sheet.parts.filter((part): part is Block => part.kind === "block"),
  );
  const rows = new Map<string, number>();
  for (const block of blocks.filter(({ mirrors }) => !mirrors)) {
    const filled = inputs.blocks?.[block.name]?.length ?? 0;
    rows.set(block.name, Math.max(block.prepared, filled === 0 ? 0 : filled + SPARE_ROWS));
  }
  for (const block of blocks) if (block.mirrors) rows.set(block.name, rows.get(block.mirrors)!);
  return rows;
}

function layOutSheet(
  book: Book,
  definition: SheetDefinition,
  inputs: JobInputs,
  rows: ReadonlyMap<string, number>,
  hasVerdict: boolean,
): void {
  const sheet: BookSheet = {
    name: definition.name,
    cells: {},
    results: {},
    rowCount: 0,
    columnCount: 0,
    columnWidths: {},
    rowHeights: {},
    frozenRows: 2,
    frozenColumns: definition.frozenColumns ?? 0,
    validations: [],
    marks: [],
    protected: true,
  };
  book.sheets.push(sheet);
  const layout: SheetLayout = {
    book,
    sheet,
    inputs,
    rows,
    alerts: [...ALERT_WORDS, ...(definition.alerts ?? [])],
    noteColumn: noteColumnOf(definition),
    heads: new Map(),
  };

  put(layout, 0, 0, LOOKS.title, { value: definition.name });
  if (hasVerdict) put(layout, 0, VERDICT_COLUMN, LOOKS.verdict, { formula: VERDICT });
  put(layout, 1, 0, LOOKS.intro, { value: definition.intro });

  const [only, ...others] = definition.parts;
  const onlyBlock = others.length === 0 && only?.kind === "block";
  const onlyTable = others.length === 0 && only?.kind === "table" && !only.lines;
  const printed = definition.kind === "print" && columnsWanted(definition) <= PRINTED_WIDTHS.length;
  if (printed) PRINTED_WIDTHS.forEach((width, column) => widen(layout, column, width));
  let row = onlyBlock || onlyTable ? 2 : 3;
  let heads = 1;
  for (const part of definition.parts) {
    // Below the block's heading stand its heads and units.
    if (part.kind === "block") heads = row + 2;
    switch (part.kind) {
      case "block":
        row = layOutBlock(layout, part, row, !onlyBlock);
        if (onlyBlock) sheet.frozenRows = 4;
        break;
      case "fields":
        row = layOutFields(layout, part, row);
        break;
      case "grid":
        row = layOutGrid(layout, part, row);
        break;
      case "answer":
        row = layOutAnswer(layout, part, row);
        break;
      case "text":
        row = layOutText(layout, part, row);
        break;
      case "words":
        row = layOutWords(layout, part, row);
        break;
      case "checks":
        row = layOutChecks(layout, part, row);
        break;
      case "table":
        row = layOutTable(layout, part, row, !onlyTable);
        if (onlyTable) sheet.frozenRows = 3;
        break;
      case "exercise":
        row = layOutExercise(layout, part, row);
        break;
    }
    row += 1;
  }
  for (const [head, texts] of layout.heads) {
    const lines = texts.map(([column, text]) => linesOf(text, sheet.columnWidths[column]!));
    makeRoom(layout, head, Math.max(...lines));
  }
  if (definition.kind === "about") makeRoomForLines(sheet);
  const right = printed
    ? PRINTED_WIDTHS.length - 1
    : (lastPrinted(definition) ?? Math.max(VERDICT_COLUMN, ...usedColumns(sheet)));
  // Nothing flows over the edge of the paper.
  if (hasVerdict && right === VERDICT_COLUMN) widen(layout, VERDICT_COLUMN, VERDICT_WIDTH);
  sheet.rowCount = row + SPARE_ROWS;
  sheet.columnCount = Math.max(VERDICT_COLUMN, ...usedColumns(sheet)) + 1 + SPARE_COLUMNS;
  sheet.print = {
    orientation: definition.print.orientation,
    ...(definition.print.onePage && { onePage: true }),
    paper: "a4",
    area: rangeOf({
      top: 0,
      left: 0,
      // An empty row below the last would now and then be a page of its own.
      bottom: row - 2,
      right,
    }),
    repeatFrom: onlyBlock || onlyTable ? 3 : definition.print.repeatHeads ? heads : 1,
    repeatTo: onlyBlock ? 4 : onlyTable ? 3 : definition.print.repeatHeads ? heads + 1 : 1,
    footLeft: definition.name,
    footRight: "",
  };
  // Rows that are added later would leave other breaks than these behind: only what never grows has them.
  if (definition.parts.some(({ kind }) => kind === "exercise")) {
    sheet.print = { ...sheet.print, breaks: pageBreaks(sheet, book.looks) };
  }
}

const usedColumns = (sheet: BookSheet): number[] => Object.keys(sheet.columnWidths).map(Number);
