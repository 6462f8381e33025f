/**
 * Packs runs of cable onto whole reels, where a run is never spliced.
 *
 * Source: bin packing, see engine/packing. Cutting each run from one reel is
 *   common practice, no source: a joint in a drop is one more fault to find.
 * Accuracy: the least number of reels where `proved`; else at most 11/9 of it
 *   plus 6/9, and on random jobs at most 3.5 % above what the total needs with
 *   240 runs, 1.1 % with 10,000 (measured), of reels that are whole. Lengths that are whole numbers of a
 *   common unit are packed by it, others are taken to a hundred-millionth of the reel, downwards,
 *   so that runs that fill a reel to within a rounding error do fit.
 * Range: one unit of length throughout; a run of length 0 is no run.
 */
import { faults, type Fault } from "../faults";
import { pack } from "../packing/pack";
import { packWithStarted } from "../packing/packWithStarted";
import { cutLength } from "./cutLength";

export interface Run {
  /** What to call the run in a sentence; may name an argument (argumentNames.ts). */
  readonly label: string;
  readonly length: number;
  /** What the crew knows it by. */
  readonly name?: string;
}

export interface Reel {
  readonly runs: readonly Run[];
  /** What each run is cut at, with slack and waste. */
  readonly cuts: readonly number[];
  /** What it held before the first cut. */
  readonly length: number;
  /** One that was in stock, and is not bought. */
  readonly started: boolean;
  /** What is left on the reel when the runs are cut, slack and waste with them. */
  readonly remainder: number;
}

export interface ReelPacking {
  /** Started ones first; those that nothing is cut from are left out. */
  readonly reels: readonly Reel[];
  /** No packing onto fewer whole reels exists. */
  readonly proved: boolean;
}

/** Units in which lengths are written, in the unit of the job. */
const UNITS = [1, 0.5, 0.25, 0.2, 0.1, 0.05, 0.01];
/** Of a unit. */
const ROUNDING = 1e-6;
const PARTS_OF_A_REEL = 1e8;

/**
 * @param runs the runs of one cable
 * @param reel length of cable on a reel, in the unit of the runs
 * @param slack length added to each run
 * @param waste share added to each run and its slack, from 0 to 1
 * @param started what is left on each reel in stock: it is used first
 * @returns which runs come off which reel; a fault for a run longer than a reel
 */
export function packReels(
  runs: readonly Run[],
  reel: number,
  slack = 0,
  waste = 0,
  started: readonly number[] = [],
): ReelPacking | Fault {
  const real = runs.filter(({ length }) => length > 0);
  const cuts = real.map(({ length }) => cutLength(length, slack, waste));
  const { sizes, capacity, rooms } = inWholes(real, reel, slack, waste, started);
  const most = Math.max(capacity, ...rooms);
  const tooLong = sizes.findIndex((size) => !(size <= most));
  const packing =
    tooLong >= 0
      ? undefined
      : rooms.length === 0
        ? pack(sizes, capacity)
        : packWithStarted(sizes, capacity, rooms);
  if (!packing) {
    const at = tooLong >= 0 ? tooLong : sizes.findIndex((size) => size > capacity);
    return faults.longerThanReel(real[at]!.label, real[at]!.length, cuts[at]!, reel);
  }
  const reels = Array.from({ length: packing.count }, (_, bin) => ({
    runs: [] as Run[],
    cuts: [] as number[],
    length: started[bin] ?? reel,
    started: bin < started.length,
    used: 0,
  }));
  packing.bins.forEach((bin, index) => {
    const held = reels[bin]!;
    held.runs.push(real[index]!);
    held.cuts.push(cuts[index]!);
    held.used += cuts[index]!;
  });
  return {
    reels: reels
      .filter((held) => held.runs.length > 0)
      .map(({ used, ...held }) => ({ ...held, remainder: Math.max(0, held.length - used) })),
    proved: packing.proved,
  };
}

/** Sizes and reels as whole numbers: of a unit in which all runs are written, else of parts of the reel. */
function inWholes(
  runs: readonly Run[],
  reel: number,
  slack: number,
  waste: number,
  started: readonly number[],
): { sizes: number[]; capacity: number; rooms: number[] } {
  const lengths = runs.map(({ length }) => length + slack);
  const unit = UNITS.find((one) =>
    lengths.every((length) => Math.abs(length / one - Math.round(length / one)) < ROUNDING),
  );
  if (unit !== undefined) {
    // A share of waste makes every cut longer alike, which is a shorter reel.
    const room = (length: number): number => Math.floor(length / (1 + waste) / unit + ROUNDING);
    return {
      sizes: lengths.map((length) => Math.round(length / unit)),
      capacity: room(reel),
      rooms: started.map(room),
    };
  }
  const part = (length: number): number => Math.floor((length / reel) * PARTS_OF_A_REEL);
  return {
    sizes: lengths.map((length) => Math.max(1, part(length * (1 + waste)))),
    capacity: PARTS_OF_A_REEL,
    rooms: started.map(part),
  };
}
