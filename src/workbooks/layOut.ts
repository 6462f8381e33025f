/**
 * Lays a workbook definition out into a book: places every cell, names every
 * column, and puts a person's filling in.
 *
 * A block lies between two thin rows. The upper one carries the column
 * formulas, so that no data row is special: rows may be inserted, sorted or
 * cleared from the first to the last. The lower one closes the block: a row
 * inserted above it stretches the names. The names reach from the one to the
 * other; in both thin rows the inputs are blank and every result is empty.
 */
import { address, rangeOf } from "../formula/address";
import { cellAt, f, text, type Named } from "../formula/build";
import { callsUs } from "../formula/callsUs";
import { markArrays } from "./arrayFormulas";
import { lookIndex, type Book, type BookSheet } from "./book";
import { checks as checkNames } from "./checkNames";
import { foundOf, placesOf, placesShown } from "./checkPlaces";
import type {
  Answer,
  Block,
  Checks,
  Column,
  Field,
  Fields,
  Filling,
  Grid,
  SheetDefinition,
  Text,
  Words,
  WorkbookDefinition,
} from "./definition";
import { validationOf } from "./inputValidation";
import { EXERCISE_WIDTHS, layOutExercise, layOutTable } from "./layOutExercise";
import { linesOf, wrappedLinesOf } from "./linesOf";
import { ALERT_LOOK, ALERT_WORDS, alignment, inputLook, LOOKS, resultLook } from "./looks";
import { pageBreaks } from "./pageBreaks";
import { filled, LINE_POINTS, makeRoom, name, put, widen, type Desk } from "./placing";
import { holdsText } from "./typed/holdsText";

const THIN_ROW_POINTS = 5;
const FIELD_WIDTHS = [34, 30, 12] as const;
/** A printed page fills the width of the paper with the three columns that it has. */
const PRINTED_WIDTHS = [40, 38, 14] as const;
/** Notes stand to the right of all else and wrap, unless that is too far away: then they run on beside the unit. */
const NOTE_WIDTH = 56;
const FARTHEST_NOTE_COLUMN = 6;
const CHECK_WIDTHS = [64, 42, 12, 9, 34] as const;
const CENTRED = { align: "center" } as const;
const LEFT = { align: "left" } as const;
const CHECK_HEADS = [
  { value: "check", align: "left" },
  { value: "limit", align: "left" },
  { value: "found", align: "right" },
  { value: "result", align: "center" },
  { value: "look at", align: "left" },
] as const;
const DEFAULT_COLUMN_WIDTH = 11;
/** Columns that a sheet shows beyond those it uses. */
const SPARE_COLUMNS = 2;
/** Right of a field's unit. */
const BESIDE_COLUMN = 3;
/** The master verdict, of the workbooks that have one. */
const VERDICT = checkNames.verdict.name;
/** Its column in every sheet's first row. */
const VERDICT_COLUMN = 3;
/** "all checks pass", in bold. */
const VERDICT_WIDTH = 16;
/** Rows ready beyond those that are filled. */
const SPARE_ROWS = 4;

/** Of what a check found: places are cut to what two lines hold. */
const LINES_OF_PLACES = 2;

/** The name of the cells in which rows too many for a block show: its closing row and the one below. */
export const belowOf = ({ name }: Pick<Block, "name">): Named => ({ name: `${name}_below` });

/**
 * @param definition the template
 * @param filling what to fill in; the blocks get enough rows for it
 * @returns a book without computed values
 */
export function layOut(definition: WorkbookDefinition, filling: Filling = {}): Book {
  const book: Book = {
    template: definition.id,
    templateVersion: definition.version,
    title: definition.title,
    looks: [],
    sheets: [],
    names: [],
  };
  const rows = preparedRows(definition, filling);
  const hasVerdict = definition.sheets.some(({ parts }) =>
    parts.some((part) => part.kind === "fields" && part.fields.some((field) => field.name === VERDICT)),
  );
  for (const sheet of definition.sheets) layOutSheet(book, sheet, filling, rows, hasVerdict);
  // Once every name is known.
  markArrays(book);
  return book;
}

