/**
 * All jobs in one place, each a log of its own with its frozen revisions beside
 * it. Nothing is taken away but what its owner deletes. Every step is one
 * committed write of one log; the list of all ({@link Catalogue}) follows it and
 * may be behind, since it is drawn anew from the logs.
 */
import type { ShelfLine } from "../workbooks/shelfLine";
import { Catalogue, type CatalogueLine, type ShelfEntry } from "./catalogue";
import {
  type Change,
  type JobContent,
  type JobDocument,
  type JobNotes,
  type JobState,
  type RevisionNote,
} from "./content";
import { bringIn, type BroughtIn } from "./bringIn";
import { partsOf, type CarriedJob } from "./carried";
import { CHANGED_ELSEWHERE, isVersioned, Job, now, type NotesChange, type Versioned } from "./job";
import { isJobId } from "./jobId";
import { Log, segmentsOf, type Unreadable } from "./log";
import { Reviews, type AskedReview, type Settling } from "./reviews";
import type { KeptReview } from "../review/again/keptReview";
import { frozenNow, readRevision, revisionsOf } from "./revision";
import { Refusal } from "./refusal";
import { unreadableInWords } from "./unreadableInWords";
import type { Settled } from "../review/again/knownAgain";
import type { Storage } from "./storage";

/** So many jobs are kept at hand; another is read when it is asked for. */
const AT_HAND = 8;
/** Reaching these, a job is frozen as it is: it is what somebody else has seen. */
const FREEZING = new Set<JobState>(["sent", "accepted"]);

/** A job as it is handed out. */
export interface HeldJob extends JobContent {
  readonly id: string;
  readonly savedAt: string;
  readonly notes: JobNotes;
  readonly note?: RevisionNote;
}

export class Shelf {
  private readonly atHand = new Map<string, Job>();
  private queue: Promise<unknown> = Promise.resolve();
  private reviews_: Reviews | undefined;
  /** What the user must be told of the last start. */
  readonly notices: string[] = [];

  private constructor(
    private readonly storage: Storage,
    private readonly catalogue: Catalogue,
  ) {}

  /** @throws whatever the storage throws: a folder that can't be read at all */
  static async open(storage: Storage): Promise<Shelf> {
    const shelf = new Shelf(storage, await openCatalogue(storage));
    await shelf.refresh();
    return shelf;
  }

  /** The job that was open last; the newest where that is not known. */
  get lastOpen(): string | undefined {
    const shown = this.list().filter(({ trouble, away }) => !trouble && !away);
    const { lastOpen } = this.catalogue;
    return shown.find(({ id }) => id === lastOpen)?.id ?? newest(shown)?.id;
  }

  list(): ShelfEntry[] {
    for (const job of this.atHand.values()) {
      const before = this.catalogue.of(job.id);
      // Two edits can have the same time, where a clock was set.
      if (before && (before.savedAt !== job.savedAt || before.line !== job.notes.line))
        this.catalogue.note({ line: { ...before, ...entryOf(job) } });
    }
    return [...this.catalogue.all].map(({ seen: _, ...entry }) => entry);
  }

  /**
   * The job that belongs to a file.
   * @param path of the file
   * @param firstName by which it was known before version 3
   */
  ofFile(path: string, firstName: string): string | undefined {
    const found = [...this.catalogue.all].filter(
      ({ file, trouble }) =>
        !trouble && file && (file.path ?? file.name) === (file.path === undefined ? firstName : path),
    );
    return newest(found)?.id;
  }

  /** Hands out a job, and remembers it as the one that is open. */
  open(id: string): Promise<HeldJob> {
    return this.inTurn(async () => {
      const held = heldOf(await this.job(id));
      if (this.catalogue.lastOpen !== id) {
        this.catalogue.note({ open: id });
        await this.catalogue.write();
      }
      return held;
    });
  }

  /** A job as it is now. */
  held(id: string): Promise<HeldJob> {
    return this.inTurn(async () => heldOf(await this.job(id)));
  }

  /** @returns undefined where that revision is none that it went through since it was last folded */
  changesSince(id: string, revision: string): Promise<readonly Change[] | undefined> {
    return this.inTurn(async () => {
      const { document, changes } = await this.job(id);
      if (revision === document.revisionId) return changes;
      const at = changes.findIndex(({ nextRevisionId }) => nextRevisionId === revision);
      return at < 0 ? undefined : changes.slice(at + 1);
    });
  }

