/** How many head units the tuners of an earlier answer, `tuners`, take. */
import { headUnits } from "../../engine/tuners/headUnits";
import type { Earlier, Question } from "../exercise";
import { roundingUp } from "../slips/counts";
import { workedBy } from "../workedBy";

/**
 * @param task names the answer that is used
 * @param boxes receivers and recorders together, and the recorders alone
 */
export const headUnitsQuestion = <N extends { readonly capacity: number }>(
  task: string,
  hint: string,
  boxes: { readonly all: (numbers: N) => number; readonly recorders: (numbers: N) => number },
): Question<N> => ({
  key: "units",
  heading: "Head units",
  task,
  given: ({ capacity }) => [
    { label: "Tuners that one head unit serves", value: capacity, unit: "tuners", of: "capacity" },
  ],
  answer: { kind: "number", unit: "head units", decimals: 0, exact: true },
  needs: ["tuners"],
  solve: ({ capacity }, { tuners }) => headUnits(tuners!, capacity),
  slips: [
    ...roundingUp<N>(({ capacity }, { tuners }) => tuners! / capacity),
    {
      name: "boxes divided instead of their tuners",
      wrong: (n) => headUnits(boxes.all(n), n.capacity),
      seldom: true,
    },
    {
      name: "multiplied instead of divided",
      wrong: ({ capacity }, { tuners }: Earlier) => tuners! * capacity,
      seldom: true,
    },
    {
      name: "subtracted instead of divided",
      wrong: ({ capacity }, { tuners }: Earlier) => tuners! - capacity,
      seldom: true,
    },
    { name: "a head unit for each recorder", wrong: boxes.recorders, seldom: true },
  ],
  hints: [hint],
  example: ({ capacity }, { tuners }) => workedBy("HEADUNITS", [tuners!, capacity]),
});
