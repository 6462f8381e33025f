/**
 * The least number of reels for runs that may not be spliced. First fit in falling order and in shaken orders gives an
 * answer; where that is more than the total length over the reel needs, one reel fewer is tried in every way.
 */
const NOTHING = 1e-9;

function firstFit(order: readonly number[], reel: number, started: readonly number[]): number {
  const left: number[] = [...started];
  for (const length of order) {
    const at = left.findIndex((room) => room >= length - NOTHING);
    if (at >= 0) left[at]! -= length;
    else left.push(reel - length);
  }
  return left.length - started.length;
}

/** Whether falling lengths go onto what is started and so many reels; the search ends unproved after its last step. */
function fits(lengths: readonly number[], reel: number, reels: number, started: readonly number[]): boolean {
  const left = [...started, ...Array.from({ length: reels }, () => reel)];
  let steps = 3_000_000;
  let slack = left.reduce((a, b) => a + b, 0) - lengths.reduce((a, b) => a + b, 0);
  const shortest = lengths.at(-1)!;
  const place = (index: number): boolean => {
    if (index === lengths.length) return true;
    if (--steps < 0) throw new Error(`no proof for ${lengths.length} runs on ${reels} reels`);
    const length = lengths[index]!;
    const tried = new Set<number>();
    for (let at = 0; at < left.length; at++) {
      const room = left[at]!;
      const key = Math.round(room * 1e6);
      if (room < length - NOTHING || tried.has(key)) continue;
      tried.add(key);
      // What is left too short for any run is lost.
      const rest = room - length;
      const lost = rest < shortest - NOTHING ? rest : 0;
      if (lost > slack + NOTHING) continue;
      slack -= lost;
      left[at] = rest;
      if (place(index + 1)) return true;
      left[at] = room;
      slack += lost;
    }
    return false;
  };
  return place(0);
}

/**
 * @param started what is left on reels that are there already
 * @returns how many reels more; NaN where a run is longer than any
 */
export function leastReels(
  lengths: readonly number[],
  reel: number,
  started: readonly number[] = [],
): number {
  const most = Math.max(reel, ...started);
  if (lengths.some((length) => Number.isNaN(length) || length > most) || Number.isNaN(reel)) return NaN;
  if (lengths.length === 0) return 0;
  // Longer than a new reel, it must have a started one: such jobs are not drawn.
  if (lengths.some((length) => length > reel)) throw new Error("a run for a started reel alone");
  const falling = [...lengths].sort((a, b) => b - a);
  const rest = lengths.reduce((a, b) => a + b, 0) - started.reduce((a, b) => a + b, 0);
  const bound = Math.max(0, Math.ceil(rest / reel - NOTHING));
  let seed = 1;
  const random = (): number => (seed = (seed * 48271) % 2147483647) / 2147483647;
  // Of few runs the search in every way ends soon; of many only a shaken order can show that the bound is met.
  const rounds = lengths.length < 60 ? 300 : 20_000;
  let best = firstFit(falling, reel, started);
  for (let round = 0; round < rounds && best > bound; round++) {
    const order = falling
      .map((length) => ({ length, key: length * (1 + 0.6 * (random() - 0.5)) }))
      .sort((a, b) => b.key - a.key);
    best = Math.min(
      best,
      firstFit(
        order.map(({ length }) => length),
        reel,
        started,
      ),
    );
  }
  while (best > bound && fits(falling, reel, best - 1, started)) best--;
  return best;
}
