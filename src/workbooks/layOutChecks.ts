/** Lays out checks: what is checked, its limit, what was found, the verdict, and where to look. */
import { address } from "../formula/address";
import { cellAt, f, text } from "../formula/build";
import { whileFunctionsAnswer } from "./aboutNames";
import { checks as checkNames } from "./checkNames";
import { foundOf, placesOf, placesShown } from "./checkPlaces";
import type { Checks } from "./definition";
import { wrappedLinesOf } from "./linesOf";
import { LOOKS, resultLook } from "./looks";
import { CENTRED, makeRoom, mark, name, put, widen, type SheetLayout } from "./sheetLayout";

export const CHECK_WIDTHS = [64, 42, 12, 9, 34] as const;

const CHECK_HEADS = [
  { value: "check", align: "left" },
  { value: "limit", align: "left" },
  { value: "found", align: "right" },
  { value: "result", align: "center" },
  { value: "look at", align: "left" },
] as const;

/** Of what a check found: places are cut to what two lines hold. */
const LINES_OF_PLACES = 2;

export function layOutChecks(layout: SheetLayout, part: Checks, top: number): number {
  CHECK_WIDTHS.forEach((width, column) => widen(layout, column, width));
  put(layout, top, 0, LOOKS.heading, { value: part.heading });
  CHECK_HEADS.forEach(({ value, align }, column) =>
    put(layout, top + 1, column, { ...LOOKS.head, align }, { value }),
  );
  const first = top + 2;
  for (const [index, check] of part.checks.entries()) {
    const row = first + index;
    const found = cellAt(address(row, 2));
    const places = placesOf(check);
    put(layout, row, 0, LOOKS.line, { value: check.what });
    put(layout, row, 1, LOOKS.note, { value: check.limit });
    const wrapping = [check.what, check.limit, "", "", check.where];
    makeRoom(
      layout,
      row,
      Math.max(
        places === undefined ? 1 : LINES_OF_PLACES,
        ...wrapping.map((text, at) => wrappedLinesOf(text, CHECK_WIDTHS[at]!)),
      ),
    );
    put(layout, row, 2, resultLook(check.format ?? "integer", false), { formula: foundOf(check) });
    const passes = check.passes(found);
    const word = check.advice ? "note" : "look";
    put(
      layout,
      row,
      3,
      { ...resultLook("text", false), ...CENTRED },
      {
        formula: whileFunctionsAnswer(f`IFERROR(IF(${passes},"ok",${text(word)}),"error")`, f`"error"`),
      },
    );
    put(
      layout,
      row,
      4,
      LOOKS.note,
      places === undefined
        ? { value: check.where }
        : { formula: placesShown(check.where, cellAt(address(row, 3)), places) },
    );
  }
  const last = first + part.checks.length - 1;
  mark(layout, first, 3, last, 3);
  name(layout, checkNames.result.name, first, 3, last, 3);
  const entries = part.checks.filter(({ entriesOf }) => entriesOf !== undefined).length;
  if (entries > 0) name(layout, checkNames.entries.name, first, 2, first + entries - 1, 2);
  return last + 1;
}
