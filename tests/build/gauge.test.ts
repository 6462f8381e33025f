/** The gauge's own parts: what it draws, who judges, and how it counts. */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";

interface Mutant {
  readonly file: string;
  readonly mutator: string;
  readonly replacement: string;
  readonly location: Record<"start" | "end", { readonly line: number; readonly column: number }>;
}
interface Found {
  readonly file: string;
  readonly at: number;
  readonly line: string;
  readonly from: string;
  readonly to: string;
  readonly status: string;
}
interface Figures {
  readonly caught: number;
  readonly counted: number;
  readonly leftOut: number;
  readonly open: readonly Found[];
}
type Sources = ReadonlyMap<string, string>;

const { folders, judgesOf } = jest.requireActual<{
  folders: string[];
  judgesOf: (folder: string) => string[];
}>("../../src/build/gauge/folders.cjs");
const { placeOf, runsInTests, sample } = jest.requireActual<{
  placeOf: (mutant: Mutant) => string;
  runsInTests: (mutant: Mutant, text: string) => boolean;
  sample: (mutants: readonly Mutant[], sources: Sources, seed: number, size: number) => Mutant[];
}>("../../src/build/gauge/sample.cjs");
const { figures, foundIn, told } = jest.requireActual<{
  figures: (found: readonly Found[], judged: readonly object[]) => Figures;
  foundIn: (
    results: readonly object[],
    drawn: readonly Mutant[],
    sources: Sources,
    project: string,
  ) => Found[];
  told: (folder: string, counts: Figures) => string[];
}>("../../src/build/gauge/report.cjs");

const root = path.join(__dirname, "../..");
const FILE = "src/engine/made.ts";
/** A hundred functions, each with one `+` that can become a `-`. */
const lines = Array.from({ length: 100 }, (_, at) => `export const f${at} = (a: number) => a + ${at};`);
const text = lines.join("\n");

const mutantsOf = (source: string) =>
  source.split("\n").flatMap((line, at) => {
    const column = line.indexOf("a + ");
    if (column < 0) return [];
    const location = { start: { line: at, column }, end: { line: at, column: line.length - 1 } };
    return [
      {
        file: FILE,
        mutator: "ArithmeticOperator",
        replacement: line.slice(column, -1).replace("+", "-"),
        location,
      },
    ];
  });
const drawn = (source: string, seed: number, size = 20) =>
  sample(mutantsOf(source), new Map([[FILE, source]]), seed, size);
const replaced = (mutants: readonly { replacement: string }[]) =>
  mutants.map(({ replacement }) => replacement);

describe("a sample", () => {
  test("is the same for the same seed, and another for another", () => {
    const first = replaced(drawn(text, 1));
    expect(new Set(first).size).toBe(20);
    expect(replaced(drawn(text, 1))).toEqual(first);
    const second = replaced(drawn(text, 2));
    expect(second).not.toEqual(first);
    // Two of 20 from 100 share 4 on average, by the hypergeometric distribution; 13 or more have a chance below 1 in a million.
    expect(second.filter((one) => first.includes(one)).length).toBeLessThan(13);
  });

  test("stays the same when a line is put before it", () => {
    expect(replaced(drawn(`// a line more\n${text}`, 1))).toEqual(replaced(drawn(text, 1)));
  });

  test("is all where there are fewer", () => {
    expect(replaced(drawn(text, 1, 500)).sort()).toEqual(replaced(mutantsOf(text)).sort());
  });

  test("tells equal changes of one file apart", () => {
    const same = "export const f = (a: number) => a + 1;\nexport const g = (a: number) => a + 1;";
    const both = drawn(same, 1);
    expect(both.map(({ location }) => location.start.line).sort()).toEqual([0, 1]);
    expect(new Set(both.map(placeOf)).size).toBe(2);
  });
});