function preparedRows(definition: WorkbookDefinition, filling: Filling): ReadonlyMap<string, number> {
  const blocks = definition.sheets.flatMap((sheet) =>
    sheet.parts.filter((part): part is Block => part.kind === "block"),
  );
  const rows = new Map<string, number>();
  for (const block of blocks.filter(({ mirrors }) => !mirrors)) {
    const filled = filling.blocks?.[block.name]?.length ?? 0;
    rows.set(block.name, Math.max(block.prepared, filled === 0 ? 0 : filled + SPARE_ROWS));
  }
  for (const block of blocks) if (block.mirrors) rows.set(block.name, rows.get(block.mirrors)!);
  return rows;
}

function layOutSheet(
  book: Book,
  definition: SheetDefinition,
  filling: Filling,
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
  const desk: Desk = { book, sheet, filling, rows, noteColumn: noteColumnOf(definition) };

  put(desk, 0, 0, LOOKS.title, { value: definition.name });
  if (hasVerdict) put(desk, 0, VERDICT_COLUMN, LOOKS.verdict, { formula: VERDICT });
  put(desk, 1, 0, LOOKS.intro, { value: definition.intro });

  const [only, ...others] = definition.parts;
  const onlyBlock = others.length === 0 && only?.kind === "block";
  const onlyTable = others.length === 0 && only?.kind === "table" && !only.lines;
  const printed = definition.kind === "print" && columnsWanted(definition) <= PRINTED_WIDTHS.length;
  if (printed) PRINTED_WIDTHS.forEach((width, column) => widen(desk, column, width));
  let row = onlyBlock || onlyTable ? 2 : 3;
  let heads = 1;
  for (const part of definition.parts) {
    // Below the block's heading stand its heads and units.
    if (part.kind === "block") heads = row + 2;
    switch (part.kind) {
      case "block":
        row = layOutBlock(desk, part, row, !onlyBlock);
        if (onlyBlock) sheet.frozenRows = 4;
        break;
      case "fields":
        row = layOutFields(desk, part, row);
        break;
      case "grid":
        row = layOutGrid(desk, part, row);
        break;
      case "answer":
        row = layOutAnswer(desk, part, row);
        break;
      case "text":
        row = layOutText(desk, part, row);
        break;
      case "words":
        row = layOutWords(desk, part, row);
        break;
      case "checks":
        row = layOutChecks(desk, part, row);
        break;
      case "table":
        row = layOutTable(desk, part, row, !onlyTable);
        if (onlyTable) sheet.frozenRows = 3;
        break;
      case "exercise":
        row = layOutExercise(desk, part, row);
        break;
    }
    row += 1;
  }
  if (definition.kind === "about") makeRoomForLines(sheet);
  const right = printed
    ? PRINTED_WIDTHS.length - 1
    : (lastPrinted(definition) ?? Math.max(VERDICT_COLUMN, ...usedColumns(sheet)));
  // Nothing flows over the edge of the paper.
  if (hasVerdict && right === VERDICT_COLUMN) widen(desk, VERDICT_COLUMN, VERDICT_WIDTH);
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

/** The longest line of a copy's note on About; it is written when the copy is made. */
const LONGEST_NOTE = 125;
/** A letter of running text, in the digits in which a column's width is counted, with something to spare. */
const LETTER_WIDTH = 0.85;

/** Lines flow over the blank cells beside them, but print only as far as the last column: it is made wide enough. */
function makeRoomForLines({ cells, columnWidths }: BookSheet): void {
  const lengths = Object.values(cells).map(({ value }) => (typeof value === "string" ? value.length : 0));
  const needed = Math.ceil(Math.max(LONGEST_NOTE, ...lengths) * LETTER_WIDTH);
  const last = Math.max(VERDICT_COLUMN, ...Object.keys(columnWidths).map(Number));
  const before = Object.entries(columnWidths).reduce(
    (sum, [column, width]) => sum + (Number(column) === last ? 0 : width),
    0,
  );
  columnWidths[last] = Math.max(columnWidths[last] ?? 0, needed - before);
}

/** Where the columns end that the sheet prints; undefined where all of them do. */
function lastPrinted({ parts, print }: SheetDefinition): number | undefined {
  const block = parts.find((part): part is Block => part.kind === "block");
  if (!block || print.through === undefined) return undefined;
  const last = block.columns.findIndex(({ key }) => key === print.through);
  return block.columns.slice(0, last + 1).reduce((sum, column) => sum + columnsOf(column), 0) - 1;
}

/** How many columns the widest part of a sheet takes. */
const columnsWanted = ({ parts }: SheetDefinition): number =>
  Math.max(
    ...parts.map((part) => {
      if (part.kind === "block") return part.columns.reduce((sum, column) => sum + columnsOf(column), 0);
      if (part.kind === "table") return part.columns.length;
      if (part.kind === "exercise") return EXERCISE_WIDTHS.length;
      if (part.kind === "answer") return part.columns.length;
      if (part.kind === "fields") return BESIDE_COLUMN + (part.besideHeads?.length ?? 0);
      return part.kind === "grid" ? part.heads.length + 1 : part.kind === "checks" ? CHECK_WIDTHS.length : 3;
    }),
  );

/** The first column that no other part of the sheet uses; 0 when it lies too far to the right. */
function noteColumnOf(definition: SheetDefinition): number {
  const column = columnsWanted(definition);
  return column <= FARTHEST_NOTE_COLUMN ? column : 0;
}

const usedColumns = (sheet: BookSheet): number[] => Object.keys(sheet.columnWidths).map(Number);

const columnsOf = ({ across }: Column): number => across?.length ?? 1;

function layOutBlock(desk: Desk, block: Block, top: number, withHeading: boolean): number {
  const { sheet } = desk;
  const head = withHeading ? top + 1 : top;
  const unit = head + 1;
  const anchor = unit + 1;
  const prepared = desk.rows.get(block.name)!;
  const end = anchor + prepared + 1;
  const filled = desk.filling.blocks?.[block.name] ?? [];
  if (withHeading) put(desk, top, 0, LOOKS.heading, { value: block.heading });
  sheet.rowHeights[anchor] = THIN_ROW_POINTS;
  sheet.rowHeights[end] = THIN_ROW_POINTS;

  let lines = 1;
  let numberBefore = false;
  /** Where each column lies, and each part of one that spills sideways. */
  const spans = new Map<string, { left: number; right: number }>();
  let left = 0;
  for (const column of block.columns) {
    const right = left + columnsOf(column) - 1;
    const isNumber = alignment(column.format ?? "text").align === "right";
    // A word that followed a number at the right of its cell would run into it.
    const afterNumber = numberBefore && !isNumber;
    numberBefore = isNumber;
    spans.set(column.key, { left, right });
    for (let at = left; at <= right; at++) {
      const part = column.across?.[at - left];
      const text = part ? `${column.head}: ${part.head}` : column.head;
      const { align } = afterNumber && at === left ? CENTRED : alignment(column.format ?? "text");
      const width = part?.width ?? column.width ?? DEFAULT_COLUMN_WIDTH;
      put(desk, head, at, { ...LOOKS.head, align }, { value: text });
      put(desk, unit, at, { ...LOOKS.unit, align }, { value: part?.unit ?? column.unit ?? "" });
      lines = Math.max(lines, linesOf(text, width));
      put(desk, end, at, LOOKS.end);
      widen(desk, at, width);
      if (part) {
        spans.set(`${column.key}_${part.key}`, { left: at, right: at });
        name(desk, `${block.name}_${column.key}_${part.key}`, anchor, at, end, at);
      }
    }
    name(desk, `${block.name}_${column.key}`, anchor, left, end, right);
    if (column.input) {
      layOutInputColumn(desk, column, anchor, end, left, afterNumber, filled);
    } else if (column.formula !== undefined) {
      layOutFormulaColumn(desk, column, anchor, end, left, afterNumber);
    }
    left = right + 1;
  }
  // What is pasted beyond the prepared rows lands here first: a check looks at it.
  const ownInputs = block.columns.findIndex(({ input }) => !input);
  const first = ownInputs < 0 ? left : ownInputs;
  if (first > 0) name(desk, belowOf(block).name, end, 0, end + 1, first - 1);
  // Not every program makes a row as high as its text when it opens a file.
  sheet.rowHeights[head] = lines * LINE_POINTS;
  for (const group of block.groups ?? []) {
    name(desk, group.name, anchor, spans.get(group.from)!.left, end, spans.get(group.to)!.right);
  }
  return end + 1;
}

function layOutInputColumn(
  desk: Desk,
  column: Column,
  anchor: number,
  end: number,
  at: number,
  centred: boolean,
  rows: readonly Readonly<Record<string, number | string>>[],
): void {
  const { rule } = column.input!;
  const look = { ...inputLook(column.format ?? "text", holdsText(rule)), ...(centred && CENTRED) };
  put(desk, anchor, at, LOOKS.end);
  for (let row = anchor + 1; row < end; row++) {
    const value = rows[row - anchor - 1]?.[column.key];
    put(desk, row, at, look, filled(value, rule));
  }
  // The rule reaches into both thin rows, so that it stretches with the names.
  const range = rangeOf({ top: anchor, left: at, bottom: end, right: at });
  desk.sheet.validations.push(validationOf(column, range));
}

function layOutFormulaColumn(
  desk: Desk,
  column: Column,
  anchor: number,
  end: number,
  left: number,
  centred: boolean,
): void {
  const formula = column.formula!;
  const plain = resultLook(column.format ?? "text", callsUs(formula));
  const look = {
    ...plain,
    ...(column.lines && { wrap: true }),
    ...(column.room && { edges: { top: "thin", right: "thin", bottom: "thin", left: "thin" } as const }),
  };
  const right = left + columnsOf(column) - 1;
  for (let row = anchor; row <= end; row++) {
    for (let at = left; at <= right; at++) {
      const thin = row === anchor || row === end;
      const shown = { ...look, ...(centred && at === left && CENTRED) };
      put(
        desk,
        row,
        at,
        thin ? { ...LOOKS.end, ...(look.locked === false ? { locked: false } : {}) } : shown,
      );
    }
    if (column.lines && row > anchor && row < end) makeRoom(desk, row, column.lines);
  }
  put(
    desk,
    anchor,
    left,
    { ...LOOKS.end, ...(look.locked === false ? { locked: false } : {}) },
    {
      formula,
      spill: { rows: end - anchor + 1, columns: right - left + 1 },
    },
  );
  if ((column.format ?? "text") === "text") mark(desk, anchor, left, end, right);
}

function mark(desk: Desk, top: number, left: number, bottom: number, right: number): void {
  desk.sheet.marks.push({
    range: rangeOf({ top, left, bottom, right }),
    words: ALERT_WORDS,
    look: lookIndex(desk.book, ALERT_LOOK),
  });
}

function layOutFields(desk: Desk, part: Fields, top: number): number {
  FIELD_WIDTHS.forEach((width, column) => widen(desk, column, width));
  if (part.valueWidth !== undefined) widen(desk, 1, part.valueWidth);
  if (desk.noteColumn > 0 && part.fields.some(({ note }) => note)) widen(desk, desk.noteColumn, NOTE_WIDTH);
  put(desk, top, 0, LOOKS.heading, { value: part.heading });
  part.besideHeads?.forEach((value, index) => {
    put(desk, top, BESIDE_COLUMN + index, { ...LOOKS.unit, align: "right" }, { value });
    widen(desk, BESIDE_COLUMN + index, DEFAULT_COLUMN_WIDTH);
  });
  part.valueHeads?.forEach((value, index) =>
    put(desk, top, 1 + index, { ...LOOKS.head, align: "left" }, { value }),
  );
  if (part.valueHeads) {
    const widths = part.valueHeads.map(
      (_, index) => desk.sheet.columnWidths[1 + index] ?? DEFAULT_COLUMN_WIDTH,
    );
    makeRoom(desk, top, Math.max(...part.valueHeads.map((head, index) => linesOf(head, widths[index]!))));
  }
  const first = top + 1;
  let callAbove = false;
  for (const [index, field] of part.fields.entries()) {
    const row = first + index;
    if (!field.spilled) callAbove = callsUs(field.formula ?? "");
    layOutField(desk, part, field, row, callAbove);
    const bottom = field.spillRows ? row + field.spillRows - 1 : row;
    name(desk, field.name, row, 1, bottom, field.spillColumns ?? 1);
  }
  const last = top + part.fields.length;
  if (part.name) name(desk, part.name, first, 1, last, 1);
  return last + 1;
}

function layOutField(desk: Desk, part: Fields, field: Field, row: number, callAbove: boolean): void {
  const format = field.format ?? "text";
  const { label, labelFormula } = field;
  put(
    desk,
    row,
    0,
    field.strong ? LOOKS.strongLabel : LOOKS.label,
    labelFormula === undefined ? { value: label } : { formula: labelFormula },
  );
  // The value beside it would cut a longer label.
  widen(desk, 0, Math.ceil(field.label.length * LETTER_WIDTH));
  if (field.unit) put(desk, row, 2, LOOKS.fieldUnit, { value: field.unit });
  if (field.note) {
    const wraps = desk.noteColumn > 0;
    put(desk, row, wraps ? desk.noteColumn : 3, wraps ? LOOKS.note : LOOKS.fieldUnit, { value: field.note });
    if (wraps) makeRoom(desk, row, wrappedLinesOf(field.note, NOTE_WIDTH));
  }
  for (const [index, { key, format: shown, formula, verdict }] of (field.beside ?? []).entries()) {
    const column = BESIDE_COLUMN + index;
    const align = verdict ? ({ align: "right" } as const) : {};
    put(desk, row, column, { ...resultLook(shown ?? "text", callsUs(formula)), ...align }, { formula });
    name(desk, `${field.name}_${key}`, row, column, row, column);
    if (verdict) mark(desk, row, column, row, column);
  }
  if (field.input) {
    const { rule } = field.input;
    put(desk, row, 1, inputLook(format, holdsText(rule)), filled(desk.filling.fields?.[field.name], rule));
    desk.sheet.validations.push(validationOf(field, address(row, 1)));
    return;
  }
  const look = resultLook(format, callAbove, field.strong);
  const columns = field.spillColumns ?? 1;
  const spill = field.spillRows ? { spill: { rows: field.spillRows, columns } } : {};
  for (let below = 0; below < (field.spillRows ?? 1); below++) {
    for (let right = 1; right < columns; right++) {
      const shown = field.spillFormats?.[right - 1];
      const beside = shown ? { ...resultLook(shown, callAbove), ...(part.valueHeads && LEFT) } : look;
      put(desk, row + below, 1 + right, beside);
    }
  }
  const { formula, value } = field;
  put(desk, row, 1, look, formula === undefined ? { value } : { formula, ...spill });
  if (field.verdict) mark(desk, row, 1, row, 1);
}

function layOutGrid(desk: Desk, part: Grid, top: number): number {
  put(desk, top, 0, LOOKS.heading, { value: part.heading });
  const head = top + 1;
  part.heads.forEach((text, index) => {
    put(desk, head, index + 1, { ...LOOKS.head, align: "right" }, { value: text });
    widen(desk, index + 1, DEFAULT_COLUMN_WIDTH);
    makeRoom(desk, head, linesOf(text, desk.sheet.columnWidths[index + 1]!));
  });
  put(desk, head, 0, LOOKS.head, {});
  for (const [index, line] of part.rows.entries()) {
    const row = head + 1 + index;
    put(desk, row, 0, LOOKS.label, { value: `${line.label}, ${line.unit}` });
    line.formulas.forEach((formula, column) =>
      put(desk, row, column + 1, resultLook(line.format, callsUs(formula)), { formula }),
    );
    name(desk, line.name, row, 1, row, line.formulas.length);
  }
  return head + part.rows.length + 1;
}

function layOutAnswer(desk: Desk, part: Answer, top: number): number {
  put(desk, top, 0, LOOKS.heading, { value: part.heading });
  const first = top + 3;
  const last = first + part.rows - 1;
  const right = part.columns.length - 1;
  part.columns.forEach(({ key, head, unit, width, format = "text" }, column) => {
    // A figure at the right of its cell would run into the words beside it.
    const { align } = alignment(format).align === "right" ? CENTRED : alignment(format);
    put(desk, top + 1, column, { ...LOOKS.head, align }, { value: head });
    put(desk, top + 2, column, { ...LOOKS.unit, align }, { value: unit ?? "" });
    widen(desk, column, width);
    const look = { ...resultLook(format, callsUs(part.formula)), align, wrap: true };
    for (let row = first; row <= last; row++) put(desk, row, column, look);
    name(desk, `${part.name}_${key}`, first, column, last, column);
  });
  const spill = { rows: part.rows, columns: part.columns.length };
  const anchor = desk.sheet.cells[address(first, 0)]!;
  desk.sheet.cells[address(first, 0)] = { ...anchor, formula: part.formula, spill };
  for (let row = first; row <= last; row++) desk.sheet.rowHeights[row] = part.lines * LINE_POINTS;
  name(desk, part.name, first, 0, last, right);
  return last + 1;
}

function layOutText(desk: Desk, part: Text, top: number): number {
  put(desk, top, 0, LOOKS.heading, { value: part.heading });
  part.lines.forEach((line, index) => put(desk, top + 1 + index, 0, LOOKS.label, { value: line }));
  return top + part.lines.length + 1;
}

function layOutWords(desk: Desk, part: Words, top: number): number {
  put(desk, top, 0, LOOKS.heading, { value: part.heading });
  part.words.forEach((word, index) => put(desk, top + 1 + index, 0, LOOKS.label, { value: word }));
  name(desk, part.name, top + 1, 0, top + part.words.length, 0);
  return top + part.words.length + 1;
}

function layOutChecks(desk: Desk, part: Checks, top: number): number {
  CHECK_WIDTHS.forEach((width, column) => widen(desk, column, width));
  put(desk, top, 0, LOOKS.heading, { value: part.heading });
  CHECK_HEADS.forEach(({ value, align }, column) =>
    put(desk, top + 1, column, { ...LOOKS.head, align }, { value }),
  );
  const first = top + 2;
  for (const [index, check] of part.checks.entries()) {
    const row = first + index;
    const found = cellAt(address(row, 2));
    const places = placesOf(check);
    put(desk, row, 0, LOOKS.line, { value: check.what });
    put(desk, row, 1, LOOKS.note, { value: check.limit });
    const wrapping = [check.what, check.limit, "", "", check.where];
    makeRoom(
      desk,
      row,
      Math.max(
        places === undefined ? 1 : LINES_OF_PLACES,
        ...wrapping.map((text, at) => wrappedLinesOf(text, CHECK_WIDTHS[at]!)),
      ),
    );
    put(desk, row, 2, resultLook(check.format ?? "integer", false), { formula: foundOf(check) });
    const passes = check.passes(found);
    const word = check.advice ? "note" : "look";
    put(
      desk,
      row,
      3,
      { ...resultLook("text", false), ...CENTRED },
      {
        formula: f`IFERROR(IF(${passes},"ok",${text(word)}),"error")`,
      },
    );
    put(
      desk,
      row,
      4,
      LOOKS.note,
      places === undefined
        ? { value: check.where }
        : { formula: placesShown(check.where, cellAt(address(row, 3)), places) },
    );
  }
  const last = first + part.checks.length - 1;
  mark(desk, first, 3, last, 3);
  name(desk, checkNames.result.name, first, 3, last, 3);
  const entries = part.checks.filter(({ entriesOf }) => entriesOf !== undefined).length;
  if (entries > 0) name(desk, checkNames.entries.name, first, 2, first + entries - 1, 2);
  return last + 1;
}
