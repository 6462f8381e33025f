/** The desk as the pane's host: the same job as in Excel, and every refusal with its sentence. */
import type { Selection } from "../../../src/pane/host";
import { answerName } from "../../../src/training/answerName";
import { drawFor } from "../../../src/training/drawNumbers";
import { markAnswers } from "../../../src/training/markAnswers";
import { answerIn, changedFigures, codeOf } from "../../../src/training/readSheet";
import { trainingSets } from "../../../src/training/sets/all";
import { sheetCode } from "../../../src/training/sheetCode";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { address, parseRange } from "../../../src/formula/address";
import { isBookError, type Book } from "../../../src/workbooks/book";
import { callsUs } from "../../../src/formula/callsUs";
import { namedValue } from "../../../src/workbooks/named";
import { templates } from "../../../src/workbooks/templates";
import { bookOf, emptySheet } from "../../support/books";
import { expectScenario, runScenario, sentenceOf } from "../scenario";
import { DeskInNode } from "./openDesk";

const demonstration = (): DeskInNode => new DeskInNode(templates[0]!.demonstration());
const bare = (): DeskInNode =>
  new DeskInNode(
    bookOf({ ...emptySheet("Mine"), rowCount: 20, columnCount: 10 }, { ...emptySheet("Other") }),
  );

const placeOf = (book: Book, name: string): { sheet: string; top: number; left: number } => {
  const { sheet, range } = book.names.find((one) => one.name === name)!;
  return { sheet, ...parseRange(range)! };
};

test("the scenario runs on the desk", async () => {
  const desk = bare();
  const result = await runScenario({
    host: desk.host,
    type: (sheet, at, value) => desk.type(sheet, at, value),
    choose: (sheet, at) => desk.host.goTo(sheet, at),
    copies: () => desk.copies,
  });
  expectScenario(result);
  expect(result.enteredAgain).toBe(0);
});

test.each(trainingSets.map((set) => [set.id, set] as const))(
  "a trainee's sheet of %s is opened, filled and marked from the desk",
  async (_, set) => {
    const trainee = { name: '=HYPERLINK("x") <b>', occurrence: 1 };
    const drawn = drawFor(set, 11, trainee);
    const desk = bare();
    await desk.host.startWorkbook({ book: traineeSheet(set, 11, trainee) });
    for (const { key } of set.questions) {
      const { sheet, top, left } = placeOf(desk.book(), answerName(key));
      desk.type(sheet, address(top, left), drawn.key[key]!);
    }
    const filled = desk.book();
    expect(codeOf(filled)).toEqual({ code: sheetCode(set, 11, trainee) });
    expect(changedFigures(set, drawn, filled)).toBeUndefined();
    expect(namedValue(filled, "training_trainee")).toBe(trainee.name);
    expect(namedValue(filled, "checks_verdict")).toBe("all answers given");
    expect(markAnswers(set, drawn, answerIn(filled)).map(({ outcome }) => outcome)).toEqual(
      set.questions.map(() => "right"),
    );
  },
);

test("another workbook is handed over as a file of its name", async () => {
  const desk = bare();
  await desk.host.handOverBook(
    traineeSheet(trainingSets[0]!, 1, { name: "Anna", occurrence: 1 }),
    "1-Anna.xlsx",
  );
  expect([...desk.handedOver.keys()]).toEqual(["1-Anna.xlsx"]);
  expect(desk.book().template).toBe("");
});

