/** The pane beside the desk's grid, in a real browser. */
import { readFileSync } from "node:fs";
import { chromium, type Browser, type Locator, type Page } from "playwright-core";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { callsUs } from "../../../src/formula/callsUs";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedValue } from "../../../src/workbooks/named";
import { barriers, FLAGS, onPath, openView, statusIs, type Theme } from "../../pane/inChromium";
import { withChromium } from "../../support/tools";
import { BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";
import { toGrid } from "./bothBrowsers";

let folder: string;
let desk: Started;
let browser: Browser | undefined;
let page: Page;

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

interface Shown {
  readonly page: Page;
  /** What went wrong on the page during a test. */
  complaints: string[];
}
/** A page for each theme: another test starts a demonstration on it, which costs a fraction of a new process. */
const shown = new Map<Theme, Shown>();

async function pageIn(program: string, theme: Theme): Promise<Shown> {
  const known = shown.get(theme);
  if (known) return known;
  browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
  const context = await browser.newContext({
    viewport: { width: 1366, height: 768 },
    colorScheme: theme === "dark" ? "dark" : "light",
    forcedColors: theme === "high contrast" ? "active" : "none",
  });
  const made: Shown = { page: await context.newPage(), complaints: [] };
  // The browser's own picker can't be answered from outside; a page without it has a file input.
  await made.page.addInitScript(() => Reflect.deleteProperty(window, "showOpenFilePicker"));
  made.page.on("pageerror", (error) => made.complaints.push(`error: ${error.message}`));
  made.page.on("console", (message) => made.complaints.push(`console: ${message.text()}`));
  await made.page.goto(desk.address);
  await made.page.getByText(/^saved \d\d:\d\d$/).waitFor();
  await toGrid(made.page);
  shown.set(theme, made);
  return made;
}

/** A test with the desk's page on a demonstration started from the pane. */
function withOpenPane(
  name: string,
  work: () => Promise<void>,
  theme: Theme = "light",
  leaves: "nothing" | "settings" = "nothing",
): void {
  withChromium(name, async (program) => {
    const on = await pageIn(program, theme);
    page = on.page;
    on.complaints = [];
    let usable = false;
    try {
      if (await pane().isHidden()) await toggle().click();
      // The way by another view leaves no word of the last test in the status.
      await openView(page, "Cautions");
      await openView(page, "New workbook");
      await inPane("Demonstration").click();
      await statusIs(page, /^The demonstration is ready/);
      await work();
      expect(on.complaints).toEqual([]);
      usable = leaves === "nothing";
    } finally {
      if (!usable) {
        shown.delete(theme);
        await page.context().close();
      }
    }
  });
}

const toggle = (): Locator => page.getByRole("button", { name: "Pane", exact: true });
const pane = (): Locator => page.locator("#pane");
const grid = (): Locator => page.locator(".o-grid canvas").first();
const total = (): Locator => page.getByText(/^Total /);
const selection = (): Locator => page.locator(".o-named-range-selector input");
const inPane = (name: string): Locator => pane().getByRole("button", { name, exact: true }).last();

async function choose(sheet: string, range: string): Promise<void> {
  await page.locator(".o-sheet", { hasText: sheet }).first().click();
  await selection().click();
  await selection().fill(range);
  await selection().press("Enter");
  await pane().getByText(`Selected: ${sheet} ${range}`).waitFor();
}

const widthOf = async (locator: Locator): Promise<number> => (await locator.boundingBox())!.width;

withOpenPane("it opens beside the grid, closes, and shows what it showed when it opens again", async () => {
  expect(await widthOf(pane())).toBe(320);
  const beside = (await pane().boundingBox())!.x;
  const main = (await page.locator("#grid").boundingBox())!;
  expect(main.x + main.width).toBe(beside);
  expect(await widthOf(grid())).toBeLessThanOrEqual(main.width);
  await openView(page, "Functions");
  await page.getByLabel("What do you want to know?").fill("azimuth");
  await toggle().click();
  expect(await pane().isVisible()).toBe(false);
  expect(await toggle().getAttribute("aria-expanded")).toBe("false");
  await page.waitForFunction(() => document.querySelector("#grid")!.clientWidth === innerWidth);
  await toggle().click();
  expect(await page.getByLabel("What do you want to know?").inputValue()).toBe("azimuth");
});

withOpenPane("the proposal and the crew's cards as PDF, named after the job", async () => {
  await openView(page, "Copies");
  const [proposal] = await Promise.all([page.waitForEvent("download"), inPane("Proposal as PDF").click()]);
  expect(proposal.suggestedFilename()).toBe(
    "D-24, revision 1, Guest house, 24 outlets (demonstration) - proposal.pdf",
  );
  await statusIs(page, /proposal\.pdf is made: \d+ pages/);
  await page.getByLabel("What", { exact: true }).selectOption("Cards for the crew");
  const [cards] = await Promise.all([page.waitForEvent("download"), inPane("Print as PDF").click()]);
  expect(cards.suggestedFilename()).toBe(
    "D-24, revision 1, Guest house, 24 outlets (demonstration) - cards.pdf",
  );
  expect(
    readFileSync(await cards.path())
      .subarray(0, 5)
      .toString("latin1"),
  ).toBe("%PDF-");
});

withOpenPane("F6 goes from the grid to the pane, to the bar, and back", async () => {
  const where = (): Promise<string | undefined> =>
    page.evaluate(() => document.activeElement?.closest("#grid, #pane, #bar")?.id);
  await choose("Rooms", "A6");
  await page
    .locator(".o-grid-overlay, .o-grid")
    .first()
    .focus()
    .catch(() => undefined);
  const walk: (string | undefined)[] = [await where()];
  for (let step = 0; step < 3; step++) {
    await page.keyboard.press("F6");
    walk.push(await where());
  }
  expect(walk).toEqual(["grid", "pane", "bar", "grid"]);
});

withOpenPane("a function is found by its task, and its example is worked out in the grid", async () => {
  await choose("About", "F6");
  await openView(page, "Functions");
  await page.keyboard.type("which way does the dish point");
  await pane().locator("summary:visible").first().click();
  // Where nothing is asked for it is not put either: it would be neither counted nor printed.
  await inPane("Put the example into the selected cell").click();
  await statusIs(
    page,
    /^Not done\. Nothing is asked for in the selected cell\. Select a boxed cell, or a cell of a sheet that you/,
  );
  await page.locator(".o-add-sheet").first().click();
  await inPane("Put the example into the selected cell").click();
  await statusIs(page, /^The example is in Sheet\d* A1\.$/);
  // Roddy, Satellite Communications, 4th ed., example 3.1: 162.9 deg
  await pane()
    .getByText(/^Selected: Sheet\d* A1 +162\.[89]\d* +=RIG\.AZIMUTH\(35,-100,-90\)$/)
    .waitFor();
});

withOpenPane("a finding jumps to its cell, and the working of a cell is shown", async () => {
  await openView(page, "Findings");
  await statusIs(page, /^Found: /);
  const finding = pane().locator(".pane-findings li", { hasText: "Conductors that need attention" });
  for (const jump of await finding.locator(".pane-jump").all()) {
    const [, sheet, cell] = /^(.+) ([A-Z]+\d+)$/.exec(await jump.innerText())!;
    await jump.click();
    await statusIs(page, new RegExp(`^${sheet} ${cell} is selected\\.$`));
    // The bar above the grid is painted a moment later.
    await page.waitForFunction(
      (wanted) => document.querySelector<HTMLInputElement>(".o-named-range-selector input")?.value === wanted,
      cell,
    );
    expect(await page.locator(".o-sheet.active").innerText()).toContain(sheet);
    // The next finding can be gone to without reaching for the pane again.
    expect(await jump.evaluate((button) => button === document.activeElement)).toBe(true);
  }
});

withOpenPane("rows are added to the block of the selected cell, and one undo takes them back", async () => {
  await choose("Rooms", "A6");
  await openView(page, "Add rows");
  await page.getByLabel("How many").fill("3");
  await page.keyboard.press("Enter");
  await statusIs(page, /^3 rows were added to Outlets/);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await choose("About", "A1");
  await openView(page, "Add rows");
  await inPane("Add rows").click();
  await statusIs(page, /^Not done\. The chosen cell lies in no block of rows/);
});

withOpenPane("what is being typed is taken by the grid before the pane does anything", async () => {
  const before = await total().innerText();
  await choose("Rooms", "H6");
  await page.keyboard.type("77");
  await openView(page, "Repair formulas");
  await inPane("Repair formulas").click();
  await statusIs(page, /^No Rigsheet formula shows/);
  await pane().getByText("Selected: Rooms H6 77").waitFor();
  expect(await total().innerText()).not.toBe(before);
});

withOpenPane("a copy without add-in and a values-only copy come as files", async () => {
  await openView(page, "Copies");
  const copy = async (kind: "copy without add-in" | "values-only copy") => {
    const [download] = await Promise.all([page.waitForEvent("download"), inPane(`Make a ${kind}`).click()]);
    await statusIs(page, new RegExp(`^The ${kind} is made`));
    expect(download.suggestedFilename()).toMatch(new RegExp(`\\(${kind}\\)\\.xlsx$`));
    return readXlsx(readFileSync(await download.path()));
  };
  const formulas = (book: Awaited<ReturnType<typeof copy>>): string[] =>
    book.sheets.flatMap(({ cells }) => Object.values(cells).flatMap(({ formula }) => formula ?? []));
  const office = await copy("copy without add-in");
  expect(formulas(office).length).toBeGreaterThan(20);
  expect(formulas(office).filter(callsUs)).toEqual([]);
  const sealed = await copy("values-only copy");
  expect(formulas(sealed)).toEqual([]);
  const shown = Number((await total().innerText()).replace(/[^\d.]/g, ""));
  expect(namedValue(office, "quote_total")).toBeCloseTo(shown, 2);
  expect(namedValue(sealed, "quote_total")).toBeCloseTo(shown, 2);
});

withOpenPane(
  "settings are there again after the page is loaded anew, and a new workbook has them",
  async () => {
    await openView(page, "Settings");
    await page.getByLabel("feet").check();
    await page.getByLabel("Currency").fill("NOK");
    await inPane("Keep").click();
    await statusIs(page, /^Kept/);
    await page.reload();
    await page.getByText(/^saved \d\d:\d\d$/).waitFor();
    await toggle().click();
    await inPane("Empty").click();
    await statusIs(page, /^The empty workbook is ready/);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save .xlsx" }).click(),
    ]);
    const book = await readXlsx(readFileSync(await download.path()));
    expect([namedValue(book, "site_unit"), namedValue(book, "site_currency")]).toEqual(["ft", "NOK"]);
  },
  "light",
  "settings",
);

