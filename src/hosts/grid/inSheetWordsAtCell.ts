/**
 * Faults of our functions in the words of the sheet on which they are called.
 * The library (19.3.7) runs a function with its context as `this`: the cell that
 * is computed, and getters of the workbook. So the sentence is right from the
 * start, in whichever cells the error is handed on; a formula without a cell,
 * as `rigsheet calc` has it, keeps the names of arguments.
 */
import type { Cell, Matrix } from "../../functions/core/cells";
import type { SheetFunction } from "../../functions/core/declare";
import { callIn } from "../../formula/callIn";
import { inSheetWords, wordsIn, type WordsFor } from "../../review/sheetWords";
import { rangeOf, type Place, type Zone } from "../../formula/address";
import { templateOf } from "../../workbooks/templates";
import type { BookFacts } from "./bookFacts";
import type { GridModel } from "./library";

interface Position {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
}
interface Range {
  readonly sheetId: string;
  readonly zone: Zone;
}
type Getters = GridModel["getters"] & { getBookFacts?(): BookFacts };

/** What the library hands to a function beside its arguments. */
interface Context {
  readonly getters: Getters;
  readonly __originCellPosition?: Position;
  /** Absent where a formula is computed for itself. */
  addDependencies?(cell: Position, ranges: readonly Range[]): void;
}

/** @returns the outcome, its faults in the sheet's words where the call stands in a cell */
export function inSheetWordsAtCell(
  context: unknown,
  sheetFunction: SheetFunction,
  outcome: Cell | Matrix,
): Cell | Matrix {
  const { getters, __originCellPosition: position } = (context ?? {}) as Partial<Context>;
  const cell = position && getters?.getCell(position);
  if (!cell?.isFormula) return outcome;
  const call = callIn(cell.compiledFormula.toFormulaString(getters!).slice(1));
  if (call?.name !== sheetFunction.name) return outcome;
  return inSheetWords(sheetFunction, call.args, outcome, () => wordsOf(context as Context, position!));
}

function wordsOf(context: Context, position: Position): WordsFor {
  const { getters } = context;
  const ranges = getters.getNamedRanges() as readonly { readonly name: string; readonly range: Range }[];
  const ids = new Map(getters.getSheetIds().map((id) => [getters.getSheetName(id), id]));
  const followed = new Set<string>();
  const valueAt = (sheet: string, { row, column }: Place, name: string): string | undefined => {
    const cell = getters.getCell({ sheetId: ids.get(sheet)!, row, col: column });
    // A name that is worked out may not be so yet.
    if (cell?.isFormula) return undefined;
    if (!followed.has(name)) {
      // The sentence has to change when the row's name does.
      followed.add(name);
      context.addDependencies?.(position, [ranges.find((one) => one.name === name)!.range]);
    }
    return cell?.parsedValue === null ? undefined : cell?.parsedValue.toString();
  };
  const names = ranges.map(({ name, range: { sheetId, zone } }) => ({
    name,
    sheet: getters.getSheetName(sheetId),
    range: rangeOf(zone),
  }));
  const definition = templateOf(getters.getBookFacts?.().template ?? "")?.definition;
  return wordsIn(
    { names, sheets: [...ids.keys()], definition, valueAt },
    getters.getSheetName(position.sheetId),
  );
}
