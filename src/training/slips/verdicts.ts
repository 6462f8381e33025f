/** Verdicts of a value within limits: drawn so that none is the usual one, and what they invite. */
import type { Earlier, Slip } from "../exercise";
import type { Random } from "../random";

export const VERDICTS = ["low", "ok", "high"] as const;
export type Verdict = (typeof VERDICTS)[number];

export const drawnVerdict = (random: Random): Verdict => random.pick(VERDICTS);

const OTHER_WAY_ROUND = { low: "high", ok: "ok", high: "low" } as const;

/**
 * @param verdict of a value
 * @param right the value that it should be of
 * @param others what may be compared instead
 */
export const verdictSlips = <N>(
  verdict: (value: number, numbers: N) => Verdict,
  right: (numbers: N, earlier: Earlier) => number,
  others: readonly { readonly name: string; readonly value: (numbers: N, earlier: Earlier) => number }[],
): Slip<N>[] => [
  {
    name: "low and high exchanged",
    wrong: (n, e) => OTHER_WAY_ROUND[verdict(right(n, e), n)],
  },
  { name: "limits not looked at", wrong: () => "ok", seldom: true },
  ...others.map(({ name, value }): Slip<N> => ({
    name,
    wrong: (n, e) => verdict(value(n, e), n),
    seldom: true,
  })),
  {
    name: "inside and outside of the limits exchanged",
    wrong: (n, e) => (verdict(right(n, e), n) === "ok" ? "low" : "ok"),
    seldom: true,
  },
];
