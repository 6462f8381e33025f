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
  own(): Promise<boolean> {
    return this.request({ ifAvailable: true });
  }

  /** Takes the job over from the window that has it. */
  async takeOver(): Promise<void> {
    this.channel?.postMessage("wanted");
    const patience = new AbortController();
    const timer = setTimeout(() => patience.abort(), PATIENCE_MS);
    const isHanded = await this.request({ signal: patience.signal });
    clearTimeout(timer);
    if (!isHanded) await this.request({ steal: true });
  }

  /** This window shows another job. */
  close(): void {
    this.isClosed = true;
    this.channel?.close();
    this.letGo?.();
    this.letGo = undefined;
  }

  private async handOver(): Promise<void> {
    if (!this.letGo) return;
    await this.told.asked();
    this.letGo?.();
    this.letGo = undefined;
    this.told.lost();
  }

  private request(options: LockOptions): Promise<boolean> {
    if (!this.channel) {
      this.letGo = () => undefined;
      return Promise.resolve(true);
    }
    return new Promise((resolve) => {
      let isMine = false;
      navigator.locks
        .request(`rigsheet-${this.id}`, options, (lock) => {
          if (!lock || this.isClosed) return resolve(false);
          isMine = true;
          resolve(true);
          return new Promise<void>((done) => (this.letGo = done));
        })
        .catch(() => {
          // Before it was ours: it was not to be had in time. After that: another window took it.
          resolve(false);
          if (!isMine || this.isClosed) return;
          this.letGo = undefined;
          this.told.lost();
        });
    });
  }
}
