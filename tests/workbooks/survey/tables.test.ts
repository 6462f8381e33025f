/** How a survey lies in its file: its sheet, its heads, its columns, and tables beside one another. */
import type { ImportedLine, ImportedTable } from "../../../src/workbooks/imported/table";
import { chooseTable } from "../../../src/workbooks/survey/chooseTable";
import { findHead, headScore, unitSaid } from "../../../src/workbooks/survey/layout";
import { readSurvey } from "../../../src/workbooks/survey/readSurvey";
import type { SurveyChoices, SurveySetting } from "../../../src/workbooks/survey/survey";
import { linesOf, runsOf, surveyOf, tableOf, troublesOf } from "../../support/surveyTables";

const LISTS = {
  cable: ["indoor drop", "outdoor drop"],
  plate: ["single outlet", "outlet with radio"],
  receiver: ["receiver", "recorder, 2 tuners"],
  from: ["GA", "GB"],
};

/** Heads with what each is taken for. */
const keysOf = (lines: readonly string[], choices?: SurveyChoices, setting: Partial<SurveySetting> = {}) =>
  Object.fromEntries(surveyOf(lines, choices, setting).columns.map(({ head, key }) => [head, key]));
const unsureOf = (lines: readonly string[]): string | undefined => surveyOf(lines).unsure;

