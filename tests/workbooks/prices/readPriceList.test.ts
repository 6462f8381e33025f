/** How a price list is read: each value worked out by hand from the line as it is typed. */
import type { ImportedTable } from "../../../src/workbooks/imported/table";
import type { ListedPrice, PriceAnswers, PriceList } from "../../../src/workbooks/prices/list";
import { readPriceList } from "../../../src/workbooks/prices/readPriceList";
import { rememberedAnswers, rememberedText } from "../../../src/workbooks/prices/remembered";
import { isoDate, sheetDate } from "../../../src/workbooks/sheetDate";

const TODAY = sheetDate(2026, 11, 29);

const tableOf = (text: string): ImportedTable => ({
  source: "text",
  lines: text
    .trim()
    .split("\n")
    .map((line, index) => ({ line: index + 1, cells: line.split(";").map((cell) => cell.trim()) })),
});

const read = (text: string, answers: PriceAnswers = {}): PriceList =>
  readPriceList(tableOf(text), { currency: "EUR", today: TODAY }, answers);

const only = (list: PriceList): ListedPrice => {
  expect(list.lines).toHaveLength(1);
  return list.lines[0]!;
};

describe("numbers by the whole column", () => {
  const HEAD = "Article;Description;Unit;Price EUR";
  test.each([
    ["decimal commas elsewhere make a point a thousand", ["1.234", "12,50"], [1234, 12.5]],
    ["decimal points elsewhere make a comma a thousand", ["1,234", "12.50"], [1234, 12.5]],
    ["blanks and apostrophes stand between thousands", ["1 234,50", "1'234,50"], [1234.5, 1234.5]],
    ["a leading nought is no thousand", ["0,395", "1,234"], [0.395, 1.234]],
    ["no minor units", ["12.-", "7,--"], [12, 7]],
  ])("%s", (_, written, values) => {
    const list = read([HEAD, ...written.map((one, at) => `A${at};part ${at};pc;${one}`)].join("\n"));
    expect(list.lines.map(({ perUnit }) => perUnit)).toEqual(values);
    expect(list.lines.flatMap(({ doubts }) => doubts)).toEqual([]);
  });

  test("where no cell tells, the ones that can be two numbers are asked, and an answer settles them", () => {
    const text = `${HEAD}\nA1;one;pc;1.234\nA2;two;pc;7`;
    const list = read(text);
    expect(list.lines[0]!.doubts).toEqual([
      "“1.234” can be 1234 or 1.234, and the column does not tell. Say which sign stands before decimals.",
    ]);
    expect(list.lines[1]).toMatchObject({ perUnit: 7, doubts: [] });
    expect(read(text, { decimal: "," }).lines[0]).toMatchObject({ perUnit: 1234, doubts: [] });
    expect(read(text, { decimal: "." }).lines[0]).toMatchObject({ perUnit: 1.234, doubts: [] });
  });
});

