/** Mistakes that can be made with any number, whatever the question. */
import { toRadians } from "../engine/sightline/angles";
import { METRES_PER_FOOT } from "../engine/signal/lengthUnits";
import { isWithin, toleranceOf, type AnswerKind, type AnySet, type Earlier, type Question } from "./exercise";

export const COARSE = "rounded more coarsely than asked";
const POINT = "decimal point in the wrong place";
const SIGN = "sign reversed";

export interface GeneralSlip {
  readonly name: string;
  readonly value: number;
}

/** @returns where the point and the sign lead, for a number that has a unit and a precision; of a count the sign */
export function pointAndSign(answer: AnswerKind, key: number): GeneralSlip[] {
  if (answer.kind === "choice" || key === 0) return [];
  const sign = { name: SIGN, value: -key };
  if (answer.exact) return [sign];
  return [{ name: POINT, value: key * 10 }, { name: POINT, value: key / 10 }, sign];
}

/** @returns where all of them lead */
export function generalSlips(answer: AnswerKind, key: number): GeneralSlip[] {
  const first = pointAndSign(answer, key);
  if (answer.kind === "choice" || answer.exact || key === 0) return first;
  const { unit } = answer;
  const of = (units: string, name: string, value: number): GeneralSlip[] =>
    unit === units ? [{ name, value }] : [];
  return [
    ...first,
    ...of("%", "a share given instead of percent", key / 100),
    ...of("m", "given in centimetres", key * 100),
    ...of("m", "given in feet", key / METRES_PER_FOOT),
    ...of("V", "given in millivolts", key * 1000),
    ...of("deg", "given in radians", toRadians(key)),
    ...of("deg", "half a turn off", (key + 180) % 360),
    ...of("deg", "taken from the other axis", 90 - key),
    ...[100, 1000].flatMap((by) => [
      { name: POINT, value: key * by },
      { name: POINT, value: key / by },
    ]),
    { name: "twice the answer", value: 2 * key },
    { name: "half of the answer", value: key / 2 },
  ];
}

/** @returns what stands on the sheet and may have been given as it is: figures of the question, other answers */
export function copied(
  set: AnySet,
  question: Question<never>,
  numbers: object,
  answers: Earlier,
): GeneralSlip[] {
  const figures = question
    .given(numbers as never)
    .flatMap(({ label, value }) =>
      typeof value === "number" ? [{ name: `"${label}" given as it stands`, value }] : [],
    );
  const others = set.questions.flatMap(({ key }, index) =>
    key !== question.key && answers[key] !== undefined
      ? [{ name: `answer to ${index + 1} given`, value: answers[key] }]
      : [],
  );
  return [...figures, ...others];
}

/** @returns the key rounded to one or two places fewer than asked, where that is beyond the tolerance */
export function coarseValues(answer: AnswerKind, key: number): number[] {
  if (answer.kind === "choice" || answer.exact) return [];
  return [1, 2]
    .filter((fewer) => answer.decimals >= fewer)
    .map((fewer) => Number(key.toFixed(answer.decimals - fewer)))
    .filter((value) => !isWithin(value, key, toleranceOf(answer)));
}
