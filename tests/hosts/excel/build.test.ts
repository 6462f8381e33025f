/** Sheets built inside Excel, on the stand-in. */
import { scaledJob } from "../../../src/build/scaledJob";
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { address, parseAddress, parseRange, rangeOf } from "../../../src/formula/address";
import { isBookError, type Book, type Look } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { bookOf, emptySheet, sampleBook } from "../../support/books";
import type { ExcelStandIn } from "../../support/excelStandIn";
import { sentenceOf } from "../scenario";
import { inExcel } from "./inExcel";

/** An Excel that takes no sheets from a file. */
const BUILT = { inserting: "refused" } as const;

const demonstration = (): Book => layOut(multiRoom, guestHouse);

/** Everything that a sheet shows, by address. */
function shown(book: Book, name: string): Record<string, unknown> {
  const sheet = book.sheets.find((one) => one.name === name)!;
  const values = Object.entries(sheet.cells).flatMap(([at, { value }]) =>
    value === undefined ? [] : [[at, value] as const],
  );
  const results = Object.entries(sheet.results).flatMap(([at, result]) =>
    result === "" ? [] : [[at, isBookError(result) ? result.error : result] as const],
  );
  return Object.fromEntries([...values, ...results]);
}

const byName = (a: { name: string }, b: { name: string }): number => (a.name < b.name ? -1 : 1);

test("every cell and name of the demonstration stands in Excel as the desk has it", () =>
  inExcel(BUILT, async (excel) => {
    await new ExcelHost().startHere({ book: demonstration() });
    const wanted = recalculate(demonstration());
    const built = excel.book();
    expect(built.sheets.map(({ name }) => name)).toEqual([
      "Sheet1",
      ...wanted.sheets.map(({ name }) => name),
    ]);
    for (const { name } of wanted.sheets) expect(shown(built, name)).toEqual(shown(wanted, name));
    expect([...built.names].sort(byName)).toEqual([...wanted.names].sort(byName));
    expect(Object.fromEntries(excel.state.properties)).toEqual({
      RigsheetTemplate: "multi-room",
      RigsheetTemplateVersion: multiRoom.version,
    });
    expect(excel.state.active.sheet).toBe(wanted.sheets[0]!.name);
  }));

/** A look as the stand-in notes it. */
function noted(look: Look): Record<string, unknown> {
  const weight = (edge: string | undefined) => edge && (edge === "medium" ? "Medium" : "Thin");
  const all = {
    name: "Calibri",
    size: look.size ?? 10,
    bold: look.bold,
    italic: look.italic,
    color: look.color && `#${look.color}`,
    fill: look.fill && `#${look.fill}`,
    horizontalAlignment: look.align && { left: "Left", center: "Center", right: "Right" }[look.align],
    verticalAlignment: look.vertical && { top: "Top", middle: "Center", bottom: "Bottom" }[look.vertical],
    wrapText: look.wrap,
    locked: look.locked,
    format: look.format,
    edgeTop: weight(look.edges?.top),
    edgeBottom: weight(look.edges?.bottom),
    edgeLeft: weight(look.edges?.left),
    edgeRight: weight(look.edges?.right),
  };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
}

/** Cells with one look above each other share the line between them: the heavier of the two is drawn. */
const shared = (book: Book, sheet: string, row: number, column: number, look: number): boolean =>
  book.sheets.find(({ name }) => name === sheet)!.cells[address(row, column)]?.look === look;

test.each([
  ["the demonstration", demonstration],
  ["a sheet with every look", sampleBook],
])("every cell of %s has its look", (_, make) =>
  inExcel(BUILT, async (excel) => {
    const book = make();
    await new ExcelHost().startHere({ book });
    let cells = 0;
    for (const sheet of book.sheets) {
      for (const [at, { look }] of Object.entries(sheet.cells)) {
        if (look === undefined) continue;
        const { row, column } = parseAddress(at)!;
        const wanted = noted(book.looks[look]!);
        const heavy = wanted.edgeTop === "Medium" || wanted.edgeBottom === "Medium";
        if (heavy && shared(book, sheet.name, row - 1, column, look)) wanted.edgeTop = "Medium";
        if (heavy && shared(book, sheet.name, row + 1, column, look)) wanted.edgeBottom = "Medium";
        expect({ at, ...excel.state.looks.get(`${sheet.name}!${at}`) }).toEqual({ at, ...wanted });
        cells += 1;
      }
    }
    expect(cells).toBeGreaterThan(10);
  }),
);

