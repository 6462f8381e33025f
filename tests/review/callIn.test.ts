import { isFault } from "../../src/engine/faults";
import type { Matrix } from "../../src/functions/core/cells";
import { argumentValue } from "../../src/review/argumentValue";
import { callIn } from "../../src/formula/callIn";
import { bookOf, emptySheet } from "../support/books";

describe("the call in a formula", () => {
  test.each([
    ["RIG.AZIMUTH(35,-100,-90)", "AZIMUTH", ["35", "-100", "-90"], true],
    ["rig.version()", "VERSION", [], true],
    [" RIG.X1( a , , 3 ) ", "X1", ["a", "", "3"], true],
    ['RIG.SPLIT("a,b)","say ""(no)""",2)', "SPLIT", ['"a,b)"', '"say ""(no)"""', "2"], true],
    [
      "RIG.RUNS('Rooms, (old)'!A1:B2,{1,2;3,4},SUM(A1,B1))",
      "RUNS",
      ["'Rooms, (old)'!A1:B2", "{1,2;3,4}", "SUM(A1,B1)"],
      true,
    ],
    ['IF(A1="RIG.NO(1)","",RIG.LOSS(A1)*2)', "LOSS", ["A1"], false],
    ["RIG.ONE(1)+RIG.TWO(2)", "ONE", ["1"], false],
  ])("%s", (formula, name, args, whole) => {
    expect(callIn(formula)).toEqual({ name, args, whole });
  });

  test.each(["SUM(A1:A3)", '"RIG.LOSS(1)"', "TRIG.LOSS(1)", "RIG.LOSS(1", "RIG.LOSS", ""])(
    "none in %s",
    (formula) => expect(callIn(formula)).toBeUndefined(),
  );
});

describe("what an argument holds", () => {
  const book = bookOf(
    {
      ...emptySheet("Rooms"),
      cells: { A1: { value: 5 }, A2: { formula: "A1*2" } },
      results: { A2: 10, B1: { error: "#N/A", message: "There is none." }, B2: { error: "#DIV/0!" } },
    },
    { ...emptySheet("It's, other"), cells: { C3: { value: "x" } } },
  );
  book.names.push({ name: "runs", sheet: "Rooms", range: "A1:A3" });

  test.each([
    ["", null],
    ["12.5", 12.5],
    ["-3", -3],
    ['"a ""b"""', 'a "b"'],
    ["true", true],
    [
      "{1,2;3,4}",
      [
        [1, 2],
        [3, 4],
      ],
    ],
    ["A2", [[10]]],
    ["$A$1:$A$2", [[5], [10]]],
    ["RUNS", [[5], [10], [null]]],
    ["Rooms!A1", [[5]]],
    ["'It''s, other'!C3", [["x"]]],
  ])("%s", (text, value) => expect(argumentValue(book, "Rooms", text)).toEqual(value));

  test("an error comes as a fault with its sentence, or with its code in a sentence", () => {
    const [first, second] = argumentValue(book, "Rooms", "B1:B2") as Matrix;
    expect(isFault(first![0])).toBe(true);
    expect(first![0]).toEqual({ kind: "fault", code: "#N/A", message: "There is none." });
    expect(second![0]).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("#DIV/0!") });
  });

  test.each(["A1*2", "SUM(A1:A2)", "no_such_name", "Gone!A1", '"open', "A1,A2"])(
    "only the spreadsheet knows %s",
    (text) => expect(argumentValue(book, "Rooms", text)).toBeUndefined(),
  );
});
