/**
 * Why a cell shows what it shows, held to what the engine itself does: whatever
 * changes a cell's value when it is changed must stand in the chain of it.
 */
import { fromModel } from "../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../src/hosts/headless/loadLibrary";
import { openModel, recalculate } from "../../src/hosts/headless/recalculate";
import { parseAddress, parseRange } from "../../src/formula/address";
import { isListed, why, type Listed, type Reason } from "../../src/review/why";
import { whyInWords } from "../../src/review/whyInWords";
import type { Book } from "../../src/workbooks/book";
import { inputZone } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { emptySheet } from "../support/books";
import { randomFrom } from "../support/simulateFaults";
import { tries } from "../support/tries";

const bookOf = (cells: Book["sheets"][number]["cells"], names: Book["names"] = []): Book =>
  recalculate({
    template: "",
    templateVersion: "",
    title: "",
    looks: [],
    sheets: [{ ...emptySheet("Sums and more"), rowCount: 20, columnCount: 8, cells }],
    names,
  });
const at = (cell: string) => ({ sheet: "Sums and more", cell });
const told = (reason: Reason | undefined): string[] => whyInWords(reason!);

describe("a workbook of a person's own", () => {
  const book = bookOf({
    A1: { value: 2 },
    A2: { value: 3 },
    A3: { formula: "A1*A2" },
    A4: { formula: "SUM(A1:A3)" },
    A5: { formula: "IF(A4>10,A6,A4)" },
    B1: { formula: "A1:A3*2", spill: { rows: 3, columns: 1 } },
    C1: { formula: "1/(A1-2)" },
    C2: { formula: "C1+1" },
    D1: { formula: 'A9&"x"' },
  });

  test("each step with its value, worked out by hand", () => {
    expect(told(why(book, at("A4"), { deep: 3 }))).toEqual([
      "Sums and more A4: 11",
      "  = SUM(A1:A3)",
      "  Sums and more A1:A3: 3 entries, together 11; the largest:",
      "    Sums and more A3: 6",
      "      = A1*A2",
      "      Sums and more A1: 2",
      "      Sums and more A2: 3",
      "    Sums and more A2: 3",
      "    Sums and more A1: 2",
    ]);
  });
  test("deeper than is asked for: cut, and marked", () => {
    expect(told(why(book, at("A4"), { deep: 1, most: 1 }))).toEqual([
      "Sums and more A4: 11",
      "  = SUM(A1:A3)",
      "  Sums and more A1:A3: 3 entries, together 11; the largest:",
      "    Sums and more A3: 6 …",
    ]);
  });
  test("one row of a spill reads one row", () => {
    expect(told(why(book, at("B2")))).toEqual([
      "Sums and more B2: 6",
      "  = A1:A3*2",
      "  Sums and more A2: 3",
    ]);
  });
  test("an error, a blank, dollar signs and small letters", () => {
    expect(told(why(book, { sheet: "sums AND more", cell: "$c$2" }))).toEqual([
      "Sums and more C2: #DIV/0! The divisor must be different from zero.",
      "  = C1+1",
      "  Sums and more C1: #DIV/0! The divisor must be different from zero.",
      "    = 1/(A1-2)",
      "    Sums and more A1: 2",
    ]);
    expect(told(why(book, at("D1")))).toEqual([
      "Sums and more D1: “x”",
      '  = A9&"x"',
      "  Sums and more A9: (blank)",
    ]);
  });
  test("no such sheet, no such cell", () => {
    expect(why(book, { sheet: "Rooms", cell: "A1" })).toBeUndefined();
    expect(why(book, at("A0"))).toBeUndefined();
  });
  test("formulas that read one another end", () => {
    const ring = bookOf({ A1: { formula: "A2+1" }, A2: { formula: "A1+1" } });
    expect(told(why(ring, at("A1"), { deep: 20 })).length).toBeLessThan(8);
  });
  test("a formula that can't be read is shown, with nothing under it", () => {
    const broken: Book = { ...book };
    broken.sheets[0]!.cells.E1 = { formula: "SUM(A1" };
    expect(told(why(broken, at("E1")))).toEqual(["Sums and more E1: (blank)", "  = SUM(A1"]);
  });
});

