/**
 * Inputs of earlier versions of the estimate that today's has no more, each with what says the same now. An input that
 * goes stays in this list for good, and no later one takes its name: what its cells hold is read by it.
 */
export const GIVEN_UP = {
  supplies_by:
    "What a receiver gives stands in Receivers on Parts; each other supply is bought with the job.",
  heads_at: "A supply further down is an inserter on Distribution; each receiver is asked by itself.",
  heads_shares: "Each head unit has a supply of its own, or its receivers or an inserter feed it.",
  heads_common: "The lead of a supply is the cable of its head unit.",
} as const;

export type GivenUp = keyof typeof GIVEN_UP;

export const isGivenUp = (name: string): name is GivenUp => name in GIVEN_UP;
