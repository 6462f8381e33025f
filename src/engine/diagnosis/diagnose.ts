/**
 * Likely causes of what a crew measured, ranked by how well each explains all
 * the readings of the job together.
 *
 * Below each head unit nothing, one cause or two may be wrong; the weight of
 * each is its chance before the readings times the evidence of the readings.
 * A cause's probability is the share of the weight in which it takes part.
 * What stands above several head units is looked at over all of them
 * (overHeadUnits.ts).
 *
 * Source: Bayes' rule over the stated model (causes.ts, evidence.ts).
 * Accuracy: no better than the model and its chances, which are assumptions.
 *   Nothing here is certain; a next measurement decides.
 */
import type { Decibels } from "../quantity";
import { CAUSES, METER_ERROR_DB, type Cause } from "./causes";
import { evidenceOf, type Reading } from "./evidence";
import { evidenceAtHeads, evidenceInWords } from "./evidenceInWords";
import { hypothesesOf, type Above } from "./hypotheses";
import { overHeadUnits, type MeasuredHead } from "./overHeadUnits";
import type { Doubt } from "./typedOutlet";

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

const LEAST_SHOWN = 0.01;
const MOST_SHOWN = 8;
/** Room is left for causes. */
const MOST_DOUBTS = 4;

/**
 * @param heads the readings of each head unit's outlets
 * @param causes the causes with their chances and sizes
 * @param meterError ± dB within which the meter reads
 * @param doubts about readings that were left out; they come first
 * @param above dishes, feeders and switches before others, with the head units that each reaches
 * @returns causes, likeliest first
 */
export function diagnose(
  heads: readonly HeadReadings[],
  causes: readonly Cause[] = CAUSES,
  meterError: Decibels = METER_ERROR_DB,
  doubts: readonly Doubt[] = [],
  above: readonly Above[] = [],
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
  const shared = above.filter((one) => one.heads.length > 1);
  const weighed = measured.map(({ head, readings, partly }): MeasuredHead => {
    const reaching = (some: readonly Above[]): Above[] => some.filter((one) => one.heads.includes(head));
    const own = reaching(above.filter((one) => one.heads.length === 1));
    return {
      head,
      readings,
      hypotheses: hypothesesOf(head, readings, causes, low, high, partly, own, reaching(shared)),
      evidence: evidenceOf(readings, meterError / Math.sqrt(3)),
    };
  });
  let clear = 1;
  const suspects = groupsOf(weighed, shared).flatMap((group) => {
    const found = overHeadUnits(group, shared, causes, low, high);
    clear *= found.clear;
    return joined([
      ...found.above.map(({ cause, where, probability, heads: reached }) => ({
        cause: cause.cause,
        where,
        probability,
        evidence: (): string =>
          evidenceAtHeads(
            reached.map((index) => group[index]!),
            { low, high },
          ),
        next: cause.next,
      })),
      ...found.below.flatMap((shares, index) =>
        [...shares.values()].map(({ hypothesis, probability }) => ({
          cause: hypothesis.cause.cause,
          where: hypothesis.where,
          probability,
          evidence: (): string =>
            evidenceInWords(group[index]!.readings, hypothesis.at, group[index]!.head, { low, high }),
          next: hypothesis.cause.next,
        })),
      ),
    ])
      .filter(({ probability }) => probability >= LEAST_SHOWN)
      .map((one): Suspect => ({ ...one, evidence: one.evidence() }));
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

interface Told extends Omit<Suspect, "evidence"> {
  readonly evidence: () => string;
}

/** A switch that feeds another is a place of its own and one above the other: the two are told together, as the likelier. */
function joined(all: readonly Told[]): Told[] {
  const places = new Map<string, Told>();
  for (const one of [...all].sort((a, b) => b.probability - a.probability)) {
    const key = JSON.stringify([one.cause, one.where]);
    const before = places.get(key);
    places.set(key, before ? { ...before, probability: before.probability + one.probability } : one);
  }
  return [...places.values()];
}

/** Head units that share something above them, with those that share something with them. */
function groupsOf(heads: readonly MeasuredHead[], shared: readonly Above[]): MeasuredHead[][] {
  const group = heads.map((_, index) => index);
  const rootOf = (index: number): number => (group[index] === index ? index : rootOf(group[index]!));
  for (const { heads: reached } of shared) {
    const [first, ...more] = heads.flatMap(({ head }, index) => (reached.includes(head) ? [index] : []));
    for (const one of more) group[rootOf(one)] = rootOf(first!);
  }
  const groups = new Map<number, MeasuredHead[]>();
  heads.forEach((head, index) => groups.set(rootOf(index), [...(groups.get(rootOf(index)) ?? []), head]));
  return [...groups.values()];
}
