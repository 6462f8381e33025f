/** How many head units the tuners of an earlier answer, `tuners`, take. */
import { headUnits } from "../../engine/tuners/headUnits";
import type { Question } from "../exercise";
import { workedBy } from "../workedBy";

/** @param task names the answer that is used */
export const headUnitsQuestion = (task: string, hint: string): Question<{ readonly capacity: number }> => ({
  key: "units",
  heading: "Head units",
  task,
  given: ({ capacity }) => [{ label: "Tuners that one head unit serves", value: capacity, unit: "tuners" }],
  answer: { kind: "number", unit: "head units", decimals: 0, exact: true },
  needs: ["tuners"],
  solve: ({ capacity }, { tuners }) => headUnits(tuners!, capacity),
  slips: [
    {
      name: "rounded down instead of up",
      wrong: ({ capacity }, { tuners }) =>
        tuners! % capacity === 0 ? undefined : Math.floor(tuners! / capacity),
    },
  ],
  hints: [hint],
  example: ({ capacity }, { tuners }) => workedBy("HEADUNITS", [tuners!, capacity]),
});
