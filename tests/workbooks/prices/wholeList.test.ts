/**
 * What is understood of a price list as a whole: its title and headings, what is asked once, what is passed over and
 * which of several lines of an article counts. Worked out by hand from the list as typed.
 */
import type { ImportedLine } from "../../../src/workbooks/imported/table";
import { waits, type ListedPrice } from "../../../src/workbooks/prices/list";
import { priceLineKind, type PriceLineKind } from "../../../src/workbooks/prices/lineKind";
import { cutCell } from "../../../src/workbooks/prices/priceCell";
import { readPriceList } from "../../../src/workbooks/prices/readPriceList";
import { articleKey, settleTwice } from "../../../src/workbooks/prices/twice";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { read, tableOf, TODAY, without } from "./typedLists";

const LIST = "Article;Description;Unit;Price EUR\nA;plug;pc;4,00\nB;clip;pc;5,50";
/** Without a currency, so that the title has to name it. */
const BARE = "Article;Description;Unit;Price\nA;plug;pc;4,00\nB;clip;pc;5,50";
const asked = (text: string, ...rest: [Parameters<typeof read>[1]?, Parameters<typeof read>[2]?]): string[] =>
  read(text, ...rest).questions.map(({ sentence }) => sentence);
const ids = (text: string, ...rest: [Parameters<typeof read>[1]?, Parameters<typeof read>[2]?]): string[] =>
  read(text, ...rest).questions.map(({ id }) => id);

test("a plain list asks nothing, and nothing is said of it", () => {
  expect(read(LIST)).toStrictEqual({
    source: "text",
    columns: expect.any(Array) as unknown,
    lines: [
      {
        line: 2,
        article: "A",
        description: "plug",
        unit: "pc",
        pack: 1,
        perUnit: 4,
        perPack: 4,
        currency: "EUR",
        doubts: [],
      },
      {
        line: 3,
        article: "B",
        description: "clip",
        unit: "pc",
        pack: 1,
        perUnit: 5.5,
        perPack: 5.5,
        currency: "EUR",
        doubts: [],
      },
    ],
    questions: [],
    currency: "EUR",
    notes: [],
  });
});

test("a file without a filled cell is refused", () => {
  const refused = {
    source: "text",
    columns: [],
    lines: [],
    questions: [
      {
        id: "columns",
        sentence: "The file is empty. Give a price list: a head row and a line for each article.",
      },
    ],
    notes: [],
  };
  for (const text of ["", ";;\n;", "sep=;"]) expect(read(text)).toStrictEqual(refused);
});

test("a first line that names the sign between cells is none of the list's, and only there", () => {
  expect(read(`sep=,\n${LIST}`)).toMatchObject({ questions: [], lines: [{ line: 3 }, { line: 4 }] });
  expect(read(`SEP=|\n${LIST}`).lines).toHaveLength(2);
});

test("a question that only some lines wait for keeps no other from being taken", () => {
  expect(waits([])).toBe(false);
  expect(waits([{ id: "basis", sentence: "", ofLines: true }])).toBe(false);
  expect(
    waits([
      { id: "basis", sentence: "", ofLines: true },
      { id: "tax", sentence: "" },
    ]),
  ).toBe(true);
});

