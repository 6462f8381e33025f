/** What counts of boxes invite, and what rounding up does. */
import type { Earlier, Family, Slip } from "../exercise";

export const receivers: Family = (count) => [
  { name: "receivers left out", as: 0 },
  { name: "receivers counted twice", as: 2 * count, seldom: true },
];

const WORDS: Readonly<Record<number, string>> = { 1: "one", 2: "two", 3: "three", 4: "four", 5: "five" };

/** Recorders of so many tuners each. */
export const recorders =
  (tuners: 2 | 4): Family =>
  (count) => {
    const name = `${WORDS[tuners]!}-tuner recorder`;
    const each = (taken: number, seldom = false) => ({
      name: `${name} counted as ${WORDS[taken]!}`,
      as: (count * taken) / tuners,
      seldom,
    });
    return [
      each(1),
      ...(tuners === 4 ? [each(2)] : [each(4, true)]),
      each(tuners + 1, true),
      { name: `${name}s left out`, as: 0 },
    ];
  };

/**
 * Of a whole number that a division is rounded up to.
 *
 * @param divided what is rounded up
 */
export const roundingUp = <N>(divided: (numbers: N, earlier: Earlier) => number): Slip<N>[] => {
  const only =
    (round: (exact: number) => number | undefined): Slip<N>["wrong"] =>
    (numbers, earlier) => {
      const exact = divided(numbers, earlier);
      const rounded = round(exact);
      return rounded === Math.ceil(exact) ? undefined : rounded;
    };
  return [
    { name: "rounded down instead of up", wrong: only(Math.floor) },
    { name: "not rounded to a whole number", wrong: only((exact) => exact) },
    { name: "rounded to the nearest instead of up", wrong: only(Math.round), seldom: true },
    { name: "one more than needed", wrong: only((exact) => Math.ceil(exact) + 1), seldom: true },
    { name: "divided the wrong way round", wrong: only((exact) => 1 / exact), seldom: true },
  ];
};
