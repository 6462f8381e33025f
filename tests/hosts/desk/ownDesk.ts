/** A data folder for each test, the desks that were started on it, and small jobs to put there. */
import { randomUUID } from "node:crypto";
import { readdirSync } from "node:fs";
import path from "node:path";
import type { ShelfEntry } from "../../../src/jobs/catalogue";
import type { Change } from "../../../src/jobs/content";
import type { HeldJob } from "../../../src/jobs/shelf";
import type { ShelfLine } from "../../../src/workbooks/shelfLine";
import type { ShelfList, Snapshot } from "../../../src/hosts/desk/protocol";
import {
  askJson,
  freePort,
  refusedStart,
  remove,
  startDesk,
  temporaryFolder,
  write,
  type Started,
} from "./desk";

export interface OwnDesk {
  readonly folder: string;
  /** Starts one on the folder; it is ended with the test. */
  start(...args: string[]): Promise<Started>;
}

/** Registers with the test runner; to be called once in a file. */
export function ownDesk(): OwnDesk {
  let folder = "";
  const running: Started[] = [];
  beforeEach(() => void (folder = temporaryFolder()));
  afterEach(async () => {
    await Promise.all(running.splice(0).map((one) => one.kill()));
    remove(folder);
  });
  return {
    get folder() {
      return folder;
    },
    start: async (...args) => {
      const started = await startDesk("--data", folder, "--port", String(await freePort()), ...args);
      running.push(started);
      return started;
    },
  };
}

/** A second start, run to its end. It blocks this process, which then needs a moment to see which connections a server has closed meanwhile. */
export async function secondStart(...args: string[]): Promise<ReturnType<typeof refusedStart>> {
  const result = refusedStart(...args);
  await new Promise((resolve) => setTimeout(resolve, 100));
  return result;
}

export const newId = (): string => `job-${randomUUID()}`;

export const document = (revisionId: string, mark = "") => ({ revisionId, sheets: [{ mark }] });

export const change = (serverRevisionId: string, nextRevisionId: string): Change & { mark: string } => ({
  type: "REMOTE_REVISION",
  serverRevisionId,
  nextRevisionId,
  mark: `made ${nextRevisionId}`,
});

/** What a list shows of a job; invented. */
export const lineOf = (name: string): ShelfLine => ({
  number: "",
  revision: "",
  name,
  customer: "demonstration",
  date: "",
  currency: "",
  verdict: "",
});

/** Puts down a new job, or, after a revision, the whole of one in its place. */
export const put = (
  address: string,
  id: string,
  revision: string,
  { mark = "", after = null, ...more }: Partial<Snapshot> & { mark?: string } = {},
): Promise<Response> =>
  write(address, `jobs/${id}`, "PUT", JSON.stringify({ document: document(revision, mark), after, ...more }));

export const post = (address: string, url: string, body: unknown): Promise<Response> =>
  write(address, url, "POST", JSON.stringify(body));

export const edit = (address: string, id: string, ...changes: Change[]): Promise<Response> =>
  post(address, `jobs/${id}/changes`, { changes });

/** A job as it is, without making it the one that is open. */
export const held = (address: string, id: string): Promise<HeldJob> => askJson(address, `jobs/${id}?look`);

export const shelf = (address: string): Promise<ShelfList> => askJson(address, "jobs");

export const entry = async (address: string, id: string): Promise<ShelfEntry | undefined> =>
  (await shelf(address)).jobs.find((one) => one.id === id);

/** The newest segment of a job's log. */
export const logOf = (folder: string, id: string): string =>
  path.join(
    folder,
    readdirSync(folder)
      .filter((name) => name.startsWith(`${id}.`))
      .sort((a, b) => Number(a.split(".")[1]) - Number(b.split(".")[1]))
      .at(-1)!,
  );

/** Every file in a folder and below. */
export const filesIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((one) =>
    one.isDirectory() ? filesIn(path.join(folder, one.name)) : [path.join(folder, one.name)],
  );