describe("the title", () => {
  test.each<[string, number | undefined, number | undefined]>([
    ["Price list from 01.02.2027", sheetDate(2027, 2, 1), undefined],
    ["Prices valid until 2027-12-31", undefined, sheetDate(2027, 12, 31)],
    ["Preisliste gültig vom 01.02.2027 bis 31.12.2027", sheetDate(2027, 2, 1), sheetDate(2027, 12, 31)],
    ["Tarif du 01/02/2027 au 31/12/2027", sheetDate(2027, 2, 1), sheetDate(2027, 12, 31)],
    ["Tarifa desde 01.02.2027 hasta el 31.12.2027", sheetDate(2027, 2, 1), sheetDate(2027, 12, 31)],
    ["Prijslijst vanaf 01.02.2027 t/m 31.12.2027", sheetDate(2027, 2, 1), sheetDate(2027, 12, 31)],
    ["Prices 1 February 2027", sheetDate(2027, 2, 1), undefined],
    ["Prices February 1st, 2027", sheetDate(2027, 2, 1), undefined],
    ["01.02.2027 - 31.12.2027", sheetDate(2027, 2, 1), sheetDate(2027, 12, 31)],
    ["Valid until end of 2027", undefined, sheetDate(2027, 12, 31)],
    ["Gilt bis Ende 2027", undefined, sheetDate(2027, 12, 31)],
    ["Price list 2027", undefined, undefined],
    ["Call us at any time", undefined, undefined],
  ])("%s", (title, from, until) => {
    const list = read(`${title};;;\n${LIST}`);
    expect(list.questions).toEqual([]);
    expect(Object.hasOwn(list, "from")).toBe(from !== undefined);
    expect(Object.hasOwn(list, "until")).toBe(until !== undefined);
    expect([list.from, list.until]).toEqual([from, until]);
    expect(list.lines.map((line) => [line.from, line.until])).toEqual([
      [from, until],
      [from, until],
    ]);
  });

  test("the first that names a day counts", () => {
    const text = `Prices from 01.02.2027\nFirst printed from 01.01.2020\n${LIST}`;
    expect(read(text).from).toBe(sheetDate(2027, 2, 1));
  });

  test("what stands below the lines counts as well", () => {
    expect(read(`${LIST}\nValid until 31.12.2027;;;`).until).toBe(sheetDate(2027, 12, 31));
  });

  test("a day that can be two is asked, and an order settles it", () => {
    const text = `Prices from 02/03/2027\n${LIST.replace(/,/g, ".")}`;
    expect(asked(text)).toEqual([
      "“02/03/2027” in the title can't be read as one day. Say whether days or months come first.",
    ]);
    expect(read(text, { order: "dmy" })).toMatchObject({ questions: [], from: sheetDate(2027, 3, 2) });
    expect(read(text, { order: "mdy" })).toMatchObject({ questions: [], from: sheetDate(2027, 2, 3) });
    // Nobody who writes decimal commas puts the month first.
    expect(read(`Prices from 02/03/2027\n${LIST}`)).toMatchObject({
      questions: [],
      from: sheetDate(2027, 3, 2),
    });
  });

  test("its currency is the lines', and two of them are asked", () => {
    expect(read(`All prices in GBP\n${BARE}`)).toMatchObject({ questions: [], notes: [], currency: "GBP" });
    const two = `Prices in GBP or USD\n${BARE}`;
    expect(ids(two)).toContain("currency");
    expect(asked(two)).toContain("The list names GBP and USD. Say in which currency its prices are.");
    expect(read(two, { currency: "GBP" })).toMatchObject({ questions: [], currency: "GBP" });
  });

  test("a supplier's own currency is taken where the list names none, and that is said", () => {
    const note = "The list names no currency: GBP is taken, in which this supplier quotes.";
    const terms = { supplierCurrency: "GBP" };
    expect(read(BARE, {}, terms)).toMatchObject({ questions: [], notes: [note], currency: "GBP" });
    expect(read(LIST, {}, terms)).toMatchObject({ notes: [], currency: "EUR" });
    expect(read(BARE.replace("4,00", "£4,00"), {}, terms).notes).toEqual([]);
    expect(read(BARE, { currency: "USD" }, terms)).toMatchObject({ notes: [], currency: "USD" });
    expect(read(`Prices in CHF\n${BARE}`, {}, terms)).toMatchObject({ notes: [], currency: "CHF" });
    expect(asked(BARE)).toEqual(["The list names no currency. Say in which its prices are."]);
    expect(read(BARE)).not.toHaveProperty("currency");
  });

  test.each([
    "Prices incl. VAT",
    "Prices including 20 % VAT",
    "Prices inclusive of GST",
    "Preise inkl. MwSt.",
    "Preise inkl. 19 % USt",
    "Bruttopreise",
    "Prix TTC",
    "Prix T.T.C.",
    "TVA comprise",
    "IVA incluido",
    "Precios con IVA",
    "Prijzen incl. BTW",
    "BTW inbegrepen",
  ])("%s: the tax is asked", (title) => {
    expect(asked(`${title}\n${LIST}`)).toEqual([
      `The list says “${title}”: its prices hold tax (VAT), and costs are kept without. Say which share of tax is in them (0 for none).`,
    ]);
    expect(ids(`${title}\n${LIST}`, { tax: 0 })).toEqual([]);
  });

  test.each([
    "Prices do not include VAT",
    "Preise nicht inkl. MwSt.",
    "Prix hors TTC",
    "Prices excl. VAT",
    "zzgl. MwSt.",
    "plus VAT",
  ])("%s: nothing is asked", (title) => expect(ids(`${title}\n${LIST}`)).toEqual([]));

  test.each([
    "Less 15 % for the trade",
    "abzgl. 15 % Rabatt",
    "moins 15 %",
    "15 % discount",
    "12,5 % remise",
    "descuento del 15 %",
    "korting van 15 %",
    "Recommended retail",
    "Listenpreise",
    "Bruttolistenpreise",
    "Prix tarif",
    "Precios de tarifa",
    "List prices",
  ])("%s: the discount is asked", (title) => {
    expect(asked(`${title}\n${LIST}`)).toEqual([
      `The list says “${title}”. Say which discount comes off its prices (0 for none).`,
    ]);
    expect(ids(`${title}\n${LIST}`, { discount: 0 })).toEqual([]);
  });

  test.each([
    "Copper surcharge extra",
    "zzgl. Kupferzuschlag",
    "Teuerungszuschlag 2 %",
    "supplément cuivre",
    "recargo",
    "kopertoeslag",
  ])("%s: a surcharge is asked", (title) => {
    expect(asked(`${title}\n${LIST}`)).toEqual([
      `The list says “${title}”: with a surcharge, for copper or other, its prices are not all that is paid. Say that they stand as they are, or put the whole price into the list.`,
    ]);
    expect(ids(`${title}\n${LIST}`, { surcharge: "none" })).toEqual([]);
  });

  test("of several sentences with a surcharge two are quoted, 80 signs of each", () => {
    const long = `levy ${"x".repeat(100)}`;
    expect(asked(`${long}\nfuel levy\nsurcharge\n${LIST}`)).toEqual([
      expect.stringContaining(`“${long.slice(0, 80)}” and “fuel levy”: with`) as string,
    ]);
  });

  test("the same question is asked once", () => {
    expect(ids(`Prix TTC\n${LIST}\nPrix TTC;;;`)).toEqual(["tax"]);
    expect(ids(`Prix TTC\n${LIST}\nPrices incl. VAT;;;`)).toEqual(["tax", "tax"]);
  });
});