describe("the head row", () => {
  const find = (...lines: string[]) => findHead(linesOf(lines));

  test("a row alone, with the place that it has", () => {
    const head = find("A survey", "Outlet;Receiver;Run (m)", "A1;receiver;10");
    expect(head).toMatchObject({ index: 1, rows: 1, texts: ["Outlet", "Receiver", "Run (m)"] });
    expect(head.units).toBeUndefined();
  });

  test("the better of two, the first of two that are alike", () => {
    expect(find("Outlet;Room", "Outlet;Room;Run (m)", "A1;101;10").index).toBe(1);
    expect(find("Outlet;Run (m)", "A1;10", "Outlet;Run (m)", "A2;12").index).toBe(0);
  });

  test("none", () => {
    expect(find("word", "A1;10")).toEqual({ index: -1, rows: 0, texts: [], raw: [] });
    expect(find("Outlet", "A1")).toMatchObject({ index: -1 });
    expect(findHead([])).toMatchObject({ index: -1 });
  });

  test("a line of data with a word of ours in it is no head", () => {
    expect(find("hall;outlet;12;9;7;5", "den;A2;13;8;6;4").index).toBe(-1);
  });

  test("in two rows: one head over several columns stands for each of them", () => {
    const lines = ["Where;;Cable;", "Floor;Room;Sort;Length (m)", "1;101;indoor drop;10"];
    const head = find(...lines);
    expect(head).toMatchObject({
      index: 0,
      rows: 2,
      texts: ["Where Floor", "Where Room", "Cable Sort", "Cable Length (m)"],
    });
    // "Sort" alone is nothing; both together are the cable.
    expect(keysOf([...lines, "1;102;outdoor drop;12"], { confirmed: true })).toEqual({
      "Where Floor": "floor",
      "Where Room": "room",
      "Cable Sort": "cable",
      "Cable Length (m)": "run",
    });
  });

  test("in two rows: what stands in one of them only, and a gap above", () => {
    expect(find("Room;Outlet;Cable;;", ";;length (m);;Notes", "101;A1;10;;x")).toMatchObject({
      rows: 2,
      texts: ["Room", "Outlet", "Cable length (m)", "", "Notes"],
    });
    expect(find("Room;Outlet;Cable", ";;length (m);sort;Notes", "101;A1;10;;x").texts).toEqual([
      "Room",
      "Outlet",
      "Cable length (m)",
      "Cable sort",
      "Cable Notes",
    ]);
  });

  test("a line of figures is no second row", () => {
    expect(find("Room;Outlet;Length", "101;A1;10", "102;A2;12")).toMatchObject({ index: 0, rows: 1 });
  });

  test("chosen by a person, whatever it looks like", () => {
    const lines = linesOf(["Outlet;Room;Run (m)", "x;y;z", "A1;101;10"]);
    expect(findHead(lines, 2)).toMatchObject({
      index: 1,
      rows: 1,
      texts: ["x", "y", "z"],
      raw: [["x", "y", "z"]],
    });
    expect(findHead(lines, 9)).toMatchObject({ index: -1, rows: 0 });
    const survey = surveyOf(["Outlet;Run (m)", "A0;7", "Point;Run (ft)", "A1;10"], { head: 3 });
    // 10 ft = 3.048 m.
    expect([runsOf(survey), survey.notes[0]]).toEqual([
      [["A1", 3.048]],
      "2 lines above the head row are passed over.",
    ]);
  });

  test("a line of units below it: of lengths only, and with no name beside them", () => {
    expect(find("Outlet;Run;Longest", ";ft;ft", "A1;10;12").units).toMatchObject({ line: 2 });
    expect(find("Outlet;Run;Longest", ";ft;", "A1;10;12").units).toMatchObject({ line: 2 });
    expect(find("Outlet;Run;Longest", ";ft;9", "A1;10;12").units).toBeUndefined();
    expect(find("Outlet;Run;Longest", ";;", "A1;10;12").units).toBeUndefined();
    for (const name of ["Outlet", "Room", "Receiver"])
      expect(find(`${name};Note;Run`, "A0;;ft", "A1;;10").units).toBeUndefined();
    expect(find("Outlet;Note;Run", ";x;ft", "A1;;10").units).toBeDefined();
    expect(find("Outlet;Run").units).toBeUndefined();
    const survey = surveyOf(["Outlet;Receiver;Run", ";;ft", "A1;receiver;10", ";;ft", "A2;receiver;20"]);
    expect([runsOf(survey), survey.notes]).toEqual([
      [
        ["A1", 3.048],
        ["A2", 6.096],
      ],
      ["Line 2 holds units.", "1 line with the heads again, or a page's foot, is passed over."],
    ]);
  });

  test("its worth: each meaning once, the needed ones twice, texts that are no heads against it", () => {
    const score = (...texts: string[]): number => headScore({ texts, raw: [texts] });
    expect(score("Outlet", "Run")).toBe(4);
    expect(score("Outlet", "Point", "Run")).toBe(4);
    expect(score("Outlet", "Room")).toBe(3);
    expect(score("Outlet", "Run", "Room", "Paint")).toBe(5);
    expect(score("Shortest", "Longest", "Room")).toBe(4);
    expect(score("Shortest", "Room")).toBe(2);
    expect(score("Outlet", "Run", "B12")).toBeCloseTo(3.4, 10);
    expect(score("Outlet", "Run", "x".repeat(41))).toBeCloseTo(3.4, 10);
    expect(score("Outlet", "Run", "x".repeat(40))).toBe(4);
    // One alone is none.
    expect(score("Outlet")).toBe(0.9);
    expect(score("Where Outlets", "Paint")).toBeLessThan(0.9);
    expect(score("Paint", "")).toBe(0);
  });
});

