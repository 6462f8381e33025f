/** Reviews many files, on the machine's cores when they are many. */
import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import path from "node:path";
import Piscina from "piscina";
import type { ReviewOptions } from "../review/rule";
import reviewFile, { type ReviewedFile, type ReviewTask } from "./reviewFile";

/** Starting a worker costs as much as a few workbooks. */
const FEWEST_FOR_WORKERS = 6;
/** A worker that needs more gives its file up, not the others'. */
const WORKER_HEAP_MB = 1024;
/** Tasks waiting for a free worker; the rest wait as names only. */
const WAITING_EACH = 2;

/** Stands beside the command once it is built. */
const WORKER = path.join(__dirname, "reviewWorker.js");

/** @param done called once for each file, in any order */
export async function reviewFiles(
  paths: readonly string[],
  options: ReviewOptions,
  done: (reviewed: ReviewedFile, index: number) => void,
): Promise<void> {
  if (paths.length < FEWEST_FOR_WORKERS || !existsSync(WORKER)) {
    for (const [index, one] of paths.entries()) done(await reviewFile({ path: one, options }), index);
    return;
  }
  const threads = Math.min(availableParallelism(), paths.length);
  const pool = new Piscina<ReviewTask, ReviewedFile>({
    filename: WORKER,
    minThreads: threads,
    maxThreads: threads,
    resourceLimits: { maxOldGenerationSizeMb: WORKER_HEAP_MB },
  });
  // A worker that dies takes its task with it, which is told below; the pool starts another.
  pool.on("error", () => undefined);
  let next = 0;
  const feed = async (): Promise<void> => {
    for (let index = next++; index < paths.length; index = next++) {
      const one = paths[index]!;
      done(await pool.run({ path: one, options }).catch(gaveUp(one)), index);
    }
  };
  await Promise.all(Array.from({ length: threads * WAITING_EACH }, feed));
  await pool.close();
}

const gaveUp =
  (file: string) =>
  (error: unknown): ReviewedFile => ({
    path: file,
    findings: [],
    unreadable: `Its review broke off (${error instanceof Error ? error.message : String(error)}).`,
  });
