/** Reviews one file: what a worker does, and the command itself when the files are few. */
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import type { Finding } from "../review/finding";
import { review } from "../review/review";
import type { ReviewOptions } from "../review/rule";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { fileBytes } from "./newJob";

export interface ReviewTask {
  readonly path: string;
  readonly options: ReviewOptions;
}

export interface ReviewedFile {
  readonly path: string;
  readonly job?: string;
  readonly findings: readonly Finding[];
  /** Why it could not be read; then there are no findings. */
  readonly unreadable?: string;
}

export default async function reviewFile({ path, options }: ReviewTask): Promise<ReviewedFile> {
  try {
    const read = await readXlsx(await fileBytes(path), { forReview: true });
    const job = namedValue(read, estimate.site.job.name);
    return {
      path,
      job: typeof job === "string" ? job : undefined,
      findings: review(read, recalculate, options),
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
