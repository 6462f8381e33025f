/** Reviews one file: what a worker does, and the command itself when the files are few. */
import { basename } from "node:path";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { fingerprintOf } from "../hosts/file/fingerprint";
import { trials } from "../hosts/headless/recalculate";
import { askForReview } from "../jobs/askForReview";
import type { AskedReview } from "../jobs/reviews";
import { reviewInFull } from "../review/reviewInFull";
import type { PageFile } from "../review/reviewPage";
import type { ReviewOptions } from "../review/rule";
import { fileBytes } from "./newJob";

export interface ReviewTask {
  readonly path: string;
  readonly options: ReviewOptions;
}

export interface ReviewedFile extends PageFile {
  /** To be kept; absent where it could not be read. */
  readonly asked?: AskedReview;
}

export default async function reviewFile({ path, options }: ReviewTask): Promise<ReviewedFile> {
  try {
    const bytes = await fileBytes(path);
    const read = await readXlsx(bytes, { forReview: true });
    const fingerprint = await fingerprintOf(bytes);
    const full = reviewInFull(read, trials, options);
    const { findings, headline, facts } = full;
    return {
      path,
      ...(fingerprint !== undefined && { fingerprint }),
      findings,
      ...(headline && { headline }),
      facts,
      asked: askForReview(read, full, basename(path), fingerprint === undefined ? [] : [fingerprint]),
    };
  } catch (error) {
    // One broken file never stops the others, whatever is wrong with it.
    const why = error instanceof Error ? error.message : String(error);
    return {
      path,
      findings: [],
      unreadable: error instanceof FileTrouble ? why : `It could not be computed (${why}).`,
    };
  }
}
