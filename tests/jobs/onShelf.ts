/** A shelf in memory, and all that a person can see of it, for tests that carry jobs from one to another. */
import type { Change, JobContent } from "../../src/jobs/content";
import type { RevisionNote } from "../../src/jobs/content";
import { Shelf } from "../../src/jobs/shelf";
import { DiskStorage } from "../../src/hosts/storage/diskStorage";
import { ModelDisk } from "./modelDisk";

export const FOLDER = "/jobs";

export const idOf = (letter: string): string => `job-00000000-0000-0000-0000-00000000000${letter}`;

export const change = (from: string, to: string): Change => ({
  type: "REMOTE_REVISION",
  serverRevisionId: from,
  nextRevisionId: to,
});

/** A document at a revision; what was typed into it is told by the revision alone. */
export const documentOf = (revision: string) => ({
  revisionId: revision,
  sheets: [{ id: "1", name: "Rooms", cells: { A1: `typed by ${revision}` } }],
});

export const lineOf = (name: string, total: number) => ({
  number: `N-${name}`,
  revision: "1",
  name,
  customer: "Invented customer (demonstration)",
  date: "2026-11-02",
  total,
  currency: "EUR",
  verdict: "all checks pass",
});

export const openOn = (disk: ModelDisk): Promise<Shelf> => Shelf.open(new DiskStorage(FOLDER, disk.disk));

export async function newShelf(): Promise<{ disk: ModelDisk; shelf: Shelf }> {
  const disk = new ModelDisk(FOLDER);
  return { disk, shelf: await openOn(disk) };
}

/** Types steps into a job, each as one edit, from the state that it has. */
export async function type(shelf: Shelf, letter: string, ...steps: string[]): Promise<void> {
  for (const step of steps) {
    const { document, changes } = await shelf.held(idOf(letter));
    await shelf.append(idOf(letter), [change(changes.at(-1)?.nextRevisionId ?? document.revisionId, step)]);
  }
}

/** Puts the whole in the place of a job's changes, as the page does now and then. */
export async function fold(shelf: Shelf, letter: string): Promise<void> {
  const { document, changes } = await shelf.held(idOf(letter));
  const head = changes.at(-1)?.nextRevisionId ?? document.revisionId;
  await shelf.fold(idOf(letter), documentOf(head), head);
}

export interface SeenJob {
  readonly content: JobContent;
  readonly savedAt: string;
  readonly notes: object;
  readonly revisions: readonly (JobContent & { note: RevisionNote })[];
}

/** Every job with every revision, or why it can't be read. */
export async function seenOn(
  shelf: Shelf,
): Promise<Record<string, SeenJob | { unreadable: string; notes: object }>> {
  const seen: Record<string, SeenJob | { unreadable: string; notes: object }> = {};
  for (const { id, trouble, ...notes } of shelf.list()) {
    if (trouble) {
      seen[id] = { unreadable: trouble.sentence, notes };
      continue;
    }
    const held = await shelf.held(id);
    const revisions = [];
    for (const { number } of held.notes.revisions) {
      const { document, changes, note } = await shelf.revision(id, number);
      revisions.push({ document, changes, note: note! });
    }
    seen[id] = {
      content: { document: held.document, changes: held.changes },
      savedAt: held.savedAt,
      notes: JSON.parse(JSON.stringify(held.notes)) as object,
      revisions,
    };
  }
  return seen;
}

/** Three jobs: edited; sent, edited and with two frozen states; put away, and of a file on this machine. */
export async function threeJobs(): Promise<{ disk: ModelDisk; shelf: Shelf }> {
  const { disk, shelf } = await newShelf();
  await shelf.create(idOf("a"), { document: documentOf("A"), changes: [] }, { line: lineOf("Möwe", 900.5) });
  await type(shelf, "a", "a1", "a2");
  await shelf.create(
    idOf("b"),
    { document: documentOf("B"), changes: [] },
    { line: lineOf("Guest house", 7) },
  );
  await type(shelf, "b", "b1");
  await shelf.freeze(idOf("b"), "offer");
  await type(shelf, "b", "b2");
  await shelf.note(idOf("b"), { state: "sent" });
  await fold(shelf, "b");
  await type(shelf, "b", "b3");
  await shelf.create(
    idOf("c"),
    { document: documentOf("C"), changes: [] },
    { line: lineOf("Lodge", 1), file: { name: "lodge.xlsx", path: "/home/someone/lodge.xlsx", mark: "00" } },
  );
  await shelf.note(idOf("c"), { away: true });
  return { disk, shelf };
}

/** Every file of a disk, byte for byte. */
export const bytesOn = (disk: ModelDisk): Record<string, string> =>
  Object.fromEntries(
    disk.paths.sort().map((path) => [path, Buffer.from(disk.file(path)!).toString("base64")]),
  );
