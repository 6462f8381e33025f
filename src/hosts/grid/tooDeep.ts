/**
 * A formula whose parts are nested too deep for the library (19.3.7) to compile overruns the stack there, and the
 * library then answers 0, as for an empty cell. It answers with an error instead.
 */
import type { GridLibrary } from "./library";

interface Compiled {
  readonly isBadExpression: boolean;
  execute: () => unknown;
}

const SENTENCE =
  "This formula has too many parts inside one another to be computed. Split it, and put its parts into cells.";

export function registerTooDeep(library: GridLibrary): void {
  const formulas = library.CompiledFormula as unknown as { Compile(...args: unknown[]): Compiled };
  const { Compile } = formulas;
  formulas.Compile = function (...args) {
    const compiled = Compile.apply(this, args);
    if (compiled.isBadExpression && !isAnswer(compiled.execute()))
      compiled.execute = () => new library.EvaluationError(SENTENCE);
    return compiled;
  };
}

/** The library's errors have a value; what the engine itself threw has none. */
const isAnswer = (thrown: unknown): boolean =>
  typeof thrown === "object" && thrown !== null && "value" in thrown && thrown.value !== undefined;
