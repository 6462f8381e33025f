/** A review's findings with what is known of them from before. */
import type { Finding } from "../finding";
import type { KeptReview } from "./keptReview";
import type { Again, Settled, State } from "./knownAgain";

export interface Told {
  readonly finding: Finding;
  readonly again?: Again;
}

/** Those of a file, and what was kept of it. */
export interface Reviewed {
  readonly findings: readonly Finding[];
  readonly kept?: KeptReview;
}

const toldIn = ({ findings, kept }: Reviewed): Told[] =>
  findings.map((finding, index) => ({ finding, again: kept?.now[index] }));

/** What nobody has settled. */
export const openIn = (reviewed: Reviewed): Told[] =>
  toldIn(reviewed).filter(({ again }) => again?.state !== "settled");

export const settledIn = (reviewed: Reviewed): { readonly finding: Finding; readonly settled: Settled }[] =>
  toldIn(reviewed).flatMap(({ finding, again }) =>
    again?.state === "settled" && again.settled ? [{ finding, settled: again.settled }] : [],
  );

/** @param settled absent, or null, where it may not stay any more */
export const afterSettling = ({ key, since }: Again, settled: Settled | null | undefined): Again =>
  settled ? { key, since, state: "settled", settled } : { key, since, state: "still" };

/** Where there was a review before. */
const WORDS: Readonly<Partial<Record<State, string>>> = { new: "new", back: "back again" };

/** @returns the word for how a finding stands to the review before; undefined where there is nothing to say */
export const wordOf = ({ again }: Told, kept: KeptReview | undefined): string | undefined =>
  kept?.earlier && again ? WORDS[again.state] : undefined;

/** @param at as ISO 8601 */
export const dayOf = (at: string): string => at.slice(0, "2026-01-01".length);
