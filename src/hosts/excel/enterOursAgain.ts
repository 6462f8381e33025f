/** Enters every formula of ours again where it stands at an error of an unknown name. */
import { address } from "../../formula/address";
import { callsUs } from "../../formula/callsUs";
import { HostTrouble } from "../../pane/host";
import { codeOf, troubles } from "./excelTrouble";
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

/** What became of them. */
export interface Entered {
  readonly count: number;
  /** By the sheets that Excel did not let be written to, how many. */
  readonly refused: ReadonlyMap<string, number>;
  readonly unguarded: readonly string[];
  /** What all of them show still, where none of them computes. */
  readonly still?: string;
}

/**
 * All at once; where Excel refuses that, a sheet at a time, so that one with a
 * person's password keeps no other from it. To enter one twice does no harm.
 */
export const enteringOursAgain: Change<PlannedEntries, Entered> = {
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
    const done: Entry[] = [];
    const refused = new Map<string, number>();
    const unguarded: string[] = [];
    const enter = async (
      some: readonly Entry[],
      its: readonly Guard[],
      set: readonly Guard[],
    ): Promise<void> => {
      liftGuards(context, its);
      for (const { sheet, at, formula } of some)
        context.workbook.worksheets.getItem(sheet).getRange(at).formulas = [[`=${formula}`]];
      setGuards(context, set);
      await context.sync();
      done.push(...some);
    };
    const denied = async (work: () => Promise<void>): Promise<boolean> => {
      try {
        await work();
        return false;
      } catch (error) {
        if (codeOf(error) === DENIED) return true;
        throw stoppedAt(error, entries.length - done.length, entries.length);
      }
    };
    if (await denied(() => enter(entries, guards, guards))) {
      for (const sheet of new Set(entries.map((one) => one.sheet))) {
        const own = entries.filter((one) => one.sheet === sheet);
        const its = guards.filter((one) => one.sheet === sheet);
        // The try of them all may have lifted it.
        await denied(() => setMissingGuards(context, its));
        if (await denied(() => enter(own, its, []))) refused.set(sheet, own.length);
        if (await denied(() => setMissingGuards(context, its))) unguarded.push(sheet);
      }
    }
    return { count: done.length, refused, unguarded, still: await stillShown(context, done) };
  },
  takeBack: (context, { guards }) => setMissingGuards(context, guards),
};

const DENIED = "AccessDenied";

/** A mistake of ours stays one. */
function stoppedAt(error: unknown, left: number, all: number): unknown {
  const code = codeOf(error);
  if (code === undefined) return error;
  return new HostTrouble(troubles.repairStopped(left, all, code), { cause: error });
}

/** While they compute, or where one of them has a result, nothing can be said of them all. */
async function stillShown(
  context: Excel.RequestContext,
  entries: readonly Entry[],
): Promise<string | undefined> {
  const ranges = entries.map(({ sheet, at }) => context.workbook.worksheets.getItem(sheet).getRange(at));
  if (ranges.length === 0) return undefined;
  for (const range of ranges) range.load("values");
  try {
    await context.sync();
  } catch (error) {
    // They are entered, whether Excel lets them be looked at or not.
    if (codeOf(error) === undefined) throw error;
    return undefined;
  }
  const shown = ranges.map(({ values }) => String(values[0]![0]));
  return shown.every((one) => one === "#NAME?" || one === "#REF!") ? shown[0] : undefined;
}
