/** Where a command writes, so that tests can read along. */
export interface Console {
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
  /** A passing word on how far the work is, shown over the last one; absent where nobody watches. */
  readonly progress?: (text: string) => void;
  /** All of standard input. */
  readonly readInput: () => Promise<string>;
}

/** The exit codes of every command. */
export const EXIT = {
  ok: 0,
  /** Some answers are errors, some lines are bad, or some checks need a look. */
  look: 1,
  /** The command's words or its file could not be used. */
  unusable: 2,
} as const;

/** The command's words can't be used; the sentence goes to standard error. */
export class UsageTrouble extends Error {}
