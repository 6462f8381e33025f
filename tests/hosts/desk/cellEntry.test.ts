/** Typing into the desk's cells, with the library's own editor and no page: what is read, and what stays when it is refused. */
import { CellEntry, enterTyped } from "../../../src/hosts/desk/page/cellEntry";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import type { GridModel } from "../../../src/hosts/grid/library";
import { registerShownAsWritten } from "../../../src/hosts/grid/shownAsWritten";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import { address, parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import { jobInputsOf } from "../../../src/workbooks/jobInputsOf";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedColumn } from "../../../src/workbooks/named";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { typedCases, verdictOf } from "../../workbooks/typed/outsiders";

// The library folds several edits of one step with a call that every browser has, and Node from 21 on.
(Object as { groupBy?: unknown }).groupBy ??= <T>(items: readonly T[], keyOf: (item: T) => string) => {
  const groups: Record<string, T[]> = {};
  for (const item of items) (groups[keyOf(item)] ??= []).push(item);
  return groups;
};

const library = loadLibrary();
registerShownAsWritten(library);
const entry = new CellEntry();
enterTyped(library, entry);

/** The library's editor, as the page's own keys use it. */
interface Editor {
  readonly editionMode: string;
  readonly currentContent: string;
  startEdition(text?: string): void;
  setCurrentContent(text: string): void;
  stopEdition(direction?: string): void;
  cancelEdition(): void;
  autoCompleteOrStop(direction?: string): void;
  _stopEdition(): void;
}

class Typist {
  readonly model: GridModel;
  readonly editor: Editor;

  constructor(inputs: JobInputs = guestHouse) {
    this.model = openModel(layOut(multiRoom, inputs));
    const container = new library.stores.DependencyContainer();
    container.inject(library.stores.ModelStore, this.model);
    this.editor = container.get(library.stores.CellComposerStore) as unknown as Editor;
    entry.set(undefined);
  }

  /** Goes to a field, or to a block's row counted from its first. */
  at(name: string, row = 0): this {
    const { sheetId, zone } = this.model.getters.getNamedRange(name)!.range;
    const from = this.model.getters.getActiveSheetId();
    if (from !== sheetId)
      this.model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: from, sheetIdTo: sheetId } as never);
    const first = zone.bottom > zone.top ? zone.top + 1 : zone.top;
    this.model.selection.selectCell(zone.left, first + row);
    return this;
  }

  type(text: string): this {
    quietly(() => {
      this.editor.startEdition();
      this.editor.setCurrentContent(text);
      this.editor.stopEdition("down");
    });
    return this;
  }

  /** What the cell where the cursor was holds. */
  get(name: string, row = 0): unknown {
    const { sheetId, zone } = this.model.getters.getNamedRange(name)!.range;
    const first = zone.bottom > zone.top ? zone.top + 1 : zone.top;
    return this.model.getters.getEvaluatedCell({ sheetId, row: first + row, col: zone.left }).value;
  }

  dispatch(type: string, payload: object = {}): void {
    quietly(() => this.model.dispatch(type as never, payload as never));
  }

  book(): Book {
    return quietly(() => fromModel(library, this.model));
  }
}

