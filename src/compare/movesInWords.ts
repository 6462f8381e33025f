/** What is otherwise in levels, volts, user bands and checks, as headed lines. */
import type { Figure } from "../workbooks/shownFigure";
import type { DesignMoves } from "./designMoves";

export interface HeadedLines {
  readonly heading: string;
  /** What, before, after. */
  readonly rows: readonly (readonly [what: string, before: string, after: string])[];
  /** So many more are not told. */
  readonly more: number;
}

/** Longer lists are cut. */
const MOST = 12;
const ABSENT = "-";

const shown = (value: Figure, digits: number): string =>
  typeof value === "number" ? value.toFixed(digits) : (value ?? ABSENT);

/** @returns a heading for each kind of which something is otherwise */
export function movesInWords({ levels, volts, bands, checks }: DesignMoves): HeadedLines[] {
  const headed = <One>(
    heading: string,
    all: readonly One[],
    row: (one: One) => HeadedLines["rows"][number],
  ): HeadedLines[] =>
    all.length === 0
      ? []
      : [{ heading, rows: all.slice(0, MOST).map(row), more: Math.max(0, all.length - MOST) }];
  return [
    ...headed("Checks that fail now, or no longer", checks, ({ what, where, found, result }) => {
      const side = (word: string | null, figure: Figure): string =>
        word === null ? ABSENT : word === "ok" ? "ok" : `${word}, ${shown(figure, 2).replace(/\.00$/, "")}`;
      return [`${what} (${where})`, side(result.before, found.before), side(result.after, found.after)];
    }),
    ...headed("Head units: least volts in use, tuners of user bands", volts, (head) => {
      const side = (key: "before" | "after"): string =>
        head.verdict[key] === null
          ? ABSENT
          : `${withUnit(head.volts[key], 2, "V")}, ${shown(head.tuners[key], 0)} of ${shown(head.bands[key], 0)}, ${head.verdict[key]}`;
      return [head.head, side("before"), side("after")];
    }),
    ...headed("Outlets: level at the worst corner", levels, ({ outlet, level, verdict }) => {
      const side = (key: "before" | "after"): string =>
        verdict[key] === null ? ABSENT : `${withUnit(level[key], 1, "dBµV")}, ${verdict[key]}`;
      return [outlet, side("before"), side("after")];
    }),
    ...headed("Outlets: user bands", bands, ({ outlet, before, after }) => [
      outlet,
      before ?? ABSENT,
      after ?? ABSENT,
    ]),
  ];
}

const withUnit = (value: Figure, digits: number, unit: string): string =>
  typeof value === "number" ? `${shown(value, digits)} ${unit}` : shown(value, digits);

export const moreInWords = (more: number): string => `and ${more} more`;
