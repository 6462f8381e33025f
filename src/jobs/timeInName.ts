/** A time, as `toISOString` writes it, for a name: no sign that some system forbids, and in the order of time. */
export const asInName = (at: string): string => at.replace(/[:.]/g, "-");

/** The time now, for the name of what is kept aside. */
export const timeInName = (): string => asInName(new Date().toISOString());
