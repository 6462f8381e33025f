/**
 * A log that loses nothing: a chain of segments, each beginning with a base
 * that says all that was so far and going on with entries. What makes it sound:
 *
 * - a segment is put down whole (`create`) before the one before it is given up;
 * - entries are only ever added behind records that this very program has put
 *   down and knows to be whole. After a write that failed, and after opening
 *   what another program left, the next step puts down a new segment instead of
 *   writing behind what stands there or cutting it off;
 * - opening reads the newest segment whose base is whole, as far as its records
 *   are whole. A segment with something unreadable in it is kept, and that is
 *   said;
 * - where another is seen to have written the same log, this one writes no more.
 */
import { decoded, encoded, type Tail } from "./record";
import { isWrittenElsewhere, type Storage } from "./storage";
import { timeInName } from "./timeInName";

/** What stands in a log: its base, and all that came after it. A segment's first record is one; each other is a list of entries. */
export interface Content<Base, Entry> {
  readonly base: Base;
  readonly entries: readonly Entry[];
}

/** What could not be read on opening, and where it lies now. */
export interface Unreadable {
  readonly keptAs: string;
  /** A segment of which nothing could be read. */
  readonly whole: boolean;
  readonly tail?: Tail;
}

const SEGMENT = /^(.*)\.(\d{1,9})\.log$/;
export const segmentName = (name: string, number: number): string => `${name}.${number}.log`;

/** @returns the logs' names with their segments, the oldest first */
export function segmentsOf(files: readonly string[]): Map<string, string[]> {
  const numbers = new Map<string, number[]>();
  for (const file of files) {
    const [, name, number] = SEGMENT.exec(file) ?? [];
    if (name === undefined) continue;
    const known = numbers.get(name);
    if (known) known.push(Number(number));
    else numbers.set(name, [Number(number)]);
  }
  return new Map(
    [...numbers].map(([name, found]) => [
      name,
      found.sort((a, b) => a - b).map((number) => segmentName(name, number)),
    ]),
  );
}

/** What is left of a log of which nothing can be read. */
export interface Unopened {
  readonly unreadable: readonly Unreadable[];
  /** The number of the last segment that was there. */
  readonly last: number;
}

export class Log<Base, Entry> {
  private queue: Promise<unknown> = Promise.resolve();
  /** Set once another was seen to write this log: a segment that is put down after its one would hide what it confirmed. */
  private overtaken: unknown;
  private readonly told = new Set<number>();
  /** Of what was there before, what nobody has looked into. */
  private readonly unread: ReadonlySet<number>;

  private constructor(
    private readonly storage: Storage,
    readonly name: string,
    /** The greatest number of a segment that is there, or may be. */
    private last: number,
    /** The newest segment that is known to be whole. */
    private whole: number,
    /** What has a newer whole segment after it, and is not known to be damaged. */
    private superseded: readonly number[],
    private held: { readonly base: Base; readonly entries: Entry[] },
    /** Records in the segment; undefined when what stands at its end is not known. */
    private records: number | undefined,
    readonly unreadable: readonly Unreadable[],
    private readonly isBase: (value: unknown) => value is Base,
  ) {
    this.unread = new Set(superseded);
  }

  get content(): Content<Base, Entry> {
    return this.held;
  }

  /** The segment that holds it now. */
  get file(): string {
    return segmentName(this.name, this.whole);
  }

  /**
   * Begins a log.
   * @param after the number of the last segment of one of that name of which nothing can be read
   * @throws where there is one of that name
   */
  static async begin<Base, Entry>(
    storage: Storage,
    name: string,
    base: Base,
    after = 0,
  ): Promise<Log<Base, Entry>> {
    const first = { base, entries: [] };
    await storage.create(segmentName(name, after + 1), encoded(0, first));
    return new Log<Base, Entry>(storage, name, after + 1, after + 1, [], first, 1, [], anything);
  }

  /**
   * Puts down a segment that lay elsewhere, byte for byte, as a log of its own.
   * @param number of the segment: greater than that of any of this name that is here
   * @throws where it is not whole
   */
  static async adopt<Base, Entry>(
    storage: Storage,
    name: string,
    number: number,
    bytes: Uint8Array,
    isBase: (value: unknown) => value is Base,
  ): Promise<Log<Base, Entry>> {
    const { payloads, tail } = decoded(bytes);
    const held = tail ? undefined : heldIn<Base, Entry>(payloads, isBase);
    if (!held) throw new Error(`${name} is not whole.`);
    await storage.create(segmentName(name, number), bytes);
    return new Log<Base, Entry>(storage, name, number, number, [], held, payloads.length, [], isBase);
  }

