/** A frozen state of a job: a log of its own with one record, whole before the job tells of it. */
import { isDocument, type JobContent, type JobNotes, type RevisionNote } from "./content";
import { isVersioned, now, VERSION, type Job, type Versioned } from "./job";
import { Log, segmentName } from "./log";
import { Refusal } from "./refusal";
import { isWrittenElsewhere, type Storage } from "./storage";

interface RevisionBase extends Versioned, JobContent {
  readonly note: RevisionNote;
}

/** How the names of all of a job's revisions begin. */
export const revisionsOf = (id: string): string => `revision-${id}-`;

/** Never that of another, even where one was put down and the job then could not tell of it. */
export const revisionName = (id: string, { number, key }: RevisionNote): string =>
  `${revisionsOf(id)}${number}-${key}`;

/**
 * Puts down the state that a job has now, unless it is one of its revisions
 * already; the job is to tell of it then.
 * @param revisions that the job will have
 * @returns them with this one among them; undefined where it is
 */
export async function frozenNow(
  storage: Storage,
  job: Job,
  why: string,
  revisions = job.notes.revisions,
): Promise<readonly RevisionNote[] | undefined> {
  if (revisions.some(({ head }) => head === job.head)) return undefined;
  const { document, changes, notes } = job;
  const note: RevisionNote = {
    number: (revisions.at(-1)?.number ?? 0) + 1,
    at: now(),
    key: Math.random().toString(36).slice(2, 10),
    why,
    head: job.head,
    ...(notes.line && { line: notes.line }),
  };
  // Whole before the job tells of it.
  const base = { rigsheet: VERSION, document, changes, note };
  await Log.begin<RevisionBase, never>(storage, revisionName(job.id, note), base);
  return [...revisions, note];
}

/**
 * Sees to it that a frozen state which lay elsewhere lies here; one that is damaged here is whole again then.
 * @param segment the state as it lay there, where its number and its key are the same here
 * @returns false where another state lies under that name, which stays
 */
export async function takenInRevision(
  storage: Storage,
  id: string,
  note: RevisionNote,
  { document, changes }: JobContent,
  segment?: Uint8Array,
): Promise<boolean> {
  const name = revisionName(id, note);
  const base: RevisionBase = { rigsheet: VERSION, document, changes, note };
  const putDown = (after: number): Promise<unknown> =>
    segment
      ? storage.create(segmentName(name, after + 1), segment)
      : Log.begin<RevisionBase, never>(storage, name, base, after);
  try {
    await putDown(0);
    return true;
  } catch (error) {
    if (!isWrittenElsewhere(error)) throw error;
  }
  const there = await Log.open<RevisionBase, never>(storage, name, isRevision);
  if (there instanceof Log) {
    const mine = there.content.base;
    return JSON.stringify([mine.document, mine.changes]) === JSON.stringify([document, changes]);
  }
  await putDown(there.last);
  return true;
}

/** @throws Refusal where there is none of that number, or it can't be read */
export async function readRevision(
  storage: Storage,
  id: string,
  { revisions }: Pick<JobNotes, "revisions">,
  number: number,
): Promise<JobContent & { readonly note: RevisionNote }> {
  const note = revisions.find((one) => one.number === number);
  if (!note) throw new Refusal("missing", `This job has no revision ${number}.`);
  const log = await Log.open<RevisionBase, never>(storage, revisionName(id, note), isRevision);
  if (!(log instanceof Log)) {
    const kept = log.unreadable.map(({ keptAs }) => keptAs).join(", ");
    throw new Refusal(
      "unreadable",
      `Revision ${number} can't be read: its file is damaged or gone${kept && `. It is kept as ${kept}`}. The job itself is not touched by it.`,
    );
  }
  const { document, changes } = log.content.base;
  return { document, changes, note };
}

const isRevision = (value: unknown): value is RevisionBase =>
  isVersioned(value) && isDocument((value as Partial<RevisionBase>).document);
