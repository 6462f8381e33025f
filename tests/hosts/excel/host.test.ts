/** What the pane asks of Excel, and every way in which it can be refused. */
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { noteFunctionsVersion } from "../../../src/hosts/excel/functionsVersion";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { HostTrouble, type Selection } from "../../../src/pane/host";
import { trainingSets } from "../../../src/training/sets/all";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { address, parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { callsUs } from "../../../src/formula/callsUs";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { bookOf, emptySheet } from "../../support/books";
import type { ExcelStandIn } from "../../support/excelStandIn";
import { sentenceOf } from "../scenario";
import { inExcel } from "./inExcel";

const demonstration = (): Book => layOut(multiRoom, guestHouse);

/** Excel with the demonstration opened from its file: protected, as files of ours are. */
const withJob = (
  work: (excel: ExcelStandIn, host: ExcelHost) => Promise<void>,
  change = (book: Book) => book,
) =>
  inExcel({}, async (excel) => {
    excel.state.open(change(demonstration()));
    await work(excel, new ExcelHost());
  });

const zoneOf = (excel: ExcelStandIn, name: string) =>
  parseRange(excel.state.book.names.find((one) => one.name === name)!.range)!;

describe("reading the workbook", () => {
  test.each([false, true])(
    "everything comes back in a few round trips (ghost formulas: %s)",
    (ghostFormulas) =>
      inExcel({ ghostFormulas }, async (excel) => {
        excel.state.open(demonstration());
        const read = await new ExcelHost().readBook();
        expect(excel.syncs).toBeLessThanOrEqual(5);
        expect(excel.undoSteps).toBe(0);
        const wanted = recalculate(demonstration());
        expect(read).toMatchObject({
          template: "multi-room",
          templateVersion: multiRoom.version,
          names: wanted.names,
        });
        for (const sheet of wanted.sheets) {
          const got = read.sheets.find(({ name }) => name === sheet.name)!;
          for (const [at, { value, formula, spill }] of Object.entries(sheet.cells)) {
            if (value === undefined && formula === undefined) continue;
            if (value === "") continue;
            expect({ at, ...got.cells[at] }).toEqual({ at, value, formula, spill });
          }
          for (const [at, result] of Object.entries(sheet.results)) {
            const bare = typeof result === "object" ? { error: result.error } : result;
            expect([at, got.results[at] ?? ""]).toEqual([at, bare]);
          }
        }
      }),
  );

  test("a workbook that is not ours, and an empty one", () =>
    inExcel({}, async (excel) => {
      expect(await new ExcelHost().readBook()).toMatchObject({
        template: "",
        names: [],
        sheets: [{ name: "Sheet1", cells: {} }],
      });
      excel.type("Sheet1", "B2", 5);
      const book = await new ExcelHost().readBook();
      expect(book.sheets[0]!.cells).toEqual({ B2: { value: 5 } });
    }));
});

describe("the chosen cell", () => {
  test("a formula with its result, a value, a blank", () =>
    withJob(async (excel, host) => {
      const { top, left } = zoneOf(excel, "quote_total");
      await excel.choose("Quote", address(top, left));
      expect(await host.selection()).toMatchObject({
        sheet: "Quote",
        at: address(top, left),
        formula: expect.any(String) as string,
        result: expect.any(Number) as number,
      });
      await excel.choose("Site", "A1");
      expect(await host.selection()).toEqual({ sheet: "Site", at: "A1", result: "Site" });
      await excel.choose("Site", "Z90");
      expect(await host.selection()).toEqual({ sheet: "Site", at: "Z90" });
    }));

  test("a sheet whose name needs quotes", () =>
    withJob(async (excel, host) => {
      await excel.choose("Head units", "B3");
      expect(await host.selection()).toMatchObject({ sheet: "Head units", at: "B3" });
    }));

  test("watched until the watching ends", () =>
    withJob(async (excel, host) => {
      const seen: Selection[] = [];
      const end = host.watchSelection((selection) => seen.push(selection));
      await settled();
      await excel.choose("Site", "B5");
      expect(seen.map(({ at }) => at)).toEqual(["B5"]);
      excel.editing = true;
      await excel.choose("Site", "B6");
      excel.editing = false;
      expect(seen).toHaveLength(1);
      end();
      await settled();
      expect(excel.watched).toBe(0);
    }));

  test("going to a cell, and to a sheet that is gone", () =>
    withJob(async (excel, host) => {
      await host.goTo("Rooms", "H8");
      expect(excel.state.active).toEqual({ sheet: "Rooms", at: "H8" });
      expect(await sentenceOf(host.goTo("Attic", "A1"))).toMatch(/no sheet “Attic”/);
    }));
});

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 20));