describe("what is asked of the columns", () => {
  test("several sheets that read as price lists", () => {
    const sheets = ["Cables", "Fittings"];
    expect(asked(LIST, {}, { sheets })).toEqual([
      "2 sheets of the file read as price lists: “Cables”, “Fittings”. Choose one; the others can be taken after it.",
    ]);
    expect(ids(LIST, { sheet: "Cables" }, { sheets })).toEqual([]);
    expect(ids(LIST, {}, { sheets: ["Cables"] })).toEqual([]);
  });

  test("a list without heads is guessed, and asked", () => {
    const text = "A1;indoor plug;4,50\nB2;cable clip;5,50\nC3;earth tape;6,50";
    expect(asked(text)).toContain(
      "The list has no head row that is known; its columns are guessed from what stands in them. Say what each column is.",
    );
    expect(ids(text)).toEqual(["columns", "currency"]);
    const columns = new Map([
      [0, "article"],
      [2, "price"],
    ] as const);
    expect(ids(text, { columns, currency: "EUR" })).toEqual([]);
    expect(read(text, { columns, currency: "EUR" }).lines.map(({ perUnit }) => perUnit)).toEqual([
      4.5, 5.5, 6.5,
    ]);
  });

  test("neither articles nor descriptions", () => {
    const columns = new Map([
      [0, ""],
      [1, ""],
    ] as const);
    expect(asked(LIST, { columns })).toEqual([
      "No column of article numbers or descriptions was found. Say which column is what.",
    ]);
    expect(ids(LIST, { columns: new Map([[0, ""]]) })).toEqual([]);
    expect(ids(LIST, { columns: new Map([[1, ""]]) })).toEqual([]);
  });

  test("numbers that can be thousands or decimals, for the lines that have one", () => {
    const list = read("Article;Description;Price EUR\nA;plug;1.234\nB;clip;7");
    expect(list.questions).toEqual([
      {
        id: "decimal",
        ofLines: true,
        sentence: "Some numbers can be thousands or decimals. Say which sign stands before decimals.",
      },
    ]);
  });
});

