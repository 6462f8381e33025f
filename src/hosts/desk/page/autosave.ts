/**
 * Sends every change to the server at once, one request after the other, and a
 * snapshot of the whole now and then. It is the library's transport: a change
 * counts as accepted in the grid straight away, whatever the server says. What
 * the server can't take waits in the browser. A window that only watches takes
 * the changes of the other one in.
 */
import type { Change, JobContent, JobDocument, JobNotes } from "../../../jobs/content";
import type { ShelfLine } from "../../../workbooks/shelfLine";
import { CHANGED_ELSEWHERE } from "../protocol";
import { api } from "./api";
import { messageOf, ServerTrouble } from "./deskTrouble";
import { pause } from "./dom";
import { keeper } from "./stand";
import type { WaitingLog, WaitingRoom } from "./waiting";

export type SavingState =
  | { readonly kind: "saved"; readonly at: string | undefined }
  | { readonly kind: "saving" }
  | { readonly kind: "watching" }
  | {
      readonly kind: "failed";
      readonly sentence: string;
      /** So many edits wait in this browser; absent where it keeps nothing. */
      readonly kept?: number;
    };

/** Browsers drop a larger request when its page closes. */
const KEEPALIVE_BYTES = 60_000;
const RETRY_MS = 2000;
const WATCH_MS = 1500;
/** The journal is folded into a snapshot after this many changes, once the user rests. */
const CHANGES_PER_SNAPSHOT = 200;
const REST_MS = 3000;
/** So long a server may take before it is told, and before a window that wants the job waits no longer. */
const PATIENCE_MS = 5000;

/** How often it is looked whether an answer is there. */
const STEP_MS = 20;
const GONE = 404;

type Listener = (message: Change) => void;

/** What was typed here and the server does not take any more. */
export interface Unfitting {
  readonly content: JobContent;
  readonly conflictOf: NonNullable<JobNotes["conflictOf"]>;
  readonly line: ShelfLine;
}

export interface AutosaveParts {
  readonly id: string;
  readonly shelf: string;
  readonly room: WaitingRoom;
  readonly report: (state: SavingState) => void;
  readonly exportDocument: () => JobDocument;
  /** What the list of jobs shows of it now. */
  readonly line: () => ShelfLine;
  /** Something was typed. */
  readonly edited: () => void;
  /** Another window has changed the job; or it is not there any more. */
  readonly lost: (isGone: boolean) => void;
}

export class Autosave {
  private pending: Change[] = [];
  private sending = false;
  private stopped = false;
  private watching = false;
  /** Another has the job: what is typed until that is settled is kept, and not sent. */
  private held = false;
  private id: string;
  private looking: Promise<boolean> | undefined;
  private sinceSnapshot = 0;
  private toldLine = "";
  private savedAt: string | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private rest: ReturnType<typeof setTimeout> | undefined;
  private waiting: Promise<WaitingLog | undefined> | undefined;
  /** What the waiting log holds. */
  private readonly inWaiting = new Set<Change>();
  private adding: Promise<unknown> = Promise.resolve();
  private dropEarlier: (() => Promise<void>) | undefined;
  private readonly listeners = new Map<string, Listener>();

  /**
   * @param base the job as the server holds it, or is to hold it
   * @param head the revision that the server holds, null where it is to be put down
   * @param given the number of the file that it was made from
   */
  constructor(
    private readonly parts: AutosaveParts,
    private base: JobContent,
    private head: string | null,
    private given?: number,
    /** What was typed on an earlier visit and is not at the server yet. */
    earlier?: { readonly changes: readonly Change[]; readonly drop: () => Promise<void> },
  ) {
    this.id = parts.id;
    if (!earlier) return;
    this.pending = [...earlier.changes];
    this.dropEarlier = earlier.drop;
  }

  get unsaved(): boolean {
    return !this.stopped && (this.pending.length > 0 || this.sending || this.head === null);
  }

  /** What the library's model takes as its transport. */
  readonly transport = {
    sendMessage: async (message: Change): Promise<void> => {
      // The library also tells where the cursor is; only changes of the document are kept.
      const isChange = message.nextRevisionId !== undefined;
      if (isChange && this.watching) return;
      this.deliver([message]);
      if (!isChange) return;
      this.parts.edited();
      this.pending.push(message);
      if (this.waiting || this.held) void this.keepWaiting();
      void this.flush();
    },
    onNewMessage: (id: string, listener: Listener): void => {
      this.listeners.set(id, listener);
    },
    leave: (id: string): void => {
      this.listeners.delete(id);
    },
  };

  private deliver(messages: readonly Change[]): void {
    for (const message of messages) for (const listener of this.listeners.values()) listener(message);
  }

  /** Sends what was typed on an earlier visit. */
  begin(): void {
    void this.flush();
  }

  /** Puts a new job down. */
  async create(): Promise<void> {
    if (this.head === null && !this.sending) await this.putSnapshot();
  }

