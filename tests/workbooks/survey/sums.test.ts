/** Sums that a survey gives of itself, held against its lines. */
import { runsOf, surveyOf, tableOf, troublesOf, type GivenLine } from "../../support/surveyTables";
import type { ImportedLine } from "../../../src/workbooks/imported/table";
import { readSurvey } from "../../../src/workbooks/survey/readSurvey";

const HEAD = "Room;Outlet;Receiver;Run (m)";
const LINES = ["101;A1;receiver;10", "102;A2;receiver;12.5"];
const PASSED = "1 line with a sum, held against the runs above it, is passed over.";

/** Two outlets of 22.5 m in all, and a sum. */
const summed = (...sums: GivenLine[]) => surveyOf([HEAD, ...LINES, ...sums]);
const saidOf = (...sums: GivenLine[]): string | undefined => summed(...sums).troubles[0]?.reason;

describe("a sum that fits is passed over", () => {
  test.each([
    "Total;;;22.5",
    "Total;;;22.5 m",
    "Total;2;;22.5",
    "Total;2;;",
    "TOTAL:;;;22.5",
    "Totals;;;22,5",
    "Grand total;;;22.5",
    "Sub-total;;;22.5",
    "subtotal;;;22.5",
    "Summe;;;22.5",
    "Zwischensumme;;;22.5",
    "Gesamt;;;22.5",
    "Somme;;;22.5",
    "sous-total;;;22.5",
    "Totale;;;22.5",
    "Suma;;;22.5",
    "Totaal;;;22.5",
    "Übertrag;;;22.5",
    "carried forward;;;22.5",
    "razem;;;22.5",
    "celkem;;;22.5",
    "yhteensä;;;22.5",
    "Σ;;;22.5",
    "Total 2 outlets, 22.5 m;;;",
    "Total: 22.5 m;;;",
    "Total length = 22.5 metres;;;",
    "Total;;;",
    "Total;;2 pcs;22.5",
    "Total;;;2 outlets",
    ";;Total;22.5",
    ";;;22.5",
    ";;2;22.5",
    "2 outlets;;;",
    "Outlets: 2;;;",
    ";2 outlets;;",
    ";Total;;22.5",
  ])("%s", (sum) => {
    const survey = summed(sum);
    expect([survey.troubles, survey.rows.length]).toEqual([[], 2]);
    expect(survey.notes).toContain(PASSED);
  });

  test("two are told in the plural", () => {
    expect(summed("Total;;;22.5", "Total;2;;").notes).toEqual([
      "2 lines with a sum, held against the runs above it, are passed over.",
    ]);
  });

  test("a number of a workbook", () => {
    expect(summed(["Total", "", "", { number: 22.5, shown: "22.5" }]).troubles).toEqual([]);
    expect(saidOf(["Total", "", "", { number: 32.5, shown: "32.5" }])).toMatch(/says 32\.5 m/);
  });

  test.each(["Total;;;23", "Total;;;22", "Total;;;22.55", "Total;;;22.45"])(
    "%s: as nearly as it is rounded, or each of its runs was",
    (sum) => {
      expect(summed(sum).troubles).toEqual([]);
    },
  );

  test("beyond what one run may be, with a sign between thousands", () => {
    const long = Array.from({ length: 3 }, (_, index) => `10${index};A${index};receiver;900 m`);
    for (const sum of ["2700", "2,700", "2,700 m", "2.700", "2'700", "2 700 m", "2700.0", "2.700,0"])
      expect([sum, surveyOf([HEAD, ...long, `Total;;;${sum}`]).troubles]).toEqual([sum, []]);
    expect(surveyOf([HEAD, ...long, "Total;;;2,800"]).troubles[0]!.reason).toMatch(/says 2800 m/);
    for (const sum of ["2'800", "2 800 m", "2800.0", "2.800,0", "2,800.0"])
      expect(surveyOf([HEAD, ...long, `Total;;;${sum}`]).troubles[0]?.reason).toMatch(/says 2800 m/);
    // Three decimals are none of a sum of thousands.
    expect(summed("Total;;;22.500").troubles).toEqual([]);
    expect(summed("Total;;;22,500").troubles).toEqual([]);
    // 2700 ft in a column of feet; 2,700 m there is another sum.
    const feet = ["Room;Outlet;Receiver;Run (ft)", ...long.map((line) => line.replace(" m", ""))];
    expect(surveyOf([...feet, "Total;;;2,700"]).troubles).toEqual([]);
    expect(surveyOf([...feet, "Total;;;2,700 m"]).troubles).toHaveLength(1);
  });

  test("in the unit of the column", () => {
    const feet = ["Room;Outlet;Receiver;Run (ft)", "101;A1;receiver;10", "102;A2;receiver;20"];
    expect(surveyOf([...feet, "Total;;;30"]).troubles).toEqual([]);
    // 3000 ft = 914.4 m, 30 ft = 9.144 m; a sum may go beyond what a run may be.
    expect(surveyOf([...feet, "Total;;;3000"]).troubles[0]!.reason).toBe(
      "“Total” says 914.4 m; the lines above it are 2 outlets with 9.144 m. Look whether a line is missing.",
    );
    expect(surveyOf([...feet, "Total;;;30000"]).troubles[0]!.reason).toMatch(/says 9144 m;/);
  });
});

