/** What a trial has found so far, kept for the case that the pane is closed in the middle of it. */
import type { Trial } from "../../../pane/trial";

const KEY = "rigsheet.trial";

export function keepJournal(trial: Trial): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(trial));
  } catch {
    // Where nothing may be kept, a trial that is broken off leaves no page.
  }
}

export function closeJournal(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was kept.
  }
}

/** A trial that did not reach its end. */
export function readJournal(): Trial | undefined {
  try {
    const text = localStorage.getItem(KEY);
    return text === null ? undefined : (JSON.parse(text) as Trial);
  } catch {
    return undefined;
  }
}
