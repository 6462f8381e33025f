/** What was typed in a window that had lost its job: kept as a job of its own, and offered until it is put in, or put away. */
import type { JobContent } from "../../../jobs/content";
import type { HeldJob } from "../../../jobs/shelf";
import { labelInWords } from "../../../workbooks/jobLabel";
import { api } from "./api";
import { bookOf, showComparison } from "./comparing";
import { ask } from "./dialogs";
import { make } from "./dom";
import type { OpenJob } from "./openJob";
import { putIn, type Clash } from "./putIn";
import type { Strip } from "./strip";

/** So many clashing cells are listed. */
const MOST_LISTED = 12;

interface Around {
  readonly job: OpenJob;
  readonly strip: Strip;
  readonly run: (what: string, work: () => Promise<void>) => void;
}

/** @param id of the job that holds it */
export async function offer(id: string, { job, strip, run }: Around): Promise<void> {
  const held = await api.held(id);
  const { conflictOf, line } = held.notes;
  const edits = conflictOf ? mineOf(held).length : held.changes.length;
  const title = (line && labelInWords(line)) || "a job";
  const what = edits === 1 ? "1 edit" : `${edits} edits`;
  const isOpen = job.id === id;
  const isApart = conflictOf !== undefined && !isKnown(held);
  const said = conflictOf
    ? `${isApart ? `“${title}” was changed in two places since a state that is not known any more` : `${what} of “${title}” did not fit any more, since the job was changed elsewhere meanwhile`}. ${isOpen ? "This is the job with them" : "They are kept as a job of its own, under Jobs"}.`
    : `The job “${title}” was not here any more; what was typed in it is kept as a job of its own, under Jobs.`;
  const open = { label: "Open it", act: () => run("Opening the job…", () => job.open(id)) };
  if (!conflictOf) return strip.show(said, isOpen ? [] : [open]);
  strip.show(said, [
    ...(isApart
      ? []
      : [
          {
            label: "Put them into the job",
            act: () => run("Putting the edits in…", () => putInto(held, job)),
          },
        ]),
    { label: "Compare", act: () => run("Comparing…", () => compareWith(held)) },
    ...(isOpen ? [] : [open]),
    { label: "Later", act: () => strip.hide() },
  ]);
}

async function compareWith(held: HeldJob): Promise<void> {
  if (!isKnown(held))
    return await showComparison(
      { name: "The job now", book: bookOf(await api.held(held.notes.conflictOf!.job)) },
      { name: "This one", book: bookOf(held) },
    );
  await showComparison(
    { name: "The job before these edits", book: bookOf(commonOf(held)) },
    { name: "The job with these edits", book: bookOf(held) },
  );
}

async function putInto(held: HeldJob, open: OpenJob): Promise<void> {
  const { job, after } = held.notes.conflictOf!;
  if (open.id !== job || open.isLooking) await open.open(job);
  if (!open.mayEdit) await open.takeOver();
  await open.mustBeSaved(job);
  const theirs = await api.changesSince(job, after);
  const merged =
    theirs === null
      ? "The job was put down anew since, so it is not known any more where these edits belong. Compare the two and type them again."
      : putIn(commonOf(held), theirs, mineOf(held));
  if (typeof merged === "string") throw new Error(merged);
  const { commands, clashes, homeless } = merged;
  if (clashes.length + homeless.length > 0 && !(await askAboutClashes(clashes, homeless))) return;
  await api.freeze(job, "before edits of another window were put in");
  await open.type(commands, theirs!.at(-1)?.nextRevisionId ?? after);
  // Put away, it can be brought back; what found no place stays where it is seen.
  if (homeless.length === 0) await api.noteJob(held.id, { away: true });
}

async function askAboutClashes(clashes: readonly Clash[], homeless: readonly string[]): Promise<boolean> {
  const more = clashes.length - MOST_LISTED;
  const answer = await ask(
    clashes.length > 0 ? "Both have changed these cells" : "Not all of it has a place any more",
    [
      make("p", {}, "What stands in the job now is kept as a revision, whichever you choose."),
      make(
        "ul",
        {},
        ...clashes
          .slice(0, MOST_LISTED)
          .map(({ sheet, cell, theirs, mine }) =>
            make("li", {}, `${sheet} ${cell}: now ${theirs || "blank"}, here ${mine || "blank"}`),
          ),
        ...(more > 0 ? [make("li", {}, `and ${more} more`)] : []),
        ...homeless.map((one) =>
          make("li", {}, `${one}: its row or sheet was removed; it stays in the job of its own`),
        ),
      ),
    ],
    [
      { label: "Put these edits in", value: "in" },
      { label: "Cancel", value: "" },
    ],
  );
  return answer === "in";
}

/** Whether it still holds the state from which the two went apart; of one that was brought in it may be long past. */
const isKnown = ({ document, changes, notes: { conflictOf } }: HeldJob): boolean =>
  document.revisionId === conflictOf!.after ||
  changes.some(({ nextRevisionId }) => nextRevisionId === conflictOf!.after);

const splitAt = ({ changes, notes }: HeldJob): number =>
  changes.findIndex(({ nextRevisionId }) => nextRevisionId === notes.conflictOf!.after) + 1;

const mineOf = (held: HeldJob): HeldJob["changes"] => held.changes.slice(splitAt(held));

const commonOf = (held: HeldJob): JobContent => ({
  document: held.document,
  changes: held.changes.slice(0, splitAt(held)),
});
