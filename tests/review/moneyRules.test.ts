/** Sums, tax, zeros and old values: each finding whole, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import type { Reviewed } from "../../src/review/rule";
import { otherFormula } from "../../src/review/rules/otherFormula";
import { rowsWrong } from "../../src/review/rules/rowsWrong";
import { staleValues } from "../../src/review/rules/staleValues";
import { taxBase } from "../../src/review/rules/taxBase";
import { textNumbers } from "../../src/review/rules/textNumbers";
import { totals } from "../../src/review/rules/totals";
import { zeroAmounts } from "../../src/review/rules/zeroAmounts";
import type { BookResult } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "../support/books";
import { at, atField, found, messages, smallBook, type Row } from "./smallBook";

const differing = (name: string, more: object = {}) => ({
  weight: "wrong" as const,
  place: atField(name),
  message: "Not the template's.",
  remedy: "Look.",
  typedOver: true,
  ...more,
});

describe("the tax", () => {
  const told = (
    tax: number | string,
    right: number | string | undefined,
    site: Row = {},
    expected: Row = {},
  ) =>
    found(taxBase, smallBook({}, { quote_tax: tax, site_tax: 0.2, ...site }), {
      expected: smallBook({}, { quote_tax: right, ...expected }),
    });
  const WRONG = {
    weight: "wrong",
    place: atField("quote_tax"),
    remedy: "Enter the template's formulas for the taxable part and the tax again.",
  };
  test("on another base, too much or too little", () => {
    expect(told(100, 60, { site_tax_on: "materials" })).toStrictEqual([
      {
        ...WRONG,
        message: "The tax is 100.00; 20 % on materials come to 60.00.",
        expected: "60.00",
        effect: "The customer is asked for 40.00 too much.",
      },
    ]);
    expect(told(60, 99.5)).toStrictEqual([
      {
        ...WRONG,
        message: "The tax is 60.00; 20 % on the price come to 99.50.",
        expected: "99.50",
        effect: "The customer is asked for 39.50 too little.",
      },
    ]);
  });
  test("where some is in a class of its own", () => {
    const message = (of: number) => told(100, 60, {}, { price_of_class: of })[0]!.message;
    expect(message(50)).toBe("The tax is 100.00; the tax classes of Site with the usual tax come to 60.00.");
    expect(message(0)).toBe("The tax is 100.00; 20 % on the price come to 60.00.");
  });
  test("a cent off, or where one of the three is no number: nothing", () => {
    expect(told(100, 100.01)).toEqual([]);
    expect(told(100, 100.02)).toHaveLength(1);
    expect(told("100", 60)).toEqual([]);
    expect(told(100, "60")).toEqual([]);
    expect(told(100, 60, { site_tax: "" })).toEqual([]);
    expect(found(taxBase, smallBook({}, { quote_tax: 100, site_tax: 0.2 }))).toEqual([]);
  });
});

describe("totals", () => {
  const SOUND = { quote_reception: 60, quote_cable: 40, quote_net: 100, quote_tax: 20, quote_total: 120 };
  const REMEDY = "Enter the template's formula in this cell again.";
  /** Computed anew it is sound. */
  const told = (shown: Row, more: Partial<Reviewed> = {}): Finding[] =>
    found(totals, smallBook({}, { ...SOUND, ...shown }), { own: smallBook({}, SOUND), ...more });
  const expected = smallBook({}, SOUND);
  test("that add up, with empty lines, and those that are no numbers: nothing", () => {
    expect(told({})).toEqual([]);
    expect(told({ quote_labour: "" })).toEqual([]);
    for (const name of ["quote_net", "quote_tax", "quote_total"]) {
      expect(told({ [name]: "" })).toEqual([]);
      expect(told({ [name]: "5" })).toEqual([]);
    }
    expect(told({ quote_cable: "none" })).toEqual([]);
  });
  test.each<[string, number, Finding]>([
    [
      "quote_total",
      130,
      {
        weight: "wrong",
        place: atField("quote_total"),
        message: "quote_total is 130.00, the price and the tax come to 120.00.",
        expected: "120.00",
        effect: "The customer is asked for 10.00 too much.",
        remedy: REMEDY,
      },
    ],
    [
      "quote_cable",
      45,
      {
        weight: "wrong",
        place: atField("quote_cable"),
        message: "quote_cable is 45.00, so that the printed sums do not add up.",
        expected: "40.00",
        effect: undefined,
        remedy: REMEDY,
      },
    ],
    [
      "quote_tax",
      25,
      {
        weight: "wrong",
        place: atField("quote_tax"),
        message: "quote_tax is 25.00, so that the printed sums do not add up.",
        expected: "20.00",
        effect: undefined,
        remedy: REMEDY,
      },
    ],
  ])("%s alone is off", (name, value, finding) =>
    expect(told({ [name]: value }, { expected })).toStrictEqual([finding]),
  );
  test("the net is off against its lines and the total", () =>
    expect(told({ quote_net: 90 })).toStrictEqual([
      {
        weight: "wrong",
        place: atField("quote_net"),
        message: "quote_net is 90.00, the lines above it come to 100.00.",
        expected: "100.00",
        effect: "The customer is asked for 10.00 too little.",
        remedy: REMEDY,
      },
      {
        weight: "wrong",
        place: atField("quote_net"),
        message: "quote_net is 90.00, so that the printed sums do not add up.",
        expected: undefined,
        effect: undefined,
        remedy: REMEDY,
      },
    ]));
  test("more than half a cent", () => {
    expect(told({ quote_total: 120.004 })).toEqual([]);
    expect(told({ quote_total: 120.006 })).toHaveLength(1);
    expect(told({ quote_cable: 40.004 })).toEqual([]);
    expect(told({ quote_cable: 40.006 })).toHaveLength(1);
  });
  test("where no cell is off by itself the sum is told, unless a formula further up is at fault", () => {
    const shown = { quote_total: 130 };
    const own = smallBook({}, { ...SOUND, ...shown });
    const formula = [differing("price_cost")];
    expect(told(shown, { own }).map(({ place }) => place)).toEqual([atField("quote_total")]);
    expect(told(shown, { own, expected: own })).toHaveLength(1);
    expect(told(shown, { own, expected: own, differences: formula })).toEqual([]);
    expect(told(shown, { own, differences: formula })).toHaveLength(1);
  });
  test("a line that was typed over is told there; a sum is told here as well", () => {
    const named = (name: string) => ({
      own: smallBook({}, { ...SOUND, [name]: 45 }),
      differences: [differing(name)],
    });
    expect(told({ quote_cable: 45 }, named("quote_cable"))).toEqual([]);
    expect(told({ quote_total: 45 }, named("quote_total"))).toHaveLength(1);
  });
});