  /**
   * Puts down a job; one of the same id and document is there already, where an answer was lost.
   * @returns when it was saved
   */
  create(id: string, content: JobContent, notes: Partial<JobNotes> = {}, savedAt = now()): Promise<string> {
    return this.inTurn(async () => {
      if (!isJobId(id)) throw new Refusal("missing", `${id} is no name of a job.`);
      const there = this.catalogue.of(id) && (await this.job(id));
      if (there && there.document.revisionId !== content.document.revisionId)
        throw new Refusal("conflict", "there is another job of this name");
      // The answer to the first time may have been lost, and more been typed since.
      if (there) await there.append(content.changes, notes.line);
      const job = there ?? (await Job.begin(this.storage, id, content, notes, { savedAt }));
      this.keepAtHand(job);
      this.catalogue.note({ open: id });
      await this.noted(job);
      return job.savedAt;
    });
  }

  append(id: string, changes: readonly Change[], line?: ShelfLine): Promise<string> {
    return this.inTurn(async () => (await this.job(id)).append(changes, line));
  }

  /** @param after the revision that the document follows */
  fold(id: string, document: JobDocument, after: string | null, line?: ShelfLine): Promise<string> {
    return this.inTurn(async () => {
      const job = await this.job(id);
      const savedAt = await job.fold(document, after, line);
      await this.noted(job);
      return savedAt;
    });
  }

  /** Says something of a job; one that is sent or accepted is frozen with it. */
  note(id: string, change: Pick<NotesChange, "state" | "away" | "file" | "outside">): Promise<ShelfEntry> {
    return this.inTurn(async () => {
      const unreadable = this.unreadable(id);
      if (unreadable && change.away !== undefined) {
        // Its own log can't be written; the list can.
        this.catalogue.note({ line: { ...unreadable, away: change.away } });
        await this.catalogue.write();
        return { ...unreadable, away: change.away };
      }
      const job = await this.job(id);
      const { state } = change;
      const revisions =
        state && state !== job.notes.state && FREEZING.has(state)
          ? await frozenNow(this.storage, job, state)
          : undefined;
      await job.note({ ...change, ...(revisions && { revisions }) });
      await this.noted(job);
      return entryOf(job);
    });
  }

  /** Keeps a job as it is now, for good; as it is, it is frozen once. */
  freeze(id: string, why: string): Promise<RevisionNote> {
    return this.inTurn(async () => this.freezeNow(await this.job(id), why));
  }

  /** A frozen state, to be looked at. */
  revision(id: string, number: number): Promise<HeldJob> {
    return this.inTurn(async () => {
      // A damaged job's frozen states may be sound.
      const damaged = this.unreadable(id);
      const notes = damaged ?? (await this.job(id)).notes;
      const found = await readRevision(this.storage, id, notes, number);
      return { id, savedAt: damaged?.savedAt ?? found.note.at, notes, ...found };
    });
  }

  /** Puts a frozen state in the place of what is there now, which is frozen before. */
  restore(id: string, number: number): Promise<HeldJob> {
    return this.inTurn(async () => {
      const job = await this.job(id);
      const { note, ...content } = await readRevision(this.storage, id, job.notes, number);
      await this.freezeNow(job, `before revision ${number} was restored`);
      await job.put(content, { ...job.notes, line: note.line ?? job.notes.line });
      await this.noted(job);
      return heldOf(job);
    });
  }

  /** Puts what stands in the job's file in the place of what is here, which is frozen before. */
  takeTheirs(
    id: string,
    document: JobDocument,
    after: string,
    mark: string,
    line?: ShelfLine,
  ): Promise<string> {
    return this.inTurn(async () => {
      const job = await this.job(id);
      const { file } = job.notes;
      if (job.document.revisionId === document.revisionId) return job.savedAt;
      if (after !== job.head) throw new Refusal("conflict", CHANGED_ELSEWHERE);
      await this.freezeNow(job, "before the file's was taken");
      await job.put(
        { document, changes: [] },
        { ...job.notes, ...(line && { line }), ...(file && { file: { ...file, mark, saving: undefined } }) },
      );
      await this.noted(job);
      return job.savedAt;
    });
  }

  /** Makes a job of its own of one, or of a frozen state of it; it is a draft and belongs to no file. */
  copy(id: string, to: string, number?: number): Promise<string> {
    return this.inTurn(async () => {
      const found =
        number === undefined
          ? heldOf(await this.job(id))
          : await readRevision(this.storage, id, this.unreadable(id) ?? (await this.job(id)).notes, number);
      const { document, changes } = found;
      const line = "note" in found && found.note ? found.note.line : (found as HeldJob).notes.line;
      if (!isJobId(to)) throw new Refusal("missing", `${to} is no name of a job.`);
      if (this.catalogue.of(to)) return to;
      const copy = await Job.begin(this.storage, to, { document, changes }, { line });
      this.keepAtHand(copy);
      await this.noted(copy);
      return to;
    });
  }

