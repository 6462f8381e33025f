/** What the pane works out before anything is shown. */
import { allFunctions } from "../../src/functions/all";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { findFunctions } from "../../src/pane/findFunctions";
import { HostTrouble, type HostFacts } from "../../src/pane/host";
import { startedBook } from "../../src/pane/startedBook";
import { sentenceOf } from "../../src/pane/trouble";
import { warningsOf } from "../../src/pane/versions";
import { workOf } from "../../src/pane/workOf";
import { RIGSHEET_VERSION } from "../../src/version";
import { address, parseRange } from "../../src/formula/address";
import { namedValue } from "../../src/workbooks/named";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { templates } from "../../src/workbooks/templates";
import { bookOf, emptySheet } from "../support/books";

describe("finding a function by the words of a task", () => {
  // What an estimator asks, and the function that the design's list of questions has for it.
  test.each([
    ["Which way does the dish point?", "AZIMUTH"],
    ["how much loss in the cable", "CABLELOSS"],
    ["losses of cables", "CABLELOSS"],
    ["how many tuners at this outlet", "TUNERCOUNT"],
    ["which size of bonding conductor", "BONDCHECK"],
    ["volts at the head unit", "LOADVOLTS"],
    ["price with a margin", "SELLPRICE"],
    ["RIG.AZIMUTH", "AZIMUTH"],
    ["azim", "AZIMUTH"],
  ])("%s → %s among the first three", (asked, wanted) => {
    const { functions } = findFunctions(allFunctions, asked);
    expect(functions.slice(0, 3).map(({ name }) => name)).toContain(wanted);
  });

  test("a question met as a whole comes first", () => {
    expect(findFunctions(allFunctions, "which way does the dish point").functions[0]!.name).toBe("AZIMUTH");
  });

  test("no words at all, or none that tell: every function, or those that have them", () => {
    expect(findFunctions(allFunctions, " ?!").functions).toHaveLength(allFunctions.length);
    expect(findFunctions(allFunctions, "what is the").functions.length).toBeGreaterThan(0);
  });

  test("words that none has all of: those with the most, and it is said", () => {
    const { functions, all } = findFunctions(allFunctions, "azimuth zzzz");
    expect(all).toBe(false);
    expect(functions.map(({ name }) => name)).toContain("AZIMUTH");
    expect(findFunctions(allFunctions, "zzzz qqqq")).toEqual({ functions: [], all: false });
  });

  test("signs of a search language are plain text", () => {
    expect(() => findFunctions(allFunctions, "(.*[ \\ $^ cable")).not.toThrow();
  });
});

describe("a started workbook", () => {
  const [template] = templates;
  test("an empty one takes the person's unit and currency", () => {
    const { book, file } = startedBook(template!, "empty", { lengthUnit: "ft", currency: "NOK" });
    expect(file).toBeUndefined();
    expect([namedValue(book, "site_unit"), namedValue(book, "site_currency")]).toEqual(["ft", "NOK"]);
  });
  test("without a currency the cell stays empty", () => {
    const { book, file } = startedBook(template!, "empty", { lengthUnit: "m", currency: "" });
    expect(file).toBe(`${template!.id}.xlsx`);
    expect(namedValue(book, "site_currency")).toBeUndefined();
  });
  test("the demonstration keeps its own", () => {
    const { book, file } = startedBook(template!, "demonstration", { lengthUnit: "ft", currency: "NOK" });
    expect(file).toBe(`${template!.id}-demonstration.xlsx`);
    expect(book).toEqual(template!.demonstration());
  });
});

describe("warnings", () => {
  const facts: HostFacts = { kind: "excel", spills: true, functionsVersion: RIGSHEET_VERSION };
  test("none where all is well", () => expect(warningsOf(facts)).toEqual([]));
  test("both versions side by side when they differ", () => {
    const warnings = warningsOf({ ...facts, functionsVersion: "0.0.1" });
    expect(warnings).toHaveLength(1);
    expect(warnings[0]!.message).toContain("0.0.1");
    expect(warnings[0]!.message).toContain(RIGSHEET_VERSION);
  });
  test("functions that do not answer, and a program that does not spill", () => {
    const warnings = warningsOf({ kind: "desk", spills: false, functionsVersion: undefined });
    expect(warnings.map(({ message }) => message)).toEqual([
      "The functions do not answer.",
      expect.stringMatching(/no formulas that spill/),
    ]);
    for (const { remedy } of warnings) expect(remedy).toMatch(/npm start/);
  });
});

