/**
 * What people do to the rows of a block, in the real grid: sort, filter, paste
 * past the prepared rows, insert, delete a name. Each row stays whole, and no
 * total is wrong without a check that says so.
 */
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { address, parseRange } from "../../../src/formula/address";
import type { Book, BookValue } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { summarise } from "../../../src/workbooks/multiRoom/summarise";
import { namedColumn } from "../../../src/workbooks/named";
import { referencePrice, type Job } from "../../support/referencePrice";
import {
  bookOnPage,
  button,
  choose,
  notice,
  page,
  saved,
  textIs,
  textIsNot,
  total,
  type,
  withPage,
} from "./onDesk";
import { until } from "../../support/until";

const INPUTS = multiRoom.sheets
  .flatMap(({ parts }) => parts)
  .flatMap((part) => (part.kind === "block" && part.name === "rooms" ? part.columns : []))
  .flatMap(({ key, input }) => (input ? [key] : []));
const LEVELS = ["low_cold", "low_hot", "high_cold", "high_hot", "stretched"].map((key) => `level_${key}`);
const OUTLETS = guestHouse.blocks!.rooms!.length;

const placeOf = (book: Book, name: string) => parseRange(book.names.find((one) => one.name === name)!.range)!;
/** Every outlet's inputs and levels, by its name; user bands that none keeps are handed out by the rows, so their level not. */
const byOutlet = (book: Book): Record<string, unknown> => {
  const column = (key: string): readonly unknown[] => namedColumn(book, `rooms_${key}`);
  return Object.fromEntries(
    column("outlet").flatMap((outlet, row) =>
      outlet
        ? [
            [
              outlet as string,
              [...INPUTS.map((key) => column(key)[row] || ""), ...LEVELS.map((key) => column(key)[row])],
            ],
          ]
        : [],
    ),
  );
};
const failing = (book: Book): string[] =>
  summarise(book)
    .checks.filter(({ result }) => result === "look" || result === "error")
    .map(({ what }) => what);

/** A menu of the grid's own, and what lies in it. */
async function menu(...names: (string | RegExp)[]): Promise<void> {
  await page.getByText(names[0]!, { exact: true }).click();
  for (const [index, name] of names.slice(1).entries()) {
    const entry = page.locator(".o-menu .o-menu-item", { hasText: name }).first();
    if (index < names.length - 2) await entry.hover();
    else await entry.click();
  }
}

/** Through the clipboard of the browser, as from another program. */
async function paste(at: string, rows: readonly (readonly BookValue[])[]): Promise<void> {
  const text = rows.map((row) => row.join("\t")).join("\n");
  await page.evaluate((given) => navigator.clipboard.writeText(given), text);
  await choose("Rooms", at);
  await page.keyboard.press("Control+v");
}
const outlet = (name: string): BookValue[] => [
  "ground",
  "annexe hall",
  name,
  "receiver",
  1,
  "H2",
  "indoor drop",
  12.5,
  "single outlet",
];
const asRow = (name: string) => {
  const [floor, room, , receiver, quantity, from, cable, run, plate] = outlet(name);
  return { floor, room, outlet: name, receiver, quantity, from, cable, run, plate };
};
/** The demonstration with outlets put in before one of its own. */
const jobWith = (at: number, ...names: string[]): JobInputs => {
  const rooms = [...guestHouse.blocks!.rooms!];
  rooms.splice(at, 0, ...(names.map(asRow) as typeof rooms));
  return { ...guestHouse, blocks: { ...guestHouse.blocks, rooms } };
};
/** As a reference of the tests' own prices it. */
const pricedWith = (at: number, ...names: string[]): string =>
  referencePrice(jobWith(at, ...names) as unknown as Job).total;
const shown = (price: string): string =>
  `Total ${Number(price).toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
const picture = async (name: string): Promise<void> => {
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/desk-${name}.png` });
};

