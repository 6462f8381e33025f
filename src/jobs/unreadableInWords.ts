import { labelInWords } from "../workbooks/jobLabel";
import type { JobNotes } from "./content";
import type { Unreadable } from "./log";

/** What a person is told of what could not be read of a job that can be shown. */
export function unreadableInWords({ keptAs, whole, tail }: Unreadable, { line }: JobNotes): string {
  const title = (line && labelInWords(line)) || "a job";
  if (whole)
    return `The newest state of ${title} could not be read: its file is damaged. It is kept as ${keptAs}; the job is shown as it was before.`;
  return tail?.cutShort === true
    ? `What was saved last of ${title} was cut short in its last ${tail.length} bytes; an edit that was being written then is not in it. What there is of it is kept as ${keptAs}.`
    : `The last ${tail?.length ?? 0} bytes of ${title} could not be read. They are kept as ${keptAs}; check the rows that were edited last.`;
}
