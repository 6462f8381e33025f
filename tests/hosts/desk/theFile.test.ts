/** The file that a desk was started with, in a real browser: which job it belongs to, and what Save does when somebody else has written it. */
import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import type { ShelfList } from "../../../src/hosts/desk/protocol";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import type { Book } from "../../../src/workbooks/book";
import { placeOfName } from "../../../src/workbooks/named";
import { FLAGS, onPath } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import {
  askJson,
  BUILD_MS,
  buildDesk,
  freePort,
  remove,
  startDesk,
  temporaryFolder,
  type Started,
} from "./desk";

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
  readonly desk: Started;
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
      await work({ page, file, data, desk });
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
const message = (page: Page, text: RegExp): Promise<void> =>
  page.locator(".desk-notice p", { hasText: text }).waitFor();

withFile(
  "New, reload, Save: the customer's file stays, and the new job is a download",
  async ({ page, file }) => {
    const before = readFileSync(file);
    await button(page, "New").click();
    await page.getByRole("button", { name: "Empty" }).click();
    await message(page, /is kept, under Jobs\.$/);
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
    await message(page, /^Written into customer\.xlsx\.$/);
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
    await dialog.getByRole("button", { name: "Write mine over it" }).click();
    await message(page, /^Written into customer\.xlsx\. What stood there is kept as .*replaced/);
    expect((await readXlsx(readFileSync(file))).template).toBe("single-drop");
    const [kept] = readdirSync(path.join(data, "replaced"));
    expect(readFileSync(path.join(data, "replaced", kept!)).equals(theirs)).toBe(true);
  },
);

withFile(
  "theirs and mine side by side, then theirs: mine is a revision, and the file is not touched",
  async ({ page, file, desk }) => {
    await choose(page, "A1");
    const before = await page.locator(".desk-figure").first().innerText();
    // Somebody fills in the run of the drop in a spreadsheet program.
    const theirs = await readXlsx(readFileSync(file));
    const place = placeOfName(theirs, "drop_length")!;
    theirs.sheets.find(({ name }) => name === place.sheet)!.cells[place.at]!.value = 33.25;
    writeFileSync(file, await writeXlsx(theirs));
    const bytes = readFileSync(file);

    await button(page, /^Save/).click();
    const dialog = page.getByRole("dialog", { name: "The file has changed" });
    await dialog.getByRole("button", { name: "Side by side" }).click();
    const compared = page.getByRole("dialog", { name: /compared$/ });
    expect(await compared.innerText()).toMatch(/33\.25/);
    if (SHOTS) await page.screenshot({ path: path.join(SHOTS, "side-by-side.png") });
    await compared.getByRole("button", { name: "Close" }).click();
    await dialog.getByRole("button", { name: "Take theirs" }).click();
    await message(page, /^The job is now as customer\.xlsx is\. As it was before it is kept as a revision/);
    expect(readFileSync(file).equals(bytes)).toBe(true);

    const { jobs } = await askJson<ShelfList>(desk.address, "jobs");
    const [job] = jobs;
    expect(job!.revisions.map(({ why }) => why)).toEqual(["before the file's was taken"]);
    // The next Save has nothing to ask.
    await button(page, /^Save/).click();
    await message(page, /^Written into customer\.xlsx\.$/);
    expect(before).toBe(await page.locator(".desk-figure").first().innerText());
    expect(placeValue(await readXlsx(readFileSync(file)), "drop_length")).toBe(33.25);
  },
);

withFile(
  "the bar names the file of the job that is shown, and Save writes into that one only",
  async ({ page, file, desk }) => {
    const bytes = readFileSync(file);
    const inFile = page.getByText("in customer.xlsx");
    await inFile.waitFor();
    await button(page, "New").click();
    await page.getByRole("button", { name: "Demonstration" }).click();
    await inFile.waitFor({ state: "detached" }).catch(() => undefined);
    expect(await inFile.count()).toBe(0);
    const [download] = await Promise.all([page.waitForEvent("download"), button(page, /^Save/).click()]);
    expect(download.suggestedFilename()).toMatch(/\.xlsx$/);
    expect(readFileSync(file).equals(bytes)).toBe(true);
    // Back to it from the list of jobs.
    await button(page, "Jobs").click();
    const { jobs } = await askJson<ShelfList>(desk.address, "jobs");
    expect(jobs).toHaveLength(2);
    await page.getByLabel("Search").fill("customer.xlsx");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await inFile.waitFor();
    await button(page, /^Save/).click();
    await message(page, /^Written into customer\.xlsx\.$/);
  },
);

/** A file as the browser holds it, where it has a picker; here one of the page's own store, since the picker is the system's. */
const PICKED = async (content: number[]): Promise<void> => {
  const folder = await navigator.storage.getDirectory();
  const handle = await folder.getFileHandle("held.xlsx", { create: true });
  const stream = await handle.createWritable();
  await stream.write(new Uint8Array(content));
  await stream.close();
  Object.assign(window, { showOpenFilePicker: () => Promise.resolve([handle]) });
};
const heldBytes = async (): Promise<number[]> => {
  const folder = await navigator.storage.getDirectory();
  const file = await (await folder.getFileHandle("held.xlsx")).getFile();
  return [...new Uint8Array(await file.arrayBuffer())];
};

withFile(
  "a file that the browser holds: named, written into, and asked about when it has changed",
  async ({ page }) => {
    const original = readFileSync(path.join(templates, "multi-room-demonstration.xlsx"));
    await page.evaluate(PICKED, [...original]);
    await button(page, "Open .xlsx…").click();
    await page.getByText("in held.xlsx").waitFor();
    await button(page, /^Save/).click();
    await message(page, /^Written into held\.xlsx\.$/);
    const written = Buffer.from(await page.evaluate(heldBytes));
    expect((await readXlsx(written)).template).toBe("multi-room");
    expect(written.equals(original)).toBe(false);
    // Also after a reload: the browser keeps it for the job.
    await page.reload();
    await page.getByText("in held.xlsx").waitFor();
    await page.evaluate(PICKED, [...readFileSync(path.join(templates, "alignment-card-demonstration.xlsx"))]);
    await button(page, /^Save/).click();
    const dialog = page.getByRole("dialog", { name: "The file has changed" });
    expect(await dialog.innerText()).toMatch(/held\.xlsx has changed since it was opened or saved here/);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      dialog.getByRole("button", { name: "Write mine over it" }).click(),
    ]);
    expect((await readXlsx(readFileSync(await download.path()))).template).toBe("alignment-card");
    await message(page, /^Written into held\.xlsx\. What stood there is kept as/);
    expect((await readXlsx(Buffer.from(await page.evaluate(heldBytes)))).template).toBe("multi-room");
  },
);

async function choose(page: Page, cell: string): Promise<void> {
  const box = page.locator(".o-named-range-selector input");
  await box.click();
  await box.fill(cell);
  await box.press("Enter");
}

const placeValue = (book: Book, name: string): unknown => {
  const { sheet, at } = placeOfName(book, name)!;
  return book.sheets.find((one) => one.name === sheet)!.cells[at]!.value;
};
