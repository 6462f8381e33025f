/** The check values of tests/fixtures/published, by topic. */
import checks from "../fixtures/published/checks.json";
import type { Basis } from "./heldTo";

export interface PublishedCheck {
  readonly topic: string;
  readonly id: string;
  readonly inputs: Record<string, unknown>;
  readonly expected: Record<string, unknown>;
  readonly tolerance: Record<string, number>;
  readonly source: string;
  readonly confirmed: boolean;
  readonly basis: string;
  readonly note: string;
}

export const publishedChecks = (topic: string): PublishedCheck[] =>
  (checks.checks as unknown as PublishedCheck[]).filter((check) => check.topic === topic);

/** One check by its id; a wrong id is a mistake in the test. */
export function publishedCheck(id: string): PublishedCheck {
  const found = (checks.checks as unknown as PublishedCheck[]).find((check) => check.id === id);
  if (!found) throw new Error(`no published check ${id}`);
  return found;
}

/** The file's own word for how a value was come by, as one of the words of `heldTo`. */
export function basisOf(check: PublishedCheck): Basis {
  if (check.basis.startsWith("published")) return check.confirmed ? "published" : "from memory";
  if (check.basis === "reference-library") return "reference library";
  if (check.basis === "practice") return "common practice, no source";
  return check.basis.startsWith("from memory") ? "from memory" : "derivation";
}
