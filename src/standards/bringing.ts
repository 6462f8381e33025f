import { multiRoom } from "../workbooks/multiRoom/definition";
import { estimate } from "../workbooks/multiRoom/names";
import { brought } from "./brought";
import type { Difference } from "./differences";
import { entriesOf, type Entry } from "./entries";
import { doneInWords } from "./inWords";
import type { UpToDate } from "./upToDate";

/**
 * What has to be typed to bring the job up to date, its log's line included.
 * @param today as a sheet has dates
 */
export function bringing(
  found: UpToDate,
  chosen: readonly Difference[],
  { today, after }: { readonly today: number; readonly after?: number },
): Entry[] {
  const { job, standards, total } = found;
  const who = job.fields?.[estimate.site.prepared_by.name];
  const line = {
    date: today,
    ...(who !== undefined && { who }),
    what: doneInWords(found, chosen),
    why: "the firm's standards",
    ...(total !== undefined && { before: total }),
    ...(after !== undefined && { after }),
  };
  return entriesOf(multiRoom, job, brought(job, standards, chosen, line));
}
