/** Finds functions by the words of a task, best first. */
import type { SheetFunction } from "../functions/core/declare";
import { NAMESPACE } from "../formula/namespace";

/** Words of a question that say nothing of its task. */
const EMPTY_WORDS = new Set(
  "a an and are at be by can do does for from has how i if in is it its many much my of on or our the this to what when where which will with".split(
    " ",
  ),
);

/** `together` is times the square of the words that one task has: a question met as a whole comes first. */
const WEIGHTS = { name: 6, task: 2, together: 2, summary: 3, group: 2, parameter: 1 } as const;

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
      score: scores.reduce((sum, score) => sum + score, 0) + WEIGHTS.together * togetherIn(one, wanted) ** 2,
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

const holds = (text: string, word: string): boolean =>
  wordsOf(text).some((one) => one.startsWith(stemOf(word)));

const togetherIn = ({ tasks }: SheetFunction, words: readonly string[]): number =>
  Math.max(0, ...tasks.map((task) => words.filter((word) => holds(task, word)).length));

function scoreOf({ name, tasks, summary, group, parameters }: SheetFunction, word: string): number {
  return (
    (`${NAMESPACE}.${name}`.toLowerCase().includes(stemOf(word)) ? WEIGHTS.name : 0) +
    (tasks.some((task) => holds(task, word)) ? WEIGHTS.task : 0) +
    (holds(summary, word) ? WEIGHTS.summary : 0) +
    (holds(group, word) ? WEIGHTS.group : 0) +
    (parameters.some(({ help, name: own }) => holds(help, word) || holds(own, word)) ? WEIGHTS.parameter : 0)
  );
}

/** So that cables finds cable, and losses loss. */
const stemOf = (word: string): string =>
  word.length > 4 ? word.replace(/(?<!s)s$/, "").replace(/(?<=(?:s|x|ch))e$/, "") : word;