describe("which table is the survey", () => {
  const sheet = (name: string, ...lines: string[]): ImportedTable => tableOf(lines, { sheet: name });
  const GOOD = ["Outlet;Receiver;Run (m)", "A1;receiver;10"];

  test("the one with the best heads, the first of several, or the one that is chosen", () => {
    const tables = [sheet("Notes", "some words"), sheet("East", ...GOOD), sheet("West", ...GOOD)];
    expect(chooseTable(tables, {}).table.sheet).toBe("East");
    expect(chooseTable(tables, { sheet: "West" }).table.sheet).toBe("West");
    expect(chooseTable(tables, { sheet: "Notes" }).table.sheet).toBe("Notes");
    expect(chooseTable(tables, { sheet: "gone" }).table.sheet).toBe("East");
    expect(readSurvey(tables, { unit: "m" })).toMatchObject({
      sheet: "East",
      sheets: ["Notes", "East", "West"],
    });
  });

  test("a sheet without anything on it is not offered; one alone is no choice", () => {
    const empty: ImportedTable = { source: "sheet", sheet: "Empty", lines: [] };
    expect(readSurvey([empty, sheet("East", ...GOOD)], { unit: "m" })).toMatchObject({
      sheet: "East",
      sheets: [],
    });
    expect(surveyOf(GOOD)).toMatchObject({ sheets: [], source: "text, semicolons, UTF-8" });
    expect(surveyOf(GOOD)).not.toHaveProperty("sheet");
  });

  test("a head that was chosen is that of the chosen sheet", () => {
    const tables = [sheet("East", "x;y;z", ...GOOD), sheet("West", "x;y;z", ...GOOD)];
    expect(chooseTable(tables, { sheet: "West", head: 1 }).head.texts).toEqual(["x", "y", "z"]);
    expect(chooseTable(tables, { sheet: "West" }).head.index).toBe(1);
  });

  test("lines of blanks, and how some programs begin a text, are no lines of it", () => {
    const lines = ["sep=;", ...GOOD, ";;", "A2;receiver;12"];
    const survey = surveyOf(lines);
    expect([runsOf(survey).length, survey.notes]).toEqual([2, []]);
    expect(surveyOf(["SEP=,;", ...GOOD]).notes).toEqual([]);
    // On another line, or with anything beside it, it is a line as others are.
    expect(surveyOf(["sep=;x;", ...GOOD]).notes).toEqual(["1 line above the head row is passed over."]);
    expect(surveyOf(["words;;", "sep=;;", ...GOOD]).notes).toEqual([
      "2 lines above the head row are passed over.",
    ]);
  });

  test("nothing at all, and heads alone", () => {
    expect(troublesOf(surveyOf([]))).toEqual([
      [1, "The file is empty. Give a head row and a line for each outlet."],
    ]);
    expect(troublesOf(surveyOf(["words;;", GOOD[0]!]))).toEqual([
      [2, "There is a head row and no outlet below it."],
    ]);
  });
});