const library = loadLibrary();
const job = recalculate(layOut(multiRoom, guestHouse));
const placeOf = (name: string) => job.names.find((one) => one.name === name)!;

/** Every cell that a chain tells of, the ranges of its lists included. */
function reach(reason: Reason): (sheet: string, cell: string) => boolean {
  const cells = new Set<string>();
  const lists: Listed[] = [];
  const walk = (one: Reason | Listed): void => {
    if (isListed(one)) {
      lists.push(one);
      one.told.forEach(walk);
    } else {
      cells.add(`${one.sheet}!${one.cell}`);
      one.from.forEach(walk);
    }
  };
  walk(reason);
  return (sheet, cell) => {
    const { row, column } = parseAddress(cell)!;
    return (
      cells.has(`${sheet}!${cell}`) ||
      lists.some((list) => {
        const zone = parseRange(list.range)!;
        return (
          list.sheet === sheet &&
          zone.top <= row &&
          row <= zone.bottom &&
          zone.left <= column &&
          column <= zone.right
        );
      })
    );
  };
}

test("the total of the demonstration: its price without tax and its tax, which make it", () => {
  const { sheet, range } = placeOf("quote_total");
  const reason = why(job, { sheet, cell: range }, { deep: 4 })!;
  expect(reason.words).toMatch(/^Total \(Quote /);
  const all: Reason[] = [];
  const walk = (one: Reason | Listed): void => {
    if (isListed(one)) return one.told.forEach(walk);
    all.push(one);
    one.from.forEach(walk);
  };
  walk(reason);
  const valueOf = (start: string): number =>
    all.find(({ words, value }) => words.startsWith(start) && typeof value === "number")!.value as number;
  expect(valueOf("Price without tax") + valueOf("Tax (Price")).toBeCloseTo(reason.value as number, 8);
});

test("whatever moves a cell stands in its chain", () => {
  const random = randomFrom(15);
  const model = openModel(layOut(multiRoom, guestHouse));
  const before = quietly(() => fromModel(library, model));
  const inputs = before.sheets.flatMap((sheet) =>
    sheet.validations.flatMap((rule) => {
      const zone = rule.rule.kind === "number" ? inputZone(rule) : undefined;
      if (!zone) return [];
      return Object.entries(sheet.cells).flatMap(([cell, { value }]) => {
        const place = parseAddress(cell)!;
        const isIn =
          zone.top <= place.row &&
          place.row <= zone.bottom &&
          zone.left <= place.column &&
          place.column <= zone.right;
        return isIn && typeof value === "number" ? [{ sheet: sheet.name, cell, value, ...place }] : [];
      });
    }),
  );
  expect(inputs.length).toBeGreaterThan(100);
  let moved = 0;
  const missing: string[] = [];
  const reaches = new Map<string, ReturnType<typeof reach>>();
  for (let run = 0; run < tries(5, 5, 12); run++) {
    const input = inputs[Math.floor(random() * inputs.length)]!;
    const sheetId = model.getters.getSheetIdByName(input.sheet)!;
    const put = (content: string) =>
      quietly(() => model.dispatch("UPDATE_CELL", { sheetId, row: input.row, col: input.column, content }));
    put(String(input.value * 1.25 + 1));
    const after = quietly(() => fromModel(library, model));
    put(String(input.value));
    const changed = after.sheets.flatMap((sheet, index) =>
      Object.entries(sheet.results).flatMap(([cell, value]) =>
        JSON.stringify(before.sheets[index]!.results[cell]) === JSON.stringify(value)
          ? []
          : [{ sheet: sheet.name, cell }],
      ),
    );
    // Some of the many, so that each run looks at others.
    for (let look = 0; look < 3 && changed.length > 0; look++) {
      const one = changed[Math.floor(random() * changed.length)]!;
      const key = `${one.sheet}!${one.cell}`;
      if (!reaches.has(key)) reaches.set(key, reach(why(before, one, { deep: 20, most: Infinity })!));
      moved += 1;
      if (!reaches.get(key)!(input.sheet, input.cell))
        missing.push(`${input.sheet}!${input.cell} moves ${key}`);
    }
  }
  expect(moved).toBeGreaterThan(tries(8, 8, 20));
  expect(missing).toEqual([]);
}, 300_000);
