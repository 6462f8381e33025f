/** Every view of the pane, 320 pixels wide, in three themes: barriers, width, keyboard; then what each does. */
import type { Page } from "playwright-core";
import { readTables } from "../../src/hosts/file/readTables";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { RIGSHEET_VERSION } from "../../src/version";
import type { Book } from "../../src/workbooks/book";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import { layOut } from "../../src/workbooks/layOut";
import { namedColumn } from "../../src/workbooks/named";
import { singleDrop } from "../../src/workbooks/singleDrop/definition";
import type { ImportedTable } from "../../src/workbooks/imported/table";
import { templateOf, templates } from "../../src/workbooks/templates";
import type { FakeOptions } from "./fakeHost";
import {
  barriers,
  BUNDLE_MS,
  bundled,
  callsOf,
  closeBrowser,
  openView,
  status,
  statusIs,
  withPane,
  type Looks,
  type Theme,
} from "./inChromium";

let script = "";
const book: Book = recalculate(templates[0]!.demonstration());
/**
 * The same job, its first four outlets measured: as predicted, but for one with a splitter in its run. No volts: what
 * stands at an outlet is its own receiver's.
 */
const measuredBook: Book = (() => {
  const { definition, demonstration } = templates[0]!;
  const inputs = jobInputsOf(definition, demonstration());
  const level = (row: number, end: string): number =>
    Number(namedColumn(book, `commission_due_${end}`)[row + 1]);
  return recalculate(
    layOut(definition, {
      ...inputs,
      blocks: {
        ...inputs.blocks,
        rooms: inputs.blocks!.rooms!.map((row, index) =>
          index < 4
            ? {
                ...row,
                built_low: level(index, "low") - (index === 2 ? 4 : 0),
                built_high: level(index, "high") - (index === 2 ? 12 : 0),
              }
            : row,
        ),
      },
    }),
  );
})();
/** A calculated cell of the demonstration: where its second slot stands. */
const calculated = (() => {
  const { sheet, range } = book.names.find(({ name }) => name === "sight_angles")!;
  const at = range.split(":")[0]!.replace(/\d+/, (row) => String(Number(row) + 2));
  return { sheet, at, result: book.sheets.find(({ name }) => name === sheet)!.results[at]! };
})();

/** A survey of the demonstration with two new outlets, one that is there already and one that cannot be read. */
const SURVEY = `Outlet;Receiver;Fed from;Cable;Length (ft);Wall plate;Price
S-1;receiver;H2;indoor drop;45,5;single outlet;3
G-01;receiver;H2;indoor drop;30;single outlet;3
S-2;receiver;H2;indoor drop;far;single outlet;3
S-3;receiver;H2;indoor drop;61,25;single outlet;3`;
const surveyFile = { name: "survey <b>.csv", mimeType: "text/csv", buffer: Buffer.from(SURVEY) };
let tables: readonly ImportedTable[];

/** A supplier's list that names no currency: known, new, five times off, and one that has to be asked. */
const PRICES = `Article;Description;Unit;Pack;Price
2210;indoor drop;m;100;0,36
5104;splitter, 4-way;pc;1;132,00
5116;splitter <b>16-way</b>;pc;1;41,00
7001;single outlet;pc;0;4,00`;
const pricesFile = { name: "list <b>.csv", mimeType: "text/csv", buffer: Buffer.from(PRICES) };
const SUPPLIER = "second supplier (demonstration)";
let priceTables: readonly ImportedTable[];

beforeAll(async () => {
  script = await bundled();
  tables = await readTables(surveyFile.buffer);
  priceTables = await readTables(pricesFile.buffer);
}, BUNDLE_MS);
afterAll(() => closeBrowser());

const open = (
  name: string,
  options: Partial<FakeOptions> | "no host",
  work: (page: Page) => Promise<void>,
  looks: Looks = {},
): void =>
  withPane(
    name,
    () => script,
    () =>
      options === "no host"
        ? undefined
        : { book, tables, tablesOfSize: { [pricesFile.buffer.length]: priceTables }, ...options },
    looks,
    work,
  );

const VIEWS = [
  "New workbook",
  "Steps",
  "Functions",
  "Add rows",
  "Survey",
  "Price list",
  "Findings",
  "Read as table",
  "Diagnose",
  "Pictures",
  "Why?",
  "Show calculation",
  "Repair formulas",
  "Copies",
  "Upgrade",
  "Training",
  "Settings",
  "Cautions",
] as const;

