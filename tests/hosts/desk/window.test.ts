/** The desk's window: which job it names, what a tab that is closed leaves behind, and small screens. */
import path from "node:path";
import { chromium, type Browser, type BrowserContextOptions, type Page } from "playwright-core";
import { placeOfName } from "../../../src/workbooks/named";
import { chooseCell } from "./gridOnPage";
import { FLAGS, onPath } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import { BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { toGrid } from "./bothBrowsers";

const demonstration = path.join(__dirname, "..", "..", "..", "templates", "multi-room-demonstration.xlsx");
/** Where the cells lie that the tests fill. */
const empty = layOut(multiRoom);
const at = (name: string): string => placeOfName(empty, name)!.at;

let folder: string;
let desk: Started;
let browser: Browser | undefined;

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

async function opened(options: BrowserContextOptions = {}, address = desk.address): Promise<Page> {
  const context = await browser!.newContext({ viewport: { width: 1366, height: 768 }, ...options });
  const page = await context.newPage();
  await load(page, address);
  return page;
}

async function load(page: Page, address = desk.address): Promise<void> {
  await page.goto(address);
  await page.getByText(/^saved \d\d:\d\d$/).waitFor();
  await toGrid(page);
}

function withBrowser(name: string, work: () => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    await work();
    for (const context of browser.contexts()) await context.close();
  });
}

withBrowser(
  "number, revision and name stand in the bar, in the window's title and in the saved file's name",
  async () => {
    const page = await opened();
    for (const [name, text] of [
      ["site_quote", "L-7/b"],
      ["site_revision", "3"],
      ["site_job", "Lodge: north wing"],
    ] as const) {
      await chooseCell(page, "Site", at(name));
      await page.keyboard.type(text);
      await page.keyboard.press("Enter");
    }
    expect(await page.getByRole("heading", { level: 1 }).innerText()).toBe(
      "L-7/b, revision 3, Lodge: north wing",
    );
    expect(await page.title()).toBe("L-7/b, revision 3, Lodge: north wing – Rigsheet");
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save .xlsx" }).click(),
    ]);
    // What a file's name can't hold on some system is left out.
    expect(saved.suggestedFilename()).toBe("L-7 b, revision 3, Lodge north wing.xlsx");
  },
);

withBrowser("the file that Save writes into is named in bar and title", async () => {
  const own = temporaryFolder();
  const started = await startDesk(demonstration, "--data", own, "--port", String(await freePort()));
  try {
    const page = await opened({}, started.address);
    expect(await page.getByText("in multi-room-demonstration.xlsx").isVisible()).toBe(true);
    expect(await page.title()).toMatch(/\(multi-room-demonstration\.xlsx\) – Rigsheet$/);
  } finally {
    await started.kill();
    remove(own);
  }
});

withBrowser("a tab closed with a cell half typed asks first, and tells of it at the next visit", async () => {
  const page = await opened();
  const asked: string[] = [];
  page.on("dialog", (dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
  await chooseCell(page, "Rooms", at("rooms_run"));
  // Looked into and left as it was, a cell is no reason to ask.
  await page.keyboard.press("F2");
  await page.reload();
  await page.getByText(/^saved \d\d:\d\d$/).waitFor();
  expect(asked).toEqual([]);

  await chooseCell(page, "Rooms", at("rooms_run"));
  await page.keyboard.type("12.75");
  await page.reload();
  expect(asked).toEqual(["beforeunload"]);
  await page.getByText(`“12.75” stood in the editor of Rooms ${at("rooms_run")}`, { exact: false }).waitFor();
  // Once.
  await page.reload();
  await page.getByText(/^saved \d\d:\d\d$/).waitFor();
  expect(await page.getByText("12.75").count()).toBe(0);
});

for (const [width, height] of [
  [360, 640],
  [390, 844],
  [768, 1024],
] as const) {
  withBrowser(
    `on a touch screen of ${width} pixels the bar covers nothing and the grid is drawn`,
    async () => {
      const page = await opened({ viewport: { width, height }, hasTouch: true, isMobile: true });
      expect(await page.evaluate(() => [innerWidth, innerHeight])).toEqual([width, height]);
      const box = async (selector: string) => (await page.locator(selector).first().boundingBox())!;
      const [title, figure, buttons, grid] = [
        await box(".desk-title"),
        await box(".desk-figure"),
        await box(".desk-buttons"),
        await box(".o-grid"),
      ];
      for (const part of [title, figure, buttons, grid]) {
        expect(part.x).toBeGreaterThanOrEqual(0);
        expect(part.x + part.width).toBeLessThanOrEqual(width);
      }
      expect(title.y).toBeGreaterThanOrEqual(0);
      // One below the other, none over another.
      expect(buttons.y).toBeGreaterThanOrEqual(Math.max(title.y + title.height, figure.y + figure.height));
      expect(grid.y).toBeGreaterThanOrEqual(buttons.y + buttons.height);
      expect(grid.height).toBeGreaterThan(height / 3);
      // Drawn: the canvas holds more than one colour.
      expect(
        await page.evaluate(() => {
          const canvas = document.querySelector<HTMLCanvasElement>(".o-grid canvas")!;
          const { data } = canvas.getContext("2d")!.getImageData(0, 0, canvas.width, canvas.height);
          return new Set(new Uint32Array(data.buffer)).size;
        }),
      ).toBeGreaterThan(10);
      // Every button can be brought into view and pressed, here the last one.
      await page.getByRole("button", { name: "Help", exact: true }).tap();
      await page.getByRole("dialog").waitFor();
      await page.keyboard.press("Escape");
      await page.getByRole("button", { name: "Pane", exact: true }).tap();
      const pane = await box("#pane");
      expect(pane.x + pane.width).toBeLessThanOrEqual(width);
      if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/desk-${width}.png` });
    },
  );
}

withBrowser("an outlet's run can be typed on a screen of 360 pixels", async () => {
  const page = await opened({ viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true });
  const before = await page.getByText(/^Total /).innerText();
  await chooseCell(page, "Rooms", at("rooms_run"));
  await page.keyboard.type("200");
  await page.keyboard.press("Enter");
  await page.waitForFunction(
    (was) => [...document.querySelectorAll(".desk-figure")].every(({ textContent }) => textContent !== was),
    before,
  );
});
