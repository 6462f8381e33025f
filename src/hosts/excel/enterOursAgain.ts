/** Enters every formula of ours again where it stands at an error of an unknown name. */
import { address } from "../../formula/address";
import { callsUs } from "../../formula/callsUs";
import type { Change } from "./inExcel";
import { usedCells } from "./readWorkbook";

interface Entry {
  readonly sheet: string;
  readonly at: string;
  readonly formula: string;
}

/** Gives how many; to enter one twice does no harm. */
export const enteringOursAgain: Change<readonly Entry[], number> = {
  plan: async (context) =>
    (await usedCells(context)).flatMap(({ name, top, left, values, formulas, errors }) =>
      formulas.flatMap((line, row) =>
        line.flatMap((formula, column) => {
          const unknown = errors[row]![column] && values[row]![column] === "#NAME?";
          if (formula === undefined || !unknown || !callsUs(formula)) return [];
          return [{ sheet: name, at: address(top + row, left + column), formula }];
        }),
      ),
    ),
  carryOut: async (context, entries) => {
    for (const { sheet, at, formula } of entries)
      context.workbook.worksheets.getItem(sheet).getRange(at).formulas = [[`=${formula}`]];
    if (entries.length > 0) await context.sync();
    return entries.length;
  },
};
