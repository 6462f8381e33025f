import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { answerName, SHEET_CODE } from "../../src/training/answerName";
import { drawFor, type Trainee } from "../../src/training/drawNumbers";
import type { Answer } from "../../src/training/exercise";
import { trainingSetOf, trainingSets } from "../../src/training/sets/all";
import { parseAddress, address, parseRange } from "../../src/formula/address";
import type { Book } from "../../src/workbooks/book";
import { partsOf } from "../support/parts";
import { runCommand, type Ran } from "../support/fakeConsole";

let folder: string;
const at = (...names: string[]): string => path.join(folder, ...names);
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-exercises-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const exercises = async (list: string, set = "cable", seed = "7", out = "exercises"): Promise<Ran> => {
  await writeFile(at("list.csv"), list);
  return runCommand([
    "exercises",
    "--set",
    set,
    "--trainees",
    at("list.csv"),
    "--seed",
    seed,
    "--out",
    at(out),
  ]);
};
const sheets = async (out = "exercises"): Promise<string[]> => (await readdir(at(out, "sheets"))).sort();
const mark = (...more: string[]): Promise<Ran> =>
  runCommand(["mark", at("exercises"), "--out", at("marks.xlsx"), ...more]);

/** Types answers into a sheet as a person would, and saves it. */
async function fill(
  file: string,
  answers: Readonly<Record<string, Answer>>,
  change?: (book: Book) => void,
): Promise<void> {
  const book = await readXlsx(await readFile(file));
  for (const [key, value] of Object.entries(answers)) {
    const found = book.names.find(({ name }) => name === answerName(key))!;
    const cells = book.sheets.find(({ name }) => name === found.sheet)!.cells;
    cells[found.range] = { ...cells[found.range], value };
  }
  change?.(book);
  await writeFile(file, await writeXlsx(book));
}
const keyOf = (trainee: Trainee, set = "cable", seed = 7) => drawFor(trainingSetOf(set)!, seed, trainee).key;
const named = (name: string, occurrence = 1): Trainee => ({ name, occurrence });

/** The rows of a table of the marks, without its head. */
async function rowsOf(sheet: string): Promise<(string | number | undefined)[][]> {
  const book = await readXlsx(await readFile(at("marks.xlsx")));
  const { cells } = book.sheets.find(({ name }) => name === sheet)!;
  const rows: (string | number | undefined)[][] = [];
  for (const [where, { value }] of Object.entries(cells)) {
    const place = parseAddress(where)!;
    (rows[place.row] ??= [])[place.column] = value as string | number | undefined;
  }
  const head = rows.findIndex((row) => row?.length > 1 && row[1] !== undefined);
  return rows.slice(head + 1);
}

