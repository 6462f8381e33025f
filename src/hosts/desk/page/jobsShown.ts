/** The list of all jobs over the grid, and what its buttons do. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import type { Outcome } from "../../../jobs/bringIn";
import { broughtInWords } from "../../../jobs/broughtInWords";
import type { CellOf } from "../../../compare/sameCell";
import type { JobContent } from "../../../jobs/content";
import { timeInWords } from "../../../jobs/entryInWords";
import { api } from "./api";
import { bookOf, showComparison } from "./comparing";
import { chooseFile } from "./dialogs";
import { download } from "./dom";
import type { JobsActions } from "./jobsActions";
import { JobsView } from "./jobsView";
import type { Remark } from "./offline";
import type { OpenJob } from "./openJob";
import { stand } from "./stand";

interface Around {
  readonly root: HTMLElement;
  readonly job: OpenJob;
  readonly focusGrid: () => void;
  /** The open job's selected cell. */
  readonly selected: () => CellOf;
  readonly run: (what: string, work: () => Promise<void>) => void;
  /** Tells the user something that stays until it is closed. */
  readonly say: (sentence: string) => void;
  readonly newJob: () => void;
  readonly openFile: () => void;
  readonly remarks: (entries: readonly ShelfEntry[]) => readonly Remark[];
}

export function jobsShown({
  root,
  job,
  focusGrid,
  selected,
  run,
  say,
  newJob,
  openFile,
  remarks,
}: Around): JobsView {
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
    newJob,
    openFile,
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
          // Of the job that is open as it is now, the selected cell is known.
          id === job.id && !job.isLooking ? selected() : undefined,
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
    exportAsItIs: async (id, name) => void (await exported(`${name}.zip`, id)),
    exportAll: async () => {
      const name = `rigsheet jobs ${timeInWords(new Date().toISOString()).slice(0, DATE_LENGTH)}.zip`;
      const count = await exported(name);
      return `${count === 1 ? "1 job is" : `${count} jobs are`} in ${name}, where the browser puts its downloads.`;
    },
    chooseExport: () => chooseFile(".zip"),
    bringIn: async (file) => {
      if (job.id !== undefined) await job.mustBeSaved(job.id);
      const report = await api.bringIn(file);
      const here = report.jobs.map((one) => ({ ...one, id: one.beside ?? one.id }));
      const inFile = here.filter(({ outcome }) => !NOT_AS_IN_FILE.has(outcome));
      const ids = new Set(inFile.map(({ id }) => id));
      const { jobs } = await actions.list();
      await wentOutside(jobs.filter(({ id }) => ids.has(id)));
      const isOther = here.some(({ id, outcome }) => id === job.id && SHOWN_ANEW.has(outcome));
      if (isOther && !job.isLooking) await job.open(job.id!);
      return `${broughtInWords(report)}${isOther ? " The job that is open is one of them, and is shown as it is now." : ""}`;
    },
    close: () => {
      view.hide();
      focusGrid();
    },
  };
  /** A file has now what was saved until then. */
  const wentOutside = async (jobs: readonly ShelfEntry[]): Promise<void> => {
    if (stand === "server") return;
    for (const { id, savedAt, outside, trouble } of jobs) {
      if (trouble || savedAt === outside) continue;
      if (id === job.id) await job.wentOutside(savedAt);
      else await api.noteJob(id, { outside: savedAt });
    }
  };
  /** @returns how many jobs the file has */
  const exported = async (name: string, id?: string): Promise<number> => {
    if (job.id !== undefined) await job.mustBeSaved(job.id);
    const all = (await actions.list()).jobs;
    const jobs = id === undefined ? all : all.filter((one) => one.id === id);
    download(await api.exportJobs(id === undefined ? undefined : [id]), name);
    await wentOutside(jobs);
    return jobs.length;
  };
  const view = new JobsView(root, actions);
  return view;
}

const DATE_LENGTH = 10;
/** What is here is not what the file has, or can't be read. */
const NOT_AS_IN_FILE = new Set<Outcome>(["ours is newer", "as it is", "not read"]);
/** What a window shows of it is no longer so. */
const SHOWN_ANEW = new Set<Outcome>(["theirs is newer", "brought in"]);

const compared = (
  olderName: string,
  older: JobContent,
  newerName: string,
  newer: JobContent,
  at?: CellOf,
): Promise<void> =>
  showComparison({ name: olderName, book: bookOf(older) }, { name: newerName, book: bookOf(newer) }, at);
