/**
 * The autosaved job: a snapshot of the whole document, written atomically, and
 * a journal of the changes since, to which each edit adds one line. The journal
 * makes an edit safe at once whatever the size of the job; the snapshot keeps
 * the journal short.
 */
import { existsSync } from "node:fs";
import { mkdir, open, readFile, readdir, rename, rm, stat, type FileHandle } from "node:fs/promises";
import path from "node:path";
import { FileTrouble } from "../../file/fileTrouble";
import { sentenceFor, sweepParts, type SaveOptions } from "../../file/saveAtomically";
import type { Change, DeskDocument, Saved, Snapshot } from "../protocol";
import { Refused } from "./requestBody";

export type SaveAtomically = (file: string, bytes: Uint8Array, options?: SaveOptions) => Promise<void>;

/** A job holds costs and margin, so nobody else on the machine may read it. */
const OWN_FILE = 0o600;

/** The file that a job was opened from, as it was then; tells whether another program has changed it since. */
export interface FileStamp {
  readonly modified: number;
  readonly size: number;
}

interface StoredSnapshot {
  readonly rigsheet: 1;
  readonly savedAt: string;
  readonly stamp?: FileStamp;
  readonly document: DeskDocument;
}

export interface HeldJob {
  readonly document: DeskDocument;
  readonly changes: readonly Change[];
  readonly savedAt: string;
  readonly stamp?: FileStamp;
}

/** Earlier jobs that are kept when another takes their place. */
const MOST_EARLIER = 20;

const OTHER_TAB =
  "this job was changed in another tab or window. Reload this page to go on with that version; to keep this one as well, save it as .xlsx first";

export class JobStore {
  private held: HeldJob | undefined;
  private journalLength = 0;
  private queue: Promise<unknown> = Promise.resolve();
  /** What the user must be told of the last start. */
  readonly notices: string[] = [];

  private constructor(
    private readonly folder: string,
    private readonly name: string,
    private readonly saveAtomically: SaveAtomically,
  ) {}

  /**
   * @param folder made when it is missing
   * @param name of the job within the folder
   */
  static async open(folder: string, name: string, saveAtomically: SaveAtomically): Promise<JobStore> {
    const store = new JobStore(folder, name, saveAtomically);
    try {
      await makeOwnFolder(folder);
      await sweepParts(store.snapshotFile);
      await store.restore();
    } catch (error) {
      if (error instanceof FileTrouble) throw error;
      throw new FileTrouble(sentenceFor(error, path.join(folder, name)), { cause: error });
    }
    return store;
  }

  get job(): HeldJob | undefined {
    return this.held;
  }

  /** The revision that the next change must follow. */
  get head(): string | null {
    return this.held?.changes.at(-1)?.nextRevisionId ?? this.held?.document.revisionId ?? null;
  }

  put(snapshot: Snapshot, stamp?: FileStamp): Promise<Saved> {
    return this.inTurn(async () => {
      if (snapshot.after !== this.head) throw new Refused(409, OTHER_TAB);
      const keptAs = snapshot.replaces && this.held ? await this.setAside("earlier") : undefined;
      const savedAt = new Date().toISOString();
      await this.writeSnapshot({
        document: snapshot.document,
        changes: [],
        savedAt,
        stamp: snapshot.replaces ? stamp : (stamp ?? this.held?.stamp),
      });
      return { savedAt, keptAs };
    });
  }

  append(changes: readonly Change[]): Promise<Saved> {
    return this.inTurn(async () => {
      const { held } = this;
      if (!held) throw new Refused(409, "the job is not known here yet. Reload this page");
      // A request repeated after its answer was lost brings changes that are here already.
      const known = new Set(held.changes.map((change) => change.nextRevisionId));
      const fresh = changes.filter((change) => !known.has(change.nextRevisionId));
      let head = this.head;
      for (const change of fresh) {
        if (change.serverRevisionId !== head) throw new Refused(409, OTHER_TAB);
        head = change.nextRevisionId;
      }
      const savedAt = new Date().toISOString();
      if (fresh.length > 0) await this.appendLines(fresh.map((change) => JSON.stringify(change)));
      this.held = { ...held, changes: [...held.changes, ...fresh], savedAt };
      return { savedAt };
    });
  }

  /** Notes the state of the file into which the job was just saved. */
  stampFile(stamp: FileStamp): Promise<void> {
    return this.inTurn(async () => {
      if (!this.held) return;
      const { document, changes, savedAt } = this.held;
      await this.writeSnapshotFile({ document, changes, savedAt, stamp });
      this.held = { ...this.held, stamp };
    });
  }

  /** Takes the held job away, keeping its files. */
  forget(): Promise<string | undefined> {
    return this.inTurn(async () => {
      const kept = this.held ? await this.setAside("earlier") : undefined;
      this.held = undefined;
      return kept;
    });
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.queue.then(work, work);
    this.queue = result.catch(() => undefined);
    return result;
  }

  private get snapshotFile(): string {
    return path.join(this.folder, `${this.name}.json`);
  }

  private get journalFile(): string {
    return path.join(this.folder, `${this.name}.changes.jsonl`);
  }

  private async writeSnapshot(job: HeldJob): Promise<void> {
    await this.writeSnapshotFile(job);
    this.held = job;
    // From here on the journal's lines are in the snapshot; a kill in between is seen by their revisions.
    await rm(this.journalFile, { force: true });
    this.journalLength = 0;
  }

