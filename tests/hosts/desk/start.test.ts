/** The page that the desk opens on, the hints, and the sheets in groups, as somebody meets them in a browser. */
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import type { Book } from "../../../src/workbooks/book";
import { templateOf } from "../../../src/workbooks/templates";
import { barriers } from "../../pane/inChromium";
import { bookOf, emptySheet } from "../../support/books";
import {
  bookOnPage,
  button,
  choose,
  desk,
  forget,
  grid,
  notice,
  page,
  saved,
  total,
  type,
  withPage,
  withPageAndPdf,
} from "./onDesk";
import { until } from "../../support/until";
import { linesOf, previewed, savedPdf } from "./printedPages";

const start = () => page.locator("#start");
const hint = () => page.locator(".start-hint");
const selected = () => page.locator(".o-named-range-selector input").inputValue();
const inStart = (name: string | RegExp) => start().getByRole("button", { name });

/** As a person opens it who has never been here: nothing of the browser's storage is known. */
async function asNew(): Promise<void> {
  await page.evaluate(() => localStorage.removeItem("rigsheet.start"));
  await page.goto("about:blank");
  await page.goto(desk.address);
  await start().locator(".steps-list").waitFor();
}

withPage(
  "it opens on the start page, and one press leads on with the job, by mouse and by keyboard",
  async () => {
    await asNew();
    expect(await start().locator(".start-title").innerText()).toMatch(/^D-24, revision 1, Guest house/);
    // By the definition of the demonstration: all is filled, and two things are wrong on purpose.
    expect(await start().locator(".start-steps").innerText()).toMatch(/^10 of 10 sheets have all/);
    expect(await start().locator(".start-steps").innerText()).toMatch(/Rooms done, 1 to look at/);
    expect(await barriers(page, "#start")).toEqual([]);
    // The first key counts.
    await page.keyboard.press("Enter");
    await start().waitFor({ state: "hidden" });
    await choose("Site", "B6");
    await button("Start").click();
    await start().waitFor();
    await page.keyboard.press("Escape");
    await start().waitFor({ state: "hidden" });
    await type("typed after it");
    await saved();
    await page.reload();
    await grid().waitFor();
    await page.locator('body[aria-busy="false"]').waitFor({ state: "attached" });
    // A reload stays where it was.
    expect(await start().isVisible()).toBe(false);
  },
);

withPage("the hints: five, back and forth; not now, and never again, and called again", async () => {
  await asNew();
  expect(await hint().innerText()).toContain("Hint 1 of 5");
  expect(await inStart("Back").isDisabled()).toBe(true);
  for (let at = 2; at <= 5; at++) {
    await inStart("Next").click();
    expect(await hint().innerText()).toContain(`Hint ${at} of 5`);
    // What is meant is pointed at.
    expect(await page.locator(".desk-pointed").count()).toBe(1);
  }
  await inStart("Back").click();
  expect(await hint().innerText()).toContain("Hint 4 of 5");
  // Escape is for the hints first, and the page behind them stays.
  await page.keyboard.press("Escape");
  await hint().waitFor({ state: "hidden" });
  expect(await start().isVisible()).toBe(true);
  await inStart("Show the hints").click();
  for (let at = 1; at <= 3; at++) await inStart("Next").click();
  await inStart("Not now").click();
  await hint().waitFor({ state: "hidden" });
  expect(await page.locator(".desk-pointed").count()).toBe(0);

  const again = async (): Promise<void> => {
    await page.goto("about:blank");
    await page.goto(desk.address);
    await start().locator(".steps-list").waitFor();
  };
  await again();
  expect(await hint().innerText()).toContain("Hint 4 of 5");
  await inStart("Don't show hints again").click();
  await again();
  expect(await hint().isVisible()).toBe(false);
  await inStart("Show the hints").click();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Next");
  expect(await hint().innerText()).toContain("Hint 1 of 5");
  for (let at = 1; at <= 4; at++) await inStart("Next").click();
  await inStart("Done").click();
  await again();
  expect(await hint().isVisible()).toBe(false);
});

