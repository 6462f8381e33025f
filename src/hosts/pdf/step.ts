/**
 * Told between two pages, so that a screen can say how far the work is and stay alive meanwhile; what it throws ends
 * the work.
 *
 * @param done pages that are made
 * @param of how many there will be; undefined while nobody knows
 */
export type Step = (done: number, of: number | undefined) => Promise<void>;
