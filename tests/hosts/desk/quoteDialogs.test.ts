/**
 * Two dialogs of the office, in a real browser: somebody else's quote read from a list, and the change order. The list
 * is an outsider's (tests/fixtures/typedQuotes), and so is what it comes to.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { order } from "../../../src/workbooks/changeOrder/names";
import { namedValue } from "../../../src/workbooks/named";
import { barriers } from "../../pane/inChromium";
import typed from "../../fixtures/typedQuotes/typed.json";
import { BUILD_MS } from "./desk";
import { dropOnGrid } from "./dropOnGrid";
import { button, choose, notice, page, saved, textIs, total, type, withPage } from "./onDesk";
import { until } from "../../support/until";

jest.setTimeout(BUILD_MS);

const LIST = typed.find(({ id }) => id === "Q-001")!;

const shot = async (name: string): Promise<void> => {
  if (process.env.SHOTS) await page.screenshot({ path: path.join(process.env.SHOTS, `${name}.png`) });
};

async function listDialog(): Promise<void> {
  await button("New").click();
  await page.getByRole("button", { name: "Review of a list…" }).click();
  await page.getByRole("dialog", { name: "Quote review from a list" }).waitFor();
}

/** The sheet Review of the outsider's list: 16 lines, and the total that stands on it. */
async function isRead(): Promise<void> {
  await until(
    () => notice().innerText(),
    (text) => text.startsWith("Read: "),
  );
  expect(await notice().innerText()).toMatch(/16 lines/);
  await saved();
  await page.locator(".o-sheet", { hasText: "Review" }).first().waitFor();
}

withPage("a list is pasted into the dialog and becomes a quote review; the open job is kept", async () => {
  await listDialog();
  expect(await barriers(page, "dialog")).toEqual([]);
  await page.evaluate((text) => navigator.clipboard.writeText(text), LIST.text);
  await page.getByLabel("Paste somebody else's quote: its lines and its totals").click();
  await page.keyboard.press("Control+V");
  await shot("quote-list-dialog");
  await page.getByRole("button", { name: "Take the text" }).click();
  await isRead();
  await shot("quote-list-read");
  expect(await page.locator(".desk-title").innerText()).toBe("A-1041, revision 2, Lakeside guest house");
});

withPage("a list is chosen as a file, or dropped on the page", async () => {
  await listDialog();
  const choosing = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Choose a file…" }).click();
  await (
    await choosing
  ).setFiles({ name: "quote.csv", mimeType: "text/csv", buffer: Buffer.from(LIST.text) });
  await isRead();
  await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
  await dropOnGrid(page, [["quote.csv", Buffer.from(LIST.text).toString("base64")]]);
  await isRead();
});

withPage("what is no quote gets a sentence, and the open job stays", async () => {
  const before = await total().innerText();
  for (const text of ["", "Dear Sir,\nwe thank you for your call.\n"]) {
    await listDialog();
    await page.getByLabel("Paste somebody else's quote: its lines and its totals").fill(text);
    await page.getByRole("button", { name: "Take the text" }).click();
    await until(
      () => notice().innerText(),
      (told) => told.length > 0 && !told.startsWith("Read: "),
    );
    await textIs(total(), before);
    await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
  }
});

withPage(
  "a change order: days in the wrong order are asked again; the file holds what was said",
  async () => {
    await page.keyboard.press("Control+j");
    const jobs = page.locator(".desk-jobs");
    await jobs.getByRole("button", { name: "Freeze…" }).click();
    await page.locator("dialog input").fill("as accepted");
    await page.locator("dialog").getByRole("button", { name: "Freeze", exact: true }).click();
    await jobs.getByText("Revision 1", { exact: true }).waitFor();
    await jobs.getByRole("button", { name: "Close", exact: true }).click();
    const first = await total().innerText();
    // The run of the first outlet.
    await choose("Rooms", "H8");
    await type("31");
    await until(
      () => total().innerText(),
      (now) => now !== first,
    );
    await saved();
    await page.keyboard.press("Control+j");
    await jobs.getByRole("button", { name: "Compare with now" }).first().click();
    await page
      .getByRole("dialog", { name: /compared$/ })
      .getByRole("button", { name: "Change order…" })
      .click();
    const dialog = page.getByRole("dialog", { name: "Change order" });
    await dialog.waitFor();
    expect(await barriers(page, "dialog")).toEqual([]);
    await dialog.locator("#order-number").fill("1/A");
    await dialog.locator("#order-reason").fill("The lounge outlet moves");
    await dialog.locator("#order-date").fill("2027-02-10");
    await dialog.locator("#order-until").fill("2027-02-01");
    await shot("change-order-dialog");
    await dialog.getByRole("button", { name: "Make it" }).click();
    await dialog.getByText(/before/).waitFor();
    expect(await dialog.locator("#order-number").inputValue()).toBe("1/A");
    await dialog.locator("#order-until").fill("2027-03-01");
    await dialog.getByRole("button", { name: "Make it" }).click();
    const toKnow = page.getByRole("dialog", { name: "For the office to know" });
    await toKnow.getByText("The earlier quotation held until 2026-12-31").waitFor();
    await shot("change-order-to-know");
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      toKnow.getByRole("button", { name: "Save" }).click(),
    ]);
    expect(file.suggestedFilename()).toBe("change order 1-A.xlsx");
    const book = await readXlsx(readFileSync((await file.path())!));
    expect(namedValue(book, order.number.name)).toBe("1/A");
    // Nothing of the office's: neither its margin nor its costs.
    const words = JSON.stringify(book.sheets.map(({ cells }) => cells)).toLowerCase();
    expect(words).not.toMatch(/margin|overhead(?! lines)|contingency/);
    expect(words).toContain("the lounge outlet moves");
    await page.getByRole("dialog").getByRole("button", { name: "Close" }).click();
  },
);
