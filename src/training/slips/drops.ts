/** What volts at the end of a cable invite, supply − drop, beyond their figures. */
import type { Earlier, Slip } from "../exercise";

type Of<N> = (numbers: N, earlier: Earlier) => number;

/**
 * @param supply in V
 * @param drop in V
 * @param ohms of the loop in heat
 * @param amperes of the load
 */
export const dropSlips = <N>(supply: Of<N>, drop: Of<N>, ohms: Of<N>, amperes: Of<N>): Slip<N>[] => {
  const slip = (name: string, wrong: Of<N>, seldom = true): Slip<N> => ({ name, wrong, seldom });
  return [
    slip("drop given instead of the volts left", drop, false),
    slip("one way taken for the loop", (n, e) => supply(n, e) - drop(n, e) / 2, false),
    slip("there and back counted twice", (n, e) => supply(n, e) - 2 * drop(n, e), false),
    slip("drop less supply", (n, e) => drop(n, e) - supply(n, e)),
    slip("drop taken as percent of the supply", (n, e) => supply(n, e) * (1 - drop(n, e) / 100)),
    slip("ohms subtracted from volts", (n, e) => supply(n, e) - ohms(n, e)),
    slip("amperes subtracted from volts", (n, e) => supply(n, e) - amperes(n, e)),
    slip("supply divided by the drop", (n, e) => supply(n, e) / drop(n, e)),
    slip("supply multiplied by the drop", (n, e) => supply(n, e) * drop(n, e)),
    slip("ohms divided by amperes", (n, e) => supply(n, e) - ohms(n, e) / amperes(n, e)),
    slip("current squared, watts for volts", (n, e) => supply(n, e) - amperes(n, e) ** 2 * ohms(n, e)),
  ];
};
