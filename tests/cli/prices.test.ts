/** The command that reads a supplier's price list. */
import { existsSync } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { readTables } from "../../src/hosts/file/readTables";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import type { Book } from "../../src/workbooks/book";
import { namedColumn } from "../../src/workbooks/named";
import { runCommand } from "../support/fakeConsole";

const LODGE = path.join(__dirname, "../fixtures/priceLists/lodge-prices.csv");
const FIRST = "first supplier (demonstration)";
let folder: string;
let firm: string;
const at = (name: string): string => path.join(folder, name);
const list = async (text: string, name = "list.csv"): Promise<string> => {
  await writeFile(at(name), text);
  return at(name);
};
const prices = (...words: string[]): ReturnType<typeof runCommand> =>
  runCommand(["standards", "prices", firm, ...words]);
const bookAt = async (name: string): Promise<Book> => readXlsx(new Uint8Array(await readFile(at(name))));
const priceOf = (book: Book, block: string, part: string): unknown =>
  namedColumn(book, `${block}_price`)[namedColumn(book, `${block}_name`).indexOf(part)];

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-prices-"));
  firm = at("firm.xlsx");
  await runCommand(["standards", "new", "--demonstration", "--out", firm]);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("without --out all is shown and nothing is written", async () => {
  const before = await readFile(firm);
  const { code, out, err } = await prices(LODGE, "--supplier", FIRST);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toContain("21 lines changed:");
  // 0.38 and 0.39 of a metre: (0.39 - 0.38) / 0.38 is 2.6 %.
  expect(out).toContain("line 3, K-110 (indoor drop): 0.38 → 0.39, +2.6 %");
  expect(out).toContain("It stands twice: the newest price that is valid is taken, not 12.4 of line 24.");
  expect(out).toContain("Nothing was written. Name a file to write: --out new.xlsx");
  expect(await readFile(firm)).toEqual(before);
});

test("with --out the workbook has the prices, and how the list is read; the next list is read so", async () => {
  const { code, out } = await prices(LODGE, "--supplier", FIRST, "--out", at("new.xlsx"));
  expect(code).toBe(0);
  expect(out).toContain("21 prices of first supplier (demonstration)");
  const book = await bookAt("new.xlsx");
  expect(priceOf(book, "cables", "indoor drop")).toBe(39);
  expect(priceOf(book, "fittings", "compression connector")).toBe(42);
  expect(priceOf(book, "passives", "4-way splitter")).toBe(11.9);
  const checked = await runCommand(["standards", "check", at("new.xlsx")]);
  expect(checked).toMatchObject({ code: 0, out: expect.stringContaining("all checks pass") as string });
  const again = await runCommand(["standards", "prices", at("new.xlsx"), LODGE, "--supplier", FIRST]);
  expect(again.out).toContain("21 as before");
  expect(again.out).toContain("Read as this supplier's last list was.");
});

test("what is asked stops the writing until it is answered", async () => {
  const file = await list("Article;Description;Unit;Price\nS-04;splitter;pc;11,40\n");
  const asked = await prices(file, "--supplier", "new supplier", "--out", at("asked.xlsx"));
  expect(asked.code).toBe(1);
  expect(asked.out).toContain("The list names no currency. Say in which its prices are.");
  expect(existsSync(at("asked.xlsx"))).toBe(false);
  const answered = await prices(
    file,
    ...["--supplier", "new supplier", "--currency", "EUR", "--part", "2=4-way splitter"],
    ...["--until", "2027-12-31", "--out", at("asked.xlsx")],
  );
  expect(answered).toMatchObject({ code: 0, err: "" });
  const book = await bookAt("asked.xlsx");
  expect(priceOf(book, "passives", "4-way splitter")).toBe(11.4);
  expect(namedColumn(book, "suppliers_name")).toContain("new supplier");
});

test("a column is told by its head or letter, a new part put into a list", async () => {
  const file = await list("Was;Geld\nAbzweiger neu;7,10\n", "odd.csv");
  const out = at("odd.xlsx");
  const { code, out: said } = await prices(
    file,
    ...["--supplier", "odd", "--currency", "EUR", "--map", "Was=Description", "--map", "B=Price per unit"],
    ...["--new", "2=passives:tap 20 dB", "--out", out],
  );
  expect(said).toContain("1 new part");
  expect(code).toBe(0);
  expect(priceOf(await bookAt("odd.xlsx"), "passives", "tap 20 dB")).toBe(7.1);
});

test.each([
  [["--supplier", "x", "--map", "Nothing=Unit"], "There is no column “Nothing” in the file"],
  [["--supplier", "x", "--part", "3=6-way spliter"], "Near it: “6-way splitter”"],
  [["--supplier", "x", "--new", "3=things:a"], "give a list and a name"],
  [["--supplier", "x", "--take", "99"], "no line with a price has that number"],
  [["--supplier", "x", "--tax", "19"], "give it with its sign, such as 19%"],
  [[], "There is no --supplier"],
])("%j is refused with a sentence", async (words, said) => {
  const { code, err } = await prices(LODGE, ...words);
  expect(code).toBe(2);
  expect(err).toContain(said);
});

describe("bad files", () => {
  test("a million lines are refused before they are taken apart", async () => {
    const text = `Article;Price EUR\n${"A;1,00\n".repeat(1_000_000)}`;
    await expect(readTables(new TextEncoder().encode(text))).rejects.toThrow(
      /The file has 100000\d lines; a survey or price list has at most 100000/,
    );
  });

  test("another workbook takes no price list", async () => {
    await runCommand(["new", "single-drop", "--out", at("drop.xlsx")]);
    const { code, err } = await runCommand([
      "standards",
      "prices",
      at("drop.xlsx"),
      LODGE,
      "--supplier",
      "x",
    ]);
    expect(code).toBe(2);
    expect(err).toContain("neither a firm's standards nor a multi-room job");
  });

  test("a formula stays text, in the workbook too", async () => {
    const file = await list(
      'Article;Description;Unit;Price EUR\nZ-9;"=HYPERLINK(""x"")";pc;3,00\n',
      "formula.csv",
    );
    await prices(file, "--supplier", "x", "--new", "2=fittings:odd part", "--out", at("formula.xlsx"));
    const book = await bookAt("formula.xlsx");
    expect(namedColumn(book, "offers_words")).toContain('=HYPERLINK("x")');
    const formulas = book.sheets.flatMap(({ cells }) =>
      Object.values(cells).map(({ formula }) => formula ?? ""),
    );
    expect(formulas.filter((formula) => formula.includes("HYPERLINK"))).toEqual([]);
  });
});