describe("a column of names is text", () => {
  const typist = new Typist();
  // The outsider's names and texts, through the library's own editor; "very long" is refused with its length.
  test.each([
    ["rooms_outlet", "name"],
    ["rooms_room", "text"],
  ])("%s: typed", (column, kind) => {
    const bad = typedCases
      .filter((one) => one.column === kind)
      .flatMap((one) => {
        typist.at(column).type(one.typed);
        const refused = entry.refused;
        typist.editor.cancelEdition();
        const value = typist.get(column);
        const outcome = refused
          ? { refused: refused.sentence }
          : { value: value === "" ? undefined : (value as string) };
        return ["right", "soft"].includes(verdictOf(one, outcome)) ? [] : [[one.id, one.typed, outcome]];
      });
    expect(bad).toEqual([]);
  });

  const ODD = ["3-16", "1-1", "12/4", "007", "1E5", "TRUE", "=A-07", "+3", "2026-11-27"];
  const rows = ODD.map((_, index) => index);
  const names = (of: Typist): unknown[] => rows.map((row) => of.get("rooms_outlet", row));

  test("undo, redo and a reload keep it", () => {
    const desk = new Typist();
    const before = names(desk);
    ODD.forEach((name, row) => desk.at("rooms_outlet", row).type(name));
    expect(names(desk)).toEqual(ODD);
    ODD.forEach(() => desk.dispatch("REQUEST_UNDO"));
    expect(names(desk)).toEqual(before);
    ODD.forEach(() => desk.dispatch("REQUEST_REDO"));
    expect(names(desk)).toEqual(ODD);
    const again = quietly(() => new library.Model(desk.model.exportData()));
    const { sheetId, zone } = again.getters.getNamedRange("rooms_outlet")!.range;
    expect(
      rows.map(
        (row) => again.getters.getEvaluatedCell({ sheetId, row: zone.top + 1 + row, col: zone.left }).value,
      ),
    ).toEqual(ODD);
  });

  test("find and replace, filling down and a journal of contents as they were typed bring no dates in", () => {
    const desk = new Typist();
    const { sheetId, zone } = desk.model.getters.getNamedRange("rooms_from")!.range;
    const cell = (row: number) => ({ sheetId, row: zone.top + 1 + row, col: zone.left });
    // As find and replace, a paste and an old journal dispatch it.
    ODD.filter((name) => !name.startsWith("=")).forEach((content, row) =>
      desk.dispatch("UPDATE_CELL", { ...cell(row), content }),
    );
    expect(rows.slice(0, -1).map((row) => desk.get("rooms_from", row))).toEqual(
      ODD.filter((name) => !name.startsWith("=")),
    );

    desk.at("rooms_from");
    const from = cell(0);
    desk.dispatch("AUTOFILL_SELECT", { col: from.col, row: from.row + 2 });
    desk.dispatch("AUTOFILL");
    expect([0, 1, 2].map((row) => typeof desk.get("rooms_from", row))).toEqual([
      "string",
      "string",
      "string",
    ]);
    // A formula that is moved stays one: rows are moved and sorted by their contents.
    desk.dispatch("UPDATE_CELL", { ...cell(3), content: '="B"&1' });
    expect(desk.get("rooms_from", 3)).toBe("B1");
  });

  test("the .xlsx has them as text in cells of text, and reads them back", async () => {
    const desk = new Typist();
    ODD.forEach((name, row) => desk.at("rooms_outlet", row).type(name));
    const written = desk.book();
    const read = await readXlsx(await writeXlsx(written));
    for (const book of [written, read]) {
      expect(namedColumn(book, "rooms_outlet").slice(1, 1 + ODD.length)).toEqual(ODD);
      const sheet = book.sheets.find(({ name }) => name === "Rooms")!;
      const { top, left, bottom } = parseRange(
        book.names.find(({ name }) => name === "rooms_outlet")!.range,
      )!;
      for (let row = top + 1; row < bottom; row++)
        expect(book.looks[sheet.cells[address(row, left)]!.look!]!.format).toBe("@");
    }
    const back = new Typist(jobInputsOf(multiRoom, read));
    expect(names(back)).toEqual(ODD);
  });

  test("the box for editing shows the name, not the apostrophe by which the grid keeps it", () => {
    const desk = new Typist();
    desk.at("rooms_outlet").type("3-16").at("rooms_outlet");
    desk.editor.startEdition();
    expect(desk.editor.currentContent).toBe("3-16");
    desk.editor.stopEdition();
    expect(desk.get("rooms_outlet")).toBe("3-16");
  });

  test("a name that begins with an equals sign is offered no functions: Enter takes it as it stands", () => {
    const desk = new Typist();
    desk.at("rooms_outlet");
    desk.editor.startEdition("=");
    desk.editor.setCurrentContent("=SUM");
    expect(desk.editor.editionMode).toBe("editing");
    quietly(() => desk.editor.autoCompleteOrStop("down"));
    expect(desk.get("rooms_outlet")).toBe("=SUM");
  });

  test("one of a list is taken in any capitals, and a name of no list yet as it is", () => {
    const desk = new Typist();
    expect(desk.at("rooms_plate").type("Single  OUTLET").get("rooms_plate")).toBe("single outlet");
    expect(desk.at("rooms_cable").type("1/2").get("rooms_cable")).toBe("1/2");
    expect(desk.at("site_tax_on").type("Materials Only").get("site_tax_on")).toBe("materials only");
    desk.at("site_tax_on").type("nothing");
    expect(entry.refused?.sentence).toMatch(/one of: materials and labour, materials only/);
  });
});

