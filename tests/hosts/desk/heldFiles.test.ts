/** A file that the browser holds, in the desk without a server: gone, written by another program, refused. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../../src/workbooks/named";
import { FLAGS, onPath } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import { saved, started, toGrid } from "./bothBrowsers";
import { builtFolder } from "./builtFolder";
import { BUILD_MS, buildDesk } from "./desk";
import { serveFolder, type FolderServer } from "./folderServer";
import { chooseCell } from "./gridOnPage";

const templates = path.join(__dirname, "..", "..", "..", "templates");
const CELL = placeOfName(layOut(multiRoom), "site_customer")!.at;
const ORIGINAL = [...readFileSync(path.join(templates, "multi-room-demonstration.xlsx"))];
const ANOTHERS = [...readFileSync(path.join(templates, "alignment-card-demonstration.xlsx"))];

let server: FolderServer;
let browser: Browser | undefined;
beforeAll(async () => {
  buildDesk();
  server = await serveFolder(await builtFolder());
}, BUILD_MS);
afterAll(async () => {
  await browser?.close();
  await server.stop();
});

/** The system's picker can't be answered from a test: the browser's own private folder stands in for the disk. */
const picked = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const folder = await navigator.storage.getDirectory();
    const handle = await folder.getFileHandle("held.xlsx");
    Object.assign(window, { showOpenFilePicker: () => Promise.resolve([handle]) });
  });
const written = (page: Page, content: number[]): Promise<void> =>
  page.evaluate(async (bytes) => {
    const folder = await navigator.storage.getDirectory();
    const stream = await (await folder.getFileHandle("held.xlsx", { create: true })).createWritable();
    await stream.write(new Uint8Array(bytes));
    await stream.close();
  }, content);
const bytesOf = async (page: Page): Promise<Buffer> =>
  Buffer.from(
    await page.evaluate(async () => {
      const folder = await navigator.storage.getDirectory();
      const handle = await folder.getFileHandle("held.xlsx");
      // The test looks at the disk itself, whatever the page may.
      const { real = handle.getFile.bind(handle) } = window as unknown as { real?: () => Promise<File> };
      const file = await real.call(handle);
      return [...new Uint8Array(await file.arrayBuffer())];
    }),
  );
const removed = (page: Page): Promise<void> =>
  page.evaluate(async () => (await navigator.storage.getDirectory()).removeEntry("held.xlsx"));
const message = (page: Page, text: RegExp): Promise<void> =>
  page.locator(".desk-notice p", { hasText: text }).waitFor();
const save = (page: Page): Promise<void> => page.keyboard.press("Control+s");

function withHeld(name: string, work: (page: Page) => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const context = await browser.newContext({ viewport: { width: 1366, height: 768 } });
    try {
      const page = await context.newPage();
      await page.goto(server.address);
      await started(page);
      await toGrid(page);
      await written(page, ORIGINAL);
      await picked(page);
      await page.getByRole("button", { name: "Open .xlsx…" }).first().click();
      await page.getByText("in held.xlsx").waitFor();
      await saved(page);
      await work(page);
    } finally {
      await context.close();
    }
  });
}

async function edit(page: Page, text: string): Promise<void> {
  await chooseCell(page, "Site", CELL);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await saved(page);
}
const reminded = async (page: Page): Promise<boolean> => {
  await page.keyboard.press("Control+j");
  await page.locator(".jobs-place", { hasText: "All of it lies in" }).waitFor();
  // What stands there at first is of the last time that it was open.
  await page.locator('.desk-jobs[aria-busy="false"]').waitFor();
  const text = await page.locator(".jobs-remarks").innerText();
  await toGrid(page);
  return /this browser only/.test(text);
};
/** The job is told of it after the user is. */
async function noLongerReminded(page: Page): Promise<void> {
  const end = Date.now() + 8000;
  while ((await reminded(page)) && Date.now() < end) await page.waitForTimeout(50);
  expect(await reminded(page)).toBe(false);
}
const customerIn = async (bytes: Buffer): Promise<unknown> =>
  (await readXlsx(bytes)).sheets.find(({ name }) => name === "Site")!.cells[CELL]!.value;

