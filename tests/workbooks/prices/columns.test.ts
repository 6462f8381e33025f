/**
 * Which column of a price list is what, by its head and by what stands below it, and which of several prices is used.
 * Heads and cells are invented; the letters of a list are its columns in order: what a buyer would say each one is.
 */
import type { ImportedTable } from "../../../src/workbooks/imported/table";
import { mappedColumns, COLUMN_MEANINGS } from "../../../src/workbooks/prices/mappedColumns";
import type { ColumnKey } from "../../../src/workbooks/prices/headMeaning";
import { findColumns, headName, type PriceHead } from "../../../src/workbooks/prices/priceColumns";
import { choosePrices, type PriceChoice } from "../../../src/workbooks/prices/priceChoice";
import type { PriceAnswers } from "../../../src/workbooks/prices/list";
import { priceTables } from "../../../src/workbooks/prices/priceTable";
import { read, tableOf } from "./typedLists";

const found = (
  text: string,
  ...rest: [Parameters<typeof findColumns>[2]?, Parameters<typeof findColumns>[3]?]
): PriceHead =>
  findColumns(
    tableOf(text).lines.filter(({ cells }) => cells.some((cell) => cell !== "")),
    "EUR",
    ...rest,
  );
const keys = (
  text: string,
  ...rest: [Parameters<typeof findColumns>[2]?, Parameters<typeof findColumns>[3]?]
): string =>
  found(text, ...rest)
    .columns.map(({ key }) => key ?? "-")
    .join(" ");

describe("the head row", () => {
  const LINE = "K-110;drop;m;0,39";
  const HEAD = "Article;Description;Unit;Price";
  test("stands first, or below what else is there", () => {
    expect(found(`${HEAD}\n${LINE}`)).toMatchObject({
      body: 1,
      known: true,
      line: { line: 1 },
      perhapsPacks: [],
    });
    expect(found(`Some Trade Ltd\nMain Street 1\n${HEAD}\n${LINE}`)).toMatchObject({
      body: 3,
      line: { line: 3 },
    });
  });

  test("within the first 60 filled lines, and no further down", () => {
    const above = (count: number): PriceHead => found(`${"terms\n".repeat(count)}${HEAD}\n${LINE}`);
    expect(above(59)).toMatchObject({ known: true, body: 60 });
    expect(above(60).known).toBe(false);
  });

  test.each([
    ["an article and a price", "Article;Price\nK-110;0,39", true],
    ["a description and a price", "Description;Price\ndrop;0,39", true],
    ["no price", "Article;Description\nK-110;drop", false],
    ["neither article nor description", "Unit;Price\nm;0,39", false],
    ["a figure among the heads", "Article;Price;7\nK-110;0,39;1", false],
  ])("needs both: %s", (_, text, known) => {
    expect(found(text).known).toBe(known);
  });

  test("a long sentence is no head", () => {
    const long = `Price ${"and more ".repeat(9)}`;
    expect(long.trim().length).toBeGreaterThan(80);
    expect(keys(`Article;Description;${long};Price\nK-110;drop;x;0,39`)).toBe("article description - price");
    // 80 signs are still one.
    expect(keys(`Article;Price;Unit ${"x".repeat(75)}\nK-110;0,39;m`)).toMatch(/unit$/);
  });

  test("units and currencies may stand in a line below the heads", () => {
    const second = found("Article;Description;Price;Pack\n;;EUR/100 m;pcs\nK-110;drop;39,00;100");
    expect(second.body).toBe(2);
    expect(second.columns.map(({ head }) => head)).toEqual([
      "Article",
      "Description",
      "Price EUR/100 m",
      "Pack pcs",
    ]);
    expect(second.columns[2]).toMatchObject({
      key: "perUnit",
      meaning: { basis: { quantity: 100, unit: "m" }, currencies: ["EUR"] },
    });
    expect(found("Article;Description;Price\n;(in short);EUR\nK-110;drop;39,00").body).toBe(2);
  });

  test.each([
    ["an article", "Article;Description;Price\nK-110;;EUR\nK-120;drop;39,00"],
    ["a description", "Article;Description;Price\n;drop;EUR\nK-120;drop;39,00"],
    ["a price", "Article;Description;Price\n;;39,50\nK-120;drop;39,00"],
    ["nothing that says anything", "Article;Description;Price\n;;lovely\nK-120;drop;39,00"],
  ])("a line below with %s is a line of the list", (_, text) => {
    expect(found(text)).toMatchObject({ body: 1, known: true });
  });

  test("a number of a workbook below the heads is no second head", () => {
    const lines = [
      { line: 1, cells: ["Article", "Description", "Price"] },
      { line: 2, cells: ["", "", { number: 100, shown: "100 m" }] },
    ];
    expect(findColumns(lines, "EUR").body).toBe(1);
  });

  test("two lines may make one head, the upper spread over the columns below it", () => {
    const both = found("Item;;Trade;\nNo.;Text;Price;Pack\nK-110;drop;39,00;100");
    expect(both).toMatchObject({ known: true, body: 2 });
  });

  test("words above figures are heads in a language that nobody here knows", () => {
    const unknown = found("Foo;Bar;Baz\nK-110;drop cable;0,39\nK-120;other cable;0,45");
    expect(unknown).toMatchObject({ body: 1, known: false, line: { line: 1 } });
    expect(unknown.columns.map(({ head }) => head)).toEqual(["Foo", "Bar", "Baz"]);
    // A line of words two columns narrower is a title.
    expect(found("Foo;Bar;;\nK-110;drop cable;0,39;7").line).toBeUndefined();
    expect(found("Foo;Bar;Baz;\nK-110;drop cable;0,39;7").line).toMatchObject({ line: 1 });
  });

  test("a list that begins with figures has no heads at all", () => {
    const none = found("K-110;drop cable;0,39;1\nFoo;Bar;Baz;Boo\nK-120;other cable;0,45;1");
    expect(none.line).toBeUndefined();
    expect(none.columns.map(({ head }) => head)).toEqual(["column 1", "column 2", "column 3", "column 4"]);
  });

  test("a head is compared without case, accents and kinds of blank", () => {
    expect(headName("Désignation  Produit")).toBe(headName("designation\u00a0produit"));
  });
});

