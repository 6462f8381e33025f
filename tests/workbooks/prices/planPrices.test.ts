/** A price list merged: what is written, worked out by hand; which offer is in use, held to the workbook's own sheet. */
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { withEntries } from "../../../src/hosts/headless/withEntries";
import { entriesOf } from "../../../src/standards/entries";
import { checkLines } from "../../../src/workbooks/checkLines";
import type { Book } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import type { ImportedTable } from "../../../src/workbooks/imported/table";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedColumn } from "../../../src/workbooks/named";
import { nearestParts } from "../../../src/workbooks/prices/nearestParts";
import {
  planPrices,
  type NewPlace,
  type PriceChoices,
  type PricePlan,
} from "../../../src/workbooks/prices/planPrices";
import { priceBook, type PriceBook } from "../../../src/workbooks/prices/priceBook";
import { pricesOf } from "../../../src/workbooks/prices/pricesOf";
import { rememberedText } from "../../../src/workbooks/prices/remembered";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { standardsExample } from "../../../src/workbooks/standards/demonstration";
import { standardsWorkbook } from "../../../src/workbooks/standards/definition";

const TODAY = sheetDate(2026, 11, 29);
const NEXT_YEAR = sheetDate(2027, 12, 31);
const FIRST = "first supplier (demonstration)";
const SECOND = "second supplier (demonstration)";

const tableOf = (text: string): ImportedTable => ({
  source: "text",
  lines: text
    .trim()
    .split("\n")
    .map((line, index) => ({ line: index + 1, cells: line.split(";").map((cell) => cell.trim()) })),
});

const NONE: PriceChoices = {
  taken: new Map(),
  placed: new Map(),
  pinned: new Set(),
  ended: new Set(),
  until: NEXT_YEAR,
};

function planned(
  book: PriceBook,
  supplier: string,
  text: string,
  choices: Partial<PriceChoices> = {},
): PricePlan {
  const found = pricesOf({ tables: [tableOf(text)], chosen: 0, sheets: [] }, book, supplier, {}, TODAY);
  return planPrices(
    book,
    found.comparison,
    { ...NONE, ...choices },
    {
      supplier,
      file: "list.csv",
      today: TODAY,
      columns: rememberedText(found.list.columns, found.answers),
    },
  );
}

const placedAt = (line: number, place: NewPlace): Partial<PriceChoices> => ({
  placed: new Map([[line, place]]),
  taken: new Map([[line, true]]),
});

const standardsOf = (inputs: JobInputs): PriceBook => priceBook(inputs, true, TODAY);
const standards = standardsOf(standardsExample);
const rowsOf = ({ inputs }: { readonly inputs: JobInputs }, block: string) => inputs.blocks?.[block] ?? [];
const partIn = (plan: PricePlan, list: string, name: string) =>
  rowsOf(plan, list).find((row) => row.name === name)!;

const HEAD = "Article;Description;Unit;Pack;Price EUR;Valid to";

describe("a known article", () => {
  const plan = planned(standards, FIRST, `${HEAD}\nK-110;indoor drop;m;100;0,36;31.12.2027`);

  test("its offer has the new price, the part that of its reel", () => {
    // The demonstration's reel of indoor drop is 100 m.
    expect(rowsOf(plan, "offers").filter(({ article }) => article === "K-110")).toEqual([
      expect.objectContaining({
        part: "indoor drop",
        each: 0.36,
        pack: 100,
        pack_price: 36,
        until: NEXT_YEAR,
      }),
    ]);
    expect(partIn(plan, "cables", "indoor drop")).toMatchObject({
      price: 36,
      supplier: FIRST,
      article: "K-110",
      priced: TODAY,
      until: NEXT_YEAR,
    });
    expect(plan.parts).toEqual([
      { part: "indoor drop", list: "cables", before: 38, after: 36, supplier: FIRST, wasSupplier: FIRST },
    ]);
  });

  test("the log has a line, the supplier's row how the list was read, the standards another edition", () => {
    expect(rowsOf(plan, "log").at(-1)).toMatchObject({ date: TODAY, why: "price list list.csv" });
    expect(rowsOf(plan, "suppliers")[0]!.columns).toContain("article number = Article");
    expect(plan.inputs.fields).toMatchObject({ standards_edition: 4, standards_date: TODAY });
  });

  test("nothing else is touched", () => {
    const entries = entriesOf(standardsWorkbook, standards.inputs, plan.inputs);
    const names = new Set(entries.map(({ name }) => name.replace(/_.*/, "")));
    expect([...names].sort()).toEqual(["cables", "log", "offers", "standards", "suppliers"]);
  });
});

