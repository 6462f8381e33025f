/**
 * Formulas at and beyond the limits. 390 of them were written by someone who had not seen the code, with values by
 * hand from mathematics (fixtures/formulas).
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { evaluator } from "../../src/cli/evaluated";
import { BUILD_MS, buildDesk } from "../hosts/desk/desk";

interface Wanted {
  readonly value?: unknown;
  readonly tol?: number;
  readonly error?: true;
  readonly refused?: true;
  readonly anyOf?: readonly Wanted[];
}
interface Case {
  readonly formula?: string;
  readonly make?: string;
  readonly expect: Wanted;
}

const FOLDER = path.join(__dirname, "..", "fixtures", "formulas");
const cases = JSON.parse(readFileSync(path.join(FOLDER, "formulas.json"), "utf8")) as Case[];
/** Where the grid library's own functions answer otherwise, or are not there, and where we judge differently. */
const DIFFERENT: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    [
      "FACT(170)",
      "FACT(0)",
      "COMBIN(52,5)",
      "COMBIN(1E9,2)",
      "QUOTIENT(-7,2)",
      "GCD(0,0)",
      'HEX2DEC("FFFFFFFFFF")',
      "ERROR.TYPE(1/0)",
      'UNICODE("€")',
      "UNICHAR(8364)",
    ].map((formula) => [formula, "the library has no such function, and says so"]),
  ),
  "ROUND(1.005,2)": "rounds the binary number; RIG.ROUNDMONEY is for money",
  "-2^2": "the power first, as in mathematics; write (-2)^2",
  "{1,2,3}+{1,2}": "the same answer; the fixture's error has no words",
  "{1+1}": "computed, where Excel refuses",
  'SEARCH("~*","a*")': "takes its text as it stands",
  'SEARCH("?b","ab")': "takes its text as it stands",
  '""+1': "an empty text counts as nought",
  'VALUE("")': "an empty text counts as nought",
  "CHAR(256)": "goes on beyond 255",
  '""""': "does not read a doubled quotation mark; an error says so",
  '"abc': "closes the text by itself",
  'RIG.DIAGNOSE({"R1"},{"H1"},{62,58},{62,"72,4x"})': "named as no reading instead of failing the whole",
};

const textOf = ({ formula, make }: Case): string => formula ?? (new Function(`return ${make}`)() as string);

interface Answer {
  readonly formula: string;
  readonly value?: unknown;
  readonly error?: string;
}

/** @returns whether the outcome is wanted; undefined where the case is judged by reading */
function fits(wanted: Wanted, outcome: Answer): boolean | undefined {
  if (wanted.anyOf) {
    const fitting = wanted.anyOf.map((one) => fits(one, outcome));
    return fitting.includes(true) || (fitting.includes(undefined) ? undefined : false);
  }
  const flat = (value: unknown): unknown[] => (Array.isArray(value) ? value.flat(2) : [value]);
  const failed =
    outcome.error !== undefined ||
    flat(outcome.value).some((one) => typeof one === "object" && one !== null && "error" in one);
  if (wanted.error || wanted.refused) return failed;
  if (!("value" in wanted)) return undefined;
  const [want, got] = [flat(wanted.value), flat(outcome.value)];
  return (
    want.length === got.length &&
    want.every((one, at) =>
      typeof one === "number" && typeof got[at] === "number"
        ? Math.abs(one - got[at]) <= (wanted.tol ?? 1e-9 * Math.max(1, Math.abs(one)))
        : one === got[at],
    )
  );
}

const COMMAND = path.join(__dirname, "..", "..", "dist", "rigsheet.js");

