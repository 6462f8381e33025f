/**
 * Takes a job that lay on another shelf onto this one. Each way ends in one
 * committed write of one log, before which only frozen states are put down that
 * nothing tells of yet: so a job is brought in or it is not, and doing it again
 * goes on with it.
 */
import type { CatalogueLine } from "./catalogue";
import {
  readCarried,
  type CarriedJob,
  type CarriedPart,
  type CarriedRevision,
  type ReadJob,
} from "./carried";
import { checksum } from "./checksum";
import type { JobContent, JobNotes, RevisionNote } from "./content";
import { nameInWords } from "./entryInWords";
import { Job } from "./job";
import { jobOfPart } from "./jobId";
import { segmentName, segmentsOf } from "./log";
import { Newer, Refusal } from "./refusal";
import { frozenNow, takenInRevision } from "./revision";
import type { Storage } from "./storage";
import { fnv1a, relationOf } from "./trail";

export type Outcome =
  | "brought in"
  | "there already"
  /** What is here has gone on since; it stays. */
  | "ours is newer"
  /** What was carried has gone on since; as it was here, it is a revision. */
  | "theirs is newer"
  /** Both have: what was carried is a job of its own. */
  | "beside"
  /** It can't be read, and is here as it is. */
  | "as it is"
  /** Nothing of it was taken. */
  | "not read";

export interface BroughtIn {
  /** The job that was carried. */
  readonly id: string;
  /** What identifies it to a person. */
  readonly name: string;
  readonly outcome: Outcome;
  /** The job that it is here, where that is another. */
  readonly beside?: string;
  /** What else there is to tell, in sentences. */
  readonly remarks: readonly string[];
}

/** What the shelf does for it. */
export interface Shelving {
  readonly storage: Storage;
  entry(id: string): CatalogueLine | undefined;
  entries(): Iterable<CatalogueLine>;
  /** @throws Refusal where it can't be read */
  job(id: string): Promise<Job>;
  /** Brings the list up to date with a job. */
  noted(job: Job): Promise<void>;
  /** Reads what lies there of a job, and lists it; what is left of a deleted one is dropped. */
  listedAnew(id: string): Promise<void>;
  /** @throws where the list can't be put down */
  listed(line: CatalogueLine): Promise<void>;
}

export async function bringIn(shelf: Shelving, carried: CarriedJob): Promise<BroughtIn> {
  const { id, unreadable } = carried;
  // A deleting that was cut off, or a new one that was never confirmed.
  if (!shelf.entry(id) && (await segmentsHere(shelf, id)).length > 0) await shelf.listedAnew(id);
  const read = await readCarried(carried);
  if ("job" in read) return bringInRead(shelf, id, read);
  const here = shelf.entry(id);
  const name = nameInWords(unreadable?.line ?? here?.line);
  if (unreadable && read.isDamaged && (!here || here.trouble)) return bringInAsItIs(shelf, carried, name);
  const said = `It was not brought in: ${read.why}.${here && !here.trouble ? " What is here stays." : ""}`;
  return { id, name, outcome: "not read", remarks: [said] };
}

async function bringInRead(shelf: Shelving, id: string, theirs: ReadJob): Promise<BroughtIn> {
  const { remarks, job } = theirs;
  const told = { id, name: nameInWords(job.notes.line), remarks };
  if (!shelf.entry(id)) {
    await putDown(shelf, id, theirs);
    return { ...told, outcome: "brought in" };
  }
  const ours = await whole(shelf, id);
  if (!ours) {
    const kept = shelf.entry(id)?.trouble?.kept ?? [];
    await putDown(shelf, id, theirs);
    const said = `It could not be read here, and is whole again.${kept.length > 0 ? ` What was damaged is kept as ${kept.join(", ")}.` : ""}`;
    return { ...told, outcome: "brought in", remarks: [said, ...remarks] };
  }
  const merged = await merge(shelf, ours, theirs);
  if (merged !== undefined) return { ...told, ...merged, remarks: [...merged.remarks, ...remarks] };
  return { ...told, ...(await putBeside(shelf, ours, theirs)) };
}

/** @returns undefined where what lies here is damaged or gone; one that may only be out of reach is not */
async function whole(shelf: Shelving, id: string): Promise<Job | undefined> {
  try {
    return await shelf.job(id);
  } catch (error) {
    if (error instanceof Newer || !(error instanceof Refusal) || error.kind !== "unreadable") throw error;
    return undefined;
  }
}

