import type { Again, Known } from "./knownAgain";

/** One review of a job, in short. */
export interface ReviewNote {
  /** As ISO 8601. */
  readonly at: string;
  readonly file: string;
  readonly quoted?: number;
  readonly shouldBe?: number;
  /** Of the program. */
  readonly version: string;
}

/** A review beside those before it. */
export interface KeptReview {
  /** By which it is settled. */
  readonly id: string;
  /** The one before; absent where this is the first. */
  readonly earlier?: ReviewNote;
  /** One for each that was noted. */
  readonly now: readonly Again[];
  readonly gone: readonly Known[];
}
