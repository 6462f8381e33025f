/** The static folder's page edits, and its tab or its whole browser is ended at random moments: what it had said to be saved is there. */
import { spawn } from "node:child_process";
import { chromium, type Browser, type BrowserContext, type Page } from "playwright-core";
import type { HeldJob, Shelf } from "../../../src/jobs/shelf";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../../src/workbooks/named";
import { FLAGS } from "../../pane/inChromium";
import { randomFrom } from "../../review/cleanJobs";
import { withChromium } from "../../support/tools";
import { saved, started, toGrid } from "./bothBrowsers";
import { beside, countedIn, piecesOn, shelfOf } from "./browsersStore";
import { builtFolder } from "./builtFolder";
import { BUILD_MS, buildDesk, remove, temporaryFolder } from "./desk";
import { serveFolder, type FolderServer } from "./folderServer";
import { chooseCell } from "./gridOnPage";
import { tries } from "../../support/tries";

/** `npm run prove` gives 300. */
const KILLS = tries(5, 10, 100);
const CELL = placeOfName(layOut(multiRoom), "site_customer")!.at;
/** A kill comes so long after its round has begun at the latest. */
const LATEST_MS = 1200;

let server: FolderServer;
beforeAll(async () => {
  buildDesk();
  server = await serveFolder(await builtFolder());
}, BUILD_MS);
afterAll(() => server.stop());

/** A browser that is a process of its own, with a folder that it finds again. */
interface Started {
  readonly context: BrowserContext;
  /** Ends the process and all of its own, as a crash of the machine's session would. */
  kill(): Promise<void>;
}

async function startBrowser(program: string, folder: string): Promise<Started> {
  const child = spawn(
    program,
    [
      ...FLAGS,
      `--user-data-dir=${folder}`,
      "--remote-debugging-port=0",
      "--window-size=1366,768",
      "about:blank",
    ],
    { detached: true, stdio: ["ignore", "ignore", "pipe"] },
  );
  const ended = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let printed = "";
    child.stderr.on("data", (part: Buffer) => {
      printed += part.toString();
      const found = /DevTools listening on (\S+)/.exec(printed)?.[1];
      if (found) resolve(found);
    });
    child.once("exit", () => reject(new Error(printed)));
  });
  const browser: Browser = await chromium.connectOverCDP(address);
  return {
    context: browser.contexts()[0]!,
    kill: async () => {
      if (child.exitCode === null && child.signalCode === null) process.kill(-child.pid!, "SIGKILL");
      await ended;
    },
  };
}

/** What the page had said before its end. */
interface Said {
  /** So many edits of this visit were entered when it said “saved” last. */
  edits: number;
}

