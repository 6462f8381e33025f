/**
 * The autosaved jobs of one desk: each job a log of its own (src/jobs/log.ts),
 * and a short log that says which of them is open. Putting another job in the
 * place of the open one puts the new one down first and then adds one line to
 * that log: the step either happened or did not, and the earlier job stays.
 */
import { randomUUID } from "node:crypto";
import path from "node:path";
import { Log, logNames, type Unreadable } from "../../../jobs/log";
import { FileTrouble } from "../../file/fileTrouble";
import { asTrouble, sweepParts } from "../../file/saveAtomically";
import { DiskStorage, realDisk, type StorageDisk } from "../../storage/diskStorage";
import { makeOwnFolder } from "../../storage/ownFolder";
import type { Change, DeskDocument, Saved, Snapshot } from "../protocol";
import { takeOver } from "./firstStore";
import { isDocument, type FileStamp, type HeldJob } from "./heldJob";
import { Refused } from "./requestBody";

/** How the names of jobs' logs begin. */
const JOB = "job-";
/** The version of what the logs hold. */
const VERSION = 2;

interface Versioned {
  readonly rigsheet: number;
}
interface JobBase extends Versioned {
  readonly document: DeskDocument;
  readonly savedAt: string;
  readonly stamp?: FileStamp;
  /** Of which it was made, so that it is found should the desk's own log be damaged. */
  readonly desk?: string;
}
/** What one step of the page, or a save into the job's file, added. */
interface JobEntry {
  readonly at: string;
  readonly changes?: readonly Change[];
  readonly stamp?: FileStamp;
}
/** Which job is open; null for none. */
interface DeskEntry {
  readonly job: string | null;
}
type DeskBase = Versioned & DeskEntry;

type JobLog = Log<JobBase, JobEntry>;
type DeskLog = Log<DeskBase, DeskEntry>;

const OTHER_TAB =
  "this job was changed in another tab or window. Reload this page to go on with that version; to keep this one as well, save it as .xlsx first";

const TAKEN_OVER =
  "another desk has this job now, since this one had not answered for a while. Start Rigsheet again: it opens that one; to keep what you see here, save it as .xlsx first";

interface StoreOptions {
  readonly disk?: StorageDisk;
  /** False once another program has taken the job over: nothing is written any more. */
  readonly isOwner?: () => boolean;
}

export class JobStore {
  private desk: DeskLog | undefined;
  private job_: JobLog | undefined;
  /** A job that was put down, and to which no line could be made to point yet. */
  private unpointed: JobLog | undefined;
  /** What the desk's log says may be something else than what is open here. */
  private isUnsure = false;
  /** The number of the last segment of a desk's log of which nothing could be read. */
  private deskAfter = 0;
  private queue: Promise<unknown> = Promise.resolve();
  /** What the user must be told of the last start. */
  readonly notices: string[] = [];

  private constructor(
    private readonly folder: string,
    private readonly name: string,
    private readonly storage: DiskStorage,
    private readonly isOwner: () => boolean,
  ) {}

  /**
   * @param folder made when it is missing
   * @param name of the desk within the folder: another for each file that is open
   */
  static async open(
    folder: string,
    name: string,
    { disk = realDisk, isOwner = () => true }: StoreOptions = {},
  ): Promise<JobStore> {
    const store = new JobStore(folder, name, new DiskStorage(folder, disk), isOwner);
    try {
      await makeOwnFolder(folder);
      await sweepParts(folder);
      await store.restore();
    } catch (error) {
      throw asTrouble(error, path.join(folder, name));
    }
    return store;
  }

  get job(): HeldJob | undefined {
    if (!this.job_) return undefined;
    const { base, entries } = this.job_.content;
    return {
      document: base.document,
      changes: entries.flatMap(({ changes = [] }) => changes),
      savedAt: entries.at(-1)?.at ?? base.savedAt,
      stamp: entries.findLast(({ stamp }) => stamp)?.stamp ?? base.stamp,
    };
  }

  /** The revision that the next change must follow. */
  get head(): string | null {
    const { job } = this;
    return job ? headOf(job) : null;
  }

