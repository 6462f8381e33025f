/**
 * The words of price lists: heads, units, packs, currencies, days and cells of prices, each in several of the languages
 * in which suppliers write them. What a word means is common practice of such lists, from memory; no source.
 */
import {
  currenciesIn,
  currencyCode,
  canStandFor,
  isCode,
  withoutCurrencies,
} from "../../../src/workbooks/prices/currencies";
import { basisInHead, headMeaning, type HeadMeaning } from "../../../src/workbooks/prices/headMeaning";
import { dateOrder, datesInTitle, readListDate } from "../../../src/workbooks/prices/listDates";
import {
  columnStyle,
  decimalSignOf,
  readFigure,
  type ColumnStyle,
} from "../../../src/workbooks/prices/listNumbers";
import { packInCell, packInDescription } from "../../../src/workbooks/prices/packOf";
import { plainWords } from "../../../src/workbooks/prices/plainWords";
import { currenciesOfFormat, cutCell, type CutCell } from "../../../src/workbooks/prices/priceCell";
import {
  basisOf,
  isLength,
  packInWords,
  saleUnit,
  type Basis,
} from "../../../src/workbooks/prices/saleUnits";
import { sheetDate } from "../../../src/workbooks/sheetDate";

test.each([
  ["Größe", "grosse"],
  ["  Désignation  ", "designation"],
  ["UNIT_PRICE", "unit price"],
  ["a  b\tc", "a b c"],
  ["a__b  c", "a b c"],
  ["Straße_é", "strasse e"],
])("%j is %j in plain words", (text, plain) => {
  expect(plainWords(text)).toBe(plain);
});

describe("currencies", () => {
  test.each<[string, string | undefined, readonly string[]]>([
    ["EUR", undefined, ["EUR"]],
    ["Price eur", undefined, ["EUR"]],
    ["gbp, usd and chf", undefined, ["GBP", "USD", "CHF"]],
    // "try", "cad" and others are words in small letters.
    ["try this", undefined, []],
    ["TRY", undefined, ["TRY"]],
    ["EURO", undefined, ["EUR"]],
    ["NEUR", undefined, []],
    ["EUROPE", undefined, []],
    ["€ 4", undefined, ["EUR"]],
    ["4 €, 5 €", undefined, ["EUR"]],
    ["£ or €", undefined, ["GBP", "EUR"]],
    ["$", undefined, ["$"]],
    ["$", "CAD", ["CAD"]],
    ["$", "cad", ["CAD"]],
    ["$", "EUR", ["$"]],
    ["US$ 4", "CAD", ["USD"]],
    ["C$ 4", undefined, ["CAD"]],
    ["R$ 4", undefined, ["BRL"]],
    ["kr", undefined, ["kr"]],
    ["kr", "NOK", ["NOK"]],
    ["12 kr.", "SEK", ["SEK"]],
    ["park", "SEK", []],
    ["Fr. 12", undefined, ["CHF"]],
    ["pounds sterling", undefined, ["GBP"]],
    ["4 zł", undefined, ["PLN"]],
    ["4 Kč", undefined, ["CZK"]],
    ["dollars", "AUD", ["AUD"]],
    ["nothing", undefined, []],
  ])("%j, where prices are in %j", (text, own, wanted) => {
    expect(currenciesIn(text, own)).toEqual(wanted);
  });

  test("what a person types for one", () => {
    expect(currencyCode(" € ")).toBe("EUR");
    expect(currencyCode("gbp")).toBe("GBP");
    expect(currencyCode("$", "NZD")).toBe("NZD");
    expect(currencyCode(" xau ")).toBe("XAU");
    expect(currencyCode("EUR or USD")).toBe("EUR OR USD");
    expect([isCode("EUR"), isCode("$"), isCode("EURO"), isCode("eur")]).toEqual([true, false, false, false]);
    expect([
      canStandFor("$", "CAD"),
      canStandFor("kr", "CAD"),
      canStandFor("KR", "SEK"),
      canStandFor("?", "EUR"),
    ]).toEqual([true, false, true, false]);
    expect(withoutCurrencies("4€ each").trim()).toBe("4  each");
  });

  test.each<[string, string | undefined, readonly string[]]>([
    ["#,##0.00 [$€-407]", undefined, ["EUR"]],
    ["[$£-809]#,##0.00", undefined, ["GBP"]],
    ["[$CHF] #,##0.00", undefined, ["CHF"]],
    ['"£"#,##0.00', undefined, ["GBP"]],
    ['#,##0.00" EUR"', undefined, ["EUR"]],
    ["$#,##0.00", "USD", ["USD"]],
    ["\\$#,##0.00", "USD", ["USD"]],
    // The part behind the semicolon is for negative numbers.
    ["#,##0.00;[$€-407]", undefined, []],
    ["_€#,##0.00", undefined, []],
    ["0.00", undefined, []],
    ["CHF 0.00", undefined, []],
  ])("of the number format %s", (format, own, wanted) => {
    expect(currenciesOfFormat(format, own)).toEqual(wanted);
  });
});