withPage("who does not want the start page is not asked again", async () => {
  await asNew();
  await start().getByLabel("Open on this page").uncheck();
  await page.goto("about:blank");
  await page.goto(desk.address);
  await page.locator('body[aria-busy="false"]').waitFor({ state: "attached" });
  expect(await start().isVisible()).toBe(false);
  await button("Start").click();
  await start().getByLabel("Open on this page").check();
});

withPage("what is missing in an empty job leads to its cell, and goes once it is filled", async () => {
  await button("New").click();
  await page.getByRole("button", { name: "Empty", exact: true }).click();
  await notice().filter({ hasText: "is kept, under Jobs" }).waitFor();
  // What is to be filled first is selected at once.
  await until(selected, (name) => name === "B5" || name === "site_job");
  await choose("Rooms", "A9");
  await button("Start").click();
  await inStart("Go on with Site").click();
  await until(selected, (name) => name === "B5" || name === "site_job");
  await button("Start").click();
  const site = start().locator(".steps-list > li").first();
  await site.getByText("Customer is blank.").waitFor();
  expect(await site.locator("summary").innerText()).toMatch(/^Site not begun: \d+ missing/);
  await site.locator("li", { hasText: "Customer is blank." }).getByRole("button").click();
  await start().waitFor({ state: "hidden" });
  await until(selected, (name) => name === "B6" || name === "site_customer");
  await type("Invented customer");
  await saved();
  await button("Start").click();
  await site.getByText("Job is blank.").waitFor();
  expect(await site.innerText()).not.toContain("Customer is blank.");
  expect(await site.locator("summary").innerText()).toMatch(/^Site begun: /);
  await page.keyboard.press("Escape");
});

withPage("a survey from the start page makes a job of its own; thought better of, all stays", async () => {
  const before = await total().innerText();
  await button("Start").click();
  const choosing = page.waitForEvent("filechooser");
  await inStart("From a survey…").click();
  await (await choosing).setFiles(`${__dirname}/../../../templates/guest-house-survey.csv`);
  const dialog = page.locator("dialog");
  await dialog.waitFor();
  await dialog.getByRole("button", { name: "Cancel" }).click();
  await notice().filter({ hasText: "Nothing of the survey was taken" }).waitFor();
  expect(await total().innerText()).not.toBe(before);
  await button("Start").click();
  // The one before is the newest of the others, once the list is read anew.
  const other = start().locator(".start-job").first();
  await until(
    () => other.innerText(),
    (text) => text.includes("Guest house"),
  );
  await other.click();
  await start().waitFor({ state: "hidden" });
  await until(
    () => total().innerText(),
    (now) => now === before,
  );
});

/** By the start page, as a person chooses a file. */
async function openFile(name: string, bytes: Uint8Array): Promise<void> {
  if (!(await start().isVisible())) await button("Start").click();
  const choosing = page.waitForEvent("filechooser");
  await inStart("Open a workbook…").click();
  await (await choosing).setFiles({ name, mimeType: "", buffer: Buffer.from(bytes) });
}

// The files of an outsider's case, fm-29: each gets one sentence with its name, and the start page stays.
withPage("a file that is no workbook is named, and the start page stays", async () => {
  await button("Start").click();
  await start().locator(".start-job").first().waitFor();
  const jobs = (): Promise<number> => start().locator(".start-job").count();
  const before = await jobs();
  const whole = await writeXlsx(templateOf("multi-room")!.empty());
  for (const [name, bytes] of [
    ["roof.jpg", Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16, 74, 70, 73, 70)],
    ["empty.xlsx", new Uint8Array()],
    ["cut.xlsx", whole.slice(0, whole.length / 2)],
  ] as const) {
    await openFile(name, bytes);
    await notice().filter({ hasText: name }).waitFor();
    expect(await notice().innerText()).toMatch(new RegExp(`^${name} is not opened\\. .+\\.$`));
    expect(await start().isVisible()).toBe(true);
  }
  await page.keyboard.press("Escape");
  await button("Start").click();
  await start().locator(".start-job").first().waitFor();
  expect(await jobs()).toBe(before);
  // The server's answers, as the browser writes them.
  forget("Failed to load resource");
  await page.keyboard.press("Escape");
});

