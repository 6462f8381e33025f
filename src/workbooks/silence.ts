/** Whether our functions have answered in a book, by what the cells of ours show. */
import { callsUs } from "../formula/callsUs";
import { isBookError, type Book } from "./book";

/** What Excel shows in a cell of ours where they have not: missing, computing, refused, not reached. */
const CODES = ["#NAME?", "#BUSY!", "#GETTING_DATA", "#BLOCKED!", "#CONNECT!"];

export interface Silence {
  /** As most of the cells show it. */
  readonly shown: string;
  readonly count: number;
}

/** @returns undefined where most have answered: a misspelled call is no silence */
export function silenceOf({ sheets }: Book): Silence | undefined {
  const counts = new Map<string, number>();
  let calls = 0;
  for (const { cells, results } of sheets)
    for (const [at, { formula }] of Object.entries(cells)) {
      if (formula === undefined || !callsUs(formula)) continue;
      calls += 1;
      const result = results[at];
      if (isBookError(result) && CODES.includes(result.error))
        counts.set(result.error, (counts.get(result.error) ?? 0) + 1);
    }
  const count = [...counts.values()].reduce((sum, one) => sum + one, 0);
  if (count === 0 || count * 2 <= calls) return undefined;
  const [[shown]] = [...counts].sort((a, b) => b[1] - a[1]) as [[string, number]];
  return { shown, count };
}