describe("what is unmistakable is read", () => {
  const typist = new Typist();
  // Arithmetic by hand: 41' 6" is 41.5 ft of 0.3048 m; 350 mA is 0.35 A; 14 °F is (14 - 32) · 5/9 °C.
  test.each([
    ["rooms_run", "9,5", 9.5],
    ["rooms_run", "950 cm", 9.5],
    ["rooms_run", "41' 6\"", 12.6492],
    ["rooms_run", "=12+3", 15],
    ["cables_price", "1.234,56", 1234.56],
    ["site_high", "2.15 GHz", 2150],
    ["site_cold", "14 °F", -10],
    ["supplies_amps", "350 mA", 0.35],
    ["labour_minutes", "1h 30", 90],
    ["site_latitude", "33.9 S", -33.9],
    ["site_date", "27.11.2026", sheetDate(2026, 11, 27)],
    ["site_date", "27 Nov 2026", sheetDate(2026, 11, 27)],
    ["slots_slot", "13,5° E", "13.5E"],
    // Percent entry: 20, 20 % and 20% are a fifth.
    ["site_margin", "20", 0.2],
    ["site_margin", "12,5 %", 0.125],
    ["site_margin", "0.5%", 0.005],
  ])("%s: %s", (name, typed, value) => {
    typist.at(name).type(typed);
    expect(entry.refused).toBeUndefined();
    expect(typist.get(name)).toBe(value);
  });

  test("a load is in amperes or watts, as its own row says", () => {
    expect(typist.at("units_kind", 1).get("units_kind", 1)).toBe("W");
    typist.at("units_load", 1).type("350 mA");
    expect(entry.refused?.sentence).toMatch(/can't be read as a power/);
    typist.editor.cancelEdition();
    typist.at("units_load").type("350 mA");
    expect(typist.get("units_load")).toBe(0.35);
  });

  test("a date with strokes and a number with a comma follow the field on Site", () => {
    const desk = new Typist();
    desk.at("site_date").type("05/11/2026");
    expect(entry.refused?.sentence).toMatch(/2026-11-05 or 2026-05-11.*“Numbers and dates typed as in”/);
    desk.editor.cancelEdition();
    desk.at("written_as").type("english (us)");
    expect(desk.at("site_date").type("05/11/2026").get("site_date")).toBe(sheetDate(2026, 5, 11));
    desk.at("written_as").type("German");
    expect(desk.at("site_date").type("05/11/2026").get("site_date")).toBe(sheetDate(2026, 11, 5));
    expect(desk.at("cables_price").type("1,234").get("cables_price")).toBe(1.234);
  });

  test("lengths follow the unit that Site names", () => {
    const desk = new Typist();
    desk.at("site_unit").type("ft");
    expect(desk.at("rooms_run").type("9.5 m").get("rooms_run")).toBe(31.167979);
  });
});

describe("what is refused", () => {
  test("stays in the editor with its sentence, through Enter and Tab, until it is put right", () => {
    const desk = new Typist();
    const before = desk.get("rooms_run");
    desk.at("rooms_run").type("9.5 kg");
    for (const direction of ["down", "right", undefined]) {
      desk.editor.stopEdition(direction);
      expect(desk.editor).toMatchObject({ editionMode: "editing", currentContent: "9.5 kg" });
      expect(entry.refused?.sentence).toBe(
        "“9.5 kg” can't be read as a length. Type it in m, or with its unit: 9.5, 950 cm or 31' 2\".",
      );
    }
    expect(desk.get("rooms_run")).toBe(before);
    desk.editor.setCurrentContent("9.5 m");
    quietly(() => desk.editor.stopEdition("down"));
    expect([desk.editor.editionMode, entry.refused, desk.get("rooms_run")]).toEqual([
      "inactive",
      undefined,
      9.5,
    ]);
  });

  test("is dropped by Escape, and the cell is as it was", () => {
    const desk = new Typist();
    const before = desk.get("rooms_run");
    desk.at("rooms_run").type("nine");
    desk.editor.cancelEdition();
    expect([desk.editor.editionMode, entry.refused, desk.get("rooms_run")]).toEqual([
      "inactive",
      undefined,
      before,
    ]);
  });

  test("holds its sheet: another is not shown while the text waits", () => {
    const desk = new Typist();
    desk.at("rooms_run").type("tbd");
    const from = desk.model.getters.getActiveSheetId();
    const [other] = desk.model.getters.getSheetIds();
    desk.dispatch("ACTIVATE_SHEET", { sheetIdFrom: from, sheetIdTo: other });
    expect(desk.model.getters.getActiveSheetId()).toBe(from);
    expect(desk.editor.currentContent).toBe("tbd");
    desk.editor.cancelEdition();
    desk.dispatch("ACTIVATE_SHEET", { sheetIdFrom: from, sheetIdTo: other });
    expect(desk.model.getters.getActiveSheetId()).toBe(other);
  });

  test("is said, with the text, where the grid takes the editor's place without asking", () => {
    const desk = new Typist();
    const dropped: string[] = [];
    entry.dropped = (sentence) => dropped.push(sentence);
    desk.at("rooms_run").type("9.5 kg");
    desk.editor._stopEdition();
    expect(desk.editor.editionMode).toBe("inactive");
    expect(dropped).toEqual([expect.stringMatching(/^Not taken, and the cell is as it was\. “9\.5 kg”/)]);
  });

  test.each([
    ["site_margin", "0.2", /can be 20% or 0\.2%/],
    ["rooms_run", "2500", /is 2500 m; here it must be from 0.1 to 2000 m/],
    ["rooms_quantity", "1.5", /not a whole number/],
    ["cables_price", "€5", /the prices here are in “demonstration money”/],
    ["slots_slot", "13", /with E or W behind them/],
    ["site_date", "31.02.2026", /no day of the calendar/],
    ["rooms_from", "x".repeat(251), /251 characters long/],
  ])("%s: %s", (name, typed, sentence) => {
    const desk = new Typist();
    const before = desk.get(name);
    desk.at(name).type(typed);
    expect(entry.refused?.sentence).toMatch(sentence);
    expect(desk.get(name)).toBe(before);
    desk.editor.cancelEdition();
  });

  test("a cell that holds what its rule would refuse may be looked at and left", () => {
    const desk = new Typist();
    const { sheetId, zone } = desk.model.getters.getNamedRange("rooms_run")!.range;
    desk.dispatch("UPDATE_CELL", { sheetId, row: zone.top + 1, col: zone.left, content: "-5" });
    desk.at("rooms_run");
    desk.editor.startEdition();
    desk.editor.stopEdition("down");
    expect([desk.editor.editionMode, entry.refused]).toEqual(["inactive", undefined]);
  });
});
