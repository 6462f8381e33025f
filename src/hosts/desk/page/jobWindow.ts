/**
 * Which window of this browser has a job: one edits it, the others watch. A
 * window that wants it asks the one that has it, which hands over what it has
 * not saved yet and lets go; one that does not answer loses it.
 */

/** How long the one that has it may take. */
const PATIENCE_MS = 3000;

interface Told {
  /** Another window asks for the job: hand over what is not saved yet. */
  readonly asked: () => Promise<void>;
  /** The job is another window's now. */
  readonly lost: () => void;
}

/** A page from a file has neither of the two: then every window is taken to be the only one. */
const canTell = (): boolean => "locks" in navigator && typeof BroadcastChannel === "function";

export class JobWindow {
  private letGo: (() => void) | undefined;
  private readonly channel: BroadcastChannel | undefined;
  private isClosed = false;
  private taking: Promise<void> | undefined;
  /** Ends once the browser has taken the job back. */
  private released: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly id: string,
    private readonly told: Told,
  ) {
    if (!canTell()) return;
    this.channel = new BroadcastChannel(`rigsheet-${id}`);
    this.channel.onmessage = () => void this.handOver();
  }

  get isOwner(): boolean {
    return this.letGo !== undefined;
  }

  /** @returns whether the job is this window's now; false where another has it */
  async own(): Promise<boolean> {
    return this.isOwner || (await this.request({ ifAvailable: true }));
  }

  /** @returns whether no window of this browser has the job */
  async isFree(): Promise<boolean> {
    if (!this.channel) return false;
    const { held = [] } = await navigator.locks.query();
    return !held.some(({ name }) => name === `rigsheet-${this.id}`);
  }

  /** Takes the job over from the window that has it. */
  takeOver(): Promise<void> {
    this.taking ??= this.taken().finally(() => (this.taking = undefined));
    return this.taking;
  }

  /**
   * This window shows another job.
   * @returns once it can be had anew
   */
  async close(): Promise<void> {
    this.isClosed = true;
    this.channel?.close();
    this.letGo?.();
    this.letGo = undefined;
    await this.released;
  }

  private async taken(): Promise<void> {
    if (this.isOwner) return;
    this.channel?.postMessage("wanted");
    const patience = new AbortController();
    const timer = setTimeout(() => patience.abort(), PATIENCE_MS);
    const isHanded = await this.request({ signal: patience.signal });
    clearTimeout(timer);
    if (!isHanded) await this.request({ steal: true });
  }

  private async handOver(): Promise<void> {
    const { letGo } = this;
    if (!letGo) return;
    await this.told.asked();
    // Taken away, or let go of, in the meantime.
    if (this.letGo !== letGo) return;
    this.letGo = undefined;
    letGo();
    this.told.lost();
  }

  private request(options: LockOptions): Promise<boolean> {
    if (!this.channel) {
      this.letGo = () => undefined;
      return Promise.resolve(true);
    }
    return new Promise((resolve) => {
      let mine: (() => void) | undefined;
      this.released = navigator.locks
        .request(`rigsheet-${this.id}`, options, (lock) => {
          if (!lock || this.isClosed) return resolve(false);
          return new Promise<void>((done) => {
            mine = done;
            this.letGo = done;
            resolve(true);
          });
        })
        .catch(() => {
          // Before it was ours: it was not to be had in time. After that: another window took it.
          resolve(false);
          if (mine === undefined || this.letGo !== mine) return;
          this.letGo = undefined;
          if (!this.isClosed) this.told.lost();
        });
    });
  }
}
