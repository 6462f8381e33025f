/** Pasting in a real browser: what other programs leave on its clipboard, by key and by the grid's menu. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { address, parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { namedColumn } from "../../../src/workbooks/named";
import { unprintedRows } from "../../support/unprinted";
import { bookOnPage, button, cellOf, choose, forget, notice, page, saved, withPage } from "./onDesk";
import { until } from "../../support/until";

interface Clipboard {
  readonly id: string;
  readonly text: string | null;
  readonly html: string | null;
}
const cases = JSON.parse(
  readFileSync(path.join(__dirname, "../../fixtures/typed/clipboards.json"), "utf8"),
) as Clipboard[];
const case_ = (id: string): Clipboard => cases.find((one) => one.id === id)!;

const zoneOf = (book: Book, name: string) => parseRange(book.names.find((one) => one.name === name)!.range)!;
const filled = (book: Book, name: string): unknown[] => namedColumn(book, name).filter((value) => value);
/** The library leaves out the alignment that a number has anyway. */
const lookOf = (book: Book, at: string) => ({
  ...book.looks[cellOf(book, "Rooms", at)?.look ?? -1],
  align: undefined,
});

/** Onto the clipboard of the browser; a picture where there is neither text nor HTML. */
const copied = ({ text, html }: Pick<Clipboard, "text" | "html">): Promise<void> =>
  page.evaluate(
    async ([plain, marked]) => {
      const flavours: Record<string, Blob> = {};
      if (typeof plain === "string") flavours["text/plain"] = new Blob([plain], { type: "text/plain" });
      if (typeof marked === "string") flavours["text/html"] = new Blob([marked], { type: "text/html" });
      if (Object.keys(flavours).length === 0) {
        const canvas = document.createElement("canvas");
        canvas.width = canvas.height = 4;
        flavours["image/png"] = await new Promise<Blob>((resolve) =>
          canvas.toBlob((blob) => resolve(blob!), "image/png"),
        );
      }
      await navigator.clipboard.write([new ClipboardItem(flavours)]);
    },
    [text, html] as const,
  );

const HOW: Readonly<Record<string, () => Promise<void>>> = {
  "Ctrl+V": () => page.keyboard.press("Control+v"),
  "Ctrl+Shift+V": () => page.keyboard.press("Control+Shift+v"),
  "Edit, Paste special, Paste as value": async () => {
    await page.getByText("Edit", { exact: true }).click();
    await page.locator(".o-menu .o-menu-item", { hasText: "Paste special" }).first().hover();
    await page.locator(".o-menu .o-menu-item", { hasText: "Paste as value" }).first().click();
  },
};
const picture = async (name: string): Promise<void> => {
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/desk-${name}.png` });
};
const said = (): Promise<string> => notice().innerText();

for (const [how, paste] of Object.entries(HOW)) {
  withPage(`${how}: a value with its fonts and colours, ending in CRLF, and a column of 40`, async () => {
    const before = await bookOnPage();
    const run = zoneOf(before, "rooms_run");
    const at = (row: number) => address(row, run.left);
    // Red, 18 points, on yellow, in the markup.
    const { html } = case_("clip-04");
    await copied({ text: "14.2\r\n", html: html!.replaceAll("9,5", "14.2") });
    await choose("Rooms", at(run.top + 2));
    await paste();
    const after = await until(bookOnPage, (book) => cellOf(book, "Rooms", at(run.top + 2))?.value === 14.2);
    expect(cellOf(after, "Rooms", at(run.top + 3))).toEqual(cellOf(before, "Rooms", at(run.top + 3)));
    expect(lookOf(after, at(run.top + 2))).toEqual(lookOf(before, at(run.top + 2)));

    const price = filled(after, "rooms_outlet").length;
    const { text, html: forty } = case_("clip-19");
    await copied({ text, html: forty });
    const first = run.top + 1 + price;
    await choose("Rooms", address(first, 0));
    await paste();
    await until(said, (text) =>
      /^\d+ rows were added to Outlets, and to the lists that stand for the same rows\./.test(text),
    );
    const grown = await until(bookOnPage, (book) => filled(book, "rooms_floor").length === price + 40);
    await picture(`pasted 40 by ${how.replace(/\W+/g, " ")}`);
    const { bottom } = zoneOf(grown, "rooms_outlet");
    expect(bottom).toBe(first + 40);
    expect(zoneOf(grown, "commission_outlet").bottom - zoneOf(grown, "commission_outlet").top).toBe(
      bottom - zoneOf(grown, "rooms_outlet").top,
    );
    for (let row = first; row < bottom; row++)
      expect(lookOf(grown, at(row))).toEqual(lookOf(before, at(first)));
    expect(unprintedRows(grown)).toEqual([]);

    await button("Undo").click();
    await saved();
    expect((await bookOnPage()).names).toEqual(before.names);
    expect(filled(await bookOnPage(), "rooms_floor")).toHaveLength(price);
  });
}

withPage("a clipboard without text, or with an empty one, empties nothing and says so", async () => {
  const before = await bookOnPage();
  await copied({ text: null, html: null });
  for (const paste of Object.values(HOW)) {
    await choose("Rooms", "H6");
    await paste();
    await until(said, (text) => text.startsWith("The clipboard holds no text, so nothing was pasted."));
    await page.locator(".desk-notice").getByRole("button", { name: "Close" }).click();
  }
  expect(await bookOnPage()).toEqual(before);
});

withPage(
  "markup as programs hand it over, before a browser cleans it: nothing of it runs, or is seen",
  async () => {
    const before = await bookOnPage();
    await choose("Rooms", "H7");
    await page.evaluate(
      ([text, html]) => {
        const clipboardData = new DataTransfer();
        clipboardData.setData("text/plain", text!);
        clipboardData.setData("text/html", html!);
        const paste = new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true });
        document.activeElement!.dispatchEvent(paste);
      },
      [
        "8.25\r\n",
        case_("clip-04").html!.replace("<td", '<td><img src=x onerror="window.ran=1"></td><td'),
      ] as const,
    );
    const after = await until(bookOnPage, (book) => cellOf(book, "Rooms", "H7")?.value === 8.25);
    expect(lookOf(after, "H7")).toEqual(lookOf(before, "H7"));
    expect(cellOf(after, "Rooms", "H8")).toEqual(cellOf(before, "Rooms", "H8"));
    expect(await page.evaluate(() => "ran" in window)).toBe(false);
    // That the page lets none run is noted when the markup is read.
    forget("Executing inline event handler");
  },
);

withPage("into the open editor of a cell: it goes into that cell alone", async () => {
  const before = await bookOnPage();
  const { top, left } = zoneOf(before, "rooms_note");
  const at = address(top + 25, left);
  await copied(case_("clip-70"));
  await choose("Rooms", at);
  await page.keyboard.press("F2");
  await page.keyboard.press("Control+v");
  await page.keyboard.press("Enter");
  const after = await until(bookOnPage, (book) => cellOf(book, "Rooms", at)?.value !== undefined);
  expect(cellOf(after, "Rooms", at)!.value).toMatch(/^3-16\s1-1\s?$/);
  expect(cellOf(after, "Rooms", address(top + 26, left))).toEqual(
    cellOf(before, "Rooms", address(top + 26, left)),
  );
});
