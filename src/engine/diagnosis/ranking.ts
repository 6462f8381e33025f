/** Nothing, one cause or two below one head unit, each weighed by its chance and by the evidence of the readings. */
import type { Effects } from "./evidence";
import type { Hypothesis } from "./hypotheses";

/** Single causes of a head unit that are tried in pairs. */
const PAIRED = 16;
export const NO_EFFECTS: Effects = { columns: [], power: new Map(), dead: new Set() };

export interface Ranking {
  /** Natural logarithm of the weight of all that was tried together. */
  readonly log: number;
  /** The share of nothing. */
  readonly clear: number;
  /** By {@link keyOf}: the share of the weight in which a cause at its place takes part. */
  readonly shares: ReadonlyMap<string, { readonly hypothesis: Hypothesis; readonly probability: number }>;
}

export const keyOf = ({ cause: { cause }, where }: Hypothesis): string => JSON.stringify([cause, where]);
export const oddsOf = (chance: number): number => Math.log(chance / (1 - chance));
const same = (a: Hypothesis, b: Hypothesis): boolean =>
  a.cause.cause === b.cause.cause && a.where === b.where;

interface State {
  readonly members: readonly Hypothesis[];
  readonly log: number;
}

/** @param beside what else takes from the readings, whichever of the causes is there; then no pairs are tried */
export function ranked(
  hypotheses: readonly Hypothesis[],
  evidence: (effects: Effects) => number,
  beside?: Effects,
): Ranking {
  const logOf = (effects: Effects): number => evidence(beside ? together(beside, effects) : effects);
  const singles = hypotheses
    .filter(({ chance }) => chance > 0)
    .map((hypothesis): State => ({
      members: [hypothesis],
      log: logOf(hypothesis.effects) + oddsOf(hypothesis.chance),
    }))
    .sort((a, b) => b.log - a.log);
  const none: State = { members: [], log: logOf(NO_EFFECTS) };
  const states = [none, ...singles, ...(beside ? [] : pairsOf(singles, evidence))];
  const most = states.reduce((best, { log }) => Math.max(best, log), -Infinity);
  const total = states.reduce((sum, { log }) => sum + Math.exp(log - most), 0);
  const names = new Map(hypotheses.map((hypothesis) => [hypothesis, keyOf(hypothesis)]));
  const shares = new Map<string, { hypothesis: Hypothesis; probability: number }>();
  for (const { members, log } of states) {
    for (const hypothesis of members) {
      const key = names.get(hypothesis)!;
      const before = shares.get(key)?.probability ?? 0;
      shares.set(key, { hypothesis, probability: before + Math.exp(log - most) / total });
    }
  }
  return { log: most + Math.log(total), clear: Math.exp(none.log - most) / total, shares };
}

/** The best alone, and the best beside the best: a second fault may be worth nothing without the first. */
function pairsOf(singles: readonly State[], evidence: (effects: Effects) => number): State[] {
  const pairOf = (one: Hypothesis, other: Hypothesis): State => ({
    members: [one, other],
    log: evidence(together(one.effects, other.effects)) + oddsOf(one.chance) + oddsOf(other.chance),
  });
  const first = singles[0]?.members[0];
  const beside = first
    ? singles
        .filter(({ members: [other] }) => !same(first, other!))
        .map(({ members: [other] }) => pairOf(first, other!))
    : [];
  const top = singles.slice(0, PAIRED).map(({ members }) => members[0]!);
  const pairs = top.flatMap((one, index) =>
    index === 0
      ? []
      : top
          .slice(index + 1)
          .filter((other) => !same(one, other))
          .map((other) => pairOf(one, other)),
  );
  return [...beside, ...pairs];
}

const WORSE = { kept: 0, low: 1, lost: 2 } as const;

function together(a: Effects, b: Effects): Effects {
  const power = new Map(a.power);
  for (const [at, state] of b.power) {
    const before = power.get(at) ?? "kept";
    power.set(at, WORSE[state] > WORSE[before] ? state : before);
  }
  return { columns: [...a.columns, ...b.columns], power, dead: new Set([...a.dead, ...b.dead]) };
}
