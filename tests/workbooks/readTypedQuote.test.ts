/** What the reader of typed quotes makes of single lines, and what it says of input that is none. */
import { readQuoteFile } from "../../src/hosts/file/readQuoteFile";
import { fromTyped } from "../../src/workbooks/quoteReview/fromTyped";
import type { TypedQuote } from "../../src/workbooks/quoteReview/typed/typedQuote";

const read = (text: string): Promise<TypedQuote | string> => readQuoteFile(new TextEncoder().encode(text));
const quoteOf = async (text: string): Promise<TypedQuote> => {
  const quote = await read(text);
  if (typeof quote === "string") throw new Error(quote);
  return quote;
};

test.each([
  ["12 x splitter @ 3.50 = 42.00", { part: "splitter", quantity: 12, each: 3.5, sum: 42 }],
  ["4 reels indoor drop 100 m at 52.00 = 208.00", { quantity: 4, each: 52, sum: 208 }],
  ["3 Stk Verteiler 6-fach je 14,80 = 44,40", { quantity: 3, each: 14.8, sum: 44.4 }],
  ["Delivery 45.00", { part: "Delivery", sum: 45 }],
  // The sum is wrong, and is read as it stands.
  ["4 x 6-way splitter @ 14.80 = 49.20", { part: "6-way splitter", quantity: 4, each: 14.8, sum: 49.2 }],
])("%s", async (text, line) => {
  const { lines } = await quoteOf(`${text}\nTotal 1,000.00`);
  expect(lines).toEqual([expect.objectContaining(line)]);
});

test.each([
  ["an empty list", ""],
  ["blank lines", "\n\n  \n"],
])("%s is told as empty", async (_, text) => {
  expect(await read(text)).toMatch(/^The list is empty\. /);
});

test("prose only has no line of a quote, and is told how one looks", async () => {
  expect(await read("Dear all,\nthank you for the visit on Tuesday.\nKind regards")).toMatch(
    /^No line of a quote was found: .*“12 x splitter @ 3\.50 = 42\.00”\.$/,
  );
});

test("more lines than any quote has are refused with both numbers", async () => {
  const text = Array.from({ length: 5001 }, (_, at) => `part ${at},1,2.00,2.00`).join("\n");
  expect(await read(text)).toMatch(/^The list has 5001 lines; a quote is read up to 5000\. /);
});

const TABLE = "Part,Qty,Each,Sum\nplate,2,6.00,12.00\n";

test.each([
  ["Discount 5 %", "Discount"],
  ["5% Rabatt", "Rabatt"],
])("a rate alone in its row takes off what stands above it: %s", async (row, part) => {
  const { lines, remarks } = await quoteOf(`Part,Qty,Each,Sum\nplate,10,6.00,60.00\n${row}\nTotal,,,57.00`);
  expect(lines.map(({ sum }) => sum)).toEqual([60, -3]);
  expect(lines[1]).toMatchObject({ part, line: 3 });
  expect(remarks).toEqual([]);
});

test.each(["2 % discount if paid within ten days", "2 % Skonto"])("terms are no line: %s", async (row) => {
  const { lines } = await quoteOf(`Part,Qty,Each,Sum\nplate,10,6.00,60.00\n${row}\nTotal,,,60.00`);
  expect(lines.map(({ sum }) => sum)).toEqual([60]);
});

test("a number of 40 digits is told with its line, and never taken", async () => {
  const { lines, remarks } = await quoteOf(`${TABLE}splitter,${"1234567890".repeat(4)},3.00,\nTotal,,,12.00`);
  expect(lines.map(({ part }) => part)).toEqual(["plate"]);
  expect(remarks).toEqual([expect.objectContaining({ line: 3, kind: "unread" })]);
});

test("a formula as text is told; where only the sum is one the line is taken without it", async () => {
  const { lines, remarks } = await quoteOf(`${TABLE}splitter,2,3.00,=B3*C3\nTotal,,,=SUM(D2:D3)`);
  expect(lines[1]).toEqual({ line: 3, part: "splitter", quantity: 2, each: 3 });
  expect(remarks).toEqual([
    expect.objectContaining({ line: 4, why: "It has a formula as text; type the figure that it shows." }),
  ]);
});

test("marks of direction and other digits are no hindrance", async () => {
  const { lines } = await quoteOf("מפצל\t\u200e3\t\u200e18.50\t\u200e55.50\nشقة\t٢\t٩٫٥٠\t١٩٫٠٠\n");
  expect(lines.map(({ quantity, each, sum }) => [quantity, each, sum])).toEqual([
    [3, 18.5, 55.5],
    [2, 9.5, 19],
  ]);
});

test("the same line on two floors is no line twice; within one it stays as it is", async () => {
  const quote = await quoteOf(
    "Part,Qty,Each,Sum\nGround floor,,,\nplate,2,6.00,12.00\nFirst floor,,,\nplate,2,6.00,12.00\nplate,2,6.00,12.00\nTotal,,,36.00",
  );
  expect(fromTyped(quote).blocks!.lines!.map(({ part }) => part)).toEqual([
    "plate",
    "plate (First floor)",
    "plate (First floor)",
  ]);
});

test("an option is read, left out of the lines and asked about", async () => {
  const quote = await quoteOf(
    "Part,Qty,Each,Sum\nplate,2,6.00,12.00\nOption: amplifier,1,80.00,80.00\nTotal,,,12.00",
  );
  const { blocks } = fromTyped(quote);
  expect(blocks!.lines).toHaveLength(1);
  expect(blocks!.asked![0]!.question).toMatch(/^Line 3, “Option: amplifier” for 80, is an option/);
});
