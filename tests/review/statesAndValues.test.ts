/** The state that a file was saved in, and values in the place of formulas: what rulesInWords leaves open, whole. */
import type { Finding } from "../../src/review/finding";
import type { Reviewed } from "../../src/review/rule";
import { stateOfFile, words, type StaleCell } from "../../src/review/rules/stateOfFile";
import { typedOver } from "../../src/review/rules/typedOver";
import type { Book, BookCell, BookResult, SavedState } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "../support/books";
import { found, smallBook } from "./smallBook";

const error = (error: string): BookResult => ({ error });
const old = (cell: string, stored: BookResult, anew: BookResult = 1): StaleCell => ({
  sheet: "S",
  cell,
  stored,
  anew,
});

describe("the state of a file", () => {
  const OPEN = "Open it where our functions run and save it";
  const ANEW = "The other findings here are of the figures computed anew.";
  const saved = (state?: SavedState): Book => ({ ...bookOf(emptySheet("S")), saved: state });
  const state = (read: Book, ...cells: StaleCell[]): Finding | undefined => stateOfFile(read, read, cells);
  const WHOLE = "The inputs are whole; the figures that it shows are not.";
  const TWO = "Cells that show an old or wrong value: 2.";
  test.each<[string, SavedState | undefined, BookResult, string, string]>([
    [
      "bound elsewhere",
      { boundElsewhere: true },
      5,
      `Calls of our functions are bound to another add-in's file, and do not compute any more. ${TWO}`,
      `Switch the other add-in off, enter the formulas again with “Repair formulas”, and save it. ${ANEW}`,
    ],
    [
      "without our functions",
      undefined,
      error("#NAME?"),
      "It was last saved by a program without our functions: 2 cells show #NAME? or what follows from it.",
      `${OPEN}; give a copy without add-in to people who lack them. ${ANEW}`,
    ],
    [
      "still computing",
      undefined,
      error("#BUSY!"),
      `It was saved while our functions were still computing. ${TWO}`,
      `${OPEN} once no cell shows #BUSY! any more. ${ANEW}`,
    ],
    [
      "refused",
      undefined,
      error("#BLOCKED!"),
      `The Excel that saved it refuses our functions. ${TWO}`,
      `Ask whoever looks after that Excel to allow the add-in, or open it where our functions run, and save it. ${ANEW}`,
    ],
    [
      "out of reach",
      undefined,
      error("#CONNECT!"),
      `Excel could not reach our functions for some cells. ${TWO}`,
      `${OPEN}. ${ANEW}`,
    ],
    [
      "as displayed",
      { asDisplayed: true },
      5,
      `Excel was set to compute with figures as displayed: inputs are rounded, and typed digits may be lost. ${TWO}`,
      "Switch off “Set precision as displayed” in Excel's options, look at the inputs, and save it again.",
    ],
    [
      "by hand",
      { manual: true },
      5,
      `Excel was set to calculate by hand, and inputs were changed since. ${TWO}`,
      `Press F9 in Excel, set calculation to automatic, and save it. ${ANEW}`,
    ],
    [
      "unfinished",
      { unfinished: true },
      5,
      `It was saved before Excel had finished calculating. ${TWO}`,
      `${OPEN} once it has calculated. ${ANEW}`,
    ],
  ])("%s", (_, how, stored, message, remedy) =>
    expect(state(saved(how), old("A1", stored), old("A2", 7))).toStrictEqual({
      weight: "doubtful",
      place: { sheet: "S", cell: "A1" },
      expected: "1",
      message,
      effect: WHOLE,
      remedy,
    }),
  );
  test("an Excel that hands blanks over as 0, by what About shows", () => {
    const about = (about_state: string) => state(smallBook({}, { about_state }));
    expect(about("look")).toStrictEqual({
      weight: "doubtful",
      message:
        "The Excel that saved it hands blank cells to our functions as 0: levels and volts are wrong though prices look right. No figure is old yet.",
      effect: WHOLE,
      remedy: `Update that Excel, or open the workbook on the desk, and save it. ${ANEW}`,
    });
    expect(about("ok")).toBeUndefined();
  });
  test("functions that were not loaded: more than half of their calls", () => {
    const calls = (count: number): Book =>
      bookOf({
        ...emptySheet("S"),
        cells: Object.fromEntries(
          Array.from({ length: count }, (_, row): [string, BookCell] => [
            `A${row + 1}`,
            { formula: "RIG.CABLELOSS(B1)" },
          ]),
        ),
      });
    const failed = [old("A1", error("#VALUE!")), old("A2", error("#N/A"))];
    expect(state(calls(3), ...failed)).toMatchObject({
      message: "Excel knew our functions but had not loaded them. Cells that show an old or wrong value: 2.",
      remedy: `${OPEN}; if it stays, reselect the add-in in Excel. ${ANEW}`,
    });
    expect(state(calls(4), ...failed)).toBeUndefined();
    expect(state(calls(3), ...failed.map((one) => ({ ...one, stored: 5 })))).toBeUndefined();
  });
  test("a result in words", () =>
    expect([5.25, "high", true, error("#N/A"), undefined].map(words)).toEqual([
      "5.25",
      "high",
      "true",
      "#N/A",
      "nothing",
    ]));
});

