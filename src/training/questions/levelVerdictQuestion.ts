/** Whether the level of an earlier answer, `level`, suits an outlet: the last question of several sets. */
import { levelVerdict } from "../../engine/signal/levelVerdict";
import type { Earlier, Question } from "../exercise";
import { VERDICTS, verdictSlips, type Verdict } from "../slips/verdicts";
import { verdictSteps } from "../verdictSteps";

/** EN 60728-1, as in the hint, in dBµV. */
const LEAST = 47;
const MOST = 77;

/** Whether a level lies so near an edge that rounding could turn the verdict. */
export const nearVerdictEdge = (level: number): boolean =>
  [LEAST, MOST].some((edge) => Math.abs(level - edge) < 1);

const verdictOf = (level: number): Verdict => levelVerdict(level, LEAST, MOST) as Verdict;

/**
 * @param task names the answer that is used
 * @param others what may be compared instead of the level
 */
export const levelVerdictQuestion = <N>(
  task: string,
  others: readonly { readonly name: string; readonly value: (numbers: N, earlier: Earlier) => number }[],
): Question<N> => ({
  key: "verdict",
  heading: "Verdict",
  task,
  given: () => [
    { label: "Minimum level", value: LEAST, unit: "dBµV" },
    { label: "Maximum level", value: MOST, unit: "dBµV" },
  ],
  answer: { kind: "choice", choices: VERDICTS },
  needs: ["level"],
  solve: (_, { level }) => levelVerdict(level!, LEAST, MOST),
  slips: verdictSlips<N>(verdictOf, (_, { level }) => level!, others),
  hints: [
    "EN 60728-1: 47 to 77 dBµV at an outlet of satellite intermediate frequency. The ends count as ok.",
  ],
  example: (_, { level }) => verdictSteps(level!, LEAST, MOST, "dBµV"),
});
