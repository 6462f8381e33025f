/**
 * Gathers the runs of one cable from the lists in which a job holds them.
 *
 * Accuracy: exact. Names are compared without case. A run without a cable is
 *   refused, for it would be missing from every order.
 */
import { argument } from "../argumentNames";
import { faults, isFault, type Fault } from "../faults";
import type { Run } from "./packReels";

export interface RunList {
  /** The argument's name, for sentences. */
  readonly name: string;
  /** Undefined where the argument was left out. */
  readonly lengths: readonly (number | null | Fault)[] | undefined;
  /** The cable of each run, beside the lengths. */
  readonly cables: readonly (string | null | Fault)[] | undefined;
  /** What the list of cables is called. */
  readonly cablesName: string;
  /** Like cables in each row; one where the list is left out, or the row blank. */
  readonly counts?: readonly (number | null | Fault)[] | undefined;
  readonly countsName?: string;
}

/**
 * @param lists lengths, with the cable of each run beside them; blank rows are skipped
 * @param cable the cable whose runs are wanted; left out, all runs are
 * @returns the runs, or the first fault among those lists
 */
export function runsOfCable(lists: readonly RunList[], cable?: string): Run[] | Fault {
  const wanted = cable?.toLowerCase();
  const runs: Run[] = [];
  for (const { name, lengths, cables, cablesName, counts, countsName = "counts" } of lists) {
    if (!lengths) continue;
    if (wanted !== undefined && !cables)
      return faults.missing(cablesName, `the cable of each run in ${argument(name)}`);
    if (wanted === undefined && cables)
      return faults.missing("cable", `the cable to count, one of those in ${argument(cablesName)}`);
    if (cables && cables.length !== lengths.length) {
      return faults.shortColumn(cablesName, cables.length, lengths.length);
    }
    if (counts && counts.length !== lengths.length) {
      return faults.shortColumn(countsName, counts.length, lengths.length);
    }
    for (const [index, length] of lengths.entries()) {
      if (length === null) continue;
      if (isFault(length)) return faults.atRow(name, index + 1, length);
      if (length === 0) continue;
      const label = argument(name, index + 1, `Run ${index + 1} of ${name}`);
      const own = cables?.[index];
      if (isFault(own)) return faults.atRow(cablesName, index + 1, own);
      if (own === null) return faults.runWithoutCable(label, length);
      const times = counts?.[index] ?? 1;
      if (isFault(times)) return faults.atRow(countsName, index + 1, times);
      if (own?.toLowerCase() !== wanted) continue;
      for (let cable = 0; cable < times; cable++) runs.push({ label, length });
    }
  }
  return runs;
}