describe("tables beside one another", () => {
  test("with the same heads: the second goes on where the first ends", () => {
    const survey = surveyOf([
      "Outlet;Receiver;Run (m);;Outlet;Receiver;Run (m)",
      "A1;receiver;10;;B1;receiver;20",
      "A2;receiver;11;;;;",
      ";;;;B2;receiver;tbd",
    ]);
    expect(runsOf(survey)).toEqual([
      ["A1", 10],
      ["A2", 11],
      ["B1", 20],
    ]);
    expect(survey.lines).toEqual([2, 3, 2]);
    expect(survey.columns.map(({ head }) => head)).toEqual(["Outlet", "Receiver", "Run (m)"]);
    expect(survey.troubles).toMatchObject([{ line: 4, id: "4/2" }]);
  });

  test("three of them, without a gap, the first not at the edge", () => {
    const survey = surveyOf([";Outlet;Run (m);Outlet;Run (m);OUTLET;run (m)", ";A1;10;B1;20;C1;30"]);
    expect(runsOf(survey)).toEqual([
      ["A1", 10],
      ["B1", 20],
      ["C1", 30],
    ]);
  });

  test("a floor above the heads of each", () => {
    const survey = surveyOf([
      "Ground floor;;;First floor;",
      "Outlet;Run (m);;Outlet;Run (m)",
      "A1;10;;B1;20",
      "A2;11;;B2;21",
    ]);
    expect(survey.rows.map(({ outlet, floor }) => [outlet, floor])).toEqual([
      ["A1", "Ground floor"],
      ["A2", "Ground floor"],
      ["B1", "First floor"],
      ["B2", "First floor"],
    ]);
    // Other words above are of neither.
    const other = surveyOf(["By hand;;;By eye;", "Outlet;Run (m);;Outlet;Run (m)", "A1;10;;B1;20"]);
    expect([other.troubles, other.rows.map(({ floor }) => floor)]).toEqual([[], [undefined, undefined]]);
  });

  test("other heads, or none for a run, are another table", () => {
    expect(keysOf(["Outlet;Receiver;Run (m);Outlet;Paint;Note", "A1;receiver;10;x;blue;y"])).toMatchObject({
      Note: "note",
      Paint: undefined,
    });
    const names = surveyOf(["Outlet;Room;Outlet;Room;Run (m)", "A1;101;B1;102;10"]);
    expect(names.columns).toHaveLength(5);
  });

  test("outlets beside one another on a line are asked about, and then read each with its run", () => {
    const lines = [
      "Room;Outlet 1;Run 1 (m);Outlet 2;Run 2 (m)",
      "101;A1;10;A2;20",
      "102;B1;11;;",
      "103;C1;12;C2;",
      "104;;;D2;13",
    ];
    expect(unsureOf(lines)).toBe(
      "Each line seems to hold 2 outlets, “Outlet 1”, “Outlet 2”, each with a run beside it. Say whether it does.",
    );
    const survey = surveyOf(lines, { confirmed: true });
    expect(survey.rows.map(({ room, outlet, run }) => [room, outlet, run])).toEqual([
      ["101", "A1", 10],
      ["101", "A2", 20],
      ["102", "B1", 11],
      ["103", "C1", 12],
      ["104", "D2", 13],
    ]);
    expect(survey.troubles.map(({ id, reason }) => [id, reason])).toEqual([
      ["4/2", "run is missing. Enter its length."],
      ["5", "outlet is missing. Enter a name of its own. run is missing. Enter its length."],
    ]);
  });

  test("columns that do not alternate are no pairs", () => {
    expect(unsureOf(["Outlet 1;Outlet 2;Run 1 (m);Run 2 (m)", "A1;A2;10;20"])).not.toMatch(/Each line/);
    expect(unsureOf(["Run 1 (m);Outlet 1;Run 2 (m);Outlet 2", "10;A1;20;A2"])).not.toMatch(/Each line/);
    expect(unsureOf(["Outlet;Receiver;Run (m)", "A1;receiver;10"])).toBeUndefined();
  });
});

