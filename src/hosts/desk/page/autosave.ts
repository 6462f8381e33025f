/**
 * Sends every change to the server at once, one request after the other, and a
 * snapshot of the whole now and then. It is the library's transport: a change
 * counts as accepted in the grid straight away, whatever the server says.
 */
import type { Change, DeskDocument } from "../protocol";
import { api, ServerTrouble } from "./api";

export type SavingState =
  | { readonly kind: "saved"; readonly at: string | undefined }
  | { readonly kind: "saving" }
  | { readonly kind: "failed"; readonly sentence: string };

/** Browsers drop a larger request when its page closes. */
const KEEPALIVE_BYTES = 60_000;
const RETRY_MS = 2000;
/** The journal is folded into a snapshot after this many changes, once the user rests. */
const CHANGES_PER_SNAPSHOT = 200;
const REST_MS = 3000;

type Listener = (message: Change) => void;

export class Autosave {
  private pending: Change[] = [];
  private sending = false;
  private stopped = false;
  private sinceSnapshot = 0;
  private rest: ReturnType<typeof setTimeout> | undefined;
  private retry: ReturnType<typeof setTimeout> | undefined;
  private readonly listeners = new Map<string, Listener>();

  /**
   * @param head the revision that the server holds, null for none
   * @param report told of every change of state
   */
  constructor(
    private head: string | null,
    private readonly report: (state: SavingState) => void,
    private readonly exportDocument: () => DeskDocument,
  ) {}

  get unsaved(): boolean {
    return !this.stopped && (this.pending.length > 0 || this.sending);
  }

  /** What the library's model takes as its transport. */
  readonly transport = {
    sendMessage: async (message: Change): Promise<void> => {
      for (const listener of this.listeners.values()) listener(message);
      // The library also tells where the cursor is; only changes of the document are kept.
      if (message.nextRevisionId === undefined) return;
      this.pending.push(message);
      void this.flush();
    },
    onNewMessage: (id: string, listener: Listener): void => {
      this.listeners.set(id, listener);
    },
    leave: (id: string): void => {
      this.listeners.delete(id);
    },
  };

  /**
   * Hands the whole document to the server.
   * @param replaces another job's place
   * @param fromFile made from the file that was given at the start
   */
  async putSnapshot(replaces: boolean, fromFile = false): Promise<string | undefined> {
    if (this.stopped) return undefined;
    if (this.sending) {
      this.later(() => void this.putSnapshot(replaces, fromFile));
      return undefined;
    }
    const document = this.exportDocument();
    const covered = new Set(this.pending);
    this.sending = true;
    this.report({ kind: "saving" });
    try {
      const { savedAt, keptAs } = await api.putJob({ document, after: this.head, replaces, fromFile });
      this.head = document.revisionId;
      this.pending = this.pending.filter((change) => !covered.has(change));
      this.sinceSnapshot = 0;
      this.sending = false;
      this.report({ kind: "saved", at: savedAt });
      void this.flush();
      return keptAs;
    } catch (error) {
      this.sending = false;
      this.fail(error, () => void this.putSnapshot(replaces, fromFile));
      return undefined;
    }
  }

  /** This job is no longer the one on the page. */
  stop(): void {
    this.stopped = true;
    clearTimeout(this.rest);
    clearTimeout(this.retry);
  }

  /** The head that another job replaces. */
  get serverHead(): string | null {
    return this.head;
  }

  private async flush(): Promise<void> {
    if (this.sending || this.stopped || this.pending.length === 0) return;
    this.sending = true;
    this.report({ kind: "saving" });
    const batch = [...this.pending];
    try {
      const small = JSON.stringify(batch).length < KEEPALIVE_BYTES;
      const { savedAt } = await api.postChanges(batch, small);
      const sent = new Set(batch);
      this.pending = this.pending.filter((change) => !sent.has(change));
      this.head = batch.at(-1)!.nextRevisionId;
      this.sinceSnapshot += batch.length;
      this.sending = false;
      if (this.pending.length === 0) this.report({ kind: "saved", at: savedAt });
      this.snapshotAtRest();
      void this.flush();
    } catch (error) {
      this.sending = false;
      this.fail(error, () => void this.flush());
    }
  }

  private snapshotAtRest(): void {
    clearTimeout(this.rest);
    if (this.sinceSnapshot < CHANGES_PER_SNAPSHOT) return;
    this.rest = setTimeout(() => {
      if (!this.sending && !this.stopped && this.pending.length === 0) void this.putSnapshot(false);
    }, REST_MS);
  }

  private fail(error: unknown, again: () => void): void {
    if (this.stopped) return;
    this.report({ kind: "failed", sentence: error instanceof Error ? error.message : String(error) });
    // Another tab has the job: trying again can't help.
    if (error instanceof ServerTrouble && error.status === 409) return;
    this.later(again);
  }

  /** One try at a time: what waits is put off, and does not run beside another. */
  private later(again: () => void): void {
    clearTimeout(this.retry);
    this.retry = setTimeout(again, RETRY_MS);
  }
}
