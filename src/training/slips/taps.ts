/** What the way through a tap invites beyond its figures: −10·log10(1 − 10^(−tap/10)) and the loss beyond the ideal. */
import type { Slip } from "../exercise";

/** What passes on, as a share of the power. */
const passing = (tap: number): number => 1 - 10 ** (-tap / 10);
const dB = (share: number): number => -10 * Math.log10(share);

/** In the tap's value, beside the loss beyond the ideal. */
const WRONG: readonly (readonly [string, (tap: number) => number])[] = [
  ["20·log10 for 10·log10", (tap) => 2 * dB(passing(tap))],
  ["natural logarithm for log10", (tap) => -10 * Math.log(passing(tap))],
  ["10 before the logarithm left out", (tap) => -Math.log10(passing(tap))],
  ["tap value divided by 20 instead of 10", (tap) => dB(passing(tap / 2))],
  ["tap value not divided by 10", (tap) => dB(passing(10 * tap))],
  ["power of e for a power of 10", (tap) => dB(1 - Math.exp(-tap / 10))],
  ["1 minus left out, share of the branch taken", (tap) => tap],
  ["tap value taken as percent", (tap) => dB(1 - tap / 100)],
];

export const tapSlips: readonly Slip<{ readonly tap: number; readonly through: number }>[] = [
  { name: "tap value taken for the way through", wrong: ({ tap }) => tap },
  { name: "what the branch takes left out", wrong: ({ through }) => through },
  {
    name: "minus before the logarithm left out",
    wrong: ({ tap, through }) => through - dB(passing(tap)),
  },
  ...WRONG.map(([name, of]) => ({
    name,
    wrong: ({ tap, through }: { readonly tap: number; readonly through: number }) => of(tap) + through,
    seldom: true,
  })),
  { name: "loss beyond the ideal taken from the tap value", wrong: (n) => n.tap - n.through, seldom: true },
  { name: "share given instead of its decibels", wrong: ({ tap }) => passing(tap), seldom: true },
  { name: "share in percent given", wrong: ({ tap }) => 100 * passing(tap), seldom: true },
  {
    name: "decibels multiplied instead of added",
    wrong: ({ tap, through }) => dB(passing(tap)) * through,
    seldom: true,
  },
];
