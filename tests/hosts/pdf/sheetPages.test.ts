/** Sheets of made-up rows, parted into pages. */
import { printFonts } from "../../../src/build/printFonts";
import { PrintType } from "../../../src/hosts/pdf/printType";
import { PRINT_FONTS, PRINT_FONT_HOME, type PrintFont } from "../../../src/hosts/pdf/printFonts";
import { sheetPages, type SheetPage } from "../../../src/hosts/pdf/sheetPages";
import { Setter } from "../../../src/hosts/pdf/unset";
import type { PaperCell, PaperRow, PaperSheet } from "../../../src/workbooks/paperSheet";

/** Of a page of A4 upright, between its margins of 0.5 and 0.7 inch. */
const DOWN = 842 - 1.2 * 72;

let type: PrintType;
beforeAll(async () => {
  const files = await printFonts();
  const faces = Object.entries(PRINT_FONTS) as [PrintFont, string][];
  type = new PrintType(
    Object.fromEntries(
      faces.map(([face, file]) => [face, files.get(`${PRINT_FONT_HOME}/${file}`)!]),
    ) as Record<PrintFont, Uint8Array>,
  );
}, 60_000);

const cell = (text: string, more: Partial<PaperCell> = {}): PaperCell => ({
  at: "A1",
  text,
  look: {},
  align: "left",
  size: 10,
  columns: 1,
  rows: 1,
  ...more,
});
const row = (text: string, height = 20, more: Partial<PaperCell> = {}): PaperRow => ({
  height,
  cells: [cell(text, more)],
});
const rows = (count: number, height = 20): PaperRow[] =>
  Array.from({ length: count }, (_, index) => row(`row ${index}`, height));
const sheet = (more: Partial<PaperSheet>): PaperSheet => ({
  name: "Own",
  print: { orientation: "portrait", paper: "a4" },
  columns: [300],
  scale: 1,
  before: [],
  head: [],
  parts: [],
  ...more,
});
const pagesOf = (more: Partial<PaperSheet>): SheetPage[] => sheetPages(sheet(more), new Setter(type));
const texts = ({ rows: placed }: SheetPage): string[] => placed.map(({ cells }) => cells[0]?.text ?? "");
const heightOf = ({ rows: placed, scale }: SheetPage): number =>
  scale * Math.max(...placed.map(({ top, height }) => top + height));

test("every row once, the head on each page, no page fuller than it is", () => {
  const pages = pagesOf({ before: [row("title")], head: [row("head")], parts: [rows(100)] });
  expect(pages.flatMap(texts).filter((text) => text.startsWith("row"))).toEqual(
    rows(100).map(({ cells }) => cells[0]!.text),
  );
  expect(texts(pages[0]!).slice(0, 2)).toEqual(["title", "head"]);
  for (const page of pages.slice(1)) expect(texts(page)[0]).toBe("head");
  for (const page of pages) expect(heightOf(page)).toBeLessThanOrEqual(DOWN + 0.1);
});

test("the last row is not alone on its page, however many there are", () => {
  for (let count = 2; count < 120; count++) {
    const pages = pagesOf({ head: [row("head")], parts: [rows(count)] });
    expect([count, pages.at(-1)!.rows.filter(({ is }) => is === "body").length > 1]).toEqual([count, true]);
  }
});

test("rows that share a cell stay on one page", () => {
  const pair = [
    { height: 20, cells: [cell("tall", { rows: 2 }), cell("beside")] },
    { height: 20, cells: [cell("second")] },
  ];
  for (let count = 30; count < 40; count++) {
    const pages = pagesOf({ columns: [100, 100], parts: [[...rows(count), ...pair, ...rows(3)]] });
    const found = pages.find((page) => texts(page).includes("tall"))!;
    expect([count, texts(found).includes("second")]).toEqual([count, true]);
  }
});

test("a wrapped text makes its row as high as its lines; one that no page holds is set smaller, and none is lost", () => {
  const words = "word ".repeat(4000).trim();
  const [page, ...more] = pagesOf({ parts: [[row(words, 14, { look: { wrap: true } })]] });
  expect(more).toEqual([]);
  const placed = page!.rows[0]!.cells[0]!;
  expect(placed.size).toBeLessThan(10);
  expect(placed.lines.join(" ").match(/word/g)).toHaveLength(4000);
  expect(placed.lines.length * placed.size * 1.2).toBeLessThanOrEqual(DOWN + 0.1);
});

test("parts made for a page each are set a little smaller where they are a little more", () => {
  const print = { orientation: "portrait", paper: "a4", breaks: [40] } as const;
  const pages = pagesOf({ print, parts: [rows(40), rows(40)] });
  expect(pages).toHaveLength(2);
  for (const page of pages) expect(heightOf(page)).toBeLessThanOrEqual(DOWN + 0.1);
  // Far more than a page is not pressed into one.
  expect(pagesOf({ print, parts: [rows(60)] })).toHaveLength(2);
});

test("a head that takes more than half of a page stands once", () => {
  const pages = pagesOf({ head: [row("head", 500)], parts: [rows(60)] });
  expect(pages.length).toBeGreaterThan(1);
  expect(pages.filter((page) => texts(page).includes("head"))).toHaveLength(1);
});
