/** Back and Forward of the browser go between what was shown: jobs, their list, the start page. */

export interface ShownNow {
  /** What lies over the job. */
  readonly cover: "start" | "jobs" | "";
  readonly job: string;
}

interface Kept extends ShownNow {
  /** Which of the page's own steps it is. */
  readonly at: number;
}

/** @returns the job that the address names */
export const jobInAddress = (): string | undefined => /^#(job-[\da-f-]+)$/.exec(location.hash)?.[1];

export class BackAndForth {
  private at = keptNow()?.at ?? 0;
  private isGoing = false;
  private isReturning = false;

  /**
   * @param go shows it; never rejects
   * @param isBusy nothing else can be shown now
   */
  constructor(
    private readonly go: (to: ShownNow) => Promise<void>,
    private readonly isBusy: () => boolean,
  ) {
    addEventListener("popstate", () => void this.moved());
  }

  /** @param isInPlace what was shown until now is not gone back to */
  note(shown: ShownNow, isInPlace = false): void {
    // The browser stands where it is not to stay.
    if (this.isReturning) return;
    const kept = keptNow();
    if (kept?.job === shown.job && kept.cover === shown.cover) return;
    const replaces = isInPlace || this.isGoing || !kept;
    // An entry that came of an address somebody typed is a step of its own too.
    if (!replaces || !kept) this.at++;
    history[replaces ? "replaceState" : "pushState"]({ ...shown, at: this.at }, "", `#${shown.job}`);
  }

  private async moved(): Promise<void> {
    if (this.isReturning) {
      this.isReturning = false;
      return;
    }
    const kept = keptNow();
    // An address that somebody typed has only its job.
    const job = kept?.job ?? jobInAddress();
    if (job === undefined) return;
    const dialog = document.querySelector<HTMLDialogElement>("dialog[open]");
    if (kept && (dialog || this.isBusy())) {
      // It is the dialog that is left, as by Escape.
      dialog?.close("");
      this.isReturning = true;
      history.go(this.at - kept.at);
      return;
    }
    this.at = kept?.at ?? this.at;
    this.isGoing = true;
    try {
      await this.go({ job, cover: kept?.cover ?? "" });
    } finally {
      this.isGoing = false;
    }
  }
}

function keptNow(): Kept | undefined {
  const kept = history.state as Partial<Kept> | null;
  return typeof kept?.at === "number" && typeof kept.job === "string" ? (kept as Kept) : undefined;
}