  /** @param stamp of the file given at the start, for a job that is made from it */
  put(snapshot: Snapshot, stamp?: FileStamp): Promise<Saved> {
    return this.inTurn(async () => {
      // The answer to the first time may have been lost: every new document has a revision of its own.
      const open = this.job_?.content.base;
      if (open && snapshot.replaces && open.document.revisionId === snapshot.document.revisionId)
        return { savedAt: open.savedAt };
      if (snapshot.after !== this.head) throw new Refused(409, OTHER_TAB);
      const savedAt = new Date().toISOString();
      const base: JobBase = {
        rigsheet: VERSION,
        document: snapshot.document,
        savedAt,
        stamp: snapshot.fromFile ? stamp : snapshot.replaces ? undefined : this.job?.stamp,
        desk: this.name,
      };
      if (this.job_ && !snapshot.replaces) {
        await this.pointAgain();
        await this.job_.rebase(base);
        return { savedAt };
      }
      const keptAs = this.job_ && path.join(this.folder, this.job_.file);
      // A request that comes again must not put the job down once more each time.
      const { unpointed } = this;
      const isAgain = unpointed?.content.base.document.revisionId === snapshot.document.revisionId;
      const next: JobLog =
        unpointed && isAgain ? unpointed : await Log.begin(this.storage, `${JOB}${randomUUID()}`, base);
      this.unpointed = next;
      await this.point(next.name);
      this.unpointed = undefined;
      this.job_ = next;
      return { savedAt, keptAs };
    });
  }

  append(changes: readonly Change[]): Promise<Saved> {
    return this.inTurn(async () => {
      await this.pointAgain();
      const { job_, job } = this;
      if (!job_ || !job) throw new Refused(409, "the job is not known here yet. Reload this page");
      // A request repeated after its answer was lost brings changes that are here already.
      const known = new Set(job.changes.map((change) => change.nextRevisionId));
      const fresh = changes.filter((change) => !known.has(change.nextRevisionId));
      let head = headOf(job);
      for (const change of fresh) {
        if (change.serverRevisionId !== head) throw new Refused(409, OTHER_TAB);
        head = change.nextRevisionId;
      }
      const savedAt = new Date().toISOString();
      if (fresh.length > 0) await job_.append([{ at: savedAt, changes: fresh }]);
      return { savedAt };
    });
  }

  /** Which job is open; another name once another is. */
  get openName(): string | undefined {
    return this.job_?.name;
  }

  /** @throws Refused where another desk has taken the job over */
  mustOwn(): void {
    if (!this.isOwner()) throw new Refused(409, TAKEN_OVER);
  }

  /**
   * Notes the state of the file into which a job was just saved.
   * @param name of the job that was saved: while that went on, another may have taken its place
   */
  stampFile(stamp: FileStamp, name: string | undefined): Promise<void> {
    return this.inTurn(async () => {
      if (this.job_?.name !== name) return;
      await this.job_?.append([{ at: new Date().toISOString(), stamp }]);
    });
  }

  /**
   * Lets go of the open job.
   * @returns where it lies
   */
  forget(): Promise<string | undefined> {
    return this.inTurn(async () => {
      const { job_ } = this;
      if (!job_) return undefined;
      await this.point(null);
      this.job_ = undefined;
      return path.join(this.folder, job_.file);
    });
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = (): Promise<T> => {
      this.mustOwn();
      return work();
    };
    const result = this.queue.then(turn, turn);
    this.queue = result.catch(() => undefined);
    return result;
  }

  private async point(job: string | null): Promise<void> {
    // A line that could not be confirmed may stand there all the same.
    this.isUnsure = true;
    this.desk ??= await this.openDesk();
    if (this.desk) await this.desk.append([{ job }]);
    else
      this.desk = await Log.begin(
        this.storage,
        `desk-${this.name}`,
        { rigsheet: VERSION, job },
        this.deskAfter,
      );
    this.isUnsure = false;
  }

  /** Before anything is confirmed in the open job: the next start must find that one. */
  private async pointAgain(): Promise<void> {
    if (this.isUnsure) await this.point(this.job_?.name ?? null);
  }

  private async openDesk(): Promise<DeskLog | undefined> {
    const found = await Log.open<DeskBase, DeskEntry>(this.storage, `desk-${this.name}`, isDesk);
    if (found instanceof Log) return found;
    this.deskAfter = found.last;
    return undefined;
  }

