/**
 * What could not be handed to the server: it waits in the browser, in a log of
 * its own for each job and window, also after the window is closed.
 */
import { BrowserStorage } from "../../storage/browserStorage";
import { isDocument, type Change, type JobContent } from "../../../jobs/content";
import { Log, segmentsOf } from "../../../jobs/log";
import type { ShelfLine } from "../../../workbooks/shelfLine";
import { uuid } from "./uuid";

const PREFIX = "waiting-";

interface Base {
  readonly job: string;
  /** Of the data folder that it belongs to: another desk may answer at the same address. */
  readonly shelf: string;
  /** The revision that the first change follows; null where the job itself could not be put down. */
  readonly after: string | null;
  /** The job as it was then. */
  readonly content: JobContent;
  readonly line: ShelfLine;
}

/** What waits of one job. */
export interface Waiting extends Base {
  readonly name: string;
  readonly changes: readonly Change[];
}

export class WaitingRoom {
  private constructor(private readonly storage: BrowserStorage | undefined) {}

  /** A browser that keeps nothing for pages still shows the desk. */
  static async open(): Promise<WaitingRoom> {
    const storage = await BrowserStorage.open("rigsheet-waiting").catch(() => undefined);
    return new WaitingRoom(storage);
  }

  /** Begins to keep what waits of a job. @returns undefined where this browser keeps nothing */
  async begin(base: Base, changes: readonly Change[]): Promise<WaitingLog | undefined> {
    if (!this.storage) return undefined;
    try {
      const name = `${PREFIX}${base.job}-${uuid()}`;
      const log = await Log.begin<Base, Change>(this.storage, name, base);
      await log.append(changes);
      return new WaitingLog(log, () => this.drop(name));
    } catch {
      return undefined;
    }
  }

  /** Everything that waits. */
  async all(): Promise<Waiting[]> {
    if (!this.storage) return [];
    const found: Waiting[] = [];
    // What can't be read now waits on: it must not keep the page from starting.
    const names = await this.storage.list().catch(() => []);
    for (const name of segmentsOf(names).keys()) {
      if (!name.startsWith(PREFIX)) continue;
      const log = await Log.open<Base, Change>(this.storage, name, isBase).catch(() => undefined);
      if (log instanceof Log) found.push({ ...log.content.base, name, changes: log.content.entries });
    }
    return found;
  }

  /** It has been handed over. */
  async drop(name: string): Promise<void> {
    const files = this.storage ? segmentsOf(await this.storage.list()).get(name) : undefined;
    for (const file of files ?? []) await this.storage!.drop(file);
  }
}

export class WaitingLog {
  constructor(
    private readonly log: Log<Base, Change>,
    readonly drop: () => Promise<void>,
  ) {}

  /** @returns whether it is kept */
  async add(changes: readonly Change[]): Promise<boolean> {
    return this.log.append(changes).then(
      () => true,
      () => false,
    );
  }
}

const isBase = (value: unknown): value is Base => {
  const base = value as Partial<Base> | null;
  return (
    typeof base?.job === "string" && typeof base.shelf === "string" && isDocument(base.content?.document)
  );
};
