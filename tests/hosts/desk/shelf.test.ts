/**
 * All jobs on the desk, in a real browser with the real server: frozen,
 * looked at, compared, restored, copied, put away and back; and jobs that
 * can't be shown, which hinder nothing.
 */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { unzipSync } from "fflate";
import { chromium, type Browser, type Page } from "playwright-core";
import type { ShelfEntry } from "../../../src/jobs/catalogue";
import type { HeldJob } from "../../../src/jobs/shelf";
import { JOBS_LIST } from "../../../src/hosts/file/jobsFile";
import type { ShelfList } from "../../../src/hosts/desk/protocol";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../../src/workbooks/named";
import { chooseCell } from "./gridOnPage";
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
  write,
  type Started,
} from "./desk";
import { toGrid } from "./bothBrowsers";
import { isTrue, until } from "../../support/until";

const { SHOTS } = process.env;
const empty = layOut(multiRoom);
const at = (name: string): string => placeOfName(empty, name)!.at;

let folder: string;
let desk: Started;
let browser: Browser | undefined;
let page: Page;

beforeAll(buildDesk, BUILD_MS);
afterAll(() => browser?.close());

function withDesk(name: string, work: () => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    folder = temporaryFolder();
    desk = await startDesk("--data", folder, "--port", String(await freePort()));
    const context = await browser.newContext({ viewport: { width: 1366, height: 768 } });
    page = await context.newPage();
    page.on("dialog", (dialog) => void dialog.accept());
    try {
      await load();
      await work();
    } finally {
      await context.close();
      await desk.kill();
      remove(folder);
    }
  });
}

async function load(): Promise<void> {
  await page.goto(desk.address);
  await page.locator(".o-grid canvas").first().waitFor();
  await saved();
  await toGrid(page);
}
async function startAgain(between: () => void): Promise<void> {
  const { port } = new URL(desk.address);
  await desk.kill();
  between();
  desk = await startDesk("--data", folder, "--port", port);
  await page.goto("about:blank");
  await load();
}
const saved = (): Promise<void> => page.getByText(/^saved \d\d:\d\d$/).waitFor();
const message = (text: RegExp): Promise<void> => page.locator(".desk-notice p", { hasText: text }).waitFor();
const button = (name: string) =>
  page.getByRole("toolbar", { name: "Job" }).getByRole("button", { name, exact: true });
const view = () => page.locator("#jobs");
const inView = (name: string) => view().getByRole("button", { name }).first();
const total = () => page.locator(".desk-figure").first();
const jobs = async (): Promise<readonly ShelfEntry[]> =>
  (await askJson<ShelfList>(desk.address, "jobs")).jobs;
const shot = async (name: string): Promise<void> => {
  if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `${name}.png`) });
};
const logOf = (id: string): string => path.join(folder, `${id}.1.log`);