describe("heads that can be read two ways", () => {
  test.each([
    [
      "an item with numbers below it",
      "Item;Description;Price\nK-110;drop;0,39\nK-120;trunk;0,45",
      "article description price",
    ],
    [
      "an item with words below it, beside numbers",
      "Code;Item;Price\nK-110;drop;0,39\nK-120;trunk;0,45",
      "article description price",
    ],
    ["an item alone with codes", "Item;Price\nK-110;0,39\nK-120;0,45", "article price"],
    ["an item alone with words", "Item;Price\ndrop cable;0,39\ntrunk cable;0,45", "description price"],
    ["an item beside both", "Code;Item;Description;Price\nK-110;x;drop;0,39", "article - description price"],
    ["a pack with units", "Article;Pack;Price\nK-110;m;0,39\nK-120;pc;0,45", "article unit price"],
    [
      "a pack with units before the unit",
      "Article;Pack;Unit;Price\nK-110;m;m;0,39\nK-120;pc;pc;0,45",
      "article - unit price",
    ],
    [
      "a pack with units beside the unit",
      "Article;Unit;Pack;Price\nK-110;m;m;0,39\nK-120;pc;pc;0,45",
      "article unit - price",
    ],
    ["a pack with quantities", "Article;Pack;Price\nK-110;100 m;0,39\nK-120;10;0,45", "article pack price"],
    ["a unit with quantities", "Article;Unit;Price\nK-110;100;0,39\nK-120;10;0,45", "article pack price"],
    [
      "a unit with quantities beside the pack",
      "Article;Unit;Pack;Price\nK-110;100;5;0,39\nK-120;10;5;0,45",
      "article - pack price",
    ],
    [
      "a unit with quantities beside the price unit",
      "Article;Unit;PE;Price\nK-110;100;5;0,39\nK-120;10;5;0,45",
      "article - per price",
    ],
    [
      "a price unit with prices",
      "Article;Per;Price\nK-110;0,39;0,49\nK-120;0,45;0,55",
      "article price price",
    ],
    ["a pack with prices", "Article;Price;Pack\nK-110;0,39;39,50\nK-120;0,45;45,50", "article price perPack"],
    [
      "prices that are barcodes",
      "Article;Price;Price EUR\nK-110;4012345678901;0,39\nK-120;4012345678902;0,45",
      "article - price",
    ],
    [
      "prices that are long numbers of eight",
      "Article;Price;Price EUR\nK-110;40123456;0,39\nK-120;40123457;0,45",
      "article - price",
    ],
    [
      "prices of seven digits are prices",
      "Article;Price;Price EUR\nK-110;4012345;0,39\nK-120;4012346;0,45",
      "article price price",
    ],
    ["a second unit", "Article;Unit;UoM;Price\nK-110;m;m;0,39", "article unit - price"],
    ["a second price", "Article;Price;Net price\nK-110;0,39;0,29", "article price price"],
  ])("%s", (_, text, wanted) => {
    expect(keys(text)).toBe(wanted);
  });

  test("eight of ten cells decide what a column is", () => {
    const of = (units: number): string =>
      keys(
        `Article;Pack;Price\n${Array.from({ length: 10 }, (_, at) => `K-${at};${at < units ? "m" : "x y"};0,39`).join("\n")}`,
      );
    expect(of(8)).toBe("article unit price");
    expect(of(7)).toBe("article pack price");
  });
});

