/**
 * Causes above the head units: one dish is one dish, and what is wrong with it
 * is wrong at every head unit that it feeds; so with a bundle of feeders, and
 * with a switch that hands on to others.
 *
 * Head units that share something above them are looked at together: nothing
 * or one cause is above them, and below each of them, beside it, nothing or
 * one cause (two, where nothing is above).
 *
 * Accuracy: how much such a cause takes is told from each head unit's readings
 *   for itself, although it is one size, so that the evidence of several head
 *   units for one cause is a little understated.
 */
import type { Megahertz } from "../quantity";
import type { Cause, Power } from "./causes";
import type { Effects, Reading } from "./evidence";
import { feltBelow, waysAbove, type Above, type Hypothesis } from "./hypotheses";
import { keyOf, oddsOf, ranked, type Ranking } from "./ranking";

export interface MeasuredHead {
  readonly head: string;
  readonly readings: readonly Reading[];
  readonly hypotheses: readonly Hypothesis[];
  readonly evidence: (effects: Effects) => number;
}

/** One cause at one place above, in one of its ways, with the head units that feel it. */
interface StateAbove {
  readonly cause: Cause;
  readonly where: string;
  readonly chance: number;
  readonly reaches: readonly { readonly head: number; readonly felt: string }[];
}

export interface FoundAbove {
  readonly cause: Cause;
  readonly where: string;
  readonly probability: number;
  /** Indexes of the head units that it reaches. */
  readonly heads: readonly number[];
}

export interface FoundOver {
  /** That nothing is wrong above or below. */
  readonly clear: number;
  readonly above: readonly FoundAbove[];
  /** By head unit. */
  readonly below: readonly Ranking["shares"][];
}

/**
 * @param heads that share something above them, or one alone
 * @param shared what is above two or more of the job's head units
 * @param low lowest frequency of the job, MHz
 * @param high highest frequency of the job, MHz
 */
export function overHeadUnits(
  heads: readonly MeasuredHead[],
  shared: readonly Above[],
  causes: readonly Cause[],
  low: Megahertz,
  high: Megahertz,
): FoundOver {
  const alone = heads.map(({ hypotheses, evidence }) => ranked(hypotheses, evidence));
  const known = heads.map(() => new Map<string, Ranking>());
  const beside = heads.map(({ hypotheses }, index) => likeliest(hypotheses, alone[index]!));
  const states: StateAbove[] = [];
  for (const cause of causes) {
    if (!cause.above || !(cause.chance > 0)) continue;
    for (const place of shared.filter(({ of }) => of === cause.above)) {
      const ways =
        place.of === "switch before"
          ? cause.ways.map(({ power, dead = false, weight }) => ({ power, dead, weight }))
          : waysAbove(cause).map((way) => ({ ...way, power: "kept" as Power }));
      for (const { power, dead, weight } of ways) {
        const reaches = heads.flatMap(({ head, readings, evidence }, index) => {
          if (!place.heads.includes(head)) return [];
          // Those behind a switch have the supply that they have.
          const left = place.of === "switch before" && head !== place.where ? "kept" : power;
          const felt = JSON.stringify([cause.cause, dead, left]);
          if (!known[index]!.has(felt)) {
            const effects = feltBelow(cause, dead, left, readings, low, high);
            known[index]!.set(felt, ranked(beside[index]!, evidence, effects));
          }
          return [{ head: index, felt }];
        });
        // At a switch alone it is one of its own causes.
        if (reaches.length === 0 || (place.of === "switch before" && reaches.length === 1)) continue;
        states.push({ cause, where: place.where, chance: cause.chance * weight, reaches });
      }
    }
  }
  const logs = states.map(({ chance, reaches }) =>
    reaches.reduce(
      (log, { head, felt }) => log + known[head]!.get(felt)!.log - alone[head]!.log,
      oddsOf(chance),
    ),
  );
  const most = Math.max(0, ...logs);
  const none = Math.exp(-most);
  const total = logs.reduce((sum, log) => sum + Math.exp(log - most), none);
  const share = (log: number): number => Math.exp(log - most) / total;

  const above = new Map<string, FoundAbove>();
  const below = alone.map(({ shares }) => scaled(shares, 1));
  states.forEach(({ cause, where, reaches }, index) => {
    const probability = share(logs[index]!);
    const key = JSON.stringify([cause.cause, where]);
    const before = above.get(key)?.probability ?? 0;
    above.set(key, {
      cause,
      where,
      probability: before + probability,
      heads: reaches.map(({ head }) => head),
    });
    for (const { head, felt } of reaches) {
      moved(below[head]!, alone[head]!.shares, -probability);
      moved(below[head]!, known[head]!.get(felt)!.shares, probability);
    }
  });
  return {
    clear: (none / total) * alone.reduce((all, { clear }) => all * clear, 1),
    above: [...above.values()],
    below,
  };
}

/** So many of a head unit's own causes are tried beside one above it. */
const BESIDE = 16;

/** Those that have the largest share by themselves: whatever stands out beside a cause above stands out without it. */
function likeliest(hypotheses: readonly Hypothesis[], { shares }: Ranking): Hypothesis[] {
  const best = new Set(
    [...shares]
      .sort(([, a], [, b]) => b.probability - a.probability)
      .slice(0, BESIDE)
      .map(([key]) => key),
  );
  return hypotheses.filter((hypothesis) => best.has(keyOf(hypothesis)));
}

type Shares = Map<string, { hypothesis: Hypothesis; probability: number }>;

const scaled = (shares: Ranking["shares"], by: number): Shares =>
  new Map([...shares].map(([key, one]) => [key, { ...one, probability: one.probability * by }]));

/** So much of the weight goes by other shares. */
function moved(shares: Shares, others: Ranking["shares"], by: number): void {
  for (const [key, { hypothesis, probability }] of others) {
    const before = shares.get(key)?.probability ?? 0;
    shares.set(key, { hypothesis, probability: Math.max(0, before + by * probability) });
  }
}