describe("one that does not fit is asked about", () => {
  test.each([
    ["Total;;;23.5", "“Total” says 23.5 m; the lines above it are 2 outlets with 22.5 m."],
    ["Total;;;24", "“Total” says 24 m; the lines above it are 2 outlets with 22.5 m."],
    ["Total;;;21", "“Total” says 21 m; the lines above it are 2 outlets with 22.5 m."],
    ["Total;;;22.6", "“Total” says 22.6 m; the lines above it are 2 outlets with 22.5 m."],
    ["Total;;;22.56", "“Total” says 22.56 m; the lines above it are 2 outlets with 22.5 m."],
    ["Total;3;;22.5", "“Total” says 3 outlets; the lines above it are 2 outlets with 22.5 m."],
    ["Total;1;;", "“Total” says 1 outlet; the lines above it are 2 outlets with 22.5 m."],
    ["Total;3;;30", "“Total” says 3 outlets and 30 m; the lines above it are 2 outlets with 22.5 m."],
    ["3 outlets;;;", "“3 outlets” says 3 outlets; the lines above it are 2 outlets with 22.5 m."],
    ["Points: 3;;;", "“Points: 3” says 3 outlets; the lines above it are 2 outlets with 22.5 m."],
    ["Total 3 outlets;;;", "“Total 3 outlets” says 3 outlets; the lines above it are 2 outlets with 22.5 m."],
    ["Total of 30 m;;;", "“Total of 30 m” says 30 m; the lines above it are 2 outlets with 22.5 m."],
    [";;;30", "“30” says 30 m; the lines above it are 2 outlets with 22.5 m."],
    [";;Total;30", "“Total” says 30 m; the lines above it are 2 outlets with 22.5 m."],
  ])("%s", (sum, said) => {
    const survey = summed(sum);
    expect(survey.troubles).toEqual([
      { line: 4, id: "4", isTotal: true, reason: `${said} Look whether a line is missing.` },
    ]);
    // It keeps no outlet back.
    expect(survey.rows).toHaveLength(2);
    // A person may leave it.
    expect(surveyOf([HEAD, ...LINES, sum], { leftOut: ["4"] }).troubles).toEqual([]);
  });

  test("a figure behind all columns that count is a number of outlets, one in the midst of others is nothing", () => {
    const head = "Room;Outlet;Receiver;Run (m);Paint;Note";
    const survey = (sum: string) => surveyOf([head, "101;A1;receiver;10;;", sum]);
    expect(survey("Total;;;10;;2").troubles[0]!.reason).toMatch(/says 2 outlets/);
    expect(survey("Total;;;10;;1").troubles).toEqual([]);
    expect(survey("Total;;;10;2;").troubles).toEqual([]);
    expect(survey("Total;;;10;2 outlets;").troubles[0]!.reason).toMatch(/says 2 outlets/);
  });
});

describe("lines that only look like one", () => {
  test("an outlet in a room with such a name", () => {
    const survey = summed("Total Bar;A3;receiver;9", "Lounge;Sum;receiver;8", "Sub;A4;receiver;7");
    expect([survey.troubles, survey.rows.length]).toEqual([[], 5]);
  });

  test("a remark", () => {
    const survey = surveyOf([`${HEAD};Note`, `${LINES[0]};`, "103;;receiver;9;total loss"]);
    expect(troublesOf(survey)).toEqual([[3, "outlet is missing. Enter a name of its own."]]);
  });

  test("figures alone, with an outlet or a room among them", () => {
    expect(runsOf(summed("103;7;;9")).at(-1)).toEqual(["7", 9]);
    expect(troublesOf(summed("103;;;9"))).toEqual([[4, "outlet is missing. Enter a name of its own."]]);
  });

  test("a long text that ends with such a word", () => {
    const survey = surveyOf([
      HEAD,
      LINES[0]!,
      `103;;this is far too long to be the word for a ${"sum or "}total;9`,
    ]);
    expect(survey.troubles.map(({ isTotal }) => isTotal)).toEqual([undefined]);
  });
});

