/** Workbooks dropped on the desk's page are reviewed there, in a real browser; the open job stays as it is. */
import { chromium, type Browser, type Locator, type Page } from "playwright-core";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { barriers, FLAGS, onPath } from "../../pane/inChromium";
import { mendedGuestHouse } from "../../review/cleanJobs";
import { withChromium } from "../../support/tools";
import { until } from "../../support/until";
import { BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";
import { dropOnGrid } from "./dropOnGrid";
import { toGrid } from "./bothBrowsers";

let folder: string;
let desk: Started;
let browser: Browser | undefined;
let bad: string;
let clean: string;

beforeAll(async () => {
  buildDesk();
  folder = temporaryFolder();
  desk = await startDesk("--data", folder, "--port", String(await freePort()));
  const job = mendedGuestHouse();
  job.fields.site_job = "<b>Dropped</b> (demonstration)";
  job.blocks.rooms![3]!.from = "Z9";
  const file = async (one: ReturnType<typeof mendedGuestHouse>): Promise<string> =>
    Buffer.from(await writeXlsx(recalculate(layOut(multiRoom, one)))).toString("base64");
  bad = await file(job);
  clean = await file(mendedGuestHouse());
}, 2 * BUILD_MS);
afterAll(async () => {
  await browser?.close();
  await desk?.kill();
  remove(folder);
});

function withDesk(name: string, work: (page: Page) => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const context = await browser.newContext({ viewport: { width: 1366, height: 768 } });
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
    page.on("console", (message) => {
      // The server's refusal of a broken file, which the page shows as a sentence.
      if (!message.location().url.endsWith("/open-for-review")) complaints.push(`console: ${message.text()}`);
    });
    try {
      await page.goto(desk.address);
      await page.getByText(/^saved \d\d:\d\d$/).waitFor();
      await toGrid(page);
      await work(page);
      expect(complaints).toEqual([]);
    } finally {
      await context.close();
    }
  });
}

/** Chooses a finding's place and waits until the grid stands there. */
async function follow(page: Page, place: Locator): Promise<void> {
  const [, sheet, cell] = /^(.+) ([A-Z]+\d+)$/.exec(await place.innerText())!;
  await place.click();
  await page.waitForFunction(
    (at) => document.querySelector<HTMLInputElement>(".o-named-range-selector input")?.value === at,
    cell,
  );
  expect(await page.locator(".o-sheet.active").innerText()).toContain(sheet);
}

async function choose(page: Page, cell: string): Promise<void> {
  const box = page.locator(".o-named-range-selector input");
  await box.click();
  await box.fill(cell);
  await box.press("Enter");
  await page.waitForFunction(() => document.activeElement?.closest(".o-grid") !== null);
}

withDesk("a bad, a clean and a broken one: each is told, and the open job stays", async (page) => {
  const title = await page.locator(".desk-title").innerText();
  await dropOnGrid(page, [
    ["bad.xlsx", bad],
    ["clean.xlsx", clean],
    ["broken.xlsx", "UEsDBA=="],
  ]);
  await page.getByRole("heading", { name: "Review of 3 workbooks" }).waitFor();
  const parts = page.locator(".desk-review section");
  expect(await parts.nth(0).locator("h3").innerText()).toMatch(/^bad\.xlsx: \d+ wrong/);
  // What a file holds is shown as text.
  expect(await parts.nth(0).locator("p").first().innerText()).toBe(
    "D-24, revision 1, <b>Dropped</b> (demonstration)",
  );
  expect(await parts.nth(0).innerText()).toContain("G-04 is fed from Z9, which is not there.");
  expect(await parts.nth(1).innerText()).toContain("Nothing found.");
  expect(await parts.nth(2).innerText()).toContain("Cannot be read.");
  expect(await barriers(page, "#reviews")).toEqual([]);
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/desk-drop.png` });
  const [saved] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save the report" }).click(),
  ]);
  expect(saved.suggestedFilename()).toBe("review.html");
  expect(await page.locator(".desk-title").innerText()).toBe(title);
});

withDesk(
  "a finding's place opens the workbook at that cell, and the list stays until it is closed",
  async (page) => {
    await dropOnGrid(page, [["bad.xlsx", bad]]);
    const list = page.getByRole("complementary", { name: "Review" });
    await list.getByRole("heading", { name: "Review of bad.xlsx" }).waitFor();
    const finding = list.locator("li", { hasText: "G-04 is fed from Z9" }).first();
    await follow(page, finding.getByRole("button").first());
    await page.getByText(/is kept, under Jobs/).waitFor();
    expect(await list.isVisible()).toBe(true);

    // A second place, of the workbook that is now open: what was mended meanwhile is still there.
    const run = "H9";
    await choose(page, run);
    await page.keyboard.type("7.5");
    await page.keyboard.press("Enter");
    await page.getByText(/^saved \d\d:\d\d$/).waitFor();
    await follow(page, list.locator("li .pane-jump").last());
    await page.locator(".o-sheet", { hasText: "Rooms" }).first().click();
    await choose(page, run);
    const line = page.locator(".o-topbar-composer .o-composer").first();
    // It is drawn a frame after the cell is chosen.
    await until(
      () => line.innerText(),
      (text) => text === "7.5",
    );
    if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/desk-review-stays.png` });

    await list.getByRole("button", { name: "Close" }).click();
    expect(await list.isVisible()).toBe(false);
    // The grid has its room again.
    expect((await page.locator(".o-grid").first().boundingBox())!.width).toBeGreaterThan(1300);
  },
);

withDesk("the list is reached by F6 and closed by Escape", async (page) => {
  await dropOnGrid(page, [["bad.xlsx", bad]]);
  const list = page.getByRole("complementary", { name: "Review" });
  await list.getByRole("heading", { name: "Review of bad.xlsx" }).waitFor();
  await choose(page, "A1");
  await page.keyboard.press("F6");
  expect(await list.evaluate((part) => part.contains(document.activeElement))).toBe(true);
  await page.keyboard.press("Escape");
  expect(await list.isVisible()).toBe(false);
});

withDesk("while a question stands a drop does nothing, and the page stays", async (page) => {
  await page.getByRole("button", { name: "New", exact: true }).click();
  await dropOnGrid(page, [["clean.xlsx", clean]]);
  expect(await page.getByRole("dialog").count()).toBe(1);
  expect(new URL(page.url()).origin).toBe(new URL(desk.address).origin);
});