/** As people run it: the built command, within its bounds of time and memory. */
function answers(formulas: readonly string[]): Answer[] {
  const { stdout, stderr } = spawnSync(process.execPath, [COMMAND, "calc", "-"], {
    input: formulas.join("\n"),
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  // No stack, and nobody else's support, among the answers.
  expect(stderr).toBe("");
  expect(stdout).not.toMatch(/support ticket|odoo|node_modules/);
  return stdout
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Answer);
}

beforeAll(buildDesk, BUILD_MS);

/** Large arrays and texts are below; a lone half of a character can't be passed to a program. */
const isShort = (formula: string): boolean =>
  formula.length <= 200 &&
  !/SEQUENCE|MUNIT|REPT|ARRAY|COUNTIF|EXPAND/i.test(formula) &&
  !/[\r\n\uD800-\uDFFF]/.test(formula);

test("an outsider's formulas have their values, or an error, never a silent nought", () => {
  // Options of the command, and formulas over two lines, are other tests'.
  const asked = cases
    .map((one) => ({ one, formula: textOf(one).trim() }))
    .filter(
      ({ formula }) => formula !== "" && formula !== "-" && !formula.startsWith("--") && isShort(formula),
    );
  const found = answers(asked.map(({ formula }) => formula));
  expect(found.map(({ formula }) => formula)).toEqual(asked.map(({ formula }) => formula));
  const wrong: Record<string, string> = {};
  let judged = 0;
  for (const [at, { one, formula }] of asked.entries()) {
    const fitting = fits(one.expect, found[at]!);
    if (fitting === undefined) continue;
    judged++;
    if (!fitting)
      wrong[formula.slice(0, 120)] = JSON.stringify({ ...found[at], formula: undefined }).slice(0, 200);
  }
  process.stdout.write(
    `Formulas: ${judged - Object.keys(wrong).length} of ${judged} as their maker expects\n`,
  );
  if (process.env.SHOW) console.log(JSON.stringify(wrong, undefined, 1));
  expect(Object.keys(wrong).sort()).toEqual(Object.keys(DIFFERENT).sort());
}, 600_000);

describe("beyond the limits", () => {
  const BIG = 8192;
  test.each([
    ["5,000 terms", `1${"+1".repeat(5000)}`, /has 10001 characters; it may have up to 8192/],
    [
      "4,000 brackets",
      `${"(".repeat(4000)}1${")".repeat(4000)}`,
      /nested 4000 levels deep; it may be up to 64/,
    ],
    ["65 levels", `${"(".repeat(65)}1${")".repeat(65)}`, /nested 65 levels deep/],
    ["an overflow", "1E308*10", /too large for a number/],
    ["an overflowing power", "10^400", /too large for a number/],
  ])("%s: an error with its sentence, and exit 1", (_, formula, message) => {
    const { stdout, stderr, status } = spawnSync(process.execPath, [COMMAND, "calc", "-"], {
      input: formula,
      encoding: "utf8",
    });
    expect(status).toBe(1);
    expect(stderr).toBe("");
    expect((JSON.parse(stdout) as { message: string }).message).toMatch(message);
  });

  // How deep it can go depends on the processor that Node compiles for.
  test.each([
    ["signs without end", `${"-".repeat(BIG - 2)}1`, 1],
    ["percents without end", `1${"%".repeat(BIG - 2)}`, 0],
  ])("%s: an error with its sentence and exit 1, or what it comes to", (_, formula, value) => {
    const { stdout, stderr, status } = spawnSync(process.execPath, [COMMAND, "calc", "-"], {
      input: formula,
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    const said = JSON.parse(stdout) as { message?: string; value?: number };
    if (status === 0) expect(said.value).toBe(value);
    else {
      expect(status).toBe(1);
      expect(said.message).toMatch(/too many parts inside one another|given up/);
    }
  });

  test("64 levels of brackets, and an array of 40,000 cells, are computed", () => {
    const [nested, sum] = answers([`${"(".repeat(64)}7${")".repeat(64)}`, "SUM(SEQUENCE(200,200))"]);
    expect(nested!.value).toBe(7);
    // n(n + 1)/2.
    expect(sum!.value).toBe((40_000 * 40_001) / 2);
  });

  test("what runs on is given up, and the next formula is computed", async () => {
    const { evaluate, close } = evaluator(path.join(path.dirname(COMMAND), "calcWorker.js"), 5);
    try {
      expect(await evaluate("1+1")).toBe(2);
      const many = `COUNTIF({"${"a".repeat(60)}b"},"${"*a".repeat(40)}c")`;
      for (const formula of ["SUM(SEQUENCE(10000,10000))", many]) {
        const outcome = await evaluate(formula);
        // Given up by time or by memory, or answered in time: never a wrong figure, never a crash.
        if (typeof outcome === "object")
          expect(JSON.stringify(outcome)).toMatch(/given up|could not be computed/);
        else expect(outcome).toBe(formula === many ? 0 : 50_000_000 * 100_000_001);
      }
      expect(await evaluate("2+2")).toBe(4);
    } finally {
      await close();
    }
  }, 120_000);
});
