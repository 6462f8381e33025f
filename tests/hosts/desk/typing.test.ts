/** Typing into the desk in a real browser: what is read, and what stays in the editor when it is refused. */
import type { Locator } from "playwright-core";
import { address, parseAddress } from "../../../src/formula/address";
import { placeOfName } from "../../../src/workbooks/named";
import {
  bookOnPage,
  button,
  cellOf,
  choose,
  line,
  load,
  page,
  saved,
  textIs,
  type,
  withPage,
} from "./onDesk";
import { until } from "../../support/until";

/** In the demonstration's Rooms sheet: name and run of the first outlet. */
const OUTLET = "C6";
const RUN = "H6";

const editor = (): Locator => page.locator(".o-grid-composer .o-composer");
const isTypedInto = (): Promise<boolean> =>
  page.evaluate(() => document.activeElement?.classList.contains("o-composer") ?? false);

withPage("a refused text stays in its editor, whatever is tried, and its reason covers no cell", async () => {
  await choose("Rooms", RUN);
  await type("9.5 kg");
  await textIs(
    line(),
    "Not taken: “9.5 kg” can't be read as a length. Type it in m, or with its unit: 9.5, 950 cm or 31' 2\". Esc leaves the cell as it was.",
  );
  expect(await line().getAttribute("role")).toBe("alert");
  // Above the grid, and clear of the editor.
  const said = (await line().boundingBox())!;
  const grid = (await page.locator(".o-grid").boundingBox())!;
  expect(said.y + said.height).toBeLessThanOrEqual(grid.y);
  expect(said.y + said.height).toBeLessThanOrEqual((await editor().boundingBox())!.y);
  expect(await page.locator(".desk-notice").isHidden()).toBe(true);

  const holds = async (): Promise<void> => {
    await until(isTypedInto, (typing) => typing);
    expect(await editor().innerText()).toBe("9.5 kg");
  };
  for (const key of ["Enter", "Tab", "Shift+Tab"]) {
    await page.keyboard.press(key);
    await holds();
  }
  await page.mouse.click(grid.x + 500, grid.y + 300);
  await holds();
  await page.locator(".o-sheet", { hasText: "Parts" }).first().click();
  await holds();
  await button("Undo").click();
  await holds();

  await page.keyboard.press("Escape");
  await until(
    () => line().getAttribute("role"),
    (role) => role === null,
  );
  expect(cellOf(await bookOnPage(), "Rooms", RUN)?.value).toBe(9.5);
});

withPage("a refused text is put right where it stands, and F2 shows what was taken", async () => {
  await choose("Rooms", RUN);
  await type("9.5 kg");
  await until(isTypedInto, (typing) => typing);
  await page.keyboard.press("Backspace");
  await page.keyboard.press("Backspace");
  await type("m");
  await saved();
  expect(cellOf(await bookOnPage(), "Rooms", RUN)?.value).toBe(9.5);
  await choose("Rooms", RUN);
  await type("41' 6\"");
  await saved();
  await choose("Rooms", RUN);
  await page.keyboard.press("F2");
  await textIs(editor(), "12.6492");
  await page.keyboard.press("Escape");
});

withPage("names that look like dates, numbers and formulas are kept over a reload", async () => {
  const odd = ["3-16", "1-1", "12/4", "007", "1E5", "TRUE", "=A-07"];
  await choose("Rooms", OUTLET);
  for (const name of odd) await type(name);
  await saved();
  const names = async (): Promise<unknown[]> => {
    const book = await bookOnPage();
    return odd.map((_, index) => cellOf(book, "Rooms", `C${6 + index}`)?.value);
  };
  expect(await names()).toEqual(odd);
  await load();
  expect(await names()).toEqual(odd);
});

withPage("what a meter showed is a number or “no signal”, in any row; another word is refused", async () => {
  const { sheet, at } = placeOfName(await bookOnPage(), "rooms_built_low")!;
  const { row, column } = parseAddress(at)!;
  const cell = (below: number): string => address(row + below, column);
  const valueAt = async (below: number): Promise<unknown> =>
    cellOf(await bookOnPage(), sheet, cell(below))?.value;
  for (const [below, typed, taken] of [
    [1, "61.5", 61.5],
    [3, "61,5", 61.5],
    [4, "No Signal", "no signal"],
  ] as const) {
    await choose(sheet, cell(below));
    await type(typed);
    expect(
      await until(
        () => valueAt(below),
        (value) => value !== undefined,
      ),
    ).toBe(taken);
  }
  await choose(sheet, cell(5));
  await type("dead");
  await until(
    () => line().innerText(),
    (text) => /^Not taken: (?!Not taken).*no signal/.test(text),
  );
  await page.keyboard.press("Escape");
  expect(await valueAt(5)).toBeUndefined();
});
