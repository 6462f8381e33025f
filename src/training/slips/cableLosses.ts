/** What the formula of a cable's loss invites, (k1·√f + k2·f + k0)/100·length, beyond its figures. */
import type { Earlier, Slip } from "../exercise";

interface Terms {
  readonly k1: number;
  readonly k2: number;
  readonly k0: number;
}

/**
 * @param loss of the run with other terms
 * @param frequency in MHz
 */
export const cableLossSlips = <N extends Terms>(
  loss: (numbers: N, earlier: Earlier) => number,
  frequency: (numbers: N) => number,
): Slip<N>[] => {
  const slip = (name: string, terms: (n: N, f: number) => Partial<Terms>, seldom = true): Slip<N> => ({
    name,
    wrong: (n, e) => loss({ ...n, ...terms(n, frequency(n)) }, e),
    seldom,
  });
  return [
    slip("root of the frequency left out", ({ k1 }, f) => ({ k1: k1 * Math.sqrt(f) }), false),
    slip("root taken of both frequencies", ({ k2 }, f) => ({ k2: k2 / Math.sqrt(f) })),
    slip("root taken of the whole sum", ({ k1, k2, k0 }, f) => ({
      k1: 0,
      k2: 0,
      k0: Math.sqrt(k1 * f + k2 * f + k0),
    })),
    slip("k1 and k2 exchanged", ({ k1, k2 }) => ({ k1: k2, k2: k1 })),
    slip("k2 and k0 left out", () => ({ k2: 0, k0: 0 })),
    {
      name: "k0 added once instead of by the length",
      wrong: (n, e) => loss({ ...n, k0: 0 }, e) + n.k0,
      seldom: true,
    },
  ];
};
