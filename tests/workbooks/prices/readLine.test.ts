/**
 * What one line of a price list comes to. Prices are worked out by hand from the line as typed; sentences are what a
 * person has to be told, with the words of the line in them. `toStrictEqual`, so that what a line does not say is
 * absent, as the types have it.
 */
import type { ImportedCell } from "../../../src/workbooks/imported/table";
import type { ListedPrice, PriceAnswers } from "../../../src/workbooks/prices/list";
import { readPriceList } from "../../../src/workbooks/prices/readPriceList";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { only, read, tableOf, TODAY } from "./typedLists";

/** Of a line that begins "A;plug;". */
type Amounts = Pick<ListedPrice, "unit" | "pack" | "perUnit" | "perPack">;
const line = (amounts: Amounts, description = "plug", doubts: readonly string[] = []): ListedPrice => ({
  line: 2,
  article: "A",
  description,
  currency: "EUR",
  ...amounts,
  doubts,
});

describe("for how much a price holds", () => {
  test.each<[string, string, string, Amounts]>([
    [
      "a piece is a pack of one",
      "Unit;Price EUR",
      "pc;4,00",
      { unit: "pc", pack: 1, perUnit: 4, perPack: 4 },
    ],
    ["so is a set", "Unit;Price EUR", "set;4,00", { unit: "set", pack: 1, perUnit: 4, perPack: 4 }],
    ["so is a pair", "Unit;Price EUR", "pair;4,00", { unit: "pair", pack: 1, perUnit: 4, perPack: 4 }],
    ["a metre is no pack", "Unit;Price EUR", "m;4,00", { unit: "m", perUnit: 4 }],
    ["nothing says the unit", "Price EUR", "4,00", { perUnit: 4 }],
    ["a hundred metres", "Unit;Price EUR", "100 m;39,00", { unit: "m", perUnit: 0.39 }],
    ["a hundred pieces are no pack", "Unit;Price EUR", "100 pc;39,00", { unit: "pc", perUnit: 0.39 }],
    [
      "a pack with what is in it",
      "Unit;Pack;Price EUR",
      "pack;10;42,00",
      { unit: "pc", pack: 10, perUnit: 4.2, perPack: 42 },
    ],
    [
      "a reel with its metres",
      "Unit;Pack;Price EUR",
      "reel;100;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "a reel of feet",
      "Unit;Pack;Price EUR",
      "reel;500 ft;60,00",
      { unit: "ft", pack: 500, perUnit: 0.12, perPack: 60 },
    ],
    [
      "the unit names the reel and its length",
      "Unit;Price EUR",
      "100 m reel;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "the unit names the bag and what is in it",
      "Unit;Price EUR",
      "bag of 100;5,00",
      { unit: "pc", pack: 100, perUnit: 0.05, perPack: 5 },
    ],
    [
      "a metre from a reel: the price is the metre's",
      "Unit;Pack;Price EUR",
      "m;100;0,39",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "a piece from a pack: the price is the piece's",
      "Unit;Pack;Price EUR",
      "pc;10;4,20",
      { unit: "pc", pack: 10, perUnit: 4.2, perPack: 42 },
    ],
    [
      "the pack's cell names the pack, so the price is for it",
      "Unit;Pack;Price EUR",
      "pc;100 m;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "a column of its own says for how many",
      "Unit;Per;Price EUR",
      "m;100;39,00",
      { unit: "m", perUnit: 0.39 },
    ],
    ["C is a hundred", "Unit;Per;Price EUR", "m;C;39,00", { unit: "m", perUnit: 0.39 }],
    ["M is a thousand there, no metre", "Unit;Per;Price EUR", "ft;M;118,00", { unit: "ft", perUnit: 0.118 }],
    ["the column for how many alone", "Per;Price EUR", "100 m;39,00", { unit: "m", perUnit: 0.39 }],
    [
      "it says the pack, of which another column has the quantity",
      "Per;Pack;Price EUR",
      "pack;10;42,00",
      { unit: "pc", pack: 10, perUnit: 4.2, perPack: 42 },
    ],
    [
      "it says ten packs",
      "Per;Pack;Price EUR",
      "10 packs;5;100,00",
      { unit: "pc", pack: 5, perUnit: 2, perPack: 10 },
    ],
    [
      "the cell of the price says for how much",
      "Unit;Price EUR",
      "m;39,00 / 100 m",
      { unit: "m", perUnit: 0.39 },
    ],
    [
      "the cell goes before the column",
      "Unit;Per;Price EUR",
      "m;1000;39,00 / 100 m",
      { unit: "m", perUnit: 0.39 },
    ],
    ["the head says for how much", "Unit;Price per 100 m EUR", "m;39,00", { unit: "m", perUnit: 0.39 }],
    [
      "the column goes before the head",
      "Unit;Per;Price per 100 m EUR",
      "m;1000;390,00",
      { unit: "m", perUnit: 0.39 },
    ],
    [
      "a price for the pack alone",
      "Pack;Price per pack EUR",
      "10;42,00",
      { pack: 10, perUnit: 4.2, perPack: 42 },
    ],
    [
      "a price for the pack, sold by the piece",
      "Unit;Pack;Price per pack EUR",
      "pc;10;42,00",
      { unit: "pc", pack: 10, perUnit: 4.2, perPack: 42 },
    ],
    [
      "both prices agree",
      "Unit;Pack;Price per unit EUR;Price per pack EUR",
      "pc;10;4,20;42,00",
      { unit: "pc", pack: 10, perUnit: 4.2, perPack: 42 },
    ],
    [
      "both agree but for rounding: the pack's is the exact one",
      "Unit;Pack;Price per unit EUR;Price per pack EUR",
      "pc;8;0,13;1,00",
      { unit: "pc", pack: 8, perUnit: 0.125, perPack: 1 },
    ],
    [
      "half a cent on each of three is a cent and a half, and half a cent for the other's rounding",
      "Unit;Pack;Price per unit EUR;Price per pack EUR",
      "pc;4;0,25;1,02",
      { unit: "pc", pack: 4, perUnit: 0.255, perPack: 1.02 },
    ],
    [
      "a head for a piece, a line sold by the metre: the unit is the line's",
      "Unit;Price per piece EUR",
      "m;0,39",
      { unit: "m", perUnit: 0.39 },
    ],
    ["a head for either", "Unit;Price per piece or m EUR", "m;0,39", { unit: "m", perUnit: 0.39 }],
    ["loose ones", "Unit;Pack;Price EUR", "pc;loose;4,00", { unit: "pc", pack: 1, perUnit: 4, perPack: 4 }],
    [
      "one of a dozen packs",
      "Unit;Pack;Price EUR",
      "pc;1 x 10;4,20",
      { unit: "pc", pack: 10, perUnit: 4.2, perPack: 42 },
    ],
  ])("%s", (_, heads, cells, wanted) => {
    expect(only(read(`Article;Description;${heads}\nA;plug;${cells}`))).toStrictEqual(line(wanted));
  });

  // A reel of 100 m at 39 for the piece is 0.39 for a metre.
  test.each([
    ["the head", "Unit;Pack;Price per piece EUR", "pc;100 m;39,00"],
    ["the column", "Unit;Per;Pack;Price EUR", "pc;1 pc;100 m;39,00"],
    ["the column, for ten", "Unit;Per;Pack;Price EUR", "pc;10 pc;100 m;390,00"],
    ["the head, without a unit", "Pack;Price per piece EUR", "100 m;39,00"],
  ])("a price for a piece of cable is its reel's: %s says so", (_, heads, cells) => {
    expect(only(read(`Article;Description;${heads}\nA;plug;${cells}`))).toStrictEqual(
      line({ unit: "m", pack: 100, perUnit: 0.39, perPack: 39 }),
    );
  });

  const WORDS = "cable, 100 m reel";
  test.each<[string, string, string, Amounts]>([
    [
      "the description says what is on the reel",
      "Unit;Price EUR",
      "reel;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "a piece of cable is its reel",
      "Unit;Price EUR",
      "pc;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "a column for the unit's price tells",
      "Price per m EUR",
      "0,39",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "as does one for the reel",
      "Price per reel EUR",
      "39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "a reel counted as one",
      "Unit;Pack;Price EUR",
      "reel;1;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "the cell and the words agree",
      "Unit;Pack;Price EUR",
      "reel;100;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
    [
      "the words say that the cell counts metres",
      "Pack;Price per reel EUR",
      "100;39,00",
      { unit: "m", pack: 100, perUnit: 0.39, perPack: 39 },
    ],
  ])("%s", (_, heads, cells, wanted) => {
    const found = only(read(`Article;Description;${heads}\nA;${WORDS};${cells}`));
    expect(found).toStrictEqual(line(wanted, WORDS));
  });

  test.each<[string, string, string, Amounts, string]>([
    [
      "a reel and its metres",
      "cable, 100 m reel",
      "39,00",
      { unit: "m", pack: 100 },
      "Nothing says whether 39 is for one or for the 100 m of a reel. Say what the prices are for.",
    ],
    [
      "a bag and its pieces",
      "clip, bag of 50",
      "39,00",
      { unit: "pc", pack: 50 },
      "Nothing says whether 39 is for one or for the 50 of a pack. Say what the prices are for.",
    ],
  ])("%s are asked, unless the head row or an answer says it", (_, words, price, wanted, doubt) => {
    const text = `Article;Description;Price EUR\nA;${words};${price}`;
    const asked = read(text);
    expect(asked.questions.map(({ id, ofLines }) => [id, ofLines])).toEqual([["basis", true]]);
    expect(only(asked).doubts).toEqual([doubt]);
    expect(only(asked).pack).toBe(wanted.pack);
    expect(only(asked)).not.toHaveProperty("perUnit");
    const pack = wanted.pack!;
    expect(only(read(text, { basis: "pack" }))).toMatchObject({
      perUnit: 39 / pack,
      perPack: 39,
      doubts: [],
    });
    expect(only(read(text, { basis: "unit" }))).toMatchObject({
      perUnit: 39,
      perPack: 39 * pack,
      doubts: [],
    });
  });

  test("the quantity for which a price holds may have decimals that are none", () => {
    // In one line of two, so that its column is not taken for one of prices.
    const { lines } = read(
      "Article;Description;Unit;Per;Price EUR\nA;plug;m;100,00;39,00\nB;clip;m;100;39,00",
    );
    expect(lines[0]).toStrictEqual(line({ unit: "m", perUnit: 0.39 }));
  });

  test("a pack of one asks nothing: both prices are the same", () => {
    const found = read("Article;Description;Pack;Price EUR\nA;plug;1;4,00");
    expect(only(found)).toStrictEqual(line({ pack: 1, perUnit: 4, perPack: 4 }));
    expect(found.questions).toEqual([]);
  });

  test("what a column of packs holds is asked as well", () => {
    expect(only(read("Article;Description;Pack;Price EUR\nA;plug;10;4,00")).doubts).toEqual([
      "Nothing says whether 4 is for one or for the 10 of a pack. Say what the prices are for.",
    ]);
  });

  test.each<[string, string, string, string]>([
    [
      "a pack of unknown contents",
      "Unit;Price EUR",
      "pack;42,00",
      "The price of 42 is for a pack or a reel, and nothing says how much is in one. Put the quantity into the list.",
    ],
    [
      "a reel that is one reel",
      "Unit;Pack;Price EUR",
      "reel;1;42,00",
      "The price of 42 is for a pack or a reel, and nothing says how much is in one. Put the quantity into the list.",
    ],
    [
      "a pack's own price, of unknown contents",
      "Price per pack EUR",
      "42,00",
      "The price of 42 is for a pack or a reel, and nothing says how much is in one. Put the quantity into the list.",
    ],
    [
      "for a quantity that is none",
      "Unit;Per;Price EUR",
      "m;many;42,00",
      "“many” can't be read as the quantity for which a price holds. Write it as a number, such as 100.",
    ],
    [
      "no unit",
      "Unit;Price EUR",
      "gross;4,00",
      "“gross” is no unit that is known. Write m, ft, pc, pack or reel.",
    ],
    [
      "prices that don't agree",
      "Unit;Pack;Price per unit EUR;Price per pack EUR",
      "pc;4;0,25;1,03",
      "4 at 0.25 are 1, and the price of the pack says 1.03. Put one of them right in the list.",
    ],
    [
      "a head for 100 metres, a line sold in feet",
      "Unit;Price per 100 m EUR",
      "ft;39,00",
      "“Price per 100 m EUR” holds prices per 100 m, and the line is sold by the ft. Put the price for one ft into a column of its own.",
    ],
    [
      "a head for a metre, a line sold by the piece",
      "Unit;Price per m EUR",
      "pc;39,00",
      "“Price per m EUR” holds prices per m, and the line is sold by the pc. Put the price for one pc into a column of its own.",
    ],
    [
      "a pack with another quantity than its words",
      "Pack;Price per pack EUR",
      "50 x;42,00",
      "“50 x” can't be read as what is in a pack. Put a number there, such as 100.",
    ],
  ])("%s is asked", (_, heads, cells, said) => {
    expect(only(read(`Article;Description;${heads}\nA;plug;${cells}`)).doubts).toEqual(
      expect.arrayContaining([said]),
    );
  });

  test.each([
    [
      "metres",
      "cable, 100 m reel",
      "250",
      "The pack is 250, and the description says 100 m. Put the right one into the list.",
    ],
    [
      "pieces",
      "clip, bag of 50",
      "100",
      "The pack is 100, and the description says 50. Put the right one into the list.",
    ],
  ])("a cell and a description that say other %s are asked", (_, words, pack, said) => {
    const found = only(
      read(`Article;Description;Unit;Pack;Price per pack EUR\nA;${words};pack;${pack};42,00`),
    );
    expect(found.doubts).toEqual([said]);
  });
});

describe("what the cell of the article holds", () => {
  const withArticle = (cell: ImportedCell, description = "plug", price = "4,00"): ListedPrice => {
    const { lines, ...rest } = tableOf("Article;Description;Price EUR");
    return only(
      readPriceList(
        { ...rest, lines: [...lines, { line: 2, cells: [cell, description, price] }] },
        { currency: "EUR", today: TODAY },
      ),
    );
  };

  test.each<[string, ImportedCell, string]>([
    ["a number's noughts", "007", "007"],
    ["noughts kept by a formula of text", '="007"', "007"],
    ["an apostrophe in front of a number", "'0815", "0815"],
    ["an apostrophe in front of a word stays", "'x", "'x"],
    ["an E with letters behind", "1E5x", "1E5x"],
    ["a number as shown", { number: 815, shown: "0815" }, "0815"],
    ["a word of months with more behind", "Mar 05 b", "Mar 05 b"],
    ["true with more behind", "TRUE-1", "TRUE-1"],
    ["letters and a number that are no month", "CAT-6", "CAT-6"],
    ["a number and letters that are no month", "12-RGX", "12-RGX"],
  ])("%s", (_, cell, wanted) => {
    expect(withArticle(cell)).toMatchObject({ article: wanted, doubts: [] });
  });

  test.each([
    "1,2E+05",
    "1E5",
    "1.23E+12",
    "1e+05",
    "Mar 05",
    "MAR-06",
    "Sept. 05",
    "mai-05",
    "Mrz-05",
    "5-Mar",
    "05. Mai",
    "5-Mar-2026",
    "04.05.2026",
    "4/5/2026",
    "2026-05-04",
    "TRUE",
    "false",
    "WAHR",
    "FALSCH",
    "VRAI",
    "FAUX",
    "VERDADERO",
    "FALSO",
    "WAAR",
    "ONWAAR",
    "#N/A",
    "#REF!",
    "#VALUE!",
    "#NAME?",
    "#DIV/0!",
    "#NUM!",
    "#NULL!",
    "####",
  ])("%s is what a workbook program made of a number", (text) => {
    expect(withArticle(text).doubts).toEqual([
      `The article number “${text}” is what a workbook program made of it. Take the number from the supplier's own file.`,
    ]);
  });

  test("a date and a formula are asked", () => {
    expect(withArticle({ number: 46000, shown: undefined })).toMatchObject({
      article: "",
      doubts: [
        "The file holds a date where the article number stands: a workbook program turns numbers such as 3-16 into one. Type the article number itself as text.",
      ],
    });
    expect(withArticle("=A1")).toMatchObject({
      article: "=A1",
      doubts: ["The article number “=A1” is a formula, which is not computed. Put the number itself there."],
    });
  });

  test("neither a number nor words are asked; long ones are cut, and shown shorter in a sentence", () => {
    expect(withArticle("", "", "4,50").doubts).toEqual([
      "The line names neither an article nor a description. Put one into the list, or leave the line out.",
    ]);
    expect(withArticle("", "plug").doubts).toEqual([]);
    expect(withArticle("A", "").doubts).toEqual([]);
    // A cell of the workbook takes 250 signs.
    expect(withArticle("x".repeat(300), `${"y".repeat(300)}`)).toMatchObject({
      article: "x".repeat(250),
      description: "y".repeat(250),
    });
    // A sentence quotes 60 at most, the last of them the sign for "and more".
    expect(withArticle(`=${"x".repeat(59)}`).doubts[0]).toContain(`“=${"x".repeat(59)}”`);
    expect(withArticle(`=${"x".repeat(60)}`).doubts[0]).toContain(`“=${"x".repeat(58)}…”`);
    expect(withArticle("A", "two   blanks").description).toBe("two blanks");
  });
});

describe("what stands where a price should", () => {
  // Another line is there, so that the column has a price.
  const priceOf = (cell: string): readonly string[] =>
    read(`Article;Description;Price EUR\nA;plug;${cell}\nB;plug too;7,50`).lines[0]!.doubts;

  test.each([
    [
      "=1+1",
      "“=1+1” is a formula, and formulas of a text file are not computed. Put the price itself there.",
    ],
    [
      "soon",
      "“soon” under “Price EUR” can't be read as a price. Put a number there, such as 12.50, or leave the line out.",
    ],
    [
      "4,0,0",
      "“4,0,0” under “Price EUR” can't be read as a price. Put a number there, such as 12.50, or leave the line out.",
    ],
    [
      "0,00",
      "The price is 0, which more often means that none is stated. Put the price into the list, or leave the line out.",
    ],
    ["-4,00", "The price is “-4,00”, less than nothing. Put the price into the list, or leave the line out."],
    ["", "The line has no price. Put one into the list, or leave the line out if it is a heading."],
  ])("%j is asked in one sentence", (cell, said) => {
    expect(priceOf(cell)).toEqual([said]);
  });

  test("a number of a workbook's cell needs no reading; one of 0 is asked all the same", () => {
    const at = (number: number): ListedPrice =>
      only(
        readPriceList(
          {
            source: "sheet",
            lines: [
              { line: 1, cells: ["Article", "Description", "Price EUR"] },
              { line: 2, cells: ["A", "plug", { number, shown: String(number) }] },
            ],
          },
          { currency: "EUR", today: TODAY },
        ),
      );
    expect(at(1.234)).toStrictEqual(line({ perUnit: 1.234 }));
    expect(at(0).doubts[0]).toContain("The price is 0");
  });
});

describe("what the supplier no longer has", () => {
  const HEAD = "Article;Description;Price EUR;Status";
  const base = { line: 2, article: "A", doubts: [] };
  test.each<[string, string, Partial<ListedPrice>]>([
    [
      "the status says so",
      "A;plug;;discontinued",
      { state: "discontinued", left: "The supplier has it no longer: “discontinued”." },
    ],
    [
      "the price says so",
      "A;plug;obsolete;",
      { state: "discontinued", left: "The supplier has it no longer: “obsolete”." },
    ],
    [
      "the status says ask",
      "A;plug;;on request",
      { state: "request", left: "It has no price but “on request”: ask for it." },
    ],
    [
      "the price says ask",
      "A;plug;auf Anfrage;",
      { state: "request", left: "It has no price but “auf Anfrage”: ask for it." },
    ],
  ])("%s", (_, cells, wanted) => {
    expect(only(read(`${HEAD}\n${cells}`))).toStrictEqual({ ...base, description: "plug", ...wanted });
  });

  test("its description says so", () => {
    expect(only(read(`${HEAD}\nA;plug, replaced by B;;`)).left).toBe(
      "The supplier has it no longer: “replaced by”.",
    );
    expect(only(read(`${HEAD}\nA;plug (poa);;`)).left).toBe("It has no price but “poa”: ask for it.");
  });

  test.each([
    ["A;plug;4,00;discontinued", "discontinued"],
    ["A;plug, discontinued;4,00;", "plug, discontinued"],
  ])("with a price it is asked: %s", (cells, quoted) => {
    expect(only(read(`${HEAD}\n${cells}`))).toMatchObject({
      perUnit: 4,
      doubts: [
        `The line has a price, and says that the article is discontinued (“${quoted}”). Take the price only if it can still be bought.`,
      ],
    });
  });

  test("with a price, words of asking are not heard: the price is there", () => {
    expect(only(read(`${HEAD}\nA;plug;4,00;more on request`))).toMatchObject({ perUnit: 4, doubts: [] });
  });
});

describe("discounts and taxes", () => {
  const LIST = "Article;Description;List price EUR;Discount";
  test.each([
    ["15", 17],
    ["15%", 17],
    ["15 %", 17],
    ["-15 %", 17],
    ["–15", 17],
    ["0", 20],
    ["12,5", 17.5],
    ["0,5 %", 19.9],
    // One hundredth of the price: the least that a number alone is read as.
    ["1", 19.8],
    ["99", 0.2],
  ])("20 less %s is %d", (discount, perUnit) => {
    expect(only(read(`${LIST}\nA;plug;20,00;${discount}`))).toStrictEqual(line({ perUnit }));
  });

  test.each(["0,15", "100", "120 %", "a lot", "0,99"])("a discount of %s is asked", (discount) => {
    expect(only(read(`${LIST}\nA;plug;20,00;${discount}`)).doubts).toEqual([
      `“${discount}” under “Discount” can't be read as a discount. Put a share there, such as 15 %.`,
    ]);
  });

  test("a share of a workbook's cell is one by its format", () => {
    const at = (cell: ImportedCell): ListedPrice =>
      only(
        readPriceList(
          {
            source: "sheet",
            lines: [
              { line: 1, cells: ["Article", "Description", "List price EUR", "Discount"] },
              { line: 2, cells: ["A", "plug", { number: 20, shown: "20.00" }, cell] },
            ],
          },
          { currency: "EUR", today: TODAY },
        ),
      );
    expect(at({ number: 0.15, shown: "15%", format: "0%" })).toMatchObject({ perUnit: 17, doubts: [] });
    expect(at({ number: 0.005, shown: "0.5%", format: "0.0%" })).toMatchObject({ perUnit: 19.9, doubts: [] });
    expect(at({ number: 15, shown: "15" })).toMatchObject({ perUnit: 17, doubts: [] });
    expect(at({ number: 0.15, shown: "0.15" }).doubts).toHaveLength(1);
  });

  test("a blank discount beside a list price is asked", () => {
    expect(only(read(`${LIST}\nA;plug;20,00;`)).doubts).toEqual([
      "Its discount is blank, and the price before discount is “20,00”. Put the discount into the list (0 for none).",
    ]);
  });

  const NET = `${LIST};Net price EUR`;
  test.each<[string, string, readonly string[]]>([
    ["they agree", "20,00;15;17,00", []],
    // 17 within half a cent of each price, and a ten-thousandth for prices that were rounded before: 0.005 + 0.006 + 0.0017.
    ["a cent of rounding", "20,00;15;17,01", []],
    ["no discount is said, and the prices are the same", "20,00;;20,00", []],
    [
      "no discount is said, and the prices are not",
      "20,00;;17,00",
      ["20 less 0 % is 20, and the net price says 17. Put one of them right in the list."],
    ],
    [
      "they don't",
      "20,00;15;17,02",
      ["20 less 15 % is 17, and the net price says 17.02. Put one of them right in the list."],
    ],
    [
      "below",
      "20,00;15;16,98",
      ["20 less 15 % is 17, and the net price says 16.98. Put one of them right in the list."],
    ],
  ])("a net price beside it is the one that is taken: %s", (_, cells, doubts) => {
    const net = Number(cells.split(";")[2]!.replace(",", "."));
    expect(only(read(`${NET}\nA;plug;${cells}`))).toStrictEqual(line({ perUnit: net }, "plug", doubts));
  });

  test("a net price that is blank is asked, with what the list price is", () => {
    expect(only(read(`${NET}\nA;plug;20,00;15;`)).doubts).toEqual([
      "Its net price is blank, as a formula without a stored value is; the price before discount is 20. Open the list in its program, save it again, or put the net price in.",
    ]);
  });

  test.each<[string, PriceAnswers, Amounts]>([
    ["tax", { tax: 0.25 }, { unit: "pc", pack: 10, perUnit: 8, perPack: 80 }],
    ["a discount", { discount: 0.25 }, { unit: "pc", pack: 10, perUnit: 7.5, perPack: 75 }],
    ["no tax", { tax: 0 }, { unit: "pc", pack: 10, perUnit: 10, perPack: 100 }],
    ["no discount", { discount: 0 }, { unit: "pc", pack: 10, perUnit: 10, perPack: 100 }],
  ])("%s comes off every price of the line", (_, answers, wanted) => {
    const both =
      "Article;Description;Unit;Pack;Price per unit EUR;Price per pack EUR\nA;plug;pc;10;10,00;100,00";
    expect(only(read(both, answers))).toStrictEqual(line(wanted));
    const pack = "Article;Description;Unit;Pack;Price per pack EUR\nA;plug;pc;10;100,00";
    expect(only(read(pack, answers))).toStrictEqual(line(wanted));
    const unit = "Article;Description;Unit;Pack;Price EUR\nA;plug;pc;10;10,00";
    expect(only(read(unit, answers))).toStrictEqual(line(wanted));
  });

  // 50 less 20 % is 40 for 100 m, 0.4 for a metre; 48 that hold a fifth of tax are 40 without.
  test.each<[string, string, PriceAnswers]>([
    ["a discount's column", "List price per 100 m EUR;Discount\nA;plug;m;50,00;20", {}],
    ["a discount that is said", "List price per 100 m EUR\nA;plug;m;50,00", { discount: 0.2 }],
    ["a price for consumers", "RRP per 100 m EUR\nA;plug;m;50,00", { discount: 0.2 }],
    ["tax in the head", "Price per 100 m incl. VAT EUR\nA;plug;m;48,00", { tax: 0.2 }],
    ["a gross price", "Gross price per 100 m EUR\nA;plug;m;48,00", { discount: 0, tax: 0.2 }],
    ["a head for the metre", "List price per m EUR\nA;plug;m;0,50", { discount: 0.2 }],
  ])("what a price before discount or with tax is for: %s", (_, text, answers) => {
    expect(only(read(`Article;Description;Unit;${text}`, answers))).toStrictEqual(
      line({ unit: "m", perUnit: 0.4 }),
    );
  });

  test("a list price for the reel is the reel's", () => {
    const text = "Article;Description;Unit;Pack;List price per reel EUR\nA;plug;m;100;50,00";
    expect(only(read(text, { discount: 0.2 }))).toStrictEqual(
      line({ unit: "m", pack: 100, perUnit: 0.4, perPack: 40 }),
    );
  });

  test("a head that does not fit the line is named, of a list price too", () => {
    const text = "Article;Description;Unit;List price per 100 m EUR\nA;plug;ft;50,00";
    expect(only(read(text, { discount: 0 })).doubts).toEqual([
      "“List price per 100 m EUR” holds prices per 100 m, and the line is sold by the ft. Put the price for one ft into a column of its own.",
    ]);
  });
});

describe("days", () => {
  const HEAD = "Article;Description;Price EUR;Valid from;Valid to";
  const [from, until] = [sheetDate(2026, 1, 1), sheetDate(2026, 12, 31)];
  test.each<[string, string, Partial<ListedPrice>]>([
    ["both", "01.01.2026;31.12.2026", { from, until }],
    ["neither", ";", {}],
    ["a beginning", "01.01.2026;", { from }],
    ["an end", ";31.12.2026", { until }],
    ["one day long", "31.12.2026;31.12.2026", { from: until, until }],
    ["today is its last day", ";29.11.2026", { until: TODAY }],
  ])("%s", (_, cells, wanted) => {
    expect(only(read(`${HEAD}\nA;plug;4,00;${cells}`))).toStrictEqual({ ...line({ perUnit: 4 }), ...wanted });
  });

  test("what ended yesterday has ended, and is asked", () => {
    expect(only(read(`${HEAD}\nA;plug;4,00;;28.11.2026`))).toStrictEqual({
      ...line({ perUnit: 4 }),
      until: TODAY - 1,
      expired: true,
      doubts: ["Its price ended on 2026-11-28. Ask the supplier for a new list, or take it as it is."],
    });
  });

  test.each([
    [
      "2026-12-31;2026-12-30",
      "The price ends on 2026-12-30, before it begins on 2026-12-31. Put the dates right.",
    ],
    [
      "sometime;",
      "“sometime” under “valid from” can't be read as one day. Write year, month and day, such as 2027-03-31.",
    ],
    [
      ";sometime",
      "“sometime” under “valid until” can't be read as one day. Write year, month and day, such as 2027-03-31.",
    ],
  ])("%s is asked", (cells, said) => {
    expect(only(read(`${HEAD}\nA;plug;4,00;${cells}`)).doubts).toEqual([said]);
  });

  test("a month is its first day where it begins, and its last where it ends", () => {
    const [, second] = read(`${HEAD}\nA;plug;4,00;01/2027;01/2027\nB;clip;4,00;01/2027;01/2027`).lines;
    expect(second).toMatchObject({ from: sheetDate(2027, 1, 1), until: sheetDate(2027, 1, 31) });
  });

  test("a line's own days go before the title's, each by itself", () => {
    const text = `Prices valid from 01.01.2026 until 31.12.2026\n${HEAD}\nA;plug;4,00;;\nB;clip;4,00;15.02.2026;\nC;tape;4,00;;15.12.2026`;
    const february = sheetDate(2026, 2, 15);
    const december = sheetDate(2026, 12, 15);
    expect(read(text).lines.map((one) => [one.from, one.until])).toEqual([
      [from, until],
      [february, until],
      [from, december],
    ]);
  });
});

describe("the currency of a line", () => {
  test.each<[string, string, string | undefined, readonly string[]]>([
    ["of its head", "Price GBP\nA;plug;4,00", "GBP", []],
    ["of its cell", "Price\nA;plug;£4,00", "GBP", []],
    ["of its column", "Price;Currency\nA;plug;4,00;GBP", "GBP", []],
    ["the same twice", "Price GBP;Currency\nA;plug;£4,00;GBP", "GBP", []],
    ["a sign that another word explains", "Price;Currency\nA;plug;$4,00;CAD", "CAD", []],
    [
      "two of them",
      "Price GBP;Currency\nA;plug;4,00;USD",
      "USD",
      ["The line names USD and GBP. Put the one in which its price is into the list."],
    ],
    [
      "a word that is none",
      "Price;Currency\nA;plug;4,00;shells",
      undefined,
      ["“shells” is no currency that is known. Write its code, such as EUR."],
    ],
  ])("%s", (_, text, currency, doubts) => {
    const found = only(read(`Article;Description;${text}`));
    expect({ currency: found.currency, doubts: found.doubts }).toEqual({ currency, doubts });
  });

  test("one that names none among lines that do is asked", () => {
    const { lines, questions } = read("Article;Description;Price\nA;plug;£4,00\nB;clip;3,00");
    expect(lines.map(({ currency, doubts }) => [currency, doubts])).toEqual([
      ["GBP", []],
      [undefined, ["The line names no currency, and other lines name theirs. Put it into the list."]],
    ]);
    expect(questions).toEqual([]);
    // With a currency of the whole list nothing is open.
    const answered = read("Article;Description;Price\nA;plug;£4,00\nB;clip;3,00", { currency: "EUR" }).lines;
    expect(answered.map(({ currency, doubts }) => [currency, doubts])).toEqual([
      ["GBP", []],
      ["EUR", []],
    ]);
  });
});

describe("a line that may be torn", () => {
  test("more cells than heads; blank ones don't count", () => {
    const HEAD = "Article;Description;Price EUR";
    expect(only(read(`${HEAD}\nA;plug;4,00;7`)).doubts).toEqual([
      "The line has more cells than the head row, so they may stand in wrong columns. Put text that holds the sign between cells in quotes.",
    ]);
    expect(only(read(`${HEAD}\nA;plug;4,00;;`)).doubts).toEqual([]);
  });

  test("a quotation mark that is never closed", () => {
    const table = { ...tableOf("Article;Description;Price EUR\nA;plug;4,00\nB;clip;5,00"), opened: [3] };
    const { lines } = readPriceList(table, { currency: "EUR", today: TODAY });
    expect(lines.map(({ doubts }) => doubts)).toEqual([
      [],
      [
        "The line has a quotation mark that is never closed, so its cells may be parted wrongly. Close it in the list, or leave the line out.",
      ],
    ]);
  });
});
