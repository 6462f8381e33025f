/**
 * Which job each page shows, as far as the server has heard: pages of one
 * browser settle among themselves which of them edits, those of two browsers
 * know nothing of each other.
 */

interface OpenPage {
  readonly browser: string;
  readonly job: string;
  /** ISO 8601, in UTC. */
  readonly since: string;
}

/** A page and its browser, each by a name of its own. */
export interface Asking {
  readonly page: string;
  readonly browser: string;
}

/** A page that was killed says no goodbye; so many are remembered. */
const MOST = 100;

export class OpenPages {
  private readonly pages = new Map<string, OpenPage>();

  /** The page shows this job now. */
  shows({ page, browser }: Asking, job: string, now: Date): void {
    const before = this.pages.get(page);
    if (before?.job === job) return;
    this.pages.delete(page);
    this.pages.set(page, { browser, job, since: now.toISOString() });
    if (this.pages.size > MOST) this.pages.delete(this.pages.keys().next().value!);
  }

  /** The page is closed. */
  left(page: string): void {
    this.pages.delete(page);
  }

  /** @returns since when another browser has had the job open, as far as is known; undefined where none has */
  elsewhere({ browser }: Asking, job: string): string | undefined {
    return [...this.pages.values()].find((page) => page.job === job && page.browser !== browser)?.since;
  }
}

/** What a page says of itself with all that it asks: two names, or nothing where another program asks. */
export function askingOf(header: string | string[] | undefined): Asking | undefined {
  const [, page, browser] = /^([\w-]{1,64}) ([\w-]{1,64})$/.exec(String(header ?? "")) ?? [];
  return page !== undefined && browser !== undefined ? { page, browser } : undefined;
}