describe("heads that nobody here knows", () => {
  const lines = (cell: (at: number) => string): string =>
    Array.from({ length: 10 }, (_, at) => `K-${at};${cell(at)};0,39`).join("\n");
  test.each<[string, (at: number) => string, string]>([
    ["units", () => "m", "article unit price"],
    ["units in eight of ten", (at) => (at < 8 ? "m" : "zz"), "article unit price"],
    ["units in seven of ten", (at) => (at < 7 ? "m" : "zz"), "article - price"],
    ["words with blanks", (at) => `drop cable ${at}`, "article description price"],
    [
      "words with blanks in half of them",
      (at) => (at < 5 ? "drop cable" : "drop"),
      "article description price",
    ],
    ["words with blanks in fewer", (at) => (at < 4 ? "drop cable" : "drop"), "article - price"],
    ["currencies", () => "GBP", "article currency price"],
    ["currencies in eight of ten", (at) => (at < 8 ? "GBP" : "zz"), "article currency price"],
    ["currencies in seven of ten", (at) => (at < 7 ? "GBP" : "zz"), "article - price"],
    ["nothing", () => "", "article - price"],
  ])("%s", (_, cell, wanted) => {
    expect(keys(`Article;Frob;Price\n${lines(cell)}`)).toBe(wanted);
  });

  test("the article, by codes that differ", () => {
    const of = (cell: (at: number) => string): string =>
      keys(
        `Description;Frob;Price\n${Array.from({ length: 10 }, (_, at) => `drop cable;${cell(at)};0,39`).join("\n")}`,
      );
    expect(of((at) => `K-${at}`)).toBe("description article price");
    // Seven of ten that differ are too few, and so are words.
    expect(of((at) => `K-${Math.min(at, 6)}`)).toBe("description - price");
    expect(of((at) => `K-${Math.min(at, 7)}`)).toBe("description article price");
    expect(of((at) => `my word ${at}`)).toBe("description - price");
    expect(of((at) => `${"x".repeat(18)}${at}`)).toBe("description article price");
    expect(of((at) => `${"x".repeat(19)}${at}`)).toBe("description - price");
    // Numbers alone may be anything.
    expect(of((at) => `${100 + at}`)).toBe("description - price");
  });

  test("what is known to be of no use is not guessed", () => {
    expect(keys(`Article;Manufacturer;Price\n${lines((at) => `Some Maker ${at}`)}`)).toBe("article - price");
    expect(keys(`Article;Description;Frob;Price\nK-1;drop;some words;0,39`)).toBe(
      "article description - price",
    );
  });

  test("whole numbers that may be packs are told where no column has the packs", () => {
    const packs = (heads: string, ...cells: string[]): string[] =>
      found([heads, ...cells.map((cell, at) => `K-${at};${cell};0,39`)].join("\n")).perhapsPacks.map(
        ({ head }) => head,
      );
    expect(packs("Article;Kpl;Price", "100", "50")).toEqual(["Kpl"]);
    expect(packs("Article;Kpl;Price", "100", "100")).toEqual([]);
    expect(packs("Article;Kpl;Price", "100", "")).toEqual([]);
    expect(packs("Article;Kpl;Price", "100", "50", "")).toEqual(["Kpl"]);
    expect(packs("Article;Kpl;Price", "100", "0")).toEqual([]);
    expect(packs("Article;Kpl;Price", "100000", "50")).toEqual([]);
    expect(packs("Article;Weight;Price", "100", "50")).toEqual([]);
    expect(packs("Article;;Price", "100", "50")).toEqual([]);
    expect(packs("Article;Pack;Price", "100", "50")).toEqual([]);
    expect(packs("Article;Kpl;Pack;Price", "100;1", "50;2")).toEqual([]);
    // Nine of ten.
    const ten = (whole: number): string[] =>
      Array.from({ length: 10 }, (_, at) => (at < whole ? `${at + 1}` : "a1"));
    expect(packs("Article;Kpl;Price", ...ten(9))).toEqual(["Kpl"]);
    expect(packs("Article;Kpl;Price", ...ten(8))).toEqual([]);
  });
});