  /** Deletes one that was put away, for good. */
  delete(id: string): Promise<void> {
    return this.inTurn(async () => {
      const entry = this.catalogue.of(id);
      if (!entry) return;
      if (!entry.away)
        throw new Refusal("conflict", "Only what was put away can be deleted. Put it away first.");
      const { trouble } = entry;
      if (trouble) {
        for (const name of trouble.kept) await this.storage.drop(name);
        return await this.drop(id);
      }
      const job = await this.job(id);
      // From here on it is gone, whatever comes in between.
      await job.note({ deleted: true });
      await this.drop(id);
    });
  }

  /** Keeps what a review found of a job, whether it is on the shelf or not. */
  review(asked: AskedReview): Promise<KeptReview> {
    return this.inTurn(async () => (await this.reviews()).take(asked));
  }

  settle(settling: Settling): Promise<Settled | undefined> {
    return this.inTurn(async () => (await this.reviews()).settle(settling));
  }

  private async reviews(): Promise<Reviews> {
    return (this.reviews_ ??= await Reviews.open(this.storage));
  }

  /** A job with all that belongs to it, to be brought onto another shelf; one that can't be read with what there is of it. */
  carried(id: string): Promise<CarriedJob> {
    return this.inTurn(async () => {
      const found = this.atHand.get(id) ?? (await this.read(id).catch(unlessMissing));
      if (found) return { id, parts: await partsOf(this.storage, found) };
      const { trouble, line, state, away, file, revisions, conflictOf, outside, savedAt } =
        this.catalogue.of(id)!;
      const known = { line, state, away, file, revisions, conflictOf, outside, savedAt };
      const names = await this.storage.list();
      const own = [
        ...(segmentsOf(names).get(id) ?? []),
        ...names.filter((name) => name.startsWith(revisionsOf(id))),
      ];
      const parts: { name: string; bytes: Uint8Array }[] = [];
      for (const name of [...own, ...(trouble?.kept ?? [])]) {
        // What can't be had must not keep all else from going along.
        const bytes = await this.storage.read(name).catch(() => undefined);
        if (bytes) parts.push({ name, bytes });
      }
      return { id, parts, unreadable: { ...known, sentence: trouble?.sentence ?? "It can't be read." } };
    });
  }

  /** Takes a job of another shelf onto this one; nothing that is here is lost by it. */
  bringIn(carried: CarriedJob): Promise<BroughtIn> {
    return this.inTurn(() =>
      bringIn(
        {
          storage: this.storage,
          entry: (id) => this.catalogue.of(id),
          entries: () => this.catalogue.all,
          job: (id) => this.job(id),
          noted: (job) => {
            this.keepAtHand(job);
            return this.noted(job);
          },
          listedAnew: (id) => this.refreshOne(id),
          listed: async (line) => {
            this.catalogue.note({ line });
            if (!(await this.catalogue.write())) throw new Error("the list of jobs can't be written now");
          },
        },
        carried,
      ),
    );
  }

  private async freezeNow(job: Job, why: string): Promise<RevisionNote> {
    const revisions = await frozenNow(this.storage, job, why);
    if (revisions) {
      await job.note({ revisions });
      await this.noted(job);
    }
    return job.notes.revisions.find(({ head }) => head === job.head)!;
  }

  private async job(id: string): Promise<Job> {
    const found = this.atHand.get(id) ?? (await this.read(id));
    this.keepAtHand(found);
    return found;
  }

  /** Reads a job, and notes what can't be read. @throws Refusal where it can't */
  private async read(id: string): Promise<Job> {
    const before = this.catalogue.of(id);
    if (!before) throw new Refusal("missing", "There is no such job here any more.");
    // What is set aside stays so; all else may be there again by now, as a folder of a network is.
    if (before.trouble && before.trouble.kept.length > 0)
      throw new Refusal("unreadable", before.trouble.sentence);
    const job = await Job.open(this.storage, id);
    if (job instanceof Job) {
      for (const one of job.unreadable) this.notices.push(unreadableInWords(one, job.notes));
      if (before.trouble) await this.noted(job);
      return job;
    }
    await this.troubled(id, job.unreadable);
    throw new Refusal("unreadable", this.catalogue.of(id)!.trouble!.sentence);
  }

  /** @param sentence why it could not be tried; it is tried again the next time */
  private async troubled(id: string, unreadable: readonly Unreadable[], sentence?: string): Promise<void> {
    const before = this.catalogue.of(id);
    // What was set aside of it before is found by the list alone.
    const kept = [...new Set([...(before?.trouble?.kept ?? []), ...unreadable.map(({ keptAs }) => keptAs)])];
    const line: CatalogueLine = {
      ...(before ?? { state: "draft", away: false, revisions: [], savedAt: "" }),
      id,
      trouble: {
        sentence:
          sentence ??
          (kept.length > 0
            ? "This job can't be read: its file is damaged. What there is of it is kept; export it as it is."
            : "The file of this job is gone from its place."),
        kept,
      },
      seen: sentence === undefined ? await this.seen(id) : "",
    };
    this.catalogue.note({ line });
    await this.catalogue.write();
  }

