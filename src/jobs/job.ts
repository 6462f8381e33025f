/** One job: a log of its own, read into what it holds now. */
import type { ShelfLine } from "../workbooks/shelfLine";
import {
  headOf,
  isDocument,
  type Change,
  type JobContent,
  type JobDocument,
  type JobFile,
  type JobNotes,
  type JobState,
  type RevisionNote,
} from "./content";
import { Log, type Unopened, type Unreadable } from "./log";
import { Newer, Refusal } from "./refusal";
import type { Storage } from "./storage";
import { isTrail, trailFrom } from "./trail";

/** The version of what the logs hold; the one before, without notes, is read too. */
export const VERSION = 3;
const OLDEST = 2;

export interface Versioned {
  readonly rigsheet: number;
}

interface JobBase extends Versioned {
  readonly document: JobDocument;
  readonly changes?: readonly Change[];
  readonly savedAt: string;
  readonly notes?: JobNotes;
  /** What it went through up to here ({@link trailFrom}); absent where nothing was put down anew yet. */
  readonly trail?: readonly string[];
  /** Of version 2: the desk that had it open, whose name came from its file's path; a stamp where it had one. */
  readonly desk?: string;
  readonly stamp?: object;
}

interface JobEntry {
  readonly at: string;
  readonly changes?: readonly Change[];
  readonly notes?: NotesChange;
}

/** What of a job's notes is another; a file of null lets go of it. */
export interface NotesChange {
  readonly line?: ShelfLine;
  readonly state?: JobState;
  readonly file?: JobFile | null;
  readonly away?: boolean;
  readonly outside?: string;
  readonly revisions?: readonly RevisionNote[];
  /** Its owner has deleted it: what is left of it is to be dropped. */
  readonly deleted?: true;
}

/** What is told of one that is put down with its past. */
export interface Past {
  readonly savedAt?: string;
  readonly trail?: readonly string[];
}

const FRESH: JobNotes = { state: "draft", away: false, revisions: [] };

export const CHANGED_ELSEWHERE = "this job was changed in another window";

export class Job implements JobContent {
  private document_: JobDocument;
  private changes_: Change[];
  private readonly known: Set<string>;
  private notes_: JobNotes;
  private savedAt_: string;
  private deleted = false;
  private trail_: readonly string[];
  /** Since the trail was drawn last. */
  private readonly steps: string[] = [];

  private constructor(
    readonly id: string,
    private readonly log: Log<JobBase, JobEntry>,
  ) {
    const { base, entries } = log.content;
    this.document_ = base.document;
    this.changes_ = [...(base.changes ?? [])];
    this.savedAt_ = base.savedAt;
    this.trail_ = isTrail(base.trail) ? base.trail : [];
    if (this.trail_.length === 0) this.steps.push(base.document.revisionId, ...this.changes_.map(idOf));
    // Whether its file has changed since is not known.
    const file = base.stamp && { name: base.desk ?? "", mark: "" };
    this.notes_ = { ...FRESH, ...(file && { file }), ...base.notes };
    for (const { at, changes, notes } of entries) {
      if (changes) this.changes_.push(...changes);
      if (changes) this.steps.push(...changes.map(idOf));
      if (notes) this.take(notes);
      this.savedAt_ = at;
    }
    this.known = new Set(this.changes_.map(idOf));
  }

  /** @param notes what is told of it from the first */
  static async begin(
    storage: Storage,
    id: string,
    { document, changes }: JobContent,
    notes: Partial<JobNotes> = {},
    { savedAt = now(), trail }: Past = {},
    after = 0,
  ): Promise<Job> {
    const base: JobBase = {
      rigsheet: VERSION,
      document,
      ...(changes.length > 0 && { changes }),
      savedAt,
      notes: { ...FRESH, ...notes },
      ...(trail && { trail }),
    };
    return new Job(id, await Log.begin<JobBase, JobEntry>(storage, id, base, after));
  }

  /**
   * Puts down the log of one that lay elsewhere, byte for byte.
   * @param number of its segment: greater than that of any which is here
   */
  static async adopt(storage: Storage, id: string, number: number, segment: Uint8Array): Promise<Job> {
    return new Job(id, await Log.adopt<JobBase, JobEntry>(storage, id, number, segment, isJob));
  }

  /** @throws Newer for what a later version wrote */
  static async open(storage: Storage, id: string): Promise<Job | Unopened> {
    const log = await Log.open<JobBase, JobEntry>(storage, id, isJob);
    return log instanceof Log ? new Job(id, log) : log;
  }

