/**
 * What the first version of the desk's store left in a folder: for each desk a
 * snapshot of the document and a journal of the changes since, a line each. It
 * is read once and then lies in `before`, as it was.
 */
import { existsSync } from "node:fs";
import { readdir, readFile, rename } from "node:fs/promises";
import { createHash, randomUUID } from "node:crypto";
import path from "node:path";
import { isChange, isDocument, type Change, type JobDocument } from "../../../jobs/content";
import type { Shelf } from "../../../jobs/shelf";
import { timeInName } from "../../../jobs/timeInName";
import { makeOwnFolder } from "../../storage/ownFolder";

interface StoredSnapshot {
  readonly rigsheet: 1;
  readonly savedAt: string;
  readonly stamp?: object;
  readonly document: JobDocument;
}

const SNAPSHOT = /^(job(?:-[\da-f]{12})?)\.json$/;

/** Makes jobs of the shelf of what the first version left. */
export async function adoptFirst(shelf: Shelf, folder: string): Promise<void> {
  for (const file of await readdir(folder)) {
    const name = SNAPSHOT.exec(file)?.[1];
    if (name !== undefined) await adopt(shelf, folder, name);
  }
}

async function adopt(shelf: Shelf, folder: string, name: string): Promise<void> {
  const snapshotFile = path.join(folder, `${name}.json`);
  const journalFile = path.join(folder, `${name}.changes.jsonl`);
  const moveTo = async (kind: "before" | "damaged"): Promise<string> => {
    const to = path.join(folder, kind);
    await makeOwnFolder(to);
    const base = path.join(to, `${name}-${timeInName()}`);
    // The snapshot last: as long as it is there, this is done again.
    if (existsSync(journalFile)) await rename(journalFile, `${base}.changes.jsonl`);
    await rename(snapshotFile, `${base}.json`);
    return `${base}.json`;
  };
  const text = await readFile(snapshotFile, "utf8");
  const stored = readStored(text);
  if (!stored) {
    const kept = await moveTo("damaged");
    shelf.notices.push(
      `An autosaved job of an earlier version could not be read: its file is damaged. It is kept as ${kept}.`,
    );
    return;
  }
  const { document, savedAt, stamp } = stored;
  const journal = existsSync(journalFile) ? await readFile(journalFile, "utf8") : "";
  const { changes, lost } = changesAfter(document.revisionId, journal);
  // Named by its content: after an end before it was moved it is not taken over once more.
  const id = idFrom(`${name} ${text}`);
  const there = shelf.list().find((one) => one.id === id);
  if (!there || there.trouble)
    await shelf.create(
      there ? `job-${randomUUID()}` : id,
      { document, changes },
      // Whether its file has changed since is not known.
      { ...(stamp && { file: { name, mark: "" } }) },
      savedAt,
    );
  if (lost > 0)
    shelf.notices.push(
      `The last ${lost} autosaved changes could not be read. They are kept in ${path.join(folder, "before")}; check the rows that were edited last.`,
    );
  await moveTo("before");
}

/** A name of a job that is always the same for the same text. */
function idFrom(text: string): string {
  const hex = createHash("sha256").update(text).digest("hex");
  return `job-${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20, 32)}`;
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

/**
 * The journal's changes that follow a revision. Lines older than the snapshot
 * are left out; a last line without its line end is a write cut short, whose
 * edit was never confirmed.
 */
function changesAfter(revision: string, journal: string): { changes: Change[]; lost: number } {
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