describe("selection", () => {
  test("goTo changes sheet and cell, and the watcher is told once, until it is ended", async () => {
    const { host } = demonstration();
    const told: Selection[] = [];
    const desk = demonstration();
    const end = desk.host.watchSelection((selection) => told.push(selection));
    const { sheet, top, left } = placeOf(desk.book(), "rooms_run");
    await desk.host.goTo(sheet, address(top + 1, left));
    desk.type(sheet, address(top + 1, left), 12.5);
    desk.type(sheet, address(top + 1, left), 12.5);
    expect(told.map(({ sheet: name, at, result }) => [name, at, result])).toEqual([
      [sheet, address(top + 1, left), 12.5],
    ]);
    end();
    desk.type(sheet, address(top + 1, left), 13);
    expect(told).toHaveLength(1);
    expect((await host.selection()).sheet).toBe(templates[0]!.definition.sheets[0]!.name);
  });

  test("a formula and an error with its sentence", async () => {
    const desk = bare();
    await desk.host.goTo("Mine", "B3");
    await desk.host.enterFormula('RIG.CABLELOSS("series 6",-1,950)');
    expect(await desk.host.selection()).toEqual({
      sheet: "Mine",
      at: "B3",
      formula: 'RIG.CABLELOSS("series 6",-1,950)',
      result: { error: "#VALUE!", message: expect.stringMatching(/^length is -1/) },
    });
  });

  test("a sheet that is not there", async () => {
    expect(await sentenceOf(bare().host.goTo("Gone", "A1"))).toMatch(
      /no cell A1 on a sheet Gone.*Check again/,
    );
    expect(await sentenceOf(bare().host.goTo("Mine", "nowhere"))).toMatch(/no cell nowhere/);
  });

  test("a hidden sheet", async () => {
    const desk = new DeskInNode(bookOf(emptySheet("Mine"), { ...emptySheet("Other"), hidden: true }));
    expect(await sentenceOf(desk.host.goTo("Other", "A1"))).toMatch(/sheet Other is hidden\. Show it/);
  });
});

describe("entering a formula", () => {
  test("the same formula twice is no trouble", async () => {
    const desk = bare();
    await desk.host.enterFormula("RIG.AZIMUTH(35,-100,-90)");
    await desk.host.enterFormula("RIG.AZIMUTH(35,-100,-90)");
    expect((await desk.host.selection()).result).toBeCloseTo(162.9, 1);
  });

  test.each([
    ["The selected cell is calculated", "price_sell", 0],
    ["The selected cell is one of the workbook's own labels", "price_sell", -1],
    ["Nothing is asked for in the selected cell", "exclusions_text", 7],
  ])("%s: it is kept, with the way on", async (what, name, aside) => {
    const desk = demonstration();
    const before = desk.book();
    const { sheet, top, left } = placeOf(before, name);
    await desk.host.goTo(sheet, address(top, left + aside));
    expect(await sentenceOf(desk.host.enterFormula("RIG.VERSION()"))).toMatch(
      new RegExp(`^${what}\\. Select a boxed cell, or a cell of a sheet that you have added`),
    );
    expect(desk.book()).toEqual(before);
    // The pane says it; the grid's own notice would say it twice.
    expect(desk.refusals).toEqual([]);
  });
});

describe("adding rows", () => {
  test("one undo takes back all of it", async () => {
    const desk = demonstration();
    const before = desk.book();
    const { sheet, top, left } = placeOf(before, "rooms_run");
    await desk.host.goTo(sheet, address(top + 1, left));
    expect(await desk.host.addRows(1)).toMatch(/^1 row was added to Outlets/);
    expect(desk.book().names).not.toEqual(before.names);
    desk.undo();
    expect(desk.book().names).toEqual(before.names);
  });

  test("a cell in no block, and a workbook that is not ours", async () => {
    expect(await sentenceOf(demonstration().host.addRows(3))).toMatch(
      /lies in no block of rows\. Choose a cell/,
    );
    expect(await sentenceOf(bare().host.addRows(3))).toMatch(
      /not made from one of our templates.*Insert rows/,
    );
  });
});