describe("what the columns are", () => {
  const lines = (heads: string, ...cells: string[]): string[] => [heads, ...cells];

  test("two that both look like the run", () => {
    const both = lines("Outlet;Receiver;Run (m);Distance (m)", "A1;receiver;10;12", "A2;receiver;11;13");
    expect(unsureOf(both)).toBe(
      "“Run (m)” and “Distance (m)” both look like the run. Say which it is; a length that is added to it is “Run, a further part”.",
    );
    // Words below it are no lengths.
    expect(
      unsureOf(lines("Outlet;Receiver;Run (m);Distance", "A1;receiver;10;far", "A2;receiver;11;near")),
    ).toBeUndefined();
    // What a person says settles it.
    expect(surveyOf(both, { confirmed: true }).unsure).toBeUndefined();
    expect(surveyOf(both, { columns: { 3: {} } }).unsure).toBeUndefined();
    expect(runsOf(surveyOf(both, { columns: { 3: { key: "run", unit: "m" } } }))).toEqual([
      ["A1", 12],
      ["A2", 13],
    ]);
    expect(surveyOf(both, { columns: {} }).unsure).toBeDefined();
  });

  test("a total length goes before its part", () => {
    const total = lines("Outlet;Receiver;Run (m);Total length (m)", "A1;receiver;10;12");
    expect(keysOf(total)).toMatchObject({ "Run (m)": undefined, "Total length (m)": "run" });
    expect(unsureOf(total)).toBeUndefined();
  });

  test("two that both look like the outlets' names", () => {
    expect(unsureOf(lines("Outlet;Point;Receiver;Run (m)", "A1;1;receiver;10"))).toBe(
      "“Outlet” and “Point” both look like the outlets' names. Say which it is.",
    );
    // Another program's own number is no rival.
    expect(unsureOf(lines("Outlet;ID;Receiver;Run (m)", "A1;1;receiver;10"))).toBeUndefined();
  });

  test("names that are no names, since there are but a few of them", () => {
    const same = ["TV;A1;receiver;10", "TV;A2;receiver;11", "TV;A3;receiver;12", "TV;A4;receiver;13"];
    expect(keysOf(lines("Outlet;Tag;Receiver;Run (m)", ...same))).toMatchObject({
      Outlet: undefined,
      Tag: "outlet",
    });
    expect(keysOf(lines("Outlet;Tag;Receiver;Run (m)", ...same.slice(1)))).toMatchObject({
      Outlet: "outlet",
    });
    // Half of them different are enough.
    const half = ["TV;A1;receiver;10", "tv;A2;receiver;11", "FM;A3;receiver;12", "fm;A4;receiver;13"];
    expect(keysOf(lines("Outlet;Tag;Receiver;Run (m)", ...half))).toMatchObject({ Outlet: "outlet" });
  });

  test("a numbered column names the outlets where no other does, and a person is asked", () => {
    const numbered = lines(
      "No.;Room;Receiver;Run (m)",
      "1;101;receiver;10",
      "2;102;receiver;11",
      "3;103;receiver;12",
    );
    expect(keysOf(numbered)["No."]).toBe("outlet");
    expect(unsureOf(numbered)).toBe("“No.” seems to hold the outlets' names. Say whether it does.");
    expect(keysOf(lines("No.;Outlet;Receiver;Run (m)", "1;A1;receiver;10"))).toMatchObject({
      "No.": undefined,
      Outlet: "outlet",
    });
    const counts = lines(
      "#;Outlet;Receiver;Run (m)",
      "1;A1;receiver;10",
      "2;A2;receiver;11",
      "1;A3;receiver;12",
    );
    expect(keysOf(counts)["#"]).toBe("quantity");
    expect(keysOf(counts.slice(0, 3))["#"]).toBeUndefined();
    expect(keysOf(counts.with(1, "10;A1;receiver;10"))["#"]).toBeUndefined();
  });

  test("figures below a receiver's head are no receivers", () => {
    expect(keysOf(lines("Outlet;Receiver;Run (m)", "A1;1;10", "A2;2;11"))).toMatchObject({
      Receiver: undefined,
    });
    expect(keysOf(lines("Outlet;Receiver;Run (m)", "A1;1;10", "A2;receiver;11"))).toMatchObject({
      Receiver: "receiver",
    });
  });

  test("words below a likely head of figures make it none; below a sure one they are asked about", () => {
    expect(
      keysOf(lines("Outlet;Receiver;Run (m);Anzahl Kisten", "A1;receiver;10;viele"))["Anzahl Kisten"],
    ).toBeUndefined();
    expect(keysOf(lines("Outlet;Receiver;Run (m);Anzahl Kisten", "A1;receiver;10;3"))["Anzahl Kisten"]).toBe(
      "quantity",
    );
    expect(keysOf(lines("Outlet;Receiver;Run (m);Anzahl", "A1;receiver;10;viele")).Anzahl).toBe("quantity");
    // What is only missing yet is a run all the same.
    expect(
      keysOf(lines("Outlet;Receiver;Cable length to riser", "A1;receiver;tbd", "A2;receiver;?")),
    ).toMatchObject({
      "Cable length to riser": "run",
    });
    expect(
      keysOf(lines("Outlet;Receiver;Riser distance wanted;Run (m)", "A1;receiver;red;10")),
    ).toMatchObject({
      "Riser distance wanted": undefined,
    });
  });

  test("a column is what its cells are on the workbook's lists", () => {
    const keys = (head: string, cells: readonly string[]) =>
      keysOf(
        [
          `Outlet;Receiver;Run (m);${head}`,
          ...cells.map((cell, index) => `A${index};receiver;${index + 10};${cell}`),
        ],
        undefined,
        { lists: LISTS },
      )[head];
    expect(keys("Stuff", ["indoor drop", "outdoor drop"])).toBe("cable");
    expect(keys("Stuff", ["single outlet", "outlet with radio"])).toBe("plate");
    // Some three of four are enough (7 × 0.75 − 1 = 4.25), a half is not (2.5).
    expect(keys("Stuff", ["indoor drop", "indoor drop", "indoor drop", "string"])).toBe("cable");
    expect(keys("Stuff", ["indoor drop", "string", "indoor drop", "rope"])).toBeUndefined();
    expect(keys("Cable price", ["9", "8"])).toBeUndefined();
    // "Source" is where it is fed from, unless cables stand below it.
    expect(keys("Source", ["GA", "GB"])).toBe("from");
  });

  test("hidden columns give no figures", () => {
    const table = tableOf(["Outlet;Receiver;Run (m);Length (m)", "A1;receiver;99;10"], {
      hiddenColumns: [2],
    });
    const survey = readSurvey([table], { unit: "m" });
    expect([runsOf(survey), survey.unsure]).toEqual([[["A1", 10]], undefined]);
    const name = tableOf(["Outlet;Point;Receiver;Run (m)", "A1;B1;receiver;10"], { hiddenColumns: [0] });
    expect(readSurvey([name], { unit: "m" }).rows[0]).toMatchObject({ outlet: "B1" });
  });

  test("columns with nothing in them, and heads without", () => {
    const survey = surveyOf(["Outlet;;Receiver;Run (m);Paint;", "A1;;receiver;10;;x"]);
    expect(survey.columns.map(({ column, head, samples }) => [column, head, samples])).toEqual([
      [0, "Outlet", ["A1"]],
      [2, "Receiver", ["receiver"]],
      [3, "Run (m)", ["10"]],
      [4, "Paint", []],
      [5, "column F", ["x"]],
    ]);
  });

  test("a unit that is not known, and one that a person chooses", () => {
    expect(unsureOf(lines("Outlet;Receiver;Run (rods)", "A1;receiver;10"))).toBe(
      'The column "Run (rods)" names a unit that is not known. Write "run (m)" or "run (ft)", or choose its unit.',
    );
    expect(
      runsOf(
        surveyOf(["Outlet;Receiver;Run (rods)", "A1;receiver;10"], {
          columns: { 2: { key: "run", unit: "ft" } },
        }),
      ),
    ).toEqual([["A1", 3.048]]);
    // Of a column that is no length it does not matter.
    expect(unsureOf(lines("Outlet;Receiver (kind);Run (m)", "A1;receiver;10"))).toBeUndefined();
  });

  test("what a survey can't do without", () => {
    expect(unsureOf(lines("Floor;Receiver;Note", "1;receiver;x"))).toBe(
      'The head row lacks "outlet", "run". It has "Floor", "Receiver", "Note". Say what each column is.',
    );
    expect(unsureOf(lines("Outlet;Receiver;Note", "A1;receiver;x"))).toMatch(/^The head row lacks "run"\. /);
    expect(unsureOf(lines("Outlet;Receiver;Shortest (m)", "A1;receiver;9"))).toMatch(/lacks "run"/);
    expect(unsureOf(lines("Outlet;Receiver;Shortest (m);Longest (m)", "A1;receiver;9;10"))).toBeUndefined();
    const wide = (count: number): string =>
      unsureOf([
        `Outlet;Receiver;${Array.from({ length: count }, () => "Paint").join(";")}`,
        "A1;receiver;9",
      ])!;
    expect(wide(10)).toMatch(/It has (?:"\w+", ){11}"Paint"\. Say/);
    expect(wide(11)).toMatch(/It has (?:"\w+", ){11}"Paint", …\. Say/);
  });
});

