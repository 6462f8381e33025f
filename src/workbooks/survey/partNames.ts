/**
 * Names of a survey held against the workbook's lists: capitals, blanks, marks, the plural and the order of words
 * do not part two names; anything else does, and then the nearest are offered, never put in.
 */
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import { asWord } from "../typed/plainText";

/** The names that a workbook has, by the keys of Rooms; a list that is not there, or is empty, judges nothing. */
export interface SurveyLists {
  readonly receiver?: readonly string[];
  readonly cable?: readonly string[];
  readonly plate?: readonly string[];
  readonly route?: readonly string[];
  readonly split?: readonly string[];
  readonly kind?: readonly string[];
  /** Head units, devices of the distribution and outlets that feed others. */
  readonly from?: readonly string[];
  /** Lists that the workbook has not been given yet: what they know is matched, what they do not is left. */
  readonly open?: readonly string[];
}

export type Matched =
  | { readonly name: string }
  /** None of the list is it; the nearest first. */
  | { readonly nearest: readonly string[] };

/** Words that people add to a name of the list, or leave out. */
const LOOSE: Readonly<Record<string, ReadonlySet<string>>> = {
  cable: new Set(["cable", "kabel", "coax", "type"]),
  plate: new Set(["plate", "wall", "wallplate", "type"]),
  receiver: new Set(["type"]),
};

const met = new WeakMap<readonly string[], Map<string, Matched>>();

/** The same few names stand on hundreds of lines: each is looked for once. */
export function matchName(key: string, text: string, list: readonly string[]): Matched {
  const known = met.get(list) ?? new Map<string, Matched>();
  met.set(list, known);
  const at = `${key}:${text}`;
  const found = known.get(at) ?? lookedFor(key, text, list);
  known.set(at, found);
  return found;
}

function lookedFor(key: string, text: string, list: readonly string[]): Matched {
  const wanted = asWord(text);
  const exact = list.find((name) => asWord(name) === wanted);
  if (exact !== undefined) return { name: exact };
  const tests: ((name: string) => string)[] = [
    (name) => wordsOf(name).join(" "),
    (name) => asWord(name).replace(/ /g, ""),
    (name) => [...wordsOf(name)].sort().join(" "),
    (name) =>
      [...wordsOf(name)]
        .filter((word) => !LOOSE[key]?.has(word))
        .sort()
        .join(" "),
  ];
  for (const test of tests) {
    const sought = test(text);
    const found = sought === "" ? [] : list.filter((name) => test(name) === sought);
    if (found.length === 1) return { name: found[0]! };
    if (found.length > 1) return { nearest: found };
  }
  // The functions of the sheets know these without a list.
  if (key === "receiver" && typeof tunersOfKind(text) === "number") return { name: text };
  return { nearest: nearestTo(text, list) };
}

const wordsOf = (name: string): string[] =>
  asWord(name)
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "")
    .map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word));

const MOST_OFFERED = 3;
const LEAST_LIKENESS = 0.4;

/** @returns names that have something in common with the text, the likest first */
export function nearestTo(text: string, list: readonly string[]): string[] {
  const words = wordsOf(text);
  return list
    .map((name) => ({ name, likeness: likeness(words, wordsOf(name)) }))
    .filter((one) => one.likeness >= LEAST_LIKENESS)
    .sort((a, b) => b.likeness - a.likeness)
    .slice(0, MOST_OFFERED)
    .map(({ name }) => name);
}

function likeness(one: readonly string[], other: readonly string[]): number {
  const whole = ratio(one.join(" "), other.join(" "));
  const best = one.map((word) => Math.max(0, ...other.map((its) => wordLikeness(word, its))));
  const mean =
    best.length === 0 ? 0 : best.reduce((sum, value) => sum + value, 0) / Math.max(best.length, other.length);
  return Math.max(whole, mean);
}

/** "rec" and "rcvr" begin like "receiver", or hold its letters in their order. */
function wordLikeness(word: string, other: string): number {
  if (word === other) return 1;
  if (word.length >= 2 && (other.startsWith(word) || isSkeleton(word, other))) return 0.8;
  const alike = ratio(word, other);
  return alike >= 0.6 ? alike : 0;
}

function isSkeleton(word: string, other: string): boolean {
  if (word.length < 3 || word[0] !== other[0]) return false;
  let at = 0;
  for (const letter of word) {
    at = other.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

const LONGEST_COMPARED = 60;

/** 1 for the same, 0 for nothing in common: by the edits from one to the other (Levenshtein 1966). */
function ratio(one: string, other: string): number {
  const [a, b] = [one.slice(0, LONGEST_COMPARED), other.slice(0, LONGEST_COMPARED)];
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return 1 - row[b.length]! / Math.max(1, a.length, b.length);
}
