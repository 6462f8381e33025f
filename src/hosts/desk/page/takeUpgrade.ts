/** The upgraded workbook in the place of the shown job, which is frozen as it is before: Restore brings it back. */
import type { Book } from "../../../workbooks/book";
import { shelfLineOf } from "../../../workbooks/shelfLine";
import { api } from "./api";
import { documentOf } from "./desk";
import type { OpenJob } from "./openJob";

/** @returns what was done, in a sentence */
export async function takeUpgrade(job: OpenJob, book: Book, from: string, to: string): Promise<string> {
  const { file } = job;
  await job.replaceContent(async (id, after) => {
    await api.freeze(id, `before the upgrade from version ${from || "unknown"} to ${to}`);
    // Before the content, so that Save never writes over the older file unasked.
    if (file) await api.noteJob(id, { file: null });
    await api.putJob(id, { document: documentOf(book), after, line: shelfLineOf(book) });
  });
  const left = file ? ` It belongs to no file now: ${file.name} is as it was, and Save makes a new one.` : "";
  return `The job is of version ${to} now. As it was before it is kept as a revision, under Jobs: Restore brings it back.${left}`;
}
