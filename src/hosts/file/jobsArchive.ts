/** All jobs, or some, in one file, and onto a shelf again. */
import type { BroughtIn } from "../../jobs/bringIn";
import type { BringInReport } from "../../jobs/broughtInWords";
import { nameInWords } from "../../jobs/entryInWords";
import { Refusal } from "../../jobs/refusal";
import type { Shelf } from "../../jobs/shelf";
import { isWrittenElsewhere } from "../../jobs/storage";
import { deflatedPart, packed, storedPart, type Part } from "./archive";
import { inMebibytes, stop, troubles } from "./fileTrouble";
import { JOBS_FORMAT, JOBS_LIST, JOBS_VERSION, type ListedPart } from "./jobsFile";
import { MAX_JOBS_FILE_BYTES, MAX_JOBS_PARTS } from "./limits";
import { readJobsArchive } from "./readJobsArchive";

/**
 * @param ids absent for all; the same jobs give the same bytes
 * @returns one ZIP archive
 * @throws Refusal where one of them is not here; FileTrouble where they are too many for one file
 */
export async function exportOf(shelf: Shelf, ids?: readonly string[]): Promise<Uint8Array> {
  const wanted = [...new Set(ids ?? shelf.list().map(({ id }) => id))].sort();
  const parts: Part[] = [];
  const jobs: object[] = [];
  let size = 0;
  for (const id of wanted) {
    const carried = await shelf.carried(id);
    const listed = carried.parts.map(({ name, bytes }): ListedPart => {
      const part = deflatedPart(name, bytes);
      parts.push(part);
      size += part.packed.length;
      return { name, size: part.size, crc: part.crc };
    });
    const { unreadable } = carried;
    jobs.push({ id, parts: listed, ...(unreadable && { unreadable }) });
    if (parts.length >= MAX_JOBS_PARTS) stop(troubles.tooMuchForOne(`more than ${MAX_JOBS_PARTS} parts`));
    if (size > MAX_JOBS_FILE_BYTES)
      stop(troubles.tooMuchForOne(`more than ${inMebibytes(MAX_JOBS_FILE_BYTES)}`));
  }
  const list = JSON.stringify({ format: JOBS_FORMAT, version: JOBS_VERSION, jobs }, null, 1);
  // First and as it is, so that whoever opens the file sees what it is.
  return packed([storedPart(JOBS_LIST, new TextEncoder().encode(list)), ...parts]);
}

/**
 * Brings in every job that can be read; what happened to each is in the report.
 * @throws FileTrouble where the file is no such export, or none of it can be read
 */
export async function bringIn(shelf: Shelf, bytes: Uint8Array): Promise<BringInReport> {
  const { jobs, remarks } = readJobsArchive(bytes);
  const report: BroughtIn[] = [];
  for (const { id, carried } of jobs) {
    const one = carried();
    if (typeof one === "string") {
      const name = nameInWords(shelf.list().find((entry) => entry.id === id)?.line);
      report.push({ id, name, outcome: "not read", remarks: [`It was not brought in: ${one}.`] });
      continue;
    }
    try {
      report.push(await shelf.bringIn(one));
    } catch (error) {
      // Another program has the jobs now, or has written them: whoever keeps them must know.
      if (isWrittenElsewhere(error) || (error instanceof Refusal && error.kind === "taken")) throw error;
      const name = nameInWords(one.unreadable?.line ?? shelf.list().find((entry) => entry.id === id)?.line);
      const why = error instanceof Error ? error.message : String(error);
      report.push({ id, name, outcome: "not read", remarks: [`It was not brought in: ${why}`] });
    }
  }
  return { jobs: report, remarks };
}
