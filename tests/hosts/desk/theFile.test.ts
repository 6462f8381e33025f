/** The file that a desk was started with, in a real browser: which job it belongs to, and what Save does when somebody else has written it. */
import { copyFileSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { FLAGS, onPath } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import { BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";

const templates = path.join(__dirname, "..", "..", "..", "templates");
/** A folder to look at the pictures in, given by the variable SHOTS. */
const { SHOTS } = process.env;

let browser: Browser | undefined;
beforeAll(buildDesk, BUILD_MS);
afterAll(() => browser?.close());

interface AtDesk {
  readonly page: Page;
  readonly file: string;
  readonly data: string;
}

function withFile(name: string, work: (at: AtDesk) => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const folder = temporaryFolder();
    let desk: Started | undefined;
    try {
      const file = path.join(folder, "customer.xlsx");
      const data = path.join(folder, "data");
      mkdirSync(data);
      copyFileSync(path.join(templates, "single-drop-demonstration.xlsx"), file);
      desk = await startDesk("--data", data, "--port", String(await freePort()), file);
      const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
      await page.goto(desk.address);
      await saved(page);
      await work({ page, file, data });
      await page.close();
    } finally {
      await desk?.kill();
      remove(folder);
    }
  });
}

const saved = (page: Page): Promise<void> => page.getByText(/^saved \d\d:\d\d$/).waitFor();
const button = (page: Page, name: string | RegExp) =>
  page.getByRole("toolbar", { name: "Job" }).getByRole("button", { name });
const says = (page: Page, text: RegExp): Promise<void> =>
  page.locator(".desk-notice p", { hasText: text }).waitFor();

withFile(
  "New, reload, Save: the customer's file stays, and the new job is a download",
  async ({ page, file }) => {
    const before = readFileSync(file);
    await button(page, "New").click();
    await page.getByRole("button", { name: "Empty" }).click();
    await says(page, /^The job that was open is kept as/);
    await saved(page);
    await page.reload();
    await saved(page);
    const [download] = await Promise.all([page.waitForEvent("download"), button(page, /^Save/).click()]);
    expect(download.suggestedFilename()).toMatch(/\.xlsx$/);
    expect(readFileSync(file).equals(before)).toBe(true);
  },
);

withFile(
  "Save asks before it writes over what somebody else has written, and keeps that",
  async ({ page, file, data }) => {
    await button(page, /^Save/).click();
    await says(page, /^Written into customer\.xlsx\.$/);
    const theirs = readFileSync(path.join(templates, "alignment-card-demonstration.xlsx"));
    copyFileSync(path.join(templates, "alignment-card-demonstration.xlsx"), file);

    await button(page, /^Save/).click();
    const dialog = page.getByRole("dialog", { name: "The file has changed" });
    expect(await dialog.innerText()).toMatch(/customer\.xlsx has changed since it was opened or saved here/);
    if (SHOTS) await page.screenshot({ path: path.join(SHOTS, "file-changed.png") });
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    expect(readFileSync(file).equals(theirs)).toBe(true);

    await button(page, /^Save/).click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      dialog.getByRole("button", { name: "Download mine" }).click(),
    ]);
    const mine = await readXlsx(readFileSync(await download.path()));
    expect(mine.template).toBe("single-drop");
    expect(readFileSync(file).equals(theirs)).toBe(true);

    await button(page, /^Save/).click();
    await dialog.getByRole("button", { name: "Write over it" }).click();
    await says(page, /^Written into customer\.xlsx\. What stood there is kept as .*replaced/);
    expect((await readXlsx(readFileSync(file))).template).toBe("single-drop");
    const [kept] = readdirSync(path.join(data, "replaced"));
    expect(readFileSync(path.join(data, "replaced", kept!)).equals(theirs)).toBe(true);
  },
);