  private unreadable(id: string): CatalogueLine | undefined {
    const entry = this.catalogue.of(id);
    return entry?.trouble && entry;
  }

  private keepAtHand(job: Job): void {
    this.atHand.delete(job.id);
    this.atHand.set(job.id, job);
    const [oldest] = this.atHand.keys();
    if (this.atHand.size <= AT_HAND || oldest === undefined) return;
    this.list();
    this.atHand.delete(oldest);
  }

  /** Brings the list up to date with a job. */
  private async noted(job: Job): Promise<void> {
    this.catalogue.note({ line: { ...entryOf(job), seen: await this.seen(job.id, job.file) } });
    await this.catalogue.write();
  }

  /** The newest segment of a job and its length; what was drawn by the same is up to date. */
  private async seen(id: string, file?: string): Promise<string> {
    const newestOne =
      file ??
      segmentsOf(await this.storage.list())
        .get(id)
        ?.at(-1);
    // A line without it is drawn anew the next time.
    const size = newestOne && (await this.storage.size(newestOne).catch(() => undefined));
    return size === undefined ? "" : `${newestOne} ${size}`;
  }

  /** Reads what the list does not know, or knows as it no longer is. */
  private async refresh(): Promise<void> {
    const segments = segmentsOf(await this.storage.list());
    const sizes = await this.storage.sizes?.();
    for (const [id, files] of segments) {
      if (!isJobId(id)) continue;
      const file = files.at(-1)!;
      const known = this.catalogue.of(id);
      const size = sizes ? sizes.get(file) : await this.storage.size(file);
      if (known && known.seen === `${file} ${size}`) continue;
      await this.refreshOne(id);
    }
    for (const { id, trouble } of [...this.catalogue.all])
      if (!segments.has(id) && !trouble) await this.troubled(id, []);
    await this.catalogue.write();
  }

  private async refreshOne(id: string): Promise<void> {
    try {
      const job = await Job.open(this.storage, id);
      if (!(job instanceof Job)) {
        await this.troubled(id, job.unreadable);
        this.notices.push(`A job can't be read: its file is damaged. It is kept, and stands among the jobs.`);
        return;
      }
      if (job.isDeleted) return await this.drop(id);
      for (const one of job.unreadable) this.notices.push(unreadableInWords(one, job.notes));
      this.catalogue.note({ line: { ...entryOf(job), seen: await this.seen(id, job.file) } });
    } catch (error) {
      await this.troubled(id, [], error instanceof Error ? error.message : String(error));
    }
  }

  /** The job's own log last: as long as it is there, this is done again; the list first, which would miss it. */
  private async drop(id: string): Promise<void> {
    this.atHand.delete(id);
    await (await this.reviews()).forget(id);
    this.catalogue.note({ gone: id });
    // The next start goes on with it.
    if (!(await this.catalogue.write())) return;
    const names = await this.storage.list();
    for (const name of names) if (name.startsWith(revisionsOf(id))) await this.storage.drop(name);
    for (const name of segmentsOf(names).get(id) ?? []) await this.storage.drop(name);
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.queue.then(work, work);
    this.queue = result.catch(() => undefined);
    return result;
  }
}

/** The list of all jobs; where version 2 wrote here, with the job that was open then. */
async function openCatalogue(storage: Storage): Promise<Catalogue> {
  const catalogue = await Catalogue.open(storage);
  if (!catalogue.isFresh || !segmentsOf(await storage.list()).has(FIRST_POINTER)) return catalogue;
  const log = await Log.open<Pointer, Pointer>(storage, FIRST_POINTER, isPointer).catch(() => undefined);
  const { base, entries } = log instanceof Log ? log.content : { base: undefined, entries: [] };
  const open = (entries.at(-1) ?? base)?.job;
  if (open) catalogue.note({ open });
  return catalogue;
}

/** Where version 2 kept which job is open. */
const FIRST_POINTER = "desk-job";
interface Pointer {
  readonly job: string | null;
}
const isPointer = (value: unknown): value is Pointer & Versioned => isVersioned(value) && "job" in value;

/** @throws what tells that there is no such job */
function unlessMissing(error: unknown): undefined {
  if (error instanceof Refusal && error.kind === "missing") throw error;
  return undefined;
}

const heldOf = ({ id, document, changes, savedAt, notes }: Job): HeldJob => ({
  id,
  document,
  changes: [...changes],
  savedAt,
  notes,
});

const entryOf = ({ id, savedAt, notes }: Job): ShelfEntry => ({ ...notes, id, savedAt });

const newest = <Entry extends ShelfEntry>(entries: readonly Entry[]): Entry | undefined =>
  entries.reduce<Entry | undefined>(
    (last, entry) => (last === undefined || entry.savedAt > last.savedAt ? entry : last),
    undefined,
  );