describe("trouble", () => {
  test("a host's sentence as it is", () => {
    expect(sentenceOf(new HostTrouble("The sheet is protected. Unprotect it."))).toBe(
      "The sheet is protected. Unprotect it.",
    );
  });
  test.each([[new TypeError("x is undefined.")], ["text"], [undefined]])(
    "anything else gets a way on: %s",
    (thrown) => {
      expect(sentenceOf(thrown)).toMatch(/^That did not work: [^.]+\. Try it once more; .*\.$/);
    },
  );
});

describe("the working of a cell", () => {
  const SLOTS = ["97W", "113W", "97W", "113W", "113W", "97W"];
  const book = recalculate(
    layOut(multiRoom, {
      ...guestHouse,
      blocks: { ...guestHouse.blocks, slots: SLOTS.map((slot) => ({ slot })) },
    }),
  );
  const cellOf = (name: string, below: number, beside = 0): { sheet: string; at: string } => {
    const { sheet, range } = book.names.find((one) => one.name === name)!;
    const { top, left } = parseRange(range)!;
    return { sheet, at: address(top + below, left + beside) };
  };
  const resultAt = ({ sheet, at }: { sheet: string; at: string }) =>
    book.sheets.find(({ name }) => name === sheet)!.results[at];

  test.each([
    [1, 0],
    [2, 1],
    [4, 0],
    [6, 2],
  ])(
    "a spilled cell, %d down and %d across: its own row, and its own value among the steps",
    (below, beside) => {
      const place = cellOf("sight_angles", below, beside);
      const work = workOf(book, place.sheet, place.at);
      if (typeof work === "string") throw new Error(work);
      expect(work.shown.name).toBe("LOOKANGLES");
      expect(work.from).toBe(cellOf("sight_angles", 0).at);
      expect(work.args[2]!.value).toBe(SLOTS[below - 1]);
      // One step for each column of the answer; its value to the digits shown.
      const values = work.steps.map(({ value }) => parseFloat(value));
      expect(values.filter((value) => Math.abs(value - Number(resultAt(place))) < 1e-5)).toHaveLength(1);
    },
  );

  test("a cell of the spreadsheet's own, an input, and an empty one: a sentence", () => {
    const total = cellOf("quote_total", 0);
    expect(workOf(book, total.sheet, total.at)).toMatch(/formula of the spreadsheet's own: =.*Select a cell/);
    const run = cellOf("rooms_run", 1);
    expect(workOf(book, run.sheet, run.at)).toMatch(/holds no formula\. Select/);
    expect(workOf(book, "Gone", "A1")).toMatch(/holds no formula/);
    expect(workOf(book, "Rooms", "nowhere")).toMatch(/holds no formula/);
  });

  const workIn = (formula: string, more: Record<string, number | string> = {}) => {
    const cells = Object.fromEntries(Object.entries(more).map(([at, value]) => [at, { value }]));
    const own = recalculate(
      bookOf({ ...emptySheet("Mine"), rowCount: 20, columnCount: 9, cells: { ...cells, A1: { formula } } }),
    );
    const work = workOf(own, "Mine", "A1");
    if (typeof work === "string") throw new Error(work);
    return work;
  };

  test("a margin of 0.2 on a cost of 80, by hand: 80/0.8 = 100", () => {
    const work = workIn("RIG.SELLPRICE(B1,0.2)", { B1: 80 });
    expect(work.steps.at(-1)).toMatchObject({ value: "100 money", line: "80/0.8" });
    expect(work.from).toBeUndefined();
  });

  test("an argument that the spreadsheet works out: the rule, and how to see the steps", () => {
    const work = workIn("RIG.SELLPRICE(B1*2,0.2)", { B1: 40 });
    expect(work.steps).toEqual([]);
    expect(work.why).toMatch(/B1\*2 is worked out by the spreadsheet itself.*cell of its own/);
    expect(work.args[0]).toMatchObject({ written: "B1*2", value: undefined });
  });

  test("a call within another formula is shown as the part that it is", () => {
    expect(workIn('IF(B1="","",RIG.SELLPRICE(B1,0.2)*2)', { B1: 80 }).partOnly).toBe(true);
  });

  test("a function without steps: its rule, and that there are none", () => {
    const work = workIn("RIG.VERSION()");
    expect([work.steps, work.args]).toEqual([[], []]);
    expect(work.why).toMatch(/no step-by-step working/);
  });

  test("a fault: its sentence instead of steps", () => {
    const work = workIn("RIG.SELLPRICE(B1,2)", { B1: 80 });
    expect(work.steps).toEqual([]);
    expect(work.why).toMatch(/^margin is 2/);
  });
});
