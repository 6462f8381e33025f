/**
 * No formula that we store is cut down by Excel to the row that it stands in:
 * whatever hands several cells to a place that wants one value is stored as a
 * dynamic array, by every road that writes a workbook.
 */
import fc from "fast-check";
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel, recalculate } from "../../../src/hosts/headless/recalculate";
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { trainingSets } from "../../../src/training/sets/all";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { trainerKey } from "../../../src/training/trainerKey";
import type { Book } from "../../../src/workbooks/book";
import { arrayFormulas } from "../../../src/workbooks/arrayFormulas";
import { templates } from "../../../src/workbooks/templates";
import { bookOf, emptySheet } from "../../support/books";
import { CLASSES, cutArguments } from "../../support/cutArguments";
import { storedFormulas } from "../../support/storedFormulas";
import { inExcel } from "../excel/inExcel";
import { tries } from "../../support/tries";

describe("the static check", () => {
  const MANY = ["column", "other", "table", "a", "b"];
  const isMany = (cells: string): boolean => {
    if (MANY.includes(cells)) return true;
    if (cells === "single") return false;
    throw new Error(`no such name: ${cells}`);
  };

  test("has the worked examples", () => expect(CLASSES.workedExamples).toHaveLength(13));

  test.each(CLASSES.workedExamples)("of $formula", ({ formula, cut }) => {
    const found = cutArguments(formula, isMany);
    expect(found).toHaveLength(cut.length);
    // The examples say it in words: "the first a of MATCH".
    for (const [index, words] of cut.entries()) {
      const what = found[index]!;
      expect(words === what || words.split(" ").includes(what)).toBe(true);
    }
  });

  test("complains of what it does not know", () => {
    expect(() => cutArguments("NOSUCH(column)", isMany)).toThrow(/NOSUCH/);
    expect(() => cutArguments("SUM(unnamed)", isMany)).toThrow(/unnamed/);
    expect(() => cutArguments("SUM(column", isMany)).toThrow(/wanted/);
  });
});

