/** A job on its way from one shelf to another: what lay there of it, read as a shelf reads its own. */
import type { ShelfEntry } from "./catalogue";
import { areNotes } from "./checkedNotes";
import { isChange, type JobContent, type RevisionNote } from "./content";
import { Job } from "./job";
import { segmentName, segmentsOf } from "./log";
import { readRevision, revisionName } from "./revision";
import { Newer } from "./refusal";
import { WrittenElsewhere, type Storage } from "./storage";

/** A thing that holds a part of a job, under the name that it had. */
export interface CarriedPart {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface CarriedJob {
  readonly id: string;
  readonly parts: readonly CarriedPart[];
  /** It could not be read there: what was last known of it, and why. */
  readonly unreadable?: LastKnown;
}

export interface LastKnown extends Omit<ShelfEntry, "id" | "trouble"> {
  readonly sentence: string;
}

/** A frozen state as it was carried. */
export interface CarriedRevision {
  readonly note: RevisionNote;
  /** Absent where it could not be read. */
  readonly content?: JobContent;
  /** Its own log, where that is one segment that holds it. */
  readonly segment?: Uint8Array;
}

export interface ReadJob {
  readonly job: Job;
  readonly revisions: readonly CarriedRevision[];
  /** The segment that holds the job, where all of it is whole. */
  readonly segment?: { readonly number: number; readonly bytes: Uint8Array };
  /** What could not be read beside it, in sentences. */
  readonly remarks: readonly string[];
}

/** Why a carried job can't be read. */
export interface Unread {
  /** Only what was damaged is worth keeping as it is. */
  readonly isDamaged: boolean;
  /** Goes on from "It was not brought in: ". */
  readonly why: string;
}

export async function readCarried({ id, parts }: CarriedJob): Promise<ReadJob | Unread> {
  const storage = new CarriedStorage(parts);
  try {
    const job = await Job.open(storage, id);
    if (!(job instanceof Job))
      return {
        isDamaged: true,
        why: parts.length === 0 ? "nothing of it is in the file" : "it is damaged in the file",
      };
    if (!areNotes(job.notes) || !isChain(job) || job.isDeleted || typeof job.savedAt !== "string")
      return FOREIGN;
    const revisions: CarriedRevision[] = [];
    const remarks =
      job.unreadable.length > 0
        ? ["A part of it could not be read in the file. Check the rows that were edited last."]
        : [];
    for (const note of job.notes.revisions) {
      const found = await readRevision(storage, id, job.notes, note.number).catch(() => undefined);
      const content = found && isChain(found) ? found : undefined;
      if (!content) remarks.push(`Its revision ${note.number} is missing in the file, or damaged there.`);
      const segments = segmentsOf(await storage.list()).get(revisionName(id, note)) ?? [];
      const segment = segments.length === 1 ? await storage.read(segments[0]!) : undefined;
      const { document, changes } = content ?? {};
      revisions.push({ note, ...(document && changes && { content: { document, changes }, segment }) });
    }
    const whole = parts.find(({ name }) => name === job.file);
    const number = numberOf(job.file);
    return {
      job,
      revisions,
      remarks,
      ...(whole && job.unreadable.length === 0 && { segment: { number, bytes: whole.bytes } }),
    };
  } catch (error) {
    return error instanceof Newer
      ? { isDamaged: false, why: "it was written by a newer Rigsheet; bring it in with that one" }
      : FOREIGN;
  }
}

const FOREIGN: Unread = { isDamaged: false, why: "it is not as Rigsheet writes a job" };

const numberOf = (segment: string): number => Number(/\.(\d+)\.log$/.exec(segment)?.[1]);

/** Whether each change follows the one before it: a shelf never writes others. */
function isChain({ document, changes }: JobContent): boolean {
  let head = document.revisionId;
  if (!Array.isArray(changes)) return false;
  return changes.every((change) => {
    const follows = isChange(change) && change.serverRevisionId === head;
    head = change.nextRevisionId;
    return follows;
  });
}

/** The parts as a storage in memory; what reading puts down in it is never kept. */
class CarriedStorage implements Storage {
  private readonly things: Map<string, Uint8Array>;

  constructor(parts: readonly CarriedPart[]) {
    this.things = new Map(parts.map(({ name, bytes }) => [name, bytes]));
  }

  list = async (): Promise<string[]> => [...this.things.keys()];
  read = async (name: string): Promise<Uint8Array | undefined> => this.things.get(name);
  size = async (name: string): Promise<number | undefined> => this.things.get(name)?.length;
  create = async (name: string, bytes: Uint8Array): Promise<void> => {
    if (this.things.has(name)) throw new WrittenElsewhere(name);
    this.things.set(name, bytes);
  };
  append = async (): Promise<void> => {
    throw new Error("What is carried is only read.");
  };
  moveAside = async (name: string, to: string): Promise<void> => {
    const bytes = this.things.get(name);
    if (bytes) this.things.set(to, bytes);
    this.things.delete(name);
  };
  drop = async (name: string): Promise<void> => void this.things.delete(name);
}

/** @returns the names that hold a readable job: its newest segment, and that of each revision */
export async function partsOf(storage: Storage, { id, file, notes }: Job): Promise<CarriedPart[]> {
  const parts: CarriedPart[] = [];
  const take = async (name: string): Promise<boolean> => {
    const bytes = await storage.read(name);
    if (bytes) parts.push({ name, bytes });
    return bytes !== undefined;
  };
  await take(file);
  for (const note of notes.revisions) {
    const name = revisionName(id, note);
    if (await take(segmentName(name, 1))) continue;
    const newest = segmentsOf(await storage.list())
      .get(name)
      ?.at(-1);
    if (newest) await take(newest);
  }
  return parts;
}