/** Brings a view into the state in which it shows the most. */
async function fill(page: Page, view: (typeof VIEWS)[number]): Promise<void> {
  await openView(page, view);
  switch (view) {
    case "Functions":
      await page.getByLabel("What do you want to know?").fill("bonding conductor");
      await page.locator("summary", { hasText: "RIG.BONDCHECK" }).click();
      await page.getByRole("button", { name: "Put the example" }).click();
      await page.getByRole("button", { name: "Replace it" }).waitFor();
      break;
    case "Add rows":
      await page.getByLabel("How many").fill("0");
      await page.getByRole("button", { name: "Add rows" }).last().click();
      await statusIs(page, /^Not done: give a whole number of rows from 1 to /);
      break;
    case "Survey":
      await page.getByLabel("File, .csv or .xlsx").setInputFiles(surveyFile);
      await page.getByRole("button", { name: "Add 2 outlets, change 1 on Rooms" }).waitFor();
      break;
    case "Price list":
      await page.getByLabel("Price list, .csv, .txt or .xlsx").setInputFiles(pricesFile);
      await page.getByLabel("Supplier, as this workbook names it").fill(SUPPLIER);
      await page.keyboard.press("Tab");
      await page.getByText("The list names no currency").waitFor();
      await page.locator("summary", { hasText: "Columns of the list" }).click();
      break;
    case "Findings":
      await statusIs(page, /^Found: \d+ wrong/);
      break;
    case "Read as table":
      await statusIs(page, /is shown as a table: \d+ rows?\.$/);
      break;
    case "Why?":
    case "Show calculation":
      await statusIs(page, /is shown\.$/);
      break;
    case "Copies":
      await page.getByRole("button", { name: "Make a values-only copy" }).click();
      await statusIs(page, /^Not done\. There is no room/);
      break;
    case "Training":
      await page.getByLabel("Trainees", { exact: true }).fill("Anna Berg\n<b>Bo</b>");
      await page.getByRole("button", { name: "Draw" }).click();
      await statusIs(page, /^2 sheets and the key can be made\. Note the seed: \d+\.$/);
      break;
    case "Settings":
      await page.getByText("do not answer").first().waitFor();
      break;
  }
}

/** Sideways scrolling of the page, or of the part that scrolls. */
const overflow = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    ["html", ".pane", ".pane-views"].filter((one) => {
      const element = document.querySelector(one)!;
      return element.scrollWidth > element.clientWidth;
    }),
  );

/** Walks once through the page by Tab. @returns the controls that were not reached, or whose focus can't be seen */
async function walk(page: Page): Promise<string[]> {
  const wanted = await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
    const controls = [
      ...document.querySelectorAll<HTMLElement>(
        "button, input, select, textarea, summary, a[href], [tabindex='0']",
      ),
    ];
    // Of a group of radio buttons, Tab reaches the chosen one; the arrows reach the others.
    const reachable = controls.filter(
      (one) =>
        one.checkVisibility() && !(one instanceof HTMLInputElement && one.type === "radio" && !one.checked),
    );
    reachable.forEach((one, index) => (one.dataset.walk = String(index)));
    return reachable.map((one) => one.outerHTML);
  });
  const reached = new Set<number>();
  const unseen: string[] = [];
  for (let step = 0; step < wanted.length + 2; step++) {
    await page.keyboard.press("Tab");
    const focus = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const { left, top, width, height } = element.getBoundingClientRect();
      const above = document.elementFromPoint(left + Math.min(width, 30) / 2, top + height / 2);
      return {
        index: element.dataset.walk,
        seen: outlineStyle !== "none" && parseFloat(outlineWidth) >= 2,
        uncovered: element.contains(above) || (above?.contains(element) ?? false),
      };
    });
    if (focus.index === undefined) continue;
    reached.add(Number(focus.index));
    if (!focus.seen) unseen.push(`no focus to be seen: ${wanted[Number(focus.index)]}`);
    if (!focus.uncovered) unseen.push(`covered: ${wanted[Number(focus.index)]}`);
  }
  return [...unseen, ...wanted.filter((_, index) => !reached.has(index)).map((one) => `not reached: ${one}`)];
}

describe.each(["light", "dark", "high contrast"] as Theme[])("in the %s theme", (theme) => {
  open(
    "every view: no barrier, no sideways scrolling, every control by keyboard with a focus that shows",
    {
      selection: calculated,
      facts: { functionsVersion: undefined, spills: false },
      refuse: { handOverCopy: "There is no room for the copy. Make room, then try again." },
    },
    async (page) => {
      for (const view of VIEWS) {
        await fill(page, view);
        expect({ view, barriers: await barriers(page) }).toEqual({ view, barriers: [] });
        expect({ view, overflow: await overflow(page) }).toEqual({ view, overflow: [] });
        expect({ view, walk: await walk(page) }).toEqual({ view, walk: [] });
      }
    },
    { theme },
  );
});

describe.each(["light", "dark"] as Theme[])("a dark or a light ground in the %s theme", (theme) => {
  open(
    "is what the theme asks for",
    {},
    async (page) => {
      const lightness = await page
        .locator(".pane")
        .evaluate((pane) => /\d+/.exec(getComputedStyle(pane).backgroundColor)![0]);
      expect(Number(lightness) > 128).toBe(theme === "light");
    },
    { theme },
  );
});

open(
  "a window as low as at 400 % zoom scrolls as one page",
  { selection: calculated },
  async (page) => {
    for (const view of ["Functions", "Findings"] as const) {
      await fill(page, view);
      expect(await overflow(page)).toEqual([]);
      expect(await walk(page)).toEqual([]);
    }
  },
  { height: 256 },
);