describe("which lines a sum is of", () => {
  const read = (...lines: string[]) => surveyOf(["Floor;Outlet;Receiver;Run (m)", ...lines]);

  test("those since the last sum, or all", () => {
    const lines = [
      "1;A1;receiver;10",
      "1;A2;receiver;12",
      "Subtotal;;;22",
      "2;B1;receiver;5",
      "Subtotal;;;5",
      "Total;;;27",
    ];
    expect(read(...lines).troubles).toEqual([]);
    expect(read(...lines.with(4, "Subtotal;;;6")).troubles[0]!.reason).toBe(
      "“Subtotal” says 6 m; the lines above it are 3 outlets with 27 m, 1 outlet with 5 m of them since the last sum. Look whether a line is missing.",
    );
    // At the end nothing is left since the last.
    expect(read(...lines.with(5, "Total;;;28")).troubles[0]!.reason).toBe(
      "“Total” says 28 m; the lines above it are 3 outlets with 27 m. Look whether a line is missing.",
    );
    expect(read(...lines.with(5, "Total;1;;")).troubles).toHaveLength(1);
  });

  test("those of the floor that it names, wherever it stands", () => {
    const lines = ["Ground;A1;receiver;10", "First;B1;receiver;5", "First;B2;receiver;6"];
    expect(read(...lines, "Total ground;;;10", "Total FIRST;;;11").troubles).toEqual([]);
    expect(read(...lines, "Total ground;;;11").troubles).toHaveLength(1);
    // Of two floors that it could name it is the one with the longer name.
    const alike = ["Wing;A1;receiver;10", "Wing east;B1;receiver;5"];
    expect(read(...alike, "Total wing east;;;5").troubles).toEqual([]);
    expect(read(...alike, "Total wing east;;;10").troubles).toHaveLength(1);
    expect(read(...alike.toReversed(), "Total wing east;;;5").troubles).toEqual([]);
  });

  test("outlets or receivers", () => {
    const lines = ["Outlet;Qty;Receiver;Run (m)", "A1;2;receiver;10", "A2;;receiver;12"];
    const total = (count: number) => surveyOf([...lines, `Total ${count} outlets;;;22`]).troubles.length;
    expect([1, 2, 3, 4].map(total)).toEqual([1, 0, 0, 1]);
  });

  test("with or without what is struck out", () => {
    const lines = [`${HEAD};Note`, "101;A1;receiver;10;", "102;A2;receiver;12;cancelled"];
    const sums = (...totals: string[]): number =>
      totals.filter((total) => surveyOf([...lines, total]).troubles.some(({ isTotal }) => isTotal)).length;
    expect(sums("Total;1;;10;", "Total;2;;22;", "Total;2;;10;", "Total;;;22;")).toBe(0);
    expect(sums("Total;;;12;", "Total;3;;;", "Total;;;34;")).toBe(3);
    // So it is with a line that a person left out.
    const left = (total: string) =>
      surveyOf([HEAD, "101;A1;receiver;10", "102;A2;receiver;12", total], { leftOut: ["3"] }).troubles.length;
    expect(["Total;;;10", "Total;;;22", "Total;;;12"].map(left)).toEqual([0, 0, 1]);
  });

  test("of two parts of a run each has its own", () => {
    const lines = ["Outlet;Receiver;Run (m);In room (m)", "A1;receiver;10;2", "A2;receiver;12;3"];
    const choices = { columns: { 3: { key: "further", unit: "m" } } };
    const total = (sum: string) => surveyOf([...lines, sum], choices).troubles.map(({ reason }) => reason);
    expect(total("Total;;22;5")).toEqual([]);
    expect(total("Total;;22.0;5.0")).toEqual([]);
    expect(total("Total;;22;6")).toEqual([
      "“Total” says 28 m; the lines above it are 2 outlets with 27 m. Look whether a line is missing.",
    ]);
    expect(total("Total;;27;")).toEqual([]);
  });
});

