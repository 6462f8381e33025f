/** The reminder that work is in this browser only: when it is due, when it would nag. */
import type { Page } from "playwright-core";
import { isDue, onlyHere, putOff, reminderOf } from "../../../src/hosts/desk/page/reminder";
import type { ShelfEntry } from "../../../src/jobs/catalogue";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../../src/workbooks/named";
import {
  closeBrowsers,
  inBoth,
  keepDownloads,
  downloaded,
  saved,
  started,
  toGrid,
  toJobs,
} from "./bothBrowsers";
import { builtFolder } from "./builtFolder";
import { BUILD_MS, buildDesk } from "./desk";
import { serveFolder, type FolderServer } from "./folderServer";
import { chooseCell } from "./gridOnPage";

const HOUR_MS = 60 * 60 * 1000;
const NOON = Date.UTC(2026, 10, 28, 12);

const job = (id: string, savedAt: string, more: Partial<ShelfEntry> = {}): ShelfEntry => ({
  id,
  savedAt,
  state: "draft",
  away: false,
  revisions: [],
  ...more,
});
const MONDAY = "2026-11-23T09:00:00.000Z";
const TUESDAY = "2026-11-24T09:00:00.000Z";

function memory(): Pick<Storage, "getItem" | "setItem"> {
  const held = new Map<string, string>();
  return { getItem: (name) => held.get(name) ?? null, setItem: (name, value) => void held.set(name, value) };
}

test("it counts the jobs whose last edit no file has, and names the oldest", () => {
  const current = job("job-a", MONDAY, { outside: MONDAY });
  const edited = job("job-b", TUESDAY, { outside: MONDAY });
  const never = job("job-c", MONDAY);
  const unreadable = job("job-d", TUESDAY, { trouble: { sentence: "It can't be read.", kept: [] } });
  expect(reminderOf([])).toBeUndefined();
  expect(reminderOf([current, unreadable])).toBeUndefined();
  expect(onlyHere([current, edited, never, unreadable]).map(({ id }) => id)).toEqual(["job-b", "job-c"]);
  expect(reminderOf([current, edited])).toMatch(
    /^One job has work that is in this browser only, the oldest from 2026-11-24/,
  );
  expect(reminderOf([edited, never])).toMatch(
    /^2 jobs have work that is in this browser only, the oldest from 2026-11-23/,
  );
});

test.each([
  ["never told", undefined, 0, true],
  ["told an hour ago", 0, HOUR_MS, false],
  ["told 19 hours ago", 0, 19 * HOUR_MS, false],
  ["told 21 hours ago", 0, 21 * HOUR_MS, true],
  ["the clock set back by an hour since", 0, -HOUR_MS, false],
  ["the clock set back by a year since", 0, -365 * 24 * HOUR_MS, true],
] as const)("%s: due is as it should be", (_, told, later, due) => {
  const store = memory();
  if (told !== undefined) putOff(NOON + told, store);
  expect(isDue(NOON + later, store)).toBe(due);
});

test("with the clock set back by a year it is put off as ever", () => {
  const store = memory();
  putOff(NOON, store);
  const yearBefore = NOON - 365 * 24 * HOUR_MS;
  putOff(yearBefore, store);
  expect(isDue(yearBefore + 60_000, store)).toBe(false);
});

test("a note that was damaged counts as none", () => {
  const store = memory();
  store.setItem("rigsheet.reminded", "not a number");
  expect(isDue(NOON, store)).toBe(true);
});

const CELL = placeOfName(layOut(multiRoom), "site_customer")!.at;
let server: FolderServer;
beforeAll(async () => {
  buildDesk();
  server = await serveFolder(await builtFolder());
}, BUILD_MS);
afterAll(async () => {
  await closeBrowsers();
  await server.stop();
});

const remarks = (page: Page): Promise<string> => page.locator(".jobs-remarks").innerText();
async function onShelf(page: Page): Promise<string> {
  await toJobs(page);
  // The list is there, as it is now, and what is said of it.
  await page.locator('.desk-jobs[aria-busy="false"]').waitFor();
  await page.locator(".jobs-place", { hasText: "All of it lies in" }).waitFor();
  return remarks(page);
}
async function edit(page: Page, text: string): Promise<void> {
  await toGrid(page);
  await chooseCell(page, "Site", CELL);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await saved(page);
}

