/**
 * The form in which names of cables, branches and head units are compared:
 * without case and without surplus blanks, as a spreadsheet's own look-ups do.
 */
export const nameKey = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();
