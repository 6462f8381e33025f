/** Finds functions by the words of a task, best first. */
import type { SheetFunction } from "../functions/core/declare";
import { NAMESPACE } from "../functions/core/namespace";

/** Words of a question that say nothing of its task. */
const EMPTY_WORDS = new Set(
  "a an and are at be by can do does for from has how i if in is it its many much my of on or our the this to what when where which will with".split(
    " ",
  ),
);

const WEIGHTS = { name: 8, task: 4, summary: 3, group: 2, parameter: 1 } as const;

export interface Found {
  readonly functions: readonly SheetFunction[];
  /** At least one function has every word. */
  readonly all: boolean;
}

export function findFunctions(functions: readonly SheetFunction[], asked: string): Found {
  const words = wordsOf(asked);
  const telling = words.filter((word) => !EMPTY_WORDS.has(word));
  const wanted = telling.length > 0 ? telling : words;
  if (wanted.length === 0) return { functions, all: true };
  const scored = functions.map((one) => {
    const scores = wanted.map((word) => scoreOf(one, word));
    return {
      one,
      met: scores.filter((score) => score > 0).length,
      score: scores.reduce((sum, score) => sum + score, 0),
    };
  });
  const most = Math.max(0, ...scored.map(({ met }) => met));
  // A question has words that its function does not use, so one may be missing.
  const best = scored.filter(({ met }) => met > 0 && met >= most - 1);
  return {
    functions: best.sort((a, b) => b.score - a.score).map(({ one }) => one),
    all: most === wanted.length,
  };
}

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

function scoreOf({ name, tasks, summary, group, parameters }: SheetFunction, word: string): number {
  const holds = (text: string): boolean => wordsOf(text).some((one) => one.startsWith(stemOf(word)));
  return (
    (`${NAMESPACE}.${name}`.toLowerCase().includes(stemOf(word)) ? WEIGHTS.name : 0) +
    (tasks.some(holds) ? WEIGHTS.task : 0) +
    (holds(summary) ? WEIGHTS.summary : 0) +
    (holds(group) ? WEIGHTS.group : 0) +
    (parameters.some(({ help, name: own }) => holds(help) || holds(own)) ? WEIGHTS.parameter : 0)
  );
}

/** So that cables finds cable, and losses loss. */
const stemOf = (word: string): string =>
  word.length > 4 ? word.replace(/(?<!s)s$/, "").replace(/(?<=(?:s|x|ch))e$/, "") : word;
