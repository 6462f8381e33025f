/** The time now, for the name of what is kept aside: no sign that some system forbids, and in the order of time. */
export const timeInName = (): string => new Date().toISOString().replace(/[:.]/g, "-");