describe("without heads", () => {
  const guessed = (lines: readonly string[]): (string | undefined)[] =>
    surveyOf(lines, undefined, { lists: LISTS }).columns.map(({ key }) => key);

  test("floors by their words, names by their figures, runs by their units or decimals, the rest by the lists", () => {
    expect(
      guessed([
        "EG;A1;indoor drop;receiver;12.5",
        "EG;A2;indoor drop;receiver;9",
        "1. OG;B1;outdoor drop;receiver;14",
      ]),
    ).toEqual(["floor", "outlet", "cable", "receiver", "run"]);
    expect(guessed(["A1;12 m", "A2;9 m"])).toEqual(["outlet", "run"]);
    expect(guessed(["A1;12'", "A2;9'"])).toEqual(["outlet", "run"]);
    expect(guessed(["A1;12", "A2;9"])).toEqual(["outlet", "run"]);
    // Counts of receivers are no runs, nor is a running number.
    expect(guessed(["A1;2;12 m", "A2;1;9 m"])).toEqual(["outlet", undefined, "run"]);
    expect(guessed(["1;A1;12 m", "2;A2;9 m"])).toEqual([undefined, "outlet", "run"]);
    expect(guessed(["5;A1", "6;A2", "7;A3"])).toEqual([undefined, "outlet"]);
  });

  test("names are short, each once, and mostly have a figure", () => {
    const long = "a name too long 1";
    expect(guessed([`${long};12 m`, `${long}2;9 m`])).toEqual([undefined, "run"]);
    expect(guessed(["A1;12 m", "a1;9 m"])).toEqual([undefined, "run"]);
    expect(guessed(["bar;12 m", "den;9 m", "A3;7 m"])).toEqual([undefined, "run"]);
  });

  test("floors stand in most lines", () => {
    expect(guessed(["EG;A1;12 m", "GF;A2;9 m", "1st;A3;8 m"])[0]).toBe("floor");
    expect(guessed(["EG;A1;12 m", "bar;A2;9 m", "den;A3;8 m"])[0]).toBeUndefined();
  });

  test("a person is asked", () => {
    expect(unsureOf(["EG;A1;12 m", "EG;A2;9 m"])).toBe(
      "The file has no head row, so its columns are only guessed by what they hold. Say for each column what it is.",
    );
  });
});