describe("sorted", () => {
  withPage(
    "by some of its inputs: every outlet keeps all of its inputs, and one undo takes it back",
    async () => {
      await choose("Rooms", "AD6");
      const before = await bookOnPage();
      // What a crew measured stands right of the calculated columns.
      const { left, top } = placeOf(before, "rooms_built_low");
      await choose("Rooms", address(top + 3, left));
      await type("61.5");
      await until(bookOnPage, (book) => namedColumn(book, "rooms_built_low").includes(61.5));
      const measured = await bookOnPage();
      const price = await total().innerText();

      const run = placeOf(measured, "rooms_run");
      await choose("Rooms", `${address(run.top + 1, run.left)}:${address(run.top + OUTLETS, run.left + 1)}`);
      await menu("Data", "Sort range", "Descending");
      await textIs(
        notice(),
        `${OUTLETS} rows sorted by “Run”, each with all of its inputs. Undo takes it back in one step.`,
      );
      const sorted = await bookOnPage();
      const runs = namedColumn(sorted, "rooms_run").slice(1, OUTLETS + 1) as number[];
      expect(runs).toEqual([...runs].sort((a, b) => b - a));
      expect(namedColumn(sorted, "rooms_outlet")).not.toEqual(namedColumn(measured, "rooms_outlet"));
      expect(byOutlet(sorted)).toEqual(byOutlet(measured));
      expect(failing(sorted)).toEqual(failing(measured));
      expect(await total().innerText()).toBe(price);
      await picture("sorted");

      await button("Undo").click();
      const back = await until(bookOnPage, (book) => namedColumn(book, "rooms_run")[1] !== runs[0]);
      expect(namedColumn(back, "rooms_outlet")).toEqual(namedColumn(measured, "rooms_outlet"));
      expect(byOutlet(back)).toEqual(byOutlet(measured));
    },
  );

  withPage("whole rows, calculated columns and all, by a calculated one", async () => {
    const before = await bookOnPage();
    const price = await total().innerText();
    const margin = placeOf(before, "rooms_margin");
    const note = placeOf(before, "rooms_note");
    await choose(
      "Rooms",
      `${address(margin.top + 1, margin.left)}:${address(margin.top + OUTLETS, note.left)}`,
    );
    await menu("Data", "Sort range", "Ascending");
    await textIs(
      notice(),
      `${OUTLETS} rows sorted by “Margin above minimum”, each with all of its inputs. Undo takes it back in one step.`,
    );
    const sorted = await bookOnPage();
    const margins = namedColumn(sorted, "rooms_margin").slice(1, OUTLETS + 1) as number[];
    expect(margins).toEqual([...margins].sort((a, b) => a - b));
    expect(byOutlet(sorted)).toEqual(byOutlet(before));
    expect(await total().innerText()).toBe(price);
  });

  withPage("cells that are no rows of a block: nothing moves, and a sentence says why", async () => {
    await choose("Site", "A5:B9");
    await menu("Data", "Sort range", "Descending");
    await textIs(
      notice(),
      "Not sorted. Select rows of one block, such as the outlets, then sort: each row keeps all of its inputs.",
    );
  });
});

withPage(
  "filtered: hidden rows stay in the total, and deleting what shows leaves them as they are",
  async () => {
    const before = await bookOnPage();
    const price = await total().innerText();
    const { top } = placeOf(before, "rooms_outlet");
    await choose("Rooms", `A${top}:I${top + OUTLETS + 1}`);
    await menu("Data", "Add filters");
    // The filter's mark stands at the right of the selection's first cell.
    const box = (await page.locator(".o-grid-overlay").boundingBox())!;
    await page.mouse.move(box.x + 63, box.y + 121);
    await page.mouse.click(box.x + 63, box.y + 121);
    await page.locator(".o-filter-menu").getByText("first", { exact: true }).click();
    await page.locator(".o-filter-menu").getByText("ground", { exact: true }).click();
    await page.locator(".o-filter-menu").getByText("Confirm").click();
    await page.locator(".o-filter-menu").waitFor({ state: "detached" });
    await picture("filtered");
    expect(await total().innerText()).toBe(price);
    const filtered = await bookOnPage();
    expect(byOutlet(filtered)).toEqual(byOutlet(before));
    expect(failing(filtered)).toEqual(failing(before));

    await choose("Rooms", `A${top + 2}:I${top + OUTLETS + 1}`);
    await page.keyboard.press("Delete");
    await textIsNot(total(), price);
    const left = namedColumn(await bookOnPage(), "rooms_outlet").filter(Boolean);
    const rooms = guestHouse.blocks!.rooms!;
    expect(left).toEqual(rooms.filter(({ floor }) => floor !== "annexe").map((row) => row.outlet));
  },
);

