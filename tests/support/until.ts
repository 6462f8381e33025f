/** So long that only what never comes is told: a busy machine takes ten times as long as an idle one. */
const LONGEST_MS = 60_000;
const BETWEEN_MS = 50;
const MOST_SHOWN = 500;

/**
 * Waits until what is read holds.
 *
 * @returns what was read then
 * @throws what was read last, where it never holds
 */
export async function until<T>(read: () => T | Promise<T>, holds: (value: T) => boolean): Promise<T> {
  const end = Date.now() + LONGEST_MS;
  for (;;) {
    const value = await read();
    if (holds(value)) return value;
    if (Date.now() > end) throw new Error(`still ${JSON.stringify(value)?.slice(0, MOST_SHOWN)}`);
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_MS));
  }
}

export const isTrue = (value: boolean): boolean => value;
