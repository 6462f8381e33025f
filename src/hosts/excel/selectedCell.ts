/** The chosen cell: where it is, its formula and its result. */
import type { Selection } from "../../pane/host";
import { fromStoredFormula } from "../../formula/storedFormula";
import { cellsOf } from "./cellsOf";
import { resultOf } from "./readWorkbook";

export async function selectedCell(context: Excel.RequestContext): Promise<Selection> {
  const cell = context.workbook.getActiveCell();
  cell.load("address,formulas,values,valueTypes");
  cell.worksheet.load("name");
  await context.sync();
  const formula: unknown = cell.formulas[0]![0];
  const value: unknown = cell.values[0]![0];
  return {
    sheet: cell.worksheet.name,
    at: cellsOf(cell),
    ...(typeof formula === "string" &&
      formula.startsWith("=") && { formula: fromStoredFormula(formula.slice(1)) }),
    ...(value !== "" && { result: resultOf(value, cell.valueTypes[0]![0] === "Error") }),
  };
}