withPage(
  "a workbook of somebody else, an older and a newer one are told; the newer is read only",
  async () => {
    const plain = bookOf({ ...emptySheet("Plain"), cells: { A1: { value: "nothing of ours" } } });
    await openFile("plain.xlsx", await writeXlsx(plain));
    await notice().filter({ hasText: "was not made from one of Rigsheet's templates" }).waitFor();
    await start().waitFor({ state: "hidden" });

    const made = recalculate(templateOf("multi-room")!.demonstration());
    await openFile("older.xlsx", await writeXlsx({ ...made, templateVersion: "1" }));
    await notice()
      .filter({ hasText: /^This job is of version 1 of .* is kept, under Jobs\.$/ })
      .waitFor();

    await openFile("newer.xlsx", await writeXlsx({ ...made, templateVersion: "999" }));
    await notice()
      .filter({ hasText: /^This job is of version 999 .*read only/ })
      .waitFor();
    const before = await total().innerText();
    await page.locator(".o-sheet", { hasText: "Site" }).first().click();
    await page.mouse.click(500, 400);
    await page.keyboard.type("typed over");
    await page.keyboard.press("Enter");
    await button("Undo").click();
    await notice().filter({ hasText: "A newer Rigsheet made this job" }).waitFor();
    const siteOf = ({ sheets }: Book) => {
      const { cells } = sheets.find(({ name }) => name === "Site")!;
      return Object.fromEntries(
        Object.entries(cells).flatMap(([at, { value }]) => (value === undefined ? [] : [[at, value]])),
      );
    };
    expect(siteOf(await bookOnPage())).toEqual(siteOf(made));
    expect(await total().innerText()).toBe(before);
  },
);

withPage("the sheets stand in groups; a list says what is filled, and leads there by keyboard", async () => {
  const groups = page.locator("#sheets");
  expect(await groups.getByRole("button").allInnerTexts()).toEqual([
    "Fill",
    "Results",
    "Hand over",
    "On site",
    "About",
  ]);
  await groups.getByRole("button", { name: "Fill", exact: true }).focus();
  await page.keyboard.press("Enter");
  const list = page.locator(".sheets-list");
  await list.waitFor();
  expect((await list.getByRole("button").allInnerTexts()).map((text) => text.split("\n")[0])).toEqual([
    ..."Site,Parts,Room types,Dishes,Head units,Distribution,Rooms,Bonding,Crew,Terms".split(","),
  ]);
  expect(await list.innerText()).toContain("may stay empty");
  expect(await barriers(page, "#sheets")).toEqual([]);
  for (let at = 0; at < 6; at++) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await list.waitFor({ state: "detached" });
  await page.locator(".o-sheet.active", { hasText: "Rooms" }).waitFor();
  // The keys are the grid's again.
  await until(
    () => page.evaluate(() => document.activeElement?.closest(".o-grid") !== null),
    (inGrid) => inGrid,
  );
  // The start page makes way for a sheet that is chosen over it.
  await button("Start").click();
  await start().waitFor();
  await groups.getByRole("button", { name: "Hand over" }).click();
  await list.getByRole("button", { name: "Quote" }).click();
  await start().waitFor({ state: "hidden" });
  await page.locator(".o-sheet.active", { hasText: "Quote" }).waitFor();
  await groups.getByRole("button", { name: "On site" }).click();
  await page.keyboard.press("Escape");
  await list.waitFor({ state: "detached" });
});

