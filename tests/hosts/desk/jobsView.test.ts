/** The list of jobs in a real browser, over invented entries: found, put in order, and each thing that can be done with one. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { chromium, type Browser, type Locator, type Page } from "playwright-core";
import type { ShelfEntry } from "../../../src/jobs/catalogue";
import type { JobState, RevisionNote } from "../../../src/jobs/content";
import { barriers, BUNDLE_MS, bundled, FLAGS, onPath } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import type { JobsPage } from "./jobsPage";

const STYLES = ["bootstrap/dist/css/bootstrap.css", "@odoo/o-spreadsheet/dist/o_spreadsheet.css"].map(
  (file) => require.resolve(file),
);
const CSS = path.join(__dirname, "../../../src/hosts/desk/page/desk.css");
const HTML = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Jobs</title>
<meta name="viewport" content="width=device-width, initial-scale=1"><style>STYLE</style></head>
<body><header class="desk-bar"><h1 class="desk-title">A job</h1><div class="desk-buttons"><button type="button" class="desk-button">Jobs</button></div></header>
<div class="desk-area"><main class="desk-grid" aria-label="Workbook"><button type="button" id="under">Under it</button></main>
<section id="jobs" hidden></section></div><script src="page.js"></script></body></html>`;

const note = (number: number, why: string, total: number): RevisionNote => ({
  number,
  why,
  at: new Date(2026, 9, number, 9, 5).toISOString(),
  head: `r${number}`,
  line: lineOf({ total }),
});
function lineOf(line: Partial<ShelfEntry["line"]>): NonNullable<ShelfEntry["line"]> {
  return {
    number: "",
    revision: "",
    name: "",
    customer: "",
    date: "",
    currency: "EUR",
    verdict: "",
    ...line,
  };
}
/** @param day of November 2026 on which it was changed last */
const job = (
  id: string,
  day: number,
  line: Partial<ShelfEntry["line"]> | undefined,
  more: Partial<ShelfEntry> = {},
): ShelfEntry => ({
  id,
  savedAt: new Date(2026, 10, day, 14, 5).toISOString(),
  state: "draft" as JobState,
  away: false,
  revisions: [],
  ...(line && { line: lineOf(line) }),
  ...more,
});

const HTML_NAME = `<img src=x onerror="document.title='run'"> & <b>Annex</b>`;
const JOBS: readonly ShelfEntry[] = [
  job(
    "east",
    20,
    {
      number: "Q-9",
      revision: "A",
      name: "Hotel Müller, east wing",
      customer: "Müller & Söhne",
      total: 12480,
      date: "2026-11-02",
      verdict: "all checks pass",
    },
    {
      state: "sent",
      revisions: [note(1, "offer", 900), note(2, "sent", 12480)],
      file: {
        name: "east wing.xlsx",
        path: "/home/invented/east wing.xlsx",
        stamp: { modified: 0, size: 0 },
      },
    },
  ),
  job("lane", 21, {
    number: "Q-10",
    name: "Äcker Lane 7",
    customer: "Krüger",
    total: 1020.5,
    currency: "CHF",
  }),
  job("none", 22, { currency: "" }),
  job("zero", 19, { number: "Q-10", name: "Zum Anker", total: 0 }, { state: "accepted" }),
  job("html", 18, { name: HTML_NAME, customer: "<i>Finch</i>", total: 900 }, { state: "checked" }),
  job("rtl", 17, { number: "26/0093", name: "בית הארחה גליל", customer: "كهن", total: 61200, currency: "₪" }),
  job("long", 16, {
    number: "L".repeat(300),
    name: "🏨 Anbau ".repeat(600),
    customer: "ohneleerzeichen".repeat(30),
    total: 5,
    currency: "demonstration money",
  }),
  job(
    "conflict",
    15,
    { number: "Q-9", revision: "A", name: "Hotel Müller, east wing" },
    { conflictOf: "east" },
  ),
  job(
    "broken",
    14,
    { number: "Q-3", name: "School hall", total: 15755.25 },
    {
      trouble: {
        sentence:
          "This job can't be read: its file is damaged. What there is of it is kept; export it as it is.",
        kept: ["job-1.kept"],
      },
    },
  ),
  job(
    "mill",
    13,
    { number: "Q-4", name: "Old mill", customer: "Müller & Söhne" },
    { away: true, state: "done", revisions: [note(1, "sent", 5)] },
  ),
];

