import { estimate } from "../../workbooks/multiRoom/names";
import { conditionOf } from "../conditionOf";
import type { Finding, Weight } from "../finding";
import { inputsIn } from "../inputsIn";
import { hasJob } from "../namedCells";
import { onPurpose } from "../onPurpose";
import type { Rule } from "../rule";

/** A firm that knows its jobs adds none; common practice, no source. */
const OFTEN_ZERO = new Set([estimate.site.contingency.name]);

export const zeroAmounts: Rule = {
  id: "amount of zero",
  reason: "A zero that was left or typed by mistake gives something away, and every sum agrees with it.",
  example: "A minute count of 0 for running a cable; a tax of 0 that the template started from.",
  find: ({ read, computed, definition }) => {
    if (!hasJob(read)) return [];
    const meant = onPurpose(read);
    return inputsIn(read, definition).flatMap(({ name, label, input, cells, block }) => {
      if (!input.zero) return [];
      const matters =
        input.zeroWhere === undefined ? () => true : conditionOf(input.zeroWhere, read, computed);
      const weight: Weight =
        input.zero === "reason" ? "wrong" : OFTEN_ZERO.has(name) ? "worth knowing" : "doubtful";
      return cells
        .filter(({ value, inRow, index, called }) => value === 0 && inRow && matters(index) && !meant(called))
        .map(({ place, called }): Finding => ({
          weight,
          place,
          message: `${label}${block === undefined ? "" : ` of ${called}`} is 0.`,
          expected: "A figure above 0, or its reason.",
          effect: "Nothing is counted for it.",
          remedy: `Enter the figure; or list “${called}” on Terms as 0 on purpose, with the reason.`,
        }));
    });
  },
};