/* Story 37, made by someone who had not seen the code. */
withHeld("gone from its place: asked before it is made anew, and the work is kept", async (page) => {
  await edit(page, "e0");
  await removed(page);
  await save(page);
  const dialog = page.getByRole("dialog", { name: "The file is not there" });
  expect(await dialog.innerText()).toMatch(/held\.xlsx is gone from its folder, or has another name now/);
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
  // It was not made anew behind the user's back, and the reminder stays.
  await expect(bytesOf(page)).rejects.toThrow(/NotFound|could not be found/);
  expect(await reminded(page)).toBe(true);
  await save(page);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    dialog.getByRole("button", { name: "Download mine" }).click(),
  ]);
  expect(await customerIn(readFileSync(await download.path()))).toBe("e0");
  expect(await reminded(page)).toBe(false);
});

/* Story 39. */
withHeld("written by another program: noticed, and nothing of it is thrown away", async (page) => {
  await edit(page, "e0");
  await save(page);
  await message(page, /^Written into held\.xlsx\.$/);
  expect(await customerIn(await bytesOf(page))).toBe("e0");
  await noLongerReminded(page);
  await written(page, ANOTHERS);
  await edit(page, "e1");
  await save(page);
  const dialog = page.getByRole("dialog", { name: "The file has changed" });
  expect(await dialog.innerText()).toMatch(/another program has written it/);
  await page.keyboard.press("Escape");
  expect((await bytesOf(page)).equals(Buffer.from(ANOTHERS))).toBe(true);
  expect(await reminded(page)).toBe(true);
});

/* Stories 38 and 40. */
withHeld(
  "not allowed to write: said with the name, the file stays, the reminder stays, and a download goes",
  async (page) => {
    await page.evaluate(() => {
      const state = { answer: "denied" as PermissionState, asked: 0 };

      const real = FileSystemFileHandle.prototype.getFile;
      Object.assign(window, { state, real });
      Object.assign(FileSystemFileHandle.prototype, {
        // As after a new start of the browser: not even read before the user says yes.
        getFile(this: FileSystemFileHandle) {
          if (state.answer === "granted") return real.call(this);
          return Promise.reject(new DOMException("not allowed", "NotAllowedError"));
        },
        queryPermission: () => Promise.resolve(state.answer === "granted" ? "granted" : "prompt"),
        requestPermission: () => {
          state.asked++;
          return Promise.resolve(state.answer);
        },
      });
    });
    await edit(page, "e0");
    expect(await page.evaluate(() => (window as unknown as { state: { asked: number } }).state.asked)).toBe(
      0,
    );
    await save(page);
    await message(page, /does not let this page write into held\.xlsx/);
    expect((await bytesOf(page)).equals(Buffer.from(ORIGINAL))).toBe(true);
    expect(await reminded(page)).toBe(true);
    await page.evaluate(() => {
      (window as unknown as { state: { answer: string } }).state.answer = "granted";
    });
    await save(page);
    await message(page, /^Written into held\.xlsx/);
    expect(await customerIn(await bytesOf(page))).toBe("e0");
    await noLongerReminded(page);
  },
);

/* Story 38: what is pulled in the middle of a write. */
withHeld("a write that fails in the middle: said in a sentence, and the file is as it was", async (page) => {
  await edit(page, "e0");
  await page.evaluate(() => {
    FileSystemWritableFileStream.prototype.close = () =>
      Promise.reject(new DOMException("A device was removed", "NotReadableError"));
  });
  await save(page);
  await message(page, /held\.xlsx/);
  expect((await bytesOf(page)).equals(Buffer.from(ORIGINAL))).toBe(true);
  expect(await reminded(page)).toBe(true);
});