describe("what is not known to the metre", () => {
  const read = (runs: readonly string[], total: string) =>
    surveyOf([HEAD, ...runs.map((run, index) => `10${index};A${index};receiver;${run}`), `Total;;;${total}`]);
  const near = (said: string, found: string): string =>
    `“Total” (${said}) agrees with its lines (${found}) as nearly as their ranges and estimates let it.`;

  test("an estimate may be off by 15 %: common practice, no source", () => {
    // 15 % of 10 m are 1.5 m; the sum is rounded to 0.05 m, as are its two runs: 1.651 m in all.
    expect(read(["ca. 10", "12"], "23.6").notes).toContain(near("23.6 m", "2 outlets with 22 m"));
    expect(read(["ca. 10", "12"], "20.4").notes).toContain(near("20.4 m", "2 outlets with 22 m"));
    expect(read(["ca. 10", "12"], "23.7").troubles).toHaveLength(1);
    expect(read(["ca. 10", "12"], "20.3").troubles).toHaveLength(1);
    // What fits is not told.
    expect(read(["ca. 10", "12"], "22").notes.join()).not.toMatch(/agrees/);
  });

  test("a range may be either of its ends", () => {
    expect(read(["8 - 12", "12"], "24.1").notes).toContain(near("24.1 m", "2 outlets with 22 m"));
    expect(read(["8 - 12", "12"], "19.9").notes).toContain(near("19.9 m", "2 outlets with 22 m"));
    expect(read(["8 - 12", "12"], "24.3").troubles).toHaveLength(1);
    expect(read(["8 - 12", "12"], "19.7").troubles).toHaveLength(1);
    // An estimate with a range is off by the more of both: 20 ± 1 and 15 % of 20.
    expect(read(["ca. 19 - 21"], "23").troubles).toEqual([]);
    expect(read(["ca. 19 - 21"], "24").troubles).toHaveLength(1);
  });

  test("plain runs are off by nothing", () => {
    expect(read(["10", "12"], "22.1").troubles).toHaveLength(1);
  });

  test("with a run that is not known no sum can be held, but a count can", () => {
    const survey = read(["10", "tbd"], "22");
    expect(survey.notes).toContain(
      "“Total” can't be held against its lines while a run among them is not known.",
    );
    expect(survey.troubles.map(({ line }) => line)).toEqual([3]);
    const counted = surveyOf([HEAD, "101;A1;receiver;10", "102;A2;receiver;tbd", "Total;3;;22"]);
    expect(counted.troubles.at(-1)!.reason).toBe(
      "“Total” says 3 outlets; the lines above it are 2 outlets. Look whether a line is missing.",
    );
    // A group of which all is known is held.
    const groups = surveyOf([HEAD, "101;A1;receiver;tbd", "Total;1;;", "102;A2;receiver;12", "Total;;;12"]);
    expect(groups.notes.join()).not.toMatch(/can't be held/);
  });
});

describe("rows that are hidden in their sheet", () => {
  const read = (cells: string, choices = {}) => {
    const table = tableOf([HEAD, LINES[0]!, cells, LINES[1]!]);
    const lines = table.lines.map((line): ImportedLine =>
      line.line === 3 ? { ...line, hidden: true } : line,
    );
    return readSurvey([{ ...table, lines }], { unit: "m" }, choices);
  };

  test("an outlet is left out, told, and taken in where a person wants it", () => {
    const survey = read("103;A3;receiver;7");
    expect(survey.rows).toHaveLength(2);
    expect(survey.troubles).toEqual([
      { line: 3, id: "3", isLeftOut: true, reason: "The row is hidden in its sheet, so it is left out." },
    ]);
    expect(runsOf(read("103;A3;receiver;7", { takenIn: ["3"] }))[1]).toEqual(["A3", 7]);
    const left = read("103;A3;receiver;7", { leftOut: ["3"] });
    expect([left.rows.length, left.troubles]).toEqual([2, []]);
  });

  test.each([HEAD, "Total;;;99", "Ground floor;;;", "all walls are brick;;;", "Page 2;;;"])(
    "anything else is passed over without a word: %s",
    (cells) => {
      const survey = read(cells);
      expect([survey.troubles, survey.notes]).toEqual([[], []]);
      expect(survey.rows.map(({ floor }) => floor)).toEqual([undefined, undefined]);
    },
  );
});
