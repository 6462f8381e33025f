/**
 * Splitters and taps, line by line: the steps of splitterLoss, cascadeLoss and
 * tapThroughLoss, with their sources, accuracy and range.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Decibels } from "../quantity";
import { cascadeLoss } from "../signal/cascadeLoss";
import { splitterLoss } from "../signal/splitterLoss";
import { tapThroughLoss } from "../signal/tapThroughLoss";
import { arithmetic, Working, type Step } from "./steps";

const EQUAL = "Equal division of power among the outputs";

function stage(work: Working, ways: number, excess: Decibels, mark: string): Decibels {
  work.given(`N${mark}`, "number of equal outputs", ways, "ways");
  work.given(`x${mark}`, "loss beyond the ideal", excess, "dB");
  return work.worked(
    `L${mark}`,
    `loss of the ${ways}-way splitter, 10·log10(N) + x`,
    splitterLoss(ways, excess),
    "dB",
    arithmetic`10·log10(${ways}) + ${excess}`,
    EQUAL,
  );
}

/** Parameters as for splitterLoss. */
export function splitterSteps(ways: number, excess: Decibels): readonly Step[] {
  const work = new Working();
  stage(work, ways, excess, "");
  return work.steps;
}

/** Parameters as for cascadeLoss. */
export function cascadeSteps(
  ways: readonly (number | null)[],
  excess: readonly (Decibels | null)[],
): readonly Step[] | Fault {
  const sum = cascadeLoss(ways, excess);
  if (isFault(sum)) return sum;
  const work = new Working();
  const losses = ways.flatMap((count, row) =>
    count === null ? [] : [stage(work, count, excess[row] ?? 0, String(row + 1))],
  );
  if (losses.length === 0) return faults.missing("ways", "the number of ways of at least one splitter");
  work.worked(
    "L",
    "loss of all of them, one behind another",
    sum,
    "dB",
    losses.map((loss) => arithmetic`${loss}`).join(" + "),
    "Decibels along a path add",
  );
  return work.steps;
}

/** Parameters as for tapThroughLoss. */
export function tapThroughSteps(tap: Decibels, excess: Decibels): readonly Step[] {
  const work = new Working();
  work.given("T", "tap value, loss from the input to the branch", tap, "dB");
  work.given("x", "loss beyond the ideal", excess, "dB");
  const passed = work.worked(
    "q",
    "share of the power that passes on, 1 − 10^(−T/10)",
    1 - 10 ** (-tap / 10),
    "",
    arithmetic`1 − 10^(0 − ${tap}/10)`,
    "What the branch takes is missing on the way through",
  );
  work.worked(
    "L",
    "loss on the way through, −10·log10(q) + x",
    tapThroughLoss(tap, excess),
    "dB",
    arithmetic`${excess} − 10·log10(${passed})`,
    "The decibel",
  );
  return work.steps;
}
