/** The working of a function's first example that has one, for its help page. */
import { isFault } from "../engine/faults";
import { showwork } from "../functions/about/showwork";
import type { SheetFunction } from "../functions/core/declare";
import type { Matrix } from "../functions/core/cells";
import { exampleCall } from "./exampleCall";
import { fullName, shownRows } from "./facts";

export interface ShownWork {
  /** The call of SHOWWORK that gives these rows. */
  readonly formula: string;
  readonly rows: readonly (readonly string[])[];
}

export function shownWork(one: SheetFunction): ShownWork | undefined {
  if (!one.working) return undefined;
  for (const { formula } of one.examples) {
    const { name, args } = exampleCall(formula);
    const work = showwork.call([name, ...args]);
    if (isFault(work)) continue;
    const given = formula.slice(formula.indexOf("(") + 1, -1);
    return {
      formula: `${fullName(showwork.name)}("${name}",${given})`,
      rows: shownRows(work as Matrix),
    };
  }
  return undefined;
}
