/** Lays out a block: heads, units, and rows to fill between two thin rows (see layOut.ts). */
import { columnLetters, rangeOf } from "../formula/address";
import type { Named } from "../formula/build";
import { callsUs } from "../formula/callsUs";
import type { Block, Column } from "./definition";
import { validationOf } from "./inputValidation";
import { headWidthOf } from "./linesOf";
import { alignment, inputLook, LOOKS, resultLook } from "./looks";
import {
  CENTRED,
  filled,
  LINE_POINTS,
  makeRoom,
  mark,
  markFilled,
  name,
  put,
  widen,
  type SheetLayout,
} from "./sheetLayout";
import { acrossHead } from "./names";
import { columnsOf, DEFAULT_COLUMN_WIDTH } from "./sheetWidths";
import { holdsText } from "./typed/holdsText";

/** The name of the cells in which rows too many for a block show: its closing row and the one below. */
export const belowOf = ({ name }: Pick<Block, "name">): Named => ({ name: `${name}_below` });

const THIN_ROW_POINTS = 5;

export function layOutBlock(layout: SheetLayout, block: Block, top: number, withHeading: boolean): number {
  const { sheet } = layout;
  const head = withHeading ? top + 1 : top;
  const unit = head + 1;
  const anchor = unit + 1;
  const prepared = layout.rows.get(block.name)!;
  const end = anchor + prepared + 1;
  const filled = layout.inputs.blocks?.[block.name] ?? [];
  if (withHeading) put(layout, top, 0, LOOKS.heading, { value: block.heading });
  sheet.rowHeights[anchor] = THIN_ROW_POINTS;
  sheet.rowHeights[end] = THIN_ROW_POINTS;

  const heads: [column: number, text: string][] = [];
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
      const text = part ? acrossHead(column.head, part.head) : column.head;
      const { align } =
        afterNumber && at === left ? CENTRED : alignment(part?.format ?? column.format ?? "text");
      const width = headWidthOf(text, part?.width ?? column.width ?? DEFAULT_COLUMN_WIDTH);
      put(layout, head, at, { ...LOOKS.head, align }, { value: text });
      put(layout, unit, at, { ...LOOKS.unit, align }, { value: part?.unit ?? column.unit ?? "" });
      heads.push([at, text]);
      put(layout, end, at, LOOKS.end);
      widen(layout, at, width);
      if (part) {
        spans.set(`${column.key}_${part.key}`, { left: at, right: at });
        name(layout, `${block.name}_${column.key}_${part.key}`, anchor, at, end, at);
      }
    }
    name(layout, `${block.name}_${column.key}`, anchor, left, end, right);
    if (column.input) {
      layOutInputColumn(layout, column, anchor, end, left, afterNumber, filled);
    } else if (column.formula !== undefined) {
      layOutFormulaColumn(layout, column, anchor, end, left, afterNumber);
    }
    left = right + 1;
  }
  if (block.overLists) {
    const line = columnLetters(spans.get(block.overLists.line)!.left);
    for (const { key, list } of block.overLists.lists)
      markFilled(layout, { list, line }, { top: anchor + 1, bottom: end - 1, column: spans.get(key)!.left });
  }
  // What is pasted beyond the prepared rows lands here first: a check looks at it.
  const ownInputs = block.columns.findIndex(({ input }) => !input);
  const first = ownInputs < 0 ? left : ownInputs;
  if (first > 0) name(layout, belowOf(block).name, end, 0, end + 1, first - 1);
  // Not every program makes a row as high as its text when it opens a file.
  sheet.rowHeights[head] = LINE_POINTS;
  layout.heads.set(head, heads);
  for (const group of block.groups ?? []) {
    name(layout, group.name, anchor, spans.get(group.from)!.left, end, spans.get(group.to)!.right);
  }
  return end + 1;
}

function layOutInputColumn(
  layout: SheetLayout,
  column: Column,
  anchor: number,
  end: number,
  at: number,
  centred: boolean,
  rows: readonly Readonly<Record<string, number | string>>[],
): void {
  const { rule } = column.input!;
  const look = { ...inputLook(column.format ?? "text", holdsText(rule)), ...(centred && CENTRED) };
  put(layout, anchor, at, LOOKS.end);
  for (let row = anchor + 1; row < end; row++) {
    const value = rows[row - anchor - 1]?.[column.key];
    put(layout, row, at, look, filled(value, rule));
  }
  // The rule reaches into both thin rows, so that it stretches with the names.
  const range = rangeOf({ top: anchor, left: at, bottom: end, right: at });
  layout.sheet.validations.push(validationOf(column.head, column, range));
}

function layOutFormulaColumn(
  layout: SheetLayout,
  column: Column,
  anchor: number,
  end: number,
  left: number,
  centred: boolean,
): void {
  const formula = column.formula!;
  const right = left + columnsOf(column) - 1;
  const thin = { ...LOOKS.end, ...(callsUs(formula) ? { locked: false } : {}) };
  for (let at = left; at <= right; at++) {
    const format = column.across?.[at - left]?.format ?? column.format ?? "text";
    // One for all of its cells: there may be ten thousand.
    const look = {
      ...resultLook(format, callsUs(formula)),
      ...(column.lines && { wrap: true }),
      ...(column.room && { edges: { top: "thin", right: "thin", bottom: "thin", left: "thin" } as const }),
      ...(centred && at === left && CENTRED),
    };
    put(layout, anchor, at, thin);
    for (let row = anchor + 1; row < end; row++) put(layout, row, at, look);
    put(layout, end, at, thin);
    if (format === "text") mark(layout, anchor, at, end, at);
  }
  if (column.lines) for (let row = anchor + 1; row < end; row++) makeRoom(layout, row, column.lines);
  put(layout, anchor, left, thin, {
    formula,
    spill: { rows: end - anchor + 1, columns: right - left + 1 },
  });
}
