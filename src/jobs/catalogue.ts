/**
 * The list of all jobs without their content, so that two thousand need not be
 * read to be listed. It is drawn from the jobs' own logs and can be drawn again:
 * each line tells how large its log was, and one that has another size is read
 * anew. Which job was open last stands here too; lost, the newest is taken.
 */
import type { JobNotes } from "./content";
import { isVersioned, VERSION, type Versioned } from "./job";
import { Log, segmentsOf } from "./log";
import { Newer } from "./refusal";
import type { Storage } from "./storage";

/** A job as its list shows it. */
export interface ShelfEntry extends JobNotes {
  readonly id: string;
  /** Of the last edit; empty where it was never read. */
  readonly savedAt: string;
  /** Why it can't be shown, and what of it is kept. */
  readonly trouble?: { readonly sentence: string; readonly kept: readonly string[] };
}

export interface CatalogueLine extends ShelfEntry {
  /** The segment and its length by which the line was drawn. */
  readonly seen: string;
}

interface Base extends Versioned {
  readonly lines: readonly CatalogueLine[];
  readonly open?: string;
}
type Entry = { readonly line: CatalogueLine } | { readonly gone: string } | { readonly open: string };

const NAME = "catalogue";
/** With so many steps beyond one a job it is put down anew. */
const SLACK = 500;

export class Catalogue {
  private readonly lines = new Map<string, CatalogueLine>();
  private open_: string | undefined;
  private waiting: Entry[] = [];

  private constructor(
    private readonly storage: Storage,
    private log: Log<Base, Entry> | undefined,
    private readonly after: number,
  ) {
    if (!log) return;
    for (const line of log.content.base.lines) this.lines.set(line.id, line);
    this.open_ = log.content.base.open;
    for (const entry of log.content.entries) this.take(entry);
  }

  static async open(storage: Storage): Promise<Catalogue> {
    const log = await Log.open<Base, Entry>(storage, NAME, isBase).catch(async (error: unknown) => {
      if (error instanceof Newer) throw error;
      // Nothing is in it but what the jobs tell: it must not keep them from opening.
      return {
        last: numberOf(
          segmentsOf(await storage.list())
            .get(NAME)
            ?.at(-1),
        ),
      };
    });
    return log instanceof Log ? new Catalogue(storage, log, 0) : new Catalogue(storage, undefined, log.last);
  }

  /** Nothing of one was here, or could be read. */
  get isFresh(): boolean {
    return this.log === undefined;
  }

  get all(): Iterable<CatalogueLine> {
    return this.lines.values();
  }

  get lastOpen(): string | undefined {
    return this.open_;
  }

  of(id: string): CatalogueLine | undefined {
    return this.lines.get(id);
  }

  /** Takes it in; {@link write} puts it down. */
  note(...entries: Entry[]): void {
    for (const entry of entries) this.take(entry);
    this.waiting.push(...entries);
  }

  /**
   * What can't be put down now waits for the next time; until then a start draws it anew.
   * @returns whether all is down
   */
  async write(): Promise<boolean> {
    const entries = this.waiting;
    if (entries.length === 0) return true;
    this.waiting = [];
    try {
      const { log } = this;
      if (!log) this.log = await Log.begin<Base, Entry>(this.storage, NAME, this.whole, this.after);
      else if (log.content.entries.length > this.lines.size + SLACK) await log.rebase(this.whole);
      else await log.append(entries);
      return true;
    } catch {
      this.waiting = [...entries, ...this.waiting];
      return false;
    }
  }

  private get whole(): Base {
    return { rigsheet: VERSION, lines: [...this.lines.values()], open: this.open_ };
  }

  private take(entry: Entry): void {
    if ("line" in entry) this.lines.set(entry.line.id, entry.line);
    else if ("gone" in entry) this.lines.delete(entry.gone);
    else this.open_ = entry.open;
  }
}

const numberOf = (segment = ""): number => Number(/\.(\d+)\.log$/.exec(segment)?.[1] ?? 0);

const isBase = (value: unknown): value is Base =>
  isVersioned(value) && Array.isArray((value as Partial<Base>).lines);
