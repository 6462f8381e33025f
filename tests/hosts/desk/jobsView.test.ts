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
  key: "k",
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
        mark: "0",
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
    { conflictOf: { job: "east", after: "r2" } },
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

withJobs(
  "any word of a line, at each letter; the count tells of how many; what is put away is told of, not shown",
  async () => {
    await search().fill("muller");
    expect(await ids()).toEqual(["east", "conflict"]);
    expect(await counted()).toBe("2 of 9 jobs");
    await page.getByRole("button", { name: "1 more put away" }).click();
    expect(await ids()).toEqual(["mill"]);
    expect(await counted()).toBe("1 of 1 put away");
    expect(await page.getByText(/more put away/).isVisible()).toBe(false);
    await filter().selectOption("all but put away");
    await search().fill("muller sent €12,480.00 east wing.xlsx");
    expect(await ids()).toEqual(["east"]);
    await search().fill("<b>annex");
    expect(await ids()).toEqual(["html"]);
    await search().fill("nobody at all");
    expect(await counted()).toBe("0 of 9 jobs");
    await page.getByRole("button", { name: "Show all again" }).click();
    expect(await counted()).toBe("9 of 9 jobs");
    expect(await onTop()).toBe("jobs-search");
  },
);

withJobs("each state, the conflicting, the unreadable and those put away", async () => {
  for (const [shown, found] of [
    ["draft", ["none", "lane", "rtl", "long", "conflict"]],
    ["sent", ["east"]],
    ["accepted", ["zero"]],
    ["checked", ["html"]],
    ["done", []],
    ["conflicting", ["conflict"]],
    ["cannot be read", ["broken"]],
    ["put away", ["mill"]],
  ] as const) {
    await filter().selectOption(shown);
    expect([shown, await ids()]).toEqual([shown, found]);
  }
});

withJobs(
  "put in order by each column, both ways; what has none stands last; totals as numbers, Ä beside A",
  async () => {
    const by = async (name: string): Promise<string[]> => {
      await page.getByRole("columnheader", { name }).getByRole("button").click();
      return ids();
    };
    const order = (): Promise<string | null> =>
      page.getByRole("columnheader", { name: "Total" }).getAttribute("aria-sort");
    expect(await by("Total")).toEqual([
      "rtl",
      "broken",
      "east",
      "lane",
      "html",
      "long",
      "zero",
      "none",
      "conflict",
    ]);
    expect(await order()).toBe("descending");
    expect(await by("Total")).toEqual([
      "zero",
      "long",
      "html",
      "lane",
      "east",
      "broken",
      "rtl",
      "none",
      "conflict",
    ]);
    expect(await order()).toBe("ascending");
    // Q-9 before Q-10; the newest first among equals.
    expect((await by("Number")).filter((id) => /east|conflict|lane|zero|broken/.test(id))).toEqual([
      "broken",
      "east",
      "conflict",
      "lane",
      "zero",
    ]);
    expect(await order()).toBeNull();
    const names = await by("Name");
    expect(names.filter((id) => /lane|east|zero/.test(id))).toEqual(["lane", "east", "zero"]);
    expect(names.at(-1)).toBe("none");
    expect((await by("Name")).at(-1)).toBe("none");
    expect((await by("State")).at(-1)).toBe("broken");
    expect((await by("State"))[0]).toBe("broken");
    expect((await by("Customer"))[0]).toBe("html");
    expect((await by("Rev."))[0]).toBe("east");
    expect((await by("Last change"))[0]).toBe("none");
    expect((await by("Last change"))[0]).toBe("broken");
  },
);

