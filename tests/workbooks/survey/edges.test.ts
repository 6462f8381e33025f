/** Where one rule of reading a survey ends and the next begins. */
import type { ImportedLine } from "../../../src/workbooks/imported/table";
import { columnReader } from "../../../src/workbooks/survey/columnReader";
import { guessesOf } from "../../../src/workbooks/survey/headWords";
import { readLength } from "../../../src/workbooks/survey/lengthCell";
import { readSurvey } from "../../../src/workbooks/survey/readSurvey";
import { severalIn } from "../../../src/workbooks/survey/several";
import { runsOf, surveyOf, troublesOf } from "../../support/surveyTables";

const LISTS = { plate: ["single outlet"], receiver: ["receiver", "recorder, 2 tuners"] };
const keysOf = (lines: readonly string[]) =>
  Object.fromEntries(surveyOf(lines).columns.map(({ head, key }) => [head, key]));

test("troubles stand in the order of their lines, whenever they were found", () => {
  const survey = surveyOf([
    "Outlet;Receiver;Run (m)",
    "A1;receiver;1200",
    "A2;receiver;tbd",
    "A3;receiver;10",
    "A4;receiver;12",
    "Total;;;",
    "A5;receiver;x y",
  ]);
  expect(survey.troubles.map(({ line }) => line)).toEqual([2, 3, 7]);
});

test("blanks around a sum are nothing", () => {
  const long = Array.from({ length: 3 }, (_, index) => `A${index};receiver;900 m`);
  expect(surveyOf(["Outlet;Receiver;Run (m)", ...long, "Total;; 2,700 "]).troubles).toEqual([]);
});

describe("what a column holds", () => {
  test.each([
    [["Box 1", "Box 2"], "receiver"],
    [["1 box", "2 boxes"], "receiver"],
    [["100", "200"], "receiver"],
    [["1", "12"], undefined],
  ])("below Receiver %j", (cells, key) => {
    expect(
      keysOf(["Outlet;Receiver;Run (m)", ...cells.map((cell, at) => `A${at};${cell};10`)]).Receiver,
    ).toBe(key);
  });

  test.each([
    [["1", "1", "2"], "quantity"],
    [["1x", "1x", "2x"], undefined],
    [["x1", "x1", "x2"], undefined],
    [["0", "0", "2"], undefined],
    [["11", "11", "2"], undefined],
  ])("below # %j", (cells, key) => {
    const lines = cells.map((cell, at) => `${cell};A${at};receiver;10`);
    expect(keysOf(["#;Outlet;Receiver;Run (m)", ...lines])["#"]).toBe(key);
  });

  test.each([
    [["tbd", "TBD"], "run"],
    [["n/a", "--"], "run"],
    [["tbd", "red"], "cable"],
    [["tbd soon", "not tbd"], "cable"],
  ])("below a head that is a run or a cable: %j", (cells, key) => {
    const lines = cells.map((cell, at) => `A${at};receiver;${cell}`);
    expect(keysOf(["Outlet;Receiver;Cable length to riser", ...lines])["Cable length to riser"]).toBe(key);
  });

  test.each(["Total length (m)", "Länge total (m)", "Gesamtlänge (m)", "Length in all (m)"])(
    "%s goes before a run beside it",
    (head) => {
      expect(keysOf([`Outlet;Receiver;Run (m);${head}`, "A1;receiver;10;12"])[head]).toBe("run");
    },
  );
});

test.each([
  ["longueur a b c d e f", "run"],
  ["lange a b c d e f", "run"],
  ["my run a b c", undefined],
  ["overrun length a b c", undefined],
  ["runs a b c d", undefined],
])("a head of many words: %s", (head, key) => {
  expect(guessesOf(head)[0]?.key).toBe(key);
});

describe("lengths", () => {
  const reader = columnReader("run", [], { into: "m" });
  test.each(["12 ± 10%x", "A10 - 14", "10 - A14", "10 - x ca. 14", "13/4/5", "x3/4", "between 10", "10 ± "])(
    "%s is none",
    (cell) => {
      expect(readLength(cell, reader)).toMatchObject({ refused: expect.stringContaining(`“${cell.trim()}`) });
    },
  );

  // 1 ft 6 in = 0.4572 m, 2 ft 6 in = 0.762 m: both ends have units of their own.
  test("feet and inches at both ends", () => {
    expect(readLength("1' 6\" - 2' 6\"", reader)).toEqual({
      value: { run: 0.6096, shortest: 0.4572, longest: 0.762 },
    });
  });
});

describe("names", () => {
  test.each(["1 - 4", "1 - 02", "12 / 4", "A - B"])("%s is one outlet", (name) => {
    expect(severalIn(name, [name, "K", "L", "M"], undefined)?.names).toBeUndefined();
  });

  test("blanks around a hyphen change nothing", () => {
    expect(severalIn("101 - 103", ["101 - 103", "K"], undefined)?.names).toEqual(["101", "102", "103"]);
    expect(severalIn("1 - 4", ["1 - 4", "K"], 4)?.names).toBeUndefined();
  });

  test.each([
    ["2receiver", { receiver: "receiver", quantity: 2 }],
    ["2 x receiver", { receiver: "receiver", quantity: 2 }],
    ["2 no. receivers", { receiver: "receiver", quantity: 2 }],
  ])("%s", (text, wanted) => {
    const survey = surveyOf(["Outlet;Receiver;Run (m)", `A1;${text};10`], undefined, { lists: LISTS });
    expect(survey.rows[0]).toMatchObject(wanted);
  });

  test.each(["123 receivers", "x 2 receivers", "2 -receiver"])("%s is on no list", (text) => {
    const survey = surveyOf(["Outlet;Receiver;Run (m)", `A1;${text};10`], undefined, { lists: LISTS });
    expect(troublesOf(survey)[0]![1]).toMatch(`“${text}” is not on the workbook's list`);
  });
});

