/**
 * Likely causes of what a crew measured, ranked by how well each explains all
 * the readings of the job together.
 *
 * Below each head unit nothing, one cause or two may be wrong; the weight of
 * each is its chance before the readings times the evidence of the readings.
 * A cause's probability is the share of the weight in which it takes part.
 *
 * Source: Bayes' rule over the stated model (causes.ts, evidence.ts).
 * Accuracy: no better than the model and its chances, which are assumptions.
 *   Nothing here is certain; a next measurement decides.
 */
import type { Decibels } from "../quantity";
import { CAUSES, METER_ERROR_DB, type Cause } from "./causes";
import { evidenceOf, type Effects, type Reading } from "./evidence";
import type { Doubt } from "./typedOutlet";
import { hypothesesOf, type Hypothesis } from "./hypotheses";
import { evidenceInWords } from "./evidenceInWords";

export interface HeadReadings {
  readonly head: string;
  readonly readings: readonly Reading[];
}

export interface Suspect {
  readonly cause: string;
  readonly where: string;
  /** 0 to 1, by the model stated. */
  readonly probability: number;
  readonly evidence: string;
  readonly next: string;
}

export const NOTHING = "nothing stands out";
const DOUBTFUL = "check the readings";
export const NOT_MEASURED = "nothing is measured yet";

/** Single causes of a head unit that are tried in pairs. */
const PAIRED = 16;
const LEAST_SHOWN = 0.01;
const MOST_SHOWN = 8;
/** Room is left for causes. */
const MOST_DOUBTS = 4;
const NO_EFFECTS: Effects = { columns: [], power: new Map(), dead: new Set() };

/**
 * @param heads the readings of each head unit's outlets
 * @param causes the causes with their chances and sizes
 * @param meterError ± dB within which the meter reads
 * @param doubts about readings that were left out; they come first
 * @returns causes, likeliest first
 */
export function diagnose(
  heads: readonly HeadReadings[],
  causes: readonly Cause[] = CAUSES,
  meterError: Decibels = METER_ERROR_DB,
  doubts: readonly Doubt[] = [],
): Suspect[] {
  const asked = doubtsShown(doubts);
  const measured = heads
    .map(({ head, readings }) => {
      const read = readings.filter(isRead);
      return {
        head,
        readings: read,
        partly: new Set(readings.filter((one) => !isRead(one)).flatMap(({ path }) => path)),
      };
    })
    .filter(({ readings }) => readings.length > 0);
  if (measured.length === 0) {
    if (asked.length > 0) return asked;
    return [
      {
        cause: NOT_MEASURED,
        where: "",
        probability: 0,
        evidence: "No outlet has a measured level.",
        next: "Measure every outlet at the lowest and the highest frequency, and its volts, and enter them.",
      },
    ];
  }
  const frequencies = measured.flatMap(({ readings }) => readings.flatMap((one) => one.frequencies));
  const low = frequencies.reduce((a, b) => Math.min(a, b), Infinity);
  const high = frequencies.reduce((a, b) => Math.max(a, b), 0);
  let clear = 1;
  const suspects = measured.flatMap(({ head, readings, partly }) => {
    const found = ranked(
      hypothesesOf(head, readings, causes, low, high, partly),
      evidenceOf(readings, meterError / Math.sqrt(3)),
    );
    clear *= found.clear;
    return found.suspects
      .filter(({ probability }) => probability >= LEAST_SHOWN)
      .map(({ hypothesis, probability }) => ({
        cause: hypothesis.cause.cause,
        where: hypothesis.where,
        probability,
        evidence: evidenceInWords(readings, hypothesis.at, head, { low, high }),
        next: hypothesis.cause.next,
      }));
  });
  const nothing: Suspect = {
    cause: NOTHING,
    where: "",
    probability: clear,
    evidence: "Chance that the readings hold no fault of this list, by the model and its assumptions.",
    next: "If a picture still breaks up, measure again with the receivers on, and look at quality beside level.",
  };
  const ranking = [nothing, ...suspects].sort((a, b) => b.probability - a.probability);
  return [...asked, ...ranking].slice(0, MOST_SHOWN);
}

/** A row for each; the last of many stands for the rest. */
function doubtsShown(doubts: readonly Doubt[]): Suspect[] {
  const rows = doubts.slice(0, doubts.length > MOST_DOUBTS ? MOST_DOUBTS - 1 : MOST_DOUBTS);
  const rest = doubts.slice(rows.length);
  const row = ({ where, message, next }: Doubt): Suspect => ({
    cause: DOUBTFUL,
    where,
    probability: 0,
    evidence: message,
    next,
  });
  if (rest.length === 0) return rows.map(row);
  const places = rest.map(({ where }) => where).filter((where) => where !== "");
  return [
    ...rows.map(row),
    row({
      where: "",
      message: `${rest.length} more readings to look at: ${places.slice(0, 12).join(", ")}${places.length > 12 ? " and others" : ""}.`,
      next: "Put right those above first, and look again.",
    }),
  ];
}

const isRead = ({ frequencies, volts }: Reading): boolean => frequencies.length > 0 || volts !== null;

function ranked(hypotheses: readonly Hypothesis[], evidence: (effects: Effects) => number) {
  const odds = (chance: number): number => Math.log(chance / (1 - chance));
  const singles = hypotheses
    .filter(({ chance }) => chance > 0)
    .map((hypothesis) => ({
      members: [hypothesis],
      log: evidence(hypothesis.effects) + odds(hypothesis.chance),
    }))
    .sort((a, b) => b.log - a.log);
  const none = evidence(NO_EFFECTS);
  // The best alone, and the best beside the best: a second fault may be worth nothing without the first.
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
  function pairOf(one: Hypothesis, other: Hypothesis) {
    return {
      members: [one, other],
      log: evidence(together(one.effects, other.effects)) + odds(one.chance) + odds(other.chance),
    };
  }
  const states = [{ members: [] as Hypothesis[], log: none }, ...singles, ...beside, ...pairs];
  const most = states.reduce((best, { log }) => Math.max(best, log), -Infinity);
  const total = states.reduce((sum, { log }) => sum + Math.exp(log - most), 0);
  const names = new Map(
    hypotheses.map((hypothesis) => [hypothesis, JSON.stringify([hypothesis.cause.cause, hypothesis.where])]),
  );
  const byName = new Map<string, { hypothesis: Hypothesis; probability: number }>();
  for (const { members, log } of states) {
    for (const hypothesis of members) {
      const key = names.get(hypothesis)!;
      const before = byName.get(key)?.probability ?? 0;
      byName.set(key, { hypothesis, probability: before + Math.exp(log - most) / total });
    }
  }
  return { clear: Math.exp(none - most) / total, suspects: [...byName.values()] };
}

const same = (a: Hypothesis, b: Hypothesis): boolean =>
  a.cause.cause === b.cause.cause && a.where === b.where;

const WORSE = { kept: 0, low: 1, lost: 2 } as const;

function together(a: Effects, b: Effects): Effects {
  const power = new Map(a.power);
  for (const [at, state] of b.power) {
    const before = power.get(at) ?? "kept";
    power.set(at, WORSE[state] > WORSE[before] ? state : before);
  }
  return { columns: [...a.columns, ...b.columns], power, dead: new Set([...a.dead, ...b.dead]) };
}
