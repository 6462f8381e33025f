/** Mistakes that can be made with any number, whatever the question. */
import { isWithin, toleranceOf, type AnswerKind } from "./exercise";
import type { SlipValue } from "./solve";

export const COARSE = "rounded more coarsely than asked";
const POINT = "decimal point in the wrong place";
const SIGN = "sign reversed";

/** @returns where they lead, for a number that has a unit and a precision; a count has none of them */
export function generalSlips(answer: AnswerKind, key: number): SlipValue[] {
  if (answer.kind === "choice" || answer.exact || key === 0) return [];
  return [
    { name: POINT, value: key * 10 },
    { name: POINT, value: key / 10 },
    { name: SIGN, value: -key },
  ];
}

/** @returns the key rounded to one or two places fewer than asked, where that is beyond the tolerance */
export function coarseValues(answer: AnswerKind, key: number): number[] {
  if (answer.kind === "choice" || answer.exact) return [];
  return [1, 2]
    .filter((fewer) => answer.decimals >= fewer)
    .map((fewer) => Number(key.toFixed(answer.decimals - fewer)))
    .filter((value) => !isWithin(value, key, toleranceOf(answer)));
}
