/** What the thread runs that computes formulas: one that takes too long or too much is ended with it. */
export { evaluateFormula as default } from "../hosts/headless/evaluateFormula";
