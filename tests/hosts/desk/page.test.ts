/** The desk's page in a real browser. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type Axe from "axe-core";
import type { Locator } from "playwright-core";
import { address, parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { placeOfName } from "../../../src/workbooks/named";
import { templates } from "../../../src/workbooks/templates";
import {
  bookOnPage,
  button,
  cellOf,
  choose,
  crash,
  desk,
  folder,
  forget,
  line,
  load,
  notice,
  openPage,
  page,
  saved,
  textIs,
  textIsNot,
  total,
  type,
  withPage,
} from "./onDesk";
import { until } from "../../support/until";
import { held } from "./ownDesk";

const AXE = path.join(path.dirname(require.resolve("axe-core/package.json")), "axe.min.js");

/** In the demonstration's Rooms sheet: the cable and the run of the first outlet, and its calculated verdict. */
const RUN = "H6";
const VERDICT = "K6";

/** The grid waits before it shows what a cell has to say. */
const HOVER_MS = 800;

withPage("opens on the demonstration with its total and verdict, within the window", async () => {
  expect(await page.getByRole("heading", { level: 1 }).innerText()).toBe(
    "D-24, revision 1, Guest house, 24 outlets (demonstration)",
  );
  expect(await total().innerText()).toMatch(/^Total [\d,]+\.\d\d$/);
  const size = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    document.documentElement.scrollHeight,
  ]);
  expect(size).toEqual([1366, 768]);
});

withPage("an edit changes the total at once; undo brings it back, redo does it again", async () => {
  const before = await total().innerText();
  await choose("Rooms", RUN);
  await type("200");
  const after = await textIsNot(total(), before);
  await button("Undo").click();
  await textIs(total(), before);
  await button("Redo").click();
  await textIs(total(), after);
  await page.keyboard.press("Control+z");
  await textIs(total(), before);
});

// As Excel's automatic percent entry from 1 on (from memory of its documentation). A bare 0.2 is refused: it could be
// a fifth or two thousandths, and each is one key away.
withPage("a share is typed as a percentage or a bare number from 1 on", async () => {
  const margin = placeOfName(await bookOnPage(), "site_margin")!.at;
  for (const [typed, share] of [
    ["25%", 0.25],
    ["30", 0.3],
    ["0.5 %", 0.005],
    ["12.5", 0.125],
    ["12.25%", 0.1225],
  ] as const) {
    await choose("Site", margin);
    await type(typed);
    await saved();
    expect(cellOf(await bookOnPage(), "Site", margin)?.value).toBeCloseTo(share, 12);
  }
});

withPage("a column typed faster than it is drawn arrives whole", async () => {
  const first = parseRange(RUN)!;
  const runs = Array.from({ length: 15 }, (_, index) => 100 + index);
  await choose("Rooms", RUN);
  for (const run of runs) await type(String(run));
  await saved();
  const book = await bookOnPage();
  const typed = runs.map((_, index) => cellOf(book, "Rooms", address(first.top + index, first.left))?.value);
  expect(typed).toEqual(runs);
});

