/**
 * The autosaved jobs of one desk: each job a log of its own (src/jobs/log.ts),
 * and a short log that says which of them is open. Putting another job in the
 * place of the open one puts the new one down first and then adds one line to
 * that log: the step either happened or did not, and the earlier job stays.
 */
import { randomUUID } from "node:crypto";
import path from "node:path";
import { Log, type Unreadable } from "../../../jobs/log";
import { FileTrouble } from "../../file/fileTrouble";
import { sentenceFor, sweepParts } from "../../file/saveAtomically";
import { DiskStorage, realDisk, type StorageDisk } from "../../storage/diskStorage";
import { makeOwnFolder } from "../../storage/ownFolder";
import type { Change, DeskDocument, Saved, Snapshot } from "../protocol";
import { takeOver } from "./firstStore";
import { isDocument, type FileStamp, type HeldJob } from "./heldJob";
import { Refused } from "./requestBody";

/** The version of what the logs hold. */
const VERSION = 2;

interface Versioned {
  readonly rigsheet: number;
}
interface JobBase extends Versioned {
  readonly document: DeskDocument;
  readonly savedAt: string;
  readonly stamp?: FileStamp;
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
      if (error instanceof FileTrouble) throw error;
      throw new FileTrouble(sentenceFor(error, path.join(folder, name)), { cause: error });
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
    return job?.changes.at(-1)?.nextRevisionId ?? job?.document.revisionId ?? null;
  }

  /** @param stamp of the file given at the start, for a job that is made from it */
  put(snapshot: Snapshot, stamp?: FileStamp): Promise<Saved> {
    return this.inTurn(async () => {
      if (snapshot.after !== this.head) throw new Refused(409, OTHER_TAB);
      const savedAt = new Date().toISOString();
      const base: JobBase = {
        rigsheet: VERSION,
        document: snapshot.document,
        savedAt,
        stamp: snapshot.fromFile ? stamp : snapshot.replaces ? undefined : this.job?.stamp,
      };
      if (this.job_ && !snapshot.replaces) {
        await this.job_.rebase(base);
        return { savedAt };
      }
      const keptAs = this.job_ && path.join(this.folder, this.job_.file);
      const next: JobLog = await Log.begin(this.storage, `job-${randomUUID()}`, base);
      await this.point(next.name);
      this.job_ = next;
      return { savedAt, keptAs };
    });
  }

  append(changes: readonly Change[]): Promise<Saved> {
    return this.inTurn(async () => {
      const { job_, job } = this;
      if (!job_ || !job) throw new Refused(409, "the job is not known here yet. Reload this page");
      // A request repeated after its answer was lost brings changes that are here already.
      const known = new Set(job.changes.map((change) => change.nextRevisionId));
      const fresh = changes.filter((change) => !known.has(change.nextRevisionId));
      let head = this.head;
      for (const change of fresh) {
        if (change.serverRevisionId !== head) throw new Refused(409, OTHER_TAB);
        head = change.nextRevisionId;
      }
      const savedAt = new Date().toISOString();
      if (fresh.length > 0) await job_.append([{ at: savedAt, changes: fresh }]);
      return { savedAt };
    });
  }

  /** Notes the state of the file into which the job was just saved. */
  stampFile(stamp: FileStamp): Promise<void> {
    return this.inTurn(async () => {
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
      if (!this.isOwner()) throw new Refused(409, TAKEN_OVER);
      return work();
    };
    const result = this.queue.then(turn, turn);
    this.queue = result.catch(() => undefined);
    return result;
  }

  private async point(job: string | null): Promise<void> {
    if (this.desk) return this.desk.append([{ job }]);
    this.desk = await Log.begin(this.storage, `desk-${this.name}`, { rigsheet: VERSION, job });
  }

  private async restore(): Promise<void> {
    const desk = await this.opened(
      await Log.open<DeskBase, DeskEntry>(this.storage, `desk-${this.name}`, isDesk),
    );
    if (!desk) return this.takeOverFirst();
    this.desk = desk;
    const { base, entries } = desk.content;
    const name = (entries.at(-1) ?? base).job;
    if (name === null) return;
    this.job_ = await this.opened(await Log.open<JobBase, JobEntry>(this.storage, name, isJob));
    // Where a job is named, it was put down before that.
    if (!this.job_ && this.notices.length === 0)
      this.notices.push(
        `The job that was open is gone from ${this.folder} (${name}). A fresh job is open instead.`,
      );
  }

  private async opened<Base, Entry>(
    found: Log<Base, Entry> | { readonly unreadable: readonly Unreadable[] },
  ): Promise<Log<Base, Entry> | undefined> {
    const log = found instanceof Log ? found : undefined;
    for (const one of found.unreadable) this.notices.push(this.saidOf(one, log !== undefined));
    return log;
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
    const job: JobLog = await Log.begin(this.storage, `job-${randomUUID()}`, {
      rigsheet: VERSION,
      document,
      savedAt,
      stamp,
    });
    if (changes.length > 0) await job.append([{ at: savedAt, changes }]);
    await this.point(job.name);
    this.job_ = job;
    if (found.lost) this.notices.push(found.lost);
    await found.moveAway();
  }
}

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