describe("lines", () => {
  const HEAD = "Room;Outlet;Receiver;Run (m)";
  const kindOf = (line: string): string => {
    const { rows, troubles, notes } = surveyOf([HEAD, "101;A1;receiver;10", line, "102;A2;receiver;12"]);
    if (rows[1]?.floor !== undefined) return "floor";
    if (troubles.length > 0) return troubles[0]!.isTotal ? "sum" : "outlet";
    return notes.join();
  };

  test.each([
    [";L12;;", "outlet"],
    [";2/F;;", "outlet"],
    [";B2;;", "outlet"],
    [";Level 2;;", "floor"],
    [";1st;;", "floor"],
    [";GF;;", "floor"],
    ["L12;;;", "floor"],
    [";;;30", "sum"],
    [";;;30 m", "sum"],
    [";;2;30 ft", "sum"],
    [";;;30 kg", "outlet"],
    [";;;ca. 30", "outlet"],
    [";;7 x;30", "outlet"],
    [";;;3 outlets", "sum"],
  ])("%s is a line of an %s", (line, kind) => {
    expect(kindOf(line)).toBe(kind);
  });

  test.each([
    ["--", undefined],
    ["–", undefined],
    ["1", 1],
  ])("how many: %s", (text, quantity) => {
    expect(surveyOf(["Outlet;Qty;Receiver;Run (m)", `A1;${text};receiver;10`]).rows[0]?.quantity).toBe(
      quantity,
    );
  });

  test.each(["-1", "1-", "1 - 2", "2 nox"])("how many: %s is asked about", (text) => {
    expect(troublesOf(surveyOf(["Outlet;Qty;Receiver;Run (m)", `A1;${text};receiver;10`]))[0]![1]).toMatch(
      /^how many: /,
    );
  });

  test.each(["10'", '100"', "10 m", "10m"])(
    "where another line names its unit (%s), the first bare one is told",
    (cell) => {
      expect(surveyOf(["Outlet;Receiver;Run", `A1;receiver;${cell}`, "A2;receiver;11"]).notes).toContain(
        "Line 3 names no unit: it is taken in m, the unit of this workbook.",
      );
    },
  );

  test.each([
    ["1200", true],
    ["ca. 1200", false],
    ["1200.5", false],
    ["1200 m", false],
    ["01200", true],
  ])("a run of %s among those of ten metres is asked about: %s", (run, isAsked) => {
    const survey = surveyOf([
      "Outlet;Receiver;Run (m)",
      "A1;receiver;10",
      "A2;receiver;11",
      `A3;receiver;${run}`,
    ]);
    expect(survey.troubles).toHaveLength(isAsked ? 1 : 0);
  });
});

describe("cells of a text that are parted by commas", () => {
  const read = (head: string, ...cells: string[]) => {
    const lines: ImportedLine[] = [
      { line: 1, cells: head.split(",") },
      { line: 2, cells },
    ];
    return readSurvey([{ source: "text, commas, UTF-8", lines }], { unit: "m", lists: LISTS });
  };
  const HEAD = "Outlet,Receiver,Run (m),Wall plate";

  test("a number of four figures and one or two behind it", () => {
    expect(runsOf(read(HEAD, "A1", "receiver", "1234", "5", "single outlet"))).toEqual([["A1", 1234.5]]);
    expect(runsOf(read(HEAD, "A1", "receiver", "12", "55m", "single outlet"))).toEqual([["A1", 12.55]]);
    for (const [whole, behind] of [
      ["12345", "5"],
      ["ca. 12", "5"],
      ["12 m", "5"],
      ["12", "555"],
      ["12", "5 m or so"],
      ["12", "no 5"],
    ])
      expect([whole, behind, runsOf(read(HEAD, "A1", "receiver", whole!, behind!, "single outlet"))]).toEqual(
        [whole, behind, []],
      );
  });

  test("a remark in the last column takes no half of a number", () => {
    const noted = "Outlet,Receiver,Run (m),Note";
    const oneNumber = /: “12” and “5(?: metres)?” may be one number\./;
    expect(troublesOf(read(noted, "A1", "receiver", "12", "5", "high"))[0]![1]).toMatch(oneNumber);
    expect(troublesOf(read(noted, "A1", "receiver", "12", "5 metres", "high"))[0]![1]).toMatch(oneNumber);
    for (const note of ["500", "no 5", "5 or 6 steps"])
      expect(read(noted, "A1", "receiver", "12", note, "high").rows[0]).toMatchObject({
        note: `${note}, high`,
      });
  });
});
