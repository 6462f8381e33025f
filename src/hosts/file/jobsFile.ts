/** How a file of jobs is laid out: its list, and for each job the things that hold it, under the names that they have on a shelf. */

/** The part that lists the others. */
export const JOBS_LIST = "rigsheet-jobs.json";
export const JOBS_FORMAT = "rigsheet jobs";
export const JOBS_VERSION = 1;

export interface ListedPart {
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  /** CRC-32: the archive has one too, but an archive that was packed again has that of whatever is in it then. */
  readonly crc: number;
}
