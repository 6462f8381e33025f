/** Formulas computed within bounds of time and memory, so that none holds the command up. */
import { existsSync } from "node:fs";
import path from "node:path";
import Piscina from "piscina";
import { evaluateFormula, type FormulaOutcome } from "../hosts/headless/evaluateFormula";

/** For one formula; a large table of ours takes a fraction of it. */
const MOST_SECONDS = 10;
const MOST_MEGABYTES = 768;
/** Stands beside the command once it is built; from the sources, in tests, formulas are computed in place. */
const WORKER = path.join(__dirname, "calcWorker.js");

export interface Evaluator {
  evaluate(formula: string): Promise<FormulaOutcome>;
  close(): Promise<void>;
}

export function evaluator(worker = WORKER, mostSeconds = MOST_SECONDS): Evaluator {
  if (!existsSync(worker)) {
    return { evaluate: async (formula) => evaluateFormula(formula), close: async () => undefined };
  }
  const pool = new Piscina<string, FormulaOutcome>({
    filename: worker,
    minThreads: 1,
    maxThreads: 1,
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEGABYTES },
  });
  // A thread that dies takes its formula with it, which is told below; the pool starts another.
  pool.on("error", () => undefined);
  return {
    evaluate: async (formula) => {
      const late = new AbortController();
      const timer = setTimeout(() => late.abort(), mostSeconds * 1000);
      try {
        return await pool.run(formula, { signal: late.signal });
      } catch (error) {
        return {
          error: "#VALUE!",
          message: late.signal.aborted
            ? `The formula was not computed within ${mostSeconds} s and was given up. Make it smaller.`
            : (error as NodeJS.ErrnoException).code === "ERR_WORKER_OUT_OF_MEMORY"
              ? `The formula needs more than ${MOST_MEGABYTES} MB and was given up. Make its arrays smaller.`
              : "The formula could not be computed. Make it smaller, or put its parts into cells.",
        };
      } finally {
        clearTimeout(timer);
      }
    },
    close: () => pool.destroy(),
  };
}