describe("without heads", () => {
  test.each([
    [
      "article, description, unit, price",
      "K1;drop cable;m;0,39\nK2;trunk cable;m;0,45\nK3;cable clip;pc;0,05",
      "article description unit price",
    ],
    [
      "with packs and a currency",
      "K1;drop cable;100;0,39;EUR\nK2;trunk cable;50;0,45;EUR\nK3;cable clip;10;0,05;EUR",
      "article description pack price currency",
    ],
    [
      "two columns of prices are left open",
      "K1;drop cable;0,39;1,39\nK2;trunk cable;0,45;1,45",
      "article description - -",
    ],
    [
      "two columns of whole numbers are left open",
      "K1;drop cable;10;5;0,39\nK2;trunk cable;20;6;0,45",
      "article description - - price",
    ],
    [
      "barcodes are no prices",
      "K1;drop cable;40123456,50;0,39\nK2;trunk cable;40123457,50;0,45",
      "article description - -",
    ],
    [
      "the longer of two columns of words is the description",
      "my drop;indoor drop cable;0,39\nmy trunk;outdoor trunk cable;0,45",
      "- description price",
    ],
  ])("%s", (_, text, wanted) => {
    expect(keys(text)).toBe(wanted);
  });

  test("the body begins with the first line of three cells", () => {
    expect(found("Our list\nK1;drop cable;0,39\nK2;trunk cable;0,45").body).toBe(1);
    expect(found("K1;drop cable;0,39").body).toBe(0);
    expect(found("K1;0,39\nK2;0,45").body).toBe(0);
  });
});

describe("what a person chose, and what the file hides", () => {
  const TEXT = "Article;Description;Price A;Price B\nK-1;drop;0,39;0,45";
  test("a choice goes before what was guessed; blank is not used", () => {
    const chosen = new Map<number, ColumnKey | "">([
      [2, ""],
      [3, "perUnit"],
    ]);
    expect(keys(TEXT, chosen)).toBe("article description - perUnit");
    const [, , dropped] = found(TEXT, chosen).columns;
    expect(dropped).not.toHaveProperty("key");
    expect(dropped).toMatchObject({ index: 2, head: "Price A" });
  });

  test("a hidden column of prices is not used where another is shown", () => {
    expect(keys(TEXT, new Map(), [2])).toBe("article description - price");
    expect(keys(TEXT, new Map(), [2, 3])).toBe("article description price price");
    expect(keys(TEXT, new Map(), [1])).toBe("article description price price");
  });

  test("the table of choices: heads, a few samples of the lines with prices, what each is", () => {
    const table: ImportedTable = tableOf(
      "Our list\nArticle;;Price EUR\nK-1;some words;4,00\nTotal;;4,00\nK-2;some words;5,00\nK-3;others;6,00\nK-4;x;7,00",
    );
    expect(
      mappedColumns(
        read(
          "Our list\nArticle;;Price EUR\nK-1;some words;4,00\nTotal;;4,00\nK-2;some words;5,00\nK-3;others;6,00\nK-4;x;7,00",
        ),
        table,
      ),
    ).toStrictEqual([
      { column: 0, head: "Article", samples: ["K-1", "K-2", "K-3"], key: "article" },
      { column: 1, head: "column B", samples: ["some words", "others", "x"], key: "description" },
      { column: 2, head: "Price EUR", samples: ["4,00", "5,00", "6,00"], key: "price" },
    ]);
    const several = COLUMN_MEANINGS.filter((one) => one.several).map(({ key }) => key);
    expect(several).toEqual(["price", "perUnit", "perPack", "listPrice", "withTax"]);
    expect(COLUMN_MEANINGS[0]).toStrictEqual({ key: "article", name: "Article number" });
  });
});

