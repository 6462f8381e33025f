/** Mistakes that can be made with any number, whatever the question. */
import type { AnswerKind } from "./exercise";
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

/** Whether a number is the key rounded to one or two places fewer than asked. */
export function isCoarse(answer: AnswerKind, key: number, value: number): boolean {
  if (answer.kind === "choice" || answer.exact) return false;
  return [1, 2].some((fewer) => {
    const places = answer.decimals - fewer;
    return places >= 0 && Math.abs(value - Number(key.toFixed(places))) < 1e-9;
  });
}
