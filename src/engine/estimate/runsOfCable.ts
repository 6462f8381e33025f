/**
 * Gathers the runs of one cable from the lists in which a job holds them.
 *
 * Accuracy: exact. Names are compared without case. A run without a cable is
 *   refused, for it would be missing from every order.
 */
import { argument } from "../argumentNames";
import { faults, isFault, type Fault } from "../faults";
import { lengthTaken, spareCount, type Cutting } from "./cutting";
import type { Run } from "./packReels";

type Texts = readonly (string | null | Fault)[] | undefined;
type Lengths = readonly (number | null | Fault)[] | undefined;

export interface RunList {
  /** The argument's name, for sentences. */
  readonly name: string;
  /** Undefined where the argument was left out. */
  readonly lengths: Lengths;
  /** The cable of each run, beside the lengths. */
  readonly cables: Texts;
  /** What the list of cables is called. */
  readonly cablesName: string;
  /** Like cables in each row; one where the list is left out, or the row blank. */
  readonly counts?: Lengths;
  readonly countsName?: string;
  /** The longest that each run may have, in the same places. */
  readonly longest?: Lengths;
  /** What each run leads to, and where it comes from; for the crew. */
  readonly to?: Texts;
  readonly toName?: string;
  readonly from?: Texts;
  readonly fromName?: string;
}

/** What a spare run is called. */
export const SPARE = "spare";

/** How many spare runs of each cable: a share of its runs, and at least so many. */
export interface Spare {
  readonly share: number;
  readonly least: number;
}

/** The argument that has them, for sentences. */
const LONGEST = "longest";

const AS_THEY_ARE: Cutting = { at: "likely", tolerance: 0 };
const NO_SPARE: Spare = { share: 0, least: 0 };

/** A row of the lists: like runs of one cable, or what is wrong with it. */
export type RunRow =
  | { readonly cable: string | undefined; readonly run: Run; readonly times: number }
  | { readonly fault: Fault; readonly cable: string | undefined; readonly name: string };

/**
 * @param lists lengths, with the cable of each run beside them; blank rows are skipped
 * @param cable the cable whose runs are wanted; left out, all runs are
 * @param cutting which length of a run counts
 * @param spare how many runs are wanted once more, each as long as the longest
 * @returns the runs, or the first fault among those lists
 */
export function runsOfCable(
  lists: readonly RunList[],
  cable?: string,
  cutting: Cutting = AS_THEY_ARE,
  spare: Spare = NO_SPARE,
): Run[] | Fault {
  for (const { name, lengths, cables, cablesName } of lists) {
    if (!lengths) continue;
    if (cable !== undefined && !cables)
      return faults.missing(cablesName, `the cable of each run in ${argument(name)}`);
    if (cable === undefined && cables)
      return faults.missing("cable", `the cable to count, one of those in ${argument(cablesName)}`);
  }
  const rows = runRows(lists, cutting);
  if (isFault(rows)) return rows;
  const bad = rows.find((row) => "fault" in row);
  if (bad) return bad.fault;
  const key = cable?.toLowerCase();
  const runs: Run[] = [];
  for (const row of rows)
    if ("run" in row && row.cable?.toLowerCase() === key)
      for (let time = 0; time < row.times; time++) runs.push(row.run);
  return withSpares(runs, spare);
}

/** @returns the runs of one cable with its spare ones behind them */
export function withSpares(runs: readonly Run[], { share, least }: Spare): Run[] {
  const longest = runs.reduce((most, { length }) => Math.max(most, length), 0);
  const spares = runs.length === 0 ? 0 : Math.max(least, spareCount(runs.length, share));
  const spare: Run = { label: "A spare run", length: longest, name: SPARE };
  return [...runs, ...Array<Run>(spares).fill(spare)];
}

/** @returns every row that is a run, in order, with what is wrong with it; a fault where lists do not lie side by side */
export function runRows(lists: readonly RunList[], cutting: Cutting = AS_THEY_ARE): RunRow[] | Fault {
  const rows: RunRow[] = [];
  for (const given of lists) {
    const { name, lengths, cables, cablesName, counts, countsName = "counts", longest } = given;
    if (!lengths) continue;
    const short = shorterThan(lengths, given);
    if (short) return short;
    for (const [index, length] of lengths.entries()) {
      if (length === null || length === 0) continue;
      const own = cables?.[index];
      const called = nameOf(given, index);
      const times = counts?.[index] ?? 1;
      const most = longest?.[index] ?? null;
      const label = argument(name, index + 1, `Run ${index + 1} of ${name}`);
      const fault = isFault(length)
        ? faults.atRow(name, index + 1, length)
        : isFault(own)
          ? faults.atRow(cablesName, index + 1, own)
          : own === null
            ? faults.runWithoutCable(label, length)
            : isFault(times)
              ? faults.atRow(countsName, index + 1, times)
              : isFault(most)
                ? faults.atRow(LONGEST, index + 1, most)
                : isFault(called)
                  ? called
                  : undefined;
      const cable = isFault(own) || own === null ? undefined : own;
      if (fault) rows.push({ fault, cable, name: isFault(called) ? "" : called });
      else {
        const taken = lengthTaken(length as number, most as number | null, cutting);
        rows.push({ cable, run: { label, length: taken, name: called as string }, times: times as number });
      }
    }
  }
  return rows;
}

/** Lists that lie beside another are as long as it. */
function shorterThan(lengths: NonNullable<Lengths>, given: RunList): Fault | undefined {
  const beside = [
    [given.cables, given.cablesName],
    [given.counts, given.countsName ?? "counts"],
    [given.longest, LONGEST],
    [given.from, given.fromName ?? "from"],
    [given.to, given.toName ?? "to"],
  ] as const;
  const short = beside.find(([list]) => list && list.length !== lengths.length);
  return short && faults.shortColumn(short[1], short[0]!.length, lengths.length);
}

function nameOf({ from, fromName = "from", to, toName = "to" }: RunList, row: number): string | Fault {
  const [source, target] = [from?.[row] ?? "", to?.[row] ?? ""];
  if (isFault(source)) return faults.atRow(fromName, row + 1, source);
  if (isFault(target)) return faults.atRow(toName, row + 1, target);
  return source === "" ? target : `${source} to ${target}`;
}
