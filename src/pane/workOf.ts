/** The working of one cell: how a call of ours comes to the value that is seen. */
import { NAMESPACE } from "../formula/namespace";
import { isFault } from "../engine/faults";
import { allFunctions } from "../functions/all";
import { showwork } from "../functions/about/showwork";
import { isMatrix, type Argument, type Cell, type Matrix } from "../functions/core/cells";
import type { SheetFunction } from "../functions/core/declare";
import { address, parseAddress, type Place } from "../formula/address";
import type { Book, BookSheet } from "../workbooks/book";
import { argumentValue } from "../review/argumentValue";
import { callIn, type Call } from "../formula/callIn";
import { review } from "../review/review";
import { typedOver } from "../review/rules/typedOver";
import { inSheetWords, spokenOf, wordsIn, type WordsFor } from "../review/sheetWords";

export interface WorkedArgument {
  readonly name: string;
  readonly written: string;
  /** What it holds for this cell; undefined for what only the spreadsheet can work out. */
  readonly value: string | undefined;
  readonly unit: string;
}

export interface WorkedStep {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: string;
  readonly line: string;
  readonly source: string;
}

export interface Work {
  readonly shown: SheetFunction;
  /** As it stands at the head of the column or in the cell itself. */
  readonly formula: string;
  /** The formula does more than this one call. */
  readonly partOnly: boolean;
  /** Where the formula stands, when it is not this cell. */
  readonly from?: string;
  readonly args: readonly WorkedArgument[];
  /** Empty where the steps cannot be shown; `why` then says so. */
  readonly steps: readonly WorkedStep[];
  readonly why?: string;
}

/** @returns the working, or a sentence that says why there is none */
export function workOf(book: Book, sheetName: string, at: string): Work | string {
  const sheet = book.sheets.find(({ name }) => name === sheetName);
  const place = parseAddress(at);
  const source = sheet && place && sourceOf(sheet, place);
  if (!source) {
    return sheet?.cells[at]?.value !== undefined && isTypedOver(book, sheetName, at)
      ? `A typed value stands in ${sheetName} ${at} where a formula belongs, so there is nothing that it is worked out from. Check says how to put the formula back.`
      : `${sheetName} ${at} holds no formula. Select a cell that is calculated.`;
  }
  const call = callIn(source.formula);
  const shown = call && allFunctions.find(({ name }) => name === call.name);
  if (!call || !shown) {
    return `${sheetName} ${at} holds a formula of the spreadsheet's own: =${source.formula}. Select a cell that one of the RIG functions calculates.`;
  }
  const offset = { row: place.row - source.place.row, column: place.column - source.place.column };
  const values = call.args.map((text) => argumentValue(book, sheetName, text));
  const taken = values.map((value, index) => ownPart(shown, index, value, offset));
  return {
    shown,
    formula: source.formula,
    partOnly: !call.whole,
    from:
      offset.row === 0 && offset.column === 0 ? undefined : address(source.place.row, source.place.column),
    args: call.args.flatMap((written, index) => argumentOf(shown, index, written, taken[index])),
    ...stepsOf(shown, call, taken, () => wordsIn(spokenOf(book), sheetName), offset),
  };
}

/** By the rules of Check, which know the template's formulas. */
const isTypedOver = (book: Book, sheet: string, at: string): boolean =>
  review(book).some(
    ({ place, rule }) => rule === typedOver.id && place?.sheet === sheet && place.cell === at,
  );

function sourceOf(sheet: BookSheet, place: Place): { formula: string; place: Place } | undefined {
  for (const [at, { formula, spill }] of Object.entries(sheet.cells)) {
    const own = formula === undefined ? undefined : parseAddress(at);
    if (formula === undefined || !own) continue;
    const { rows, columns } = spill ?? { rows: 1, columns: 1 };
    const below = place.row - own.row;
    const beside = place.column - own.column;
    if (below >= 0 && below < rows && beside >= 0 && beside < columns) return { formula, place: own };
  }
  return undefined;
}

/** Of a column that is combined row by row, the one value that counts for this cell. */
function ownPart(
  { parameters }: SheetFunction,
  index: number,
  value: Argument | undefined,
  offset: Place,
): Argument | undefined {
  const shape = (parameters[index] ?? parameters.at(-1))?.shape;
  if (shape !== "each" || value === undefined || !isMatrix(value)) return value;
  const row = value.length === 1 ? value[0] : value[offset.row];
  return row && (row.length === 1 ? row[0] : row[offset.column]);
}

function argumentOf(
  { parameters }: SheetFunction,
  index: number,
  written: string,
  value: Argument | undefined,
): WorkedArgument[] {
  const parameter = parameters[index] ?? parameters.at(-1);
  if (!parameter || written === "") return [];
  return [
    {
      name: parameter.name,
      written,
      value: value === undefined ? undefined : isMatrix(value) ? sizeOf(value) : shown(value),
      unit: parameter.limits?.unit ?? "",
    },
  ];
}

const sizeOf = (matrix: Matrix): string => `${matrix.length} rows × ${matrix[0]?.length ?? 0} columns`;

/** Digits that are read off a screen; the cells themselves have all. */
const DIGITS = 10;

function shown(cell: Cell): string {
  if (isFault(cell)) return cell.message;
  if (typeof cell === "number") return String(Number(cell.toPrecision(DIGITS)));
  return cell === null || cell === "" ? "blank" : String(cell);
}

function stepsOf(
  shownFunction: SheetFunction,
  { args }: Call,
  values: readonly (Argument | undefined)[],
  wordsFor: () => WordsFor,
  cell: Place,
): Pick<Work, "steps" | "why"> {
  const { working, name } = shownFunction;
  if (!working)
    return { steps: [], why: `${NAMESPACE}.${name} has no step-by-step working; this is its rule.` };
  const unknown = args.find((_, index) => values[index] === undefined);
  if (unknown !== undefined) {
    return {
      steps: [],
      why: `The argument ${unknown} is worked out by the spreadsheet itself, so the steps cannot be repeated here. Put it into a cell of its own to see them.`,
    };
  }
  const answer = showwork.call([name, ...(values as Argument[])]);
  const work = inSheetWords(shownFunction, args, answer, wordsFor, cell);
  if (!isMatrix(work)) return { steps: [], why: isFault(work) ? work.message : undefined };
  return {
    steps: work.map(([symbol, meaning, value, unit, line, source]) => ({
      symbol: String(symbol ?? ""),
      meaning: String(meaning ?? ""),
      value: `${shown(value!)}${unit ? ` ${String(unit)}` : ""}`,
      line: String(line ?? ""),
      source: String(source ?? ""),
    })),
  };
}