describe("how numbers are written", () => {
  test("a column that does not tell is read as the others are", () => {
    const text = "Article;Description;Unit;Pack;Price EUR\nA;drop;m;1.000;0,39\nB;plug;pc;10;4,00";
    // 1.000 beside decimal commas is a thousand.
    expect(read(text).lines[0]).toMatchObject({ pack: 1000, perPack: 390, doubts: [] });
    const points = "Article;Description;Price per unit EUR;Discount;List price EUR\nA;plug;1,234;50;2,468.00";
    expect(read(points).lines[0]).toMatchObject({ perUnit: 1234, doubts: [] });
  });

  test("one that is written in both ways is said, and a cell that can be either asked", () => {
    const list = read("Article;Description;Price EUR\nA;plug;4,00\nB;clip;5.50\nC;tape;1.234");
    expect(list.notes).toEqual([
      "“Price EUR” is written with decimal points and with decimal commas: a cell that can be either is asked.",
    ]);
    expect(list.lines.map(({ perUnit }) => perUnit)).toEqual([4, 5.5, undefined]);
  });

  test("an answer decides for every column", () => {
    const text = "Article;Description;Unit;Pack;Price EUR\nA;drop;m;1.000;1.234\nB;plug;pc;10;7";
    expect(read(text, { decimal: "," }).lines[0]).toMatchObject({ pack: 1000, perUnit: 1234 });
    expect(read(text, { decimal: "." }).lines[0]).toMatchObject({ pack: 1, perUnit: 1.234 });
  });

  test("signs of money and share don't hide how a discount is written", () => {
    const text = "Article;Description;List price EUR;Discount\nA;plug;1.234;12,5 %";
    expect(read(text).lines[0]).toMatchObject({ perUnit: 1079.75, doubts: [] });
  });

  test("the order of days goes by the whole list, and by how it writes decimals", () => {
    const HEAD = "Article;Description;Price EUR;Valid to";
    const days = (text: string): (number | undefined)[] =>
      read(`${HEAD}\n${text}`).lines.map(({ until }) => until);
    expect(days("A;plug;4.00;03/04/2027\nB;clip;4.00;13/04/2027")).toEqual([
      sheetDate(2027, 4, 3),
      sheetDate(2027, 4, 13),
    ]);
    expect(days("A;plug;4.00;03/04/2027")).toEqual([undefined]);
    expect(days("A;plug;4,00;03/04/2027")).toEqual([sheetDate(2027, 4, 3)]);
    expect(days("A;plug;4,00;03/04/2027\nB;clip;4,00;13/04/2027\nC;tape;4,00;04/13/2027")[0]).toBeUndefined();
    expect(read(`${HEAD}\nA;plug;4.00;03/04/2027`, { order: "mdy" }).lines[0]!.until).toBe(
      sheetDate(2027, 3, 4),
    );
  });
});