withOpenPane("the selected cell is told in words, to whoever does not see the grid", async () => {
  const told = (words: RegExp): Promise<void> =>
    page.locator("p[role=status].desk-unseen").filter({ hasText: words }).waitFor({ state: "attached" });
  const outlet = guestHouse.blocks!.rooms![2]!;
  await choose("Rooms", "H8");
  await told(new RegExp(`^Run of ${outlet.outlet} \\(Rooms H8\\): ${outlet.run}\\. To fill in\\. .*m or ft`));
  await choose("Rooms", "K8");
  await told(new RegExp(`^Verdict of ${outlet.outlet} \\(Rooms K8\\): \\w+\\.$`));
  await choose("Rooms", "G8");
  await told(/\(Rooms G8\): blank\. To fill in\. /);
  await openView(page, "Read as table");
  await statusIs(page, /^Outlets, on Rooms is shown as a table: 24 rows\.$/);
  await pane()
    .getByRole("button", { name: `${outlet.outlet}, go to row 8` })
    .click();
  await statusIs(page, /^Rooms G8 is selected\.$/);
});

describe.each(["light", "dark", "high contrast"] as Theme[])("in the %s theme", (theme) => {
  withOpenPane(
    "the page with its grid and pane has no barrier that axe can find",
    async () => {
      for (const view of ["New workbook", "Functions", "Findings", "Read as table", "Settings"]) {
        await openView(page, view);
        if (view === "Findings") await statusIs(page, /^Found: /);
        expect({ view, found: await barriers(page) }).toEqual({ view, found: [] });
      }
    },
    theme,
  );

  withOpenPane(
    "nor has what opens over it, and the cells stay as they print",
    async () => {
      const bar = (name: string): Locator =>
        page.getByRole("toolbar", { name: "Job" }).getByRole("button", { name, exact: true });
      const none = async (what: string, within: string): Promise<void> => {
        await page.locator(within).waitFor();
        expect({ what, found: await barriers(page, within) }).toEqual({ what, found: [] });
      };
      const asked = async (what: string, open: () => Promise<void>): Promise<void> => {
        await open();
        await none(what, "dialog");
        await page.keyboard.press("Escape");
        await page.locator("dialog").waitFor({ state: "detached" });
      };
      const ofFile = async (name: string, text: string): Promise<void> => {
        const [chooser] = await Promise.all([page.waitForEvent("filechooser"), bar(name).click()]);
        await chooser.setFiles({ name: "list.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
      };
      await asked("new job", () => bar("New").click());
      await asked("print", () => page.keyboard.press("Control+p"));
      await asked("survey", () => ofFile("Import survey…", "Outlet;Fed from;Run\nS-1;G1;45\nS-2;G1;far\n"));
      await asked("prices", () => ofFile("Price list…", "Description;Unit;Price\nindoor drop;m;0,36\n"));
      await bar("Jobs").click();
      await page.locator(".jobs-table [aria-selected]").first().waitFor();
      await none("jobs", "#jobs");
      await bar("Jobs").click();
      await page.locator(".o-topbar-menu", { hasText: "Edit" }).click();
      await none("menu", ".o-menu");
      await page.keyboard.press("Escape");
      const schemes = await page.evaluate(() => ({
        // The sum of red, green and blue.
        ground: getComputedStyle(document.body)
          .backgroundColor.match(/\d+/g)!
          .reduce((sum, part) => sum + Number(part), 0),
        cells: getComputedStyle(document.querySelector(".o-grid")!).colorScheme,
      }));
      // Forced colours are the browser's own, whatever a page asks for.
      if (theme !== "high contrast") expect(schemes.cells).toBe("light");
      if (theme === "light") expect(schemes.ground).toBe(3 * 255);
      if (theme === "dark") expect(schemes.ground).toBeLessThan(3 * 64);
    },
    theme,
  );
});