describe("adding rows", () => {
  // Excel stretches by itself what a row is inserted into (from memory of its documentation), so the row has to lie
  // inside of everything that is to follow it.
  test("what prints and what rules hold for reaches as far as the new rows", () =>
    withJob(async (excel, host) => {
      const reach = (sheet: string) => {
        const { print, validations } = excel.state.book.sheets.find(({ name }) => name === sheet)!;
        const bottoms = validations.map(({ range }) => parseRange(range)!.bottom);
        return [parseRange(print!.area!)!.bottom, ...bottoms];
      };
      const before = ["Rooms", "Commissioning"].map(reach);
      const { top, left } = zoneOf(excel, "rooms_run");
      await excel.choose("Rooms", address(top + 2, left));
      await host.addRows(30);
      expect(["Rooms", "Commissioning"].map(reach)).toEqual(
        before.map((bottoms) => bottoms.map((bottom) => bottom + 30)),
      );
      for (const sheet of ["Rooms", "Commissioning"])
        expect(reach(sheet)[0]).toBeGreaterThanOrEqual(
          zoneOf(excel, sheet === "Rooms" ? "rooms_outlet" : "commission_outlet").bottom,
        );
    }));

  test("one undo step, names stretched, mirrors too, locks as in the row above", () =>
    withJob(async (excel, host) => {
      const before = zoneOf(excel, "rooms_run");
      const mirror = zoneOf(excel, "commission_outlet");
      await excel.choose("Rooms", address(before.top + 2, before.left));
      expect(await host.addRows(2)).toBe(
        "2 rows added at the end of Outlets. Cutting plan and Commissioning grew with it.",
      );
      expect(zoneOf(excel, "rooms_run")).toEqual({ ...before, bottom: before.bottom + 2 });
      expect(zoneOf(excel, "commission_outlet").bottom).toBe(mirror.bottom + 2);
      expect(excel.undoSteps).toBe(1);
      // The sheet is protected: only an unlocked cell can be filled.
      excel.type("Rooms", address(before.bottom, before.left), 12);
      expect(() => excel.type("Rooms", "A1", "x")).toThrow();
    }));

  const refused: readonly [string, RegExp, (book: Book) => Book][] = [
    [
      "a workbook that is not ours",
      /not made from a Rigsheet template.*by hand/,
      (book) => ({ ...book, template: "" }),
    ],
    [
      "a template that this add-in does not know",
      /template “penthouse”.*anew/,
      (book) => ({ ...book, template: "penthouse" }),
    ],
    [
      "a newer version of the template",
      /version 99 .*knows version/,
      (book) => ({ ...book, templateVersion: "99" }),
    ],
  ];
  test.each(refused)("%s", (_, sentence, change) =>
    withJob(async (excel, host) => {
      await excel.choose("Rooms", "H8");
      expect(await sentenceOf(host.addRows(1))).toMatch(sentence);
      expect(excel.undoSteps).toBe(0);
    }, change),
  );

  test("an older version of the template: done, and said", () =>
    withJob(
      async (excel, host) => {
        const { top, left } = zoneOf(excel, "rooms_run");
        await excel.choose("Rooms", address(top + 1, left));
        expect(await host.addRows(1)).toMatch(
          /^1 row added.*version 0 of its template; version .* is current/s,
        );
      },
      (book) => ({ ...book, templateVersion: "0" }),
    ));

  test.each([0, -1, 1.5, NaN, 1001])("%p rows", (count) =>
    withJob(async (excel, host) => {
      await excel.choose("Rooms", "H8");
      expect(await sentenceOf(host.addRows(count))).toMatch(/from 1 to 1000/);
    }),
  );

  test("a cell in no block", () =>
    withJob(async (excel, host) => {
      await excel.choose("Rooms", "A1");
      expect(await sentenceOf(host.addRows(1))).toMatch(/in no block/);
    }));

  test("a sheet protected against new rows", () =>
    withJob(async (excel, host) => {
      const { top, left } = zoneOf(excel, "rooms_run");
      excel.state.protectedSheets.set("Rooms", { insertRows: false });
      await excel.choose("Rooms", address(top + 1, left));
      const before = JSON.stringify(excel.state.book.names);
      expect(await sentenceOf(host.addRows(1))).toMatch(/protected.*Unprotect Sheet/);
      expect(excel.state.book.names.find(({ name }) => name === "rooms_run")).toEqual(
        (JSON.parse(before) as Book["names"]).find(({ name }) => name === "rooms_run"),
      );
    }));
});