describe("lines between the prices", () => {
  test("a heading says for what the prices below it are, until the next heading", () => {
    const list = read(
      "Article;Description;Unit;Price EUR\nCables, price per 100 m;;;\nA;drop;m;39,00\nB;trunk;m;70,00\nPlates;;;\nC;outlet;pc;6,00",
    );
    expect(list.lines.map(({ perUnit }) => perUnit)).toEqual([0.39, 0.7, 6]);
    expect(list.notes).toEqual(["What a price is for is taken from headings between the lines."]);
  });

  test.each([
    ["Kabel (Preise per 100 m)", 0.39],
    ["Câbles, prix pour 100 m", 0.39],
    ["Kabels: prijs per 100 m", 0.39],
    ["Kabel, Preise für 100 m", 0.39],
    ["Cables, € / 100 m", 0.39],
    ["Cables", 39],
  ])("%s", (heading, perUnit) => {
    expect(
      read(`Article;Description;Unit;Price EUR\n${heading};;;\nA;drop;m;39,00\nB;trunk;m;39,50`).lines[0],
    ).toMatchObject({ perUnit });
  });

  test("a long sentence is no heading of a group: what was said goes on", () => {
    const sentence = `All of these are sold from the reel ${"and cut to length ".repeat(3)}`;
    expect(sentence.trim().length).toBeGreaterThan(60);
    const list = read(
      `Article;Description;Unit;Price EUR\nCables, price per 100 m;;;\nA;drop;m;39,00\n${sentence};;;\nB;trunk;m;70,00`,
    );
    expect(list.lines.map(({ perUnit }) => perUnit)).toEqual([0.39, 0.7]);
  });

  test("sums and heads that stand again are passed over, and counted", () => {
    const again = "Article;Description;Unit;Price EUR";
    expect(read(`${LIST}\nTotal;;;9,50\n${again}\nC;tape;pc;1,00`).notes).toEqual([
      "1 line with a sum is passed over.",
      "1 line with the heads again is passed over.",
    ]);
    const twice = read(
      `${LIST}\nSubtotal;;;9,50\n${again}\nC;tape;pc;1,00\n${again}\nD;boot;pc;1,00\nTotal;;;2,00`,
    );
    expect(twice.notes).toEqual([
      "2 lines with a sum are passed over.",
      "2 lines with the heads again are passed over.",
    ]);
    expect(twice.lines.map(({ article }) => article)).toEqual(["A", "B", "C", "D"]);
  });

  test("hidden rows are read, and that is said", () => {
    const hide = (...hidden: number[]) => {
      const table = tableOf(LIST);
      const lines = table.lines.map((one): ImportedLine =>
        hidden.includes(one.line) ? { ...one, hidden: true } : one,
      );
      return readPriceList({ ...table, lines }, { currency: "EUR", today: TODAY }).notes;
    };
    expect(hide()).toEqual([]);
    expect(hide(2)).toEqual(["1 line hidden in the workbook is read as well."]);
    expect(hide(2, 3)).toEqual(["2 lines hidden in the workbook are read as well."]);
  });

  const HEADS = ["Article", "Description", "Unit", "Price"];
  const kindOf = (cells: string): PriceLineKind => {
    const line = { line: 1, cells: cells.split(";") };
    return priceLineKind(line, [cutCell(line.cells[3], "EUR")], {
      article: 0,
      description: 1,
      unit: 2,
      heads: HEADS,
    });
  };
  test.each<[string, PriceLineKind]>([
    ["A;plug;pc;4,00", "price"],
    ["A;plug;pc;", "price"],
    ["A;plug;;", "price"],
    [";plug;pc;", "price"],
    [";plug;;4,00", "price"],
    ["A;;;4,00", "price"],
    ["Cables;;;", "words"],
    ["Cables;Cables;Cables;Cables", "words"],
    [";Cables;;", "words"],
    ["Cables and more;;m;", "words"],
    ["K-110;;m;", "price"],
    ["Cables and;for indoors;;", "price"],
    ["Total;;;9,50", "total"],
    ["Totals;;;9,50", "total"],
    ["Grand total;;;9,50", "total"],
    ["Sub-total;;;9,50", "total"],
    ["Summe;;;9,50", "total"],
    ["Zwischensumme;;;9,50", "total"],
    ["Gesamtbetrag;;;9,50", "total"],
    ["Sous-total;;;9,50", "total"],
    ["Suma;;;9,50", "total"],
    ["Totaal;;;9,50", "total"],
    ["Übertrag;;;9,50", "total"],
    ["Carried forward;;;9,50", "total"],
    [";Total;;9,50", "total"],
    ["A;Total solution;;9,50", "price"],
    ["Totalizer;;;9,50", "price"],
    ["Article;Description;Unit;Price", "repeated"],
    ["Article;Description;;", "repeated"],
    ["Article;plug;;", "price"],
    ["Article;;Unit;Price", "repeated"],
    ["Article;plug;pc;Price", "repeated"],
    ["Article;plug;pc;soon", "price"],
    ["A;plug;pc;soon", "price"],
  ])("%s: %s", (cells, kind) => {
    expect(kindOf(cells)).toBe(kind);
  });

  test("blank cells below blank heads are no heads again", () => {
    const heads = ["Article", "", "", "Price"];
    const line = { line: 1, cells: ["A", "", "", "soon"] };
    const cuts = [cutCell("soon", "EUR")];
    expect(priceLineKind(line, cuts, { article: 0, description: 1, unit: 2, heads })).toBe("price");
  });
});

