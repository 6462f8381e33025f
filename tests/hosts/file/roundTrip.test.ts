/** What is written is read back exactly. */
import fc from "fast-check";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { address } from "../../../src/formula/address";
import type { Book, BookCell, BookResult, BookSheet, Look } from "../../../src/workbooks/book";
import { bookOf, emptySheet } from "../../support/books";
import { tries } from "../../support/tries";

const written = async (book: Book): Promise<Book> => readXlsx(await writeXlsx(book));

const HARD_TEXTS = [
  "=1+1",
  "+49 30 123",
  "-5",
  "@x",
  "\t=1",
  "\r\n=2",
  " leading",
  "trailing ",
  "a\nb",
  "a\r\nb",
  "\n",
  " ",
  "",
  "'quoted",
  '"',
  "<b>&amp;</b>",
  "]]>",
  "📡 Straße 雨",
  "_x000D_",
  "_x005F_x000D_",
  "_x0041\r",
  "__x0041_x0042_",
  "__proto__",
  "constructor",
  "#N/A",
  "#VALUE!",
  "TRUE",
  "1e5",
  "007",
  "2026-07-04",
  "\u0000\u0001\u0008\u000B\u000C\u001F\u007F\u0085\uE000\uFFFE\uFFFF",
];
const HARD_NUMBERS = [
  0,
  -0,
  1e-300,
  5e-324,
  1e308,
  1.7976931348623157e308,
  0.1 + 0.2,
  1 / 3,
  -1e21,
  2 ** 53,
  45_000.123456789,
];

const text = fc.oneof(
  fc.constantFrom(...HARD_TEXTS),
  fc.string({ unit: "binary", maxLength: 30 }),
  fc.string({ unit: "grapheme", maxLength: 30 }),
  fc
    .array(fc.constantFrom("_", "x", "0041", "\r", "_x000D_", "&", " "), { maxLength: 8 })
    .map((parts) => parts.join("")),
);
const number = fc.oneof(
  fc.constantFrom(...HARD_NUMBERS),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
const value = fc.oneof(text, number, fc.boolean());
const places = fc.uniqueArray(
  fc.tuple(fc.nat(30), fc.nat(30)).map(([row, column]) => address(row, column)),
  {
    maxLength: 12,
  },
);
const sheetName = fc.oneof(
  fc.constantFrom("__proto__", "constructor", "Head units", "A1", "It's", "1", "TRUE", "a,b!c", "Straße"),
  fc
    .string({ unit: fc.constantFrom(..."abcXYZ 019_-é📡&<\"'"), minLength: 1, maxLength: 15 })
    .filter((name) => !/^'|'$|_x[0-9a-f]{4}/i.test(name) && name.toLowerCase() !== "history"),
);

/** The extent is not stored; it is read off the cells. */
const withoutExtent = ({ sheets, ...book }: Book): unknown => ({
  ...book,
  sheets: sheets.map((sheet) => ({ ...sheet, rowCount: 0, columnCount: 0 })),
});

describe("what a person typed", () => {
  test("any texts, numbers and booleans on any sheets come back exactly", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(sheetName, { minLength: 1, maxLength: 3, selector: (name) => name.toLowerCase() }),
        places,
        fc.array(value, { minLength: 12, maxLength: 12 }),
        async (names, addresses, values) => {
          const book = bookOf(
            ...names.map((name, sheetIndex) => ({
              ...emptySheet(name),
              cells: Object.fromEntries(
                addresses.map(
                  (at, index) => [at, { value: values[(index + sheetIndex) % 12]! }] as [string, BookCell],
                ),
              ),
            })),
          );
          expect(withoutExtent(await written(book))).toStrictEqual(withoutExtent(book));
        },
      ),
      { numRuns: tries(30, 150) },
    );
  });

  test.each([...HARD_TEXTS, ...HARD_NUMBERS].map((one) => [JSON.stringify(one), one] as const))(
    "%s as a value, as a result and as a spilled result",
    async (_, one) => {
      const results: Record<string, BookResult> = { B1: one, C1: one, C2: one };
      const book = bookOf({
        ...emptySheet("S"),
        cells: {
          A1: { value: one },
          B1: { formula: "RIG.VERSION()" },
          C1: { formula: "RIG.X(A1:A2)", spill: { rows: 2, columns: 1 } },
        },
        results,
      });
      const [sheet] = (await written(book)).sheets;
      expect(sheet!.cells).toStrictEqual(book.sheets[0]!.cells);
      expect(sheet!.results).toStrictEqual(results);
    },
  );
});

describe("what a template sets", () => {
  const color = fc.constantFrom("000000", "FF0000", "1F3864", "FFFFFF");
  const edge = fc.constantFrom("thin", "medium");
  const optional = { requiredKeys: [] };
  const look: fc.Arbitrary<Look> = fc.record(
    {
      bold: fc.constant(true),
      italic: fc.constant(true),
      size: fc.constantFrom(8, 9.5, 11, 24),
      color,
      fill: color,
      align: fc.constantFrom("left", "center", "right"),
      vertical: fc.constantFrom("top", "middle"),
      wrap: fc.constant(true),
      edges: fc.record(
        { top: edge, right: edge, bottom: edge, left: edge },
        { ...optional, noNullPrototype: true },
      ),
      format: fc.constantFrom("0.0", "yyyy-mm-dd", '#,##0.00 "m"', "0%", "@", "[h]:mm", '"a&b" 0;[Red]-0'),
      locked: fc.constant(false),
    },
    { ...optional, noNullPrototype: true },
  );
  const filled = (one: Look): boolean =>
    Object.keys(one).length > 0 && Object.keys(one.edges ?? { top: 1 }).length > 0;

  test("any look comes back", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(look.filter(filled), { minLength: 1, maxLength: 6, selector: JSON.stringify }),
        async (looks) => {
          const cells = Object.fromEntries(looks.map((_, row) => [`A${row + 1}`, { look: row }]));
          const read = await written({ ...bookOf({ ...emptySheet("S"), cells }), looks });
          expect(looks.map((_, row) => read.looks[read.sheets[0]!.cells[`A${row + 1}`]!.look!])).toEqual(
            looks,
          );
        },
      ),
      { numRuns: tries(30, 150) },
    );
  });

  const side = fc
    .string({ unit: fc.constantFrom(...'aZ09 &"é📡/-'), maxLength: 30 })
    .filter((one) => one !== "");
  test("any feet, widths, heights and panes come back", async () => {
    await fc.assert(
      fc.asyncProperty(
        side,
        side,
        fc.dictionary(fc.nat(40).map(String), fc.double({ min: 1, max: 200, noNaN: true }), {
          noNullPrototype: true,
        }),
        fc.dictionary(fc.nat(40).map(String), fc.double({ min: 1, max: 200, noNaN: true }), {
          noNullPrototype: true,
        }),
        fc.nat(9),
        fc.nat(9),
        async (footLeft, footRight, columnWidths, rowHeights, frozenRows, frozenColumns) => {
          const sheet: BookSheet = {
            ...emptySheet("S"),
            columnWidths,
            rowHeights,
            frozenRows,
            frozenColumns,
            print: { orientation: "portrait", paper: "letter", footLeft, footRight },
          };
          expect(withoutExtent(await written(bookOf(sheet)))).toStrictEqual(withoutExtent(bookOf(sheet)));
        },
      ),
      { numRuns: tries(30, 150) },
    );
  });
});
