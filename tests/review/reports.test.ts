/** The reports of review and compare as a person gets them: in a browser, by a screen reader's rules, on paper. */
import { chromium, type Browser, type Page } from "playwright-core";
import { compareJobs } from "../../src/compare/compareJobs";
import { report } from "../../src/compare/report";
import { recalculate, trials } from "../../src/hosts/headless/recalculate";
import { reviewInFull } from "../../src/review/reviewInFull";
import { reviewPage } from "../../src/review/reviewPage";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { barriers, FLAGS, onPath } from "../pane/inChromium";
import { secondRevision } from "../support/secondRevision";
import { withChromium } from "../support/tools";
import { mendedGuestHouse } from "./cleanJobs";

let browser: Browser | undefined;
afterAll(() => browser?.close());

/** A folder to look at the pictures in, given by the variable SHOTS. */
const SHOTS = process.env.SHOTS;
const MOST_SHEETS = { review: 3, compare: 2 } as const;

/** A workbook that came back with the mistakes of a busy day. */
function busyDay(): Book {
  const job = mendedGuestHouse();
  Object.assign(job.fields, { site_margin: 0.03 });
  job.blocks.rooms![3]!.from = "Z9";
  job.blocks.rooms![6]!.run = "21,5";
  job.blocks.rooms![9]!.run = 170;
  job.blocks.plates![0]!.price = 640;
  job.blocks.fittings![3]!.name = "spare bracket";
  job.blocks.cables![1]!.until = 46_000;
  job.blocks.heads![1]!.type = "head unit, higher voltage";
  job.blocks.exclusions = job.blocks.exclusions!.slice(1);
  const book = recalculate(layOut(multiRoom, job));
  const { sheet, range } = book.names.find(({ name }) => name === "quote_total")!;
  const { cells } = book.sheets.find(({ name }) => name === sheet)!;
  cells[range] = { ...(cells[range]!.look !== undefined && { look: cells[range]!.look }), value: 4990 };
  book.sheets.find(({ name }) => name === "Price")!.hidden = true;
  return recalculate(book);
}

const pages: readonly [keyof typeof MOST_SHEETS, () => string][] = [
  [
    "review",
    () => {
      const reviewed = reviewInFull(busyDay(), trials);
      expect(reviewed.findings.length).toBeGreaterThan(10);
      return reviewPage([{ path: "guest-house.xlsx", ...reviewed }]);
    },
  ],
  [
    "compare",
    () => {
      const comparison = compareJobs(
        multiRoom,
        layOut(multiRoom, guestHouse),
        layOut(multiRoom, secondRevision()),
        recalculate,
      );
      expect(comparison.changes.length).toBeGreaterThan(5);
      return report(comparison, ["guest-house-1.xlsx", "guest-house-2.xlsx"]);
    },
  ],
];

describe.each(pages)("the report of %s", (name, make) => {
  let page: Page;
  const open = async (program: string): Promise<void> => {
    browser ??= await chromium.launch({ executablePath: onPath(program), args: FLAGS });
    page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    await page.setContent(make());
  };

  withChromium("has no barrier, loads nothing, prints on two sheets", async (program) => {
    await open(program);
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/${name}.png` });
    const pdf = await page.pdf({ preferCSSPageSize: true, ...(SHOTS && { path: `${SHOTS}/${name}.pdf` }) });
    const sheets = pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)!.length;
    expect(sheets).toBeLessThanOrEqual(MOST_SHEETS[name]);
    expect(await page.evaluate(() => performance.getEntriesByType("resource").length)).toBe(0);
    // Nothing is cut off at the side, on a narrow screen neither.
    for (const width of [1366, 360]) {
      await page.setViewportSize({ width, height: 768 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    }
    await page.setViewportSize({ width: 1366, height: 768 });
    // The page forbids all script; what looks for barriers is put in from outside.
    const loose = await browser!.newContext({ bypassCSP: true });
    const looked = await loose.newPage();
    await looked.setContent(await page.content());
    expect(await barriers(looked)).toEqual([]);
    await loose.close();
    await page.close();
  });
});