describe("which of several prices is used", () => {
  const CELLS = ["4,00", "5,00", "6,00", "7,00"];
  const chosen = (
    heads: string,
    answers: PriceAnswers = {},
    currency: string | null = "EUR",
  ): PriceChoice => {
    const own = currency ?? undefined;
    const cells = heads.split(";").map((_, at) => CELLS[at]);
    const { lines } = tableOf(`Article;Text;${heads}\nK-1;drop;${cells.join(";")}`);
    return choosePrices(findColumns(lines, own).columns, own, answers);
  };
  /** Heads of those used, and what is said. */
  const used = (heads: string, answers: PriceAnswers = {}, own: string | null = "EUR") => {
    const { bare, unit, pack, list, notes, questions, withTax } = chosen(heads, answers, own);
    return {
      ...(bare && { bare: bare.head }),
      ...(unit && { unit: unit.head }),
      ...(pack && { pack: pack.head }),
      ...(list && { list: list.head }),
      ...(notes.length > 0 && { notes }),
      ...(questions.length > 0 && { asked: questions.map(({ id }) => id) }),
      ...(withTax && { withTax }),
    };
  };
  const smallest = "the price is that of the smallest quantity";

  test.each<[string, ReturnType<typeof used>]>([
    ["Price", { bare: "Price" }],
    ["Unit price;Pack price", { unit: "Unit price", pack: "Pack price" }],
    [
      "Price EUR;Price GBP",
      { bare: "Price EUR", notes: ["“Price GBP” is not used: its prices are in another currency than EUR."] },
    ],
    [
      "Price GBP;Price EUR",
      { bare: "Price EUR", notes: ["“Price GBP” is not used: its prices are in another currency than EUR."] },
    ],
    [
      "Price GBP;Price USD",
      {
        bare: "Price GBP",
        notes: [
          "“Price USD” is not used: its prices are in another currency than GBP.",
          "None of the columns is in EUR.",
        ],
      },
    ],
    [
      "Price EUR;Price GBP;Price USD",
      {
        bare: "Price EUR",
        notes: ["“Price GBP” and “Price USD” are not used: its prices are in another currency than EUR."],
      },
    ],
    ["1+;10+;100+", { bare: "1+", notes: [`“10+” and “100+” are not used: ${smallest}.`] }],
    [
      "10+;100+",
      {
        bare: "10+",
        notes: [`“100+” is not used: ${smallest}.`, "The smallest quantity with a price is 10."],
      },
    ],
    ["Price;10+", { bare: "Price", notes: [`“10+” is not used: ${smallest}.`] }],
    ["Pack price;1+;10+", { bare: "1+", pack: "Pack price", notes: [`“10+” is not used: ${smallest}.`] }],
    [
      "Price;Price incl. VAT",
      { bare: "Price", notes: ["“Price incl. VAT” is not used: the prices without tax are taken."] },
    ],
    ["Price incl. VAT", { bare: "Price incl. VAT", asked: ["tax"], withTax: true }],
    ["Price;RRP", { bare: "Price", notes: ["“RRP” is not used: it is the price for consumers."] }],
    ["RRP", { list: "RRP", asked: ["discount"] }],
    ["List price;Net price", { bare: "Net price", list: "List price" }],
    ["Price;Net price", { bare: "Net price", list: "Price" }],
    ["Unit price;Net price", { bare: "Net price", unit: "Unit price" }],
    ["List price", { list: "List price", asked: ["discount"] }],
    ["List price;Discount", { list: "List price" }],
    [
      "List price;Catalogue price;Discount",
      {
        list: "List price",
        notes: ["“Catalogue price” is not used: another column has the price before the discount."],
      },
    ],
    ["Price;Discount", { bare: "Price", asked: ["discount"] }],
    ["Net price;Discount", { bare: "Net price" }],
    ["Price;Discount group", { bare: "Price", asked: ["discount"] }],
    ["Net price;Discount group", { bare: "Net price" }],
    ["Price A;Price B", { bare: "Price A", asked: ["columns"] }],
  ])("%s", (heads, wanted) => {
    expect(used(heads)).toEqual(wanted);
  });

  test("what is said of each", () => {
    const said = (heads: string): string => chosen(heads).questions[0]!.sentence;
    expect(choosePrices([], "EUR", {}).questions.map(({ sentence }) => sentence)).toEqual([
      "No column of prices was found. Say which column is the price per unit, or the price per pack or reel.",
    ]);
    expect(said("Price A;Price B")).toBe(
      "“Price A” and “Price B” can each be the price. Choose what each of them is.",
    );
    expect(said("List price")).toBe(
      "“List price” is a price before discount, and no column names the discount. Say what comes off (0 for none).",
    );
    expect(said("List price;RG")).toBe(
      "“List price” is a price before discount, and no column names the discount, only the discount group “RG” without its rate. Say what comes off (0 for none).",
    );
    expect(said("Gross price")).toBe(
      "“Gross price” can be a price with tax, or one before your discount. Say which: the tax that it holds, or the discount that comes off (0 for none).",
    );
    expect(said("Price;RG")).toBe(
      "“RG” names a discount group for each line, and no column its rate: “Price” is before discount. Say what comes off (0 for none), or put the rates into a column of the list.",
    );
    expect(said("Price;Discount")).toBe(
      "“Price” can be before or after “Discount”. Choose “Price before discount” for it, or leave “Discount” unused.",
    );
    expect(said("Price incl. VAT")).toBe(
      "“Price incl. VAT” holds tax (VAT), and costs are kept without. Say which share of tax is in it.",
    );
  });

  test("an answer leaves nothing to ask", () => {
    for (const heads of ["List price", "Gross price", "Price;RG", "Price;Discount", "RRP"])
      expect(chosen(heads, { discount: 0 }).questions).toEqual([]);
    expect(chosen("Price incl. VAT", { tax: 0.2 }).questions).toEqual([]);
  });

  test("without a currency of the workbook's the first column's is taken", () => {
    expect(used("Price GBP;Price EUR", {}, null)).toEqual({
      bare: "Price GBP",
      notes: ["“Price EUR” is not used: its prices are in another currency than GBP."],
    });
  });

  test("the parts of a choice that are not there are absent", () => {
    expect(Object.keys(chosen("Price")).sort()).toEqual(["bare", "notes", "questions", "withTax"]);
    expect(Object.keys(chosen("List price;Discount")).sort()).toEqual([
      "discount",
      "list",
      "notes",
      "questions",
      "withTax",
    ]);
  });
});