describe("a text that looks like a number", () => {
  const told = (site_slack: BookResult): Finding[] => found(textNumbers, smallBook({}, { site_slack }));
  test.each([
    ["12,5 m", "", 12.5],
    ["-3.5", "", -3.5],
    ["€ 40", "", 40],
    ["20 %", "", 0.2],
    ["1O", " with a letter for a digit", 10],
    ["l2.5 m", " with a letter for a digit", 12.5],
  ])("%s", (text, letter, meant) =>
    expect(told(text)).toStrictEqual([
      {
        weight: "wrong",
        place: atField("site_slack"),
        message: `Slack added to each run holds the text “${text}”${letter}, not a number.`,
        expected: `The number ${meant}, if that was meant.`,
        meant,
        effect: "Sums pass over it; its row shows an error or is left out.",
        remedy: "Type the number again, without unit and with this program's decimal sign.",
      },
    ]),
  );
  test("a number, words, letters alone, and a text where texts belong: nothing", () => {
    for (const value of [12, "some", "Ol", "12 x"]) expect(told(value)).toEqual([]);
    expect(messages(textNumbers, smallBook({}, { site_job: "12" }))).toEqual([]);
    expect(found(textNumbers, smallBook({}, { site_slack: "12" }), { definition: undefined })).toEqual([]);
  });
  test("in a block by its head", () =>
    expect(messages(textNumbers, smallBook({ rooms: [{ outlet: "12", run: 5 }, { run: "7 m" }] }))).toEqual([
      "Run holds the text “7 m”, not a number.",
    ]));
});

