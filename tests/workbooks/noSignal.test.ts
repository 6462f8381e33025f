/**
 * "No signal" in the columns of measured levels: a reading like any number, by every road into the cell, in each
 * host's own rule, in the checks, and in the diagnosis. A dead outlet could not be entered before.
 */
import { typedContent } from "../../src/hosts/desk/page/typedCell";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { toDataValidation } from "../../src/hosts/file/validations";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { addInputRules } from "../../src/hosts/excel/inputRules";
import { quietly } from "../../src/hosts/headless/loadLibrary";
import { openModel, recalculate } from "../../src/hosts/headless/recalculate";
import { review } from "../../src/review/review";
import { parseRange } from "../../src/formula/address";
import { isBookError, type Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { diagnosisOf } from "../../src/workbooks/multiRoom/diagnosisOf";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { recalculated, withLibreOffice } from "../support/tools";

const LEVELS = ["rooms_built_low", "rooms_built_high"] as const;
const zoneOf = (book: Book, name: string) => parseRange(book.names.find((one) => one.name === name)!.range)!;
const ruleAt = (book: Book, name: string) => {
  const { left } = zoneOf(book, name);
  return book.sheets
    .find((sheet) => sheet.name === "Rooms")!
    .validations.find(({ range }) => parseRange(range)!.left === left)!;
};

describe("on the desk", () => {
  const model = openModel(layOut(multiRoom, guestHouse));
  const place = (name: string) => {
    const { sheetId, zone } = model.getters.getNamedRange(name)!.range;
    return { sheetId, row: zone.top + 1, col: zone.left };
  };

  test.each([
    ["no signal", "no signal"],
    ["No signal", "no signal"],
    [" NO-SIGNAL. ", "no signal"],
    ["61,5", "61.5"],
    ["1.5 dBmV", "61.5"],
  ])("“%s” is read as %s, and the cell's own rule takes it", (typed, content) => {
    for (const name of LEVELS) {
      const at = place(name);
      const read = typedContent(model, at, typed) as { content: string };
      expect([name, Number.isNaN(Number(content)) ? read.content : Number(read.content)]).toEqual([
        name,
        Number.isNaN(Number(content)) ? content : expect.closeTo(Number(content), 6),
      ]);
      quietly(() => model.dispatch("UPDATE_CELL", { ...at, content: read.content } as never));
      expect(model.getters.isDataValidationInvalid(at)).toBe(false);
    }
  });

  test.each(["dead", "no idea", "1500"])("“%s” is refused, and what may be typed is said", (typed) => {
    const at = place("rooms_built_low");
    expect(typedContent(model, at, typed)).toEqual({
      refused: expect.stringMatching(/Or type “no signal”\.$/) as string,
    });
    quietly(() => model.dispatch("UPDATE_CELL", { ...at, content: typed } as never));
    expect(model.getters.isDataValidationInvalid(at)).toBe(true);
  });

  test("a length takes no such words", () => {
    expect(typedContent(model, place("rooms_run"), "no signal")).toHaveProperty("refused");
  });
});

describe("in a file and in Excel", () => {
  const book = layOut(multiRoom, guestHouse);

  test("the rule is a formula that takes the number or the words, and is read back as it was", async () => {
    for (const name of LEVELS) {
      const rule = ruleAt(book, name);
      const cell = rule.range.split(":")[0]!;
      expect(toDataValidation(rule, "Rooms")).toMatchObject({
        type: "custom",
        errorStyle: "stop",
        formula1: `OR(AND(ISNUMBER(${cell}),${cell}>=0,${cell}<=140),${cell}="no signal")`,
      });
    }
    const read = await readXlsx(await writeXlsx(book));
    expect(LEVELS.map((name) => ruleAt(read, name))).toEqual(LEVELS.map((name) => ruleAt(book, name)));
    expect(ruleAt(read, LEVELS[0]).rule).toEqual({
      kind: "number",
      min: 0,
      max: 140,
      orWords: ["no signal"],
    });
  });

  test("the pane sets the same rule through Office", () => {
    const rule = ruleAt(book, "rooms_built_low");
    const cell = rule.range.split(":")[0]!;
    const dataValidation: { rule?: unknown } = {};
    addInputRules({ getRange: () => ({ dataValidation }) } as never, { validations: [rule] } as never);
    expect(dataValidation.rule).toEqual({
      custom: { formula: `=OR(AND(ISNUMBER(${cell}),${cell}>=0,${cell}<=140),${cell}="no signal")` },
    });
  });
});

/** What the checks of entries have counted. */
const wrongEntries = (book: Book): number =>
  namedColumn(book, "checks_entries").reduce<number>((sum, found) => sum + Number(found), 0);

/** Every outlet measured as predicted, but for one that is dead. */
function withDeadOutlet(word: string): JobInputs {
  const plain = recalculate(layOut(multiRoom, guestHouse));
  const column = (name: string) => namedColumn(plain, name);
  const row = (outlet: unknown) => column("rooms_outlet").indexOf(outlet as string);
  const middle = (end: "low" | "high", at: number): number =>
    (Number(column(`commission_${end}_from`)[at]) + Number(column(`commission_${end}_to`)[at])) / 2;
  return {
    ...guestHouse,
    blocks: {
      ...guestHouse.blocks,
      rooms: guestHouse.blocks!.rooms!.map((one) => {
        const at = row(one.outlet);
        return one.outlet === "G-07"
          ? { ...one, built_low: word, built_high: word }
          : { ...one, built_low: middle("low", at), built_high: middle("high", at) };
      }),
    },
  };
}

test("a dead outlet is commissioned and diagnosed; no check and no finding calls its words an error", () => {
  const book = recalculate(layOut(multiRoom, withDeadOutlet("no signal")));
  const at = namedColumn(book, "rooms_outlet").indexOf("G-07");
  expect(namedColumn(book, "commission_verdict")[at]).toBe("look");
  const diagnosis = diagnosisOf(book)!;
  expect(diagnosis.trouble).toBeUndefined();
  expect(diagnosis.causes[0]!.evidence).toMatch(/G-07.*no signal/);
  expect(diagnosis.measured).toHaveLength(24);
  expect(wrongEntries(book)).toBe(0);
  expect(
    review(recalculate(layOut(multiRoom, withDeadOutlet("see plan")))).map(({ message }) => message),
  ).toEqual(expect.arrayContaining([expect.stringContaining("see plan")]));
  expect(review(book).filter(({ message }) => message.includes("no signal"))).toEqual([]);
});

test("other text in such a cell, pasted past the rule, is counted by the checks", () => {
  const book = recalculate(layOut(multiRoom, withDeadOutlet("see plan")));
  expect(wrongEntries(book)).toBe(2);
});

withLibreOffice("LibreOffice counts no entry as wrong, and has no error where the words stand", async () => {
  const book = recalculate(layOut(multiRoom, withDeadOutlet("no signal")));
  const again = await readXlsx(await recalculated(await writeXlsx(book, { frozen: true }), { to: "xlsx" }));
  const at = namedColumn(again, "rooms_outlet").indexOf("G-07");
  expect(namedColumn(again, "rooms_built_low")[at]).toBe("no signal");
  expect(wrongEntries(again)).toBe(0);
  expect(isBookError(namedColumn(again, "commission_verdict")[at])).toBe(false);
  expect(namedValue(again, "price_total")).toBe(namedValue(book, "price_total"));
});
