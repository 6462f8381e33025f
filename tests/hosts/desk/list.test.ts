/**
 * The one list on the desk, in a real browser: gone through, narrowed, settled, and kept over a second review. What is
 * done here was asked for by somebody who had not seen the page (tests/fixtures/stories).
 */
import { chromium, type Browser, type Locator, type Page } from "playwright-core";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { barriers, FLAGS, onPath } from "../../pane/inChromium";
import { mendedGuestHouse } from "../../review/cleanJobs";
import { withChromium } from "../../support/tools";
import { BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";
import { dropOnGrid } from "./dropOnGrid";
import { toGrid } from "./bothBrowsers";

type Job = ReturnType<typeof mendedGuestHouse>;

let folder: string;
let desk: Started;
let browser: Browser | undefined;
const files = new Map<string, string>();

/** The run of F-04. */
const LONG_RUN = 170;
const runOf = (job: Job, outlet: string): Record<string, unknown> =>
  job.blocks.rooms!.find((row) => row.outlet === outlet)!;

async function make(name: string, change: (job: Job) => void): Promise<void> {
  const job = mendedGuestHouse();
  change(job);
  files.set(name, Buffer.from(await writeXlsx(recalculate(layOut(multiRoom, job)))).toString("base64"));
}

beforeAll(async () => {
  buildDesk();
  folder = temporaryFolder();
  desk = await startDesk("--data", folder, "--port", String(await freePort()));
  await make("first.xlsx", (job) => {
    runOf(job, "F-04").run = LONG_RUN;
    job.fields.quote_installments = -1;
    job.blocks.cables!.find(({ name }) => name === "indoor drop")!.price = undefined as never;
  });
  await make("second.xlsx", (job) => {
    runOf(job, "F-04").run = LONG_RUN;
    runOf(job, "A-03").run = undefined as never;
    job.fields.site_revision = 2;
  });
}, 2 * BUILD_MS);
afterAll(async () => {
  await browser?.close();
  await desk?.kill();
  remove(folder);
});

const drop = (page: Page, name: string): Promise<void> => dropOnGrid(page, [[name, files.get(name)!]]);

function withDesk(name: string, size: readonly [number, number], work: (page: Page) => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    const [width, height] = size;
    const context = await browser.newContext({ viewport: { width, height } });
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on("pageerror", (error) => complaints.push(`error: ${error.message}`));
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

const shot = async (page: Page, name: string): Promise<void> => {
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/${name}.png` });
};

async function reviewOf(page: Page, name: string): Promise<Locator> {
  await drop(page, name);
  const list = page.getByRole("complementary", { name: "Review" });
  await list.getByRole("heading", { name: `Review of ${name}` }).waitFor();
  return list;
}

const numberIn = (text: string): number => Number(/\((\d+)\)/.exec(text)![1]);
const choices = async (list: Locator): Promise<Record<string, number>> =>
  Object.fromEntries(
    (await list.getByLabel("Show", { exact: true }).locator("option").allInnerTexts()).map((text) => [
      text.replace(/ \(\d+\)$/, ""),
      numberIn(text),
    ]),
  );

const atCell = (page: Page, cell: string): Promise<unknown> =>
  page.waitForFunction(
    (at) => document.querySelector<HTMLInputElement>(".o-named-range-selector input")?.value === at,
    cell,
  );

const THE_RUN = "Rooms H17";

withDesk(
  "what was settled is settled in the next review, and what is new is told",
  [1366, 768],
  async (page) => {
    const list = await reviewOf(page, "first.xlsx");
    const before = await choices(list);
    expect(before["All that is open"]).toBe(await list.locator(".pane-findings > li").count());
    expect(before).not.toHaveProperty("Gone since");
    expect(await barriers(page, "#reviews")).toEqual([]);
    await shot(page, "list-first");

    // Next and back, by keyboard alone, with the cell in the grid.
    await page.keyboard.press("F8");
    const current = list.locator("[aria-current]");
    await current.waitFor();
    const [, first] = /([A-Z]+\d+)$/.exec(await current.locator("button").first().innerText())!;
    await atCell(page, first!);
    await page.getByText(/is kept, under Jobs/).waitFor();
    expect(await list.locator(".finding-position").innerText()).toBe(`1 of ${before["All that is open"]}`);
    await page.keyboard.press("F8");
    await list.getByText(`2 of ${before["All that is open"]}`).waitFor();
    await page.keyboard.press("Shift+F8");
    await list.getByText(`1 of ${before["All that is open"]}`).waitFor();
    await page.keyboard.press("Shift+F8");
    await list.getByText("That is the first.").waitFor();
    await shot(page, "list-next");

    // Narrowed by words; nothing left is said, with the way back.
    const words = list.getByLabel("Only with these words");
    await words.fill("h17");
    const entry = list.locator(".pane-findings > li");
    expect(await entry.count()).toBe(1);
    await words.fill("no such words");
    await list.getByText("None of these.").waitFor();
    await list.getByRole("button", { name: "Show all that is open" }).click();
    expect(await entry.count()).toBe(before["All that is open"]);

    // Blanks are refused beside the field; Escape leaves it as it was, and the list open.
    await words.fill("h17");
    await entry.getByRole("button", { name: "Settle…" }).click();
    const reason = list.getByLabel("Why it may stay as it is");
    await reason.fill("   ");
    await reason.press("Enter");
    await list.getByText(/Say in a few words why/).waitFor();
    await reason.press("Escape");
    expect(await reason.count()).toBe(0);
    expect(await list.isVisible()).toBe(true);

    await entry.getByRole("button", { name: "Settle…" }).click();
    await reason.fill("measured, <b>the wing</b> is long =1+1");
    await shot(page, "list-settling");
    await reason.press("Enter");
    await list.getByText("None of these.").waitFor();
    await list.getByRole("button", { name: "Show all that is open" }).click();
    const settled = await choices(list);
    expect(settled["All that is open"]).toBe(before["All that is open"]! - 1);
    expect(settled.Settled).toBe(1);

    // Another session, another revision, another name.
    await page.reload();
    await page.getByText(/^saved \d\d:\d\d$/).waitFor();
    const again = await reviewOf(page, "second.xlsx");
    await again.getByText(/Since the review of .*first\.xlsx.*: [1-9]\d* new, [1-9]\d* gone\./).waitFor();
    const now = await choices(again);
    expect(now.Settled).toBe(1);
    await shot(page, "list-second");
    await again.getByLabel("Show", { exact: true }).selectOption("new");
    await again
      .locator("li", { hasText: "Rooms H24" })
      .or(again.locator("li", { hasText: "Rooms H25" }))
      .first()
      .waitFor();
    expect(await again.locator("li", { hasText: THE_RUN }).count()).toBe(0);
    await again.getByLabel("Show", { exact: true }).selectOption("gone");
    expect(await again.locator("section li").count()).toBe(now["Gone since"]);
    await shot(page, "list-gone");
    await again.getByLabel("Show", { exact: true }).selectOption("settled");
    await again.getByText("measured, <b>the wing</b> is long =1+1").waitFor();
    await shot(page, "list-settled");
    await again.getByRole("button", { name: "Take back" }).click();
    await again.locator(".finding-counts").filter({ hasNotText: "settled" }).waitFor();
    expect((await choices(again)).Settled).toBe(0);
  },
);

withDesk(
  "on a small screen the list can be gone through and settled without sideways scrolling",
  [360, 740],
  async (page) => {
    const list = await reviewOf(page, "first.xlsx");
    await list.getByRole("button", { name: "Next" }).click();
    await list.getByText(/^1 of \d+$/).waitFor();
    await list.getByRole("button", { name: "Settle…" }).first().click();
    await list.getByLabel("Why it may stay as it is").waitFor();
    await shot(page, "list-360");
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    for (const one of await list.getByRole("button").all())
      expect((await one.boundingBox())!.height).toBeGreaterThanOrEqual(24);
  },
);

withDesk("the pane's list is the same, and is kept for the open job", [1366, 768], async (page) => {
  await drop(page, "first.xlsx");
  const dropped = page.getByRole("complementary", { name: "Review" });
  await dropped.getByRole("heading", { name: "Review of first.xlsx" }).waitFor();
  await page.keyboard.press("F8");
  await page.getByText(/is kept, under Jobs/).waitFor();
  await dropped.getByRole("button", { name: "Close" }).click();
  await page.getByRole("button", { name: "Pane" }).click();
  const pane = page.locator("#pane");
  await pane.getByRole("button", { name: "Check", exact: true }).click();
  await pane.getByText(/^Found: /).waitFor();
  expect(await pane.locator(".finding-headline").innerText()).toMatch(/should be about/);
  await pane.getByText(/Since the review of/).waitFor();
  await shot(page, "list-pane");
  await pane.getByRole("button", { name: "Next" }).click();
  await pane.locator("[aria-current] button").first().waitFor();
  await pane.getByRole("button", { name: "Settle…" }).first().click();
  await pane.getByLabel("Why it may stay as it is").fill("as agreed");
  await pane.getByRole("button", { name: "Settle", exact: true }).click();
  await pane.getByText(/; 1 settled$/).waitFor();
  await pane.getByRole("button", { name: "Check again" }).click();
  await pane.getByText(/^Found: /).waitFor();
  await pane.getByText(/; 1 settled$/).waitFor();
});
