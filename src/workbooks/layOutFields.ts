/** Lays out fields: a label, a value, its unit, what is calculated beside it, and a note. */
import { address } from "../formula/address";
import { callsUs } from "../formula/callsUs";
import type { Field, Fields } from "./definition";
import { validationOf } from "./inputValidation";
import { linesOf, wrappedLinesOf } from "./linesOf";
import { inputLook, LOOKS, resultLook } from "./looks";
import { filled, makeRoom, mark, name, put, widen, type SheetLayout } from "./sheetLayout";
import { BESIDE_COLUMN, DEFAULT_COLUMN_WIDTH, LETTER_WIDTH } from "./sheetWidths";
import { holdsText } from "./typed/holdsText";

const FIELD_WIDTHS = [34, 30, 12] as const;

/** Notes stand to the right of all else and wrap, unless that is too far away: then they run on beside the unit. */
const NOTE_WIDTH = 56;

const LEFT = { align: "left" } as const;

export function layOutFields(layout: SheetLayout, part: Fields, top: number): number {
  FIELD_WIDTHS.forEach((width, column) => widen(layout, column, width));
  if (part.valueWidth !== undefined) widen(layout, 1, part.valueWidth);
  if (layout.noteColumn > 0 && part.fields.some(({ note }) => note))
    widen(layout, layout.noteColumn, NOTE_WIDTH);
  put(layout, top, 0, LOOKS.heading, { value: part.heading });
  part.besideHeads?.forEach((value, index) => {
    put(layout, top, BESIDE_COLUMN + index, { ...LOOKS.unit, align: "right" }, { value });
    widen(layout, BESIDE_COLUMN + index, DEFAULT_COLUMN_WIDTH);
  });
  part.valueHeads?.forEach((value, index) =>
    put(layout, top, 1 + index, { ...LOOKS.head, align: "left" }, { value }),
  );
  if (part.valueHeads) {
    const widths = part.valueHeads.map(
      (_, index) => layout.sheet.columnWidths[1 + index] ?? DEFAULT_COLUMN_WIDTH,
    );
    makeRoom(layout, top, Math.max(...part.valueHeads.map((head, index) => linesOf(head, widths[index]!))));
  }
  const first = top + 1;
  let callAbove = false;
  for (const [index, field] of part.fields.entries()) {
    const row = first + index;
    if (!field.spilled) callAbove = callsUs(field.formula ?? "");
    layOutField(layout, part, field, row, callAbove);
    const bottom = field.spillRows ? row + field.spillRows - 1 : row;
    name(layout, field.name, row, 1, bottom, field.spillColumns ?? 1);
  }
  const last = top + part.fields.length;
  if (part.name) name(layout, part.name, first, 1, last, 1);
  return last + 1;
}

function layOutField(layout: SheetLayout, part: Fields, field: Field, row: number, callAbove: boolean): void {
  const format = field.format ?? "text";
  const { label, labelFormula } = field;
  put(
    layout,
    row,
    0,
    field.strong ? LOOKS.strongLabel : LOOKS.label,
    labelFormula === undefined ? { value: label } : { formula: labelFormula },
  );
  // The value beside it would cut a longer label.
  widen(layout, 0, Math.ceil(field.label.length * LETTER_WIDTH));
  if (field.unit) put(layout, row, 2, LOOKS.fieldUnit, { value: field.unit });
  if (field.note) {
    const wraps = layout.noteColumn > 0;
    put(layout, row, wraps ? layout.noteColumn : 3, wraps ? LOOKS.note : LOOKS.fieldUnit, {
      value: field.note,
    });
    if (wraps) makeRoom(layout, row, wrappedLinesOf(field.note, NOTE_WIDTH));
  }
  for (const [index, { key, format: shown, formula, verdict }] of (field.beside ?? []).entries()) {
    const column = BESIDE_COLUMN + index;
    const align = verdict ? ({ align: "right" } as const) : {};
    put(layout, row, column, { ...resultLook(shown ?? "text", callsUs(formula)), ...align }, { formula });
    name(layout, `${field.name}_${key}`, row, column, row, column);
    if (verdict) mark(layout, row, column, row, column);
  }
  if (field.input) {
    const { rule } = field.input;
    put(layout, row, 1, inputLook(format, holdsText(rule)), filled(layout.inputs.fields?.[field.name], rule));
    layout.sheet.validations.push(validationOf(field.label, field, address(row, 1)));
    return;
  }
  const look = resultLook(format, callAbove, field.strong);
  const columns = field.spillColumns ?? 1;
  const spill = field.spillRows ? { spill: { rows: field.spillRows, columns } } : {};
  for (let below = 0; below < (field.spillRows ?? 1); below++) {
    for (let right = 1; right < columns; right++) {
      const shown = field.spillFormats?.[right - 1];
      const beside = shown ? { ...resultLook(shown, callAbove), ...(part.valueHeads && LEFT) } : look;
      put(layout, row + below, 1 + right, beside);
    }
  }
  const { formula, value } = field;
  put(layout, row, 1, look, formula === undefined ? { value } : { formula, ...spill });
  if (field.verdict) mark(layout, row, 1, row, 1);
}
