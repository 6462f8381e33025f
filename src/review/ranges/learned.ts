/**
 * Ranges learned from accepted quotes: of each figure the middle and what
 * nearly all quotes had. One that stands far out of the others is left out of
 * the range, and told. Only the last revision of a quote counts.
 */
import type { Row } from "../../workbooks/standards/rows";
import { median } from "../median";
import type { Measure } from "./measures";

export interface Learned {
  readonly name: string;
  readonly what: string;
  readonly of: string;
  readonly unit: string;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly quotes: number;
  /** Learning leaves it as it is. */
  readonly keep?: true;
}

export interface Accepted {
  /** The file. */
  readonly called: string;
  /** Its number, or its file's name where it has none. */
  readonly number: string;
  readonly revision: number;
  readonly measures: readonly Measure[];
}

export interface OutOfRange {
  readonly called: string;
  readonly measure: Measure;
  readonly range: Learned;
}

/** Deviation from the median over the median deviation, scaled as for a normal spread (1.4826). */
const MAD_TO_SIGMA = 1.4826;
const FARTHEST = 3.5;
/** Prices of one part differ by so much between one list and the next; common practice, no source. */
const LEAST_SPREAD = Math.log(1.1);

/** @returns the last revision of each quote */
export function lastOfEach(quotes: readonly Accepted[]): Accepted[] {
  const last = new Map<string, Accepted>();
  for (const one of quotes) {
    const known = last.get(one.number);
    if (!known || one.revision >= known.revision) last.set(one.number, one);
  }
  return [...last.values()];
}

/** @param quotes each once: {@link lastOfEach} */
export function learn(quotes: readonly Accepted[]): { ranges: Learned[]; outside: OutOfRange[] } {
  const groups = new Map<string, { called: string; measure: Measure }[]>();
  for (const { called, measures } of quotes) {
    const seen = new Set<string>();
    for (const measure of measures) {
      const key = keyOf(measure);
      // A row that stands twice in one job is one quote's word.
      if (seen.has(key)) continue;
      seen.add(key);
      groups.set(key, [...(groups.get(key) ?? []), { called, measure }]);
    }
  }
  const outside: OutOfRange[] = [];
  const ranges = [...groups.values()].map((group): Learned => {
    const values = group.map(({ measure }) => measure.value);
    const isLog = values.every((value) => value > 0);
    const scaled = values.map((value) => (isLog ? Math.log(value) : value));
    const middle = median(scaled);
    const deviation = MAD_TO_SIGMA * median(scaled.map((value) => Math.abs(value - middle)));
    const spread = isLog ? Math.max(deviation, LEAST_SPREAD) : deviation;
    const isIn = scaled.map(
      (value) =>
        group.length < FEWEST_TO_TELL || spread === 0 || Math.abs(value - middle) <= FARTHEST * spread,
    );
    const kept = values.filter((_, index) => isIn[index]);
    const [{ measure }] = group as [(typeof group)[number]];
    const { name, what, of, unit } = measure;
    const range: Learned = {
      name,
      what,
      of,
      unit,
      low: Math.min(...kept),
      middle: median(kept),
      high: Math.max(...kept),
      quotes: group.length,
    };
    for (const [index, { called, measure: own }] of group.entries())
      if (!isIn[index] && !name.startsWith("job_")) outside.push({ called, measure: own, range });
    return range;
  });
  return { ranges, outside };
}

/** Of fewer values none stands out. */
const FEWEST_TO_TELL = 4;

export const keyOf = ({ name, of, unit }: Pick<Measure, "name" | "of" | "unit">): string =>
  JSON.stringify([name, of.trim().toLowerCase(), unit]);

/** Fewer quotes make no range. */
export const FEWEST_QUOTES = 3;
/** From so many on, a figure outside is doubtful; before, worth knowing. */
export const ENOUGH_QUOTES = 5;
/** Prices rise, and minutes are not counted in seconds: so much beyond the range is nothing (common practice, no source). */
const BEYOND = 1.25;
/** A whole job differs from others by more than its parts do. */
const BEYOND_WHOLE = 1.5;
/** Logarithms and temperatures have no factor. */
const LINEAR: ReadonlySet<string> = new Set(["dBµV", "dBW", "°C", "deg", "% of an average year"]);
const BEYOND_LINEAR = 3;

/** @returns the range with what lies just beyond it, within which nothing is said */
export function allowed({ name, unit, low, high }: Learned): { low: number; high: number } {
  if (LINEAR.has(unit) || low <= 0) return { low: low - BEYOND_LINEAR, high: high + BEYOND_LINEAR };
  const factor = name.startsWith("job_") ? BEYOND_WHOLE : BEYOND;
  return { low: low / factor, high: high * factor };
}

const number = (value: number | string | undefined): number | undefined =>
  typeof value === "number" ? value : undefined;

/** The rows of the sheet Ranges; one that a person left half filled says nothing. */
export const learnedRows = (rows: readonly Row[]): Learned[] =>
  rows.flatMap(({ known, what, of, unit, low, middle, high, quotes, keep }) => {
    const [from, to] = [number(low), number(high)];
    if (known === undefined || from === undefined || to === undefined || from > to) return [];
    return [
      {
        name: String(known),
        what: String(what ?? ""),
        of: String(of ?? ""),
        unit: String(unit ?? ""),
        low: from,
        middle: number(middle) ?? (from + to) / 2,
        high: to,
        quotes: number(quotes) ?? 0,
        ...(keep === "yes" && { keep }),
      } as Learned,
    ];
  });