// An outsider's cases rd-22 and pr-07: 1280 by 800 at 200 %, and the menu of the browser.
withPage(
  "much enlarged the page scrolls to a grid with rows; the browser's own print is told the way",
  async () => {
    const before = page.viewportSize()!;
    await page.setViewportSize({ width: 640, height: 400 });
    await page.locator(".o-sheet", { hasText: "Rooms" }).first().click();
    await page.mouse.move(300, 40);
    await page.mouse.wheel(0, 1000);
    const top = () => page.evaluate(() => document.querySelector("#grid")!.getBoundingClientRect().top);
    await until(top, (at) => at < 1);
    const below = await page.evaluate(() => {
      const grid = document.querySelector(".o-grid")!.getBoundingClientRect();
      return Math.min(grid.bottom, innerHeight) - Math.max(grid.top, 0);
    });
    // Heads of 157 pixels, and five rows of 23 at least.
    expect(below).toBeGreaterThan(157 + 5 * 23);
    await page.setViewportSize(before);

    await page.emulateMedia({ media: "print" });
    expect(await grid().isVisible()).toBe(false);
    const said = await page.evaluate(
      () => getComputedStyle(document.querySelector("#grid")!, "::before").content,
    );
    expect(said).toContain("Press Ctrl+P on the page");
    await page.emulateMedia({ media: null });
    await until(
      () => grid().isVisible(),
      (is) => is,
    );
  },
);

withPage("a second tab opens on the start page too, and only watches the job of the first", async () => {
  const second = await page.context().newPage();
  await second.goto(desk.address);
  await second.locator("#start .steps-list").waitFor();
  expect(await second.locator("#start .start-title").innerText()).toMatch(/Guest house/);
  await second.keyboard.press("Escape");
  await second.locator("#strip", { hasText: "Another window has this job open" }).waitFor();
  await second.close();
});

/** The whole way of one job, as an office goes it. */
withPageAndPdf("the hostel, from the start page to a proposal that is sent", async () => {
  await button("Start").click();
  await inStart("Hostel, 40 outlets of four room types").click();
  await notice().filter({ hasText: "is kept, under Jobs" }).waitFor();
  await saved();
  await button("Start").click();
  // Nothing is wrong in it: all is filled, and a proposal may be signed.
  await start().getByText("10 of 10 sheets have all that they need.").waitFor();
  expect(await start().locator(".start-steps").innerText()).not.toContain("to look at");
  await page.keyboard.press("Escape");
  const sum = (await total().innerText()).replace("Total ", "");

  await button("Print…").click();
  const dialog = page.getByRole("dialog", { name: "Print" });
  await dialog.getByLabel("Proposal for the customer").check();
  await previewed(/^Page 1 of [3-9]$/);
  const { name, pages } = await savedPdf(() => dialog.getByRole("button", { name: "Save PDF" }).click());
  expect(name).toMatch(/Hostel.* - proposal\.pdf$/);
  const text = linesOf(pages).join("\n");
  // What the customer pays stands on it as in the bar, and a place to sign.
  expect(text).toContain(sum);
  expect(text).toContain("Customer: signature");
  expect(text).not.toContain("Draft");

  await button("Jobs").click();
  const jobs = page.locator("#jobs");
  await jobs.locator("#jobs-state").selectOption("sent");
  await jobs.getByText("The state is sent now.").waitFor();
  await jobs.getByRole("button", { name: "Freeze…" }).click();
  await page.locator("dialog input").fill("as it was sent");
  await page.locator("dialog").getByRole("button", { name: "Freeze", exact: true }).click();
  await jobs.getByText("Revision 1", { exact: true }).waitFor();
  await jobs.getByRole("button", { name: "Close", exact: true }).click();
  expect(await page.locator(".desk-state").innerText()).toBe("sent");
});
