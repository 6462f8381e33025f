/**
 * The file that {@link exportOf} makes, read without trust: it may be cut,
 * packed anew by another program, or made to harm. Its list says which parts
 * belong to which job; nothing else in it is looked at.
 */
import { areNotes } from "../../jobs/checkedNotes";
import type { CarriedJob, CarriedPart, LastKnown } from "../../jobs/carried";
import { isJobId, jobOfPart, jobOfRevisionPart } from "../../jobs/jobId";
import { declaredCount, entriesOf, unpacked, type ArchiveEntry } from "./archive";
import { kindOf } from "./checkedEntries";
import { FileTrouble, stop, troubles } from "./fileTrouble";
import { JOBS_FORMAT, JOBS_LIST, JOBS_VERSION, type ListedPart } from "./jobsFile";
import {
  MAX_JOBS_FILE_BYTES,
  MAX_JOBS_LIST_BYTES,
  MAX_JOBS_PARTS,
  MAX_PART_BYTES,
  MAX_RATIO,
  RATIO_FREE_BYTES,
} from "./limits";

export interface JobsArchive {
  readonly jobs: readonly JobInFile[];
  /** What else there is to tell, in sentences. */
  readonly remarks: readonly string[];
}

export interface JobInFile {
  readonly id: string;
  /** Unpacks it; or why that can't be, without the job's name, going on from "It was not brought in: ". */
  readonly carried: () => CarriedJob | string;
}

const FLAG_ENCRYPTED = 1;

/** @throws FileTrouble with a sentence where it is no export, or not whole enough to tell what is in it */
export function readJobsArchive(bytes: Uint8Array): JobsArchive {
  if (bytes.length === 0) stop(troubles.empty());
  if (bytes.length > MAX_JOBS_FILE_BYTES) stop(troubles.jobsTooLarge(bytes.length, MAX_JOBS_FILE_BYTES));
  const kind = kindOf(bytes);
  if (kind !== undefined) stop(troubles.noExport(kind));
  const count = declaredCount(bytes);
  if (count > MAX_JOBS_PARTS) stop(troubles.tooManyParts(count, MAX_JOBS_PARTS));
  const entries = entriesOf(bytes);
  const byName = new Map<string, ArchiveEntry[]>();
  for (const entry of entries) byName.set(entry.name, [...(byName.get(entry.name) ?? []), entry]);
  const { folder, list } = listIn(bytes, entries);
  const jobs = jobsOf(list);
  const known = new Set([JOBS_LIST]);
  const found = jobs.map((job): JobInFile => {
    for (const { name } of job.parts) known.add(name);
    return { id: job.id, carried: () => carriedOf(bytes, job, folder, byName) };
  });
  const others: string[] = [];
  const listed = new Set(jobs.map(({ id }) => id));
  const unlisted = new Set<string>();
  for (const { name } of entries) {
    if (name.endsWith("/") || (name.startsWith(folder) && known.has(name.slice(folder.length)))) continue;
    const own = name.startsWith(folder) ? name.slice(folder.length) : "";
    const id = jobOfPart(own) ?? jobOfRevisionPart(own);
    if (id === undefined || listed.has(id)) others.push(name);
    else unlisted.add(id);
  }
  const left = [...unlisted].map((id) => ({ id, carried: () => "the file's list of jobs does not name it" }));
  return {
    jobs: [...found, ...left],
    remarks: [
      ...(jobs.length + left.length === 0 ? ["The file holds no job."] : []),
      ...(others.length === 0
        ? []
        : [
            `${others.length === 1 ? "1 thing" : `${others.length} things`} in the file belonged to no job and stayed there.`,
          ]),
    ],
  };
}

/** The list of jobs; where somebody has packed the file anew, all of it may lie in a folder. */
function listIn(bytes: Uint8Array, entries: readonly ArchiveEntry[]): { folder: string; list: unknown } {
  const lists = entries.filter(({ name }) => name === JOBS_LIST || name.endsWith(`/${JOBS_LIST}`));
  const [entry] = lists;
  if (!entry) return stop(otherArchive(entries));
  if (lists.length > 1) stop(troubles.exportDamaged("it is in it twice"));
  if ((entry.flags & FLAG_ENCRYPTED) !== 0) stop(troubles.exportProtected());
  if (entry.size > MAX_JOBS_LIST_BYTES || !isUnpackable(entry)) stop(troubles.exportDamaged("its size"));
  const text = decodedText(unpacked(bytes, entry));
  try {
    return { folder: entry.name.slice(0, -JOBS_LIST.length), list: JSON.parse(text ?? "") };
  } catch (error) {
    return stop(troubles.exportDamaged("it is no JSON in UTF-8"), error);
  }
}

