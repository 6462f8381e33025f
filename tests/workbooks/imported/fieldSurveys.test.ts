/** Surveys as people send them, written from outside: what is read right, what is asked about, and nothing wrong without a word. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readTables } from "../../../src/hosts/file/readTables";
import { readSurvey } from "../../../src/workbooks/survey/readSurvey";
import { casesIn, play, type Played } from "../../support/outsideSurveyCases";

const FOLDER = path.join(__dirname, "../../fixtures/fieldSurveys");
const cases = casesIn(FOLDER);
const played = new Map<string, Played>();

/** Asked about, without all of the words that the maker looks for. */
const OTHER_WORDS: Readonly<Record<string, RegExp>> = {
  // The remark that would help stands in the line, not in the sentence.
  "39.xlsx": /^9: asked without date, 10-12: Office, M-06 run: the file holds a date here/,
};

test("there are 40 surveys with 546 outlets and 61 questions", () => {
  const count = (list: readonly (readonly unknown[])[]): number => list.flat().length;
  expect([
    cases.length,
    count(cases.map(({ rows }) => rows)),
    count(cases.map(({ asks = [] }) => asks)),
  ]).toEqual([40, 546, 61]);
});

test.each(cases.map((one) => [one.file, one.why, one] as const))("%s: %s", async (file, _, one) => {
  const found = await play(FOLDER, one);
  played.set(file, found);
  expect(found.wrong.filter((line) => !OTHER_WORDS[file]?.test(line))).toEqual([]);
  expect(found.askedTooMuch).toEqual([]);
  expect(found.said).toEqual([]);
});

test("how many were read right at the first try", () => {
  const asked = cases.map(({ asks = [] }) => new Set(asks.map(({ line }) => line)));
  const readable = cases.flatMap(({ rows }, index) =>
    rows.filter(({ line }) => !asked[index]!.has(Number(line))),
  ).length;
  const right = [...played.values()].reduce((sum, one) => sum + one.right, 0);
  console.info(`${right} of ${readable} outlets that need no question are read right`);
  expect(right / readable).toBeGreaterThan(0.97);
});

describe("the lodge: what is not easy in its 56 lines, worked out by hand from the file", () => {
  const lists = {
    cable: ["indoor drop", "outdoor drop"],
    plate: ["single outlet", "outlet with radio"],
    receiver: ["receiver", "recorder, 2 tuners"],
  };
  const lodge = async () =>
    readSurvey(await readTables(new Uint8Array(readFileSync(path.join(FOLDER, "lodge.csv")))), {
      unit: "m",
      lists,
    });

  test("56 outlets, none asked about, each with the floor above it and a name of the lists", async () => {
    const { rows, troubles, unsure } = await lodge();
    expect([rows.length, troubles, unsure]).toEqual([56, [], undefined]);
    const floors = ["Ground", "1st", "2nd", "3rd"];
    expect(floors.map((floor) => rows.filter((row) => row.floor === floor).length)).toEqual([10, 16, 16, 14]);
    // "recorder 2 tuners" and "Recorder, 2 tuners", counted in the file.
    expect(rows.filter(({ receiver }) => receiver === "recorder, 2 tuners")).toHaveLength(8);
    expect(rows.filter(({ receiver }) => receiver === "receiver")).toHaveLength(48);
    expect(new Set(rows.map(({ cable }) => cable))).toEqual(new Set(["indoor drop"]));
    expect(new Set(rows.map(({ plate }) => plate))).toEqual(new Set(["single outlet", "outlet with radio"]));
    expect(new Set(rows.map(({ outlet }) => outlet)).size).toBe(56);
  });

  test("every run that is a plain number, with m behind it or not, is that number", async () => {
    const { rows } = await lodge();
    const text = readFileSync(path.join(FOLDER, "lodge.csv"), "latin1");
    const plain = text.split("\r\n").flatMap((line): [string, number][] => {
      const [, , outlet = "", , , , , run = ""] = line.split(";");
      return /-\d\d$/.test(outlet) && /^[\d.,]+ ?m?$/.test(run)
        ? [[outlet, Number(run.replace(",", ".").replace(/ ?m$/, ""))]]
        : [];
    });
    // All but four estimates, three ranges and one in feet.
    expect(plain).toHaveLength(56 - 8);
    expect(
      rows
        .filter(({ outlet }) => plain.some(([name]) => name === outlet))
        .map(({ outlet, run }) => [outlet, run]),
    ).toEqual(plain);
  });

  test.each([
    ["G-01", { room: "Reception", run: 13.4, from: "GA", note: "ask for key" }],
    ["G-03", { room: "café", run: 15.6 }],
    ["G-05", { run: 15.1 }],
    ["1-03", { run: 24.5, shortest: 23, longest: 26 }],
    ["1-05", { run: 7.5, plate: "outlet with radio" }],
    // 21 ft 8 in: 260 in at 0.0254 m.
    ["2-01", { run: 6.604 }],
    ["2-07", { run: 18.5, shortest: 17, longest: 20 }],
    ["2-08", { run: 24.5, shortest: 23, longest: 26 }],
    ["3-14", { room: "314", run: 10.9, note: "old cable stays" }],
  ])("%s", async (name, wanted) => {
    const { rows } = await lodge();
    expect(rows.find(({ outlet }) => outlet === name)).toMatchObject(wanted);
  });

  test("its totals are held against its lines: outlets by floor, and the metres within what ranges and estimates leave open", async () => {
    const { notes } = await lodge();
    const said = notes.join(" ");
    expect(said).toMatch(/5 lines with a sum, held against the runs above it/);
    expect(said).toMatch(
      /“Sum” \(56 outlets, 993\.5 m\) agrees with its lines \(56 outlets with \d+(?:\.\d+)? m\) as nearly as/,
    );
    expect(said).toMatch(/Lines 19, 20, 36, 41: the runs are estimates/);
  });
});
