/** Why the keeper of jobs did not do what it was asked. */
export class Refusal extends Error {
  constructor(
    /** Something else has happened to the job since; there is no such thing; what is there can't be read; another program has all of them. */
    readonly kind: "conflict" | "missing" | "unreadable" | "taken",
    sentence: string,
  ) {
    super(sentence);
  }
}

/** A later version wrote it: it is left as it is. */
export class Newer extends Refusal {
  constructor() {
    super("unreadable", "This was written by a newer Rigsheet. Start that one; nothing here was changed.");
  }
}