describe("what each view does", () => {
  open("Start: by keyboard alone, with the person's unit in the empty workbook", {}, async (page) => {
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Empty" }).focus();
    await page.keyboard.press("Space");
    await statusIs(page, /empty workbook is ready/);
    expect(await callsOf(page)).toContainEqual([
      "startWorkbook",
      templates[0]!.id,
      templates[0]!.definition.sheets.length,
      // As it lies with the add-in: this person's settings change nothing of it.
      `${templates[0]!.id}.xlsx`,
    ]);
    await statusIs(page, /It is in a window of its own/);
  });

  open("Start: in this workbook, where that is ticked", {}, async (page) => {
    await page.getByLabel("As sheets of this workbook").check();
    await page.getByRole("button", { name: "Demonstration" }).click();
    await statusIs(page, /^The demonstration is ready\. Its job and its prices are invented\.$/);
    const calls = await callsOf(page);
    expect(calls).toContainEqual(["startHere", templates[0]!.id, templates[0]!.definition.sheets.length]);
    expect(calls.map(([call]) => call)).not.toContain("startWorkbook");
  });

  open("Settings: whether the pane opens with this workbook", {}, async (page) => {
    await openView(page, "Settings");
    await page.getByLabel(/Open this pane.*with this workbook/).check();
    await statusIs(page, /opens with this workbook from now on\. Save/);
    await page.getByLabel(/Open this pane.*with this workbook/).uncheck();
    await statusIs(page, /no longer opens with this workbook/);
    const kept = (await callsOf(page)).filter(([call]) => call === "openingOfPane");
    expect(kept).toEqual([
      ["openingOfPane", true],
      ["openingOfPane", false],
    ]);
  });

  open(
    "Settings: where the workbook keeps nothing, the box goes back and the reason is said",
    { refuse: { openingOfPane: "The workbook is read-only." } },
    async (page) => {
      await openView(page, "Settings");
      // It is ticked and unticked again, which Playwright's own check() would take for a failure.
      await page.getByLabel(/Open this pane.*with this workbook/).click();
      await statusIs(page, /^Not done\. The workbook is read-only/);
      expect(await page.getByLabel(/Open this pane.*with this workbook/).isChecked()).toBe(false);
    },
  );

  open(
    "Functions: an empty cell takes the example at once",
    { selection: { sheet: "Mine", at: "C4" } },
    async (page) => {
      await openView(page, "Functions");
      await page.keyboard.type("which way does the dish point");
      await page.locator("summary:visible").first().click();
      await page.getByRole("button", { name: "Put the example" }).click();
      await statusIs(page, /^The example is in Mine C4\.$/);
      expect((await callsOf(page)).at(-1)).toEqual(["enterFormula", "RIG.AZIMUTH(35,-100,-90)"]);
    },
  );

  open(
    "Functions: a filled cell is asked about, and kept when the person says so",
    { selection: calculated },
    async (page) => {
      await fill(page, "Functions");
      await page.getByRole("button", { name: "Keep the cell" }).click();
      await statusIs(page, /left as it is/);
      expect((await callsOf(page)).map(([call]) => call)).not.toContain("enterFormula");
      await page.getByRole("button", { name: "Put the example" }).click();
      await page.getByRole("button", { name: "Replace it" }).click();
      await statusIs(page, /^The example is in/);
      expect((await callsOf(page)).filter(([call]) => call === "enterFormula")).toHaveLength(1);
    },
  );

  open("Add rows: Enter is enough; a number that is none is refused", {}, async (page) => {
    await openView(page, "Add rows");
    for (const bad of ["", "0", "2.5", "10001", "-3"]) {
      await page.getByLabel("How many").fill(bad);
      await page.keyboard.press("Enter");
      await statusIs(page, /^Not done: give a whole number/);
    }
    expect((await callsOf(page)).map(([call]) => call)).not.toContain("addRows");
    await page.getByLabel("How many").fill("25");
    await page.keyboard.press("Enter");
    await statusIs(page, /^25 rows were added/);
    expect((await callsOf(page)).at(-1)).toEqual(["addRows", 25]);
  });

  open("Survey: looked at first, then added once, in the workbook's unit", {}, async (page) => {
    await fill(page, "Survey");
    await statusIs(page, /Nothing is written yet\.$/);
    const text = await page.locator(".pane-view:not([hidden])").innerText();
    for (const said of [
      /survey <b>\.csv, read as text, semicolons, UTF-8/,
      /Line 4 \(S-2\): run: “far” can't be read as a length\. Type it in ft, or with its unit/,
      /G-01: .*run: [\d.]+ → 9\.144/,
      // 45.5 ft at 0.3048 m.
      /S-1\s+receiver\s+H2\s+indoor drop\s+13\.8684/,
    ]) {
      expect(text).toMatch(said);
    }
    expect((await callsOf(page)).map(([call]) => call)).not.toContain("addOutlets");
    const takenFor = (head: string) => page.getByLabel(`“${head}” is taken for`).inputValue();
    expect([await takenFor("Length (ft)"), await takenFor("Price")]).toEqual(["run", ""]);
    expect(await page.getByLabel("Unit of “Length (ft)”").inputValue()).toBe("ft");
    await page.getByRole("button", { name: "Add 2 outlets, change 1 on Rooms" }).click();
    await statusIs(page, /^2 outlets added to Rooms/);
    const [[, rows, changes], ...more] = (await callsOf(page)).filter(([call]) => call === "addOutlets") as [
      [string, { outlet: string; run: number }[], { changed: { outlet: string }[]; cleared: unknown[] }],
    ];
    expect(more).toEqual([]);
    expect(rows.map(({ outlet, run }) => [outlet, run])).toEqual([
      ["S-1", 13.8684],
      ["S-3", 18.669],
    ]);
    expect([changes.changed.map(({ outlet }) => outlet), changes.cleared]).toEqual([["G-01"], []]);
    // What was added is no longer offered.
    expect(await page.getByRole("button", { name: /^Add 2/ }).count()).toBe(0);
  });

  open("Survey: a line put right, a column taken for another thing, and remembered", {}, async (page) => {
    await fill(page, "Survey");
    // In feet, as its column is: 50 ft at 0.3048 m.
    await page.getByLabel("Run of line 4").fill("50");
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: "Add 3 outlets, change 1 on Rooms" }).waitFor();
    await page.getByLabel("“Price” is taken for").selectOption("Note");
    await page.getByLabel("Unit of “Length (ft)”").selectOption("m");
    await page.locator("td", { hasText: /^45\.5$/ }).waitFor();
    await page.getByRole("button", { name: "Add 3 outlets, change 1 on Rooms" }).click();
    await statusIs(page, /^3 outlets added to Rooms/);
    const calls = await callsOf(page);
    const [, rows] = calls.find(([call]) => call === "addOutlets") as [string, Record<string, unknown>[]];
    expect(rows.map(({ outlet, run, note }) => [outlet, run, note])).toEqual([
      ["S-1", 45.5, "3"],
      ["S-2", 50, "3"],
      ["S-3", 61.25, "3"],
    ]);
    const [, kept] = calls.find(([call]) => call === "keepPreferences") as [string, { mappings: unknown[] }];
    expect(kept.mappings).toHaveLength(1);
  });

  open("Survey: a workbook without Rooms takes none", { book: layOut(singleDrop) }, async (page) => {
    await openView(page, "Survey");
    await page.getByLabel("File, .csv or .xlsx").setInputFiles(surveyFile);
    await statusIs(page, /^Not done\. This workbook has no Rooms sheet of ours/);
    expect((await callsOf(page)).map(([call]) => call)).not.toContain("readTables");
  });

  open(
    "Price list: what is asked comes first, then each line is taken or left",
    { book: recalculate(templateOf("standards")!.demonstration()) },
    async (page) => {
      await fill(page, "Price list");
      const take = page.getByRole("button", { name: /^Take/ });
      expect(await take.count()).toBe(0);
      await page.getByLabel("Currency of the list").fill("EUR");
      await page.keyboard.press("Tab");
      await page.getByText("1 line changed").waitFor();
      const text = await page.locator(".pane-view:not([hidden])").innerText();
      for (const said of [
        /0\.41 → 0\.36, −12\.2 %/,
        /13\.2 became 132, 10 times as much/,
        /A pack of 0 can't be/,
        /splitter <b>16-way<\/b>/,
      ])
        expect(text).toMatch(said);
      expect(await take.innerText()).toBe("Take 1 price");
      await page.getByLabel("Part of 5116", { exact: true }).selectOption("new");
      await page.getByLabel("Name of the new part of 5116").fill("16-way splitter");
      await page.keyboard.press("Tab");
      expect(await take.innerText()).toBe("Take 2 prices");
      await take.click();
      await statusIs(page, /^2 prices of second supplier \(demonstration\), 1 of them new; 1 new part/);
      const [, entries] = (await callsOf(page)).find(([call]) => call === "enterAll")!;
      const values = (entries as { name: string; value: unknown }[]).map(({ name, value }) => [name, value]);
      // The reel has 100 m, and the first supplier asks 38.
      expect(values).toEqual(
        expect.arrayContaining([
          ["cables_price", 36],
          ["passives_name", "16-way splitter"],
          ["passives_price", 41],
        ]),
      );
      expect(values.filter(([, value]) => value === 132)).toEqual([]);
    },
  );

  open("Check: a finding leads to what mends it, to where it is seen, and to each way", {}, async (page) => {
    await fill(page, "Findings");
    const finding = page.locator(".pane-findings li", { hasText: "Conductors that need attention" });
    const jumps = finding.locator(".pane-jump");
    const [mend, seen] = await jumps.allInnerTexts();
    const way = (await jumps.last().innerText()).trim();
    await finding.getByRole("button").first().click();
    await statusIs(page, /^Bonding .* is selected\.$/);
    await jumps.nth(1).click();
    await statusIs(page, /^Checks .* is selected\.$/);
    await jumps.last().click();
    await statusIs(page, /^Bonding .* is selected\.$/);
    const went = (await callsOf(page)).filter(([call]) => call === "goTo");
    expect(went.map(([, sheet, at]) => `${String(sheet)} ${String(at)}`)).toEqual([mend, seen, way]);
  });

  open(
    "Why?: what the cell is worked out from, and on from there by keyboard",
    { selection: calculated },
    async (page) => {
      await fill(page, "Why?");
      const head = (): Promise<string> => page.locator(".pane-view:not([hidden]) h2").first().innerText();
      expect(await head()).toContain(`(${calculated.sheet} ${calculated.at})`);
      const first = page.locator(".pane-list .pane-jump").first();
      const [, sheet, at] = /\((.+) ([A-Z]+\d+)\)$/.exec(await first.innerText())!;
      await first.focus();
      await page.keyboard.press("Enter");
      await page.locator("h2", { hasText: `(${sheet} ${at})` }).waitFor();
      expect((await callsOf(page)).filter(([call]) => call === "goTo")).toEqual([["goTo", sheet, at]]);
    },
  );

  open(
    "Show calculation: the working of the cell that is selected when it is asked for",
    { selection: calculated },
    async (page) => {
      await fill(page, "Show calculation");
      await page.locator(".pane-view:not([hidden])").getByText("LOOKANGLES").first().waitFor();
      expect(await page.locator(".pane-steps li").count()).toBeGreaterThan(5);
      await page.evaluate(() =>
        (globalThis as unknown as { panePage: { host: { select(one: object): void } } }).panePage.host.select(
          {
            sheet: "Site",
            at: "A1",
          },
        ),
      );
      await page.getByRole("button", { name: "Show the calculation of Site A1" }).click();
      await page.getByText("Site A1 holds no formula").waitFor();
      expect(await page.locator(".pane-selected").innerText()).toBe("Selected: Site A1");
    },
  );

  open("Repair formulas, copies and settings ask the host for it", {}, async (page) => {
    await openView(page, "Repair formulas");
    await page.getByRole("region").getByRole("button", { name: "Repair formulas" }).click();
    await statusIs(page, /^2 formulas were repaired/);
    await openView(page, "Copies");
    expect(await status(page)).toBe("");
    await page.getByRole("button", { name: "Make a copy without add-in" }).click();
    await statusIs(page, /^The copy without add-in is made/);
    await openView(page, "Settings");
    await page.getByLabel("feet").check();
    await page.getByLabel("Currency").fill(" NOK ");
    await page.getByRole("button", { name: "Keep" }).click();
    await statusIs(page, /^Kept\./);
    const calls = await callsOf(page);
    expect(calls).toContainEqual(["enterOursAgain"]);
    expect(calls).toContainEqual(["handOverCopy", "office"]);
    expect(calls).toContainEqual(["keepPreferences", { lengthUnit: "ft", currency: "NOK" }]);
  });
});