describe("an amount of zero", () => {
  const told = (fields: Row, blocks: Readonly<Record<string, readonly Row[]>> = {}): Finding[] =>
    found(zeroAmounts, smallBook({ rooms: [{ outlet: "a" }], ...blocks }, fields));
  const zero = (weight: string, place: object, label: string, called: string) => ({
    weight,
    place,
    message: `${label} is 0.`,
    expected: "A figure above 0, or its reason.",
    effect: "Nothing is counted for it.",
    remedy: `Enter the figure; or list “${called}” on Terms as 0 on purpose, with the reason.`,
  });
  test("of a share, of one that firms often leave out, and of a part; not of any other figure", () =>
    expect(
      told(
        { site_contingency: 0, site_tax: 0, site_margin: 0.2, site_slack: "0", site_latitude: 0 },
        {
          plates: [{ name: "Flat", price: 0 }, { price: 0 }, { name: "Deep", price: 5 }],
          plates_bought: [{ quantity: 2 }, { quantity: 2 }, { quantity: 2 }],
        },
      ),
    ).toStrictEqual([
      zero("worth knowing", atField("site_contingency"), "Contingency", "Contingency"),
      zero("doubtful", atField("site_tax"), "Tax", "Tax"),
      zero("wrong", at("plates_price", 1), "Price each of Flat", "Flat"),
    ]));
  test("of a part only where some of it is needed", () => {
    const part = (quantity: number) =>
      told({}, { plates: [{ name: "Flat", price: 0 }], plates_bought: [{ quantity }] }).length;
    expect([part(0), part(2)]).toEqual([0, 1]);
  });
  test("on purpose, or without a job: nothing", () => {
    expect(told({ site_tax: 0 }, { onpurpose: [{ what: "Tax", why: "abroad" }] })).toEqual([]);
    expect(told({ site_tax: 0 }, { rooms: [{ outlet: "" }] })).toEqual([]);
  });
});

test.each([
  ["dishes", "name", "seen"],
  ["feeders", "from", "check"],
  ["heads", "id", "check"],
  ["branches", "id", "check"],
  ["rooms", "outlet", "check"],
])("rows of %s that cannot be worked out, with their reason where it is given", (block, named, check) => {
  const row = (name: BookResult, verdict: string, trouble?: BookResult): Row => ({
    [named]: name,
    [`${check}_row`]: verdict,
    [`${check}_trouble`]: trouble,
  });
  const told = found(
    rowsWrong,
    smallBook({
      [block]: [
        row("X", "good"),
        row("S2", "bad", "S1 has 4 ports."),
        row("S3", "bad", ""),
        row("S4", "bad", { error: "#N/A" }),
      ],
    }),
  );
  const WRONG = {
    weight: "wrong",
    effect: "All that hangs on it has no level and no volts.",
    remedy: "Compare the row with the plan, and its parts with Parts.",
    mends: expect.any(Array) as [],
  };
  expect(told).toStrictEqual(
    ["S2: S1 has 4 ports.", "S3: it cannot be worked out.", "S4: it cannot be worked out."].map(
      (message, index) => ({ ...WRONG, place: at(`${block}_${check}_row`, 2 + index), message }),
    ),
  );
});

