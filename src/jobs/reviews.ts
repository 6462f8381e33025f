/**
 * What reviews of jobs found and what a person settled of it, beside the jobs and never inside a workbook: a log for
 * each job, and a list of whose it is. A job is known again by its quote number, by the very file, or by its own id.
 */
import type { KeptReview, ReviewNote } from "../review/again/keptReview";
import { knownAgain, type Known, type Settled } from "../review/again/knownAgain";
import type { Noted } from "../review/again/noted";
import { isVersioned, now, VERSION, type Versioned } from "./job";
import { Log, segmentsOf, type Unopened } from "./log";
import { Refusal } from "./refusal";
import type { Storage } from "./storage";

/** Which job a review is of, as far as it says so. */
export interface JobOfReview {
  /** Of the quote. */
  readonly number: string;
  readonly name: string;
  readonly customer: string;
  /** The file's SHA-256 in hexadecimal, the job's id on the shelf. */
  readonly marks: readonly string[];
}

export interface AskedReview {
  readonly job: JobOfReview;
  readonly review: Omit<ReviewNote, "at">;
  readonly noted: readonly Noted[];
  /** The rows of the job, each by the column that names it and what it is called. */
  readonly rows: readonly string[];
}

/** Says that a finding may stay, and why; without a reason, that it may not any more. */
export interface Settling {
  readonly id: string;
  readonly key: number;
  readonly reason?: string;
}

export const LONGEST_REASON = 2000;
/** More findings than these of one job nobody settles one by one. */
export const MOST_NOTED = 5000;

interface Line extends JobOfReview {
  readonly id: string;
}

interface ListBase extends Versioned {
  readonly lines: readonly Line[];
}
type ListEntry = { readonly line: Line } | { readonly gone: string };

interface RecordBase extends Versioned {
  readonly line: Line;
  readonly reviews: readonly ReviewNote[];
  readonly known: readonly Known[];
  readonly rows: readonly string[];
}
interface RecordEntry {
  readonly key: number;
  readonly settled?: Settled;
}

const LIST = "reviews";
const RECORD = /^review-(\d{1,9})$/;
const MOST_MARKS = 50;
const MOST_REVIEWS = 20;
/** With so many steps beyond one a job the list is put down anew. */
const SLACK = 500;

export class Reviews {
  private readonly lines = new Map<string, Line>();

  private constructor(
    private readonly storage: Storage,
    private log: Log<ListBase, ListEntry> | undefined,
    private readonly after: number,
    private last: number,
  ) {
    for (const line of log?.content.base.lines ?? []) this.lines.set(line.id, line);
    for (const entry of log?.content.entries ?? [])
      if ("line" in entry) this.lines.set(entry.line.id, entry.line);
      else this.lines.delete(entry.gone);
  }

  static async open(storage: Storage): Promise<Reviews> {
    const log = await Log.open<ListBase, ListEntry>(storage, LIST, isList);
    const ids = [...segmentsOf(await storage.list()).keys()].filter((name) => RECORD.test(name));
    const last = Math.max(0, ...ids.map((id) => Number(RECORD.exec(id)![1])));
    const reviews =
      log instanceof Log
        ? new Reviews(storage, log, 0, last)
        : new Reviews(storage, undefined, log.last, last);
    // The list says only what stands in the records.
    for (const id of ids) {
      if (reviews.lines.has(id)) continue;
      const record = await Log.open<RecordBase, RecordEntry>(storage, id, isRecord);
      if (record instanceof Log) await reviews.note({ line: { ...record.content.base.line, id } });
    }
    return reviews;
  }

  /** Keeps a review, and tells what of it was there before. */
  async take({ job, review, noted, rows }: AskedReview): Promise<KeptReview> {
    const found = this.find(job);
    const log = found && (await this.record(found.id));
    const before = log instanceof Log ? recordIn(log.content) : undefined;
    const at = now();
    const {
      now: again,
      gone,
      known,
    } = knownAgain(
      before?.known ?? [],
      noted.slice(0, MOST_NOTED),
      { before: before?.rows ?? [], now: rows },
      at,
    );
    const id = found?.id ?? `review-${++this.last}`;
    const line: Line = {
      id,
      number: job.number || (found?.number ?? ""),
      name: job.name || (found?.name ?? ""),
      customer: job.customer || (found?.customer ?? ""),
      marks: [...new Set([...(found?.marks ?? []), ...job.marks])].slice(-MOST_MARKS),
    };
    const base: RecordBase = {
      rigsheet: VERSION,
      line,
      reviews: [...(before?.reviews ?? []), { at, ...review }].slice(-MOST_REVIEWS),
      known,
      rows,
    };
    if (log instanceof Log) await log.rebase(base);
    else await Log.begin(this.storage, id, base, log?.last);
    if (JSON.stringify(line) !== JSON.stringify(found)) await this.note({ line });
    const earlier = before?.reviews.at(-1);
    return { id, ...(earlier && { earlier }), now: again, gone };
  }