/** Counts the entries that the grid has taken, and tells the test how many there were each time “saved” is shown. */
const WATCH = (): void => {
  let entered = 0;
  addEventListener(
    "keydown",
    ({ key }) => {
      // By then the grid has taken it, whoever stops the event.
      if (key === "Enter") setTimeout(() => entered++);
    },
    { capture: true },
  );
  addEventListener("DOMContentLoaded", () => {
    let before = "";
    new MutationObserver(() => {
      const now = document.querySelector(".desk-saving")?.textContent ?? "";
      if (now !== before && now.startsWith("saved"))
        void (window as unknown as { said(n: number): void }).said(entered);
      before = now;
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
};

async function opened(context: BrowserContext, said: Said, id: string): Promise<Page> {
  const page = await context.newPage();
  await page.setViewportSize({ width: 1366, height: 768 });
  page.on("dialog", (dialog) => void dialog.accept().catch(() => undefined));
  // A choice of the cell ends with the same key.
  let ownEnters = 0;
  await page.exposeFunction("said", (entered: number) => {
    said.edits = Math.max(said.edits, entered - ownEnters);
  });
  await page.addInitScript(WATCH);
  await page.goto(`${server.address}${id && `#${id}`}`);
  await started(page);
  await toGrid(page);
  await saved(page);
  ownEnters = 1;
  await chooseCell(page, "Site", CELL);
  return page;
}

type Round = "edits" | "freeze" | "copy" | "away";
const ENDS = ["tab closed", "tab crashed", "browser killed"] as const;

withChromium(
  `${KILLS} ends of tab and browser while the page edits: all that it had said to be saved is there, in order, and once`,
  async (program) => {
    const folder = temporaryFolder();
    const random = randomFrom(100);
    let browser = await startBrowser(program, folder);
    let job = "";
    let there = 0;
    let acknowledged = 0;
    let lost = 0;
    /** Each frozen state as it was first seen. */
    const frozen = new Map<string, string>();
    const counts: Record<string, number> = {};
    try {
      for (let kill = 0; kill < KILLS; kill++) {
        const round: Round = random() < 0.6 ? "edits" : (["freeze", "copy", "away"] as const)[kill % 3]!;
        const end = ENDS[Math.floor(random() * ENDS.length)]!;
        const said: Said = { edits: 0 };
        let isTold = false;
        const page = await opened(browser.context, said, job);
        if (!job) job = new URL(page.url()).hash.slice(1);
        const from = there;
        const work = async (): Promise<void> => {
          for (let edit = 0; edit < 6; edit++) {
            await page.keyboard.type(`e${from + edit}`);
            await page.keyboard.press("Enter");
            await page.keyboard.press("ArrowUp");
          }
          if (round === "edits") return;
          await saved(page);
          const jobs = page.locator(".desk-jobs");
          await page.keyboard.press("Control+j");
          if (round === "freeze") {
            await jobs.getByRole("button", { name: "Freeze…" }).click();
            await page.locator("dialog input").fill(`round ${kill}`);
            await page.locator("dialog").getByRole("button", { name: "Freeze", exact: true }).click();
            await jobs.getByText(`round ${kill}`, { exact: true }).first().waitFor();
          } else if (round === "copy") {
            await jobs.getByRole("button", { name: "Copy as new" }).first().click();
            await page.getByText("This is the copy").waitFor();
          } else {
            await jobs.getByRole("button", { name: /^(?:Put away|Bring back)$/ }).click();
            await jobs.getByText(/^(?:Put away\. It stands|Brought back)/).waitFor();
          }
          isTold = true;
        };
        const before = await beside(browser.context, server.address, piecesOn).then(shelfOf);
        const working = work().catch(() => undefined);
        // What a menu does comes after the edits, so its kill comes later.
        const after = (random() + (round === "edits" ? 0 : 0.6 + random() * 2)) * LATEST_MS;
        await new Promise((resolve) => setTimeout(resolve, after));
        const wasTold = isTold;
        if (end === "browser killed") await browser.kill();
        else if (end === "tab crashed") {
          const session = await browser.context.newCDPSession(page);
          const crash = page.waitForEvent("crash", { timeout: 5000 }).catch(() => undefined);
          void session.send("Page.crash").catch(() => undefined);
          await crash;
          await page.close();
        } else await page.close();
        await working;
        counts[end] = (counts[end] ?? 0) + 1;
        counts[round] = (counts[round] ?? 0) + 1;
        if (end === "browser killed") browser = await startBrowser(program, folder);

        const shelf = await beside(browser.context, server.address, piecesOn).then(shelfOf);
        const where = `kill ${kill} (${end}, ${round})`;
        expect([where, shelf.notices, shelf.list().filter(({ trouble }) => trouble)]).toEqual([
          where,
          [],
          [],
        ]);
        const held = await shelf.held(job);
        const values = countedIn(held, CELL);
        // In order and once, nothing of what it had said missing, nothing that was never typed.
        expect([where, values]).toEqual([where, Array.from({ length: values.length }, (_, index) => index)]);
        expect([where, values.length >= from + said.edits && values.length <= from + 6]).toEqual([
          where,
          true,
        ]);
        there = values.length;
        acknowledged += said.edits;
        lost += from + 6 - there;
        await expectFrozen(shelf, held, frozen, where);
        if (wasTold) await expectDone(round, kill, before, shelf, job);
        // A copy is whole or is not there.
        for (const { id } of shelf.list())
          if (id !== job && round === "copy" && before.list().every((one) => one.id !== id))
            expect([where, countedIn(await shelf.held(id), CELL)]).toEqual([where, values]);
      }
      // The kills came in the middle of work that was said to be saved, and of such that was not.
      expect(acknowledged).toBeGreaterThan(KILLS);
      if (process.env.TOLD)
        process.stderr.write(`${JSON.stringify({ counts, acknowledged, lost, revisions: frozen.size })}\n`);
    } finally {
      await browser.kill();
      remove(folder);
    }
  },
  60_000 + KILLS * 20_000,
);

/** Each frozen state can be read, and is as it was when it was seen first. */
async function expectFrozen(
  shelf: Shelf,
  { id, notes }: HeldJob,
  frozen: Map<string, string>,
  where: string,
): Promise<void> {
  expect([where, notes.revisions.length >= frozen.size]).toEqual([where, true]);
  for (const { number, key } of notes.revisions) {
    const { document, changes } = await shelf.revision(id, number);
    const now = JSON.stringify([document, changes]);
    expect([where, number, now === (frozen.get(key) ?? now)]).toEqual([where, number, true]);
    frozen.set(key, now);
  }
}

/** What the page had told to be done is done. */
async function expectDone(
  round: Round,
  kill: number,
  before: Shelf,
  shelf: Shelf,
  job: string,
): Promise<void> {
  const { notes } = await shelf.held(job);
  if (round === "freeze") expect(notes.revisions.at(-1)?.why).toBe(`round ${kill}`);
  if (round === "copy") expect(shelf.list().length).toBe(before.list().length + 1);
  if (round === "away") expect(notes.away).toBe(!(await before.held(job)).notes.away);
}