/** @returns undefined where both have changed */
async function merge(
  { storage, noted }: Shelving,
  ours: Job,
  theirs: ReadJob,
): Promise<Pick<BroughtIn, "outcome" | "remarks"> | undefined> {
  const { job } = theirs;
  const way = relationOf(ours.trail, job.trail);
  const isSame = ours.head === job.head && isAlike(ours, job);
  // Two of one trail that are otherwise were not made by a shelf.
  if (way === "both changed" ? !isSame : way === "same" && !isSame) return undefined;
  const { revisions, renumbered } = await withTheirs(
    storage,
    ours.id,
    ours.notes.revisions,
    theirs.revisions,
  );
  const isMore = revisions.length > ours.notes.revisions.length;
  if (way === "theirs is newer") {
    const frozen =
      ours.head === job.head
        ? undefined
        : await frozenNow(storage, ours, "before a newer one was brought in", revisions);
    const { state, away, line } = job.notes;
    await ours.put(
      job,
      { ...ours.notes, state, away, line, revisions: frozen ?? revisions },
      { savedAt: job.savedAt, trail: job.trail },
    );
  } else if (isMore) await ours.note({ revisions });
  await noted(ours);
  return { outcome: way === "both changed" || way === "same" ? "there already" : way, remarks: renumbered };
}

/** What is theirs as a job of its own, once for each state of it. */
async function putBeside(
  shelf: Shelving,
  ours: Job,
  theirs: ReadJob,
): Promise<Pick<BroughtIn, "outcome" | "beside" | "remarks">> {
  for (const { id, conflictOf, trouble } of [...shelf.entries()]) {
    if (conflictOf?.job !== ours.id || trouble) continue;
    const other = await whole(shelf, id);
    const merged = other && (await merge(shelf, other, theirs));
    if (merged) return { ...merged, beside: id, remarks: [...merged.remarks, ...theirs.remarks] };
  }
  const { document, changes, trail } = theirs.job;
  const state = `${ours.id} ${trail.at(-1)} ${checksum(encoder.encode(JSON.stringify([document, changes])))}`;
  const hex = fnv1a(`1 ${state}`) + fnv1a(`2 ${state}`);
  const beside = `job-${[hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-")}`;
  if (shelf.entry(beside)) return { outcome: "there already", beside, remarks: theirs.remarks };
  await putDown(shelf, beside, theirs, { job: ours.id, after: commonOf(ours, theirs.job) });
  return { outcome: "beside", beside, remarks: theirs.remarks };
}

const encoder = new TextEncoder();

/** @returns the last state that both went through, as far as it is known; empty where it is not */
function commonOf(ours: JobContent, theirs: JobContent): string {
  const statesOf = ({ document, changes }: JobContent): string[] => [
    document.revisionId,
    ...changes.map(({ nextRevisionId }) => nextRevisionId),
  ];
  const known = new Set(statesOf(ours));
  return statesOf(theirs).findLast((state) => known.has(state)) ?? "";
}

/** Of two at the same revision: one may have been put down anew since. */
const isAlike = (ours: JobContent, theirs: JobContent): boolean =>
  ours.document.revisionId !== theirs.document.revisionId ||
  JSON.stringify([ours.document, ours.changes]) === JSON.stringify([theirs.document, theirs.changes]);

/** A job that is not here, byte for byte where nothing in it tells of another machine. */
async function putDown(
  shelf: Shelving,
  id: string,
  { job, revisions: theirs, segment }: ReadJob,
  conflictOf?: JobNotes["conflictOf"],
): Promise<void> {
  const { storage } = shelf;
  // Of one that could not be read here the frozen states may be sound.
  const known = shelf.entry(id)?.revisions ?? [];
  const { revisions, asTheyWere } = await withTheirs(storage, id, known, theirs);
  const last = Math.max(0, ...(await segmentsHere(shelf, id)));
  const { document, changes, notes, savedAt, trail } = job;
  if (segment && !conflictOf && asTheyWere && !job.tellsOfPlaces)
    return shelf.noted(await Job.adopt(storage, id, Math.max(segment.number, last + 1), segment.bytes));
  // A file belongs to one job.
  const file = notes.file && !conflictOf ? { name: notes.file.name, mark: notes.file.mark } : undefined;
  const here: JobNotes = { ...notes, file, revisions, ...(conflictOf && { conflictOf }) };
  await shelf.noted(await Job.begin(storage, id, { document, changes }, here, { savedAt, trail }, last));
}

interface Revisions {
  readonly revisions: readonly RevisionNote[];
  /** Where one has another number here. */
  readonly renumbered: readonly string[];
  /** All of theirs have their numbers and keys, and nothing else is among them. */
  readonly asTheyWere: boolean;
}

