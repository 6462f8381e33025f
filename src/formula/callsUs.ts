import { functionsIn } from "./functionsIn";
import { mentionsUs, ourName } from "./storedNames";

/** Whether a formula calls one of our functions, as people see it or as a file stores it. */
export const callsUs = (formula: string): boolean =>
  mentionsUs(formula) && [...functionsIn(formula)].some((name) => ourName(name) !== undefined);
