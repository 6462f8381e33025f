/** A supplier's price list on the desk: looked at, taken in one step, and taken back in one. */
import path from "node:path";
import type { Book } from "../../../src/workbooks/book";
import { namedColumn } from "../../../src/workbooks/named";
import { bookOnPage, button, notice, page, saved, withPage } from "./onDesk";
import { until } from "../../support/until";

const LODGE = path.join(__dirname, "../../fixtures/priceLists/lodge-prices.csv");

async function onStandards(): Promise<void> {
  await button("New").click();
  await page.getByLabel("Template").selectOption("standards");
  await page.getByRole("button", { name: "Demonstration" }).click();
  await page.locator(".desk-notice", { hasText: "is kept, under Jobs" }).waitFor();
  await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
  await saved();
}

async function chooseList(file: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await button("Price list…").click();
  await (await chooser).setFiles(file);
}

const filled = (book: Book, name: string): unknown[] =>
  namedColumn(book, name).filter((value) => value !== "" && value !== undefined);

describe("a price list on the desk", () => {
  withPage("is shown, taken in one step and taken back by one undo", async () => {
    await onStandards();
    const before = await bookOnPage();
    await chooseList(LODGE);
    const dialog = page.getByRole("dialog", { name: "Price list" });
    await dialog.waitFor();
    // Two suppliers are known, and the file names none.
    const take = dialog.locator("button[value=take]");
    expect(await take.isDisabled()).toBe(true);
    await dialog.getByLabel("Supplier, as this workbook names it").fill("first supplier (demonstration)");
    await page.keyboard.press("Tab");
    await dialog.getByText("21 lines changed").waitFor();
    if (process.env.SCREENSHOTS) await page.screenshot({ path: `${process.env.SCREENSHOTS}/prices.png` });
    expect(await dialog.getByText("It stands twice: the newest price that is valid is taken").count()).toBe(
      1,
    );
    expect(await take.innerText()).toBe("Take 21 prices");
    await take.click();
    await until(
      () => notice().innerText(),
      (text) => text.startsWith("21 prices of first supplier (demonstration)"),
    );
    const after = await bookOnPage();
    // From the list: a reel of 100 m at 39.00, a 4-way splitter at 11.90.
    expect(filled(after, "cables_price")).toContain(39);
    expect(filled(after, "passives_price")).toContain(11.9);
    expect(filled(after, "offers_part").length).toBeGreaterThan(filled(before, "offers_part").length);
    expect(filled(after, "suppliers_columns").join()).toContain("price per pack or reel = Price/pack EUR");
    await button("Undo").click();
    const back = await bookOnPage();
    for (const name of ["cables_price", "passives_price", "offers_part", "suppliers_columns", "log_what"])
      expect(filled(back, name)).toEqual(filled(before, name));
  });
});
