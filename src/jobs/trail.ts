/**
 * What a job went through, as a chain of short codes: each stands for a step
 * and all before it. So of two that lay in two places, one whose last code the
 * other has passed is an earlier state of the other, and nothing that was done
 * in it is missing there. A clock tells no such thing.
 */
const OFFSET = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;
const CODE = /^[\da-f]{12}$/;
const CODE_LENGTH = 12;
/** So many steps back it is known; who parted earlier counts as changed on both sides. */
const MOST = 4_000;

const encoder = new TextEncoder();

/**
 * FNV-1a, 64 bits (draft-eastlake-fnv).
 * @returns 16 hexadecimal digits
 */
export function fnv1a(text: string): string {
  let state = OFFSET;
  for (const byte of encoder.encode(text)) state = BigInt.asUintN(64, (state ^ BigInt(byte)) * PRIME);
  return state.toString(16).padStart(16, "0");
}

/** @returns the trail with the steps behind it */
export function trailFrom(before: readonly string[], steps: readonly string[]): readonly string[] {
  if (steps.length === 0) return before;
  const trail = [...before];
  for (const step of steps) trail.push(fnv1a(`${trail.at(-1) ?? ""} ${step}`).slice(0, CODE_LENGTH));
  return trail.slice(-MOST);
}

export const isTrail = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((code) => typeof code === "string" && CODE.test(code));

export type Relation = "same" | "ours is newer" | "theirs is newer" | "both changed";

export function relationOf(ours: readonly string[], theirs: readonly string[]): Relation {
  const [our, their] = [ours.at(-1)!, theirs.at(-1)!];
  if (our === their) return "same";
  if (ours.includes(their)) return "ours is newer";
  return theirs.includes(our) ? "theirs is newer" : "both changed";
}