  /** Hands over what is here, as far as the server takes it now. */
  async settle(): Promise<void> {
    const end = Date.now() + PATIENCE_MS;
    while (!this.stopped && !this.held && (this.pending.length > 0 || this.sending)) {
      const before = this.pending.length;
      if (Date.now() > end) return;
      if (this.sending) await pause(STEP_MS);
      else await this.flush();
      if (!this.sending && this.pending.length >= before) return;
    }
  }

  /** From here on the changes of another window come in, and none goes out. */
  watch(): void {
    this.watching = true;
    clearTimeout(this.rest);
    this.parts.report({ kind: "watching" });
    this.later(() => void this.look(), WATCH_MS);
  }

  /** @returns whether all that the other window did is here, so that this one can go on */
  async goOn(): Promise<boolean> {
    clearTimeout(this.timer);
    const isWhole = await this.look();
    if (!isWhole) return false;
    clearTimeout(this.timer);
    this.watching = false;
    this.parts.report({ kind: "saved", at: undefined });
    return true;
  }

  private look(): Promise<boolean> {
    this.looking ??= this.lookOnce().finally(() => (this.looking = undefined));
    return this.looking;
  }

  private async lookOnce(): Promise<boolean> {
    if (this.stopped || this.head === null || !this.watching) return false;
    try {
      const changes = await api.changesSince(this.id, this.head);
      if (this.stopped || !this.watching) return false;
      if (changes === null) {
        this.parts.lost(false);
        return false;
      }
      for (const change of changes) {
        this.deliver([change]);
        this.head = change.nextRevisionId;
      }
      this.base = { ...this.base, changes: [...this.base.changes, ...changes] };
      this.parts.report({ kind: "watching" });
      this.later(() => void this.look(), WATCH_MS);
      return true;
    } catch (error) {
      this.parts.report({ kind: "failed", sentence: messageOf(error) });
      if (isGone(error)) this.parts.lost(true);
      else this.later(() => void this.look(), RETRY_MS);
      return false;
    }
  }

  /** This job is no longer the one on the page. */
  stop(): void {
    this.stopped = true;
    clearTimeout(this.rest);
    clearTimeout(this.timer);
  }

  /** Another has the job: nothing is sent any more; what is typed all the same is kept. @returns false where it was told before */
  hold(): boolean {
    if (this.held) return false;
    this.held = true;
    clearTimeout(this.timer);
    clearTimeout(this.rest);
    return true;
  }

  /** The revision that the server holds; null where it holds none yet. */
  get serverHead(): string | null {
    return this.head;
  }

  /** Puts what is shown in the place of what the server holds. */
  async putWhole(): Promise<void> {
    await this.putSnapshot();
  }

  /** @returns whether all that was typed is at the server, or kept in this browser */
  async isSafe(): Promise<boolean> {
    return !this.unsaved || this.keepWaiting();
  }

  /** What is on its way may arrive yet, and is then no loss. @returns where the rest waits */
  async settled(): Promise<WaitingLog | undefined> {
    for (const end = Date.now() + PATIENCE_MS; this.sending && Date.now() < end;) await pause(STEP_MS);
    return this.waiting;
  }

  /**
   * The job is not there any more: what is here goes on under another id, as a
   * job of its own, and nothing that is typed meanwhile is left behind.
   */
  goOnAs(id: string): void {
    this.id = id;
    this.head = null;
    this.given = undefined;
    this.toldLine = "";
    this.held = false;
    void this.flush();
  }

  /** Stops. @returns what was typed here and is not at the server; undefined where all is */
  giveUp(): Unfitting | undefined {
    this.stop();
    if (this.pending.length === 0 || this.head === null) return undefined;
    return {
      content: { document: this.base.document, changes: [...this.base.changes, ...this.pending] },
      conflictOf: { job: this.id, after: this.head },
      line: this.parts.line(),
    };
  }

  /** Hands the whole document to the server, in the place of what it holds and the changes since. */
  private async putSnapshot(): Promise<void> {
    if (this.stopped || this.sending || this.held) return;
    // A new job is put down as it began: what was typed since follows it.
    const document = this.head === null ? this.base.document : this.parts.exportDocument();
    const covered = this.head === null ? new Set<Change>() : new Set(this.pending);
    const { id } = this;
    const { line } = this.parts;
    this.sending = true;
    this.parts.report({ kind: "saving" });
    try {
      const { savedAt } = await this.patiently(
        api.putJob(id, {
          document,
          after: this.head,
          line: line(),
          ...(this.head === null && { changes: this.base.changes, given: this.given }),
        }),
      );
      this.head =
        this.head === null
          ? (this.base.changes.at(-1)?.nextRevisionId ?? document.revisionId)
          : document.revisionId;
      if (covered.size > 0 || document !== this.base.document) this.base = { document, changes: [] };
      this.pending = this.pending.filter((change) => !covered.has(change));
      this.sinceSnapshot = 0;
      this.sending = false;
      this.done(savedAt);
      void this.flush();
    } catch (error) {
      this.sending = false;
      // The desk was started anew since, and knows no file of that number: the job then belongs to none.
      if (isGone(error)) this.given = undefined;
      this.fail(error, () => void this.putSnapshot());
    }
  }