describe("units of sale", () => {
  test.each([
    ["m", "m"],
    ["Mtr.", "m"],
    ["metres", "m"],
    ["lfm", "m"],
    ["ml", "m"],
    ["ft", "ft"],
    ["Feet", "ft"],
    ["pcs", "pc"],
    ["Stück", "pc"],
    ["Stk.", "pc"],
    ["pièce", "pc"],
    ["ud", "pc"],
    ["stuks", "pc"],
    ["each", "pc"],
    ["EA", "pc"],
    ["pack", "pack"],
    ["Karton", "pack"],
    ["boîte", "pack"],
    ["caja", "pack"],
    ["doos", "pack"],
    ["VPE", "pack"],
    ["reel", "reel"],
    ["Rolle", "reel"],
    ["touret", "reel"],
    ["rollo", "reel"],
    ["haspel", "reel"],
    ["set", "set"],
    ["Satz", "set"],
    ["pair", "pair"],
    ["Paar", "pair"],
    [" / m", "m"],
    [".m", "m"],
    ["m:", "m"],
    ["gross", undefined],
    ["", undefined],
    ["10", undefined],
  ])("%j is %s", (word, unit) => {
    expect(saleUnit(word)).toBe(unit);
  });

  test("lengths are metres and feet", () => {
    expect((["m", "ft", "pc", "reel", undefined] as const).map(isLength)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });

  test.each<[string, Basis | undefined]>([
    ["100 m", { quantity: 100, unit: "m" }],
    ["per 100 pcs", { quantity: 100, unit: "pc" }],
    ["je 100 Stück", { quantity: 100, unit: "pc" }],
    ["les 100", { quantity: 100 }],
    ["/100m", { quantity: 100, unit: "m" }],
    ["(per m)", { quantity: 1, unit: "m" }],
    ["price per m", { quantity: 1, unit: "m" }],
    ["Preis für 10", { quantity: 10 }],
    ["per the m", { quantity: 1, unit: "m" }],
    ["m", { quantity: 1, unit: "m" }],
    ["1000", { quantity: 1000 }],
    ["1.000", { quantity: 1000 }],
    ["1 000 m", { quantity: 1000, unit: "m" }],
    ["1'000", { quantity: 1000 }],
    ["100,00", { quantity: 100 }],
    ["100.0", { quantity: 100 }],
    ["10 x pc", { quantity: 10, unit: "pc" }],
    ["0", undefined],
    ["0 m", undefined],
    ["%", { quantity: 100 }],
    ["% m", { quantity: 100, unit: "m" }],
    ["%Stk", { quantity: 100, unit: "pc" }],
    ["% more", undefined],
    ["hundert", { quantity: 100 }],
    ["cent", { quantity: 100 }],
    ["‰", { quantity: 1000 }],
    ["mille", { quantity: 1000 }],
    ["Tsd.", { quantity: 1000 }],
    ["km", { quantity: 1000, unit: "m" }],
    ["2 km", { quantity: 2000, unit: "m" }],
    ["mft", { quantity: 1000, unit: "ft" }],
    ["kft", { quantity: 1000, unit: "ft" }],
    ["C ft", { quantity: 100, unit: "ft" }],
    ["100'", { quantity: 100, unit: "ft" }],
    ["100 m reel", { quantity: 100, unit: "m" }],
    ["100-m-Rolle", undefined],
    ["10 pc pack", { quantity: 10, unit: "pc" }],
    ["10 reel pack", undefined],
    ["C", undefined],
    ["many", undefined],
    ["10 many", undefined],
    ["", undefined],
  ])("%j holds for %j", (text, wanted) => {
    expect(basisOf(text)).toStrictEqual(wanted);
  });

  test("letters are quantities in a column of its own", () => {
    const of = (text: string): Basis | undefined => basisOf(text, true);
    expect(["C", "M", "E", "T", "mil"].map((letter) => of(letter)?.quantity)).toEqual([
      100, 1000, 1, 1000, 1000,
    ]);
    expect(of("M")).toStrictEqual({ quantity: 1000 });
    expect(of("100")).toStrictEqual({ quantity: 100 });
  });

  test.each<[string, Basis | undefined]>([
    ["drop, 100 m reel", { quantity: 100, unit: "m" }],
    ["drop 100m-Ring", { quantity: 100, unit: "m" }],
    ["drop, reel of 100 m", { quantity: 100, unit: "m" }],
    ["drop, Rolle 250 m", { quantity: 250, unit: "m" }],
    ["drop, 1.000 m Trommel", { quantity: 1000, unit: "m" }],
    ["drop 500 ft reel", { quantity: 500, unit: "ft" }],
    ["drop 500 feet reel", { quantity: 500, unit: "ft" }],
    ["drop 500' reel", { quantity: 500, unit: "ft" }],
    ["drop, touret de 500 m", { quantity: 500, unit: "m" }],
    ["drop, 100 m op rol", { quantity: 100, unit: "m" }],
    ["clips, bag of 100", { quantity: 100, unit: "pc" }],
    ["Clips, Beutel mit 50 Stk", { quantity: 50, unit: "pc" }],
    ["clips, boîte de 50", { quantity: 50, unit: "pc" }],
    ["clips, bolsa de 25 uds", { quantity: 25, unit: "pc" }],
    ["clips, doos 25 stuks", { quantity: 25, unit: "pc" }],
    ["Clips, 50er Pack", { quantity: 50, unit: "pc" }],
    ["clips 50-pack", { quantity: 50, unit: "pc" }],
    ["clips (100 pcs)", { quantity: 100, unit: "pc" }],
    ["clips, bag of 0", undefined],
    ["clips, 0 m reel", undefined],
    ["drop, 100 m", undefined],
    ["2-way splitter", undefined],
    ["plug", undefined],
  ])("%j tells its own pack: %j", (text, wanted) => {
    expect(packInWords(text)).toStrictEqual(wanted);
    expect(packInDescription(text)).toStrictEqual(wanted);
  });

  test.each<[string, ColumnStyle, ReturnType<typeof packInCell>]>([
    ["", undefined, {}],
    ["100", undefined, { quantity: 100 }],
    ["1.000", ",", { quantity: 1000 }],
    [
      "1.000",
      undefined,
      { doubt: "A pack of “1.000” can be 1000 or 1. Say which sign stands before decimals." },
    ],
    // A pack of a part of a piece is none, so 1,234 is read as thousands.
    ["1,234", undefined, { quantity: 1234 }],
    ["100,00", ",", { quantity: 100 }],
    [
      "1,5",
      undefined,
      { doubt: "A pack of 1,5 can't be: there are no parts of a piece. Put the right number into the list." },
    ],
    ["0", undefined, { doubt: "A pack of 0 can't be. Give how many are in one, or leave the line out." }],
    ["-5", undefined, { doubt: "A pack of -5 can't be. Give how many are in one, or leave the line out." }],
    ["-", undefined, { quantity: 1 }],
    ["loose", undefined, { quantity: 1 }],
    ["einzeln", undefined, { quantity: 1 }],
    ["vrac", undefined, { quantity: 1 }],
    ["pcs", undefined, { quantity: 1 }],
    ["piece", undefined, { quantity: 1, unit: "pc" }],
    ["m", undefined, { quantity: 1, unit: "m" }],
    ["100 m", undefined, { quantity: 100, unit: "m" }],
    ["100 pcs", undefined, { quantity: 100, unit: "pc" }],
    ["1 pc", undefined, { quantity: 1, unit: "pc" }],
    ["2 packs", undefined, { quantity: 2 }],
    ["2 reels", undefined, { quantity: 2 }],
    ["1 x 100 m", undefined, { quantity: 100, unit: "m" }],
    ["1x50", undefined, { quantity: 50 }],
    [
      "10 x 100",
      undefined,
      {
        doubt:
          "“10 x 100” can be a pack of 100 or of 1000. Put the number alone into the list, or leave the line out.",
      },
    ],
    ["bag of 50", undefined, { quantity: 50, unit: "pc" }],
    ["reel of 100 m", undefined, { quantity: 100, unit: "m" }],
    ["bag", undefined, { word: "pack" }],
    ["Rolle", undefined, { word: "reel" }],
    [
      "plenty",
      undefined,
      { doubt: "“plenty” can't be read as what is in a pack. Put a number there, such as 100." },
    ],
    ["hundert", undefined, { quantity: 100 }],
  ])("a pack's cell %j, decimals %j: %j", (cell, style, wanted) => {
    expect(packInCell(cell, style)).toStrictEqual(wanted);
  });

  test("a pack's cell that is a number of a workbook, or is not there", () => {
    expect(packInCell(undefined, undefined)).toStrictEqual({});
    expect(packInCell({ number: 1000, shown: "1.000" }, ".")).toStrictEqual({ quantity: 1000 });
    expect(packInCell({ number: 0, shown: "0" }, ".")).toHaveProperty("doubt");
    expect(packInCell("  ", ".")).toStrictEqual({});
  });
});

describe("figures", () => {
  test.each([
    ["0.395", "."],
    ["0,395", ","],
    [".5", "."],
    [",5", ","],
    ["12.5", "."],
    ["12,50", ","],
    ["1.2345", "."],
    ["1234.567", "."],
    ["-12,5", ","],
    ["+12.5", "."],
    ["1.234,50", ","],
    ["1,234.50", "."],
    ["1 234,50", ","],
    ["1'234.50", "."],
    ["1.234.567", ","],
    ["1,234,567", "."],
    ["1.234", undefined],
    ["12,345", undefined],
    ["123.456", undefined],
    ["7", undefined],
    ["1234", undefined],
    ["", undefined],
    ["12.34.56", undefined],
    ["a12.5", undefined],
    ["12.5x", undefined],
  ])("%j tells the decimal sign %j", (figure, sign) => {
    expect(decimalSignOf(figure)).toBe(sign);
  });

  test("a column that tells one, both or none", () => {
    expect(columnStyle(["7", "1.234"])).toBeUndefined();
    expect(columnStyle(["7", "12.5", "1.234"])).toBe(".");
    expect(columnStyle(["12,5", "1.234"])).toBe(",");
    expect(columnStyle(["12,5", "12.5"])).toBe("mixed");
    expect(columnStyle([])).toBeUndefined();
  });

  test.each<[string, ColumnStyle, ReturnType<typeof readFigure>]>([
    ["1.234", ",", { value: 1234 }],
    ["1.234", ".", { value: 1.234 }],
    ["1,234", ".", { value: 1234 }],
    ["1,234", ",", { value: 1.234 }],
    ["1.234", undefined, { grouped: 1234, decimal: 1.234 }],
    ["1.234", "mixed", { grouped: 1234, decimal: 1.234 }],
    ["1'234.50", undefined, { value: 1234.5 }],
    ["12.5", ",", { value: 12.5 }],
    ["word", ".", undefined],
  ])("%j in a column of %j is %j", (text, style, wanted) => {
    expect(readFigure(text, style)).toStrictEqual(wanted);
  });

  const figure = (text: string, more: Partial<Extract<CutCell, { kind: "figure" }>> = {}): CutCell => ({
    kind: "figure",
    figure: text,
    currencies: [],
    ...more,
  });
  test.each<[string, CutCell]>([
    ["", { kind: "blank" }],
    ["   ", { kind: "blank" }],
    ["-", { kind: "blank" }],
    ["--", { kind: "blank" }],
    ["n/a", { kind: "blank" }],
    ["k. A.", { kind: "blank" }],
    ["none", { kind: "blank" }],
    ["12", figure("12")],
    ["12,50", figure("12,50")],
    ["-12,50", figure("-12,50")],
    ["1 234,50", figure("1 234,50")],
    ["1'234.50", figure("1'234.50")],
    ["€ 12,50", figure("12,50", { currencies: ["EUR"] })],
    ["12,50 €", figure("12,50", { currencies: ["EUR"] })],
    ["12.-", figure("12")],
    ["12,–", figure("12")],
    ["12,50/m", figure("12,50", { basis: { quantity: 1, unit: "m" } })],
    ["12,50 per 100 m", figure("12,50", { basis: { quantity: 100, unit: "m" } })],
    ["12,50 € / Stk", figure("12,50", { currencies: ["EUR"], basis: { quantity: 1, unit: "pc" } })],
    ["12.- pro m", figure("12", { basis: { quantity: 1, unit: "m" } })],
    ["12,50 per moon", { kind: "words" }],
    ["(12,50)", { kind: "words" }],
    ["12,50 about", { kind: "words" }],
    ["about 12,50", { kind: "words" }],
    ["soon", { kind: "words" }],
    ["=A1*2", { kind: "formula" }],
    ["@SUM(A1)", { kind: "formula" }],
    ["+A1", { kind: "formula" }],
    ["+12", figure("+12")],
    ["auf Anfrage", { kind: "request" }],
    ["P.O.A.", { kind: "request" }],
    ["sur demande", { kind: "request" }],
    ["a consultar", { kind: "request" }],
    ["op aanvraag", { kind: "request" }],
    ["TBC", { kind: "request" }],
    ["discontinued", { kind: "gone" }],
    ["entfällt", { kind: "gone" }],
    ["supprimé", { kind: "gone" }],
    ["descatalogado", { kind: "gone" }],
    ["vervallen", { kind: "gone" }],
    ["no longer available, call", { kind: "gone" }],
  ])("a price's cell %j", (cell, wanted) => {
    expect(cutCell(cell, undefined)).toStrictEqual(wanted);
  });

  test("a price's cell that is a number, or is not there", () => {
    expect(cutCell(undefined, undefined)).toStrictEqual({ kind: "blank" });
    expect(cutCell({ number: 12.5, shown: "12.50" }, undefined)).toStrictEqual(
      figure("12.5", { number: 12.5 }),
    );
    expect(cutCell({ number: 12.5, shown: "$12.50", format: '"$"0.00' }, "CAD")).toStrictEqual(
      figure("12.5", { number: 12.5, currencies: ["CAD"] }),
    );
  });
});

describe("days", () => {
  test.each([
    [["13/04/2027"], "dmy"],
    [["04/13/2027"], "mdy"],
    [["12/12/2027"], undefined],
    [["03/04/2027", "13.04.27"], "dmy"],
    [["13/04/2027", "04/13/2027"], "mixed"],
    [[" 13-04-2027 "], "dmy"],
    [["2027-04-13", "", "x13/04/2027"], undefined],
  ] as const)("%j: %s", (cells, order) => {
    expect(dateOrder(cells)).toBe(order);
  });

  test("a number of a workbook tells no order", () => {
    expect(dateOrder([{ number: 1, shown: "13/04/2027" }])).toBeUndefined();
  });

  const day = { value: sheetDate(2027, 4, 3) };
  test.each<[string, "dmy" | "mdy" | undefined, { value: number | undefined } | undefined]>([
    ["", undefined, { value: undefined }],
    ["  ", undefined, { value: undefined }],
    ["-", undefined, { value: undefined }],
    ["until further notice", undefined, { value: undefined }],
    ["bis auf weiteres", undefined, { value: undefined }],
    ["jusqu'à nouvel ordre", undefined, { value: undefined }],
    ["indefinido", undefined, { value: undefined }],
    ["onbeperkt", undefined, { value: undefined }],
    ["2027-04-03", undefined, day],
    ["2027-04-03 00:00", undefined, day],
    ["2027-04-03T12:30:00Z", undefined, day],
    ["2027-04-03 12:30:00.5", undefined, day],
    ["3 April 2027", undefined, day],
    ["03.04.2027", undefined, day],
    ["3. 4. 2027", undefined, day],
    ["03/04/2027", "dmy", day],
    ["04/03/2027", "mdy", day],
    // The column says otherwise.
    ["04.03.2027", "dmy", { value: sheetDate(2027, 3, 4) }],
    ["03/04/2027", undefined, undefined],
    ["sometime", undefined, undefined],
    ["31.02.2027", undefined, undefined],
  ])("%j, where the order is %j", (text, order, wanted) => {
    const found = readListDate(text, order);
    if (wanted) expect(found).toEqual(wanted);
    else expect(found).toHaveProperty("refused");
  });

  test.each([
    ["01/2027", sheetDate(2027, 1, 1), sheetDate(2027, 1, 31)],
    ["2.2028", sheetDate(2028, 2, 1), sheetDate(2028, 2, 29)],
    ["12-2027", sheetDate(2027, 12, 1), sheetDate(2027, 12, 31)],
  ])("the month %s", (text, first, last) => {
    expect(readListDate(text, undefined)).toEqual({ value: first });
    expect(readListDate(text, undefined, true)).toEqual({ value: last });
  });

  test("months that there are not are refused", () => {
    for (const text of ["0/2027", "13/2027"]) expect(readListDate(text, undefined)).toHaveProperty("refused");
  });

  test("a workbook's day is its number, without the hour; a number that is shown is read as shown", () => {
    expect(readListDate({ number: day.value + 0.75, shown: undefined }, undefined)).toEqual(day);
    expect(readListDate({ number: 5, shown: "2027-04-03" }, undefined)).toEqual(day);
    expect(readListDate({ number: 5, shown: undefined }, undefined)).toHaveProperty("refused");
    expect(readListDate(undefined, undefined)).toEqual({ value: undefined });
    expect(readListDate({ number: 5, shown: "01/2027" }, undefined, true)).toEqual({
      value: sheetDate(2027, 1, 31),
    });
  });

  test.each([
    ["valid from 1.2.2027 until 31.12.2027", { from: "1.2.2027", until: "31.12.2027" }],
    ["gültig ab 1.2.2027", { from: "1.2.2027" }],
    ["Stand: 1.2.2027", { from: "1.2.2027" }],
    ["bis einschließlich 31.12.2027", { until: "31.12.2027" }],
    ["à partir du 1er février 2027", { from: "1er février 2027" }],
    ["jusqu'au 31/12/2027", { until: "31/12/2027" }],
    ["hasta el 31 de diciembre de 2027", { until: "31 de diciembre de 2027" }],
    ["geldig tot en met 31-12-2027", { until: "31-12-2027" }],
    ["1.2.2027 – 31.12.2027", { from: "1.2.2027", until: "31.12.2027" }],
    ["until 31.12.2027, from 1.2.2027", { from: "1.2.2027", until: "31.12.2027" }],
    ["February 1, 2027", { from: "February 1, 2027" }],
    ["until end of 2027", { untilYear: 2027 }],
    ["bis Ende 2027", { untilYear: 2027 }],
    ["jusqu'à fin 2027", { untilYear: 2027 }],
    ["hasta finales de 2027", { untilYear: 2027 }],
    ["tot eind 2027", { untilYear: 2027 }],
    ["all year", {}],
  ])("%s", (text, wanted) => {
    expect(datesInTitle(text)).toStrictEqual(wanted);
  });
});

describe("heads", () => {
  const meaning = (found: Omit<HeadMeaning, "currencies">, ...currencies: string[]): HeadMeaning => ({
    ...found,
    currencies,
  });
  const m = { quantity: 1, unit: "m" } as const;
  const hundred = { quantity: 100, unit: "m" } as const;
  test.each<[string, HeadMeaning]>([
    ...(
      [
        [
          "article",
          "Article no.|Art.-Nr.|Artikelnummer|SKU|Item No|Part number|Réf.|Référence|Código|Bestellnr.|Cat. no.|Artikelnr|Material-Nr.",
        ],
        ["description", "Description|Bezeichnung|Désignation|Descripción|Omschrijving|Product name"],
        ["unit", "Unit|UoM|Einheit|ME|Unité|Unidad|Eenheid|Sold by"],
        [
          "pack",
          "Pack|Pack size|VPE|Conditionnement|Embalaje|Verpakking|Qty per box|Reel length|Length|Menge",
        ],
        ["per", "PE|Preiseinheit|Price unit|Per|Prix par|Unidad de precio|Prijs per"],
        ["discount", "Discount|Discount %|Rabatt|Remise|Dto. %|Korting"],
        ["currency", "Currency|Währung|Devise|Moneda|Valuta"],
        ["from", "Valid from|Gültig ab|Date|Valable du|Desde|Vanaf"],
        ["until", "Valid until|Valid to|Gültig bis|Fin de validité|Hasta|Geldig tot|Price valid until"],
        ["status", "Status|Availability|Bemerkung|Disponibilité|Observaciones|Opmerking"],
        ["fromQuantity", "From qty|Ab Menge|Staffel|Price break|Seuil|Escala|Vanaf aantal"],
        ["price", "Price|Preis|Prix|Precio|Prijs"],
        ["perUnit", "Unit price|Einzelpreis|Prix unitaire|Precio unitario|Stuksprijs|Price each|Price/unit"],
        [
          "perPack",
          "Price per pack|Preis je Rolle|Prix la boîte|Precio por caja|Prijs per doos|Rollenpreis|Pack price",
        ],
        ["listPrice", "List price|Listenpreis|Prix public|Tarifa|Catalogue price"],
        ["withTax", "Price incl. VAT|Preis inkl. MwSt.|Prix TTC|Precio IVA incl.|Prijs incl. btw"],
      ] as const
    ).flatMap(([key, heads]) =>
      heads.split("|").map((head): [string, HeadMeaning] => [head, meaning({ key })]),
    ),
    ["Price EUR", meaning({ key: "price" }, "EUR")],
    ["€", meaning({ key: "price" }, "EUR")],
    ["EUR / m", meaning({ key: "perUnit", basis: m }, "EUR")],
    ["€/100 m", meaning({ key: "perUnit", basis: hundred }, "EUR")],
    ["€/Stk", meaning({ key: "perUnit", basis: { quantity: 1, unit: "pc" } }, "EUR")],
    ["£/reel", meaning({ key: "perPack" }, "GBP")],
    ["EUR -", meaning({ key: "price" }, "EUR")],
    ["()", meaning({})],
    ["Price per m", meaning({ key: "perUnit", basis: m })],
    ["Price per 100 m", meaning({ key: "perUnit", basis: hundred })],
    ["Preis/100 m netto", meaning({ key: "perUnit", basis: hundred, net: true })],
    ["Price per 100", meaning({ key: "perUnit", basis: { quantity: 100 } })],
    ["Price per reel", meaning({ key: "perPack" })],
    ["per m", meaning({ key: "perUnit", basis: m })],
    ["je 100 m", meaning({ key: "perUnit", basis: hundred })],
    ["Net price", meaning({ key: "price", net: true })],
    ["Nettopreis", meaning({ key: "price", net: true })],
    ["Your price", meaning({ key: "price", net: true })],
    ["Net list price", meaning({ key: "price", net: true })],
    ["Gross price", meaning({ key: "listPrice", gross: true })],
    ["Bruttopreis", meaning({ key: "listPrice", gross: true })],
    ["Gross price excl. VAT", meaning({ key: "listPrice" })],
    ["Gross list price", meaning({ key: "listPrice" })],
    ["List price per 100 m", meaning({ key: "listPrice", basis: hundred })],
    ["Bruttopreis je 100 m", meaning({ key: "listPrice", gross: true, basis: hundred })],
    ["UVP je 100 m", meaning({ key: "listPrice", retail: true, basis: hundred })],
    ["Prix TTC les 100 m", meaning({ key: "withTax", basis: hundred })],
    ["RRP", meaning({ key: "listPrice", retail: true })],
    ["UVP", meaning({ key: "listPrice", retail: true })],
    ["RRP incl. VAT", meaning({ key: "withTax", retail: true })],
    ["Trade price", meaning({ key: "price", net: true })],
    ["1+", meaning({ key: "price", from: 1 })],
    ["ab 10", meaning({ key: "price", from: 10 })],
    ["10 - 99", meaning({ key: "price", from: 10 })],
    [">= 100", meaning({ key: "price", from: 100 })],
    ["Price from 50", meaning({ key: "price", from: 50 })],
    ["Price 25 and more", meaning({ key: "price", from: 25 })],
    ["Price from 0", meaning({ key: "price" })],
    ["EAN", meaning({ unused: true })],
    ["Barcode", meaning({ unused: true })],
    ["Manufacturer", meaning({ unused: true })],
    ["Manufacturer part no.", meaning({ unused: true })],
    ["Warengruppe", meaning({ unused: true })],
    ["Lead time", meaning({ unused: true })],
    ["Weight", meaning({ unused: true })],
    ["MOQ", meaning({ unused: true })],
    ["Old price", meaning({ unused: true })],
    ["Prix ancien", meaning({ unused: true })],
    ["Discount group", meaning({ unused: true, discountGroup: true })],
    ["Rabattgruppe", meaning({ unused: true, discountGroup: true })],
    ["RG", meaning({ unused: true, discountGroup: true })],
    ["Product", meaning({ key: "description", else: "article" })],
    ["Artikel", meaning({ key: "description", else: "article" })],
    ["Artículo", meaning({ key: "description", else: "article" })],
    ["Cena netto", meaning({ key: "price", net: true })],
    ["Cena brutto", meaning({ key: "withTax" })],
    ["Varenr.", meaning({ key: "article" })],
    ["Moms %", meaning({ unused: true })],
    ["Price date", meaning({ key: "from" })],
    ["P.V.P.", meaning({ key: "listPrice", retail: true })],
    ["Price currency", meaning({ key: "currency" })],
    ["Frobnication", meaning({})],
    ["Unit\nprice", meaning({ key: "perUnit" })],
    ["Unit price:*", meaning({ key: "perUnit" })],
    ["[Price]", meaning({ key: "price" })],
  ])("%j", (head, wanted) => {
    expect(headMeaning(head)).toStrictEqual(wanted);
  });

  test("a sign that several share is the workbook's own", () => {
    expect(headMeaning("Price $", "CAD").currencies).toEqual(["CAD"]);
  });

  test.each<[string, Basis | undefined]>([
    ["price / 100 m", { quantity: 100, unit: "m" }],
    ["prix les 100 m", { quantity: 100, unit: "m" }],
    ["price per m net", { quantity: 1, unit: "m" }],
    ["price 100 m", { quantity: 100, unit: "m" }],
    ["price (1000)", { quantity: 1000 }],
    ["price % m", { quantity: 100, unit: "m" }],
    ["price per unit", undefined],
    ["price per each", undefined],
    ["price per moon", undefined],
    ["price 20 m", undefined],
    ["price", undefined],
  ])("for how much %j is", (head, wanted) => {
    expect(basisInHead(head)).toStrictEqual(wanted);
  });
});