  private async restore(): Promise<void> {
    const found = await Log.open<DeskBase, DeskEntry>(this.storage, `desk-${this.name}`, isDesk);
    if (found instanceof Log) this.desk = found;
    else this.deskAfter = found.last;
    const [damaged] = found.unreadable;
    if (!this.desk && !damaged) return this.takeOverFirst();
    let name: string | null | undefined;
    if (damaged) {
      this.notices.push(
        `Which job was open here last could not be read: that file is damaged, and kept as ${path.join(this.folder, damaged.keptAs)}. No job is lost; the one that was changed last is shown.`,
      );
      name = await this.newestJob();
      this.isUnsure = true;
    } else {
      const { base, entries } = this.desk!.content;
      name = (entries.at(-1) ?? base).job;
    }
    if (name === null || name === undefined) return;
    const job = await Log.open<JobBase, JobEntry>(this.storage, name, isJob);
    const isOpen = job instanceof Log;
    if (isOpen) this.job_ = job;
    for (const one of job.unreadable) this.notices.push(this.saidOf(one, isOpen));
    // Where a job is named, it was put down before that.
    if (!isOpen && job.unreadable.length === 0)
      this.notices.push(
        `The job that was open is gone from ${this.folder} (${name}). A fresh job is open instead.`,
      );
  }

  /** @returns of this desk's jobs that can be read the one that was changed last */
  private async newestJob(): Promise<string | undefined> {
    let newest: { name: string; at: string } | undefined;
    for (const name of await logNames(this.storage)) {
      if (!name.startsWith(JOB)) continue;
      const log = await Log.open<JobBase, JobEntry>(this.storage, name, isJob);
      if (!(log instanceof Log) || log.content.base.desk !== this.name) continue;
      const at = log.content.entries.at(-1)?.at ?? log.content.base.savedAt;
      if (!newest || at > newest.at) newest = { name, at };
    }
    return newest?.name;
  }

  private saidOf({ keptAs, whole, tail }: Unreadable, isOpen: boolean): string {
    const kept = path.join(this.folder, keptAs);
    if (whole)
      return isOpen
        ? `The newest autosaved state could not be read: its file is damaged. It is kept as ${kept}; the job is shown as it was before.`
        : `The autosaved job could not be read: its file is damaged. It is kept as ${kept}, and a fresh job is open instead.`;
    return tail?.cutShort === true
      ? `The autosave was cut short in its last ${tail.length} bytes; an edit that was being written then is not in it. What there is of it is kept as ${kept}.`
      : `The last ${tail?.length ?? 0} bytes of the autosave could not be read. They are kept as ${kept}; check the rows that were edited last.`;
  }

  /** A folder that the first version of this store wrote. */
  private async takeOverFirst(): Promise<void> {
    const found = await takeOver(this.folder, this.name);
    if (!found) return;
    if ("notice" in found) return void this.notices.push(found.notice);
    const { document, changes, savedAt, stamp } = found.job;
    const job: JobLog = await Log.begin(this.storage, `${JOB}${randomUUID()}`, {
      rigsheet: VERSION,
      document,
      savedAt,
      stamp,
      desk: this.name,
    });
    if (changes.length > 0) await job.append([{ at: savedAt, changes }]);
    await this.point(job.name);
    this.job_ = job;
    if (found.lost) this.notices.push(found.lost);
    await found.moveAway();
  }
}

const headOf = ({ document, changes }: HeldJob): string =>
  changes.at(-1)?.nextRevisionId ?? document.revisionId;

/** @throws FileTrouble for what a later version wrote: it must neither be read nor set aside as damaged */
function isOurs(value: unknown): value is Versioned {
  const version = (value as Partial<Versioned> | null)?.rigsheet;
  if (typeof version === "number" && version > VERSION)
    throw new FileTrouble(
      "This data folder was written by a newer Rigsheet. Start that one, or give another folder with --data; nothing here was changed.",
    );
  return version === VERSION;
}

const isDesk = (value: unknown): value is DeskBase => isOurs(value) && "job" in value;
const isJob = (value: unknown): value is JobBase =>
  isOurs(value) && isDocument((value as Partial<JobBase>).document);
