/** The cutting plan of a job's outlets, beside only putting their runs in order. */
import { allFunctions } from "../functions/all";
import type { Matrix } from "../functions/core/cells";

/** Metres, of many different lengths. */
const runs = (count: number): number[] =>
  Array.from({ length: count }, (_, at) => 5 + ((at * 7919) % 401) / 10);

/**
 * @param count of runs of one cable
 * @param timed the least of a few runs
 */
export async function cuttingTimes(
  count: number,
  timed: (work: () => unknown, runs?: number) => Promise<number>,
): Promise<{ ms: number; bareMs: number }> {
  const lengths = runs(count);
  const column = (cells: readonly (number | string)[]): Matrix => cells.map((cell) => [cell]);
  const plan = allFunctions.find(({ name }) => name === "CUTPLAN")!;
  const args = [
    column(lengths.map((_, at) => at + 1)),
    [["drop"]],
    [[305]],
    column(lengths),
    column(lengths.map(() => "drop")),
    2,
    0.05,
    column(lengths.map((_, at) => `1-${at}`)),
  ];
  return {
    ms: await timed(() => plan.call(args), 5),
    bareMs: await timed(() => [...lengths].sort((a, b) => b - a), 5),
  };
}