describe("the unit that is said in words", () => {
  test.each([
    ["All lengths in feet", "ft"],
    ["Runs are given in m", "m"],
    ["measured on site in metres", "m"],
    ["All dimensions: in inches", "in"],
    ["Alle Längen in Metern", "m"],
    ["longueurs en mètres", "m"],
    ["Medidas en metros", "m"],
    ["figures are in cm.", "cm"],
  ])("%s", (text, unit) => {
    expect(unitSaid(linesOf([`x;${text}`]))).toBe(unit);
  });

  test.each([
    "in feet",
    "All lengths",
    "All lengths in the house in which nobody has lived for many a year in feet",
    "lengths in feelings",
    `All lengths in feet ${"x".repeat(181)}`,
  ])("%s: none", (text) => {
    expect(unitSaid(linesOf([text]))).toBeUndefined();
  });

  test("the first that says one", () => {
    expect(unitSaid(linesOf(["all in one", "all in m", "all in ft"]))).toBe("m");
    expect(unitSaid([])).toBeUndefined();
  });
});

describe("lines of a text that are broken by a comma of their own", () => {
  const HEAD = ["Outlet", "Cable", "Run (m)", "Wall plate", "Receiver", "Note"];
  const read = (cells: readonly string[], source = "text, commas, UTF-8", head: readonly string[] = HEAD) => {
    const lines: ImportedLine[] = [
      { line: 1, cells: head },
      { line: 2, cells },
    ];
    return readSurvey([{ source, lines }], { unit: "m", lists: LISTS });
  };

  test("a decimal comma is put together again where a name then stands in its column", () => {
    const survey = read(["A1", "indoor drop", "12", "5", "single outlet", "receiver", "by the door"]);
    expect(survey.rows).toEqual([
      {
        outlet: "A1",
        cable: "indoor drop",
        run: 12.5,
        plate: "single outlet",
        receiver: "receiver",
        note: "by the door",
      },
    ]);
    expect(survey.notes).toContain(
      "Line 2: “12,5” is read as one number, since the line has one cell too many.",
    );
    expect(read(["A1", "indoor drop", "12", "5 m", "single outlet", "receiver", ""]).rows[0]).toMatchObject({
      run: 12.5,
    });
  });

  test.each([
    ["no name of a list stands behind it", ["A1", "indoor drop", "12", "5", "zz", "xx", "by the door"]],
    ["more cells than one too many", ["A1", "indoor drop", "12", "5", "single outlet", "receiver", "x", "y"]],
    ["three figures behind it", ["A1", "indoor drop", "12", "500", "single outlet", "receiver", "x"]],
    ["no figure before it", ["A1", "indoor drop", "x", "5", "single outlet", "receiver", "x"]],
  ])("not where %s", (_, cells) => {
    const survey = read(cells);
    expect(survey.rows).toEqual([]);
    expect(survey.notes.join()).not.toMatch(/one number, since/);
  });

  test("not where other signs part the cells, nor where the line is as long as its heads", () => {
    const long = ["A1", "indoor drop", "12", "5", "single outlet", "receiver", "x"];
    expect(read(long, "text, semicolons, UTF-8").rows).toEqual([]);
    expect(read(["A1", "indoor drop", "12", "single outlet", "receiver", "x"]).rows[0]).toMatchObject({
      run: 12,
      note: "x",
    });
  });

  test("a remark in the last column may hold commas", () => {
    const survey = read([
      "A1",
      "indoor drop",
      "12",
      "single outlet",
      "receiver",
      "by the door",
      " left",
      "",
      "high",
    ]);
    expect(survey.rows[0]).toMatchObject({ run: 12, note: "by the door, left, high" });
    expect(survey.troubles).toEqual([]);
    expect(read(["A1", "indoor drop", "12", "single outlet", "receiver", "", "left"]).rows[0]).toMatchObject({
      note: "left",
    });
    // Blank cells at the end are nothing.
    expect(read(["A1", "indoor drop", "12", "single outlet", "receiver", "x", "", ""]).rows[0]).toMatchObject(
      { note: "x" },
    );
  });

  test("anything else is asked about", () => {
    const heads = ["Outlet", "Receiver", "Run (m)"];
    const reason = (cells: readonly string[], source?: string) =>
      read(cells, source, heads).troubles.map((one) => one.reason);
    expect(reason(["A1", "receiver", "12", "door"])).toEqual([
      "The line has 4 cells where the head row has 3. Put text that holds a comma in quotes.",
    ]);
    expect(reason(["A1", "receiver", "12", "5"])).toEqual([
      "The line has 4 cells where the head row has 3: “12” and “5” may be one number. Put text that holds a comma in quotes.",
    ]);
    expect(reason(["A1", "receiver", "12", "5 m", "x"])).toEqual([
      "The line has 5 cells where the head row has 3: “12” and “5 m” may be one number. Put text that holds a comma in quotes.",
    ]);
    expect(reason(["A1", "receiver", "12", "door"], 'sheet "Survey" of a workbook')).toEqual([]);
    expect(reason(["A1", "receiver", "12", "door"], "text, tabs, UTF-8")).toHaveLength(1);
  });

  test("a mark that is never closed is told on its line", () => {
    const table = tableOf(["Outlet;Receiver;Run (m)", "A1;receiver;10", "A2;receiver;11"], { open: 2 });
    const survey = readSurvey([table], { unit: "m" });
    expect(troublesOf(survey)).toEqual([
      [
        2,
        'The line begins a cell with a quotation mark (") that is never closed; it is taken as a plain sign.',
      ],
    ]);
    expect(runsOf(survey)).toEqual([["A2", 11]]);
  });
});
