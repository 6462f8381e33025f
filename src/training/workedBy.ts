/** The lines of SHOWWORK for a call, for a worked example. */
import { isFault } from "../engine/faults";
import type { Step } from "../engine/working/steps";
import { showwork } from "../functions/about/showwork";
import type { Argument, Matrix } from "../functions/core/cells";

/**
 * @param name of the function, with its arguments in order
 * @param after leave out the lines up to the one with this symbol, where another example has them
 */
export function workedBy(name: string, args: readonly Argument[], after?: string): readonly Step[] {
  const answer = showwork.call([name, ...args]);
  if (isFault(answer)) throw new Error(`${name}: ${answer.message}`);
  const steps = (answer as Matrix).map(
    ([symbol, meaning, value, unit, line, source]) =>
      ({ symbol, meaning, value, unit, line, source }) as unknown as Step,
  );
  return steps.slice(after === undefined ? 0 : steps.findIndex(({ symbol }) => symbol === after) + 1);
}
