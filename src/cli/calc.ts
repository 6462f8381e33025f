import { holdsError, type FormulaOutcome } from "../hosts/headless/evaluateFormula";
import { MOST_CHARACTERS, MOST_LEVELS } from "../hosts/headless/formulaLimits";
import { isBookError, type BookResult } from "../workbooks/book";
import { EXIT, UsageTrouble, type Console } from "./console";
import { evaluator } from "./evaluated";

const CALC_HELP = `rigsheet calc "FORMULA" …     compute formulas
rigsheet calc -               a formula a line on standard input

Prints one JSON object a line:
  {"formula": …, "value": …}             a number, a text, TRUE/FALSE or, for a
                                         matrix, an array of rows
  {"formula": …, "error": …, "message": …}
An error inside a matrix is {"error": …, "message": …} in its place.

Functions begin with RIG. and take single values or columns: {1;2;3} is a
column, {1,2,3} a row. Text stands in double quotes. Native functions work too.
A formula may have up to ${MOST_CHARACTERS} characters and ${MOST_LEVELS} levels of brackets; one that takes
too long or too much memory is given up with a sentence.

  rigsheet calc "RIG.AZIMUTH(35,-100,-90)"
  rigsheet calc "RIG.CASCADELOSS({2,4})" "RIG.CABLELOSS(\\"series 6\\",{10;20},2150)"

Exit: 0 all have a value; 1 any has an error; 2 nothing to compute.`;

export async function calc(words: readonly string[], console: Console): Promise<number> {
  // A formula may begin with a minus sign, so everything that is not --help is a formula.
  if (words.includes("--help")) {
    console.out(CALC_HELP);
    return EXIT.ok;
  }
  const plain = words[0] === "--" ? words.slice(1) : words;
  const formulas =
    plain.length === 1 && plain[0] === "-" ? (await console.readInput()).split(/\r?\n/) : plain;
  const asked = formulas.map((formula) => formula.trim()).filter((formula) => formula !== "");
  if (asked.length === 0)
    throw new UsageTrouble('There is no formula. Write: rigsheet calc "RIG.AZIMUTH(35,-100,-90)"');
  let failed = false;
  const { evaluate, close } = evaluator();
  try {
    for (const formula of asked) {
      const outcome = await evaluate(formula);
      failed ||= holdsError(outcome);
      console.out(JSON.stringify(answer(formula, outcome)));
    }
  } finally {
    await close();
  }
  return failed ? EXIT.look : EXIT.ok;
}

function answer(formula: string, outcome: FormulaOutcome): Record<string, unknown> {
  if (Array.isArray(outcome)) return { formula, value: outcome.map((row) => row.map(plainResult)) };
  return isBookError(outcome) ? { formula, ...plainError(outcome) } : { formula, value: outcome };
}

const plainResult = (result: BookResult): unknown => (isBookError(result) ? plainError(result) : result);

const plainError = ({ error, message }: { error: string; message?: string }) => ({
  error,
  message: message ?? "The formula could not be computed.",
});
