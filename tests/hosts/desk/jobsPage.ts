/** What the test's page runs: the list of jobs over actions that write down what was asked of them, and do it on entries in memory. */
import type { ShelfEntry } from "../../../src/jobs/catalogue";
import type { RevisionNote } from "../../../src/jobs/content";
import type { JobsActions } from "../../../src/hosts/desk/page/jobsActions";
import { JobsView } from "../../../src/hosts/desk/page/jobsView";

export interface JobsPage {
  /** What was asked for, but for the list. */
  calls: unknown[][];
  jobs: ShelfEntry[];
  /** The next action fails with this sentence. */
  failure: string | undefined;
  show(openId?: string): Promise<void>;
  hide(): void;
  readonly isShown: boolean;
}

const asked = (...call: unknown[]): void => {
  page.calls.push(call);
  const { failure } = page;
  page.failure = undefined;
  if (failure !== undefined) throw new Error(failure);
};

function put(id: string, change: (entry: ShelfEntry) => Partial<ShelfEntry>): void {
  page.jobs = page.jobs.map((one) => (one.id === id ? { ...one, ...change(one) } : one));
}

const frozen = ({ revisions, line }: ShelfEntry, why: string): { revisions: RevisionNote[] } => ({
  revisions: [
    ...revisions,
    { number: revisions.length + 1, at: "2026-11-28T12:00:00.000Z", why, key: "k", head: why, line },
  ],
});

const actions: JobsActions = {
  list: async () => {
    const { failure } = page;
    if (failure?.startsWith("list:")) throw new Error(failure.slice(5));
    return { jobs: structuredClone(page.jobs), notices: [], place: "/home/invented/jobs" };
  },
  open: (id) => asked("open", id),
  newJob: () => asked("newJob"),
  openFile: () => asked("openFile"),
  setState: async (id, state) => {
    asked("setState", id, state);
    put(id, (entry) => ({ state, ...((state === "sent" || state === "accepted") && frozen(entry, state)) }));
  },
  freeze: async (id, why) => {
    asked("freeze", id, why);
    put(id, (entry) => frozen(entry, why));
  },
  look: (id, revision) => asked("look", id, revision),
  compare: (id, revision) => asked("compare", id, revision),
  compareTwo: (id, older, newer) => asked("compareTwo", id, older, newer),
  restore: async (id, revision) => {
    asked("restore", id, revision);
    put(id, (entry) => frozen(entry, `before revision ${revision} was restored`));
  },
  copy: async (id, revision) => {
    asked("copy", id, revision);
    const of = page.jobs.find((one) => one.id === id)!;
    page.jobs = [
      ...page.jobs,
      { ...of, id: `${id}-copy`, state: "draft", revisions: [], savedAt: "2026-11-28T13:00:00.000Z" },
    ];
  },
  putAway: async (id, away) => {
    asked("putAway", id, away);
    put(id, () => ({ away }));
  },
  delete: async (id) => {
    asked("delete", id);
    page.jobs = page.jobs.filter((one) => one.id !== id);
  },
  exportAsItIs: async (id) => asked("exportAsItIs", id),
  exportAll: async () => {
    asked("exportAll");
    return "7 jobs are in rigsheet jobs 2026-11-28.zip, where the browser puts its downloads.";
  },
  chooseExport: async () => new File(["invented"], "jobs.zip"),
  bringIn: async (file) => {
    asked("bringIn", file.name);
    page.jobs = [...page.jobs, { ...page.jobs[0]!, id: "from-elsewhere" }];
    return "1 job brought in, 6 there already.";
  },
  close: () => {
    asked("close");
    view.hide();
  },
};
const view = new JobsView(document.getElementById("jobs")!, actions);

const page: JobsPage = {
  calls: [],
  jobs: [],
  failure: undefined,
  show: (openId) => view.show(openId),
  hide: () => view.hide(),
  get isShown() {
    return view.isShown;
  },
};
(globalThis as unknown as { jobsPage: JobsPage }).jobsPage = page;
