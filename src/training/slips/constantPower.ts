/** What the volts of a load of constant power invite: V = (Vs + √(Vs² − 4·P·R))/2. */
import type { Earlier, Slip } from "../exercise";

interface Supply {
  readonly supply: number;
  readonly watts: number;
  /** Of the head unit that keeps its current. */
  readonly milliamperes: number;
}

export const constantPowerSlips = <N extends Supply>(
  ohms: (numbers: N, earlier: Earlier) => number,
): Slip<N>[] => {
  const slip = (
    name: string,
    volts: (vs: number, p: number, r: number) => number,
    seldom = true,
  ): Slip<N> => ({
    name,
    wrong: (n, e) => volts(n.supply, n.watts, ohms(n, e)),
    seldom,
  });
  const withCurrent = (name: string, volts: (vs: number, amperes: number, r: number) => number): Slip<N> => ({
    name,
    wrong: (n, e) => volts(n.supply, n.milliamperes / 1000, ohms(n, e)),
    seldom: true,
  });
  const root = (vs: number, p: number, r: number, four = 4): number => Math.sqrt(vs * vs - four * p * r);
  return [
    // The lower root is what the cable takes.
    slip(
      "the lower root taken or drop given instead of the volts left",
      (vs, p, r) => (vs - root(vs, p, r)) / 2,
      false,
    ),
    slip("4 left out", (vs, p, r) => (vs + root(vs, p, r, 1)) / 2, false),
    slip("current reckoned with the supply's volts", (vs, p, r) => vs - (p / vs) * r, false),
    slip("watts taken for amperes", (vs, p, r) => vs - p * r, false),
    slip("root left out", (vs, p, r) => (vs + vs * vs - 4 * p * r) / 2, false),
    slip("2 taken for 4", (vs, p, r) => (vs + root(vs, p, r, 2)) / 2),
    slip("not halved", (vs, p, r) => vs + root(vs, p, r)),
    slip("only the root halved", (vs, p, r) => vs + root(vs, p, r) / 2),
    slip("added under the root instead of subtracted", (vs, p, r) => (vs + root(vs, p, r, -4)) / 2),
    slip("volts of the supply not squared", (vs, p, r) => (vs + Math.sqrt(vs - 4 * p * r)) / 2),
    slip("only the root given", root),
    slip("root of power times resistance given", (_, p, r) => Math.sqrt(p * r)),
    withCurrent("current of 3 taken for the power", (vs, i, r) => (vs + root(vs, i, r)) / 2),
    withCurrent("current of 3 kept instead of the power", (vs, i, r) => vs - i * r),
  ];
};