  /** @throws Refusal where there is no such finding, or the reason is none */
  async settle({ id, key, reason }: Settling): Promise<Settled | undefined> {
    const said = reason?.trim();
    if (said === "")
      throw new Refusal(
        "conflict",
        "Say in a few words why it may stay; whoever reads the list next will ask.",
      );
    if (said !== undefined && said.length > LONGEST_REASON)
      throw new Refusal(
        "conflict",
        `The reason has ${said.length} characters; up to ${LONGEST_REASON} are kept. Say it shorter.`,
      );
    const log = this.lines.has(id) ? await this.record(id) : undefined;
    const known = log instanceof Log && recordIn(log.content).known.find((one) => one.key === key);
    if (!(log instanceof Log) || !known)
      throw new Refusal("missing", "That review is not kept any more. Check again, then settle it.");
    const settled = said === undefined ? undefined : { reason: said, at: now(), held: known.held };
    await log.append([{ key, ...(settled && { settled }) }]);
    return settled;
  }

  /** Lets go of what was kept of a job that is deleted, unless another on the shelf is the same. */
  async forget(job: string): Promise<void> {
    for (const line of [...this.lines.values()].filter(({ marks }) => marks.includes(job))) {
      const marks = line.marks.filter((one) => one !== job);
      if (marks.some(isOfShelf)) {
        const log = await this.record(line.id);
        if (log instanceof Log) await log.rebase({ ...recordIn(log.content), line: { ...line, marks } });
        await this.note({ line: { ...line, marks } });
        continue;
      }
      for (const segment of segmentsOf(await this.storage.list()).get(line.id) ?? [])
        await this.storage.drop(segment);
      await this.note({ gone: line.id });
    }
  }

  private find(job: JobOfReview): Line | undefined {
    const lines = [...this.lines.values()];
    return (
      lines.find(({ marks }) => marks.some((mark) => job.marks.includes(mark))) ??
      lines.find((line) => plain(job.number) !== "" && isSameQuote(line, job))
    );
  }

  private record(id: string): Promise<Log<RecordBase, RecordEntry> | Unopened> {
    return Log.open<RecordBase, RecordEntry>(this.storage, id, isRecord);
  }

  private async note(entry: ListEntry): Promise<void> {
    if ("line" in entry) this.lines.set(entry.line.id, entry.line);
    else this.lines.delete(entry.gone);
    const whole = { rigsheet: VERSION, lines: [...this.lines.values()] };
    if (!this.log) this.log = await Log.begin<ListBase, ListEntry>(this.storage, LIST, whole, this.after);
    else if (this.log.content.entries.length > this.lines.size + SLACK) await this.log.rebase(whole);
    else await this.log.append([entry]);
  }
}

/** What is no file's SHA-256 is a job's id. */
const isOfShelf = (mark: string): boolean => !/^[0-9a-f]{64}$/.test(mark);

const plain = (text: string): string => text.trim().replace(/\s+/g, " ").toLowerCase();

/** A number that was left when the job was copied for somebody else names two jobs. */
function isSameQuote(line: JobOfReview, job: JobOfReview): boolean {
  const differs = (one: string, other: string): boolean =>
    plain(one) !== "" && plain(other) !== "" && plain(one) !== plain(other);
  return (
    plain(line.number) === plain(job.number) &&
    !(differs(line.name, job.name) && differs(line.customer, job.customer))
  );
}

function recordIn({
  base,
  entries,
}: {
  readonly base: RecordBase;
  readonly entries: readonly RecordEntry[];
}): RecordBase {
  const settled = new Map(entries.map((one) => [one.key, one.settled]));
  return {
    ...base,
    known: base.known.map((one): Known => {
      if (!settled.has(one.key)) return one;
      return { ...one, settled: settled.get(one.key) };
    }),
  };
}

const isList = (value: unknown): value is ListBase =>
  isVersioned(value) && Array.isArray((value as Partial<ListBase>).lines);

const isRecord = (value: unknown): value is RecordBase =>
  isVersioned(value) &&
  typeof (value as Partial<RecordBase>).line === "object" &&
  Array.isArray((value as Partial<RecordBase>).reviews) &&
  Array.isArray((value as Partial<RecordBase>).known);