describe("entering formulas", () => {
  test("into the chosen cell, where it computes", () =>
    inExcel({}, async (excel) => {
      await excel.choose("Sheet1", "B2");
      await new ExcelHost().enterFormula("RIG.RAYHEIGHT(10,45)");
      expect(excel.state.formula("Sheet1", "B2")).toBe("RIG.RAYHEIGHT(10,45)");
      expect((await new ExcelHost().selection()).result).toEqual(expect.any(Number));
      expect(excel.undoSteps).toBe(1);
    }));

  test("into a locked cell of a protected sheet", () =>
    withJob(async (excel, host) => {
      await excel.choose("Site", "A1");
      expect(await sentenceOf(host.enterFormula("RIG.VERSION()"))).toMatch(
        /locked.*protected.*unlocked cell/,
      );
      expect(excel.undoSteps).toBe(0);
    }));

  test("ours again, all of them, on protected sheets, in one undo step", () =>
    withJob(async (excel, host) => {
      const ours = excel.state.book.sheets.flatMap(({ name, cells }) =>
        Object.entries(cells).flatMap(([at, { formula }]) =>
          formula && callsUs(formula) ? [`${name}!${at}`] : [],
        ),
      );
      expect(ours.length).toBeGreaterThan(10);
      for (const cell of ours) excel.state.forgotten.add(cell);
      expect(await host.enterOursAgain()).toBe(ours.length);
      expect(excel.state.forgotten.size).toBe(0);
      expect(excel.undoSteps).toBe(1);
      expect(await host.enterOursAgain()).toBe(0);
      expect(excel.undoSteps).toBe(1);
    }));

  test("a name that is unknown but not ours is left alone", () =>
    inExcel({}, async (excel) => {
      const sheet = emptySheet("S");
      sheet.cells.A1 = { formula: "OTHER.THING(1)" };
      excel.state.open(bookOf(sheet));
      excel.state.forgotten.add("S!A1");
      expect(await new ExcelHost().enterOursAgain()).toBe(0);
    }));
});

describe("nothing is done", () => {
  const asked: readonly [string, (host: ExcelHost) => Promise<unknown>][] = [
    ["selection", (host) => host.selection()],
    ["addRows", (host) => host.addRows(1)],
    ["enterFormula", (host) => host.enterFormula("RIG.VERSION()")],
    ["enterOursAgain", (host) => host.enterOursAgain()],
    ["readBook", (host) => host.readBook()],
    ["goTo", (host) => host.goTo("Rooms", "A1")],
  ];
  test.each(asked)("while a cell is being edited: %s", (_, ask) =>
    withJob(async (excel, host) => {
      excel.editing = true;
      const before = JSON.stringify(excel.state.book);
      expect(await sentenceOf(ask(host))).toMatch(/being edited.*Enter or Esc/);
      expect(JSON.stringify(excel.state.book)).toBe(before);
    }),
  );

  test.each(asked.slice(0, 3))("without a chosen cell: %s", (_, ask) =>
    withJob(async (excel, host) => {
      excel.state.active = { sheet: "Rooms", at: "" };
      expect(await sentenceOf(ask(host))).toMatch(/No cell is chosen\. Click a cell/);
    }),
  );
});

describe("handing over copies", () => {
  test("Excel that does not hand over the file", () =>
    withJob(async (excel, host) => {
      excel.openFiles = 2;
      expect(await sentenceOf(host.handOverCopy("office"))).toMatch(/two files are open already.*Save it/);
      expect(excel.created).toHaveLength(0);
    }));

  test("Excel that hands over a file of no bytes", () =>
    inExcel({ file: new Uint8Array(0) }, async (excel) => {
      expect(await sentenceOf(new ExcelHost().handOverCopy("office"))).toMatch(
        /empty file in place of the workbook\. Save the workbook/,
      );
      expect([excel.openFiles, excel.created.length]).toEqual([0, 0]);
    }));

  test("Excel that can't open a workbook for an add-in", () =>
    inExcel({ api: "1.7" }, async (excel) => {
      const host = new ExcelHost();
      for (const refused of [host.handOverCopy("sealed"), host.handOverBook(demonstration())]) {
        expect(await sentenceOf(refused)).toMatch(/can't open a new workbook.*Rigsheet's own desk/);
      }
      expect([excel.openFiles, excel.created.length]).toEqual([0, 0]);
    }));

  test("another workbook, a trainee's sheet, opens as a new one with its answer cells", () =>
    withJob(async (excel, host) => {
      const sheet = traineeSheet(trainingSets[1]!, 5, { name: "Anna", occurrence: 1 });
      await host.handOverBook(sheet);
      expect(excel.created).toHaveLength(1);
      const opened = await readXlsx(excel.created[0]!);
      expect(opened.template).toBe("training-sheet");
      expect(opened.names.filter(({ name }) => name.startsWith("answer_"))).toHaveLength(7);
    }));

  test("a mistake of ours is not dressed up as Excel's", () =>
    withJob(async (excel, host) => {
      jest.spyOn(excel.state, "usedZone").mockImplementation(() => {
        throw new TypeError("a mistake");
      });
      const refused = host.readBook();
      await expect(refused).rejects.toThrow(TypeError);
      await expect(refused).rejects.not.toBeInstanceOf(HostTrouble);
    }));
});

test("the functions' version is the one that they said of themselves", () =>
  inExcel({}, async () => {
    expect(await new ExcelHost().facts()).toEqual({
      kind: "excel",
      spills: true,
      functionsVersion: undefined,
    });
    noteFunctionsVersion("0.0.9");
    expect((await new ExcelHost().facts()).functionsVersion).toBe("0.0.9");
  }));
