/** What is shown of anything that was thrown. */
export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The sentence of whoever keeps the jobs, or ours when it does not answer. */
export class ServerTrouble extends Error {
  constructor(
    sentence: string,
    /** As HTTP has it; 0 when there was no answer. */
    readonly status: number,
  ) {
    super(sentence);
  }
}
