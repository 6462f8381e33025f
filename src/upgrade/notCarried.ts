/** What of an older workbook has no place in a new one, each with its cell, its value and the reason. */
export interface NotCarried {
  readonly sheet: string;
  /** Absent for what is no single cell. */
  readonly cell?: string;
  /** As a person reads it. */
  readonly value: string;
  /** Why, and what to do, in sentences. */
  readonly why: string;
  /** The value itself was carried over, and only the rest of it was not. */
  readonly valueCarried?: true;
}

/** An input whose content stands elsewhere in a new workbook, or is said by a blank. */
export interface StandsElsewhere {
  readonly sheet: string;
  readonly cell: string;
  /** As a person reads it. */
  readonly value: string;
  /** In a sentence. */
  readonly became: string;
}