  /** @param isBase whether what was read can be such a base; a log of a later version can not */
  static async open<Base, Entry>(
    storage: Storage,
    name: string,
    isBase: (value: unknown) => value is Base,
  ): Promise<Log<Base, Entry> | Unopened> {
    const segments = (await storage.list())
      .flatMap((file) => {
        const [, of, number] = SEGMENT.exec(file) ?? [];
        return of === name ? [Number(number)] : [];
      })
      .sort((a, b) => a - b);
    const last = segments.at(-1) ?? 0;
    const unreadable: Unreadable[] = [];
    for (const segment of segments.toReversed()) {
      const file = segmentName(name, segment);
      const bytes = await storage.read(file);
      // An older one in its place would be taken for all that there is.
      if (!bytes) throw new Error(`${file} was taken away while it was read. Try again.`);
      const { payloads, tail } = decoded(bytes);
      const held = heldIn<Base, Entry>(payloads, isBase);
      if (!held) {
        unreadable.push({ keptAs: await aside(storage, file), whole: true });
        continue;
      }
      const older = segments.filter((one) => one < segment);
      const log = new Log(storage, name, last, segment, older, held, undefined, unreadable, isBase);
      if (tail) {
        // Where there is no room for a successor now, the next step makes it; until then the old one stays.
        const isDown = await log.rebase(held.base, held.entries).then(
          () => true,
          () => false,
        );
        const keptAs = isDown ? await aside(storage, file) : file;
        if (keptAs === file) log.keep(segment);
        unreadable.push({ keptAs, whole: false, tail });
      }
      return log;
    }
    return { unreadable, last };
  }

  /** Never to be dropped: a person was told of it. */
  private keep(segment: number): void {
    this.superseded = this.superseded.filter((one) => one !== segment);
    this.told.add(segment);
  }

  /**
   * Adds entries in one step: all of them stay once it returns.
   * @throws WrittenElsewhere once another has written this log: open it anew
   */
  append(entries: readonly Entry[]): Promise<void> {
    return this.inTurn(async () => {
      if (entries.length === 0) return;
      const { records, held } = this;
      if (records === undefined)
        return this.putDown({ base: held.base, entries: [...held.entries, ...entries] });
      // Unknown until it is known.
      this.records = undefined;
      await this.watched(this.storage.append(this.file, encoded(records, entries)));
      this.records = records + 1;
      // In place: a copy for each edit would cost the square of their number.
      held.entries.push(...entries);
    });
  }

  /** Puts a new base in the place of all so far, in one step. */
  rebase(base: Base, entries: readonly Entry[] = []): Promise<void> {
    return this.inTurn(() => this.putDown({ base, entries }));
  }

  private async putDown(content: Content<Base, Entry>): Promise<void> {
    if (this.overtaken) throw this.overtaken;
    // Counted before it is known: what failed to be put down may be there all the same.
    const next = ++this.last;
    this.records = undefined;
    await this.watched(this.storage.create(segmentName(this.name, next), encoded(0, content)));
    this.records = 1;
    this.held = { base: content.base, entries: [...content.entries] };
    const gone = this.superseded;
    // The one before stays, should this one be damaged by whatever else writes on the disk.
    this.superseded = this.told.has(this.whole) ? [] : [this.whole];
    this.whole = next;
    // The step is done; nobody need wait for this.
    void this.inTurn(() => this.giveUp(gone)).catch(() => undefined);
  }

  private async watched(work: Promise<void>): Promise<void> {
    try {
      await work;
    } catch (error) {
      if (isWrittenElsewhere(error)) this.overtaken = error;
      throw error;
    }
  }

  /** Takes old segments away. What can't be taken away lies there, and is older than what is read. */
  private async giveUp(old: readonly number[]): Promise<void> {
    for (const segment of old) {
      const file = segmentName(this.name, segment);
      // One of a damaged kind may be there that someone was told of, and that could not be moved aside then.
      if (this.unread.has(segment) && !(await this.isWhole(file))) await aside(this.storage, file);
      else await this.storage.drop(file).catch(() => undefined);
    }
  }

  private async isWhole(file: string): Promise<boolean> {
    const bytes = await this.storage.read(file).catch(() => undefined);
    const { payloads, tail } = decoded(bytes ?? new Uint8Array());
    return tail === undefined && isContent(payloads[0], this.isBase);
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.queue.then(work, work);
    this.queue = result.catch(() => undefined);
    return result;
  }
}

/** Where nothing was there before, nothing is read. */
const anything = <Base>(_value: unknown): _value is Base => true;

const isContent = <Base, Entry>(
  value: unknown,
  isBase: (value: unknown) => value is Base,
): value is Content<Base, Entry> =>
  typeof value === "object" &&
  value !== null &&
  isBase((value as Partial<Content<Base, Entry>>).base) &&
  Array.isArray((value as Partial<Content<Base, Entry>>).entries);

/** @returns undefined where the first record is no base */
function heldIn<Base, Entry>(
  [first, ...rest]: readonly unknown[],
  isBase: (value: unknown) => value is Base,
): { readonly base: Base; readonly entries: Entry[] } | undefined {
  return isContent<Base, Entry>(first, isBase)
    ? { base: first.base, entries: [...first.entries, ...(rest as Entry[][]).flat()] }
    : undefined;
}

/** @returns where it lies now: where it lay, if it could not be moved */
async function aside(storage: Storage, file: string): Promise<string> {
  const to = `damaged/${file}.${timeInName()}`;
  return storage.moveAside(file, to).then(
    () => to,
    () => file,
  );
}
