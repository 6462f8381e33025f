/** The answers of a simulated trainee, for the benchmark: one known slip, all else right from there on. */
import type { Drawn } from "../training/drawNumbers";
import type { Answer, AnySet } from "../training/exercise";
import { slipValues } from "../training/slips/slipValues";
import { numbersAmong, solved } from "../training/solve";

/** @param index which of the questions and of their slips, counted round */
export function simulatedAnswers(
  set: AnySet,
  { numbers, key }: Drawn,
  index: number,
): Readonly<Record<string, Answer>> {
  const slipping = set.questions.filter(
    (question) => slipValues(set, question, numbers, numbersAmong(key), "often").length > 0,
  );
  const where = slipping[index % slipping.length]!;
  const sheet: Record<string, Answer> = {};
  for (const question of set.questions) {
    const own = numbersAmong(sheet);
    const slips = question === where ? slipValues(set, question, numbers, own, "often") : [];
    const answer = slips[index % Math.max(1, slips.length)]?.value ?? solved(question, numbers, own);
    if (answer === undefined) continue;
    sheet[question.key] =
      typeof answer === "number" && question.answer.kind === "number"
        ? Number(answer.toFixed(question.answer.decimals))
        : answer;
  }
  return sheet;
}