/** Puts down what is not among the revisions of a job here; none of those is touched. */
async function withTheirs(
  storage: Storage,
  id: string,
  ours: readonly RevisionNote[],
  theirs: readonly CarriedRevision[],
): Promise<Revisions> {
  const revisions = [...ours];
  const renumbered: string[] = [];
  const isTaken = (note: RevisionNote, { content, segment }: CarriedRevision): Promise<boolean> =>
    takenInRevision(storage, id, note, content!, segment);
  for (const one of theirs) {
    const { note, content } = one;
    const mine = revisions.find(({ key }) => key === note.key);
    const last = revisions.at(-1)?.number ?? 0;
    if (!content) {
      // It is told of all the same, so that another file can mend it.
      if (!mine && note.number > last) revisions.push(note);
      continue;
    }
    const isVerbatim = mine === undefined || mine.number === note.number;
    if (mine && (await isTaken(mine, isVerbatim ? one : { ...one, segment: undefined }))) continue;
    let fresh: RevisionNote = { ...note, number: Math.max(note.number, last + 1) };
    // Another state under the same key, here or among what was never told of: a key of its own.
    if (
      mine ||
      !(await isTaken(fresh, fresh.number === note.number ? one : { ...one, segment: undefined }))
    ) {
      const key = fnv1a(JSON.stringify(content)).slice(0, KEY_LENGTH);
      if (revisions.some((known) => known.key === key)) continue;
      fresh = { ...fresh, key };
      if (!(await isTaken(fresh, { ...one, segment: undefined }))) continue;
    }
    if (fresh.number !== note.number)
      renumbered.push(`Its revision ${note.number} is revision ${fresh.number} here.`);
    revisions.push(fresh);
  }
  const asTheyWere =
    JSON.stringify(revisions.map(({ number, key }) => [number, key])) ===
    JSON.stringify(theirs.map(({ note: { number, key } }) => [number, key]));
  return { revisions, renumbered, asTheyWere };
}

const KEY_LENGTH = 12;

/** One that can't be read, with all that there is of it: it stands on the list, and can be exported again. */
async function bringInAsItIs(shelf: Shelving, carried: CarriedJob, name: string): Promise<BroughtIn> {
  const { id, parts } = carried;
  const { storage } = shelf;
  const { sentence, ...known } = carried.unreadable!;
  const before = shelf.entry(id);
  const here = new Set<string>();
  const inPlace = (await segmentsHere(shelf, id)).map((number) => segmentName(id, number));
  for (const kept of [...inPlace, ...(before?.trouble?.kept ?? [])])
    here.add(textOf(await storage.read(kept)));
  const missing: CarriedPart[] = [];
  for (const part of parts)
    if (jobOfPart(part.name) === id && !here.has(textOf(part.bytes)) && (await isHarmless(id, part)))
      missing.push(part);
  if (before && missing.length === 0) {
    // What could not be looked into then is set aside now.
    if (inPlace.length > 0) await shelf.listedAnew(id);
    return { id, name, outcome: "there already", remarks: [] };
  }
  // Listed first: what is set aside of it is found by the list alone.
  const file = known.file && { name: known.file.name, mark: known.file.mark };
  if (!before) await shelf.listed({ ...known, file, id, trouble: { sentence, kept: [] }, seen: "" });
  const names = new Set(await storage.list());
  for (const part of parts)
    if (jobOfPart(part.name) !== id && !part.name.startsWith("damaged/") && !names.has(part.name))
      await storage.create(part.name, part.bytes);
  let last = Math.max(0, ...(await segmentsHere(shelf, id)));
  for (const { bytes } of missing) await storage.create(segmentName(id, ++last), bytes);
  if (missing.length > 0) await shelf.listedAnew(id);
  return { id, name, outcome: "as it is", remarks: [sentence] };
}

/** What can be read after all is believed as little as any other. */
async function isHarmless(id: string, { bytes }: CarriedPart): Promise<boolean> {
  const read = await readCarried({ id, parts: [{ name: segmentName(id, 1), bytes }] });
  return "job" in read || read.isDamaged;
}

const textOf = (bytes: Uint8Array | undefined): string =>
  bytes ? `${bytes.length} ${checksum(bytes)}` : "nothing";

/** @returns the numbers of the segments that lie here in their place */
const segmentsHere = async ({ storage }: Shelving, id: string): Promise<number[]> =>
  (segmentsOf(await storage.list()).get(id) ?? []).map((name) => Number(/\.(\d+)\.log$/.exec(name)![1]));
