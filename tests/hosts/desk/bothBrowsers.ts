/** Tests of the desk without its server, in each browser that the machine has: what Chromium does, Firefox must do. */
import {
  chromium,
  firefox,
  type Browser,
  type BrowserContext,
  type Locator,
  type Page,
} from "playwright-core";
import { FLAGS, onPath } from "../../pane/inChromium";
import { withChromium, withFirefox } from "../../support/tools";
import { isMost } from "../../support/tries";

export type Kind = "chromium" | "firefox";

const open = new Map<Kind, Browser>();

const START: Readonly<Record<Kind, (program: string) => Promise<Browser>>> = {
  // Pages are opened by the hundred and live for seconds: what the optimizing compiler does for one it never pays back.
  chromium: (program) =>
    chromium.launch({ executablePath: onPath(program), args: [...FLAGS, "--js-flags=--no-opt"] }),
  // The system's own, unpatched: the driver speaks WebDriver BiDi with it.
  firefox: (program) =>
    firefox.launch({
      executablePath: onPath(program),
      channel: "moz-firefox",
      // Its list of downloads opens over the page and takes the keys.
      firefoxUserPrefs: { "browser.download.alwaysOpenPanel": false },
    }),
};

export async function browserOf(kind: Kind, program: string): Promise<Browser> {
  const known = open.get(kind);
  if (known) return known;
  const browser = await START[kind](program);
  open.set(kind, browser);
  browser.on("disconnected", () => open.delete(kind));
  return browser;
}

export const closeBrowsers = async (): Promise<void> => {
  for (const browser of [...open.values()]) await browser.close();
};

export interface Shown {
  readonly kind: Kind;
  readonly context: BrowserContext;
  /** What pages complained of. */
  readonly complaints: string[];
  /** A page that is listened to. */
  page(): Promise<Page>;
}

/** Once in each browser, in a context of its own. */
export function inBoth(
  name: string,
  work: (shown: Shown) => Promise<void>,
  {
    ms = 120_000,
    size = { width: 1366, height: 768 },
    hasTouch = false,
    kinds = ["chromium", "firefox"] as readonly Kind[],
  } = {},
): void {
  const run = (kind: Kind) => async (program: string) => {
    const browser = await browserOf(kind, program);
    // Firefox's driver can't make touches; the same page is then used by mouse.
    const context = await browser.newContext({ viewport: size, ...(kind === "chromium" && { hasTouch }) });
    const complaints: string[] = [];
    const page = async (): Promise<Page> => {
      const made = await context.newPage();
      made.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
      made.on("console", (message) => {
        if (message.type() === "error") complaints.push(`console: ${message.text()}`);
      });
      return made;
    };
    try {
      await work({ kind, context, complaints, page });
    } finally {
      await context.close();
    }
  };
  if (kinds.includes("chromium")) withChromium(`${name} (Chromium)`, run("chromium"), ms);
  if (kinds.includes("firefox")) withFirefox(`${name} (Firefox)`, run("firefox"), ms);
}

/** In Firefox too only in the long runs of `npm run prove`: the whole of the tests must end within the hour. */
export const mostlyInChromium: typeof inBoth = (name, work, options = {}) =>
  inBoth(name, work, {
    ...(!isMost && { kinds: ["chromium"] }),
    ...options,
  });

/** The desk has started: its job's total is shown. */
export async function started(page: Page): Promise<void> {
  await page.locator(".desk-figure", { hasText: "Total" }).first().waitFor({ timeout: 60_000 });
}

/** The page has shown what it opens on. */
const isOpen = (page: Page): Promise<void> =>
  page.locator('body[aria-busy="false"]').waitFor({ state: "attached", timeout: 60_000 });

/** From the start page, or the list of jobs, to the grid. */
export async function toGrid(page: Page): Promise<void> {
  await isOpen(page);
  for (const cover of [page.locator("#start"), page.locator(".desk-jobs")]) {
    if (await cover.isVisible()) await cover.getByRole("button", { name: "Close", exact: true }).click();
    await cover.waitFor({ state: "hidden" });
  }
  await page.locator(".o-grid canvas").first().waitFor();
}

/** From wherever the page is to the list of jobs. */
export async function toJobs(page: Page): Promise<void> {
  await isOpen(page);
  const jobs = page.locator(".desk-jobs");
  if (!(await jobs.isVisible())) await page.keyboard.press("Control+j");
  await jobs.waitFor();
}

/** What is said of all jobs together: on the start page while it is shown, else in the list of jobs, seen or not. */
export const remarks = (page: Page): Locator =>
  page.locator(
    "body:has(#start:not([hidden])) .start-remarks, body:not(:has(#start:not([hidden]))) .jobs-remarks",
  );

export const saved = (page: Page): Promise<void> => page.getByText(/^saved \d\d:\d\d$/).waitFor();

/** Before a page hands out a file: not every driver tells of downloads, so the page's own bytes are taken. */
export const keepDownloads = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const kept: Blob[] = [];
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (blob: Blob) => {
      kept.push(blob);
      return make(blob);
    };
    Object.assign(window, { kept });
  });

/**
 * The quote as a PDF, on a page whose downloads are kept.
 *
 * @param count of files by then
 * @returns what the file begins with
 */
export async function savedAsPdf(page: Page, count: number): Promise<string> {
  await page.keyboard.press("Control+p");
  const dialog = page.getByRole("dialog", { name: "Print" });
  await dialog
    .getByRole("status")
    .filter({ hasText: /^Page 1 of 1$/ })
    .waitFor({ timeout: 60_000 });
  await dialog.getByRole("button", { name: "Save PDF" }).click();
  await dialog.waitFor({ state: "detached" });
  return (await downloaded(page, count)).subarray(0, 5).toString("latin1");
}

/** @returns the bytes of the file that was handed out last, once there are so many */
export async function downloaded(page: Page, count = 1): Promise<Buffer> {
  await page.waitForFunction((least) => (window as unknown as { kept: Blob[] }).kept.length >= least, count, {
    timeout: 60_000,
  });
  const base64 = await page.evaluate(async () => {
    const blob = (window as unknown as { kept: Blob[] }).kept.at(-1)!;
    const reader = new FileReader();
    const read = new Promise((resolve) => (reader.onload = resolve));
    reader.readAsDataURL(blob);
    await read;
    return (reader.result as string).replace(/^[^,]*,/, "");
  });
  return Buffer.from(base64, "base64");
}
