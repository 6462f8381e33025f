/** The keeping of jobs: adding a step to a log, opening one of many steps, against the bare file calls. */
import { mkdtempSync, rmSync } from "node:fs";
import { open, readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { DiskStorage } from "../hosts/storage/diskStorage";
import { Log } from "../jobs/log";

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