let script = "";
let browser: Browser | undefined;
let page: Page;
let complaints: string[] = [];

beforeAll(async () => {
  script = await bundled(path.join(__dirname, "jobsPage.ts"));
}, BUNDLE_MS);
afterAll(() => browser?.close());

/** A test with the list open on the entries; at its end nothing may have been complained of. */
function withJobs(name: string, work: () => Promise<void>, jobs = JOBS, [width, height] = [1366, 768]): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const context = await browser.newContext({ viewport: { width: width!, height: height! } });
    page = await context.newPage();
    complaints = [];
    page.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
    page.on("console", (message) => complaints.push(`console: ${message.text()}`));
    const style = [...STYLES, CSS].map((file) => readFileSync(file, "utf8")).join("\n");
    await page.route("**/*", (route) => {
      const { pathname } = new URL(route.request().url());
      if (pathname === "/page.js") return route.fulfill({ contentType: "text/javascript", body: script });
      if (pathname === "/")
        return route.fulfill({ contentType: "text/html", body: HTML.replace("STYLE", () => style) });
      if (!/\.(?:woff2?|ttf|svg|ico)$/.test(pathname)) complaints.push(`request to ${pathname}`);
      return route.fulfill({ status: 204, body: "" });
    });
    await page.goto("http://jobs.test/");
    await page.evaluate(
      (entries) => {
        const { jobsPage } = globalThis as unknown as { jobsPage: JobsPage };
        jobsPage.jobs = entries;
        return jobsPage.show("east");
      },
      [...jobs],
    );
    await work();
    expect(complaints).toEqual([]);
    await context.close();
  });
}

const search = (): Locator => page.getByRole("searchbox", { name: "Search" });
const filter = (): Locator => page.getByRole("combobox", { name: "Show" });
const table = (): Locator => page.getByRole("grid", { name: "Jobs" });
const details = (): Locator => page.getByRole("region", { name: "The job chosen" });
const button = (name: string): Locator => details().getByRole("button", { name, exact: true });
const counted = (): Promise<string> => page.locator(".jobs-count").innerText();
const alert = (): Locator => page.getByRole("alert");
const ids = (): Promise<string[]> =>
  page.locator("[data-job]").evaluateAll((lines) => lines.map((line) => (line as HTMLElement).dataset.job!));
const line = (id: string): Locator => page.locator(`[data-job="${id}"]`);
const calls = (): Promise<unknown[][]> =>
  page.evaluate(() => (globalThis as unknown as { jobsPage: JobsPage }).jobsPage.calls);
const fail = (sentence: string | undefined): Promise<void> =>
  page.evaluate((text) => {
    (globalThis as unknown as { jobsPage: JobsPage }).jobsPage.failure = text;
  }, sentence);
const onTop = (): Promise<string> => page.evaluate(() => document.activeElement?.id ?? "");
const chosen = (): Promise<string | undefined> =>
  page.evaluate(() => document.querySelector<HTMLElement>("[data-job][aria-selected=true]")?.dataset.job);
const SHOTS = process.env.JOBS_SHOTS;
const shot = async (name: string): Promise<void> => {
  if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `${name}.png`) });
};

withJobs(
  "opened: newest first, the search has the focus, the open job is chosen, what lies under it is out of reach",
  async () => {
    expect(await ids()).toEqual([
      "none",
      "lane",
      "east",
      "zero",
      "html",
      "rtl",
      "long",
      "conflict",
      "broken",
    ]);
    expect(await counted()).toBe("9 of 9 jobs");
    expect(await onTop()).toBe("jobs-search");
    expect(await chosen()).toBe("east");
    expect(await line("east").innerText()).toMatch(/open/);
    expect(await page.locator("#under").evaluate((one) => one.closest("[inert]") !== null)).toBe(true);
    await shot("wide");
  },
);
