/**
 * The lines of a cutting plan: which runs are cut from which reel, in order.
 *
 * From each reel the longest run is cut first (common practice, no source: what
 * turns out shorter than planned is then still of use for the next). Cuts that
 * do not go into one line of print go on in a further line of the same reel.
 *
 * Accuracy: that of packReels, whose reels these are.
 */
import { isFault, type Fault } from "../faults";
import { cutLength } from "./cutLength";
import { packReels, type Run } from "./packReels";

/** Letters of the cuts in one line of the plan; a single cut may be longer. */
const LETTERS_IN_A_LINE = 96;

/** Cuts from one reel, or what could not be planned with the reason. */
export type PlanLine = ReelLine | { readonly cable: string; readonly cuts: string; readonly fault: Fault };

export interface ReelLine {
  readonly cable: string;
  /** From 1, in the order of the plan of that cable. */
  readonly reel: number;
  readonly from: "new" | "in stock";
  /** What it held; like what is used and left only in the first line of a reel. */
  readonly length?: number;
  readonly used?: number;
  readonly left?: number;
  readonly cuts: string;
  readonly pieces: number;
}

export interface CableToCut {
  readonly cable: string;
  readonly reel: number;
  readonly runs: readonly Run[];
  /** What is left on each reel of it in stock. */
  readonly started: readonly number[];
}

/** @returns the lines of one cable: first the runs that no reel holds, then all others from their reels */
export function cuttingPlan(
  { cable, reel, runs, started }: CableToCut,
  slack: number,
  waste: number,
): PlanLine[] {
  const lines: PlanLine[] = [];
  const planned: Run[] = [];
  for (const run of runs) {
    const alone = packReels([run], Math.max(reel, ...started), slack, waste);
    if (isFault(alone)) lines.push(tooLong(cable, reel, run, cutLength(run.length, slack, waste), alone));
    else planned.push(run);
  }
  const packing = packReels(planned, reel, slack, waste, started);
  if (isFault(packing))
    return [...lines, { cable, cuts: "more runs than the reels in stock hold", fault: packing }];
  return [
    ...lines,
    ...packing.reels.flatMap(({ runs, cuts, length, started, remainder }, index) => {
      const order = cuts.map((_, at) => at).sort((a, b) => cuts[b]! - cuts[a]! || a - b);
      return inLines(order.map((at) => ({ name: runs[at]!.name ?? "", cut: cuts[at]! }))).map(
        (line, further): ReelLine => ({
          cable,
          reel: index + 1,
          from: started ? "in stock" : "new",
          ...(further === 0 && {
            length,
            used: withoutDust(length - remainder),
            left: withoutDust(remainder),
          }),
          cuts: line.text,
          pieces: line.pieces,
        }),
      );
    }),
  ];
}

const tooLong = (cable: string, reel: number, { name = "" }: Run, cut: number, fault: Fault): PlanLine => ({
  cable,
  cuts: `${name === "" ? "A run" : name}: ${shownLength(cut)} is longer than a reel of ${shownLength(reel)}`,
  fault,
});

interface Line {
  readonly text: string;
  readonly pieces: number;
}

/** Like cuts that follow one another are one entry: "D1 to H1: 4 × 18.9". */
function inLines(cuts: readonly { readonly name: string; readonly cut: number }[]): Line[] {
  const entries: { name: string; cut: string; times: number }[] = [];
  for (const { name, cut } of cuts) {
    const last = entries.at(-1);
    if (last?.name === name && last.cut === shownLength(cut)) last.times += 1;
    else entries.push({ name, cut: shownLength(cut), times: 1 });
  }
  const lines: { text: string; pieces: number }[] = [];
  for (const { name, cut, times } of entries) {
    const text = `${name === "" ? "" : `${name}: `}${times === 1 ? "" : `${times} × `}${cut}`;
    const last = lines.at(-1);
    if (last && last.text.length + text.length + 2 <= LETTERS_IN_A_LINE) {
      last.text += `; ${text}`;
      last.pieces += times;
    } else lines.push({ text, pieces: times });
  }
  return lines;
}

/** What is added up in binary ends in dust: lengths are known to far less than a millionth. */
const withoutDust = (length: number): number => Math.round(length * 1e6) / 1e6;

/** A half is rounded up, whatever binary makes of it. */
const shownLength = (length: number): string => String(Math.round(length * 100 + 1e-6) / 100);