describe("what is marked as an array", () => {
  const names = [
    { name: "column", sheet: "S", range: "A1:A9" },
    { name: "other", sheet: "S", range: "B1:B9" },
    { name: "table", sheet: "S", range: "A1:C9" },
    { name: "single", sheet: "S", range: "D4" },
  ];
  const arrayOf = arrayFormulas({ names });
  const isMany = (cells: string): boolean => /^(?:column|other|table)$|:/.test(cells);
  /** Every function of the table, with as few arguments as it takes, and up to three more. */
  const CALLS = Object.entries({ ...CLASSES.usedByTheTemplates, ...CLASSES.forLaterUse }).map(
    ([name, { least, most }]) => ({ name, least, most: Math.min(most, least + 3) }),
  );
  const { formula } = fc.letrec<{ formula: string; call: string }>((tie) => ({
    formula: fc.oneof(
      { maxDepth: 4 },
      fc.constantFrom("column", "other", "table", "single", "A1:A3", "'S'!$A$1", "0", "2", '"a ""b"', "TRUE"),
      tie("call"),
      fc
        .tuple(tie("formula"), fc.constantFrom("+", "-", "*", "/", "&", "=", "<>", "<="), tie("formula"))
        .map(([left, operator, right]) => `${left}${operator}${right}`),
      fc.tuple(fc.constantFrom("-", "+"), tie("formula")).map(([sign, one]) => `${sign}${one}`),
      tie("formula").map((one) => `(${one})`),
      tie("formula").map((one) => `${one}%`),
    ),
    call: fc
      .constantFrom(...CALLS)
      .chain(({ name, least, most }) =>
        fc
          .array(tie("formula"), { minLength: least, maxLength: most })
          .map((args) => `${name}(${args.join(",")})`),
      ),
  }));

  test("is what the static check, made apart from it, finds cut, or what may return cells, and nothing else", () => {
    fc.assert(
      fc.property(formula, fc.boolean(), (one, summed) => {
        const text = summed ? `SUMPRODUCT(${one})` : one;
        // Before what may return cells Excel shows an @ in a plain formula (Microsoft, "Implicit intersection operator").
        const isArray = cutArguments(text, isMany).length > 0 || /\b(?:INDEX|INDIRECT|OFFSET)\(/.test(text);
        expect([text, arrayOf(text) !== undefined]).toEqual([text, isArray]);
      }),
      { numRuns: tries(1000, 10_000), seed: 14 },
    );
  });

  test.each([
    ["a function that it does not know", "NOSUCH(single)"],
    ["a name that it does not know", "unnamed"],
    ["whole columns", "SUM(A:A)"],
    ["an array constant", "SUM({1,2})"],
    ["what is no formula", "SUM(column"],
    ["signs without end", "-".repeat(8000) + "1"],
    ["brackets without end", "(".repeat(4000) + "1" + ")".repeat(4000)],
  ])("is what nobody can be sure of: %s", (_, text) => {
    expect(arrayOf(text)).toEqual({ rows: 1, columns: 1 });
  });

  test.each(["@column", "@column*2", "RIG.CABLELOSS(column,single)", "single", "'S'!A1+D9"])(
    "is not what wants one cell, nor a call of ours: %s",
    (text) => expect(arrayOf(text)).toBeUndefined(),
  );
});

const OURS = /_xldudf_RIG_/i;

/** What is wrong with the formulas of a file, a line each. */
function complaints(bytes: Uint8Array): string[] {
  const { formulas, names, hasMetadata } = storedFormulas(bytes);
  const isMany = (cells: string): boolean => {
    const range = /^(?:.*!)?\$?[A-Z]{1,3}\$?\d/i.test(cells) ? cells : names.get(cells.toUpperCase());
    if (range === undefined) throw new Error(`${cells} is no name of the workbook`);
    const [from, to] = range.replace(/^.*!/, "").replaceAll("$", "").split(":");
    return to !== undefined && to !== from;
  };
  return formulas.flatMap(({ sheet, at, formula, array, dynamic }) => {
    const where = `${sheet}!${at} ${formula}`;
    if (array !== undefined) return dynamic && hasMetadata ? [] : [`not dynamic: ${where}`];
    if (OURS.test(formula)) return [`a call of ours without an array: ${where}`];
    return cutArguments(formula, isMany).map((what) => `${what} is cut: ${where}`);
  });
}

const arraysOf = (bytes: Uint8Array): string[] =>
  storedFormulas(bytes).formulas.flatMap(({ sheet, at, array }) => (array ? [`${sheet}!${at}`] : []));

const throughModel = (book: Book): Book => quietly(() => fromModel(loadLibrary(), openModel(book)));
const FACTS = { now: new Date("2026-03-05T14:07:59Z"), version: "9.8.7" };

const books = templates.flatMap(({ id, empty, demonstration }) => [
  [`${id}, empty`, empty] as const,
  [`${id}, demonstration`, demonstration] as const,
]);

describe.each(books)("%s", (_, make) => {
  const laidOut = make();
  const computed = recalculate(laidOut);
  const roads: readonly (readonly [string, () => Promise<Uint8Array>])[] = [
    ["as laid out", () => writeXlsx(laidOut)],
    ["computed", () => writeXlsx(computed)],
    ["saved from the desk's model", () => writeXlsx(throughModel(laidOut))],
    ["read from a file and written again", async () => writeXlsx(await readXlsx(await writeXlsx(computed)))],
    [
      "read from a file, computed and written again",
      async () => writeXlsx(recalculate(await readXlsx(await writeXlsx(computed)))),
    ],
    ["office copy", () => writeXlsx(copyOf(computed, "office", FACTS), { frozen: true })],
    [
      "office copy of a file",
      async () =>
        writeXlsx(copyOf(await readXlsx(await writeXlsx(computed)), "office", FACTS), { frozen: true }),
    ],
    ["sealed copy", () => writeXlsx(copyOf(computed, "sealed", FACTS), { sealed: true })],
  ];

  test.each(roads)("%s: nothing is cut", async (road, write) => {
    const bytes = await write();
    expect(complaints(bytes)).toEqual([]);
    if (!road.includes("copy")) expect(arraysOf(bytes)).toEqual(arraysOf(await writeXlsx(laidOut)));
  });
});

describe("training", () => {
  const set = trainingSets[0]!;
  const trainees = [{ name: "Anna", occurrence: 1 }];
  const TRAINING: readonly (readonly [string, () => Book])[] = [
    ...trainingSets.map((one) => [`sheet: ${one.id}`, () => traineeSheet(one, 5, trainees[0]!)] as const),
    ["key", () => trainerKey({ set, seed: 5, trainees })],
  ];
  test.each(TRAINING)("%s: nothing is cut", async (_, make) => {
    expect(complaints(await writeXlsx(make()))).toEqual([]);
  });
});

describe("formulas of a person's own", () => {
  /** Three rows of figures, named, and a formula below them. */
  const withFormula = (formula: string): Book => {
    const sheet = emptySheet("Own");
    sheet.rowCount = sheet.columnCount = 12;
    for (const [at, value] of Object.entries({ A1: 3, A2: -5, A3: 8, B1: 1, B2: 2, B3: 3 })) {
      sheet.cells[at] = { value };
    }
    sheet.cells.D9 = { formula };
    const book = bookOf(sheet);
    book.names.push({ name: "runs", sheet: "Own", range: "A1:A3" });
    return book;
  };
  const stored = (bytes: Uint8Array) => storedFormulas(bytes).formulas.find(({ at }) => at === "D9")!;

  test.each([
    // Cut, each would show the one value in its row, #VALUE! below the rows, or a false "ok".
    ["MAX(IF(runs>0,runs))", true],
    ["SUM(A1:A3*B1:B3)", true],
    ["SUMPRODUCT(IFERROR(runs>2,1)*1)", true],
    ['IF(SUM(IF(runs<0,1,0))=0,"ok","look")', true],
    ["SUM(runs)", false],
    ["SUM(A1:A3)*2+MAX(runs,B1)", false],
    ["A1*2+B1", false],
  ])("typed on the desk, %s: stored as an array %s", async (formula, isArray) => {
    const bytes = await writeXlsx(throughModel(withFormula(formula)));
    expect(complaints(bytes)).toEqual([]);
    expect(stored(bytes).array).toBe(isArray ? "D9" : undefined);
  });

  test("a plain formula of a file stays plain where nothing computes it anew, an array stays an array", async () => {
    for (const spill of [undefined, { rows: 1, columns: 1 }]) {
      const book = withFormula("MAX(IF(runs>0,runs))");
      book.sheets[0]!.cells.D9 = { ...book.sheets[0]!.cells.D9, ...(spill && { spill }) };
      book.sheets[0]!.results.D9 = 8;
      const file = await writeXlsx(book);
      const again = await writeXlsx(await readXlsx(file));
      for (const bytes of [file, again]) expect(stored(bytes).array).toBe(spill && "D9");
    }
  });

  test("stored plain by an earlier version: an array once it was computed anew", async () => {
    const file = await writeXlsx(withFormula("MAX(IF(runs>0,runs))"));
    expect(stored(file).array).toBeUndefined();
    expect(stored(await writeXlsx(recalculate(await readXlsx(file)))).array).toBe("D9");
  });

  test("entered in Excel, where what is set as a formula spills: the file has it as an array", () =>
    inExcel({}, async (excel) => {
      excel.state.open(withFormula("A1"));
      await excel.choose("Own", "D9");
      await new ExcelHost().enterFormula("MAX(IF(runs>0,runs))");
      expect(stored(await writeXlsx(excel.book())).array).toBe("D9");
    }));
});