describe("two suppliers side by side", () => {
  const text = `${HEAD}\n2210;drop;m;250;0,41;31.12.2027`;
  test("the dearer one is kept, and the part stays with the other", () => {
    const plan = planned(standards, SECOND, text);
    expect(plan.parts).toEqual([]);
    expect(partIn(plan, "cables", "indoor drop")).toMatchObject({ price: 38, supplier: FIRST });
    expect(plan.others).toEqual([
      { part: "indoor drop", supplier: FIRST, price: 38, here: 41, pinned: false },
    ]);
  });

  test("the cheaper one takes the part over", () => {
    const plan = planned(standards, SECOND, text.replace("0,41", "0,35"));
    expect(plan.parts).toEqual([
      { part: "indoor drop", list: "cables", before: 38, after: 35, supplier: SECOND, wasSupplier: FIRST },
    ]);
  });

  test("a pinned one is used though it is dearer", () => {
    const plan = planned(standards, SECOND, text, { pinned: new Set([2]) });
    expect(partIn(plan, "cables", "indoor drop")).toMatchObject({ price: 41, supplier: SECOND });
  });

  test("a part whose price stood on Parts alone keeps that as an offer when another supplier comes", () => {
    const plan = planned(
      standards,
      SECOND,
      `${HEAD}\n77;2-way splitter;pc;1;7,00;31.12.2027`,
      placedAt(2, { part: "2-way splitter" }),
    );
    const both = rowsOf(plan, "offers").filter(({ part }) => part === "2-way splitter");
    expect(both.map(({ supplier, each }) => [supplier, each])).toEqual([
      [FIRST, 7.9],
      [SECOND, 7],
    ]);
    expect(partIn(plan, "passives", "2-way splitter")).toMatchObject({
      price: 7,
      supplier: SECOND,
      article: "77",
    });
  });
});

describe("what is not taken of itself", () => {
  test("a factor of 5 is not, and a tick takes it", () => {
    // Kept at 0.38; five times as much is 1.90.
    const text = `${HEAD}\nK-110;indoor drop;m;100;1,90;31.12.2027`;
    expect(planned(standards, FIRST, text)).toMatchObject({ written: 0, parts: [] });
    expect(planned(standards, FIRST, text).inputs).toBe(standards.inputs);
    const ticked = planned(standards, FIRST, text, { taken: new Map([[2, true]]) });
    expect(rowsOf(ticked, "offers").find(({ article }) => article === "K-110")).toMatchObject({
      pack_price: 190,
    });
    // So the second supplier's at 41 is the cheaper one now.
    expect(partIn(ticked, "cables", "indoor drop")).toMatchObject({ price: 41, supplier: SECOND });
    expect(planned(standards, FIRST, text.replace("1,90", "1,89"))).toMatchObject({ written: 1 });
  });

  test("another currency is refused, tick or none", () => {
    const text = `${HEAD.replace("EUR", "GBP")}\nK-110;indoor drop;m;100;0,36;31.12.2027`;
    expect(planned(standards, FIRST, text, { taken: new Map([[2, true]]) })).toMatchObject({ written: 0 });
  });

  test("nothing at all while the list asks something", () => {
    const text = `${HEAD.replace("Price EUR", "List price EUR")}\nK-110;indoor drop;m;100;0,36;31.12.2027`;
    expect(planned(standards, FIRST, text, { taken: new Map([[2, true]]) })).toMatchObject({ written: 0 });
  });

  test("a cable priced by the piece, without a length, has no place", () => {
    const text = `${HEAD}\nX;drop;pc;1;36,00;31.12.2027`;
    const plan = planned(standards, FIRST, text, placedAt(2, { part: "indoor drop" }));
    expect(plan.written).toBe(0);
    expect(plan.refused[0]!.said).toContain("is a cable, and its line is priced by the piece");
  });
});

test("feet become metres: 1,000 ft at 118 are 304.8 m, and a metre 0.387139", () => {
  const text = "Article;Description;Unit;Pack;Price EUR\nF1;drop;ft;1000;0.118";
  const plan = planned(standards, SECOND, text, placedAt(2, { part: "indoor drop" }));
  const row = rowsOf(plan, "offers").find(({ article }) => article === "F1")!;
  expect(row).toMatchObject({ unit: "m", pack: 304.8, pack_price: 118 });
  expect(Number(row.each)).toBeCloseTo(0.118 / 0.3048, 9);
});

