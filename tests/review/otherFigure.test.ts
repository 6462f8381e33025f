/** Number formats under which a page shows another figure: each finding whole, on a sheet for the customer and beside it. */
import { blankBook } from "../../src/review/blankBook";
import type { Finding } from "../../src/review/finding";
import type { Reviewed } from "../../src/review/rule";
import { otherFigure } from "../../src/review/rules/otherFigure";
import type { Book } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../src/workbooks/named";
import { emptySheet } from "../support/books";
import { found } from "./smallBook";

type Shown = readonly [value: number | string, format: string | undefined];

/** A workbook of the template with only these cells, by their names. */
function book(shown: Readonly<Record<string, Shown>>, currency = ""): Book {
  const { names, ...blank } = blankBook(multiRoom);
  const sheets = ["Site", "Price", "Quote"].map((name) => ({ ...emptySheet(name) }));
  const looks = Object.values(shown).map(([, format]) => ({ format }));
  const put = (name: string, value: number | string, look?: number): void => {
    const { sheet, at } = placeOfName({ ...blank, names }, name)!;
    const { cells, results } = sheets.find((one) => one.name === sheet)!;
    cells[at] = { look };
    results[at] = value;
  };
  put("site_currency", currency);
  for (const [index, [name, [value]]] of Object.entries(shown).entries()) put(name, value, index);
  return { ...blank, names, looks, sheets, saved: { file: {} as NonNullable<Book["saved"]>["file"] } };
}
const told = (of: Book, more: Partial<Reviewed> = {}): Finding[] =>
  found(otherFigure, of, { labelAt: (sheet, { row }) => `${sheet} ${row + 1}`, ...more });
const cell = (name: string, value: number | string, format?: string, currency?: string): Finding[] =>
  told(book({ [name]: [value, format] }, currency));

const REMEDY = "Give the cell the template's number format again (Format cells, Number).";
const TOTAL = 42426.3;
const total = (weight: string, message: string, effect: string) => [
  {
    weight,
    place: { sheet: "Quote", cell: "B29" },
    message: `Quote 29 ${message}.`,
    expected: "The number format of the template: #,##0.00.",
    effect,
    remedy: REMEDY,
  },
];

test.each([
  ["#,##0,", "“42”", "The format scales thousands away: a reader takes the figure for so much less."],
  ['"free"', "“free”", "A fixed text stands in the figure's place and follows nothing."],
  ["0.00%", "“4242630.00%”", "A percent sign stands behind a figure that is no share."],
  ["0.00E+00", "“4.24E+04”", "The scientific writing (E+) drops digits, and customers do not read it."],
  [
    '"1"#,##0.00',
    "“142,426.30”",
    "Digits of the format itself, a literal text, stand with the figure: it reads as another.",
  ],
  // 42,426 is 26 February 2016.
  ["yyyy-mm-dd", "“2016-02-26”", "A date stands in the place of a figure."],
])("a total under %s", (format, shows, effect) =>
  expect(cell("quote_total", TOTAL, format)).toStrictEqual(
    total("wrong", `shows ${shows} by its number format ${format}, and holds 42426.3`, effect),
  ),
);

test.each([
  [
    '#,##0.00 "net"',
    "“42,426.30 net”",
    "A text of the format stands beside the figure, whatever the cell means.",
  ],
  [
    "#,##0",
    "“42,426”",
    "It is rounded on the page, with fewer decimals than the figures around it: printed lines no longer add up.",
  ],
  [
    "#,##0.0000",
    "“42,426.3000”",
    "It is shown with more decimals than money has: a format code in files is written in English marks, whatever the locale.",
  ],
])("a total under %s, which only the customer's sheet tells", (format, shows, effect) => {
  expect(cell("quote_total", TOTAL, format)).toStrictEqual(
    total("doubtful", `shows ${shows} by its number format ${format}, and holds 42426.3`, effect),
  );
  expect(cell("price_total", TOTAL, format)).toEqual([]);
});

test("a total that is hidden", () =>
  expect(cell("quote_total", TOTAL, ";;;")).toStrictEqual(
    total(
      "wrong",
      "is blank on the page: the number format ;;; hides 42,426.30",
      "The figure counts and is not shown; the page looks empty there.",
    ),
  ));