/* Stories 56 and 57, made by someone who had not seen the code. */
inBoth(
  "nothing for what was only looked at; after work, until it is saved, exported or put off",
  async (shown) => {
    const page = await shown.page();
    // Without a file of the browser's own: a download.
    await page.addInitScript(() => Reflect.deleteProperty(window, "showOpenFilePicker"));
    await page.goto(server.address);
    await started(page);
    expect(await onShelf(page)).not.toMatch(/this browser only/);
    // An exercise, and a demonstration that was asked for, are only looked at.
    for (const kind of ["Exercises…", "Demonstration"]) {
      await page.getByRole("button", { name: "New job…" }).click();
      await page.locator("dialog").getByRole("button", { name: kind }).click();
      if (kind === "Exercises…") {
        // What a set teaches is read before it is begun.
        await page.getByLabel("Set").selectOption("supply");
        await page.getByText(/^Whether a head unit gets its volts .* \d+ questions\.$/).waitFor();
        await page.locator("dialog").getByRole("button", { name: "Begin" }).click();
      }
      await page.locator(".desk-notice", { hasText: "is kept, under Jobs" }).waitFor();
      await saved(page);
      expect(await onShelf(page)).not.toMatch(/this browser only/);
      // The next one's must be its own.
      await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
    }
    await edit(page, "e0");
    expect(await onShelf(page)).toMatch(/One job has work that is in this browser only/);
    // Save: it is in a file.
    await toGrid(page);
    await keepDownloads(page);
    await page.keyboard.press("Control+s");
    await downloaded(page);
    await page
      .locator(".desk-notice", { hasText: /^Saved as .*where the browser puts its downloads/ })
      .waitFor();
    expect(await onShelf(page)).not.toMatch(/this browser only/);
    await edit(page, "e1");
    expect(await onShelf(page)).toMatch(/One job has work/);
    await page.getByRole("button", { name: "Export all…" }).click();
    await page.locator(".jobs-said", { hasText: /where the browser puts its downloads/ }).waitFor();
    expect(await remarks(page)).not.toMatch(/this browser only/);
    await edit(page, "e2");
    expect(await onShelf(page)).toMatch(/One job has work/);
    // Not on paper, and not in the grid.
    if (shown.kind === "chromium") {
      // Firefox's driver takes no such wish.
      await page.emulateMedia({ media: "print" });
      expect(await page.locator(".jobs-remarks").isVisible()).toBe(false);
      await page.emulateMedia({ media: "screen" });
    }
    await page.getByRole("button", { name: "Not today" }).click();
    expect(await remarks(page)).not.toMatch(/this browser only/);
    await edit(page, "e3");
    await page.goto("about:blank");
    await page.goto(server.address);
    await started(page);
    expect(await onShelf(page)).not.toMatch(/this browser only/);
    expect(shown.complaints.filter((one) => one.startsWith("error"))).toEqual([]);
  },
  { ms: 240_000 },
);

/* Story 21, made by someone who had not seen the code. */
inBoth(
  "the browser is asked to keep the jobs after the first work, once; a question that stays open holds nothing up",
  async (shown) => {
    const page = await shown.page();
    await page.addInitScript(() => {
      const calls = { asked: 0 };
      Object.assign(window, { calls });
      StorageManager.prototype.persist = () => {
        calls.asked++;
        return new Promise(() => undefined);
      };
      StorageManager.prototype.persisted = () => new Promise(() => undefined);
    });
    const asked = (): Promise<number> =>
      page.evaluate(() => (window as unknown as { calls: { asked: number } }).calls.asked);
    await page.goto(server.address);
    await started(page);
    await onShelf(page);
    expect(await asked()).toBe(0);
    await edit(page, "e0");
    await chooseCell(page, "Site", CELL);
    await edit(page, "e1");
    expect(await asked()).toBe(1);
    await onShelf(page);
    expect(await page.locator(".jobs-place").innerText()).toMatch(
      /has not promised to keep it: it may throw it away when its disk runs short/,
    );
  },
);
