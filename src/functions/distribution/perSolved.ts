import type { Solved } from "./solved";

/** @returns what is worked out of a distribution, once for all of its rows */
export function perSolved<T>(make: (solved: Solved) => T): (solved: Solved) => T {
  const made = new WeakMap<Solved, T>();
  return (solved) => {
    const before = made.get(solved);
    if (before !== undefined) return before;
    const fresh = make(solved);
    made.set(solved, fresh);
    return fresh;
  };
}