function otherArchive(entries: readonly ArchiveEntry[]): string {
  const names = entries.map(({ name }) => name);
  if (names.includes("xl/workbook.xml")) return troubles.isWorkbook();
  const inside = names.find((name) => /\.zip$/i.test(name) && !name.startsWith("__MACOSX/"));
  if (inside !== undefined && entries.length < 10) return troubles.exportInside(inside);
  return troubles.noExport(names.length === 0 ? "an empty ZIP archive" : "a ZIP archive of something else");
}

interface ListedJob {
  readonly id: string;
  readonly parts: readonly ListedPart[];
  readonly unreadable?: LastKnown;
  /** Listed in two ways: which of them is meant is not known. */
  readonly isTwice?: boolean;
}

function jobsOf(list: unknown): readonly ListedJob[] {
  const { format, version, jobs } = (list ?? {}) as Record<string, unknown>;
  if (format !== JOBS_FORMAT) stop(troubles.exportDamaged("it is not called so in it"));
  if (typeof version !== "number" || !Number.isSafeInteger(version) || version < 1)
    return stop(troubles.exportDamaged("it has no version"));
  if (version > JOBS_VERSION) stop(troubles.newerExport(version));
  if (!Array.isArray(jobs)) return stop(troubles.exportDamaged("it names no jobs"));
  const known = new Map<string, ListedJob>();
  for (const one of jobs) {
    const { id, parts, unreadable } = (one ?? {}) as Record<string, unknown>;
    if (!isJobId(id)) return stop(troubles.exportDamaged("a job in it has no name of its own"));
    if (!Array.isArray(parts) || !parts.every((part) => isListed(id, part)))
      return stop(troubles.exportDamaged(`what it tells of ${id}`));
    if (unreadable !== undefined && !isLastKnown(unreadable))
      return stop(troubles.exportDamaged(`what it tells of ${id}`));
    const job = { id, parts, ...(unreadable !== undefined && { unreadable }) };
    const before = known.get(id);
    known.set(
      id,
      before && JSON.stringify(before) !== JSON.stringify(job) ? { ...before, isTwice: true } : job,
    );
  }
  return [...known.values()];
}

/** A part of that job and of no other; a name that leads elsewhere is none. */
function isListed(id: string, value: unknown): value is ListedPart {
  const { name, size, crc } = (value ?? {}) as Record<string, unknown>;
  return (
    typeof name === "string" &&
    (jobOfPart(name) ?? jobOfRevisionPart(name)) === id &&
    Number.isSafeInteger(size) &&
    Number.isSafeInteger(crc)
  );
}

function isLastKnown(value: unknown): value is LastKnown {
  if (!areNotes(value)) return false;
  const { savedAt, sentence } = value as Partial<LastKnown>;
  return typeof savedAt === "string" && typeof sentence === "string";
}

function carriedOf(
  bytes: Uint8Array,
  { id, parts, unreadable, isTwice }: ListedJob,
  folder: string,
  byName: ReadonlyMap<string, readonly ArchiveEntry[]>,
): CarriedJob | string {
  if (isTwice) return "it is listed in the file twice, and not alike";
  const found: CarriedPart[] = [];
  for (const { name, size, crc } of parts) {
    const [entry, second] = byName.get(folder + name) ?? [];
    const isOwn = jobOfPart(name) === id;
    if (entry && second) return `${name} is in the file twice`;
    const content = entry && contentOf(bytes, entry, size, crc);
    // Without one of its frozen states a job is still one; what is missing is told then.
    if (content) found.push({ name, bytes: content });
    else if (isOwn) return entry ? "it is damaged in the file" : "it is not in the file";
  }
  return { id, parts: found, ...(unreadable && { unreadable }) };
}

/** @returns undefined where it is not what was exported */
function contentOf(
  bytes: Uint8Array,
  entry: ArchiveEntry,
  size: number,
  crc: number,
): Uint8Array | undefined {
  if (!isUnpackable(entry) || entry.size !== size || entry.crc !== crc) return undefined;
  try {
    return unpacked(bytes, entry);
  } catch (error) {
    if (error instanceof FileTrouble) return undefined;
    throw error;
  }
}

const isUnpackable = ({ flags, method, size, packedSize }: ArchiveEntry): boolean =>
  (flags & FLAG_ENCRYPTED) === 0 &&
  (method === 0 || method === 8) &&
  size <= MAX_PART_BYTES &&
  (size <= RATIO_FREE_BYTES || size <= packedSize * MAX_RATIO);

function decodedText(bytes: Uint8Array): string | undefined {
  try {
    // A mark of the order of bytes that an editor put there is taken off.
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