test("a new part goes into the list that is chosen, with its offer", () => {
  const text = `${HEAD}\nS-16;16-way splitter;pc;1;41,00;31.12.2027`;
  const plan = planned(standards, FIRST, text, placedAt(2, { list: "passives", name: "16-way splitter" }));
  expect(plan).toMatchObject({ newParts: 1, written: 1 });
  expect(partIn(plan, "passives", "16-way splitter")).toMatchObject({
    price: 41,
    supplier: FIRST,
    article: "S-16",
  });
});

test("an article that the list has no more: its offer ends where a person says so", () => {
  const plan = planned(standards, FIRST, `${HEAD}\nK-110;indoor drop;m;100;0,36;31.12.2027`, {
    ended: new Set(["4-way splitter"]),
  });
  expect(plan.ended).toBe(1);
  expect(rowsOf(plan, "offers").find(({ article }) => article === "S-04")).toMatchObject({
    until: TODAY - 1,
  });
  // The second supplier's at 13.20 is the one that holds.
  expect(partIn(plan, "passives", "4-way splitter")).toMatchObject({ price: 13.2, supplier: SECOND });
});

test("a line without an article number is found again by its words", () => {
  const text = "Description;Unit;Price EUR\nparty lead;pc;3,00";
  const first = planned(standards, SECOND, text, placedAt(2, { list: "fittings", name: "lead" }));
  const again = pricesOf(
    { tables: [tableOf(text.replace("3,00", "3,30"))], chosen: 0, sheets: [] },
    standardsOf(first.inputs),
    SECOND,
    {},
    TODAY,
  );
  expect(again.comparison.lines[0]).toMatchObject({ kind: "changed", before: 3, now: 3.3 });
});

test("a job's own parts take the prices, and nothing else of it changes", () => {
  const book = priceBook(
    {
      ...guestHouse,
      fields: { ...guestHouse.fields, site_currency: "EUR" },
      blocks: {
        ...guestHouse.blocks,
        cables: guestHouse.blocks!.cables!.map((row) => ({
          ...row,
          supplier: FIRST,
          article: `K ${row.name}`,
        })),
      },
    },
    false,
    TODAY,
  );
  const [cable] = book.parts;
  const plan = planned(book, FIRST, `${HEAD}\nK ${cable!.name};x;m;${cable!.amount};0,50;31.12.2027`);
  expect(plan.parts.map(({ part, after }) => [part, after])).toEqual([[cable!.name, cable!.amount * 0.5]]);
  const names = new Set(
    entriesOf(multiRoom, book.inputs, plan.inputs).map(({ name }) => name.replace(/_.*/, "")),
  );
  expect([...names].sort()).toEqual(["cables", "log"]);
});

describe("in the workbook", () => {
  test("the sheet says the same of what is in use, and no check fails for it", () => {
    const plan = planned(
      standards,
      SECOND,
      `${HEAD}\n2210;drop;m;250;0,35;31.12.2027\n5104;4-way;pc;1;12,00;31.12.2027\n7001;outlet;pc;10;6,10;31.12.2027`,
    );
    const before = recalculate(layOut(standardsWorkbook, standardsExample));
    const after = withEntries(
      before,
      standardsWorkbook,
      entriesOf(standardsWorkbook, standards.inputs, plan.inputs),
    ) as Book;
    const [part, supplier, word, price, now] = ["part", "supplier", "word", "price", "now"].map((key) =>
      namedColumn(after, `offers_${key}`),
    );
    const used = part!.flatMap((name, row) =>
      word![row] === "in use" ? [[name, supplier![row], price![row], now![row]]] : [],
    );
    // Worked by hand: 0.35 × 100 m; 12.00; the outlet stays pinned to the first supplier at 6.40.
    expect(used).toEqual(
      expect.arrayContaining([
        ["indoor drop", SECOND, 35, 35],
        ["4-way splitter", SECOND, 12, 12],
        ["single outlet", FIRST, 6.4, 6.4],
      ]),
    );
    const failing = checkLines(after).filter(({ result }) => result !== "ok" && result !== "note");
    expect(failing).toEqual([]);
  });
});

describe("nearest parts", () => {
  const names = [
    "2-way splitter",
    "4-way splitter",
    "6-way splitter",
    "tap 10 dB, 1-way",
    "indoor drop",
    "single outlet",
  ];
  test.each([
    ["Splitter 6-way, power passing", ["6-way splitter"]],
    ["Splitter 8-way", []],
    ["Splitters 4 way", ["4-way splitter"]],
    ["Wall plate single outlet", ["single outlet"]],
    ["Tap 12 dB, 1-way", []],
    ["Indoor drop, series 6", ["indoor drop"]],
  ])("%s", (said, wanted) => {
    expect(nearestParts(said, names)).toEqual(wanted);
  });
});
