import { JOB_STATES, type JobNotes, type RevisionNote } from "./content";
import { isJobId } from "./jobId";

/** As a revision's name takes it; another could name a place elsewhere. */
const KEY = /^[\da-z]{1,16}$/;
const LINE = ["number", "revision", "name", "customer", "date", "currency", "verdict"] as const;

/** Whether what came from elsewhere can be a job's notes: nothing in it is believed before. */
export function areNotes(value: unknown): value is JobNotes {
  if (!isObject(value)) return false;
  const { state, away, revisions, line, file, conflictOf, outside } = value as Partial<
    Record<keyof JobNotes, unknown>
  >;
  return (
    JOB_STATES.some((one) => one === state) &&
    typeof away === "boolean" &&
    isLine(line) &&
    areRevisions(revisions) &&
    maybeText(outside) &&
    (file === undefined ||
      (isObject(file) && isText(file.name) && isText(file.mark) && maybeText(file.path))) &&
    (conflictOf === undefined ||
      (isObject(conflictOf) && isJobId(conflictOf.job) && isText(conflictOf.after)))
  );
}

function areRevisions(value: unknown): value is readonly RevisionNote[] {
  if (!Array.isArray(value)) return false;
  let last = 0;
  const keys = new Set<unknown>();
  for (const one of value) {
    if (!isObject(one) || !isText(one.key) || !KEY.test(one.key) || keys.has(one.key)) return false;
    if (typeof one.number !== "number" || !Number.isSafeInteger(one.number) || one.number <= last)
      return false;
    if (![one.at, one.why, one.head].every(isText) || !isLine(one.line)) return false;
    last = one.number;
    keys.add(one.key);
  }
  return last <= MOST_NUMBER;
}

/** Nine digits, as in the name of a revision's log. */
const MOST_NUMBER = 999_999_999;

const isLine = (value: unknown): boolean =>
  value === undefined ||
  (isObject(value) &&
    LINE.every((name) => isText(value[name])) &&
    (value.standards === undefined || value.standards === true) &&
    (value.total === undefined || Number.isFinite(value.total)));

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === "string";
const maybeText = (value: unknown): boolean => value === undefined || isText(value);
