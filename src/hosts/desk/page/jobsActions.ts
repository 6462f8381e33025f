/** What can be done from the list of jobs; the page does it. */
import type { JobState } from "../../../jobs/content";
import type { ShelfEntry } from "../../../jobs/catalogue";
import type { ShelfList } from "../protocol";
import type { Remark } from "./offline";

export interface JobsActions {
  list(): Promise<ShelfList>;
  /** What is to be said above the list, of all jobs together. */
  remarks?(entries: readonly ShelfEntry[]): readonly Remark[];
  /** Opens the job in this window. */
  open(id: string): void;
  newJob(): void;
  openFile(): void;
  setState(id: string, state: JobState): Promise<void>;
  freeze(id: string, why: string): Promise<void>;
  /** Shows a frozen revision, to be read only. */
  look(id: string, revision: number): void;
  /** A frozen revision against the job as it is now. */
  compare(id: string, revision: number): void;
  compareTwo?(id: string, older: number, newer: number): void;
  restore(id: string, revision: number): Promise<void>;
  copy(id: string, revision?: number): Promise<void>;
  putAway(id: string, away: boolean): Promise<void>;
  delete(id: string): Promise<void>;
  /** @param name of the file, without its ending */
  exportAsItIs(id: string, name: string): Promise<void>;
  /** @returns a sentence that says where all of them are now */
  exportAll(): Promise<string>;
  /** @returns undefined where none is chosen */
  chooseExport(): Promise<File | undefined>;
  /** @returns what became of the jobs of an export, in sentences */
  bringIn(file: File): Promise<string>;
  close(): void;
}
