/**
 * The desk's page in a real browser, as tests of it need it. One page and one
 * server serve a file's tests one after another: each starts on a demonstration
 * of its own, as New gives it, which costs a fraction of a new browser process.
 */
import { chromium, type Browser, type Locator, type Page } from "playwright-core";
import type { Book } from "../../../src/workbooks/book";
import { FLAGS, onPath } from "../../pane/inChromium";
import { alsoWithPoppler, withChromium } from "../../support/tools";
import { BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";
import { toGrid } from "./bothBrowsers";
import { until } from "../../support/until";

export let folder: string;
export let desk: Started;
export let page: Page;
/** What went wrong on the page, or left it, during a test. */
export let complaints: string[] = [];
let browser: Browser | undefined;
/** The page is as the last test left it, and nothing failed on it. */
let usable = false;

beforeAll(async () => {
  buildDesk();
  folder = temporaryFolder();
  desk = await startDesk("--data", folder, "--port", String(await freePort()));
}, 2 * BUILD_MS);
afterAll(async () => {
  await browser?.close();
  await desk?.kill();
  remove(folder);
});

/** A test with the page open on the demonstration; at its end nothing may have been complained of. */
export function withPage(name: string, work: () => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    complaints = [];
    if (!usable) {
      await page?.context().close();
      await openPage();
    }
    usable = false;
    await startAnew();
    await work();
    expect(complaints).toEqual([]);
    usable = true;
  });
}

/** The same, with a PDF of the page that is read by poppler's tools. */
export const withPageAndPdf = (name: string, work: () => Promise<void>): void =>
  alsoWithPoppler(name, () => withPage(name, work));

export async function openPage(): Promise<void> {
  const context = await browser!.newContext({
    viewport: { width: 1366, height: 768 },
    permissions: ["clipboard-read", "clipboard-write"],
  });
  await openTab(context);
}

/** Another tab, in which the test goes on. */
export async function openTab(context = page.context()): Promise<void> {
  page = await context.newPage();
  // A busy machine paints and prints late; what never comes is still told.
  page.setDefaultTimeout(50_000);
  // The browser's own picker can't be answered from outside; a page without it has a file input.
  await page.addInitScript(() => Reflect.deleteProperty(window, "showOpenFilePicker"));
  page.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
  page.on("console", (message) => complaints.push(`console: ${message.text()}`));
  page.on("request", (request) => {
    if (!/^(?:http:\/\/127\.0\.0\.1:|data:|blob:http:\/\/127\.0\.0\.1:)/.test(request.url())) {
      complaints.push(`request to ${request.url()}`);
    }
  });
  await load();
}

/** Goes on in a tab that is open already. */
export async function turnTo(tab: Page): Promise<void> {
  await tab.bringToFront();
  page = tab;
}

/** Has a complaint that the test itself brings about forgotten. */
export const forget = (words: string): void => {
  complaints = complaints.filter((one) => !one.includes(words));
};

export async function load(): Promise<void> {
  await page.goto(desk.address);
  await grid().waitFor();
  await saved();
  await toGrid(page);
}

/** Ends the server as a crash would. @returns starts it again at the same address */
export async function crash(): Promise<() => Promise<void>> {
  await desk.kill();
  const { port } = new URL(desk.address);
  return async () => {
    desk = await startDesk("--data", folder, "--port", port);
  };
}

async function startAnew(): Promise<void> {
  await button("New").click();
  await page.getByRole("button", { name: "Demonstration", exact: true }).click();
  await page.locator(".desk-notice", { hasText: "is kept, under Jobs" }).waitFor();
  await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
  await saved();
}

export const grid = (): Locator => page.locator(".o-grid canvas").first();
export const total = (): Locator => page.getByText(/^Total /);
export const line = (): Locator => page.locator("#line");
export const notice = (): Locator => page.locator(".desk-notice p");
export const button = (name: string): Locator =>
  page.getByRole("toolbar", { name: "Job" }).getByRole("button", { name, exact: true });
export const saved = (): Promise<void> => page.getByText(/^saved \d\d:\d\d$/).waitFor();

/** Chooses a cell or a range by the box that names the selection, as a person may. */
export async function choose(sheet: string, range: string): Promise<void> {
  await page.locator(".o-sheet", { hasText: sheet }).first().click();
  const box = page.locator(".o-named-range-selector input");
  await box.click();
  await box.fill(range);
  await box.press("Enter");
  // The grid takes the keys again once it has drawn the selection.
  await until(
    () => page.evaluate(() => document.activeElement?.closest(".o-grid") !== null),
    (inGrid) => inGrid,
  );
}

export async function type(text: string): Promise<void> {
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

export const textIs = (locator: Locator, text: string): Promise<string> =>
  until(
    () => locator.innerText(),
    (now) => now === text,
  );
export const textIsNot = (locator: Locator, text: string): Promise<string> =>
  until(
    () => locator.innerText(),
    (now) => now !== text,
  );

/** The workbook as the page hands it over to be written, in the place of the file that is written of it. */
export async function bookOnPage(): Promise<Book> {
  let book: Book | undefined;
  await page.route("**/save", (route) => {
    book = route.request().postDataJSON() as Book;
    return route.fulfill({ body: "" });
  });
  await Promise.all([page.waitForEvent("download"), button("Save .xlsx").click()]);
  await page.unroute("**/save");
  return book!;
}
export const cellOf = (book: Book, sheet: string, at: string) =>
  book.sheets.find(({ name }) => name === sheet)!.cells[at];