withJobs("by keys alone: from the search into the list, through it, opened, and closed", async () => {
  await page.keyboard.press("Escape");
  expect(await calls()).toEqual([["close"]]);
  expect(await page.locator("#jobs").isVisible()).toBe(false);
  expect(await page.locator("#under").evaluate((one) => one.closest("[inert]"))).toBeNull();
  await page.evaluate(() => (globalThis as unknown as { jobsPage: JobsPage }).jobsPage.show());
  await page.keyboard.type("mull");
  await page.keyboard.press("Escape");
  expect(await search().inputValue()).toBe("");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Home");
  expect(await chosen()).toBe("none");
  expect(await table().getAttribute("aria-activedescendant")).toBe("jobs-line-none");
  for (const [key, id] of [
    ["ArrowDown", "lane"],
    ["ArrowUp", "none"],
    ["ArrowUp", "none"],
    ["End", "broken"],
    ["ArrowDown", "broken"],
    ["PageUp", "none"],
    ["PageDown", "broken"],
  ] as const) {
    await page.keyboard.press(key);
    expect([key, await chosen()]).toEqual([key, id]);
  }
  await page.keyboard.press("Enter");
  expect(await alert().innerText()).toMatch(/^This job can't be read/);
  await page.keyboard.press("Home");
  await page.keyboard.press("Enter");
  expect(await calls()).toEqual([["close"], ["open", "none"]]);
  // What has the focus shows it.
  const outline = await page.locator(".jobs-lines").evaluate((one) => getComputedStyle(one).outlineStyle);
  expect(outline).toBe("solid");
  const focused = async (key: string): Promise<string | null | undefined> => {
    await page.keyboard.press(key);
    return page.evaluate(() => document.activeElement?.textContent);
  };
  expect(await focused("Tab")).toBe("Last change");
  expect(await focused("ArrowLeft")).toBe("State");
  await page.keyboard.press("Enter");
  expect(await page.getByRole("columnheader", { name: "State" }).getAttribute("aria-sort")).toBe("ascending");
  expect(await focused("ArrowRight")).toBe("Last change");
  expect(await focused("Tab")).toBe("Open");
});

withJobs("by the mouse: one click chooses, two open; the buttons of the head", async () => {
  await line("zero").click();
  await details().getByRole("heading", { level: 3, name: "Zum Anker", exact: true }).waitFor();
  await line("zero").dblclick();
  for (const name of ["New job…", "Open .xlsx…", "Close"])
    await page.getByRole("button", { name, exact: true }).click();
  expect(await calls()).toEqual([["open", "zero"], ["newJob"], ["openFile"], ["close"]]);
});

withJobs("what is known of a job, and that sent and accepted freeze it", async () => {
  const text = await details().innerText();
  for (const words of [
    "12,480.00 EUR",
    "2026-11-02",
    "all checks pass",
    "2026-11-20 14:05",
    "east wing.xlsx",
    "Setting sent or accepted freezes the job as it is.",
    "Changed since revision 2 (sent) was frozen.",
    "Another job has this number.",
  ])
    expect(text).toContain(words);
  await line("lane").click();
  const state = details().getByRole("combobox", { name: "State" });
  await state.focus();
  await state.selectOption("accepted");
  await page.getByText("The state is accepted now.").waitFor();
  expect(await calls()).toEqual([["setState", "lane", "accepted"]]);
  expect(await line("lane").innerText()).toMatch(/accepted/);
  expect(await details().innerText()).toContain("Revision 1, accepted");
  // Where the hand was it stays.
  expect(await page.evaluate(() => (document.activeElement as HTMLSelectElement).name)).toBe("state");
});

withJobs("a frozen revision: looked at, compared with now and with another, restored, copied", async () => {
  expect(await details().locator(".jobs-revisions li").first().innerText()).toMatch(
    /^Revision 2, sent\s+2026-10-02 09:05, 12,480\.00 EUR/,
  );
  await button("Look at: revision 1").click();
  await button("Compare with now: revision 1").click();
  await button("Compare the two").click();
  await details().getByRole("combobox", { name: "One revision" }).selectOption("2");
  await button("Compare the two").click();
  await alert().filter({ hasText: "These are the same revision." }).waitFor();
  expect(await alert().innerText()).toBe("These are the same revision. Choose two.");
  await button("Restore: revision 1").click();
  await page.getByText("Revision 1 is restored; what was there before is frozen.").waitFor();
  expect(await details().innerText()).toContain("Revision 3, before revision 1 was restored");
  await button("Copy as new: revision 2").click();
  await page.getByText("A new draft was made of it.").waitFor();
  expect(await chosen()).toBe("east-copy");
  expect(await counted()).toBe("10 of 10 jobs");
  expect(await calls()).toEqual([
    ["look", "east", 1],
    ["compare", "east", 1],
    ["compareTwo", "east", 1, 2],
    ["restore", "east", 1],
    ["copy", "east", 2],
  ]);
});

withJobs("copied, exported and frozen: it asks why, and takes no for an answer", async () => {
  await button("Export as it is").click();
  await button("Freeze…").click();
  const asked = page.getByRole("dialog");
  await asked.getByRole("button", { name: "Cancel" }).click();
  await button("Freeze…").click();
  // Without a reason it is not done.
  await asked.getByRole("button", { name: "Freeze" }).click();
  await asked.getByRole("textbox", { name: "Why, in a few words" }).fill("  ");
  await asked.getByRole("button", { name: "Freeze" }).click();
  await asked.getByRole("textbox", { name: "Why, in a few words" }).fill(" <b>second</b> offer ");
  await page.keyboard.press("Enter");
  await page.getByText("Frozen as revision 3.").waitFor();
  expect(await details().innerText()).toContain("Revision 3, <b>second</b> offer");
  expect(await page.evaluate(() => (document.activeElement as HTMLButtonElement).name)).toBe("freeze");
  await button("Copy as new").click();
  await page.getByText("A new draft was made of it.").waitFor();
  expect(await calls()).toEqual([
    ["exportAsItIs", "east"],
    ["freeze", "east", "<b>second</b> offer"],
    ["copy", "east", undefined],
  ]);
});

withJobs("put away and brought back; deleted only from there, and only after a yes", async () => {
  await line("html").click();
  expect(await button("Delete for good…").count()).toBe(0);
  await button("Put away").click();
  await page.getByText("Put away. It stands under “Put away”, and can be brought back.").waitFor();
  expect(await ids()).not.toContain("html");
  expect(await counted()).toBe("8 of 8 jobs");
  // Another click at the same place does nothing to its neighbour.
  expect(await chosen()).toBeUndefined();
  expect(await details().innerText()).toBe("No job is chosen.");
  await filter().selectOption("put away");
  await line("mill").click();
  await button("Bring back").click();
  await page.getByText("Brought back.").waitFor();
  expect(await ids()).toEqual(["html"]);
  await line("html").click();
  await button("Delete for good…").click();
  const asked = page.getByRole("dialog", { name: "Delete for good?" });
  expect(await asked.innerText()).toContain(HTML_NAME);
  await shot("delete");
  // The key that is pressed without reading keeps it.
  await page.keyboard.press("Enter");
  await asked.waitFor({ state: "detached" });
  await button("Delete for good…").click();
  await page.keyboard.press("Escape");
  await button("Delete for good…").click();
  await asked.getByRole("button", { name: "Delete for good" }).click();
  await page.getByText("Deleted for good.").waitFor();
  expect(await counted()).toBe("0 of 0 put away");
  expect(await page.getByText("Nothing is put away.").isVisible()).toBe(true);
  expect(await calls()).toEqual([
    ["putAway", "html", true],
    ["putAway", "mill", false],
    ["delete", "html"],
  ]);
});

withJobs("one that can't be read: its sentence, and only what can be done with it", async () => {
  await line("broken").click();
  await button("Export as it is").waitFor();
  const text = await details().innerText();
  expect(text).toContain("This job can't be read: its file is damaged.");
  expect(text).toContain("Kept as job-1.kept.");
  expect(await details().getByRole("button").allInnerTexts()).toEqual(["Export as it is", "Put away"]);
  await shot("damaged");
  await button("Export as it is").click();
  await button("Put away").click();
  await filter().selectOption("put away");
  await line("broken").click();
  await button("Bring back").waitFor();
  expect(await details().getByRole("button").allInnerTexts()).toEqual([
    "Export as it is",
    "Bring back",
    "Delete for good…",
  ]);
  expect(await line("broken").innerText()).toMatch(/cannot be read, put away/);
  await line("broken").dblclick();
  await alert().filter({ hasText: "This job can't be read" }).waitFor();
  expect(await alert().innerText()).toMatch(/^This job can't be read/);
  expect(await calls()).toEqual([
    ["exportAsItIs", "broken"],
    ["putAway", "broken", true],
  ]);
});

withJobs("a conflicting one says what it is and of which job it came", async () => {
  await line("conflict").click();
  expect(await details().innerText()).toContain(
    "Typed in another window or another place, or while it could not be saved, and did not fit Q-9, revision A, Hotel Müller, east wing any more. Open it to compare the two, or to put its edits into that job.",
  );
  await shot("conflict");
  await search().fill("conflicting");
  await line("conflict").click();
  await button("Show that job").click();
  expect(await chosen()).toBe("east");
  expect(await search().inputValue()).toBe("");
  await button("Show them").click();
  expect(await ids()).toEqual(["east", "conflict"]);
});

withJobs(
  "what fails is said; what was chosen goes back, and the next thing takes the sentence away",
  async () => {
    const state = details().getByRole("combobox", { name: "State" });
    await fail("the disk is full");
    await state.selectOption("done");
    await page.getByText("Not done: the disk is full.").waitFor();
    expect(await state.inputValue()).toBe("sent");
    expect(await alert().innerText()).toBe("Not done: the disk is full.");
    await shot("failed");
    await state.selectOption("done");
    await page.getByText("The state is done now.").waitFor();
    expect(await alert().isVisible()).toBe(false);
    await fail("list:the local server does not answer");
    await page.evaluate(() => window.dispatchEvent(new Event("focus")));
    await page.getByText("The jobs can't be listed now: the local server does not answer.").waitFor();
    expect(await counted()).toBe("9 of 9 jobs");
  },
);

withJobs(
  "what another window changed shows when this one has the focus again; what was typed stays",
  async () => {
    await search().fill("kruger");
    expect(await ids()).toEqual(["lane"]);
    await page.evaluate(() => {
      const { jobsPage } = globalThis as unknown as { jobsPage: JobsPage };
      jobsPage.jobs = jobsPage.jobs.map((one) =>
        one.id === "lane"
          ? { ...one, line: { ...one.line!, customer: "Weiss" } }
          : one.id === "zero"
            ? { ...one, line: { ...one.line!, customer: "Krüger" } }
            : one,
      );
      window.dispatchEvent(new Event("focus"));
    });
    await line("zero").waitFor();
    expect(await ids()).toEqual(["zero"]);
    expect(await search().inputValue()).toBe("kruger");
  },
);

withJobs(
  "names that look like HTML, run the other way or never end are shown as text and break nothing",
  async () => {
    await line("html").click();
    expect(await details().getByRole("heading", { level: 3 }).innerText()).toBe(HTML_NAME);
    expect(await page.locator("#jobs").locator("img, b, i").count()).toBe(0);
    expect(await page.title()).toBe("Jobs");
    expect(await line("none").innerText()).toContain("(no name)");
    for (const id of ["long", "rtl", "html"]) {
      await line(id).click();
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(1366);
      expect(await details().evaluate((one) => one.scrollWidth - one.clientWidth)).toBe(0);
      expect((await line(id).boundingBox())!.height).toBe(32);
    }
    await line("long").click();
    expect(await button("Open").isVisible()).toBe(true);
    await shot("long");
  },
);

withJobs(
  "no jobs at all: it says so",
  async () => {
    expect(
      await page.getByText("There are no jobs yet. Begin a new one, or open a workbook.").isVisible(),
    ).toBe(true);
    expect(await counted()).toBe("0 of 0 jobs");
  },
  [],
);

const MANY = Array.from({ length: 2000 }, (_, index) =>
  job(
    `job-${index}`,
    1 + (index % 28),
    {
      number: `Q-${index}`,
      name: `Guest house ${index}`,
      customer: "Someone invented",
      total: index * 10,
      date: "2026-11-02",
    },
    {
      savedAt: new Date(2026, 0, 1, 0, index).toISOString(),
      revisions: [note(1, "offer", 900), note(2, "sent", 12480)],
    },
  ),
);

withJobs(
  "two thousand: all can be come to, few are in the document, the keys go to the last",
  async () => {
    expect(await counted()).toBe("2000 of 2000 jobs");
    expect((await ids())[0]).toBe("job-1999");
    expect((await ids()).length).toBeLessThan(80);
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("End");
    expect(await chosen()).toBe("job-0");
    const [last, list] = await Promise.all([
      line("job-0").boundingBox(),
      page.locator(".jobs-lines").boundingBox(),
    ]);
    expect(last!.y + last!.height).toBeLessThanOrEqual(list!.y + list!.height);
    expect(await line("job-0").getAttribute("aria-rowindex")).toBe("2001");
    expect(await table().getAttribute("aria-rowcount")).toBe("2001");
    await page.keyboard.press("PageUp");
    await page.locator(".jobs-lines").evaluate((one) => (one.scrollTop = one.scrollHeight / 2));
    await line("job-1000").waitFor();
    await search().pressSequentially("house 1234");
    expect(await ids()).toEqual(["job-1234"]);
    expect(await counted()).toBe("1 of 2000 jobs");
    await search().fill("12,340.00");
    expect(await ids()).toEqual(["job-1234"]);
  },
  MANY,
);

for (const [width, height] of [
  [1366, 768],
  [768, 1024],
  [390, 844],
] as const)
  withJobs(
    `${width} pixels wide: no barriers, nothing beside the screen, the details in reach`,
    async () => {
      for (const id of ["east", "broken", "conflict", "long"]) {
        await page.locator(".jobs-lines").evaluate((one) => (one.scrollTop = 0));
        await line(id).click();
        await shot(`${width}-${id}`);
        expect(await barriers(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
        const [box, own] = await Promise.all([details().boundingBox(), line(id).boundingBox()]);
        expect(box!.x + box!.width).toBeLessThanOrEqual(width);
        expect(box!.height).toBeGreaterThan(150);
        expect(own!.y + own!.height).toBeLessThanOrEqual(width > 900 ? height : box!.y);
        expect(await details().evaluate((one) => one.scrollWidth - one.clientWidth)).toBe(0);
      }
      await fail("the disk is full");
      await button("Put away").click();
      await alert().getByText("the disk is full").waitFor();
      expect(await barriers(page)).toEqual([]);
      await search().fill("nobody");
      expect(await barriers(page)).toEqual([]);
    },
    JOBS,
    [width, height],
  );
