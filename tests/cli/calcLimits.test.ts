/**
 * Formulas at and beyond the limits. 390 of them were written by someone who had not seen the code, with values by
 * hand from mathematics (fixtures/formulas).
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
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
/** Where we judge differently, or the engine does, by the formula. */
const DIFFERENT = JSON.parse(readFileSync(path.join(FOLDER, "different.json"), "utf8")) as Record<
  string,
  string
>;

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

test("an outsider's formulas have their values, or an error, never a silent nought", () => {
  // Options of the command, and formulas over two lines, are other tests'.
  const asked = cases
    .map((one) => ({ one, formula: textOf(one).trim() }))
    .filter(
      ({ formula }) =>
        formula !== "" && formula !== "-" && !formula.startsWith("--") && !/[\r\n]/.test(formula),
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
