/** Lays out questions with worked examples beside them, and fixed tables. */
import type { Look } from "./book";
import { address } from "../formula/address";
import type { Exercise, Table } from "./definition";
import { validationOf } from "./inputValidation";
import { linesOf, wrapped, wrappedLinesOf } from "./linesOf";
import { alignment, inputLook, LOOKS, resultLook } from "./looks";
import { filled, LINE_POINTS, name, put, widen, type SheetLayout } from "./sheetLayout";
import { holdsText } from "./typed/holdsText";

/** Question, its figures and answer, their units; a gap; the example's five columns. */
export const EXERCISE_WIDTHS = [38, 18, 10, 2, 10, 34, 11, 10, 36] as const;
const EXAMPLE = 4;
/** Of the example's cells. */
const UNIT_AT = 3;
const MEANING_AT = 5;
const LINE = 8;
/** A blank that is not broken keeps a unit from the number at the right of the cell before. */
const GAP = "\u00a0";
const EXAMPLE_HEADS = ["symbol", "meaning", "value", `${GAP}unit`, "line of arithmetic"] as const;
/** Text runs on over the two columns beside the first. */
const TASK_WIDTH = 82;
const LABEL: Look = { ...LOOKS.strongLabel, vertical: "top" };
const MEANING: Look = { ...LOOKS.line };
const VALUE: Look = { ...LOOKS.label, align: "right" };
const STRONG_VALUE: Look = { ...LOOKS.strongLabel, align: "right" };
const BOX: Look = { edges: { top: "thin", right: "thin", bottom: "thin", left: "thin" } };
const STRONG_ROW: Look = { bold: true, edges: { top: "thin" } };
/** Lines of print that a line written by hand takes. */
const HAND_LINES = 2;
const HINT: Look = { color: LOOKS.note.color, italic: true, vertical: "top" };

export function layOutExercise(layout: SheetLayout, part: Exercise, top: number): number {
  EXERCISE_WIDTHS.forEach((width, column) => widen(layout, column, width));
  const left = layOutQuestion(layout, part, top);
  return Math.max(left, layOutExample(layout, part, top));
}

function putUnit(layout: SheetLayout, row: number, column: number, unit: string): void {
  if (unit !== "") put(layout, row, column, LOOKS.fieldUnit, { value: `${GAP}${unit}` });
}

function layOutQuestion(
  layout: SheetLayout,
  { heading, task, given, answer, hints }: Exercise,
  top: number,
): number {
  for (let column = 0; column < 3; column++) {
    put(layout, top, column, LOOKS.heading, column === 0 ? { value: heading } : {});
  }
  let row = top + 1;
  for (const line of wrapped(task, TASK_WIDTH)) put(layout, row++, 0, LOOKS.label, { value: line });
  for (const figure of given) {
    put(layout, row, 0, LOOKS.label, { value: figure.label });
    put(layout, row, 1, VALUE, { value: figure.value });
    putUnit(layout, row, 2, figure.unit);
    name(layout, figure.name, row, 1, row, 1);
    row++;
  }
  const value = layout.inputs.fields?.[answer.name];
  put(layout, row, 0, LABEL, { value: answer.label });
  const { rule } = answer.input;
  put(layout, row, 1, inputLook(answer.format, holdsText(rule)), filled(value, rule));
  putUnit(layout, row, 2, answer.unit);
  name(layout, answer.name, row, 1, row, 1);
  layout.sheet.validations.push(validationOf(answer.label, answer, address(row, 1)));
  row++;
  for (const hint of hints) {
    for (const line of wrapped(`Hint: ${hint}`, TASK_WIDTH)) put(layout, row++, 0, HINT, { value: line });
  }
  return row;
}

function layOutExample(layout: SheetLayout, { example }: Exercise, top: number): number {
  for (let column = EXAMPLE; column <= LINE; column++) {
    put(layout, top, column, LOOKS.heading, column === EXAMPLE ? { value: example.heading } : {});
    const text = EXAMPLE_HEADS[column - EXAMPLE]!;
    const align = text === "value" ? ("right" as const) : ("left" as const);
    put(layout, top + 1, column, { ...LOOKS.head, align }, { value: text });
  }
  let row = top + 2;
  for (const [index, cells] of example.rows.entries()) {
    const last = index === example.rows.length - 1;
    cells.forEach((value, at) => {
      const look = at === 2 ? (last ? STRONG_VALUE : VALUE) : last ? { ...MEANING, bold: true } : MEANING;
      if (at === UNIT_AT) putUnit(layout, row, EXAMPLE + at, String(value));
      else if (value !== "") put(layout, row, EXAMPLE + at, look, { value });
    });
    const [, meaning, , , line] = cells;
    const lines = Math.max(
      wrappedLinesOf(meaning, EXERCISE_WIDTHS[MEANING_AT]),
      wrappedLinesOf(line, EXERCISE_WIDTHS[LINE]),
    );
    if (lines > 1) layout.sheet.rowHeights[row] = lines * LINE_POINTS;
    row++;
  }
  return row;
}

/** @param withHeading false where the table is all that the sheet holds */
export function layOutTable(layout: SheetLayout, part: Table, top: number, withHeading: boolean): number {
  if (withHeading) put(layout, top, 0, LOOKS.heading, { value: part.heading });
  let row = withHeading ? top + 1 : top;
  for (const line of part.lines ?? []) put(layout, row++, 0, LOOKS.label, { value: line });
  let headLines = 1;
  // A word that followed a number at the right of its cell would run into it.
  const alignOf = (column: number): Pick<Look, "align"> => {
    const { align } = alignment(part.columns[column]!.format ?? "text");
    const beside = part.columns[column + 1];
    const next = beside && alignment(beside.format ?? "text").align;
    return { align: align === "right" && next === "left" ? "center" : align };
  };
  part.columns.forEach(({ head, width }, column) => {
    if (width !== undefined) {
      widen(layout, column, width);
      headLines = Math.max(headLines, linesOf(head, width));
    }
    put(layout, row, column, { ...LOOKS.head, ...alignOf(column) }, head === "" ? {} : { value: head });
  });
  layout.sheet.rowHeights[row] = headLines * LINE_POINTS;
  const first = row + 1;
  for (const [index, cells] of part.rows.entries()) {
    row++;
    const strong = part.strongRows?.includes(index) && STRONG_ROW;
    let lines: number = part.byHand ? HAND_LINES : 1;
    part.columns.forEach(({ format = "text", wrap, width }, column) => {
      const value = cells[column];
      if (value === undefined || value === "") {
        if (part.byHand) put(layout, row, column, BOX);
        return;
      }
      const look = {
        ...resultLook(format, false),
        ...alignOf(column),
        ...(wrap && { wrap: true }),
        ...strong,
      };
      put(layout, row, column, look, { value });
      if (wrap && width !== undefined) {
        lines = Math.max(lines, wrappedLinesOf(String(value), width));
      }
    });
    if (lines > 1) layout.sheet.rowHeights[row] = lines * LINE_POINTS;
  }
  part.columns.forEach((column, at) => {
    if (column.name && row >= first) name(layout, column.name, first, at, row, at);
  });
  return row + 1;
}
