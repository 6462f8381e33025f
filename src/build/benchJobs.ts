/** The keeping of jobs: adding a step to a log, opening one of many steps, against the bare file calls. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { open, readdir, readFile, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { DiskStorage } from "../hosts/storage/diskStorage";
import { encoded } from "../jobs/record";
import { Log } from "../jobs/log";
import { Shelf } from "../jobs/shelf";

const STEPS = 1000;
/** About what one edit of a cell is, and what the document of 10,000 outlets is. */
const STEP = { at: "2026-11-02T08:00:00.000Z", changes: [{ type: "UPDATE_CELL", content: "x".repeat(300) }] };
const DOCUMENT = { sheets: ["y".repeat(12_000_000)] };
const LINE = Buffer.from(`${JSON.stringify(STEP)}\n`);

export interface JobTimes {
  readonly appendMs: number;
  readonly bareAppendMs: number;
  readonly openMs: number;
  readonly bareReadMs: number;
}

/** Jobs of a firm over some years, each of the size of a small one. */
const JOBS = 2000;
const SMALL = { revisionId: "r", sheets: ["z".repeat(30_000)] };

export interface ShelfTimes {
  /** The folder seen for the first time: every job is read. */
  readonly drawnMs: number;
  /** Every later start. */
  readonly startMs: number;
  readonly listMs: number;
  readonly bareStatMs: number;
}

/** @returns times of a shelf of 2,000 jobs, against just asking the system for each file's size */
export async function shelfTimes(): Promise<ShelfTimes> {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-bench-"));
  try {
    const base = { rigsheet: 3, savedAt: STEP.at, document: SMALL };
    for (let job = 0; job < JOBS; job++) {
      const number = String(job).padStart(12, "0");
      const line = { number, revision: "", name: "bench", customer: "", date: "", currency: "", verdict: "" };
      const notes = { state: "draft", away: false, revisions: [], line };
      writeFileSync(
        path.join(folder, `job-00000000-0000-0000-0000-${number}.1.log`),
        encoded(0, { base: { ...base, notes }, entries: [] }),
      );
    }
    const storage = new DiskStorage(folder);
    const drawnMs = await once(() => Shelf.open(storage));
    let shelf: Shelf | undefined;
    const startMs = await once(async () => (shelf = await Shelf.open(storage)));
    const listMs = await once(async () => JSON.stringify(shelf!.list()));
    const bareStatMs = await once(async () => {
      for (const name of await readdir(folder)) await stat(path.join(folder, name));
    });
    return { drawnMs, startMs, listMs, bareStatMs };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const isDocument = (value: unknown): value is typeof DOCUMENT => typeof value === "object" && value !== null;

/** @returns times of one added step, and of opening a log with a large document and all the steps */
export async function jobTimes(): Promise<JobTimes> {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-bench-"));
  try {
    const storage = new DiskStorage(folder);
    const log = await Log.begin<typeof DOCUMENT, typeof STEP>(storage, "job", DOCUMENT);
    const appendMs = await each(() => log.append([STEP]));
    const bare = path.join(folder, "bare");
    const bareAppendMs = await each(async () => {
      const file = await open(bare, "a");
      await file.writeFile(LINE);
      await file.sync();
      await file.close();
    });
    const openMs = await once(() => Log.open<typeof DOCUMENT, typeof STEP>(storage, "job", isDocument));
    const bareReadMs = await once(() => readFile(path.join(folder, log.file)));
    return { appendMs, bareAppendMs, openMs, bareReadMs };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function once(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

const each = async (work: () => Promise<unknown>): Promise<number> =>
  (await once(async () => {
    for (let step = 0; step < STEPS; step++) await work();
  })) / STEPS;