test("another currency than the job's", () => {
  const dollars = (currency: string) => cell("quote_total", TOTAL, "$#,##0.00", currency);
  expect(dollars("EUR")).toStrictEqual(
    total(
      "doubtful",
      "shows “$42,426.30” by its number format $#,##0.00, and holds 42426.3",
      "The currency sign $ of the format is not the job's currency (EUR).",
    ),
  );
  for (const currency of ["USD", "Dollar", "$", "", "of the house"]) expect(dollars(currency)).toEqual([]);
  expect(cell("price_total", TOTAL, "$#,##0.00", "EUR")).toHaveLength(1);
  for (const [sign, own] of [
    ["€", "EUR"],
    ["£", "sterling"],
    ["¥", "yen"],
  ] as const) {
    expect(cell("quote_total", TOTAL, `${sign}#,##0.00`, own)).toEqual([]);
    expect(cell("quote_total", TOTAL, `${sign}#,##0.00`, "CHF")).toHaveLength(1);
  }
});

test.each<[string, number | string, string | undefined]>([
  ["the template's", TOTAL, "#,##0.00"],
  ["no groups", TOTAL, "0.00"],
  ["one decimal more", TOTAL, "#,##0.000"],
  ["no decimals, and none to lose", 42426, "#,##0"],
  ["General, and none to lose", 42426, undefined],
  ["brackets for less than nothing", -5, "0.00;(0.00)"],
  ["a text", "open", '"free"'],
])("a total under %s: nothing", (_, value, format) => expect(cell("quote_total", value, format)).toEqual([]));

test("a share as a plain number", () =>
  expect(cell("site_tax", 0.2, "0.00")).toStrictEqual([
    {
      weight: "wrong",
      place: { sheet: "Site", cell: "B97" },
      message: "Site 97 shows “0.20” by its number format 0.00, and holds 0.2.",
      expected: "The number format of the template: 0.0%.",
      effect: "The share is shown as a plain rounded number.",
      remedy: REMEDY,
    },
  ]));

describe("a date", () => {
  // 45,000 is 15 March 2023, and 44,990 the fifth.
  const date = (weight: string, shows: string, effect: string | undefined, holds = "2023-03-15") => [
    expect.objectContaining({
      weight,
      message: `Quote 10 shows ${shows}, and holds ${holds}.`,
      expected: "The number format of the template: yyyy-mm-dd.",
      effect,
    }),
  ];
  test("of which the day is not shown, or the year and the month", () => {
    expect(cell("quote_date", 45000, "yyyy-mm")).toEqual(
      date("doubtful", "“2023-03” by its number format yyyy-mm", "The day of the date is not shown."),
    );
    expect(cell("quote_date", 45000, "dd")).toEqual(
      date("doubtful", "“15” by its number format dd", "The year and month of the date are not shown."),
    );
  });
  test("whose day and month can be taken for each other", () => {
    expect(cell("quote_date", 44990, "d/m/yyyy")).toEqual(
      date(
        "worth knowing",
        "“5/3/2023” by its number format d/m/yyyy",
        "Day and month of such a date can be taken for each other.",
        "2023-03-05",
      ),
    );
    expect(cell("quote_date", 45000, "d/m/yyyy")).toEqual([]);
    expect(cell("quote_date", 45000, "m/d/yyyy")).toEqual([]);
    // The third of March.
    expect(cell("quote_date", 44988, "d/m/yyyy")).toEqual([]);
  });
  test("as a number: wrong before the customer, else doubtful", () => {
    expect(cell("quote_date", 45000, "0")).toMatchObject([
      { weight: "wrong", message: "Quote 10 shows “45000” by its number format 0, and holds 2023-03-15." },
    ]);
    expect(cell("quote_date", 45000, "0")[0]!.effect).toBe("A day is shown as something else.");
    expect(cell("site_date", 45000, "0")).toMatchObject([{ weight: "doubtful" }]);
  });
});

test("one format over several cells is one finding", () => {
  const of = (...names: string[]) =>
    told(book(Object.fromEntries(names.map((name) => [name, [TOTAL, "#,##0,"] as const])))).map(
      ({ message }) => message.slice(message.indexOf("holds")),
    );
  expect(of("quote_net", "quote_total", "price_total")).toEqual([
    "holds 42426.3.",
    "holds 42426.3, and 1 more cell.",
  ]);
  expect(of("quote_net", "quote_tax", "quote_total")).toEqual(["holds 42426.3, and 2 more cells."]);
});

test("of an earlier version, of no template, or of no file nothing is held to it", () => {
  const off = book({ quote_total: [TOTAL, ";;;"] });
  expect(told(off, { earlier: { others: [] } })).toEqual([]);
  expect(told(off, { definition: undefined })).toEqual([]);
  expect(told({ ...off, saved: {} })).toEqual([]);
  expect(told({ ...off, saved: undefined })).toEqual([]);
});
