/**
 * One job in several windows, and a server that goes away: what was typed
 * anywhere is in the job, or kept and offered. After the stories 36 to 47 of
 * somebody who had not seen the code (tests/jobs/fixtures/stories.md).
 */
import path from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { chromium, type Browser } from "playwright-core";
import type { HeldJob } from "../../../src/jobs/shelf";
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
import { until } from "../../support/until";

const { SHOTS } = process.env;
const empty = layOut(multiRoom);
const at = (name: string): string => placeOfName(empty, name)!.at;

let folder: string;
let desk: Started;
let browser: Browser | undefined;

beforeAll(buildDesk, BUILD_MS);
afterAll(() => browser?.close());

function withDesk(name: string, work: (context: BrowserContext) => Promise<void>): void {
  withChromium(name, async (program) => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    folder = temporaryFolder();
    desk = await startDesk("--data", folder, "--port", String(await freePort()));
    const context = await browser.newContext({ viewport: { width: 1366, height: 768 } });
    try {
      await work(context);
    } finally {
      await context.close();
      await desk.kill();
      remove(folder);
    }
  });
}

async function opened(context: BrowserContext, address = desk.address): Promise<Page> {
  const page = await context.newPage();
  page.on("dialog", (dialog) => void dialog.accept());
  await page.goto(address);
  await page.locator(".o-grid canvas").first().waitFor();
  await page.getByText(/^(?:saved \d\d:\d\d|watching)$/).waitFor();
  await toGrid(page);
  return page;
}
const saved = (page: Page): Promise<void> => page.getByText(/^saved \d\d:\d\d$/).waitFor();
const strip = (page: Page) => page.locator("#strip");
const message = (page: Page, text: RegExp): Promise<void> =>
  page.locator(".desk-notice p", { hasText: text }).waitFor();
const shot = async (page: Page, name: string): Promise<void> => {
  if (SHOTS) await page.screenshot({ path: path.join(SHOTS, `${name}.png`) });
};

