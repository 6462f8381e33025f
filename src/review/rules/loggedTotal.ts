/** What the log says of the total beside the total itself. */
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { filledCells } from "../namedCells";
import type { Rule } from "../rule";

/** Half a cent: what is shown is rounded. */
const SAME = 0.005;

export const loggedTotal: Rule = {
  id: "log of another total",
  reason:
    "The log says what each change came to: a last total that is not the job's means a change that nobody wrote down.",
  example: "The last entry of the log ends at 11,727.46, and the total is 11,127.46.",
  find: ({ read, computed }) => {
    const last = filledCells(read, estimate.log.after.name).at(-1);
    const total = namedValue(computed ?? read, estimate.quote.total.name);
    if (!last || typeof last.value !== "number" || typeof total !== "number") return [];
    if (Math.abs(last.value - total) <= SAME) return [];
    return [
      {
        weight: "worth knowing",
        place: last.place,
        message: `The last total on the log is ${last.value.toFixed(2)}; the job's is ${total.toFixed(2)}.`,
        expected: "The same, or an entry for what was changed since.",
        effect: "Nobody can say what moved the price.",
        remedy: "Write the change down, or correct the entry.",
      },
    ];
  },
};