test("a changed formula is told with what it does to the total; one that was typed over is not", () => {
  const total = (quote_total: number) => smallBook({}, { quote_total });
  expect(
    found(otherFormula, total(90), {
      own: total(90),
      expected: total(100),
      differences: [differing("quote_tax"), differing("quote_net", { typedOver: false })],
    }),
  ).toStrictEqual([
    {
      weight: "wrong",
      place: atField("quote_net"),
      message: "Not the template's.",
      remedy: "Look.",
      effect: "The total is 90.00; with all of the template's formulas it is 100.00.",
    },
  ]);
});

describe("old values", () => {
  type Results = Readonly<Record<string, BookResult>>;
  const book = (results: Results, formulas: Readonly<Record<string, string>> = {}) =>
    bookOf({
      ...emptySheet("Price"),
      results: { ...results },
      cells: Object.fromEntries(Object.entries(formulas).map(([cell, formula]) => [cell, { formula }])),
    });
  const told = (stored: Results, anew: Results, more: Partial<Reviewed> = {}): Finding[] =>
    found(staleValues, book(stored), { own: book(anew), ...more });
  const OLD = {
    weight: "wrong",
    effect: "What is printed or read off this sheet is not what the inputs come to.",
    remedy: "Open the workbook where our functions run, enter the formulas again and save it.",
  };
  test("are told once a column, with what the first of them comes to", () =>
    expect(
      told(
        { A1: 5, A2: 7, A12: 8, B1: "high", C1: 3 },
        { A1: 6, A2: 8, A12: 9, B1: { error: "#REF!" }, C1: 3 },
      ),
    ).toStrictEqual([
      {
        ...OLD,
        place: { sheet: "Price", cell: "A1" },
        message: "Price shows 5 and 2 more in its column: an old value.",
        expected: "6",
      },
      {
        ...OLD,
        place: { sheet: "Price", cell: "B1" },
        message: "Price shows high: an old value.",
        expected: "#REF!",
      },
    ]));
  test("not what ours cannot compute; what is no more there is", () => {
    expect(told({ A1: 5 }, { A1: { error: "#BAD_EXPR" } })).toEqual([]);
    expect(told({ A1: 5 }, {})[0]!.expected).toBe("nothing");
    expect(
      found(staleValues, book({ A1: 5 }), { own: bookOf(emptySheet("Other")) }).map(
        ({ expected }) => expected,
      ),
    ).toEqual(["nothing"]);
  });
  test("not what only follows from a cell that is told by itself", () => {
    const own = book({ A1: 5, A2: 6, B1: 9 }, { A2: "A1*2", B1: "C1" });
    const cells = (differences: Reviewed["differences"]) =>
      found(staleValues, book({ A1: 4, A2: 4, B1: 4 }), { own, differences }).map(({ place }) => place!.cell);
    const [one] = [differing("x", { place: { sheet: "Price", cell: "A1" } })];
    expect(cells([one])).toEqual(["B1"]);
    expect(cells([])).toEqual(["A1", "B1"]);
  });
  test("of an earlier version other words with the same figures are none", () => {
    const earlier = { others: [] };
    const changed = (stored: BookResult, anew: BookResult) =>
      [told({ A1: stored }, { A1: anew }), told({ A1: stored }, { A1: anew }, { earlier })].map(
        ({ length }) => length,
      );
    expect(changed("Room 5 is too weak", "Too weak: room 5 here")).toEqual([1, 0]);
    expect(changed("Room 5 is weak", "Weak is room 5")).toEqual([1, 0]);
    expect(changed("Room 5 is too weak", "Too weak: room 6 here")).toEqual([1, 1]);
    expect(changed("Room 5 weak", "Weak is room 5")).toEqual([1, 1]);
    expect(changed("Weak is room 5", "Room 5 weak")).toEqual([1, 1]);
    expect(changed("All of it is weak", "It is weak all through")).toEqual([1, 0]);
    expect(changed(5, "Weak is room 5")).toEqual([1, 1]);
  });
});