async function enter(page: Page, cell: string, text: string, sheet = "Site"): Promise<void> {
  await chooseCell(page, sheet, cell);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

/** The contents that the server has for cells of the Site sheet, read as a client that is no page of ours. */
async function onServer(cells: readonly string[], id?: string): Promise<(string | undefined)[]> {
  const list = await askJson<ShelfList>(desk.address, "jobs");
  const job = id ?? list.jobs.find(({ conflictOf }) => !conflictOf)!.id;
  const { document, changes } = await askJson<HeldJob>(desk.address, `jobs/${job}?look`);
  const sheet = (document.sheets as { id: string; name: string; cells: Record<string, string> }[]).find(
    ({ name }) => name === "Site",
  )!;
  const found = new Map(Object.entries(sheet.cells));
  for (const change of changes as unknown as {
    commands?: { type: string; sheetId: string; row: number; col: number; content?: string }[];
  }[])
    for (const { type, sheetId, row, col, content } of change.commands ?? [])
      if (type === "UPDATE_CELL" && sheetId === sheet.id && content !== undefined)
        found.set(`${String.fromCharCode(65 + col)}${row + 1}`, content);
  // Text in a cell of numbers or of text begins with a stroke.
  return cells.map((cell) => found.get(cell)?.replace(/^'/, ""));
}

const NAME = at("site_job");
const QUOTE = at("site_quote");
const CUSTOMER = at("site_customer");
/** The column of the outlets' names. */
const OUTLETS = at("rooms_outlet").replace(/\d/g, "");

withDesk("the second window is told, watches live, and takes no edit", async (context) => {
  const first = await opened(context);
  const second = await opened(context);
  expect(await strip(second).innerText()).toMatch(/^Another window has this job open\. You watch/);
  await shot(second, "watching");
  await enter(first, QUOTE, "W-36");
  await saved(first);
  await second.getByRole("heading", { level: 1, name: /^W-36/ }).waitFor();
  // The grid has the focus.
  await second.keyboard.type("X-1");
  await second.keyboard.press("Enter");
  await second.waitForTimeout(500);
  expect(await onServer([QUOTE])).toEqual(["W-36"]);
  expect(await second.getByText(/^saved/).count()).toBe(0);
  // The window that has it closes: it is said, and nothing hinders the other.
  await first.close();
  await strip(second)
    .getByText(/^The window that had this job open has closed/)
    .waitFor();
  await strip(second).getByRole("button", { name: "Take over" }).click();
  await strip(second).waitFor({ state: "hidden" });
  await enter(second, QUOTE, "W-37");
  await saved(second);
  expect(await onServer([QUOTE])).toEqual(["W-37"]);
});

withDesk("a job is taken over, and back, and over again: every edit stays", async (context) => {
  const first = await opened(context);
  const second = await opened(context);
  const edits = [
    [second, QUOTE, "11"],
    [first, CUSTOMER, "12"],
    [second, NAME, "13"],
  ] as const;
  for (const [page, cell, text] of edits) {
    await page.bringToFront();
    await strip(page).getByRole("button", { name: "Take over" }).click();
    await strip(page).waitFor({ state: "hidden" });
    await enter(page, cell, text);
    await saved(page);
  }
  await strip(first).getByRole("button", { name: "Take over" }).waitFor();
  expect(await onServer([QUOTE, CUSTOMER, NAME])).toEqual(["11", "12", "13"]);
  expect((await askJson<ShelfList>(desk.address, "jobs")).jobs).toHaveLength(1);
});

withDesk(
  "taken over in the middle of a cell: the letters stay, and the whole is offered",
  async (context) => {
    const first = await opened(context);
    await chooseCell(first, "Site", NAME);
    await first.keyboard.type("Guest house Linden");
    const second = await opened(context);
    await strip(second).getByRole("button", { name: "Take over" }).click();
    await strip(second).waitFor({ state: "hidden" });
    await enter(second, QUOTE, "L-39");
    await saved(second);

    await first.bringToFront();
    await strip(first)
      .getByText(/Another window has taken this job over.*finish the cell with Enter/)
      .waitFor();
    await first.keyboard.type("straße 9");
    await first.keyboard.press("Enter");
    await strip(first)
      .getByText(/^1 edit of .* did not fit any more/)
      .waitFor();
    await shot(first, "offered");
    expect(await onServer([NAME, QUOTE])).not.toContain("Guest house Lindenstraße 9");

    await strip(first).getByRole("button", { name: "Put them into the job" }).click();
    await until(
      () => onServer([QUOTE, NAME]),
      (found) => found[1] === "Guest house Lindenstraße 9",
    );
    expect(await onServer([QUOTE, NAME])).toEqual(["L-39", "Guest house Lindenstraße 9"]);
    // Answered once, it is out of the way, and can be brought back.
    await until(
      () => askJson<ShelfList>(desk.address, "jobs"),
      ({ jobs }) => jobs.find(({ conflictOf }) => conflictOf)?.away === true,
    );
  },
);

withDesk("both have changed one cell in two browsers: asked, both shown, nothing lost", async (context) => {
  const mine = await opened(context);
  const other = await browser!.newContext();
  try {
    const theirs = await opened(other);
    // Before anything is typed there.
    await message(
      theirs,
      /^Another browser has had this job open since 2\d{3}-\d\d-\d\d \d\d:\d\d\. .*Close it in one/,
    );
    await shot(theirs, "two-browsers");
    expect(await mine.locator(".desk-notice").isVisible()).toBe(false);
    await enter(theirs, QUOTE, "80.00");
    await saved(theirs);
    await enter(mine, QUOTE, "85.00");
    await strip(mine)
      .getByText(/^1 edit of .* did not fit any more/)
      .waitFor();
    expect(await onServer([QUOTE])).toEqual(["80.00"]);
    await strip(mine).getByRole("button", { name: "Put them into the job" }).click();
    const dialog = mine.getByRole("dialog", { name: "Both have changed these cells" });
    expect(await dialog.innerText()).toContain(`Site ${QUOTE}: now 80.00, here 85.00`);
    await shot(mine, "clash");
    await dialog.getByRole("button", { name: "Cancel" }).click();
    expect(await onServer([QUOTE])).toEqual(["80.00"]);
    // Once it is closed there, nothing is said of it any more.
    await theirs.close();
    const again = await opened(context);
    expect(await again.locator(".desk-notice", { hasText: "Another browser" }).isVisible()).toBe(false);
  } finally {
    await other.close();
  }
});

withDesk(
  "edits typed while the server is away are kept across a closed tab, and handed over",
  async (context) => {
    const page = await opened(context);
    await enter(page, QUOTE, "A-43");
    await saved(page);
    const { port } = new URL(desk.address);
    await desk.kill();
    await enter(page, CUSTOMER, "Four");
    await enter(page, NAME, "Five");
    await page
      .getByText(/^not saved: the local server does not answer.*2 edits are kept in this browser/)
      .waitFor();
    await shot(page, "server-away");
    await page.close();
    desk = await startDesk("--data", folder, "--port", port);
    expect(await onServer([QUOTE, CUSTOMER, NAME])).not.toContain("Four");
    const again = await opened(context);
    await message(again, /^2 edits of .*made while the server was away, are saved now/);
    expect(await onServer([QUOTE, CUSTOMER, NAME])).toEqual(["A-43", "Four", "Five"]);
    // Once: the next visit has nothing to hand over.
    await again.reload();
    await saved(again);
    expect(await again.locator(".desk-notice").isVisible()).toBe(false);
  },
);

withDesk("edits of an open page are handed over when the server is back", async (context) => {
  const page = await opened(context);
  const { port } = new URL(desk.address);
  await desk.kill();
  await enter(page, CUSTOMER, "Six");
  await page.getByText(/^not saved: .*1 edit is kept in this browser/).waitFor();
  desk = await startDesk("--data", folder, "--port", port);
  await saved(page);
  expect(await onServer([CUSTOMER])).toEqual(["Six"]);
  await page.reload();
  await saved(page);
  expect(await page.locator(".desk-notice").isVisible()).toBe(false);
});

withDesk(
  "what was typed meanwhile goes to the row that was meant, after another has been put above it",
  async (context) => {
    const mine = await opened(context);
    const { port } = new URL(desk.address);
    await chooseCell(mine, "Rooms", at("rooms_run"));
    await desk.kill();
    await enter(mine, at("rooms_run"), "77", "Rooms");
    await mine.getByText(/1 edit is kept in this browser/).waitFor();
    await mine.close();
    desk = await startDesk("--data", folder, "--port", port);

    const other = await browser!.newContext({ viewport: { width: 1366, height: 768 } });
    const theirs = await opened(other);
    await chooseCell(theirs, "Rooms", at("rooms_run"));
    const before = await nameOfRow(theirs, at("rooms_run"));
    await theirs.getByRole("toolbar", { name: "Job" }).getByRole("button", { name: "Add rows" }).click();
    await theirs.getByLabel("How many rows").fill("1");
    await theirs.keyboard.press("Enter");
    await saved(theirs);
    await theirs.waitForTimeout(500);
    await other.close();

    const again = await opened(context);
    await strip(again)
      .getByText(/^1 edit of .* did not fit any more/)
      .waitFor();
    await strip(again).getByRole("button", { name: "Put them into the job" }).click();
    await strip(again).waitFor({ state: "hidden" });
    await saved(again);
    await chooseCell(again, "Rooms", at("rooms_run"));
    const rows = await runsByName(again);
    expect(rows.get(before)).toBe("77");
  },
);

withDesk("another data folder at the same address gets nothing of this one's", async (context) => {
  const page = await opened(context);
  const { port } = new URL(desk.address);
  await desk.kill();
  await enter(page, CUSTOMER, "North");
  await page.getByText(/1 edit is kept in this browser/).waitFor();
  await page.close();
  const south = temporaryFolder();
  try {
    desk = await startDesk("--data", south, "--port", port);
    const elsewhere = await opened(context);
    await message(elsewhere, /^Edits of .* wait in this browser; they belong to another data folder/);
    const { jobs } = await askJson<ShelfList>(desk.address, "jobs");
    for (const { id } of jobs) expect(await onServer([CUSTOMER], id)).not.toContain("North");
    await elsewhere.close();
    await desk.kill();
    desk = await startDesk("--data", folder, "--port", port);
    const back = await opened(context);
    await message(back, /^1 edit of .*made while the server was away, is saved now/);
    expect(await onServer([CUSTOMER])).toEqual(["North"]);
  } finally {
    remove(south);
  }
});

withDesk(
  "a window that lost its job and is closed unread: its edits stand among the jobs the next day",
  async (context) => {
    const mine = await opened(context);
    const id = (await askJson<ShelfList>(desk.address, "jobs")).jobs[0]!.id;
    const { changes, document } = await askJson<HeldJob>(desk.address, `jobs/${id}?look`);
    const head = changes.at(-1)?.nextRevisionId ?? document.revisionId;
    // Somebody else, who has no page of ours.
    await write(
      desk.address,
      `jobs/${id}/changes`,
      "POST",
      JSON.stringify({
        changes: [
          {
            type: "REMOTE_REVISION",
            serverRevisionId: head,
            nextRevisionId: "x1",
            commands: [],
            clientId: "x",
          },
        ],
      }),
    );
    await enter(mine, CUSTOMER, "Nine");
    await strip(mine)
      .getByText(/^1 edit of .* did not fit any more/)
      .waitFor();
    await mine.close();
    const { port } = new URL(desk.address);
    await desk.kill();
    desk = await startDesk("--data", folder, "--port", port);
    const { jobs } = await askJson<ShelfList>(desk.address, "jobs");
    const kept = jobs.find(({ conflictOf }) => conflictOf?.job === id)!;
    expect(await onServer([CUSTOMER], kept.id)).toEqual(["Nine"]);
    const again = await opened(context);
    await again.goto(`${new URL(desk.address).origin}/#${kept.id}`);
    await again.reload();
    await strip(again).getByRole("button", { name: "Put them into the job" }).waitFor();
  },
);

/** The name in the outlet's row, as the grid shows it when the cell is chosen. */
async function nameOfRow(page: Page, cell: string): Promise<string> {
  // Not what the page's own line shows: on a busy machine that is still of the cell before.
  return String((await roomsOf(page))[`${OUTLETS}${cell.replace(/\D/g, "")}`]?.value ?? "");
}

/** Outlets and their runs. */
async function runsByName(page: Page): Promise<Map<string, string>> {
  const cells = await roomsOf(page);
  const column = at("rooms_run").replace(/\d/g, "");
  return new Map(
    Array.from({ length: 60 }, (_, row) => [
      String(cells[`${OUTLETS}${row + 1}`]?.value ?? ""),
      String(cells[`${column}${row + 1}`]?.value ?? ""),
    ]),
  );
}

/** The cells of Rooms, from the workbook that the page hands over to be written. */
async function roomsOf(page: Page): Promise<Record<string, { value?: unknown }>> {
  let book: { sheets: { name: string; cells: Record<string, { value?: unknown }> }[] } | undefined;
  await page.route("**/save", (route) => {
    book = route.request().postDataJSON() as typeof book;
    return route.fulfill({ body: "" });
  });
  await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("toolbar", { name: "Job" }).getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  await page.unroute("**/save");
  return book!.sheets.find(({ name }) => name === "Rooms")!.cells;
}