describe("a value in the place of a formula", () => {
  type Difference = Reviewed["differences"][number];
  const typed = (cell: string | undefined, expected: string, isTyped = true): Difference => ({
    weight: "wrong",
    ...(cell !== undefined && { place: { sheet: "S", cell } }),
    message: `Typed ${cell}.`,
    expected,
    remedy: "Look.",
    typedOver: isTyped,
  });
  const book = (
    results: Readonly<Record<string, BookResult>>,
    cells: Record<string, BookCell> = {},
  ): Book => ({
    ...bookOf({ ...emptySheet("S"), results: { ...results }, cells }),
    names: [{ name: "quote_total", sheet: "S", range: "A9" }],
  });
  const told = (read: Book, expected: Book | undefined, ...differences: Difference[]): Finding[] =>
    found(typedOver, read, { own: read, expected, differences });
  test("what the formula comes to is told where it is a number, and what it does to the total", () => {
    const effect = "The total is 90.00; with all of the template's formulas it is 100.00.";
    const line = (cell: string | undefined, expected: string) => ({
      effect,
      weight: "wrong",
      ...(cell !== undefined && { place: { sheet: "S", cell } }),
      message: `Typed ${cell}.`,
      expected,
      remedy: "Look.",
    });
    expect(
      told(
        book({ A9: 90 }),
        book({ A9: 100, A1: 12.5, A2: "high", A3: 7 }),
        typed("A1", "=B1"),
        typed("A2", "=B2"),
        typed("A3", "the template's"),
        typed(undefined, "=B4"),
        typed("A1", "=C1", false),
      ),
    ).toStrictEqual([
      line("A1", "12.5, by =B1"),
      line("A2", "=B2"),
      line("A3", "the template's"),
      line(undefined, "=B4"),
    ]);
    expect(told(book({}), undefined, typed("A1", "=B1"))).toMatchObject([
      { expected: "=B1", effect: undefined },
    ]);
  });
  test("ten that were emptied are one, where their formulas come to nothing", () => {
    const cells = Array.from({ length: 10 }, (_, row) => `B${row + 1}`);
    const emptied = (anew: BookResult) =>
      told(
        book({}),
        book(Object.fromEntries(cells.map((cell) => [cell, anew]))),
        ...cells.map((cell) => typed(cell, "=C1")),
      );
    expect(emptied("")).toStrictEqual([
      {
        weight: "doubtful",
        place: { sheet: "S", cell: "A1" },
        message: "10 formulas of S were turned into values (typed or pasted over).",
        effect:
          "The values are right today, and follow no change any more; nor do the draft warning and the verdict.",
        remedy: "Work in the workbook that it was made from; keep this one as a copy to be read.",
      },
    ]);
    expect(emptied(0)).toHaveLength(10);
    expect(told(book({}), undefined, ...cells.map((cell) => typed(cell, "=C1")))).toHaveLength(1);
  });
});