test("rules, marks, frozen panes, sizes and print of each sheet are set", () =>
  inExcel(BUILT, async (excel) => {
    const book = demonstration();
    await new ExcelHost().startHere({ book });
    const { log } = excel.state;
    const of = (sheet: string, what: string) => log.filter((one) => one.sheet === sheet && one.what === what);
    for (const sheet of book.sheets) {
      const rules = sheet.validations.filter(
        ({ rule }) => rule.kind !== "number" || rule.min !== undefined || rule.max !== undefined,
      );
      expect(of(sheet.name, "rule").map(({ value }) => (value as { range: string }).range)).toEqual(
        rules.map(({ range }) => range),
      );
      expect(of(sheet.name, "prompt")).toHaveLength(sheet.validations.filter(({ prompt }) => prompt).length);
      expect(of(sheet.name, "mark")).toHaveLength(
        sheet.marks.reduce((sum, { words }) => sum + words.length, 0),
      );
      const frozen = of(sheet.name, "freezeAt").length + of(sheet.name, "freezeRows").length;
      expect(frozen).toBe(1);
      expect(of(sheet.name, "printArea").map(({ value }) => value)).toEqual([sheet.print!.area]);
      expect(of(sheet.name, "foot.centerFooter").map(({ value }) => value)).toEqual(["Page &P of &N"]);
      const heights = of(sheet.name, "rowHeight").map(({ value }) => (value as [string, number])[1]);
      expect(heights).toHaveLength(Object.keys(sheet.rowHeights).length);
    }
    const quantity = book.names.find(({ name }) => name === "rooms_quantity")!;
    const zone = parseRange(quantity.range)!;
    expect(of("Rooms", "rule").map(({ value }) => value)).toContainEqual({
      range: rangeOf(zone),
      wholeNumber: expect.objectContaining({ formula1: expect.any(Number) as number }) as unknown,
    });
  }));

test("a workbook of 240 outlets is built in as many round trips as one of 24", async () => {
  const trips = async (outlets: number): Promise<number> => {
    let syncs = 0;
    await inExcel({ api: "1.12" }, async (excel) => {
      await new ExcelHost().startHere({ book: layOut(multiRoom, scaledJob(guestHouse, outlets)) });
      syncs = excel.syncs;
      expect(excel.undoSteps).toBe(1);
    });
    return syncs;
  };
  const [small, large] = [await trips(24), await trips(240)];
  process.stdout.write(`round trips to build a workbook: 24 outlets ${small}, 240 outlets ${large}\n`);
  expect(large).toBe(small);
  expect(large).toBeLessThanOrEqual(3);
});

test("text that Excel would take for something else stays text", () =>
  inExcel(BUILT, async (excel) => {
    const texts = [
      "=1+1",
      "0101",
      "1-2",
      "May 5",
      "TRUE",
      "+31 20",
      "@here",
      "'quoted",
      "#N/A",
      "3E4",
      "lounge",
    ];
    const sheet = emptySheet("Texts");
    texts.forEach((value, row) => (sheet.cells[`A${row + 1}`] = { value }));
    await new ExcelHost().startHere({ book: bookOf(sheet) });
    expect(texts.map((_, row) => excel.book().sheets[1]!.cells[`A${row + 1}`]?.value)).toEqual(texts);
  }));

describe("what is refused leaves the workbook as it was", () => {
  const untouched = async (excel: ExcelStandIn, wanted: RegExp, work: Promise<unknown>): Promise<void> => {
    const before = JSON.stringify(excel.state.book);
    expect(await sentenceOf(work)).toMatch(wanted);
    expect(JSON.stringify(excel.state.book)).toBe(before);
    expect(excel.undoSteps).toBe(0);
  };

  test("Excel without dynamic arrays", () =>
    inExcel({ api: "1.11" }, async (excel) => {
      const host = new ExcelHost();
      expect(await host.facts()).toMatchObject({ kind: "excel", spills: false });
      await untouched(excel, /too old.*dynamic arrays.*desk/, host.startHere({ book: demonstration() }));
      expect(await sentenceOf(host.readBook())).toMatch(/too old/);
    }));

  test("a sheet of that name is there", () =>
    inExcel(BUILT, async (excel) => {
      excel.state.addSheet("rooms");
      await untouched(
        excel,
        /sheet named “Rooms”.*new workbook.*rename/,
        new ExcelHost().startHere({ book: demonstration() }),
      );
    }));

  test("cells of those names are there", () =>
    inExcel(BUILT, async (excel) => {
      excel.state.addName("ROOMS_RUN", "Sheet1", "A1");
      await untouched(
        excel,
        /cells named rooms_run\. They are yours/,
        new ExcelHost().startHere({ book: demonstration() }),
      );
    }));

  test("a cell is being edited", () =>
    inExcel(BUILT, async (excel) => {
      excel.editing = true;
      await untouched(
        excel,
        /being edited.*Enter or Esc/,
        new ExcelHost().startHere({ book: demonstration() }),
      );
    }));
});

test("an Excel that can't group its steps builds all the same", () =>
  inExcel({ ...BUILT, api: "1.12" }, async (excel) => {
    await new ExcelHost().startHere({ book: demonstration() });
    expect(excel.book().sheets).toHaveLength(multiRoom.sheets.length + 1);
  }));
