/** Enters a formula into the chosen cell, as far as it can spill from there. */
import { address, parseAddress } from "../../formula/address";
import { HostTrouble } from "../../pane/host";
import { cellsOf } from "./cellsOf";
import { troubles } from "./excelTrouble";
import type { Change } from "./inExcel";

interface PlannedFormula {
  readonly sheet: string;
  readonly at: string;
  readonly before: unknown[][];
}

/**
 * What its spill meets is seen where Excel computes at once; a function of an
 * add-in answers later, and shows #SPILL! by itself then.
 */
export const enteringFormula = (formula: string): Change<PlannedFormula, void> => ({
  plan: async (context) => {
    const cell = context.workbook.getActiveCell();
    cell.load("address,formulas");
    cell.worksheet.load("name");
    await context.sync();
    return { sheet: cell.worksheet.name, at: cellsOf(cell), before: cell.formulas };
  },
  carryOut: async (context, { sheet, at, before }) => {
    const cell = context.workbook.worksheets.getItem(sheet).getRange(at);
    cell.formulas = [[`=${formula}`]];
    cell.load("values");
    await context.sync();
    if (cell.values[0]![0] !== "#SPILL!") return;
    cell.formulas = before;
    const used = context.workbook.worksheets.getItem(sheet).getUsedRangeOrNullObject(true);
    used.load("values,rowIndex,columnIndex");
    await context.sync();
    throw new HostTrouble(troubles.spillBlocked(at, used.isNullObject ? undefined : nearest(used, at)));
  },
  takeBack: async (context, { sheet, at, before }) => {
    const cell = context.workbook.worksheets.getItem(sheet).getRange(at);
    cell.load("formulas");
    await context.sync();
    if (cell.formulas[0]![0] === before[0]![0]) return;
    cell.formulas = before;
    await context.sync();
  },
  left: ({ sheet, at }) => `the formula may stand in ${sheet} ${at}`,
  words: () => ({ AccessDenied: troubles.lockedCell }),
});

/** The next filled cell below, or else to the right. */
function nearest({ values, rowIndex, columnIndex }: Excel.Range, at: string): string | undefined {
  const { row, column } = parseAddress(at)!;
  const isFilled = (below: number, beside: number): boolean =>
    (values[row + below - rowIndex]?.[column + beside - columnIndex] ?? "") !== "";
  for (let below = 1; below < values.length + rowIndex; below++)
    if (isFilled(below, 0)) return address(row + below, column);
  for (let beside = 1; beside < (values[0]?.length ?? 0) + columnIndex; beside++)
    if (isFilled(0, beside)) return address(row, column + beside);
  return undefined;
}
