/**
 * The jobs of a browser. Each of its windows has this program of its own, and
 * all of them work on one storage: one step at a time, and whoever finds that
 * another has written since reads anew before it goes on.
 */
import { Shelf } from "../../jobs/shelf";
import { isWrittenElsewhere, type Storage } from "../../jobs/storage";

/** A storage that tells whether others write to it. */
export interface WatchedStorage extends Storage {
  /** Another number than before once others have written. */
  writesOfOthers(): Promise<number>;
}

const LOCK = "rigsheet-shelf";

export class SharedShelf {
  private shelf: Shelf | undefined;
  private others = 0;
  private queue: Promise<unknown> = Promise.resolve();
  /** What the user must be told, from one reading of the jobs to the next. */
  readonly notices: string[] = [];

  constructor(private readonly storage: WatchedStorage) {}

  /** Does one step, while no other window does one. */
  use<T>(work: (shelf: Shelf) => Promise<T>): Promise<T> {
    const step = (): Promise<T> => alone(() => this.step(work));
    const result = this.queue.then(step, step);
    this.queue = result.catch(() => undefined);
    return result;
  }

  private async step<T>(work: (shelf: Shelf) => Promise<T>): Promise<T> {
    const others = await this.storage.writesOfOthers();
    if (!this.shelf || others !== this.others) {
      this.shelf = await Shelf.open(this.storage);
      this.others = others;
    }
    const { shelf } = this;
    try {
      return await work(shelf);
    } catch (error) {
      // Where no lock is to be had, as on an address without a certificate, it is noticed only so.
      if (isWrittenElsewhere(error)) this.shelf = undefined;
      throw error;
    } finally {
      this.notices.push(...shelf.notices.splice(0));
    }
  }
}

/** While it is done no other window of this browser does one. A browser without locks leaves it to the storage to notice. */
const alone = async <T>(work: () => Promise<T>): Promise<T> =>
  "locks" in navigator ? await navigator.locks.request(LOCK, work) : await work();
