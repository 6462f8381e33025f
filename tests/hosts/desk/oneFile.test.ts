/** The one HTML file, opened from a disk with no network: a folder name as people have them, both browsers. */
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../../src/workbooks/named";
import {
  closeBrowsers,
  downloaded,
  inBoth,
  keepDownloads,
  saved,
  savedAsPdf,
  started,
  toGrid,
  toJobs,
} from "./bothBrowsers";
import { builtFile } from "./builtFolder";
import { BUILD_MS, buildDesk } from "./desk";
import { chooseCell } from "./gridOnPage";

const CELL = placeOfName(layOut(multiRoom), "site_customer")!.at;
const { SHOTS } = process.env;
const READ_ONLY = 0o444;

let folder: string;
let address: string;
beforeAll(async () => {
  buildDesk();
  folder = mkdtempSync(path.join(tmpdir(), "rigsheet-file-"));
  const stick = path.join(folder, "Stick (1)", "Büro & Pläne #2 100%");
  mkdirSync(stick, { recursive: true });
  const file = path.join(stick, "rigsheet.html");
  writeFileSync(file, await builtFile());
  chmodSync(file, READ_ONLY);
  address = pathToFileURL(file).href;
}, BUILD_MS);
afterAll(async () => {
  await closeBrowsers();
  rmSync(folder, { recursive: true, force: true });
});

async function opened(page: Page): Promise<void> {
  await page.goto(address);
  await started(page);
}

async function typed(page: Page, text: string): Promise<void> {
  await chooseCell(page, "Site", CELL);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await saved(page);
}

inBoth(
  "from a write-protected stick: says what that forbids, edits, saves, and asks for nothing else",
  async (shown) => {
    const { kind, complaints } = shown;
    const page = await shown.page();
    const requests: string[] = [];
    page.on("request", (request) => requests.push(request.url()));
    await shown.context.setOffline(true);
    await opened(page);
    await page
      .locator("#start")
      .getByText(/opened from a file/)
      .waitFor();
    if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `file-${kind}.png`) });
    await toGrid(page);
    await typed(page, "Möwe");
    await keepDownloads(page);
    await page.keyboard.press("Control+s");
    const file = await downloaded(page);
    expect(file.subarray(0, 2).toString()).toBe("PK");
    expect(await savedAsPdf(page, 2)).toBe("%PDF-");
    expect(requests.filter((one) => one !== address && !/^(?:blob|data|about):/.test(one))).toEqual([]);
    expect(complaints).toEqual([]);
  },
);

inBoth("leaving asks while work is in no file, and no longer once it is saved", async (shown) => {
  const page = await shown.page();
  await opened(page);
  await toGrid(page);
  const asks = (): Promise<boolean> =>
    page.evaluate(() => !window.dispatchEvent(new Event("beforeunload", { cancelable: true })));
  expect(await asks()).toBe(false);
  await typed(page, "asks first");
  expect(await asks()).toBe(true);
  await keepDownloads(page);
  await page.keyboard.press("Control+s");
  await downloaded(page);
  await page.waitForFunction(() => window.dispatchEvent(new Event("beforeunload", { cancelable: true })));
  await typed(page, "and again");
  expect(await asks()).toBe(true);
});

inBoth(
  "what was typed is rescued when the page is closed, and two pages of the file do not harm one another",
  async (shown) => {
    const one = await shown.page();
    one.on("dialog", (dialog) => void dialog.accept());
    await opened(one);
    await toGrid(one);
    await typed(one, "in the first");
    const two = await shown.page();
    await opened(two);
    await toJobs(two);
    await two.locator(".desk-jobs").getByText("in the first").first().waitFor();
    await one.close();
    const three = await shown.page();
    await opened(three);
    await toJobs(three);
    await three.locator(".desk-jobs").getByText("in the first").first().waitFor();
    await three
      .locator(".desk-jobs")
      .getByText(/in this browser only/)
      .waitFor();
  },
);

inBoth("the help is in the file, its links and its search too", async (shown) => {
  const page = await shown.page();
  await opened(page);
  await toGrid(page);
  await page.getByRole("button", { name: "Help", exact: true }).click();
  await page.getByRole("link", { name: /All help pages/ }).click();
  const help = page.frameLocator(".desk-help-page");
  await help
    .getByRole("link", { name: /AZIMUTH/ })
    .first()
    .click();
  await help
    .getByRole("heading", { name: /AZIMUTH/ })
    .first()
    .waitFor();
  await help.getByRole("link", { name: "What the model leaves out" }).click();
  await help
    .getByRole("heading", { name: /leaves out/ })
    .first()
    .waitFor();
  if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `file-help-${shown.kind}.png`) });
  await page.getByRole("button", { name: "Close the help" }).click();
  await page.getByRole("link", { name: /Notices/ }).click();
  await page.frameLocator(".desk-help-page").getByText(/LGPL/).first().waitFor();
});

inBoth("a file that is cut short says so by itself", async (shown) => {
  const whole = await builtFile();
  const cut = path.join(folder, "cut.html");
  writeFileSync(cut, whole.subarray(0, whole.length / 2));
  const page = await shown.page();
  await page.goto(pathToFileURL(cut).href);
  await page.getByText(/this file is not whole/).waitFor();
});