describe("an article on several lines", () => {
  const at = (line: number, more: Partial<ListedPrice> = {}): ListedPrice => ({
    line,
    article: "A",
    description: "plug",
    perUnit: line,
    currency: "EUR",
    doubts: [],
    ...more,
  });
  const same = { perUnit: 4, perPack: 40, pack: 10 };
  const settled = (
    lines: readonly ListedPrice[],
    from: (line: number) => number | undefined = () => undefined,
  ): ListedPrice[] => settleTwice(lines, TODAY, from);

  test("what is one article to a person: neither case, blanks nor the kind of dash tell two", () => {
    expect(articleKey({ article: "K 1\u2013A", description: "x" })).toBe(
      articleKey({ article: "k1-a", description: "y" }),
    );
    expect(articleKey({ article: "", description: "Plug  F" })).toBe(
      articleKey({ article: "", description: "plug f" }),
    );
    expect(articleKey({ article: "", description: "plug" })).not.toBe(
      articleKey({ article: "plug", description: "" }),
    );
  });

  test("others are left as they are, blank ones too", () => {
    const lines = [
      at(2),
      at(3, { article: "B" }),
      at(4, { article: "", description: "" }),
      at(5, { article: "", description: "" }),
    ];
    expect(settled(lines)).toStrictEqual(lines);
  });

  test("the same again is passed over; the newest of them stands", () => {
    expect(settled([at(2, same), at(3, same)])).toStrictEqual([
      at(2, same),
      { ...at(3, same), left: "The same article and price stand on line 2." },
    ]);
    const dated = [at(2, { ...same, until: 10 }), at(3, { ...same, until: 20 })];
    expect(settled(dated)[0]).toStrictEqual({
      ...dated[0]!,
      left: "The same article and price stand on line 3.",
    });
    expect(settled(dated)[1]).toStrictEqual(dated[1]);
  });

  test.each<[string, Partial<ListedPrice>]>([
    ["price", { perUnit: 5 }],
    ["price of the pack", { perPack: 41 }],
    ["pack", { pack: 20 }],
    ["currency", { currency: "GBP" }],
  ])("another %s is asked where no day tells", (_, other) => {
    const found = settled([at(2, same), at(3, { ...same, ...other })]);
    expect(found.map(({ left }) => left)).toEqual([undefined, undefined]);
    expect(found[0]!.doubts).toEqual([
      `The article stands here at 4 and on line 3 at ${other.perUnit ?? 4}, and no date says which is newer. Leave out all but one.`,
    ]);
    expect(found[1]!.doubts).toEqual([
      `The article stands here at ${other.perUnit ?? 4} and on line 2 at 4, and no date says which is newer. Leave out all but one.`,
    ]);
  });

  test("one that can't be read is asked with the others, and keeps what is asked of itself", () => {
    const unread = without(at(3, { doubts: ["Which?"] }), "perUnit");
    const found = settled([at(2), unread, at(4)]);
    expect(found.map(({ doubts }) => doubts)).toEqual([
      [
        "The article stands here at 2 and on line 3 and line 4 at 4, and not all of it can be read. Leave out all but one.",
      ],
      [
        "Which?",
        "The article stands here and on line 2 at 2 and line 4 at 4, and not all of it can be read. Leave out all but one.",
      ],
      [
        "The article stands here at 4 and on line 2 at 2 and line 3, and not all of it can be read. Leave out all but one.",
      ],
    ]);
    // The same price twice, one of them doubtful, is not the same.
    expect(settled([at(2, same), at(3, { ...same, doubts: ["Which?"] })])[0]!.doubts).toHaveLength(1);
  });

  test("of days the one that holds today counts, its first and its last day with it", () => {
    const held = (more: Partial<ListedPrice>): (string | undefined)[] =>
      settled([at(2, more), at(3, { from: TODAY + 1, until: TODAY + 9 })]).map(({ left }) => left);
    const later =
      "The same article stands on line 2, whose price is taken; this one, 3, holds only from 2026-11-30.";
    expect(held({ from: TODAY, until: TODAY + 5 })).toEqual([undefined, later]);
    expect(held({ from: TODAY - 5, until: TODAY })).toEqual([undefined, later]);
    expect(held({})).toEqual([undefined, later]);
  });

  test("of two that hold the newer counts: by its beginning, else by its end", () => {
    const found = settled([at(2, { from: TODAY - 9 }), at(3, { from: TODAY - 5 })]);
    expect(found).toStrictEqual([
      {
        ...at(2, { from: TODAY - 9 }),
        left: "The same article stands on line 3, whose price is taken; this one, 2, is older.",
      },
      {
        ...at(3, { from: TODAY - 5 }),
        note: "It stands twice: the newest price that is valid is taken, not 2 of line 2.",
      },
    ]);
    const ends = settled([at(2, { from: 1, until: TODAY + 9 }), at(3, { from: 1, until: TODAY + 5 })]);
    expect(ends.map(({ left }) => left === undefined)).toEqual([true, false]);
  });

  test("one that has ended and one without a day: the one without", () => {
    const found = settled([at(2, { until: TODAY - 1 }), at(3)]);
    expect(found[0]!.left).toBe(
      "The same article stands on line 3, whose price is taken; this one, 2, ended on 2026-11-28.",
    );
    expect(found[1]!.left).toBeUndefined();
  });

  test("where all have ended the last of them counts", () => {
    const found = settled([at(2, { until: TODAY - 9 }), at(3, { until: TODAY - 5 })]);
    expect(found.map(({ left }) => left === undefined)).toEqual([false, true]);
  });

  test("three, of which prices of packs are named where there is none of one", () => {
    const pack = without(at(3, { perPack: 30, from: TODAY - 9 }), "perUnit");
    const found = settled([at(2, { from: TODAY - 8 }), pack, at(4, { from: TODAY - 5 })]);
    expect(found[2]!.note).toBe(
      "It stands 3 times: the newest price that is valid is taken, not 2 of line 2 and 30 of line 3.",
    );
    expect(found[1]!.left).toBe(
      "The same article stands on line 4, whose price is taken; this one, 30, is older.",
    );
  });

  test("what is left already does not count", () => {
    const gone = at(2, { left: "gone" });
    expect(settled([gone, at(3)])).toStrictEqual([gone, at(3)]);
  });

  test("of prices for quantities the one of the least counts", () => {
    const from = (line: number): number | undefined => [50, 1, 10][line - 2];
    const found = settled([at(2), at(3), at(4)], from);
    expect(found.map(({ left }) => left)).toEqual([
      "Its price holds from 50 on; the price from 1 on is taken.",
      undefined,
      "Its price holds from 10 on; the price from 1 on is taken.",
    ]);
    // A doubt of a line that is left needs no answer.
    expect(settled([at(2, { doubts: ["Which?"] }), at(3)], from)[0]!.doubts).toEqual([]);
  });

  test("equal quantities, or one that is not said, settle nothing", () => {
    for (const from of [() => 10, (line: number) => (line === 2 ? 10 : undefined)])
      expect(settled([at(2), at(3)], from).map(({ left }) => left)).toEqual([undefined, undefined]);
  });

  test("a column says from which quantity a price holds", () => {
    const list = read("Article;Description;Unit;From qty;Price EUR\nA;plug;pc;1;4,00\nA;plug;pc;10;3,50");
    expect(list.lines.map(({ left }) => left)).toEqual([
      undefined,
      "Its price holds from 10 on; the price from 1 on is taken.",
    ]);
  });
});