describe("rigsheet exercises", () => {
  test("a sheet for each trainee, and the key beside them", async () => {
    const made = await exercises("name\nAnna Berg\nBo\n");
    expect(made).toMatchObject({ code: 0, err: "" });
    expect(await sheets()).toEqual(["1-Anna-Berg.xlsx", "2-Bo.xlsx"]);
    expect((await readdir(at("exercises"))).sort()).toEqual(["sheets", "trainer-key.xlsx"]);
  });

  test.each(trainingSets.map(({ id }) => id))(
    "%s: no key and no seed anywhere in the sheet's file",
    async (id) => {
      await exercises("Anna\n", id, "918273645");
      const bytes = await readFile(at("exercises", "sheets", "1-Anna.xlsx"));
      const book = await readXlsx(bytes);
      expect(book.sheets.map(({ name, hidden, hiddenRows }) => [name, hidden, hiddenRows])).toEqual([
        ["Exercise", undefined, undefined],
      ]);
      const formulas = book.sheets.flatMap(({ cells }) =>
        Object.values(cells).flatMap(({ formula }) => formula ?? []),
      );
      // The one count of what is still to answer, shown in the head as well.
      expect(formulas).toHaveLength(2);
      for (const formula of formulas) expect(formula).not.toMatch(/RIG\./);
      const file = [...partsOf(bytes).values()].join("\n");
      expect(file).not.toContain("918273645");
      // What differs from another trainee's sheet is the name, the code and the question's own figures.
      await exercises("Bo\n", id, "918273645", "other");
      const other = await readXlsx(await readFile(at("other", "sheets", "1-Bo.xlsx")));
      const own = new Set(
        book.names
          .filter(({ name }) => /^(given_|training_)/.test(name))
          // With its unit beside it: west or east.
          .flatMap(({ range }) => [range, range.replace("B", "C")]),
      );
      const [mine, theirs] = [book.sheets[0]!.cells, other.sheets[0]!.cells];
      const differing = Object.keys(mine).filter(
        (cell) => mine[cell]!.value !== theirs[cell]?.value && !own.has(cell),
      );
      if (id !== "bad-quote") expect(differing).toEqual([]);
      else {
        // The quote itself: survey, quantities, prices and sums above the first question.
        for (const cell of differing) expect(parseAddress(cell)!.row).toBeLessThan(32);
        expect(differing.length).toBeGreaterThan(10);
      }
    },
  );

  test("the same seed gives the same bytes; another order or one more name leaves the others as they were", async () => {
    await exercises("Anna\nBo\nCy\n", "supply", "5", "one");
    await exercises("Anna\nBo\nCy\n", "supply", "5", "two");
    await exercises("Cy\nDee\nAnna\nBo\n", "supply", "5", "three");
    await exercises("Anna\n", "supply", "6", "four");
    const read = (...names: string[]) => readFile(at(...names));
    for (const name of ["1-Anna.xlsx", "2-Bo.xlsx"]) {
      expect(await read("one", "sheets", name)).toEqual(await read("two", "sheets", name));
    }
    expect(await read("one", "trainer-key.xlsx")).toEqual(await read("two", "trainer-key.xlsx"));
    expect(await read("three", "sheets", "3-Anna.xlsx")).toEqual(await read("one", "sheets", "1-Anna.xlsx"));
    expect(await read("four", "sheets", "1-Anna.xlsx")).not.toEqual(
      await read("one", "sheets", "1-Anna.xlsx"),
    );
  });

  test("names can be anything", async () => {
    const names = [
      '=HYPERLINK("x")',
      "<script>alert(1)</script>",
      "../../etc/passwd",
      "CON",
      "Łukasz Żółć",
      "王小明",
      "محمد",
      'O\'Neil, "Ann"',
      "@SUM(A1)",
      "-1",
      "💡",
      "Anna",
      "Anna",
      "a".repeat(120),
    ];
    const list = ["name", ...names.map((name) => `"${name.replaceAll('"', '""')}"`)].join("\n");
    expect(await exercises(list, "tuners")).toMatchObject({
      code: 1,
      err: expect.stringMatching(/^"Anna" stands 2 times/) as string,
    });
    const files = await sheets();
    expect(files).toHaveLength(names.length);
    for (const file of files) expect(file).toMatch(/^\d\d(-[\p{L}\p{N}-]+)?\.xlsx$/u);
    for (const [index, file] of files.entries()) {
      const book = await readXlsx(await readFile(at("exercises", "sheets", file)));
      const { B5, B6 } = book.sheets[0]!.cells;
      expect(B5).toMatchObject({ value: names[index] });
      expect(B5!.formula).toBeUndefined();
      expect(String(B6!.value)).toMatch(/^[0-9A-F]{10}$/);
    }
    expect(await mark()).toMatchObject({
      code: 0,
      out: expect.stringMatching(/14 of 14 sheets marked/) as string,
    });
  });

  test.each([
    ["semicolons, heads and blank lines", "Nr;Name;Firm\n1;Anna;x\n\n2;Bo;y\n", ["1-Anna.xlsx", "2-Bo.xlsx"]],
    ["first and last names", "Last name,First name\nBerg,Anna\n", ["1-Anna-Berg.xlsx"]],
    ["no heads", "Anna Berg\nBo\n", ["1-Anna-Berg.xlsx", "2-Bo.xlsx"]],
    ["a byte-order mark", "\uFEFFname\nÅsa\n", ["1-Åsa.xlsx"]],
  ])("%s", async (_, list, files) => {
    expect(await exercises(list, "tuners")).toMatchObject({ code: 0 });
    expect(await sheets()).toEqual(files);
  });

  test.each([
    ["no set", ["--set"], /argument missing|ambiguous|--set/],
    ["an unknown set", ["--set", "knots"], /There is no set "knots"\. Sets: look-angles/],
    ["no seed", ["--set", "cable"], /There is no --seed/],
    ["half a seed", ["--set", "cable", "--seed", "1.5"], /--seed is "1\.5"; give a whole number/],
    ["no list", ["--set", "cable", "--seed", "1"], /There is no --trainees/],
    ["no folder", ["--set", "cable", "--seed", "1", "--trainees", "x.csv"], /There is no --out/],
    [
      "a list that is not there",
      ["--set", "cable", "--seed", "1", "--trainees", "x.csv", "--out", "o"],
      /does not exist/,
    ],
    ["one word too many", ["cable"], /one word too many/],
  ])("%s: a sentence and nothing written", async (_, words, sentence) => {
    const { code, err } = await runCommand(["exercises", ...words]);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
    expect(await readdir(folder)).toEqual([]);
  });

  test.each([
    ["an empty list", "\n\n", /empty/],
    ["only heads", "name\n", /no trainee below its heads/],
    ["a name as long as a page", "a".repeat(121), /121 characters; the most is 120/],
    [
      "too many",
      Array.from({ length: 2001 }, (_, index) => `T${index}`).join("\n"),
      /2001 trainees; the most at once is 2000/,
    ],
  ])("%s is refused", async (_, list, sentence) => {
    expect(await exercises(list)).toMatchObject({ code: 2, err: expect.stringMatching(sentence) as string });
  });

  test("what is there, perhaps with answers in it, is not replaced unless told to", async () => {
    await exercises("Anna\n");
    expect(await exercises("Anna\n")).toMatchObject({
      code: 2,
      err: expect.stringMatching(/perhaps with answers/) as string,
    });
    expect(
      await runCommand([
        ...[
          "exercises",
          "--set",
          "cable",
          "--trainees",
          at("list.csv"),
          "--seed",
          "7",
          "--out",
          at("exercises"),
          "--force",
        ],
      ]),
    ).toMatchObject({ code: 0 });
  });
});

