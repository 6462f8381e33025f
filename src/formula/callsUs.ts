import { functionsIn } from "./functionsIn";
import { NAMESPACE } from "./namespace";
import { ourName } from "./storedNames";

/** Whether a formula calls one of our functions, as people see it or as a file stores it. */
export const callsUs = (formula: string): boolean =>
  // Most formulas do not so much as name us, and every cell of a big job is asked.
  formula.toUpperCase().includes(NAMESPACE) &&
  [...functionsIn(formula)].some((name) => ourName(name) !== undefined);