describe("which sheet of a file is the list", () => {
  const sheet = (name: string | undefined, text: string): ImportedTable => ({
    ...tableOf(text),
    ...(name !== undefined && { sheet: name }),
  });
  const KNOWN = "Article;Description;Price\nK-1;drop;0,39";
  const WIDER = "K1;drop cable;m;0,39;EUR\nK2;trunk cable;m;0,45;EUR";
  test("one whose head is known goes before any that is guessed", () => {
    const tables = [sheet("Notes", "hello"), sheet("Old", WIDER), sheet("New", KNOWN), sheet("Newer", KNOWN)];
    expect(priceTables(tables)).toStrictEqual({ tables, chosen: 2, sheets: ["New", "Newer"] });
  });

  test("where none is known the widest is taken", () => {
    const tables = [sheet("Notes", "hello"), sheet("Old", WIDER)];
    expect(priceTables(tables)).toStrictEqual({ tables, chosen: 1, sheets: [] });
  });

  test("of a text the one way of parting it", () => {
    const [one, other] = [sheet(undefined, "hello"), sheet(undefined, KNOWN)];
    expect(priceTables([one, other])).toStrictEqual({ tables: [other], chosen: 0, sheets: [] });
  });

  test("blank lines above the head do not hide it", () => {
    expect(priceTables([sheet("New", `${";\n".repeat(70)}${KNOWN}`)]).sheets).toEqual(["New"]);
  });
});
