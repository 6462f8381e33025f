const CALL = /\bRIG\.[A-Z0-9]+\(/;

/** Whether a formula, as people see it, calls one of our functions. */
export const callsUs = (formula: string): boolean => CALL.test(formula);
