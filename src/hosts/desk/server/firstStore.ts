/**
 * What the first version of the desk's store left in a folder: a snapshot of
 * the document and a journal of the changes since, a line each. It is read once
 * and then lies in `before`, as it was.
 */
import { existsSync } from "node:fs";
import { readFile, rename } from "node:fs/promises";
import path from "node:path";
import { timeInName } from "../../../jobs/timeInName";
import { makeOwnFolder } from "../../storage/ownFolder";
import type { Change, DeskDocument } from "../protocol";
import { isChange, isDocument, type HeldJob } from "./heldJob";

interface StoredSnapshot {
  readonly rigsheet: 1;
  readonly savedAt: string;
  readonly stamp?: HeldJob["stamp"];
  readonly document: DeskDocument;
}

interface Found {
  readonly job: HeldJob;
  /** Said where lines of the journal could not be read. */
  readonly lost?: string;
  /** For when the job is safe elsewhere. */
  readonly moveAway: () => Promise<string>;
}

/** @returns undefined where there is nothing of the first version */
export async function takeOver(
  folder: string,
  name: string,
): Promise<Found | { notice: string } | undefined> {
  const snapshotFile = path.join(folder, `${name}.json`);
  const journalFile = path.join(folder, `${name}.changes.jsonl`);
  if (!existsSync(snapshotFile)) return undefined;
  const moveTo = async (kind: "before" | "damaged"): Promise<string> => {
    const to = path.join(folder, kind);
    await makeOwnFolder(to);
    const base = path.join(to, `${name}-${timeInName()}`);
    // The snapshot last: as long as it is there, this is done again.
    if (existsSync(journalFile)) await rename(journalFile, `${base}.changes.jsonl`);
    await rename(snapshotFile, `${base}.json`);
    return `${base}.json`;
  };
  const stored = readStored(await readFile(snapshotFile, "utf8"));
  if (!stored) {
    const kept = await moveTo("damaged");
    return {
      notice: `The autosaved job could not be read: its file is damaged. It is kept as ${kept}, and a fresh job is open instead.`,
    };
  }
  const { document, savedAt, stamp } = stored;
  const journal = existsSync(journalFile) ? await readFile(journalFile, "utf8") : "";
  const { changes, lost } = changesAfter(document.revisionId, journal);
  return {
    job: { document, changes, savedAt, stamp },
    ...(lost > 0 && {
      lost: `The last ${lost} autosaved changes could not be read. They are kept in ${path.join(folder, "before")}; check the rows that were edited last.`,
    }),
    moveAway: () => moveTo("before"),
  };
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