async function arrived(id: string, content: string): Promise<void> {
  const end = Date.now() + 8000;
  while (!JSON.stringify((await held(desk.address, id)).changes).includes(`"content":"${content}"`)) {
    if (Date.now() > end) throw new Error(`${content} never reached the server`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

withPage("a tab closed right after an edit, and a server killed after it, lose nothing", async () => {
  const before = await total().innerText();
  await choose("Rooms", RUN);
  await type("200");
  const after = await textIsNot(total(), before);
  const id = new URL(page.url()).hash.slice(1);
  await page.close();
  // The browser sends on after its tab is gone; once the server has it, it has it for good.
  await arrived(id, "200");
  const restart = await crash();
  await restart();
  await openPage();
  expect(await total().innerText()).toBe(after);
});

withPage("with the server gone the page says so, and goes on by itself when it is back", async () => {
  const before = await total().innerText();
  const restart = await crash();
  await choose("Rooms", RUN);
  await type("200");
  const after = await textIsNot(total(), before);
  await page.getByText(/^not saved: the local server does not answer\. Start it again/).waitFor();
  // The browser itself notes the requests that failed meanwhile.
  await restart();
  await saved();
  forget("ERR_CONNECTION_REFUSED");
  await load();
  expect(await total().innerText()).toBe(after);
});

withPage("a formula that is typed is helped: proposals, then its arguments", async () => {
  await choose("Rooms", VERDICT);
  await page.keyboard.type("=RIG.CAB");
  await page.getByText("RIG.CABLELOSS").first().waitFor();
  await page.keyboard.type("LELOSS(");
  await page.locator(".o-formula-assistant", { hasText: /cable.*length.*frequency/s }).waitFor();
  await page.keyboard.press("Escape");
});

withPage("an error's sentence is under the bar when its cell is chosen, and beside it on hover", async () => {
  await choose("Site", "B98");
  await page.keyboard.press("Delete");
  await choose("Price", "B31");
  const wrong = "Margin (Site B98) is missing. Enter a number.";
  await textIs(line(), wrong);
  await textIs(total(), "Total not known yet");
  const sentence = page.locator(".o-popover", { hasText: wrong });
  await until(
    async () => {
      // The corner by which the chosen cell is dragged tells where on the canvas the cell is, once it has been drawn.
      const corner = (await page.locator(".o-autofill").boundingBox())!;
      await page.mouse.move(corner.x - 14, corner.y - 8);
      await page.mouse.move(corner.x - 12, corner.y - 6);
      await page.waitForTimeout(HOVER_MS);
      return sentence.isVisible();
    },
    (isSeen) => isSeen,
  );
});

withPage("an input says what it wants, and a refused value is refused in the workbook's words", async () => {
  await choose("Rooms", RUN);
  await until(
    () => line().innerText(),
    (text) => /Unit: m or ft\. A number from 0\.1 to 2000\./.test(text),
  );
  await type("abc");
  await until(
    () => line().innerText(),
    (text) => /“abc” can.t be read as a length\. Type it in m, or with its unit/.test(text),
  );
  await page.keyboard.press("Escape");
});

withPage(
  "a notice lies on no cell, on a wide page and on a narrow one, and hides none that was chosen",
  async () => {
    const before = page.viewportSize()!;
    try {
      for (const [width, height] of [
        [1366, 768],
        [390, 844],
      ] as const) {
        await page.setViewportSize({ width, height });
        // The lowest row that is whole in sight: the notice takes its room from just there.
        await choose("Rooms", VERDICT);
        for (let step = 0; step < 14; step++) await page.keyboard.press("ArrowDown");
        await page.keyboard.press("Delete");
        await until(
          () => notice().innerText(),
          (text) => text.startsWith("This cell is calculated"),
        );
        const boxOf = async (of: Locator) => (await of.boundingBox())!;
        const gridBox = await boxOf(page.locator("#grid"));
        const noticeBox = await boxOf(page.locator(".desk-notice"));
        expect(noticeBox.y).toBeGreaterThanOrEqual(gridBox.y + gridBox.height - 1);
        expect(noticeBox.y + noticeBox.height).toBeLessThanOrEqual(height);
        await until(
          async () => (await boxOf(page.locator(".o-autofill"))).y,
          (y) => y < noticeBox.y,
        );
        if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/notice-${width}.png` });
        await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
      }
    } finally {
      await page.setViewportSize(before);
    }
  },
);

withPage("calculated cells and labels stay when typed over, deleted or pasted over", async () => {
  const before = await bookOnPage();
  await choose("Rooms", VERDICT);
  await type("5");
  await until(
    () => notice().innerText(),
    (text) => text.startsWith("This cell is calculated, so it was left as it is."),
  );
  await choose("Rooms", "G3");
  await type("mine");
  await until(
    () => notice().innerText(),
    (text) => text.startsWith("This cell is one of the workbook's own labels"),
  );
  // Row 6 onto row 7, calculated cells and all: the inputs are taken.
  await choose("Rooms", "A6:S6");
  await page.keyboard.press("Control+c");
  await choose("Rooms", "A7");
  await page.keyboard.press("Control+v");
  await until(
    () => notice().innerText(),
    (text) => /^\d+ of these cells are calculated/.test(text),
  );
  const price = await total().innerText();
  await choose("Rooms", "H8:L9");
  await page.keyboard.press("Delete");
  await textIsNot(total(), price);

  const after = await bookOnPage();
  expect(cellOf(after, "Rooms", "A7")).toEqual(cellOf(before, "Rooms", "A6"));
  expect(cellOf(after, "Rooms", "H8")?.value).toBeUndefined();
  expect(cellOf(before, "Rooms", "H8")?.value).toBeDefined();
  expect(cellOf(after, "Rooms", "G3")).toEqual(cellOf(before, "Rooms", "G3"));
  const formulas = (book: Book) =>
    book.sheets.flatMap(({ cells }) => Object.values(cells).flatMap(({ formula }) => formula ?? []));
  expect(formulas(after)).toEqual(formulas(before));
  expect(formulas(before).length).toBeGreaterThan(50);
});

withPage("an unlocked sheet lets a calculated cell be changed, until it is locked again", async () => {
  const before = await total().innerText();
  await choose("Rooms", VERDICT);
  await button("Unlock sheet").click();
  await button("Lock sheet").waitFor();
  await type("5");
  await saved();
  expect((await bookOnPage()).sheets.find(({ name }) => name === "Rooms")!.cells[VERDICT]?.value).toBe(5);
  await page.keyboard.press("Control+z");
  await textIs(total(), before);
  await button("Lock sheet").click();
  await choose("Rooms", VERDICT);
  await type("5");
  await until(
    () => notice().innerText(),
    (text) => text.startsWith("This cell is calculated"),
  );
});

withPage("the row that carries a block's formulas can't be removed", async () => {
  await choose("Rooms", "A5");
  await page
    .locator(".o-grid-overlay")
    .focus()
    .catch(() => undefined);
  await page.getByText("Edit", { exact: true }).click();
  await page.getByText("Delete", { exact: true }).hover();
  await page.getByText(/^(Delete )?row 5$/i).click();
  await until(
    () => notice().innerText(),
    (text) => text.startsWith("This row holds the formulas of a whole block"),
  );
});

withPage(
  "Add rows stretches the block, its names and its rules, in one step that undo takes back",
  async () => {
    const rowsOf = (book: Book, name: string): number => {
      const found = book.names.find((one) => one.name === name)!;
      const zone = parseRange(found.range)!;
      return zone.bottom - zone.top + 1;
    };
    const rules = (book: Book) =>
      book.sheets
        .find(({ name }) => name === "Rooms")!
        .validations.map(({ range }) => parseRange(range)!)
        .map(({ top, bottom }) => bottom - top + 1);
    const before = await bookOnPage();
    const price = await total().innerText();

    await choose("Rooms", RUN);
    await button("Add rows").click();
    await page.getByLabel("How many rows").fill("7");
    await page.keyboard.press("Enter");
    const after = await until(
      bookOnPage,
      (book) => rowsOf(book, "rooms_run") !== rowsOf(before, "rooms_run"),
    );
    expect(rowsOf(after, "rooms_run")).toBe(rowsOf(before, "rooms_run") + 7);
    expect(rules(after)).toEqual(rules(before).map((rows) => rows + 7));
    expect(await total().innerText()).toBe(price);
    // The last data row, blank before and after, looks the same: the new rows took its look.
    const lastLook = (book: Book) => {
      const { bottom } = parseRange(book.names.find(({ name }) => name === "rooms_run")!.range)!;
      return book.looks[cellOf(book, "Rooms", address(bottom - 1, 7))!.look!];
    };
    expect(lastLook(after)).toEqual(lastLook(before));
    const firstNew = parseRange(before.names.find(({ name }) => name === "rooms_run")!.range)!.bottom - 1;
    expect(after.looks[cellOf(after, "Rooms", address(firstNew, 7))!.look!]).toEqual(lastLook(before));

    await page.keyboard.press("Control+z");
    await saved();
    expect(rowsOf(await bookOnPage(), "rooms_run")).toBe(rowsOf(before, "rooms_run"));
  },
);

withPage("Add rows grows a block that mirrors another together with it", async () => {
  const [mirror] = templates[0]!.definition.sheets
    .flatMap(({ name, parts }) => parts.map((part) => ({ sheet: name, part })))
    .flatMap(({ sheet, part }) => (part.kind === "block" && part.mirrors ? [{ sheet, block: part }] : []));
  const names = [mirror!.block.mirrors!, mirror!.block.name];
  const heights = (book: Book) =>
    names.map((block) => {
      const { range } = book.names.find(({ name }) => name.startsWith(`${block}_`))!;
      const { top, bottom } = parseRange(range)!;
      return bottom - top + 1;
    });
  const before = await bookOnPage();
  const own = before.names.find(({ name }) => name.startsWith(`${mirror!.block.name}_`))!;
  await choose(own.sheet, address(parseRange(own.range)!.top + 1, 0));
  await button("Add rows").click();
  await page.getByLabel("How many rows").fill("3");
  await page.keyboard.press("Enter");
  const after = await until(bookOnPage, (book) => heights(book)[0] !== heights(before)[0]);
  expect(heights(after)).toEqual(heights(before).map((rows) => rows + 3));
});

withPage("New keeps the job that was open; Open brings a saved workbook back with its figures", async () => {
  const price = await total().innerText();
  await choose("Rooms", RUN);
  await type("200");
  const edited = await textIsNot(total(), price);
  const [download] = await Promise.all([page.waitForEvent("download"), button("Save .xlsx").click()]);
  const file = await download.path();

  const kept = () => readdirSync(folder).filter((name) => /^job-.*\.log$/.test(name));
  const earlier = new Set(kept());
  await button("New").click();
  await page.getByRole("button", { name: "Demonstration" }).click();
  await textIs(total(), price);
  await until(
    () => notice().innerText(),
    (text) => text.endsWith("is kept, under Jobs."),
  );
  expect(kept().filter((name) => !earlier.has(name)).length).toBeGreaterThan(0);

  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button("Open .xlsx…").click()]);
  await chooser.setFiles({ name: "job.xlsx", mimeType: "", buffer: readFileSync(file) });
  await textIs(total(), edited);

  const [again] = await Promise.all([page.waitForEvent("filechooser"), button("Open .xlsx…").click()]);
  await again.setFiles({ name: "broken.xlsx", mimeType: "", buffer: Buffer.from("no workbook") });
  await until(
    () => notice().innerText(),
    (text) => /^broken\.xlsx is not opened\. The file is .*not an Excel workbook/.test(text),
  );
  await textIs(total(), edited);
  forget("422 (Unprocessable Entity)");
});

withPage(
  "the bar is reached by the keyboard with a focus that shows, and has no barrier axe can find",
  async () => {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await button("New").focus();
    await page.keyboard.press("Tab");
    const focused = page.locator(":focus");
    expect(await focused.innerText()).toBe("Open .xlsx…");
    expect(await focused.evaluate((element) => getComputedStyle(element).outlineStyle)).toBe("solid");

    await choose("Rooms", VERDICT);
    await type("5");
    await notice().waitFor();
    await button("Help").click();
    await page.getByLabel("Find a function").fill("bearing compass");
    await page.getByText(/^1 of \d+ functions$|^\d of \d+ functions$/).waitFor();
    await page.evaluate(readFileSync(AXE, "utf8"));
    const violations = await page.evaluate(async () => {
      const { axe } = globalThis as unknown as { axe: typeof Axe };
      const result = await axe.run({ include: [["#bar"], ["#line"], ["dialog"]] });
      return result.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
    });
    expect(violations).toEqual([]);
    await page.keyboard.press("Escape");
    await page.locator("dialog").waitFor({ state: "detached" });
  },
);

withPage("a survey is shown as it was understood, added on a yes, and taken back in one step", async () => {
  const price = await total().innerText();
  const file = path.join(folder, "survey.csv");
  const importing = async (lines: readonly string[]): Promise<Locator> => {
    writeFileSync(file, lines.join("\r\n"));
    const chosen = page.waitForEvent("filechooser");
    await button("Import survey…").click();
    await (await chosen).setFiles(file);
    const dialog = page.getByRole("dialog", { name: "Import survey" });
    await dialog.waitFor();
    return dialog;
  };
  const head = "Outlet;Receiver;Fed from;Cable;Length (ft);Wall plate;Price";
  const line = (outlet: string, run: string) => `${outlet};receiver;H2;indoor drop;${run};single outlet;3`;
  const lines = [head, line("S-1", "45,5"), line("G-01", "30"), line("S-2", "far"), line("S-3", "61,25")];

  const dialog = await importing(lines);
  const text = await dialog.innerText();
  for (const said of [
    /read as text, semicolons, UTF-8/,
    /decimal commas of "run"/,
    /G-01: .*run: [\d.]+ → 9\.144/,
    /Line 4 \(S-2\): run: “far” can't be read as a length\. Type it in ft, or with its unit/,
    /S-1\s+receiver\s+H2\s+indoor drop\s+13\.8684/,
  ]) {
    expect(text).toMatch(said);
  }
  await page.evaluate(readFileSync(AXE, "utf8"));
  const violations = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: typeof Axe };
    return (await axe.run({ include: [["dialog"]] })).violations.map(({ id }) => id);
  });
  expect(violations).toEqual([]);
  // The answer is in view, whatever the survey's length.
  await dialog.getByRole("button", { name: "Cancel" }).click({ trial: true });
  await dialog.getByRole("button", { name: "Cancel" }).click();
  await textIs(total(), price);

  const again = await importing(lines);
  await again.getByRole("button", { name: "Add 2 outlets, change 1 on Rooms" }).click();
  await textIsNot(total(), price);
  await textIs(
    notice(),
    "2 outlets added to Rooms, 1 outlet changed. Undo takes all of it back in one step.",
  );
  const { names } = templates[0]!.demonstration();
  const first = parseRange(names.find(({ name }) => name === "rooms_outlet")!.range)!.top + 1;
  const book = await bookOnPage();
  expect([24, 25, 26].map((row) => cellOf(book, "Rooms", address(first + row, 2))?.value)).toEqual([
    "S-1",
    "S-3",
    undefined,
  ]);
  expect(cellOf(book, "Rooms", address(first + 24, 7))?.value).toBeCloseTo(45.5 * 0.3048, 6);
  await button("Undo").click();
  await textIs(total(), price);

  const wrong = await importing(["a;b", "1;2"]);
  expect(await wrong.innerText()).toMatch(/lacks "outlet", "run"\. It has "a", "b"/);
  await wrong.getByRole("button", { name: "Cancel" }).click();
});