describe("entering ours again", () => {
  test("only calls of ours with an unknown name, on guarded sheets too, as one step", async () => {
    const book = templates[0]!.demonstration();
    const { sheet, top, left } = placeOf(book, "rooms_place");
    const at = address(top, left);
    book.sheets.find(({ name }) => name === sheet)!.cells[at]!.formula = "RIG.NOSUCH(rooms_run)";
    book.sheets[0]!.cells.H1 = { formula: "NOSUCH(1)" };
    const desk = new DeskInNode(book);
    expect(await desk.host.enterOursAgain()).toBe(1);
    expect(desk.book().sheets.find(({ name }) => name === sheet)!.cells[at]!.formula).toBe(
      "RIG.NOSUCH(rooms_run)",
    );
    expect(desk.refusals).toEqual([]);
    // One undo leaves no cell emptied half way.
    desk.undo();
    expect(desk.book().sheets.find(({ name }) => name === sheet)!.cells[at]!.formula).toBe(
      "RIG.NOSUCH(rooms_run)",
    );
    // The sheet is guarded again.
    desk.type(sheet, at, "5");
    expect(desk.book().sheets.find(({ name }) => name === sheet)!.cells[at]!.formula).toBe(
      "RIG.NOSUCH(rooms_run)",
    );
  });

  test("nothing to do", async () => {
    expect(await demonstration().host.enterOursAgain()).toBe(0);
  });
});

test("nothing is done while a cell is being typed into", async () => {
  const desk = demonstration();
  const before = desk.book();
  desk.editing = true;
  const { host } = desk;
  for (const work of [
    () => host.startWorkbook({ book: templates[0]!.empty() }),
    () => host.goTo("Rooms", "A1"),
    () => host.enterFormula("RIG.VERSION()"),
    () => host.addRows(2),
    () => host.enterOursAgain(),
  ]) {
    expect(await sentenceOf(work())).toMatch(/being typed into\. Press Enter .* or Esc/);
  }
  expect(desk.book()).toEqual(before);
});

test("starting a workbook takes the place of the open one", async () => {
  const desk = bare();
  await desk.host.startWorkbook({ book: templates[0]!.demonstration() });
  const book = await desk.host.readBook();
  expect(book.template).toBe(templates[0]!.id);
  expect(typeof namedValue(book, "quote_total")).toBe("number");
  expect(
    book.sheets.some(({ cells }) => Object.values(cells).some(({ formula }) => callsUs(formula ?? ""))),
  ).toBe(true);
  expect(isBookError(namedValue(book, "quote_total"))).toBe(false);
});

describe("preferences", () => {
  test("the usual ones, then those that were kept, in this page and the next", async () => {
    const desk = bare();
    expect(await desk.host.preferences()).toEqual({ lengthUnit: "m", currency: "" });
    await desk.host.keepPreferences({ lengthUnit: "ft", currency: "NOK" });
    expect(await desk.host.preferences()).toEqual({ lengthUnit: "ft", currency: "NOK" });
    const next = bare();
    for (const [key, value] of desk.stored) next.stored.set(key, value);
    expect(await next.host.preferences()).toEqual({ lengthUnit: "ft", currency: "NOK" });
  });

  test("storage refused: said, and they hold until the page is closed", async () => {
    const desk = bare();
    desk.storageRefused = true;
    expect(await desk.host.preferences()).toEqual({ lengthUnit: "m", currency: "" });
    const kept = desk.host.keepPreferences({ lengthUnit: "ft", currency: "NOK" });
    expect(await sentenceOf(kept)).toMatch(/does not let this page keep settings\. They hold until/);
    expect(await desk.host.preferences()).toEqual({ lengthUnit: "ft", currency: "NOK" });
  });

  test.each(["not json", "null", "7", '{"lengthUnit":"miles","currency":3}'])(
    "stored nonsense: %s",
    async (text) => {
      const desk = bare();
      await desk.host.keepPreferences({ lengthUnit: "ft", currency: "X" });
      const [key] = desk.stored.keys();
      const next = bare();
      next.stored.set(key!, text);
      expect(await next.host.preferences()).toEqual({ lengthUnit: "m", currency: "" });
    },
  );
});
