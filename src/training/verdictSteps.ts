/** A verdict as the last lines of a worked example. */
import { levelVerdict } from "../engine/signal/levelVerdict";
import { arithmetic, Working, type Step } from "../engine/working/steps";

/** @param unit that the value and its window share */
export function verdictSteps(value: number, least: number, most: number, unit: string): readonly Step[] {
  const work = new Working();
  work.given("L", "value found", value, unit);
  work.given("a", "least", least, unit);
  work.given("b", "greatest", most, unit);
  work.steps.push({
    symbol: "v",
    meaning: "verdict: low below a, high above b, else ok",
    value: String(levelVerdict(value, least, most)),
    unit: "",
    line: arithmetic`${least} ≤ ${value} ≤ ${most} ?`,
    source: "",
  });
  return work.steps;
}
