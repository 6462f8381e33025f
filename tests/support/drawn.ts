/** What jobs are drawn with: numbers of a seed, the same on every machine. */
export type Row = Record<string, number | string>;

export interface GeneratedJob {
  fields: Row;
  blocks: Record<string, Row[]>;
  /** What was done wrong on purpose, by name. */
  slips: string[];
}

/** Numbers from 0 to 1, the same for the same seed (mulberry32, public domain). */
export function drawn(seed: number) {
  let state = Math.imul(seed + 1, 0x9e3779b1) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  const pick = <T>(list: readonly T[]): T => list[whole(0, list.length - 1)]!;
  const shuffled = <T>(list: readonly T[]): T[] => {
    const copy = [...list];
    for (let i = copy.length - 1; i > 0; i--) {
      const j = whole(0, i);
      [copy[i], copy[j]] = [copy[j]!, copy[i]!];
    }
    return copy;
  };
  return {
    next,
    whole,
    pick,
    shuffled,
    chance: (share: number): boolean => next() < share,
    /** With so many decimals, as a person types it. */
    between: (least: number, most: number, decimals: number): number =>
      Number((least + next() * (most - least)).toFixed(decimals)),
  };
}
export type Drawn = ReturnType<typeof drawn>;

/** Empty rows between filled ones; none at the end, where they would not be rows. */
export const withGaps = (draw: Drawn, rows: readonly Row[]): Row[] =>
  rows.flatMap((row, index) => (index > 0 && draw.chance(0.15) ? [{}, row] : [row]));