test.each([
  ["a declaration's word", 'export const name = declare({ unit: "dB" });', '"dB"', false],
  ["what a function gives", "const f = (a: number) => a + 1;", "a + 1", true],
  ["what a function is", "const f = (a: number) => a + 1;", "(a: number) => a + 1", false],
  ["a function's whole body", "function f() { return 1; }", "{ return 1; }", true],
  ["a parameter's default", "function f(a = 1 + 2) { return a; }", "1 + 2", false],
  ["within a declaration's function", 'declare({ compute: (a) => read(a, "x") });', '"x"', true],
])("%s: runs in a test?", (_what, source, part, expected) => {
  const column = source.indexOf(part);
  const location = { start: { line: 0, column }, end: { line: 0, column: column + part.length } };
  expect(runsInTests({ file: FILE, mutator: "", replacement: "", location }, source)).toBe(expected);
});

describe("judges", () => {
  test.each(folders)("of %s are tests that are there, and none that sees any change", (folder) => {
    const judges = judgesOf(folder);
    expect(judges.length).toBeGreaterThan(2);
    for (const file of judges) expect(existsSync(path.join(root, file))).toBe(true);
    expect(judges.filter((file) => /architecture|generated files|playwright/.test(file))).toEqual([]);
    for (const file of judges) {
      expect(readFileSync(path.join(root, file), "utf8")).not.toMatch(/"playwright-core"|withLibreOffice\(/);
    }
  });

  test("of the engine are its own tests and those of the functions", () => {
    const judges = judgesOf("engine");
    expect(judges).toEqual(
      expect.arrayContaining(["tests/engine/signal/cables.test.ts", "tests/functions/signal.test.ts"]),
    );
    // Each of these alone would make a run of hours.
    expect(
      judges.filter((file) => /everyFunction|moneyTies|diagnoseJobs|diagnosis.diagnose/.test(file)),
    ).toEqual([]);
    expect(judgesOf("functions")).toContain("tests/functions/everyFunction.test.ts");
  });
});

describe("figures", () => {
  const place = (at: number) => {
    const column = lines[at]!.indexOf("a + ");
    return { start: { line: at, column }, end: { line: at, column: lines[at]!.length - 1 } };
  };
  const mutants = [0, 1, 2, 3, 4].map((at) => ({
    file: FILE,
    mutator: "ArithmeticOperator",
    replacement: `a - ${at}`,
    location: place(at),
  }));
  const statuses = ["Killed", "Survived", "Timeout", "NoCoverage", "CompileError"];
  /** As the tester reports them, counted from 1. */
  const results = mutants.map(({ file, mutator, replacement, location: { start, end } }, at) => ({
    fileName: `/somewhere/${file}`,
    mutatorName: mutator,
    replacement,
    status: statuses[at]!,
    location: {
      start: { line: start.line + 1, column: start.column + 1 },
      end: { line: end.line + 1, column: end.column + 1 },
    },
  }));
  const found = foundIn(results, mutants, new Map([[FILE, text]]), "/somewhere");

  test("name each mutant by its line, and count what was caught of what was tried", () => {
    expect(found[1]).toEqual({
      file: FILE,
      at: 2,
      line: lines[1],
      from: "a + 1",
      to: "a - 1",
      status: "Survived",
    });
    const { caught, counted, open, leftOut } = figures(found, []);
    expect({ caught, counted, leftOut }).toEqual({ caught: 2, counted: 4, leftOut: 1 });
    expect(open.map(({ to }) => to)).toEqual(["a - 1", "a - 3"]);
  });

  test("a judged survivor is not open, and not caught either; one that is caught is told", () => {
    const judge = (at: number) => ({
      file: FILE,
      line: lines[at]!,
      from: `a + ${at}`,
      to: `a - ${at}`,
      why: "made up",
    });
    const counts = figures(found, [judge(1), judge(0)]);
    expect(counts).toMatchObject({ caught: 2, counted: 4, equivalent: 1 });
    expect(counts.open.map(({ to }) => to)).toEqual(["a - 3"]);
    const words = told("engine", counts).join("\n");
    expect(words).toContain("2 of 4 caught, 50.0 %; of the 2 others 1 are judged equivalent, 1 are not.");
    expect(words).toContain(`judged equivalent, and caught all the same: ${lines[0]}`);
  });
});
