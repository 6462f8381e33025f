/** Back and Forward of the browser on the desk: what a person expects of any page. */
import type { Page } from "playwright-core";
import { until } from "../../support/until";
import { closeBrowsers, inBoth, saved, started } from "./bothBrowsers";
import { builtFolder } from "./builtFolder";
import { BUILD_MS, buildDesk } from "./desk";
import { serveFolder, type FolderServer } from "./folderServer";

let server: FolderServer;
beforeAll(async () => {
  buildDesk();
  server = await serveFolder(await builtFolder());
}, BUILD_MS);
afterAll(async () => {
  await closeBrowsers();
  await server.stop();
});

const start = (page: Page) => page.locator("#start");
const jobs = (page: Page) => page.locator(".desk-jobs");
const titled = (page: Page, text: string): Promise<void> =>
  page.locator(".desk-title", { hasText: text }).waitFor();
/** By the page's own history, as the browser's buttons do it: a driver's own way waits for a page to load. */
const go = (page: Page, by: -1 | 1): Promise<void> => page.evaluate((steps) => history.go(steps), by);

async function newEmptyJob(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name: "New job…" }).filter({ visible: true }).first().click();
  await page.locator("dialog").getByRole("button", { name: "Empty", exact: true }).click();
  await start(page).waitFor({ state: "hidden" });
  await jobs(page).waitFor({ state: "hidden" });
  await page.locator(".o-grid canvas").first().waitFor();
  await page.keyboard.type(name);
  await page.keyboard.press("Enter");
  await titled(page, name);
  await saved(page);
}

inBoth(
  "back goes to what was shown before, forward to what was shown after, with all that was typed",
  async (shown) => {
    const page = await shown.page();
    await page.goto(server.address);
    await started(page);
    await start(page).waitFor();
    const before = await page.evaluate(() => history.length);
    await newEmptyJob(page, "First of two");
    // The start page and the job: one step, whatever was shown on the way.
    expect(await page.evaluate(() => history.length)).toBe(before + 1);
    await page.keyboard.press("Control+j");
    await jobs(page).waitFor();
    await newEmptyJob(page, "Second of two");

    await go(page, -1);
    await jobs(page).waitFor();
    await titled(page, "First of two");
    await go(page, -1);
    await jobs(page).waitFor({ state: "hidden" });
    expect(await start(page).isVisible()).toBe(false);
    await go(page, -1);
    await start(page).waitFor();
    await titled(page, "Guest house");
    await go(page, 1);
    await start(page).waitFor({ state: "hidden" });
    await titled(page, "First of two");
    // What is typed after it goes to the job that is shown.
    await page.keyboard.type("for somebody invented");
    await page.keyboard.press("Enter");
    await saved(page);
    await go(page, 1);
    await jobs(page).waitFor();
    await go(page, 1);
    await titled(page, "Second of two");
    await jobs(page).waitFor({ state: "hidden" });
    expect(shown.complaints).toEqual([]);
  },
);

inBoth("a dialog is left by back, and what is under it stays", async (shown) => {
  const page = await shown.page();
  await page.goto(server.address);
  await started(page);
  await start(page).waitFor();
  await newEmptyJob(page, "Under a dialog");
  const address = page.url();
  await page.keyboard.press("Control+p");
  const dialog = page.getByRole("dialog", { name: "Print" });
  await dialog.waitFor();
  await go(page, -1);
  await dialog.waitFor({ state: "detached" });
  await page.waitForURL(address);
  await titled(page, "Under a dialog");
  expect(await start(page).isVisible()).toBe(false);
  // The next one goes back.
  await go(page, -1);
  await start(page).waitFor();
  await titled(page, "Guest house");
});

inBoth(
  "an address that somebody typed is a step of its own: a dialog is left by back all the same",
  async (shown) => {
    const page = await shown.page();
    await page.goto(server.address);
    await started(page);
    await start(page).waitFor();
    await newEmptyJob(page, "Before it");
    await page.evaluate(() => (location.hash = "#elsewhere"));
    await page.keyboard.press("Control+j");
    await jobs(page).waitFor();
    await page.evaluate(() => Object.assign(window, { notLoadedAgain: true }));
    await page.keyboard.press("Control+p");
    const dialog = page.getByRole("dialog", { name: "Print" });
    await dialog.waitFor();
    await go(page, -1);
    await dialog.waitFor({ state: "detached" });
    await titled(page, "Before it");
    expect(await jobs(page).isVisible()).toBe(true);
    expect(await page.evaluate(() => "notLoadedAgain" in window)).toBe(true);
  },
);

inBoth("what is being typed is not left by back; its keys are no arrows of the grid", async (shown) => {
  const page = await shown.page();
  await page.goto(server.address);
  await started(page);
  await start(page).waitFor();
  await newEmptyJob(page, "Typed in");
  await page.keyboard.type("half a");
  await go(page, -1);
  await page.getByText("A cell is being typed. Finish it with Enter first.").waitFor();
  await page.keyboard.type(" name");
  await page.keyboard.press("Enter");
  await saved(page);
  await titled(page, "Typed in");
  const selected = page.locator(".o-named-range-selector input");
  const cell = await selected.inputValue();
  await page.keyboard.press("Alt+ArrowRight");
  await page.keyboard.press("ArrowUp");
  // Above it, and not beside that.
  expect(
    await until(
      () => selected.inputValue(),
      (name) => name !== cell,
    ),
  ).toMatch(/^(B6|site_customer)$/);
  const line = page.locator(".o-topbar-composer .o-composer");
  await line.getByText("half a name").waitFor();
});

inBoth("a reload stays where it was, and back still goes on from there", async (shown) => {
  const page = await shown.page();
  await page.goto(server.address);
  await started(page);
  await start(page).waitFor();
  await newEmptyJob(page, "Loaded again");
  await page.reload();
  await started(page);
  await titled(page, "Loaded again");
  await go(page, -1);
  await start(page).waitFor();
  await titled(page, "Guest house");
});

inBoth("back to a job that is deleted meanwhile: a sentence, and the open one stays", async (shown) => {
  const page = await shown.page();
  await page.goto(server.address);
  await started(page);
  await start(page).waitFor();
  await newEmptyJob(page, "Deleted later");
  await page.keyboard.press("Control+j");
  await jobs(page).waitFor();
  await newEmptyJob(page, "Stays open");
  await page.keyboard.press("Control+j");
  const choose = (): Promise<void> => jobs(page).getByText("Deleted later").first().click();
  await choose();
  await jobs(page).getByRole("button", { name: "Put away", exact: true }).click();
  await jobs(page)
    .getByText(/can be brought back/)
    .waitFor();
  await jobs(page).locator("select#jobs-filter").selectOption("away");
  await choose();
  await jobs(page).getByRole("button", { name: "Delete for good…" }).click();
  await page
    .locator("dialog")
    .getByRole("button", { name: /Delete/ })
    .click();
  await jobs(page).getByText(/delet/i).first().waitFor();
  // From the list over the open job to that job, and on to the list over the deleted one.
  await go(page, -1);
  await jobs(page).waitFor({ state: "hidden" });
  await go(page, -1);
  await page
    .getByText(/no such job|not here any more|deleted/i)
    .first()
    .waitFor();
  await titled(page, "Stays open");
  await page.waitForURL(/#job-/);
  await page.reload();
  await started(page);
  await titled(page, "Stays open");
});
