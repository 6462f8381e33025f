/** The desk in the signs of its people, in a real browser: shown, typed, copied, pasted and printed. */
import type { Locator } from "playwright-core";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { placeOfName } from "../../../src/workbooks/named";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { WRITING_FIELD } from "../../../src/workbooks/typed/writing";
import { referencePrice, type Job } from "../../support/referencePrice";
import {
  bookOnPage,
  button,
  cellOf,
  choose,
  line,
  page,
  saved,
  textIs,
  total,
  type,
  withPage,
} from "./onDesk";
import { until } from "../../support/until";
import { linesOf, onPaper, printed } from "./printedPages";

/** The run of the first outlet. */
const RUN = "H6";
const editor = (): Locator => page.locator(".o-grid-composer .o-composer");
const { total: SUM } = referencePrice(guestHouse as unknown as Job);

async function writeAsIn(label: string): Promise<void> {
  const { sheet, at } = placeOfName(await bookOnPage(), WRITING_FIELD)!;
  await choose(sheet, at);
  await type(label);
  await saved();
}

/** A sum with other signs; of the locales CLDR 48 has them so. */
function inSigns(sum: number | string, group: string, decimal: string): string {
  const [whole, cents] = Number(sum).toFixed(2).split(".");
  return `${whole!.replace(/\B(?=(\d{3})+$)/g, group)}${decimal}${cents}`;
}
async function copies(text: string): Promise<void> {
  await page.keyboard.press("Control+C");
  await until(
    () => page.evaluate(() => navigator.clipboard.readText()),
    (now) => now === text,
  );
}

withPage("one field changes what is shown everywhere, and undo takes it back", async () => {
  await textIs(total(), `Total ${inSigns(SUM, ",", ".")}`);
  const ways: readonly [label: string, group: string, decimal: string][] = [
    ["German", ".", ","],
    ["French", "\u202f", ","],
    ["Swedish", "\u00a0", ","],
    ["German (Switzerland)", "'", "."],
    ["Danish", ".", ","],
    ["Italian", ".", ","],
    ["Polish", "\u00a0", ","],
  ];
  for (const [label, group, decimal] of ways) {
    await writeAsIn(label);
    await until(
      () => total().innerText(),
      (text) => text === `Total ${inSigns(SUM, group, decimal)}`,
    );
  }
  for (let steps = ways.length; steps > 0; steps--) await button("Undo").click();
  await textIs(total(), `Total ${inSigns(SUM, ",", ".")}`);
});

withPage("in German: typed, edited, copied, pasted, computed and printed with commas", async () => {
  await writeAsIn("German");
  await choose("Rooms", RUN);
  await type("9.5 kg");
  await textIs(
    line(),
    "Not taken: “9.5 kg” can't be read as a length. Type it in m, or with its unit: 9,5, 950 cm or 31' 2\". Esc leaves the cell as it was.",
  );
  await page.keyboard.press("Escape");
  await until(
    () => line().innerText(),
    (text) => text.endsWith("A number from 0,1 to 2000. Example: 14,5."),
  );
  await type("1.014,5 cm");
  await choose("Rooms", RUN);
  await page.keyboard.press("F2");
  await textIs(editor(), "10,145");
  await page.keyboard.press("Escape");
  // Left as it was, nothing is entered: there is nothing to undo but the length.
  await page.keyboard.press("F2");
  await page.keyboard.press("Enter");

  const date = placeOfName(await bookOnPage(), estimate.site.date.name)!;
  await choose(date.sheet, date.at);
  await type("3.4.2026");
  await choose(date.sheet, date.at);
  await copies("03.04.2026");
  await page.keyboard.press("F2");
  await textIs(editor(), "03.04.2026");
  await page.keyboard.press("Escape");

  // A sheet of one's own: figures, dates and formulas as these people write them.
  await page.locator(".o-add-sheet").click();
  await saved();
  const own = (await bookOnPage()).sheets.find(({ cells }) => Object.keys(cells).length === 0)!.name;
  await choose(own, "A1");
  await type("1.234,5");
  await type("3.4.2026");
  await type("=SUM(1,5;2)");
  await choose(own, "A1");
  await copies("1234,5");
  await choose(own, "A2");
  await copies("03.04.2026");
  await choose(own, "A3");
  await copies("3,5");
  await page.keyboard.press("F2");
  // The library sets a blank behind the sign, as it does behind a comma.
  await textIs(editor(), "=SUM(1,5; 2)");
  await page.keyboard.press("Escape");
  await page.evaluate(() => navigator.clipboard.writeText("12,5\t1.234\t31.12.2026\n"));
  await choose(own, "C1");
  await page.keyboard.press("Control+V");
  await saved();

  const book = await bookOnPage();
  expect(cellOf(book, "Rooms", RUN)?.value).toBe(10.145);
  expect(cellOf(book, date.sheet, date.at)?.value).toBe(sheetDate(2026, 4, 3));
  expect(["A1", "A2", "C1", "D1", "E1"].map((at) => cellOf(book, own, at)?.value)).toEqual([
    1234.5,
    sheetDate(2026, 4, 3),
    12.5,
    1234,
    sheetDate(2026, 12, 31),
  ]);
  // Files know no language.
  expect(cellOf(book, own, "A3")?.formula).toBe("SUM(1.5,2)");

  await button("Undo").click();
  await button("Undo").click();
  await until(
    async () => cellOf(await bookOnPage(), own, "A3")?.formula,
    (formula) => formula === undefined,
  );
});

withPage("the quote prints in the signs that the grid shows", async () => {
  await writeAsIn("French");
  const lines = linesOf(await onPaper(await printed()));
  const plain = lines.map((line) => line.replace(/\s/g, " "));
  expect(plain).toContain(`Total ${inSigns(SUM, " ", ",")}`);
  // The demonstration's date of the quote.
  expect(plain.join("\n")).toContain("02/11/2026");
});