describe("rigsheet mark", () => {
  test("right, wrong, carried over and blank sheets; every kind of trouble is one line", async () => {
    await exercises("Anna\nBo\nCy\nDee\nEve\nFay\nGus\nHal\n");
    const file = (name: string) => at("exercises", "sheets", name);
    await fill(file("1-Anna.xlsx"), keyOf(named("Anna")));
    const bo = keyOf(named("Bo"));
    // Feet for metres, and nothing else answered but the loss that follows from it.
    const feet = (bo.metres as number) / 0.3048;
    await fill(file("2-Bo.xlsx"), { metres: Math.round(feet) });
    await writeFile(file("4-Dee.xlsx"), (await readFile(file("4-Dee.xlsx"))).subarray(0, 3000));
    await rm(file("5-Eve.xlsx"));
    await fill(file("6-Fay.xlsx"), keyOf(named("Fay")), ({ names, sheets: [sheet] }) => {
      const { range } = names.find(({ name }) => name === "given_metres_1")!;
      sheet!.cells[range] = { value: 100 };
    });
    await fill(file("7-Gus.xlsx"), {}, ({ names, sheets: [sheet] }) => {
      const { range } = names.find(({ name }) => name === SHEET_CODE)!;
      sheet!.cells[range] = { value: "0000000000" };
    });
    await writeFile(at("exercises", "sheets", "notes.xlsx"), "no workbook");
    await writeFile(at("exercises", "sheets", "1-Anna (copy).xlsx"), await readFile(file("1-Anna.xlsx")));
    await fill(file("8-Hal.xlsx"), {}, ({ names, sheets: [sheet] }) => {
      const { range } = names.find(({ name }) => name === "answer_metres")!;
      sheet!.cells[range] = { formula: "RIG.CABLELOSS(1)" };
      sheet!.results[range] = keyOf(named("Hal")).metres as number;
    });

    const { code, out, err } = await mark();
    expect(code).toBe(1);
    expect(out).toMatch(/4 of 8 sheets marked, .*9 not marked/);
    const lines = err.split("\n");
    expect(lines).toHaveLength(9);
    for (const sentence of [
      /4-Dee\.xlsx: The file is (cut short|damaged)/,
      /6-Fay\.xlsx: Its figures were changed: "Length of the run" of question 1 is 100, handed out was \d+/,
      /7-Gus\.xlsx: Its code 0000000000 is none of this key's/,
      /notes\.xlsx: The file is/,
      /1-Anna\.xlsx: The sheet of 1 Anna once more|1-Anna \(copy\)\.xlsx: The sheet of 1 Anna once more/,
      /\(4 Dee\): No sheet/,
      /\(5 Eve\): No sheet/,
      /\(6 Fay\): No sheet/,
      /\(7 Gus\): No sheet/,
    ]) {
      expect(lines.filter((line) => sentence.test(line))).toHaveLength(1);
    }
    const marks = await rowsOf("Marks");
    expect(marks.map((row) => row.slice(0, 5))).toEqual([
      [1, "Anna", 14, 14, 1],
      [2, "Bo", 0, 14, 0],
      [3, "Cy", 0, 14, 0],
      [8, "Hal", 2, 14, expect.closeTo(1 / 7, 9)],
    ]);
    expect(marks[3]![10]).toMatch(/answered by a formula of Rigsheet's: 1/);
    const answers = await rowsOf("Answers");
    expect(answers).toHaveLength(4 * 7);
    expect(answers[7]).toEqual(expect.arrayContaining([2, "Bo", "slip", "feet taken for metres"]));
    expect(await rowsOf("Not marked")).toHaveLength(9);
    const questions = await rowsOf("Questions");
    expect(questions[0]!.at(-1)).toBe("feet taken for metres: 1");
  });

  test("sheets that were copied are told of, with exit 1", async () => {
    await exercises("Anna\nBo\nCy\n", "supply");
    const all = { code: 1, out: expect.stringMatching(/1 pair shares answers/) as string };
    for (const [index, name] of ["Anna", "Bo", "Cy"].entries()) {
      const own = keyOf(named(name === "Cy" ? "Anna" : name), "supply");
      await fill(at("exercises", "sheets", `${index + 1}-${name}.xlsx`), own);
    }
    expect(await mark()).toMatchObject(all);
    const shared = await rowsOf("Shared");
    expect(shared).toHaveLength(1);
    expect(shared[0]!.slice(0, 2)).toEqual(["3 Cy", "1 Anna"]);
    expect((await rowsOf("Marks"))[2]![10]).toMatch(/shares answers/);
  });

  test("the key may lie elsewhere; a changed, missing or second one is refused", async () => {
    await exercises("Anna\n");
    const key = at("exercises", "trainer-key.xlsx");
    await mkdir(at("safe"));
    await rename(key, at("safe", "key.xlsx"));
    expect(await mark()).toMatchObject({
      code: 2,
      err: expect.stringMatching(/no trainer's key in/) as string,
    });
    expect(await mark("--key", at("safe", "key.xlsx"))).toMatchObject({ code: 0 });
    const bytes = await readFile(at("safe", "key.xlsx"));
    await writeFile(at("exercises", "a.xlsx"), bytes);
    expect(await mark("--force")).toMatchObject({ code: 0 });
    await writeFile(at("exercises", "b.xlsx"), bytes);
    expect(await mark("--force")).toMatchObject({
      code: 2,
      err: expect.stringMatching(/holds 2 keys/) as string,
    });
    await rm(at("exercises", "b.xlsx"));
    const book = await readXlsx(bytes);
    const { range, sheet } = book.names.find(({ name }) => name === "key_seed")!;
    const cell = address(parseRange(range)!.top, parseRange(range)!.left);
    book.sheets.find(({ name }) => name === sheet)!.cells[cell] = { value: "8" };
    await writeFile(at("exercises", "a.xlsx"), await writeXlsx(book));
    expect(await mark("--force")).toMatchObject({
      code: 2,
      err: expect.stringMatching(/The key was changed/) as string,
    });
  });

  test.each([
    ["no folder", [], /Name one folder/],
    ["a folder that is not there", ["nowhere", "--out", "m.xlsx"], /is no folder/],
  ])("%s", async (_, words, sentence) => {
    expect(await runCommand(["mark", ...words])).toMatchObject({
      code: 2,
      err: expect.stringMatching(sentence) as string,
    });
  });

  test("neither sheets nor key are overwritten by the marks", async () => {
    await exercises("Anna\n");
    const words = (out: string) => ["mark", at("exercises"), "--out", out, "--force"];
    for (const file of [at("exercises", "trainer-key.xlsx"), at("exercises", "sheets", "1-Anna.xlsx")]) {
      const before = await readFile(file);
      expect(await runCommand(words(file))).toMatchObject({ code: 2 });
      expect(await readFile(file)).toEqual(before);
    }
    expect(await runCommand(words(at("exercises", "marks.xlsx")))).toMatchObject({ code: 0 });
    expect(await runCommand(words(at("exercises", "marks.xlsx")))).toMatchObject({ code: 0 });
  });
});
