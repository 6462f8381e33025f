/** What a person chooses of a survey in the preview, and files that are none: a sentence each, nothing half read. */
import { readTables } from "../../../src/hosts/file/readTables";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { mergeOutlets } from "../../../src/workbooks/survey/merge";
import { readSurvey } from "../../../src/workbooks/survey/readSurvey";
import type { Survey, SurveyChoices, SurveySetting } from "../../../src/workbooks/survey/survey";
import { bookOf, emptySheet } from "../../support/books";

const LISTS = { cable: ["indoor drop", "outdoor drop"], receiver: ["receiver", "recorder, 2 tuners"] };
const SETTING: SurveySetting = { unit: "m", lists: LISTS };

const read = async (lines: readonly string[], choices?: SurveyChoices): Promise<Survey> =>
  readSurvey(await readTables(new TextEncoder().encode(lines.join("\n"))), SETTING, choices);
const runs = ({ rows }: Survey): unknown[] => rows.map(({ outlet, run }) => [outlet, run]);

const LINES = [
  "Room;Outlet;Receiver;Cable;Length m;Height m",
  "101;1-01;receiver;indoor drop;12;2.5",
  "102;1-02;recorder 2 tuner;indor drop;tbd;2.5",
  "103;1-03;receiver;indor drop;14;2.5",
  "104;1-04;receiver;indoor drop;15;cancelled",
];

test("cells put right, a name for all its lines, a line left out and one taken in: each reads the file anew", async () => {
  const first = await read(LINES);
  expect(runs(first)).toEqual([["1-01", 12]]);
  expect(first.unknown).toEqual([
    { key: "cable", text: "indor drop", lines: [3, 4], nearest: ["indoor drop", "outdoor drop"] },
  ]);
  const named = await read(LINES, { names: { "cable:indor drop": "indoor drop" } });
  expect(runs(named)).toEqual([
    ["1-01", 12],
    ["1-03", 14],
  ]);
  const mended = await read(LINES, {
    names: { "cable:indor drop": "indoor drop" },
    cells: { "3:run": "9 - 11" },
    leftOut: ["2"],
    takenIn: ["5"],
  });
  expect(runs(mended)).toEqual([
    ["1-02", 10],
    ["1-03", 14],
    ["1-04", 15],
  ]);
  expect(mended.rows[0]).toMatchObject({ shortest: 9, longest: 11, receiver: "recorder, 2 tuners" });
  expect(mended.troubles).toEqual([]);
  // Kept as it is typed, where a person says so.
  const kept = await read(LINES, { names: { "cable:indor drop": "indor drop" } });
  expect(kept.rows.at(-1)!.cable).toBe("indor drop");
});

test("another column is the run: the guess gives way; two are one too many", async () => {
  const other = await read(LINES, { columns: { 5: { key: "run", unit: "ft" } } });
  // 2.5 ft at 0.3048 m.
  expect(runs(other)).toEqual([["1-01", 0.762]]);
  const both = await read(LINES, { columns: { 4: { key: "run" }, 5: { key: "run" } } });
  expect(both.unsure).toMatch(/“Length m” and “Height m” are both taken for “Run”/);
  expect(both.rows).toEqual([]);
  const summed = await read(LINES, { columns: { 5: { key: "further", unit: "m" } } });
  expect(runs(summed)).toEqual([["1-01", 14.5]]);
});

test("a file without heads is asked about, and read as its columns are chosen", async () => {
  const lines = ["ground;bar;A1;12,5", "ground;hall;A2;14", "first;den;A3;9"];
  const first = await read(lines);
  expect(first.unsure).toMatch(/has no head row/);
  const chosen = await read(lines, { columns: { 1: { key: "room" } } });
  expect(chosen.unsure).toBeUndefined();
  expect(chosen.rows[0]).toEqual({ floor: "ground", room: "bar", outlet: "A1", run: 12.5 });
  expect((await read(lines, { confirmed: true })).rows).toHaveLength(3);
});

test("of a workbook's sheets another can be chosen", async () => {
  const sheet = (name: string, run: number) => ({
    ...emptySheet(name),
    cells: {
      A1: { value: "Outlet" },
      B1: { value: "Run (m)" },
      A2: { value: `${name}-1` },
      B2: { value: run },
    },
    rowCount: 2,
    columnCount: 2,
  });
  const tables = await readTables(await writeXlsx(bookOf(sheet("East", 8), sheet("West", 9))));
  const first = readSurvey(tables, SETTING);
  expect([first.sheets, first.sheet, runs(first)]).toEqual([["East", "West"], "East", [["East-1", 8]]]);
  expect(runs(readSurvey(tables, SETTING, { sheet: "West" }))).toEqual([["West-1", 9]]);
});

describe("bad input", () => {
  test("a million lines are refused with a sentence, before they are taken apart", async () => {
    const text = new TextEncoder().encode("a;b\n".repeat(1_000_000));
    await expect(readTables(text)).rejects.toThrow(
      /has 1000001 lines; a survey or price list has at most 100000/,
    );
  });

  test("zeros: every line is asked about", async () => {
    const { rows, troubles } = await read(["Outlet;Run m", "A;0", "B;0,0", "C;0 m"]);
    expect(rows).toEqual([]);
    expect(troubles.map(({ line, reason }) => [line, /must be from 0\.1 to 2000 m/.test(reason)])).toEqual([
      [2, true],
      [3, true],
      [4, true],
    ]);
  });

  test("a formula in a cell of text stays text, in a run it is asked about", async () => {
    const { rows, troubles } = await read(["Outlet;Run m;Note", 'A;9;"=HYPERLINK(""x"")"', "B;=12+3;"]);
    expect(rows).toEqual([{ outlet: "A", run: 9, note: '=HYPERLINK("x")' }]);
    expect(troubles[0]).toMatchObject({ line: 3, keys: ["run"] });
    expect(troubles[0]!.reason).toMatch(/“=12\+3” can't be read as a length/);
  });

  test("no head and nothing like an outlet, an empty file: a sentence", async () => {
    for (const lines of [["once upon a time"], ["a;b", "1;2"]])
      expect((await read(lines)).unsure).toMatch(/The head row lacks "outlet", "run"/);
    expect((await read([""])).troubles[0]!.reason).toMatch(/The file is empty/);
  });
});

describe("merged by the outlets' names", () => {
  const rooms = [
    { offset: 1, cells: { outlet: "A-1", room: "Bar", run: 12, shortest: 11, longest: 13, note: "by hand" } },
    { offset: 2, cells: { outlet: "A-2", run: 3.048, quantity: 1 } },
    { offset: 4, cells: { outlet: "A-3", run: 7 } },
    { offset: 5, cells: { outlet: "a-1", run: 99 } },
  ] as const;

  test("new, changed with old and new, the same, gone", () => {
    const merge = mergeOutlets(
      [
        { outlet: "a-1", room: "bar", run: 20 },
        // 10 ft, and one receiver: what Rooms has already.
        { outlet: "A-2", run: 3.04800001 },
        { outlet: "A-4", run: 5 },
      ],
      rooms,
    );
    expect(merge.added).toEqual([{ outlet: "A-4", run: 5 }]);
    expect(merge.changed).toEqual([
      {
        offset: 1,
        outlet: "A-1",
        cells: [
          { key: "run", old: 12, now: 20 },
          // The earlier longest run is none for a run of 20.
          { key: "longest", old: 13, now: undefined },
        ],
      },
    ]);
    expect([merge.same, merge.gone]).toEqual([1, [{ offset: 4, outlet: "A-3" }]]);
  });
});
