/** Enters every formula of ours again where it stands at an error of an unknown name. */
import { address } from "../../formula/address";
import { callsUs } from "../../formula/callsUs";
import { liftGuards, loadGuards, setGuards, setMissingGuards, type Guard } from "./guards";
import type { Change } from "./inExcel";
import { usedCells } from "./readWorkbook";

interface Entry {
  readonly sheet: string;
  readonly at: string;
  readonly formula: string;
}

interface PlannedEntries {
  readonly entries: readonly Entry[];
  /** Our formulas stand in locked cells. */
  readonly guards: readonly Guard[];
}

/** Gives how many; to enter one twice does no harm. */
export const enteringOursAgain: Change<PlannedEntries, number> = {
  plan: async (context) => {
    const entries = (await usedCells(context)).flatMap(({ name, top, left, values, formulas, errors }) =>
      formulas.flatMap((line, row) =>
        line.flatMap((formula, column): Entry[] => {
          const unknown = errors[row]![column] && values[row]![column] === "#NAME?";
          if (formula === undefined || !unknown || !callsUs(formula)) return [];
          return [{ sheet: name, at: address(top + row, left + column), formula }];
        }),
      ),
    );
    if (entries.length === 0) return { entries, guards: [] };
    const guards = loadGuards(
      context,
      entries.map(({ sheet }) => sheet),
    );
    await context.sync();
    return { entries, guards: guards() };
  },
  carryOut: async (context, { entries, guards }) => {
    liftGuards(context, guards);
    for (const { sheet, at, formula } of entries)
      context.workbook.worksheets.getItem(sheet).getRange(at).formulas = [[`=${formula}`]];
    setGuards(context, guards);
    if (entries.length > 0) await context.sync();
    return entries.length;
  },
  takeBack: (context, { guards }) => setMissingGuards(context, guards),
};
