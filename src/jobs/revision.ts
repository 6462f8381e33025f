/** A frozen state of a job: a log of its own with one record, whole before the job tells of it. */
import { isDocument, type JobContent, type JobNotes, type RevisionNote } from "./content";
import { isVersioned, VERSION, type Versioned } from "./job";
import { Log } from "./log";
import { Refusal } from "./refusal";
import type { Storage } from "./storage";

interface RevisionBase extends Versioned, JobContent {
  readonly note: RevisionNote;
}

/** How the names of all of a job's revisions begin. */
export const revisionsOf = (id: string): string => `revision-${id}-`;

/** Never that of another, even where one was put down and the job then could not tell of it. */
const nameOf = (id: string, { number, key }: RevisionNote): string => `${revisionsOf(id)}${number}-${key}`;

export async function putDownRevision(
  storage: Storage,
  id: string,
  { document, changes }: JobContent,
  note: RevisionNote,
): Promise<void> {
  const base = { rigsheet: VERSION, document, changes, note };
  await Log.begin<RevisionBase, never>(storage, nameOf(id, note), base);
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
  const log = await Log.open<RevisionBase, never>(storage, nameOf(id, note), isRevision);
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