async function enter(sheet: string, cell: string, text: string): Promise<void> {
  await chooseCell(page, sheet, cell);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

/** Waits until the list tells the total that stands in the bar. */
const listed = (): Promise<boolean> =>
  until(async () => {
    const shown = (await total().innerText()).replace(/[^\d.]/g, "");
    return (await jobs()).some(({ line }) => line?.total?.toFixed(2) === shown);
  }, isTrue);

withDesk(
  "sent, changed, looked at, compared, restored, and restored back: each total to the cent",
  async () => {
    const first = await total().innerText();
    await button("Jobs").click();
    await view().getByLabel("State", { exact: true }).last().selectOption("sent");
    await until(async () => (await jobs())[0]!.revisions.length === 1, isTrue);
    await inView("Close").click();
    await enter("Site", at("site_margin"), "41");
    await message(/^This job is sent\. As it was then it is kept as a revision/);
    await until(async () => (await total().innerText()) !== first, isTrue);
    const second = await total().innerText();
    await listed();

    await button("Jobs").click();
    await inView("Compare with now").click();
    const compared = page.getByRole("dialog", { name: /compared$/ });
    const text = await compared.innerText();
    expect(text).toMatch(/Contingency \(changed\)\s+3 %\s+41 %/);
    const cents = (words: string): number => Math.round(Number(words.replace(/[^\d.]/g, "")) * 100);
    const difference = ((cents(second) - cents(first)) / 100).toFixed(2);
    expect(text.replace(/,/g, "")).toContain(difference);
    await shot("compared");
    // The contingency is no longer what it was, and the selected cell is asked about.
    await compared.getByRole("button", { name: /^What moved Site / }).click();
    const moved = page.getByRole("dialog", { name: /^What moved .*\(Site / });
    expect(await moved.innerText()).toMatch(/ in the older workbook, .* now| in both workbooks/);
    await moved.getByRole("button", { name: "Close" }).click();

    await inView("Look at").click();
    await page.getByText(/^You look at revision 1 \(sent\), frozen/).waitFor();
    await until(async () => (await total().innerText()) === first, isTrue);
    // Nothing goes in, by key or by the bar.
    await page.keyboard.type("99");
    await page.keyboard.press("Enter");
    await button("Add rows").click();
    await message(/^A frozen revision is shown, in which nothing can be changed/);
    await shot("looked-at");
    expect((await jobs())[0]!.line!.total!.toFixed(2)).toBe((cents(second) / 100).toFixed(2));

    await page.getByRole("button", { name: "Restore it" }).click();
    await message(/^Revision 1 is restored/);
    await until(async () => (await total().innerText()) === first, isTrue);
    await button("Jobs").click();
    await view().getByText("before revision 1 was restored").first().waitFor();
    await inView("Restore").click();
    await until(async () => (await total().innerText()) === second, isTrue);
    expect((await jobs())[0]!.revisions.map(({ why }) => why)).toEqual([
      "sent",
      "before revision 1 was restored",
    ]);
    await page.reload();
    await saved();
    expect(await total().innerText()).toBe(second);
  },
);

withDesk(
  "a copy is a draft of its own; put away, searched, brought back; deleted only from there, and asked",
  async () => {
    await button("Jobs").click();
    await view().getByLabel("State", { exact: true }).last().selectOption("accepted");
    await until(async () => (await jobs())[0]!.state === "accepted", isTrue);
    const [original] = await jobs();
    await inView("Copy as new").click();
    await message(/^This is the copy/);
    await enter("Site", at("site_quote"), "C-2");
    await until(async () => (await jobs()).some(({ line }) => line?.number === "C-2"), isTrue);
    const copy = (await jobs()).find(({ id }) => id !== original!.id)!;
    expect([copy.state, copy.revisions.length, copy.file]).toEqual(["draft", 0, undefined]);
    expect((await jobs()).find(({ id }) => id === original!.id)).toMatchObject({
      state: "accepted",
      line: original!.line,
    });

    await button("Jobs").click();
    await view().getByLabel("Search").fill("D-24");
    await view().getByLabel("Search").press("ArrowDown");
    await inView("Put away").click();
    await until(async () => (await jobs()).find(({ id }) => id === original!.id)!.away, isTrue);
    await view().getByLabel("Search").fill("D-24");
    await view()
      .getByRole("button", { name: /1 more put away/ })
      .click();
    await view().getByLabel("Search").press("ArrowDown");
    await shot("put-away");
    await inView("Bring back").click();
    await until(async () => !(await jobs()).find(({ id }) => id === original!.id)!.away, isTrue);
    expect((await jobs()).find(({ id }) => id === original!.id)!.revisions).toEqual(original!.revisions);
  },
);

withDesk(
  "a job of a newer Rigsheet, one whose last changes fail, a damaged one: said, kept, exported; the desk goes on",
  async () => {
    const [shown] = await jobs();
    const held = await askJson<HeldJob>(desk.address, `jobs/${shown!.id}?look`);
    const idOf = (n: number): string => `job-00000000-0000-0000-0000-00000000000${n}`;
    const put = async (n: number, document: object, changes: object[] = []): Promise<void> => {
      const body = JSON.stringify({
        document: { ...held.document, ...document, revisionId: `d${n}` },
        changes,
        after: null,
        line: {
          number: `ZZ-8${n}`,
          revision: "",
          name: "made by hand",
          customer: "",
          date: "",
          currency: "",
          verdict: "",
        },
      });
      expect((await write(desk.address, `jobs/${idOf(n)}`, "PUT", body)).status).toBe(200);
    };
    await put(1, { version: "99.1" });
    const cell = { sheetId: (held.document.sheets[1] as { id: string }).id, col: 1, row: 4 };
    await put(2, {}, [
      {
        type: "REMOTE_REVISION",
        version: 1,
        serverRevisionId: "d2",
        nextRevisionId: "g1",
        clientId: "x",
        commands: [{ type: "UPDATE_CELL", ...cell, content: "Good" }],
      },
      {
        type: "REVISION_UNDONE",
        version: 1,
        serverRevisionId: "g1",
        nextRevisionId: "g2",
        undoneRevisionId: "never there",
      },
      {
        type: "REMOTE_REVISION",
        version: 1,
        serverRevisionId: "g2",
        nextRevisionId: "g3",
        clientId: "x",
        commands: [{ type: "UPDATE_CELL", ...cell, content: "Lost" }],
      },
    ]);
    await put(3, {});

    const bytes = readFileSync(logOf(idOf(3)));
    const damaged = bytes.map((byte, index) => (index === 500 ? byte ^ 1 : byte));
    await page.goto("about:blank");
    await startAgain(() => writeFileSync(logOf(idOf(3)), damaged));

    await button("Jobs").click();
    await view().getByLabel("Search").fill("ZZ-81");
    await view().getByLabel("Search").press("ArrowDown");
    await page.keyboard.press("Enter");
    await message(/^It was made with a newer Rigsheet than this one/);
    // The open job is where it was.
    await view().getByLabel("Search").fill("ZZ-83");
    await view().getByLabel("Search").press("ArrowDown");
    await shot("damaged-job");
    const [download] = await Promise.all([page.waitForEvent("download"), inView("Export as it is").click()]);
    const exported = unzipSync(readFileSync(await download.path()));
    expect(download.suggestedFilename()).toBe("ZZ-83, made by hand.zip");
    const parts = Object.keys(exported).filter((name) => name !== JOBS_LIST);
    expect(parts.map((name) => Buffer.from(exported[name]!))).toEqual([Buffer.from(damaged)]);

    await view().getByLabel("Search").fill("ZZ-82");
    await view().getByLabel("Search").press("ArrowDown");
    await page.keyboard.press("Enter");
    await message(
      /^The last 2 changes could not be shown again; the job with them is kept as its revision 1/,
    );
    const kept = await askJson<HeldJob>(desk.address, `jobs/${idOf(2)}/revisions/1`);
    expect(kept.changes.map(({ nextRevisionId }) => nextRevisionId)).toEqual(["g1", "g2", "g3"]);
    // What could be shown can be gone on with.
    await enter("Site", at("site_customer"), "Still here");
    await until(
      async () => (await jobs()).find(({ id }) => id === idOf(2))!.line?.customer === "Still here",
      isTrue,
    );

    // The job that was open last can't be shown: another is, and the desk starts.
    await askJson(desk.address, `jobs/${idOf(1)}`);
    await startAgain(() => undefined);
    await message(/^The job that was open can't be shown\. It was made with a newer Rigsheet/);
    expect(await page.locator(".o-grid canvas").count()).toBeGreaterThan(0);
  },
);

withDesk(
  "the list on a phone and a tablet: nothing lies over another, everything can be reached",
  async () => {
    for (const [width, height] of [
      [390, 844],
      [768, 1024],
      [1366, 768],
    ] as const) {
      await page.setViewportSize({ width, height });
      await button("Jobs").click();
      await view().getByLabel("Search").waitFor();
      await shot(`jobs-${width}`);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      await inView("Close").click();
    }
  },
);

withDesk(
  "another job that is shown takes the list away, which would speak of the one before (story 26)",
  async () => {
    await button("Jobs").click();
    await view().getByLabel("Search").waitFor();
    await button("New").click();
    await page.getByRole("button", { name: "Empty" }).click();
    await message(/is kept, under Jobs/);
    expect(await view().isVisible()).toBe(false);
    await button("Jobs").click();
    await view().getByText("2 of 2 jobs").waitFor();
  },
);

withDesk(
  "what waits and the server can't take yet is shown after a closed tab, and saved once it can (story 57)",
  async () => {
    const full = async (url: string): Promise<void> => {
      await page.route(url, (route) =>
        route.request().method() === "GET"
          ? route.fallback()
          : route.fulfill({ status: 422, json: { sentence: "The disk is full." } }),
      );
    };
    await full("**/jobs/**");
    await enter("Site", at("site_customer"), "Fourteen");
    await page.getByText(/^not saved: The disk is full\.; 1 edit is kept in this browser/).waitFor();
    const context = page.context();
    await page.close();
    page = await context.newPage();
    page.on("dialog", (dialog) => void dialog.accept());
    await full("**/jobs/**");
    await page.goto(desk.address);
    await page.getByText(/^not saved: The disk is full/).waitFor();
    await toGrid(page);
    expect((await jobs())[0]!.line!.customer).not.toBe("Fourteen");
    // The edit is on the page, and more can be typed behind it.
    await enter("Site", at("site_quote"), "F-15");
    await page.unroute("**/jobs/**");
    await saved();
    await until(async () => (await jobs())[0]!.line!.customer === "Fourteen", isTrue);
    expect((await jobs())[0]!.line!.number).toBe("F-15");
    expect(await jobs()).toHaveLength(1);
    await page.reload();
    await saved();
    expect(await page.locator(".desk-notice").isVisible()).toBe(false);
  },
);