describe("upgrade", () => {
  const older: Book = {
    ...book,
    templateVersion: "2",
    sheets: [
      ...book.sheets,
      { ...book.sheets[0]!, name: "Mine <b>", cells: { A1: { value: "x" } }, results: {} },
    ],
  };
  open("an older workbook: what would come of it, then the new one", { book: older }, async (page) => {
    await openView(page, "Upgrade");
    await statusIs(page, /^This workbook is of version 2; today's is \d+\. Read what an upgrade does/);
    const view = page.locator("section:visible");
    expect(await view.innerText()).toMatch(/Before\s+Total: \d+/);
    expect(await view.innerText()).toMatch(/Mine <b>: 1 filled cell\. A sheet of your own\./);
    expect(await view.innerText()).toContain("worked out where the new workbook opens");
    await view.getByRole("button", { name: "Upgrade", exact: true }).click();
    await statusIs(page, /^It is upgraded\.$/);
    expect(await callsOf(page)).toContainEqual([
      "takeUpgrade",
      templates[0]!.definition.version,
      "2",
      templates[0]!.definition.version,
    ]);
  });

  open("one of today's version has nothing to upgrade", {}, async (page) => {
    await openView(page, "Upgrade");
    await statusIs(page, /already, which is today's\. There is nothing to upgrade\.$/);
    expect(
      await page.locator("section:visible").getByRole("button", { name: "Upgrade", exact: true }).count(),
    ).toBe(0);
  });
});

describe("training", () => {
  open("a workbook for each trainee and the key, by the seed", {}, async (page) => {
    await openView(page, "Training");
    await page.getByLabel("Set", { exact: true }).selectOption("supply");
    await page.getByLabel("Trainees", { exact: true }).fill("Anna Berg\n\n<b>Bo</b>");
    await page.getByLabel("Seed, a whole number").fill("2026");
    await page.getByRole("button", { name: "Draw" }).click();
    await statusIs(page, /^2 sheets and the key can be made\. Note the seed: 2026\.$/);
    await page.getByRole("button", { name: "2 <b>Bo</b>" }).click();
    await statusIs(page, /^The sheet of <b>Bo<\/b> is made\.$/);
    await page.getByRole("button", { name: "Trainer's key" }).click();
    await statusIs(page, /^The key is made\./);
    const calls = await callsOf(page);
    expect(calls).toContainEqual(["handOverBook", "training-sheet", "2-b-Bo-b.xlsx"]);
    expect(calls).toContainEqual(["handOverBook", "training-key", "trainer-key.xlsx"]);
  });

  open("what cannot be drawn is told", {}, async (page) => {
    await openView(page, "Training");
    await page.getByRole("button", { name: "Draw" }).click();
    await statusIs(page, /^Not done\. Name the trainees/);
    await page.getByLabel("Trainees", { exact: true }).fill("Anna");
    await page.getByLabel("Seed, a whole number").fill("1.5");
    await page.getByRole("button", { name: "Draw" }).click();
    await statusIs(page, /^Not done\. The seed must be a whole number/);
    await page.getByLabel("Seed, a whole number").fill("1");
    await page
      .getByLabel("Trainees", { exact: true })
      .fill(Array.from({ length: 41 }, (_, index) => `T${index}`).join("\n"));
    await page.getByRole("button", { name: "Draw" }).click();
    await statusIs(page, /^Not done\. There are 41 trainees; the pane makes sheets for 40/);
  });
});

describe("diagnosis", () => {
  open(
    "likely causes with evidence and next measurement, the outlets measured, the worst first",
    { book: measuredBook },
    async (page) => {
      await openView(page, "Diagnose");
      expect(await statusIs(page, /^4 of 24 outlets measured/)).toBe(
        "4 of 24 outlets measured. Likeliest: unrated splitter in the run, G-03.",
      );
      const first = page.locator(".pane-view:not([hidden]) .pane-findings").first().locator("li").first();
      expect(await first.innerText()).toMatch(
        /^unrated splitter in the run, G-03: .*%\s+.*−12\.0 dB at the highest frequency.*\s+Next: .*1000 MHz/s,
      );
      const outlets = page.locator(".pane-view:not([hidden]) .pane-findings").last().locator("li");
      expect(await outlets.count()).toBe(4);
      expect(await outlets.first().innerText()).toMatch(/G-03, lounge: look/);
      await outlets.first().getByRole("button").click();
      await statusIs(page, /^Rooms [A-Z]+\d+ is selected\.$/);
      await page.getByRole("button", { name: "Enter readings" }).click();
      await statusIs(page, /^Enter lowest frequency, highest frequency and volts from Rooms [A-Z]+\d+ on/);
      const built = measuredBook.names.find(({ name }) => name === "rooms_built_low")!;
      const firstCell = built.range.split(":")[0]!.replace(/\d+/, (row) => String(Number(row) + 1));
      expect(await callsOf(page)).toContainEqual(["goTo", "Rooms", firstCell]);
      expect(await barriers(page)).toEqual([]);
      expect(await overflow(page)).toEqual([]);
    },
  );

  open("nothing measured: says so, and what to measure", {}, async (page) => {
    await openView(page, "Diagnose");
    // Not the words of the work that is going on, “Reading what was measured…”.
    expect(await statusIs(page, /measured yet/)).toBe("Nothing is measured yet.");
    expect(await page.locator(".pane-view:not([hidden]) .pane-findings").innerText()).toMatch(
      /Measure every outlet/,
    );
  });

  open("cards for the crew are handed over by the host", {}, async (page) => {
    await openView(page, "Copies");
    await page.getByRole("button", { name: "Make the cards" }).click();
    await statusIs(page, /^The cards are made/);
    expect(await callsOf(page)).toContainEqual(["handOverCopy", "cards"]);
  });
});

describe("PDF", () => {
  open(
    "the proposal and the sheets are handed over by the host, which says how far it is",
    {},
    async (page) => {
      await openView(page, "Copies");
      await page.getByLabel("To be signed although checks fail").check();
      await page.getByRole("button", { name: "Proposal as PDF" }).click();
      await statusIs(page, /^job - proposal\.pdf is made: 2 pages\./);
      await page.getByLabel("What", { exact: true }).selectOption("All sheets");
      await page.getByRole("button", { name: "Print as PDF" }).click();
      await statusIs(page, /is made/);
      const calls = await callsOf(page);
      expect(calls).toContainEqual(["handOverPdf", { kind: "proposal", anyway: true }]);
      expect(calls).toContainEqual(["handOverPdf", { kind: "print", what: "all" }]);
    },
  );
});

describe("the groups of views", () => {
  const nav = (page: Page) => page.getByRole("navigation");
  const current = (page: Page): Promise<string[]> => nav(page).locator("[aria-current]").allInnerTexts();

  open("few buttons; each view in two presses, and the last one of a group again", {}, async (page) => {
    expect(await nav(page).getByRole("button").allInnerTexts()).toEqual([
      ...["Start", "Fill in", "Check", "Hand over", "Learn"],
      ...["New workbook", "Upgrade", "Settings"],
    ]);
    expect(await current(page)).toEqual(["Start", "New workbook"]);
    const all = await page.locator(".pane-tabs button").allInnerTexts();
    expect([...all].sort()).toEqual([...VIEWS, "Floors", "Standards"].sort());
    await nav(page).getByRole("button", { name: "Learn", exact: true }).click();
    expect(await current(page)).toEqual(["Learn", "Functions"]);
    await nav(page).getByRole("button", { name: "Training", exact: true }).click();
    await nav(page).getByRole("button", { name: "Start", exact: true }).click();
    await nav(page).getByRole("button", { name: "Learn", exact: true }).click();
    expect(await current(page)).toEqual(["Learn", "Training"]);
    await page.getByRole("heading", { name: "Exercises for trainees" }).waitFor();
  });

  open("arrow keys go along a row, Enter opens, and the focus stays where it is", {}, async (page) => {
    const focused = (): Promise<string> => page.evaluate(() => document.activeElement!.textContent);
    await nav(page).getByRole("button", { name: "Start", exact: true }).focus();
    const walked: string[] = [];
    for (const key of ["ArrowRight", "ArrowLeft", "ArrowLeft", "ArrowRight", "End", "Home"]) {
      await page.keyboard.press(key);
      walked.push(await focused());
    }
    expect(walked).toEqual(["Fill in", "Start", "Learn", "Start", "Learn", "Start"]);
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    expect([await focused(), await current(page)]).toEqual(["Fill in", ["Fill in", "Steps"]]);
  });

  for (const width of [320, 160])
    open(
      `${width} pixels wide: no name of a group or a view is cut`,
      {},
      async (page) => {
        for (const view of VIEWS) {
          await openView(page, view);
          const cut = await nav(page)
            .getByRole("button")
            .evaluateAll((buttons) =>
              buttons
                .filter((one) => {
                  const words = document.createRange();
                  words.selectNodeContents(one);
                  const [box, text] = [one.getBoundingClientRect(), words.getBoundingClientRect()];
                  const isOut = text.left < box.left || text.right > box.right || text.bottom > box.bottom;
                  return isOut || box.right > innerWidth || words.getClientRects().length > 1;
                })
                .map(({ textContent }) => textContent),
            );
          expect({ view, cut }).toEqual({ view, cut: [] });
          expect({ view, overflow: await overflow(page) }).toEqual({ view, overflow: [] });
        }
      },
      // As in a pane of 320 pixels at a zoom of 200 %.
      { width, height: 2 * width },
    );
});

describe("read as a table", () => {
  const rooms = { sheet: "Rooms", at: "H8" };
  const table = (page: Page) => page.locator(".pane-views table:visible");

  open(
    "heads, units, what is to be filled in, values as shown; a row leads to its cell",
    { selection: rooms },
    async (page) => {
      await openView(page, "Read as table");
      await statusIs(page, /^Outlets, on Rooms is shown as a table: 24 rows\.$/);
      expect(await table(page).locator("caption").innerText()).toBe("Outlets, on Rooms");
      const heads = await table(page).locator("thead th[scope=col]").allInnerTexts();
      expect(heads).toContain("Run (m or ft), to fill in");
      expect(heads).toContain("Margin above minimum (dB)");
      expect(
        await page.getByText(/^Rows 1 to 24 of 24\. \d+ rows more ready, nothing in them\.$/).count(),
      ).toBe(1);
      const row = table(page).getByRole("row", { name: /^G-03/ });
      // As the demonstration's Rooms sheet shows it.
      expect(
        await row
          .locator("td")
          .nth(heads.indexOf("Run (m or ft), to fill in") - 1)
          .innerText(),
      ).toBe("12.5");
      expect(await row.getByText("blank, to fill in").count()).toBeGreaterThan(0);
      await page.getByLabel("The buttons of the rows go to the column").selectOption("Fed from");
      await row.getByRole("button", { name: "G-03, go to row 8" }).click();
      await statusIs(page, /^Rooms F8 is selected\.$/);
      expect(await callsOf(page)).toContainEqual(["goTo", "Rooms", "F8"]);
    },
  );

  const many = 450;
  const long: Book = {
    ...book,
    template: "",
    names: [],
    sheets: [
      {
        ...book.sheets[0]!,
        name: "List",
        validations: [],
        results: {},
        cells: Object.fromEntries(
          Array.from({ length: many }, (_, row) => [
            [`A${row + 1}`, { value: row === 0 ? "Piece" : `piece ${row}` }],
            [`B${row + 1}`, { value: row === 0 ? "Length" : row }],
          ]).flat(),
        ),
      },
    ],
  };
  open(
    "a long table comes in parts, the selected row in the first; nothing around a cell is said",
    { book: long, selection: { sheet: "List", at: "B250" } },
    async (page) => {
      await openView(page, "Read as table");
      await page.getByText("Rows 201 to 400 of 449.").waitFor();
      expect(await table(page).locator("tbody tr").count()).toBe(200);
      await page.getByRole("button", { name: "The next rows" }).click();
      await page.getByText("Rows 401 to 449 of 449.").waitFor();
      await page.getByRole("button", { name: "The 200 rows before" }).click();
      await page.getByText("Rows 201 to 400 of 449.").waitFor();
      expect(await table(page).locator("thead").innerText()).toMatch(/Piece\s+Length/);
      await page.evaluate(() =>
        (globalThis as unknown as { panePage: { host: { select(one: object): void } } }).panePage.host.select(
          {
            sheet: "List",
            at: "B900",
          },
        ),
      );
      await page.getByRole("button", { name: "Read the rows around List B900" }).click();
      await statusIs(page, /^Nothing stands around List B900\./);
      expect(await table(page).count()).toBe(0);
    },
  );
});

describe("trouble", () => {
  const CALLS = [
    ["New workbook", "Demonstration", "startWorkbook"],
    ["Findings", "Check again", "readBook"],
    ["Read as table", "Read the rows", "readBook"],
    ["Why?", "Why this cell?", "readBook"],
    ["Show calculation", "Show the calculation", "selection"],
    ["Repair formulas", "Repair formulas", "enterOursAgain"],
    ["Copies", "Make a values-only copy", "handOverCopy"],
    ["Settings", "Keep", "keepPreferences"],
  ] as const;
  const AT_ONCE = new Set<string>(["Findings", "Read as table", "Why?", "Show calculation"]);
  for (const [view, button, call] of CALLS) {
    open(
      `${call} refused: the host's sentence is shown`,
      { refuse: { [call]: "The sheet is <b>protected</b>. Unprotect it." } },
      async (page) => {
        await openView(page, view);
        if (!AT_ONCE.has(view))
          await page.getByRole("region").getByRole("button", { name: button, exact: true }).click();
        expect(await statusIs(page, /^Not done\./)).toBe(
          "Not done. The sheet is <b>protected</b>. Unprotect it.",
        );
        expect(await page.locator(".pane").getAttribute("aria-busy")).toBeNull();
      },
    );
  }

  open("a failure that nobody foresaw has a way on", { broken: "enterOursAgain" }, async (page) => {
    await openView(page, "Repair formulas");
    await page.getByRole("region").getByRole("button", { name: "Repair formulas" }).click();
    await statusIs(
      page,
      /^Not done\. That did not work: x is undefined\. Try it once more; if it stays, save/,
    );
  });

  open("a second step is not begun before the first is over", {}, async (page) => {
    await openView(page, "Repair formulas");
    await page
      .getByRole("region")
      .getByRole("button", { name: "Repair formulas" })
      .evaluate((button: HTMLElement) => {
        button.click();
        button.click();
      });
    await statusIs(page, /^2 formulas/);
    expect((await callsOf(page)).filter(([call]) => call === "enterOursAgain")).toHaveLength(1);
  });

  open(
    "versions that differ are warned of on every view, side by side in Settings",
    { facts: { functionsVersion: "0.0.1" } },
    async (page) => {
      for (const view of VIEWS) {
        await openView(page, view);
        await page
          .getByText(`The functions are version 0.0.1, this pane is ${RIGSHEET_VERSION}.`)
          .first()
          .waitFor();
      }
      await openView(page, "Settings");
      expect(await page.locator("dl", { hasText: "Pane" }).last().locator("dd").allInnerTexts()).toEqual([
        RIGSHEET_VERSION,
        "0.0.1",
        "Excel",
      ]);
    },
  );

  open(
    "outside any host: a sentence, the way on, and what is of use without a workbook",
    "no host",
    async (page) => {
      await page.getByText("There is no workbook beside this page").click();
      await page.getByText(/In Excel, open it with the Rigsheet button.*npm start/).waitFor();
      expect(await page.getByRole("navigation").getByRole("button").allInnerTexts()).toEqual([
        "Functions",
        "Cautions",
      ]);
      await page.locator("summary", { hasText: "RIG.AZIMUTH" }).click();
      expect(await page.getByRole("button", { name: "Put the example" }).count()).toBe(0);
      expect(await barriers(page)).toEqual([]);
      expect(await walk(page)).toEqual([]);
    },
  );

  const HOSTILE = `<img src=x onerror="document.title='broken in'">`;
  open(
    "text of a workbook is shown as text",
    {
      book: {
        ...book,
        template: HOSTILE,
        sheets: [
          {
            ...book.sheets[0]!,
            name: HOSTILE,
            cells: { A1: { formula: `RIG.X("${HOSTILE}")` } },
            results: { A1: { error: "#N/A", message: HOSTILE } },
          },
        ],
      },
      selection: { sheet: HOSTILE, at: "A1", formula: HOSTILE, result: HOSTILE },
    },
    async (page) => {
      await openView(page, "Findings");
      await statusIs(page, /^Found:/);
      await openView(page, "Show calculation");
      await statusIs(page, /no calculation/);
      expect(await page.locator("img").count()).toBe(0);
      expect(await page.title()).toBe("Pane");
      await page.getByText(HOSTILE).first().waitFor({ state: "attached" });
      expect(await overflow(page)).toEqual([]);
    },
  );
});