  get document(): JobDocument {
    return this.document_;
  }
  get changes(): readonly Change[] {
    return this.changes_;
  }
  get notes(): JobNotes {
    return this.notes_;
  }
  get savedAt(): string {
    return this.savedAt_;
  }
  /** The revision that the next change must follow. */
  get head(): string {
    return headOf(this);
  }
  /** Its owner wants it gone, and an end came in between. */
  get isDeleted(): boolean {
    return this.deleted;
  }
  /** What it went through, from the beginning or as far back as it is kept; the last is what it is now. */
  get trail(): readonly string[] {
    this.trail_ = trailFrom(this.trail_, this.steps.splice(0));
    return this.trail_;
  }
  /** Whether anything in its log tells of a place on a disk. */
  get tellsOfPlaces(): boolean {
    const { base, entries } = this.log.content;
    return [base, ...entries].some(({ notes }) => notes?.file?.path !== undefined);
  }
  /** What could not be read when it was opened. */
  get unreadable(): readonly Unreadable[] {
    return this.log.unreadable;
  }
  /** The segment that holds it now. */
  get file(): string {
    return this.log.file;
  }

  /**
   * Adds changes; those that are here already, since an answer was lost, are passed over.
   * @throws Refusal where they follow another state than this one's
   */
  async append(changes: readonly Change[], line?: ShelfLine): Promise<string> {
    const fresh = changes.filter(({ nextRevisionId }) => !this.known.has(nextRevisionId));
    let { head } = this;
    for (const change of fresh) {
      if (change.serverRevisionId !== head) throw new Refusal("conflict", CHANGED_ELSEWHERE);
      head = change.nextRevisionId;
    }
    if (fresh.length > 0) {
      const at = now();
      await this.log.append([{ at, changes: fresh, ...(line && { notes: { line } }) }]);
      this.changes_.push(...fresh);
      this.steps.push(...fresh.map(idOf));
      for (const { nextRevisionId } of fresh) this.known.add(nextRevisionId);
      this.savedAt_ = at;
      if (line) this.take({ line });
    }
    return this.savedAt_;
  }

  /**
   * Puts the whole document in the place of it and its changes.
   * @param after the revision that it follows
   * @throws Refusal where that is not this one's
   */
  async fold(document: JobDocument, after: string | null, line?: ShelfLine): Promise<string> {
    // The answer to the first time may have been lost.
    if (after !== this.head && this.document_.revisionId === document.revisionId) return this.savedAt_;
    if (after !== this.head) throw new Refusal("conflict", CHANGED_ELSEWHERE);
    await this.put({ document, changes: [] }, { ...this.notes_, ...(line && { line }) });
    return this.savedAt_;
  }

  /**
   * Puts another content in the place of this one, in one step.
   * @param past where it comes from elsewhere
   */
  async put(content: JobContent, notes: JobNotes, past: Past = {}): Promise<void> {
    const { document, changes } = content;
    const head = headOf(content);
    const {
      savedAt = now(),
      trail = trailFrom(this.trail, [...(head === this.head ? [] : [head]), ...stepsOf(notes, this.notes_)]),
    } = past;
    await this.log.rebase({ rigsheet: VERSION, document, changes, savedAt, notes, trail });
    this.trail_ = trail;
    this.document_ = document;
    this.changes_ = [...changes];
    this.known.clear();
    for (const { nextRevisionId } of changes) this.known.add(nextRevisionId);
    this.notes_ = notes;
    this.savedAt_ = savedAt;
  }

  /** What is told of it, changed; its date stays, since its content does. */
  async note(change: NotesChange): Promise<void> {
    await this.log.append([{ at: this.savedAt_, notes: change }]);
    this.take(change);
  }

  private take({ file, deleted, ...rest }: NotesChange): void {
    this.steps.push(...stepsOf(rest, this.notes_));
    this.notes_ = {
      ...this.notes_,
      ...rest,
      ...(file !== undefined && { file: file ?? undefined }),
    };
    if (deleted) this.deleted = true;
  }
}

const idOf = ({ nextRevisionId }: Change): string => nextRevisionId;

/** What of a job's notes is a step of its own: how far it has come, and whether it is put away. */
const stepsOf = ({ state, away }: NotesChange, before: JobNotes): string[] => [
  ...(state !== undefined && state !== before.state ? [`state ${state}`] : []),
  ...(away !== undefined && away !== before.away ? [`away ${away}`] : []),
];

export const now = (): string => new Date().toISOString();

/** @throws Newer for what a later version wrote: it must neither be read nor set aside as damaged */
export function isVersioned(value: unknown): value is Versioned {
  const version = (value as Partial<Versioned> | null)?.rigsheet;
  if (typeof version === "number" && version > VERSION) throw new Newer();
  return typeof version === "number" && version >= OLDEST;
}

const isJob = (value: unknown): value is JobBase =>
  isVersioned(value) && isDocument((value as Partial<JobBase>).document);
