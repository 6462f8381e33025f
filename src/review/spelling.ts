/** How far two words lie apart, and which of a list was likely meant by one that is not on it. */
import { plainWord } from "./namedCells";

/** Longer ones are no names, and cost too much to compare. */
const MOST_LETTERS = 60;
/** Of a word's letters so many may be off; the rest names it. */
const PART_OFF = 4;
const MOST_OFF = 4;

/** @returns letters to change, add, leave out, or swap with the next, to make one word of the other; more than `most` where it is more */
export function lettersApart(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most || Math.max(a.length, b.length) > MOST_LETTERS) return most + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let row = 1; row <= a.length; row++) {
    const now = [row];
    for (let at = 1; at <= b.length; at++) {
      const changed = last[at - 1]! + (a[row - 1] === b[at - 1] ? 0 : 1);
      const isSwap = row > 1 && at > 1 && a[row - 1] === b[at - 2] && a[row - 2] === b[at - 1];
      now.push(
        Math.min(last[at]! + 1, now[at - 1]! + 1, changed, isSwap ? beforeLast[at - 2]! + 1 : Infinity),
      );
    }
    [beforeLast, last] = [last, now];
  }
  return last[b.length]!;
}

/**
 * @param beside what the rows beside it have: of several that lie as near it decides
 * @returns undefined where none is near, or several are
 */
export function nearest(
  word: string,
  among: Iterable<string>,
  beside: readonly string[] = [],
): string | undefined {
  const typed = plainWord(word);
  const most = Math.min(MOST_OFF, Math.max(1, Math.floor(typed.length / PART_OFF)));
  const offered = new Map([...among].map((one) => [plainWord(one), one] as const));
  let least = most + 1;
  let near: string[] = [];
  for (const one of offered.keys()) {
    const apart = lettersApart(typed, one, most);
    if (apart === 0 || apart > least || apart > most) continue;
    near = apart < least ? [one] : [...near, one];
    least = apart;
  }
  const known = new Set(beside.map(plainWord));
  const likely = near.length > 1 ? near.filter((one) => known.has(one)) : near;
  return likely.length === 1 ? offered.get(likely[0]!) : undefined;
}
