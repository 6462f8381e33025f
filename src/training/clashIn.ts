/**
 * Whether numbers make every question unambiguous: each known mistake, made
 * with right earlier answers, leads farther from the right answer and from
 * every other mistake than twice the tolerance. After a spoilt earlier answer
 * this can't always be had: taking feet for metres twice is taking them once.
 */
import type { AnySet } from "./exercise";
import { toleranceOf } from "./exercise";
import { coarseValues, generalSlips } from "./generalSlips";
import { numbersAmong, slipValues, type Answers } from "./solve";

/** @returns what could be taken for what, in words; undefined where nothing could */
export function clashIn(set: AnySet, numbers: object, key: Answers): string | undefined {
  const right = numbersAmong(key);
  for (const question of set.questions) {
    const answer = right[question.key];
    if (answer === undefined) continue;
    const slips = [...slipValues(question, numbers, right), ...generalSlips(question.answer, answer)];
    const least = 2 * toleranceOf(question.answer);
    const coarse = coarseValues(question.answer, answer);
    for (const [index, { name, value }] of slips.entries()) {
      if (coarse.some((one) => Math.abs(value - one) <= least))
        return `${question.key}: "${name}" and rounding`;
      if (Math.abs(value - answer) <= least) return `${question.key}: "${name}"`;
      const other = slips
        .slice(index + 1)
        .find((one) => one.name !== name && Math.abs(one.value - value) <= least);
      if (other) return `${question.key}: "${name}" and "${other.name}"`;
    }
  }
  return undefined;
}