  private async flush(): Promise<void> {
    if (this.sending || this.stopped || this.watching || this.held || this.pending.length === 0) return;
    if (this.head === null) return this.putSnapshot();
    this.sending = true;
    this.parts.report({ kind: "saving" });
    const batch = [...this.pending];
    try {
      const line = this.parts.line();
      const lineText = JSON.stringify(line);
      const body = { changes: batch, ...(lineText !== this.toldLine && { line }) };
      const small = JSON.stringify(body).length < KEEPALIVE_BYTES;
      const { savedAt } = await this.patiently(api.postChanges(this.id, body, small));
      this.toldLine = lineText;
      const sent = new Set(batch);
      this.pending = this.pending.filter((change) => !sent.has(change));
      this.head = batch.at(-1)!.nextRevisionId;
      this.base = { ...this.base, changes: [...this.base.changes, ...batch] };
      this.sinceSnapshot += batch.length;
      this.sending = false;
      this.done(savedAt);
      this.snapshotAtRest();
      void this.flush();
    } catch (error) {
      this.sending = false;
      this.fail(error, () => void this.flush());
    }
  }

  private done(savedAt: string): void {
    this.savedAt = savedAt;
    if (this.pending.length > 0) return;
    this.parts.report({ kind: "saved", at: savedAt });
    const { waiting, adding } = this;
    this.waiting = undefined;
    this.inWaiting.clear();
    void this.dropEarlier?.();
    this.dropEarlier = undefined;
    void adding.then(async () => (await waiting)?.drop());
  }

  private snapshotAtRest(): void {
    clearTimeout(this.rest);
    if (this.sinceSnapshot < CHANGES_PER_SNAPSHOT) return;
    this.rest = setTimeout(() => {
      if (!this.sending && !this.watching && this.pending.length === 0) void this.putSnapshot();
    }, REST_MS);
  }

  private fail(error: unknown, again: () => void): void {
    if (this.stopped) return;
    const gone = this.head !== null && isGone(error);
    const isLost = gone || (error instanceof ServerTrouble && error.status === CHANGED_ELSEWHERE);
    if (!this.unsaved) {
      // Only the whole could not be put down anew; all that was typed is there.
      this.parts.report({ kind: "saved", at: this.savedAt });
      if (isLost) this.parts.lost(gone);
      return;
    }
    void this.sayKept(error).then(() => {
      // Trying again can't help.
      if (isLost && !this.stopped) this.parts.lost(gone);
    });
    if (!isLost) this.later(again, RETRY_MS);
  }

  /** Keeps in the browser what the server has not taken, and says so. */
  private async sayKept(error: unknown): Promise<void> {
    const isKept = await this.keepWaiting();
    if (this.stopped || !this.unsaved) return;
    this.parts.report({
      kind: "failed",
      sentence: messageOf(error),
      ...(isKept && { kept: this.pending.length }),
    });
  }

  /** A server that takes long: what is on its way is kept here until it answers. */
  private async patiently<T>(answer: Promise<T>): Promise<T> {
    const timer = setTimeout(
      () => void this.sayKept(new Error(`${keeper} has not answered for some seconds`)),
      PATIENCE_MS,
    );
    try {
      return await answer;
    } finally {
      clearTimeout(timer);
    }
  }

  /** @returns whether all that the server does not have is kept in this browser */
  private keepWaiting(): Promise<boolean> {
    const work = async (): Promise<boolean> => {
      const { id } = this;
      const { shelf, room, line } = this.parts;
      const missing = this.pending.filter((change) => !this.inWaiting.has(change));
      if (!this.waiting) {
        const begun = room.begin(
          { job: id, shelf, after: this.head, content: this.base, line: line() },
          missing,
        );
        this.waiting = begun;
        if (await begun) for (const change of missing) this.inWaiting.add(change);
        // Tried again with the next edit, or the next failure.
        else if (this.waiting === begun) this.waiting = undefined;
        return (await begun) !== undefined;
      }
      const log = await this.waiting;
      if (!log || (missing.length > 0 && !(await log.add(missing)))) return false;
      for (const change of missing) this.inWaiting.add(change);
      return true;
    };
    const result = this.adding.then(work, work);
    this.adding = result;
    return result;
  }

  /** One try at a time: what waits is put off, and does not run beside another. */
  private later(again: () => void, ms: number): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(again, ms);
  }
}

const isGone = (error: unknown): boolean => error instanceof ServerTrouble && error.status === GONE;
