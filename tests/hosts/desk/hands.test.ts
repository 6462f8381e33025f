/** The static folder by keyboard alone, and by touch on a phone's screen. */
import { mkdirSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";
import { closeBrowsers, downloaded, inBoth, keepDownloads, saved, started } from "./bothBrowsers";
import { builtFolder } from "./builtFolder";
import { BUILD_MS, buildDesk } from "./desk";
import { serveFolder, type FolderServer } from "./folderServer";

const PHONE = { width: 390, height: 844 };
const { SHOTS } = process.env;
/** So many presses of a key reach anything on the page. */
const MOST_PRESSES = 60;

let server: FolderServer;
beforeAll(async () => {
  buildDesk();
  server = await serveFolder(await builtFolder());
  if (SHOTS) mkdirSync(SHOTS, { recursive: true });
}, BUILD_MS);
afterAll(async () => {
  await closeBrowsers();
  await server.stop();
});

/** Goes on with Tab until something of that name has the focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let press = 0; press < MOST_PRESSES; press++) {
    const focused = await page.evaluate(() => {
      const { activeElement } = document;
      return activeElement?.getAttribute("aria-label") || activeElement?.textContent || "";
    });
    if (name.test(focused.trim())) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab does not reach ${String(name)}`);
}

inBoth("by keyboard alone: a new job, rooms typed, printed, frozen, exported, put away", async (shown) => {
  const page = await shown.page();
  await page.goto(server.address);
  await started(page);
  await page.locator("#start").waitFor();
  await tabTo(page, /^New job…$/);
  await page.keyboard.press("Enter");
  await page.locator("dialog").waitFor();
  await tabTo(page, /^Empty$/);
  await page.keyboard.press("Enter");
  await page.locator("#start").waitFor({ state: "hidden" });
  await page.locator(".o-grid canvas").first().waitFor();
  // The first cell that is to be filled is selected.
  await page.keyboard.type("Typed by keyboard");
  await page.keyboard.press("Enter");
  await saved(page);
  await page.locator(".desk-title", { hasText: "Typed by keyboard" }).waitFor();
  await page.keyboard.press("Control+p");
  await page.locator("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.locator("dialog").waitFor({ state: "detached" });
  await page.keyboard.press("Control+j");
  const jobs = page.locator(".desk-jobs");
  await jobs.waitFor();
  await keepDownloads(page);
  await tabTo(page, /^Export all…$/);
  await page.keyboard.press("Enter");
  expect((await downloaded(page)).subarray(0, 2).toString()).toBe("PK");
  await tabTo(page, /^Freeze…$/);
  await page.keyboard.press("Enter");
  await page.locator("dialog").waitFor();
  await page.keyboard.type("by keyboard");
  await page.keyboard.press("Enter");
  await jobs.getByText("Revision 1", { exact: true }).waitFor();
  await tabTo(page, /^Put away$/);
  await page.keyboard.press("Enter");
  await jobs.getByText(/can be brought back/).waitFor();
  await page.keyboard.press("Escape");
  await jobs.waitFor({ state: "hidden" });
});

inBoth(
  "on a phone: opened, a cell typed, saved, nothing wider than the screen",
  async (shown) => {
    const page = await shown.page();
    await page.goto(server.address);
    await started(page);
    const begin = page.locator("#start");
    await begin.waitFor();
    const press = (name: string) => {
      const button = page.getByRole("button", { name, exact: true }).filter({ visible: true }).first();
      return shown.kind === "chromium" ? button.tap() : button.click();
    };
    const isWide = (): Promise<boolean> =>
      page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
    expect(await isWide()).toBe(false);
    if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `phone-start-${shown.kind}.png`) });
    await press("Close");
    await begin.waitFor({ state: "hidden" });
    const canvas = page.locator(".o-grid canvas").first();
    await canvas.waitFor();
    const box = (await canvas.boundingBox())!;
    const at = [box.x + box.width / 2, box.y + box.height / 2] as const;
    if (shown.kind === "chromium") await page.touchscreen.tap(...at);
    else await page.mouse.click(...at);
    expect(await isWide()).toBe(false);
    if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `phone-grid-${shown.kind}.png`) });
    await keepDownloads(page);
    await press("Save .xlsx");
    expect((await downloaded(page)).length).toBeGreaterThan(100_000);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>("#bar button, #sheets button")]
        .filter((button) => button.offsetParent !== null && button.offsetHeight < 24)
        .map((button) => button.textContent),
    );
    // WCAG 2.2, 2.5.8 (AA): at least 24 by 24 CSS pixels.
    expect(small).toEqual([]);
  },
  { size: PHONE, hasTouch: true },
);
