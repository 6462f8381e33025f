/** Firefox itself prints what the desk hands over, into a PDF, without asking. */
import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { firefox } from "playwright-core";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { onPath } from "../../pane/inChromium";
import { referencePrice, type Job } from "../../support/referencePrice";
import { withFirefox } from "../../support/tools";
import { BUILD_MS, buildDesk, freePort, remove, startDesk, temporaryFolder, type Started } from "./desk";
import { pagesOf } from "../../support/pdfPages";
import { toGrid } from "./bothBrowsers";

let data: string;
let desk: Started;
beforeAll(async () => {
  buildDesk();
  data = temporaryFolder();
  desk = await startDesk("--data", data, "--port", String(await freePort()));
}, BUILD_MS);
afterAll(async () => {
  await desk?.kill();
  remove(data);
});

const SAVE_TO_PDF = "Mozilla Save to PDF";

withFirefox(
  "Firefox prints the quote upright and Rooms across, with nothing cut off and its own page numbers",
  async (program) => {
    const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-firefox-"));
    const file = path.join(folder, "printed.pdf");
    const printer = `print.printer_${SAVE_TO_PDF.replace(/ /g, "_")}`;
    const browser = await firefox.launch({
      channel: "moz-firefox",
      executablePath: onPath(program),
      firefoxUserPrefs: {
        "print.always_print_silent": true,
        print_printer: SAVE_TO_PDF,
        [`${printer}.print_to_file`]: true,
        [`${printer}.print_to_filename`]: file,
      },
    });
    try {
      const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
      await page.goto(desk.address);
      await page.getByText(/^saved \d\d:\d\d$/).waitFor();
      await toGrid(page);
      await page.keyboard.press("Control+p");
      const dialog = page.getByRole("dialog", { name: "Print" });
      await dialog.getByRole("checkbox", { name: "Rooms" }).check();
      await dialog.getByRole("checkbox", { name: "Quote" }).focus();
      await page.keyboard.press("Enter");
      await dialog.waitFor({ state: "detached" });
      const end = Date.now() + 30_000;
      let pages: ReturnType<typeof pagesOf> | undefined;
      while (!pages && Date.now() < end) {
        await page.waitForTimeout(500);
        try {
          if (existsSync(file)) pages = pagesOf(file);
        } catch {
          // It is still being written.
        }
      }
      // A4 upright, then A4 across (ISO 216: 210 by 297 mm).
      expect(pages!.map(({ width, height }) => [Math.round(width / 10), Math.round(height / 10)])).toEqual([
        [60, 84],
        [84, 60],
      ]);
      const { total } = referencePrice(guestHouse as unknown as Job);
      const [quote, rooms] = pages!.map(({ lines }) => lines.join("\n"));
      expect(quote).toContain(`Total ${Number(total).toLocaleString("en-US")}`);
      expect(quote).not.toMatch(/margin/i);
      for (const { outlet } of guestHouse.blocks!.rooms!) expect(rooms).toContain(outlet as string);
      for (const { width, words } of pages!)
        expect(words.filter(({ left, right }) => left < 0 || right > width)).toEqual([]);
      expect(await page.locator(".desk-notice p").innerText()).toBe("");
    } finally {
      await browser.close();
      remove(folder);
    }
  },
);
