/** Calculated cells that were typed over, emptied or given another formula than the template's. */
import { address, parseAddress } from "../formula/address";
import { isBookError, type Book, type BookCell, type BookSheet } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { callsUs } from "../formula/callsUs";
import { expectedFormulas, type ExpectedFormula } from "./expectedFormulas";
import type { Finding, Undoing } from "./finding";
import type { LabelAt } from "./labels";
import { withoutAts } from "../formula/singles";
import { sameFormula, type IsOneCell } from "../formula/sameFormula";
import { oneCellNames } from "../workbooks/named";

/** How many missing names a sentence lists. */
const MOST_LISTED = 5;

export interface FormulaDifference extends Finding {
  /** A value stands, or nothing, where the template has a formula. */
  readonly typedOver: boolean;
}

/** @param own the book, computed anew: as far as its formulas reach */
export function formulaDifferences(
  book: Book,
  own: Book,
  definition: WorkbookDefinition,
  labelAt: LabelAt,
): FormulaDifference[] {
  const { formulas, missingNames } = expectedFormulas(book, definition);
  const findings: FormulaDifference[] = [];
  if (missingNames.length > 0) {
    const more = missingNames.length - MOST_LISTED;
    findings.push({
      typedOver: false,
      weight: "wrong",
      message: `${goneSheets(book, definition)}Names that the formulas use are gone: ${missingNames.slice(0, MOST_LISTED).join(", ")}${more > 0 ? ` and ${more} more` : ""}.`,
      remedy:
        "Take back the removal of rows or sheets, or start a workbook from the template and copy the inputs over.",
    });
  }
  if (isOfficeCopy(book)) {
    findings.push({
      typedOver: false,
      weight: "worth knowing",
      message: "This is a copy whose cells of ours are frozen to values: they no longer follow their inputs.",
      remedy: "Work in the working workbook that it was made from; compare with that one.",
    });
  }
  const isOneCell = oneCellNames(book.names);
  for (const expected of formulas) {
    const sheet = book.sheets.find(({ name }) => name === expected.sheet);
    if (!sheet) continue;
    const { row, column } = expected.place;
    const anew = own.sheets.find(({ name }) => name === expected.sheet)?.cells[address(row, column)];
    findings.push(
      ...atAnchor(sheet, expected, anew?.spill, labelAt, isOneCell),
      ...inTheWay(sheet, expected, labelAt),
    );
  }
  return findings;
}

/** A sheet under another name keeps its cells' names, so that with names gone it was deleted. */
function goneSheets({ sheets }: Book, definition: WorkbookDefinition): string {
  const there = new Set(sheets.map(({ name }) => name));
  const gone = definition.sheets.flatMap(({ name }) => (there.has(name) ? [] : [`“${name}”`]));
  if (gone.length === 0) return "";
  return `${gone.length === 1 ? "The sheet" : "The sheets"} ${gone.join(", ")} ${gone.length === 1 ? "is" : "are"} missing. `;
}

/** The note that the file writer leaves on a frozen cell begins so. */
const FROZEN = /(^|\n)Frozen: /;

const isOfficeCopy = (book: Book): boolean =>
  book.sheets.some(({ cells }) => Object.values(cells).some(({ note }) => note && FROZEN.test(note)));

function atAnchor(
  sheet: BookSheet,
  expected: ExpectedFormula,
  reach: BookCell["spill"],
  labelAt: LabelAt,
  isOneCell: IsOneCell,
): FormulaDifference[] {
  const { place, formula, sheet: name } = expected;
  const cell = address(place.row, place.column);
  const here = sheet.cells[cell];
  const label = labelAt(name, place);
  const common = {
    place: { sheet: name, cell },
    expected: `=${formula}`,
    undoing: restoring(sheet, expected),
  };
  if (here?.formula !== undefined && sameFormula(here.formula, formula, isOneCell)) {
    const rows = reach?.rows ?? 1;
    if (!here.spill || here.spill.rows > 1 || rows === 1 || isBookError(sheet.results[cell])) return [];
    return [
      {
        ...common,
        typedOver: false,
        weight: "wrong",
        message: `${label} is calculated in its first row only: the formula lost its reach of ${rows} rows.`,
        effect: "All rows below show what they showed before, or nothing.",
        remedy: "Enter the formula again in this cell.",
      },
    ];
  }
  if (here?.note && FROZEN.test(here.note) && callsUs(formula)) return [];
  if (here?.formula !== undefined && sameFormula(withoutAts(here.formula), formula, isOneCell)) {
    return [
      {
        ...common,
        typedOver: false,
        weight: "wrong",
        message: `${label} has an @ in its formula, which takes one row's value for all: =${here.formula}`,
        remedy: "Enter the template's formula in this cell again.",
      },
    ];
  }
  if (here?.formula !== undefined) {
    return [
      {
        ...common,
        typedOver: false,
        weight: "doubtful",
        message: `${label} has another formula than the template: =${here.formula}`,
        remedy: "If that was not meant, enter the template's formula in this cell.",
      },
    ];
  }
  return [
    {
      ...common,
      typedOver: true,
      weight: "wrong",
      message:
        here?.value === undefined
          ? `${label} is calculated in the template; here its formula is gone.`
          : `${label} is calculated in the template; here ${String(here.value)} was typed over it.`,
      remedy: "Enter the template's formula in this cell again.",
    },
  ];
}

/** What was typed into the cells that a formula's results should fill. */
function inTheWay(sheet: BookSheet, expected: ExpectedFormula, labelAt: LabelAt): FormulaDifference[] {
  const { place, fills, sheet: name } = expected;
  if (fills.top === fills.bottom && fills.left === fills.right) return [];
  if (FROZEN.test(sheet.cells[address(place.row, place.column)]?.note ?? "")) return [];
  const typed = filledOver(sheet, expected);
  const [cell] = typed;
  if (cell === undefined) return [];
  const content = sheet.cells[cell]!;
  const what = content.formula === undefined ? String(content.value) : `=${content.formula}`;
  const others = typed.length - 1;
  const more = others > 0 ? ` and ${others} more ${others === 1 ? "cell" : "cells"}` : "";
  return [
    {
      typedOver: true,
      weight: "wrong",
      place: { sheet: name, cell },
      message: `${labelAt(name, parseAddress(cell)!)} is calculated from the row at its top; here ${what} was typed over it${more}.`,
      expected: "Empty: the result from above fills it.",
      undoing: restoring(sheet, expected),
      remedy: "Clear the cell; the calculated value comes back by itself.",
    },
  ];
}

/** The cells that its results should fill and that hold something. */
function filledOver({ cells }: BookSheet, { place, fills }: ExpectedFormula): string[] {
  const own = address(place.row, place.column);
  const filled: string[] = [];
  for (let row = fills.top; row <= fills.bottom; row++) {
    for (let column = fills.left; column <= fills.right; column++) {
      const at = address(row, column);
      const { value, formula } = cells[at] ?? {};
      if (at !== own && (value !== undefined || formula !== undefined)) filled.push(at);
    }
  }
  return filled;
}

/** The template's formula in its cell, and nothing in its way. */
const restoring = (sheet: BookSheet, expected: ExpectedFormula): Undoing[] => [
  ...filledOver(sheet, expected).map((cell): Undoing => ({ place: { sheet: sheet.name, cell } })),
  {
    place: { sheet: sheet.name, cell: address(expected.place.row, expected.place.column) },
    formula: expected.formula,
  },
];
