/** The one thing that is said of an open workbook whose figures are not the job's, whole, and when nothing is. */
import { stateOfLive } from "../../src/review/stateOfLive";
import type { Book } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "../support/books";

/** Cells with calls of ours, one for each result; `undefined` has not been computed. */
const calls = (...results: (string | number)[]): Book =>
  bookOf({
    ...emptySheet("S"),
    cells: Object.fromEntries(results.map((_, row) => [`A${row + 1}`, { formula: "RIG.CABLELOSS(1,2)" }])),
    results: Object.fromEntries(
      results.map((one, row) => [`A${row + 1}`, typeof one === "string" ? { error: one } : one]),
    ) as never,
  });
const SAFE = "Your inputs are safe; results are missing, or stand still and are not to be trusted.";

test("bound to another add-in", () =>
  expect(stateOfLive({ ...calls(5), saved: { boundElsewhere: true } as never })).toEqual({
    weight: "doubtful",
    message:
      "Calls of our functions are bound to another add-in, or to a second copy of this one, that uses the same names. They do not compute.",
    effect: SAFE,
    remedy: "Remove the other one (Home, Add-ins), then press “Repair formulas”. Then check again.",
  }));

const WAIT =
  "Wait a little. If it stays so for a minute, close this pane, open it again and press “Repair formulas”. Then check again.";
const LOAD =
  "Close this pane and open it again to load them, then press “Repair formulas”; if it stays so, ask whoever looks after the add-in. Then check again.";
test.each<[string[], string, string]>([
  [["#BUSY!", "#BUSY!"], "Our functions are still computing: 2 cells show #BUSY!.", WAIT],
  [["#GETTING_DATA"], "Our functions are still computing: 1 cell shows #GETTING_DATA.", WAIT],
  [
    ["#NAME?", "#NAME?", "#BUSY!"],
    "Our functions are not loaded in this Excel, or do not answer: 3 cells show #NAME?.",
    LOAD,
  ],
  [
    ["#BLOCKED!"],
    "Our functions are not loaded in this Excel, or do not answer: 1 cell shows #BLOCKED!.",
    LOAD,
  ],
  [
    ["#CONNECT!"],
    "Our functions are not loaded in this Excel, or do not answer: 1 cell shows #CONNECT!.",
    LOAD,
  ],
])("silent: %j", (results, message, remedy) =>
  expect(stateOfLive(calls(...results))).toEqual({ weight: "doubtful", message, effect: SAFE, remedy }),
);

test("most of the cells have to be silent", () => {
  expect(stateOfLive(calls("#NAME?", "#NAME?", 5))).toBeDefined();
  expect(stateOfLive(calls("#NAME?", 5))).toBeUndefined();
  // A fault of the job is an answer.
  expect(stateOfLive(calls("#VALUE!", "#N/A"))).toBeUndefined();
});

test("an Excel that hands over blank cells as 0", () => {
  const answering = (result: string): Book => ({
    ...bookOf({ ...emptySheet("About"), results: { B1: result } }),
    names: [{ name: "about_state", sheet: "About", range: "B1" }],
  });
  expect(stateOfLive(answering("look"))).toEqual({
    weight: "wrong",
    message:
      "This Excel hands blank cells to our functions as 0: do not trust levels and volts, although prices may look right.",
    effect: "The workbook's checks fail for that, and nothing else was looked at.",
    remedy: "Update this Excel, or open the workbook in Excel on the web or on Rigsheet's own desk.",
  });
  expect(stateOfLive(answering("ok"))).toBeUndefined();
});