  private writeSnapshotFile({ document, savedAt, stamp }: HeldJob): Promise<void> {
    const stored: StoredSnapshot = { rigsheet: 1, savedAt, stamp, document };
    return this.saveAtomically(this.snapshotFile, Buffer.from(JSON.stringify(stored), "utf8"), {
      private: true,
    });
  }

  private async appendLines(lines: readonly string[]): Promise<void> {
    const bytes = Buffer.from(lines.map((line) => `${line}\n`).join(""), "utf8");
    let file: FileHandle | undefined;
    try {
      file = await open(this.journalFile, "a", OWN_FILE);
      await file.writeFile(bytes);
      await file.sync();
      this.journalLength += bytes.length;
    } catch (error) {
      // A full disk may have taken half a line.
      await file?.truncate(this.journalLength).catch(() => undefined);
      throw new FileTrouble(sentenceFor(error, this.journalFile), { cause: error });
    } finally {
      await file?.close();
    }
  }

  private async restore(): Promise<void> {
    if (!existsSync(this.snapshotFile)) return;
    const stored = readStored(await readFile(this.snapshotFile, "utf8"));
    if (!stored) {
      const kept = await this.setAside("damaged");
      this.notices.push(
        `The autosaved job could not be read: its file is damaged. It is kept as ${kept}, and a fresh job is open instead.`,
      );
      return;
    }
    const { document, savedAt, stamp } = stored;
    const journal = existsSync(this.journalFile) ? await readFile(this.journalFile, "utf8") : "";
    const { changes, lost } = changesAfter(document.revisionId, journal);
    if (lost > 0) {
      const kept = path.join(this.folder, `${this.name}-damaged-${stampNow()}.changes.jsonl`);
      await rename(this.journalFile, kept);
      this.notices.push(
        `The last ${lost} autosaved changes could not be read. They are kept as ${kept}; check the rows that were edited last.`,
      );
    }
    this.held = { document, changes, savedAt, stamp };
    await rm(this.journalFile, { force: true });
    this.journalLength = 0;
    if (changes.length > 0) await this.appendLines(changes.map((change) => JSON.stringify(change)));
  }

  /** Moves the job's files into a folder of their own kind and names the snapshot's new place. */
  private async setAside(kind: "earlier" | "damaged"): Promise<string> {
    const folder = path.join(this.folder, kind);
    await makeOwnFolder(folder);
    const base = path.join(folder, `${this.name}-${stampNow()}`);
    await rename(this.snapshotFile, `${base}.json`);
    if (existsSync(this.journalFile)) await rename(this.journalFile, `${base}.changes.jsonl`);
    this.journalLength = 0;
    if (kind === "earlier") await dropOldest(folder);
    return `${base}.json`;
  }
}

const OWN_FOLDER = 0o700;

/** One level after the other: on some special file systems Node makes them all at once without an end. */
async function makeOwnFolder(folder: string): Promise<void> {
  const missing: string[] = [];
  for (let one = folder; !existsSync(one) && path.dirname(one) !== one; one = path.dirname(one))
    missing.unshift(one);
  for (const one of missing) await mkdir(one, { mode: OWN_FOLDER });
  if (!(await stat(folder)).isDirectory()) {
    throw new FileTrouble(`${folder} is a file, not a folder. Give a folder of your own with --data.`);
  }
}

const stampNow = (): string => new Date().toISOString().replace(/[:.]/g, "-");

async function dropOldest(folder: string): Promise<void> {
  const snapshots = (await readdir(folder)).filter((name) => name.endsWith(".json")).sort();
  for (const name of snapshots.slice(0, -MOST_EARLIER)) {
    await rm(path.join(folder, name), { force: true });
    await rm(path.join(folder, name.replace(/\.json$/, ".changes.jsonl")), { force: true });
  }
}

function readStored(text: string): StoredSnapshot | undefined {
  try {
    const stored = JSON.parse(text) as Partial<StoredSnapshot> | null;
    return stored?.rigsheet === 1 && isDocument(stored.document) && typeof stored.savedAt === "string"
      ? (stored as StoredSnapshot)
      : undefined;
  } catch {
    return undefined;
  }
}

export const isDocument = (value: unknown): value is DeskDocument =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as DeskDocument).revisionId === "string" &&
  Array.isArray((value as DeskDocument).sheets);

export const isChange = (value: unknown): value is Change =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as Change).serverRevisionId === "string" &&
  typeof (value as Change).nextRevisionId === "string";

/**
 * The journal's changes that follow a revision. Lines older than the snapshot
 * are left out; a last line without its line end is a write cut short, whose
 * edit was never confirmed.
 */
export function changesAfter(revision: string, journal: string): { changes: Change[]; lost: number } {
  const lines = journal.split("\n");
  lines.pop();
  const read = lines.map((line) => {
    try {
      const change: unknown = JSON.parse(line);
      return isChange(change) ? change : undefined;
    } catch {
      return undefined;
    }
  });
  const first = read.findIndex((change) => change?.serverRevisionId === revision);
  if (first < 0) return { changes: [], lost: read.filter((change) => change === undefined).length };
  const changes: Change[] = [];
  let head = revision;
  for (const change of read.slice(first)) {
    if (change?.serverRevisionId !== head) break;
    changes.push(change);
    head = change.nextRevisionId;
  }
  return { changes, lost: read.length - first - changes.length };
}
