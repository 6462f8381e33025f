/** What minutes of work invite: pieces·minutes/60·rate. */
import type { Slip } from "../exercise";

interface Work {
  readonly outlets: number;
  readonly minutes: number;
  readonly rate: number;
}

const AN_HOUR = 60;

export const minuteSlips = <N extends Work>(): Slip<N>[] => {
  const slip = (
    name: string,
    wrong: (all: number, work: N) => number | undefined,
    seldom = true,
  ): Slip<N> => ({
    name,
    wrong: (n) => wrong(n.outlets * n.minutes, n),
    seldom,
  });
  const broken = (all: number): boolean => all % AN_HOUR !== 0;
  return [
    slip("minutes taken for hours", (all, { rate }) => all * rate, false),
    slip(
      "hours and minutes written as a decimal",
      (all, { rate }) =>
        broken(all) ? (Math.floor(all / AN_HOUR) + (all % AN_HOUR) / 100) * rate : undefined,
      false,
    ),
    slip("one outlet only", (_, { minutes, rate }) => (minutes / AN_HOUR) * rate, false),
    slip("minutes divided by 100", (all, { rate }) => (all / 100) * rate),
    slip("hours cut to whole ones", (all, { rate }) =>
      broken(all) ? Math.floor(all / AN_HOUR) * rate : undefined,
    ),
    slip("hours rounded up to whole ones", (all, { rate }) =>
      broken(all) ? Math.ceil(all / AN_HOUR) * rate : undefined,
    ),
    slip("an hour for each outlet", (_, { outlets, rate }) => outlets * rate),
    slip("hours given instead of money", (all) => all / AN_HOUR),
    slip(
      "60 divided by the minutes",
      (_, { outlets, minutes, rate }) => ((outlets * AN_HOUR) / minutes) * rate,
    ),
    slip("divided by the rate instead of multiplied", (all, { rate }) => all / AN_HOUR / rate),
    slip("divided by 60 twice", (all, { rate }) => (all / AN_HOUR / AN_HOUR) * rate),
    slip(
      "outlets and minutes added",
      (_, { outlets, minutes, rate }) => ((outlets + minutes) / AN_HOUR) * rate,
    ),
    slip("minutes divided by 24", (all, { rate }) => (all / 24) * rate),
    slip(
      "each outlet rounded up to half an hour",
      (_, { outlets, minutes, rate }) => ((outlets * Math.ceil(minutes / 30)) / 2) * rate,
    ),
  ];
};