withPage("pasted past the prepared rows: the block grows, and all of it is priced", async () => {
  const before = await bookOnPage();
  const price = await total().innerText();
  const { top, bottom } = placeOf(before, "rooms_outlet");
  const spare = bottom - top - 1 - OUTLETS;
  const names = Array.from({ length: spare + 2 }, (_, index) => `X-${index + 1}`);
  await paste(`A${top + 2 + OUTLETS}`, names.map(outlet));
  await textIsNot(total(), price);
  const after = await bookOnPage();
  await picture("pasted");
  expect(await total().innerText()).toBe(shown(pricedWith(OUTLETS, ...names)));
  expect(placeOf(after, "rooms_outlet")).toMatchObject({ top, bottom: bottom + 2 });
  const check = summarise(after).checks.find(({ what }) => /below the closing row/.test(what));
  expect(check).toMatchObject({ found: 0, result: "ok" });
});

withPage(
  "typed into the thin closing row: it is the block's next row; beside the boxes it is refused",
  async () => {
    const before = await bookOnPage();
    const { bottom } = placeOf(before, "rooms_outlet");
    await choose("Rooms", `C${bottom + 1}`);
    await type("X-1");
    const after = await until(bookOnPage, (book) => placeOf(book, "rooms_outlet").bottom === bottom + 1);
    expect(namedColumn(after, "rooms_outlet").at(-2)).toBe("X-1");
    expect(namedColumn(after, "rooms_outlet").at(-1) || undefined).toBeUndefined();
    const beside = placeOf(after, "options_pair_key");
    await choose("Terms", address(beside.top - 4, beside.right + 1));
    await type("stray");
    await until(
      () => notice().innerText(),
      (text) => /^Nothing is asked for in this cell.*Typed was: “stray”\.$/.test(text),
    );
  },
);

describe("a row inserted", () => {
  const WHERE = [
    ["at the top", 1, "Row above", 0],
    ["in the middle", 12, "Row below", 12],
    ["at the end", OUTLETS, "Row below", OUTLETS],
  ] as const;
  for (const [where, beside, entry, at] of WHERE) {
    withPage(`${where}: part of every column, priced as the reference prices it`, async () => {
      const price = await total().innerText();
      const { top, bottom } = placeOf(await bookOnPage(), "rooms_outlet");
      await choose("Rooms", `A${top + 1 + beside}`);
      await menu("Insert", "Insert row", entry);
      const rows = await until(bookOnPage, (book) => placeOf(book, "rooms_outlet").bottom === bottom + 1);
      expect(await total().innerText()).toBe(price);
      for (const key of INPUTS)
        expect(placeOf(rows, `rooms_${key}`)).toMatchObject({ top, bottom: bottom + 1 });
      await paste(`A${top + 2 + at}`, [outlet("NEW")]);
      await textIs(total(), shown(pricedWith(at, "NEW")));
      const after = await bookOnPage();
      expect(namedColumn(after, "rooms_outlet").indexOf("NEW")).toBe(at + 1);
      expect(failing(after)).toEqual(failing(recalculate(layOut(multiRoom, jobWith(at, "NEW")))));
      await picture(`inserted ${where}`);
    });
  }
});

withPage(
  "a name is kept with a sentence; deleted all the same, no total stands without a check",
  async () => {
    const before = await bookOnPage();
    const price = await total().innerText();
    await choose("Rooms", "A6");
    await menu("Data", "Named ranges");
    const entries = page.locator(".o-named-range-preview");
    const names = await entries
      .locator("input.o-fw-bold")
      .evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value));
    const entry = entries.nth(names.indexOf("rooms_run"));
    const discard = async (): Promise<void> => {
      await entry.scrollIntoViewIfNeeded();
      await entry.hover();
      await entry.getByTitle("Delete named range").click();
    };
    await discard();
    await until(
      () => notice().innerText(),
      (text) =>
        /^The workbook's formulas know cells of the sheet Rooms by the name “rooms_run”, so it was left/.test(
          text,
        ),
    );
    await picture("name kept");
    expect(await total().innerText()).toBe(price);
    expect((await bookOnPage()).names).toEqual(before.names);

    await button("Unlock sheet").click();
    await discard();
    await textIsNot(total(), price);
    const after = await bookOnPage();
    expect(failing(after).length).toBeGreaterThan(failing(before).length);
    await button("Undo").click();
    await textIs(total(), price);
    await saved();
  },
);
