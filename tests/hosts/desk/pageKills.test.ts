/** The real server, killed again and again while the real page edits; some of the times the page is closed before the server is back. */
import { chromium, type Browser, type BrowserContext, type Page } from "playwright-core";
import type { ShelfList } from "../../../src/hosts/desk/protocol";
import type { HeldJob } from "../../../src/jobs/shelf";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../../src/workbooks/named";
import { chooseCell } from "./gridOnPage";
import { FLAGS, onPath } from "../../pane/inChromium";
import { randomFrom } from "../../review/cleanJobs";
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
import { tries } from "../../support/tries";
import { toGrid } from "./bothBrowsers";

/** `npm run prove` gives 300. */
const KILLS = tries(8, 15, 150);
const CELL = placeOfName(layOut(multiRoom), "site_customer")!.at;

let browser: Browser | undefined;
beforeAll(buildDesk, BUILD_MS);
afterAll(() => browser?.close());

withChromium(
  `${KILLS} kills while the page edits: every edit is there, in order, and once`,
  async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const folder = temporaryFolder();
    const random = randomFrom(300);
    const port = String(await freePort());
    let desk = await startDesk("--data", folder, "--port", port);
    const context = await browser.newContext({ viewport: { width: 1366, height: 768 } });
    const typed: string[] = [];
    let closed = 0;
    try {
      let page = await opened(context, desk);
      for (let kill = 0; kill < KILLS; kill++) {
        const stop = setTimeout(() => void desk.kill(), random() * 500);
        for (let edit = 0; edit < 6; edit++) {
          const text = `e${typed.length}`;
          await page.keyboard.type(text);
          await page.keyboard.press("Enter");
          await page.keyboard.press("ArrowUp");
          typed.push(text);
        }
        await new Promise((resolve) => setTimeout(resolve, 500));
        clearTimeout(stop);
        await desk.kill();
        // A page that does not know yet that the server has gone has had no time to keep its last edit.
        const isClosed = random() < 0.4;
        if (isClosed) {
          await page.getByText(/kept in this browser|^saved/).waitFor();
          await page.close();
          closed++;
        }
        desk = await startDesk("--data", folder, "--port", port);
        if (isClosed) page = await opened(context, desk);
        await page.getByText(/^saved \d\d:\d\d$/).waitFor();
        expect(await valuesOf(desk)).toEqual(typed);
      }
      expect(closed).toBeGreaterThan(0);
      expect(typed.length).toBe(KILLS * 6);
    } finally {
      await context.close();
      await desk.kill();
      remove(folder);
    }
  },
  60_000 + KILLS * 15_000,
);

async function opened(context: BrowserContext, desk: Started): Promise<Page> {
  const page = await context.newPage();
  page.on("dialog", (dialog) => void dialog.accept());
  await page.goto(desk.address);
  await page.locator(".o-grid canvas").first().waitFor();
  await page.getByText(/^saved \d\d:\d\d$/).waitFor();
  await toGrid(page);
  await chooseCell(page, "Site", CELL);
  return page;
}

/** What was typed into the cell, as the server has it, from the beginning: read without the page. */
async function valuesOf(desk: Started): Promise<string[]> {
  const { jobs } = await askJson<ShelfList>(desk.address, "jobs");
  expect(jobs).toHaveLength(1);
  const { document, changes } = await askJson<HeldJob>(desk.address, `jobs/${jobs[0]!.id}?look`);
  const written = (changes as unknown as { commands?: { type: string; content?: string }[] }[])
    .flatMap(({ commands = [] }) => commands)
    .filter(({ type }) => type === "UPDATE_CELL")
    // The grid marks text with a stroke.
    .map(({ content }) => (content ?? "").replace(/^'/, ""));
  if (written.length > 0 && written[0] === "e0") return written;
  // The document was put down anew meanwhile: it holds the last of those before.
  const { cells } = (document.sheets as { name: string; cells: Record<string, string> }[]).find(
    ({ name }) => name === "Site",
  )!;
  const last = Number(/^'?e(\d+)$/.exec(cells[CELL] ?? "")?.[1] ?? -1);
  return [...Array.from({ length: last + 1 }, (_, index) => `e${index}`), ...written];
}
