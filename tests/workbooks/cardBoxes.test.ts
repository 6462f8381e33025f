/** Every box of the crew's cards has a cell of the workbook that asks for just that, and a cell of its own. */
import { address, parseRange } from "../../src/formula/address";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { CARD, type Card } from "../../src/workbooks/multiRoom/cards/cardSheet";
import { dishCards } from "../../src/workbooks/multiRoom/cards/dishCard";
import { headCards } from "../../src/workbooks/multiRoom/cards/headCard";
import { outletCards } from "../../src/workbooks/multiRoom/cards/outletCard";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { namedColumn } from "../../src/workbooks/named";
import { jobOnSheets } from "../support/jobsOnSheets";

interface Box {
  /** Title of its card, and what stands beside it. */
  readonly of: string;
  readonly sheet: string;
  readonly at: string;
}

const titleOf = (card: Card): string =>
  String(card.find(({ row, column }) => row === 0 && column === 0)!.value);

function boxesOf(book: Book): Box[] {
  return [...dishCards(book), ...headCards(book), ...outletCards(book)].flatMap((card) =>
    card
      .filter(({ look }) => look === CARD.box)
      .flatMap((box) => {
        const { into } = box;
        if (!into) return [{ of: `${titleOf(card)}: no cell`, sheet: "", at: "" }];
        return into.columns.map(({ name }): Box => {
          const named = book.names.find((one) => one.name === name)!;
          const { top, left, bottom } = parseRange(named.range)!;
          // Below the thin row, above the closing one.
          const row = top + 1 + into.row;
          expect(row).toBeLessThan(bottom);
          return { of: `${titleOf(card)}: ${name}`, sheet: named.sheet, at: address(row, left) };
        });
      }),
  );
}

/** Cells that ask for something: a rule of what may be typed reaches over them. */
const isAsked = (book: Book, { sheet, at }: Box): boolean => {
  const place = parseRange(at)!;
  return book.sheets
    .find(({ name }) => name === sheet)!
    .validations.some(({ range }) => {
      const zone = parseRange(range)!;
      return (
        zone.left <= place.left &&
        place.left <= zone.right &&
        zone.top <= place.top &&
        place.top <= zone.bottom
      );
    });
};

const book = (id: string): Book => recalculate(layOut(multiRoom, jobOnSheets(id)));

test.each(["1-smallest", "2-cascade", "3-hall", "4-annexe", "5-must-fail", "6-two-dishes"])(
  "job %s: each box has a cell, none has that of another",
  (id) => {
    const computed = book(id);
    const boxes = boxesOf(computed);
    expect(boxes.length).toBeGreaterThan(10);
    expect(boxes.filter((box) => !isAsked(computed, box))).toEqual([]);
    const cells = boxes.map(({ sheet, at }) => `${sheet}!${at}`);
    expect(cells.filter((cell, index) => cells.indexOf(cell) !== index)).toEqual([]);
  },
);

/** By hand from the sheets: what a card of each kind asks, in the order of the card. */
test("the boxes of the cascade, card by card", () => {
  const boxes = boxesOf(book("2-cascade"));
  const of = (title: string): string[] =>
    boxes
      .filter(({ of: words }) => words.startsWith(`${title}:`))
      .map(({ of: words }) => words.slice(title.length + 2));
  const line = ["peaks_axis", "peaks_step", "peaks_here", "peaks_plus", "peaks_minus"];
  expect(of("Dish D1")).toEqual([...line, ...line, ...line, ...line]);
  for (const head of ["H1", "H2"])
    expect(of(`Head unit ${head}`)).toEqual([
      "heads_built_volts",
      "heads_built_amps",
      "heads_built_low",
      "heads_built_high",
    ]);
  for (const outlet of ["401", "104"])
    expect(of(`Outlet ${outlet}`)).toEqual(["rooms_built_low", "rooms_built_high", "rooms_built_volts"]);
  expect(boxes).toHaveLength(20 + 2 * 4 + 16 * 3);
});

