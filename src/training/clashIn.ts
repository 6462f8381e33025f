/**
 * Whether numbers make every question unambiguous. Each common mistake, made
 * with right earlier answers, must lead farther from the right answer and from
 * a coarse rounding than twice the tolerance. Two common ones may lie nearer to
 * each other, where no numbers keep all of them apart; they then share their
 * names. Those met now and then are no reason to draw again. After a spoilt
 * earlier answer none of this can always be had: taking feet for metres twice
 * is taking them once.
 */
import type { AnySet } from "./exercise";
import { toleranceOf } from "./exercise";
import { coarseValues, pointAndSign } from "./generalSlips";
import { slipValues } from "./slips/slipValues";
import { numbersAmong, type Answers } from "./solve";

/** Of two numbers that are one: what binary fractions leave. */
const SAME = 1e-9;

export interface Clash {
  /** What could be taken for right, or for a coarse rounding, in words; absent where nothing could. */
  readonly withKey?: string;
  /** How many pairs of common mistakes could be taken for each other. */
  readonly pairs: number;
}

export function clashIn(set: AnySet, numbers: object, key: Answers): Clash {
  const right = numbersAmong(key);
  let pairs = 0;
  for (const question of set.questions) {
    const answer = right[question.key];
    if (answer === undefined) continue;
    const slips = slipValues(set, question, numbers, right, "often").flatMap(({ name, value }) =>
      typeof value === "number" ? [{ name, value }] : [],
    );
    const least = 2 * toleranceOf(question.answer);
    const avoided = [answer, ...coarseValues(question.answer, answer)];
    const general = pointAndSign(question.answer, answer).find(
      ({ value }) => Math.abs(value - answer) <= least,
    );
    if (general) return { withKey: `${question.key}: "${general.name}"`, pairs };
    for (const [index, { name, value }] of slips.entries()) {
      if (avoided.some((one) => Math.abs(value - one) <= least))
        return { withKey: `${question.key}: "${name}"`, pairs };
      for (const other of slips.slice(index + 1)) {
        const apart = Math.abs(other.value - value);
        // The very same answer is shared whatever the numbers are.
        if (other.name !== name && apart <= least && apart > SAME * Math.abs(value)) pairs++;
      }
    }
  }
  return { pairs };
}
