/** Enters every formula of ours again where it stands at an error of an unknown name. */
import { address } from "../../formula/address";
import { callsUs } from "../../formula/callsUs";
import { usedCells } from "./readWorkbook";

/** @returns how many */
export async function enterOursAgain(context: Excel.RequestContext): Promise<number> {
  let count = 0;
  for (const { sheet, top, left, values, formulas, errors } of await usedCells(context)) {
    formulas.forEach((line, row) =>
      line.forEach((formula, column) => {
        const unknown = errors[row]![column] && values[row]![column] === "#NAME?";
        if (formula === undefined || !unknown || !callsUs(formula)) return;
        sheet.getRange(address(top + row, left + column)).formulas = [[`=${formula}`]];
        count += 1;
      }),
    );
  }
  if (count > 0) await context.sync();
  return count;
}