test("what is typed into the cell of a box is what the workbook reads for that outlet", () => {
  const sheets = layOut(multiRoom, jobOnSheets("2-cascade"));
  const box = boxesOf(recalculate(sheets)).find(({ of }) => of === "Outlet 104: rooms_built_high")!;
  const sheet = sheets.sheets.find(({ name }) => name === box.sheet)!;
  sheet.cells[box.at] = { ...sheet.cells[box.at], value: 60.5 };
  const typed = recalculate(sheets);
  const row = namedColumn(typed, "rooms_outlet").indexOf("104");
  expect(namedColumn(typed, "commission_high")[row]).toBe(60.5);
});

test("the cards of two head units on one dish share no box", () => {
  const job = jobOnSheets("5-must-fail");
  const [first, second] = job.blocks!.heads!;
  const { blocks } = job;
  const shared = {
    ...job,
    blocks: {
      ...blocks,
      dishes: [{ ...blocks!.dishes![0]!, slots: "13E 19E", off_focus: 1 }],
      heads: [first!, { ...second!, dish: "D1" }],
    },
  };
  const cells = boxesOf(recalculate(layOut(multiRoom, shared))).map(({ sheet, at }) => `${sheet}!${at}`);
  expect(new Set(cells).size).toBe(cells.length);
});

describe("what a card says", () => {
  const words = (card: Card): string => card.map(({ value }) => String(value ?? "")).join("\n");
  const named = (cards: readonly Card[], title: string): string =>
    words(cards.find((card) => titleOf(card) === title)!);
  const two = book("6-two-dishes");
  const annexe = book("4-annexe");

  // Bands and centres from the fixture's answers and its band plan.
  test("an outlet's user bands with their centres, its port and its output", () => {
    expect(named(outletCards(two), "Outlet 1-4")).toMatch(/user band 9: 1583 MHz; 10: 1659 MHz/);
    expect(named(outletCards(two), "Outlet 1-1")).toMatch(/user band 5: 1279 MHz/);
    expect(named(outletCards(two), "Outlet 2-1")).toMatch(/head unit H1, output 2/);
    expect(named(outletCards(two), "Outlet 1-4")).toMatch(/from S11, port 4: drop, 19\.0 m/);
  });

  test("a head unit's dish, supply and volts in the three states; nobody says how it is read while pointed", () => {
    const card = named(headCards(annexe), "Head unit H1");
    expect(card).toMatch(/On dish D1 0\.90 m, 97W/);
    expect(card).toMatch(/Supply inserter 24 V; 15\.0 m trunk, copper/);
    for (const line of [/volts, all off\n23\.9/, /volts, all on\n23\.9/, /volts, \w+ on alone\n23\.9/])
      expect(card).toMatch(line);
    expect(card).toMatch(/While aiming: ask the maker how it is read\./);
  });

  test("what its maker says of aiming, where Parts has it", () => {
    const job = jobOnSheets("4-annexe");
    const units = job.blocks!.units!.map((row) => ({
      ...row,
      aiming: "passes the slot itself until a receiver commands",
    }));
    const [card] = headCards(recalculate(layOut(multiRoom, { ...job, blocks: { ...job.blocks, units } })));
    expect(words(card!)).toMatch(/While aiming: passes the slot itself until a receiver\ncommands\./);
  });

  test("a dish with a feed of its own: size, slots, feeders, and that its conductors are to be asked for", () => {
    const card = named(dishCards(two), "Dish D1");
    for (const line of [
      /1\.10 m, for 97W 113W/,
      /Feed: wideband feed; 1\.5 dB off the focus/,
      /4 to H1: drop, copper, 16\.0 m/,
      /none on Bonding: ask before the dish is fitted/,
      /Overhead lines/,
      /local code and licensed practice decide/,
    ])
      expect(card).toMatch(line);
    expect(named(headCards(two), "Head unit H1")).toMatch(/2 from D2: drop, copper, 21\.0 m/);
  });
});