describe("what a price is for", () => {
  test.each([
    ["a head of 100 m", "Art.-Nr.;Bezeichnung;ME;VPE;Preis EUR/100 m\nK1;Kabel;m;250;39,00", 0.39, 250, 97.5],
    ["a column of price units", "Code;Item;Unit;Per;Price EUR\nS1;splitter;EA;C;1250.00", 12.5, 1, 12.5],
    ["a cell", "Code;Item;Unit;Price EUR\nK1;cable;m;42,00 €/100 m", 0.42, undefined, undefined],
    ["a unit that is a reel", "Code;Item;Sold as;Price EUR\nK1;cable;100m reel;37.50", 0.375, 100, 37.5],
    ["kilometres", "Code;Item;Unit;Price EUR\nK1;cable;m;1.720,00 €/km", 1.72, undefined, undefined],
    [
      "a pack's price alone",
      "Réf.;Désignation;Unité;Cond.;Prix la boîte €\nF6;fiche;pièce;100;42,00",
      0.42,
      100,
      42,
    ],
    [
      "Dutch heads",
      "Artikelnr;Omschrijving;Eenheid;Verpakking;Stuksprijs EUR\nW1;doos;stuk;10;4,15",
      4.15,
      10,
      41.5,
    ],
    [
      "a list price and its discount",
      "Código;Descripción;Ud.;P.V.P. EUR;Dto. %\nS4;derivador;ud;19,00;35",
      12.35,
      1,
      12.35,
    ],
    [
      "a heading above",
      "Code;Item;Unit;Price EUR\nCables, price per 100 m;;;\nK1;cable;m;39.00",
      0.39,
      undefined,
      undefined,
    ],
  ])("%s", (_, text, perUnit, pack, perPack) => {
    const line = only(read(text));
    expect(line.doubts).toEqual([]);
    expect([line.perUnit, line.pack, line.perPack]).toEqual([perUnit, pack, perPack]);
  });

  test("a reel whose price may be for a metre or for all of it is asked", () => {
    const text = "Code;Item;Price EUR\nK1;cable, 100 m reel;39.00";
    expect(only(read(text)).doubts).toEqual([
      "Nothing says whether 39 is for one or for the 100 m of a reel. Say what the prices are for.",
    ]);
    expect(only(read(text, { basis: "pack" }))).toMatchObject({ perUnit: 0.39, perPack: 39, doubts: [] });
    expect(only(read(text, { basis: "unit" }))).toMatchObject({ perUnit: 39, perPack: 3900, doubts: [] });
  });

  test("feet stay feet", () => {
    expect(only(read("Item;Description;Price USD;Per;UOM\n1;drop;118.00;M;FT"))).toMatchObject({
      unit: "ft",
      perUnit: 0.118,
      currency: "USD",
    });
  });

  test.each([
    ["a pack of 0", "A;x;pc;0;4,00;4,00", "A pack of 0 can't be"],
    [
      "a pack that its price does not fit",
      "A;x;pc;10;4,15;45,00",
      "10 at 4.15 are 41.5, and the price of the pack says 45",
    ],
    ["a formula", "A;x;pc;1;=1+1;4,00", "“=1+1” is a formula, and formulas of a text file are not computed"],
    ["a price of 0", "A;x;pc;1;0,00;0,00", "The price is 0"],
    ["less than nothing", "A;x;pc;1;-4,00;4,00", "less than nothing"],
    ["an unknown unit", "A;x;gross;1;4,00;4,00", "“gross” is no unit that is known"],
    ["no price", "A;x;pc;1;;", "The line has no price"],
    ["more cells than heads", "A;x;pc;1;4,00;4,00;7", "more cells than the head row"],
    ["a spoilt number", "1,2E+05;x;pc;1;4,00;4,00", "“1,2E+05” is what a workbook program made of it"],
  ])("%s is asked in a sentence", (_, line, said) => {
    const found = only(read(`Article;Description;Unit;Pack;Price/unit EUR;Price/pack EUR\n${line}`));
    expect(found.doubts.join(" ")).toContain(said);
  });
});

describe("currency, tax and discount", () => {
  test("a list that names none is asked once", () => {
    const text = "Article;Description;Price\nA;x;4,00\nB;y;5,50";
    expect(read(text).questions.map(({ id }) => id)).toEqual(["currency"]);
    expect(read(text, { currency: "EUR" }).questions).toEqual([]);
    const known = readPriceList(tableOf(text), { currency: "EUR", supplierCurrency: "CHF", today: TODAY });
    expect(known).toMatchObject({ questions: [], currency: "CHF" });
  });

  test("prices with tax are asked, and worked out without it once it is said", () => {
    const text = "Preise in EUR inkl. 19 % MwSt.;;\nArt.-Nr.;Artikel;Preis\nA;Dose;11,90";
    expect(read(text).questions.map(({ id }) => id)).toEqual(["tax"]);
    expect(only(read(text, { tax: 0.19 }))).toMatchObject({ perUnit: 10, doubts: [] });
  });

  test("list prices without a discount are asked", () => {
    const text = "Article;Description;List price EUR\nA;plate;10,00";
    expect(read(text).questions.map(({ id }) => id)).toEqual(["discount"]);
    expect(only(read(text, { discount: 0.4 }))).toMatchObject({ perUnit: 6 });
  });
});

