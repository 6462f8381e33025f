/** Lays out what is not filled by rows: grids of figures, answers of a function, lines of text, words to choose from. */
import { address } from "../formula/address";
import { callsUs } from "../formula/callsUs";
import type { Answer, Grid, Text, Words } from "./definition";
import { linesOf } from "./linesOf";
import { alignment, LOOKS, resultLook } from "./looks";
import { CENTRED, LINE_POINTS, makeRoom, name, put, widen, type SheetLayout } from "./sheetLayout";
import { DEFAULT_COLUMN_WIDTH } from "./sheetWidths";

export function layOutGrid(layout: SheetLayout, part: Grid, top: number): number {
  put(layout, top, 0, LOOKS.heading, { value: part.heading });
  const head = top + 1;
  part.heads.forEach((text, index) => {
    put(layout, head, index + 1, { ...LOOKS.head, align: "right" }, { value: text });
    widen(layout, index + 1, DEFAULT_COLUMN_WIDTH);
    makeRoom(layout, head, linesOf(text, layout.sheet.columnWidths[index + 1]!));
  });
  put(layout, head, 0, LOOKS.head, {});
  for (const [index, line] of part.rows.entries()) {
    const row = head + 1 + index;
    put(layout, row, 0, LOOKS.label, { value: `${line.label}, ${line.unit}` });
    line.formulas.forEach((formula, column) =>
      put(layout, row, column + 1, resultLook(line.format, callsUs(formula)), { formula }),
    );
    name(layout, line.name, row, 1, row, line.formulas.length);
  }
  return head + part.rows.length + 1;
}

export function layOutAnswer(layout: SheetLayout, part: Answer, top: number): number {
  put(layout, top, 0, LOOKS.heading, { value: part.heading });
  const first = top + 3;
  const last = first + part.rows - 1;
  const right = part.columns.length - 1;
  part.columns.forEach(({ key, head, unit, width, format = "text" }, column) => {
    // A figure at the right of its cell would run into the words beside it.
    const { align } = alignment(format).align === "right" ? CENTRED : alignment(format);
    put(layout, top + 1, column, { ...LOOKS.head, align }, { value: head });
    put(layout, top + 2, column, { ...LOOKS.unit, align }, { value: unit ?? "" });
    widen(layout, column, width);
    const look = { ...resultLook(format, callsUs(part.formula)), align, wrap: true };
    for (let row = first; row <= last; row++) put(layout, row, column, look);
    name(layout, `${part.name}_${key}`, first, column, last, column);
  });
  const spill = { rows: part.rows, columns: part.columns.length };
  const anchor = layout.sheet.cells[address(first, 0)]!;
  layout.sheet.cells[address(first, 0)] = { ...anchor, formula: part.formula, spill };
  for (let row = first; row <= last; row++) layout.sheet.rowHeights[row] = part.lines * LINE_POINTS;
  name(layout, part.name, first, 0, last, right);
  return last + 1;
}

export function layOutText(layout: SheetLayout, part: Text, top: number): number {
  put(layout, top, 0, LOOKS.heading, { value: part.heading });
  part.lines.forEach((line, index) => put(layout, top + 1 + index, 0, LOOKS.label, { value: line }));
  return top + part.lines.length + 1;
}

export function layOutWords(layout: SheetLayout, part: Words, top: number): number {
  put(layout, top, 0, LOOKS.heading, { value: part.heading });
  part.words.forEach((word, index) => put(layout, top + 1 + index, 0, LOOKS.label, { value: word }));
  name(layout, part.name, top + 1, 0, top + part.words.length, 0);
  return top + part.words.length + 1;
}
