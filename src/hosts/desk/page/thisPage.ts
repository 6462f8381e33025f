/** By which the desk's server knows this page, and its browser. */
import { uuid } from "./uuid";

const KEY = "rigsheet.browser";

/** A browser that keeps nothing is another one with each page: it may be told of itself once. */
function browser(): string {
  const made = uuid();
  try {
    const kept = localStorage.getItem(KEY);
    if (kept !== null) return kept;
    localStorage.setItem(KEY, made);
  } catch {
    // As above.
  }
  return made;
}

export const thisPage = `${uuid()} ${browser()}`;