describe("an article that stands twice", () => {
  const HEAD = "Article;Description;Unit;Price EUR;Valid from;Valid to";
  const of = (...lines: string[]): readonly ListedPrice[] => read([HEAD, ...lines].join("\n")).lines;

  test("the newest that is valid is taken, and said", () => {
    const [old, now, next] = of(
      "A;x;pc;4,00;01.01.2025;31.12.2025",
      "A;x;pc;4,20;01.01.2026;31.12.2026",
      "A;x;pc;4,40;01.01.2027;31.12.2027",
    );
    expect(old!.left).toContain("this one, 4, ended on 2025-12-31");
    expect(now).toMatchObject({ perUnit: 4.2, doubts: [] });
    expect(now!.note).toContain("It stands 3 times");
    expect(next!.left).toContain("this one, 4.4, holds only from 2027-01-01");
  });

  test("equal dates and other prices are asked, both", () => {
    for (const line of of("A;x;pc;4,00;;", "A;x;pc;4,20;;"))
      expect(line.doubts.join()).toContain("no date says which is newer");
  });

  test("the same price again is passed over", () => {
    const [first, again] = of("A;x;pc;4,00;;", "A;x;pc;4,00;;");
    expect(first!.doubts).toEqual([]);
    expect(again!.left).toBe("The same article and price stand on line 2.");
  });

  test("a price whose last day is over is asked", () => {
    const [line] = of("A;x;pc;4,00;01.01.2024;31.12.2024");
    expect(line).toMatchObject({ expired: true });
    expect(line!.doubts.join()).toContain("Its price ended on 2024-12-31");
  });
});

test("dates by the whole column: one that can only be so settles the others", () => {
  const list = read("Article;Description;Price EUR;Valid to\nA;x;4.00;03/04/2027\nB;y;5.00;12/31/2027");
  expect(list.lines.map(({ until }) => until && isoDate(until))).toEqual(["2027-03-04", "2027-12-31"]);
});

test("a column that may hold packs, under a head that nobody here knows, is asked for and never dropped", () => {
  const text = "Article;Description;Unit;Kpl;Price EUR\nA;clip;pc;100;0,04\nB;plug;pc;50;0,40";
  const list = read(text);
  expect(list.questions.map(({ id }) => id)).toEqual(["columns"]);
  expect(list.questions[0]!.sentence).toContain("“Kpl” can be what is in a pack");
  const columns = new Map([[3, "pack"]] as const);
  expect(read(text, { columns }).lines[0]).toMatchObject({ perUnit: 0.04, pack: 100, perPack: 4 });
});

test("a price of a later day is no scale, and which of two is meant is asked", () => {
  const list = read("Article;Description;Price EUR;New price EUR from 1.1.2027\nA;x;4,00;4,20");
  expect(list.questions.map(({ id }) => id)).toEqual(["columns"]);
});

test("what is discontinued or on request is passed over with its words", () => {
  const list = read("Article;Description;Price EUR;Status\nA;x;POA;\nB;y;;discontinued\nC;z;7,00;");
  expect(list.lines.map(({ state, left }) => [state, left])).toEqual([
    ["request", "It has no price but “POA”: ask for it."],
    ["discontinued", "The supplier has it no longer: “discontinued”."],
    [undefined, undefined],
  ]);
});

test("an empty list, and one without a column of prices, are told in a sentence", () => {
  expect(read("").questions[0]!.sentence).toContain("The file is empty");
  expect(read("Article;Description\nA;x").questions.some(({ id }) => id === "columns")).toBe(true);
});

describe("how a supplier's list is read is kept as a line of text", () => {
  const text = "Nr;Was;Einheit;Preis A;Preis B\n1;Dose;St;4,00;5,00";
  test("and read again as it was said", () => {
    const chosen = new Map([
      [0, "article"],
      [1, "description"],
      [2, "unit"],
      [3, ""],
      [4, "perUnit"],
    ] as const);
    const answers: PriceAnswers = { columns: chosen, currency: "EUR", decimal: ",", discount: 0.1 };
    const first = read(text, answers);
    expect(only(first)).toMatchObject({ perUnit: 4.5, doubts: [] });
    const kept = rememberedText(first.columns, answers);
    expect(kept).toBe(
      "article number = Nr; description = Was; unit = Einheit; price per unit = Preis B; prices in = EUR; decimals = ,; less = 0.1",
    );
    const again = rememberedAnswers(kept, read(text).columns);
    expect(again.missing).toEqual([]);
    expect(read(text, again.answers).lines).toEqual(first.lines);
  });

  test("a head that the next list lacks is named, and the rest is guessed", () => {
    const other = read("Nr;Was;Preis\n1;Dose;4,00");
    expect(rememberedAnswers("article number = Nr; price per unit = Preis B", other.columns).missing).toEqual(
      ["Preis B"],
    );
  });
});
