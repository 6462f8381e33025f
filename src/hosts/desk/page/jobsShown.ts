/** The list of all jobs over the grid, and what its buttons do. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import type { JobContent } from "../../../jobs/content";
import { api } from "./api";
import { bookOf, showComparison } from "./comparing";
import { download } from "./dom";
import type { JobsActions } from "./jobsActions";
import { JobsView } from "./jobsView";
import type { Remark } from "./offline";
import type { OpenJob } from "./openJob";

interface Around {
  readonly root: HTMLElement;
  readonly job: OpenJob;
  readonly focusGrid: () => void;
  readonly run: (what: string, work: () => Promise<void>) => void;
  /** Tells the user something that stays until it is closed. */
  readonly say: (sentence: string) => void;
  readonly newJob: () => void;
  readonly openFile: () => void;
  readonly remarks: (entries: readonly ShelfEntry[]) => readonly Remark[];
}

export function jobsShown({ root, job, focusGrid, run, say, newJob, openFile, remarks }: Around): JobsView {
  const leave = (act: () => void) => (): void => {
    view.hide();
    act();
  };
  const opening = (what: string, work: () => Promise<void>): void =>
    run(what, async () => {
      try {
        await work();
      } catch (error) {
        // It may have been seen only now that it can't be read.
        await view.refresh();
        throw error;
      }
      view.hide();
    });
  const actions: JobsActions = {
    list: async () => {
      const found = await api.jobs();
      if (found.notices.length > 0) say(found.notices.join(" "));
      return found;
    },
    remarks,
    open: (id) => opening("Opening the job…", () => job.open(id)),
    newJob: leave(newJob),
    openFile: leave(openFile),
    setState: (id, state) => job.noted(id, () => api.noteJob(id, { state })),
    freeze: (id, why) => job.noted(id, () => api.freeze(id, why)),
    look: (id, revision) => opening("Opening the revision…", () => job.look(id, revision)),
    compare: (id, revision) =>
      run("Comparing…", async () => {
        await job.settle(id);
        await compared(
          `Revision ${revision}`,
          await api.revision(id, revision),
          "The job now",
          await api.held(id),
        );
      }),
    compareTwo: (id, older, newer) =>
      run("Comparing…", async () =>
        compared(
          `Revision ${older}`,
          await api.revision(id, older),
          `Revision ${newer}`,
          await api.revision(id, newer),
        ),
      ),
    restore: async (id, revision) => {
      await job.restore(id, revision);
      view.hide();
    },
    copy: async (id, revision) => {
      await job.copy(id, revision);
      view.hide();
    },
    putAway: (id, away) => job.noted(id, () => api.noteJob(id, { away })),
    delete: async (id) => {
      if (id === job.id)
        throw new Error("This job is open in this window. Open another one first, then delete it.");
      await api.deleteJob(id);
    },
    exportAsItIs: async (id) => download(await api.asItIs(id), `${id}.zip`),
    close: leave(focusGrid),
  };
  const view = new JobsView(root, actions);
  return view;
}

const compared = (
  olderName: string,
  older: JobContent,
  newerName: string,
  newer: JobContent,
): Promise<void> =>
  showComparison({ name: olderName, book: bookOf(older) }, { name: newerName, book: bookOf(newer) });
