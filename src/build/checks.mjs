/**
 * `npm run checks`: runs the tests and prints, for each sheet function, how
 * many values from outside it is held to, where they come from and the worst
 * residual; then plainly which functions have few, and which rest on memory or
 * common practice.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { install, project } from "./install.mjs";
import { functionNames } from "./list-functions.mjs";

const FEW = 3;
const MEMORY = "from memory";
const PRACTICE = "common practice, no source";
const SHORT = {
  published: "published",
  "reference library": "library",
  derivation: "by hand",
  [MEMORY]: "memory",
  [PRACTICE]: "practice",
};

/** @returns what the tests wrote down: a line for each group of rows against one source */
function ledgerOfTests() {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-checks-"));
  const ledger = path.join(folder, "ledger.jsonl");
  try {
    const jest = path.join(project, "node_modules", "jest", "bin", "jest.js");
    const { status } = spawnSync(
      process.execPath,
      [
        jest,
        "tests/engine",
        "tests/functions",
        "--silent",
        "--reporters",
        path.join(project, "tests/support/closingLine.cjs"),
      ],
      {
        cwd: project,
        stdio: ["ignore", "ignore", "inherit"],
        env: { ...process.env, RIGSHEET_CHECKS_LEDGER: ledger },
      },
    );
    const lines = readFileSync(ledger, "utf8").split("\n").filter(Boolean);
    return { passed: status === 0, groups: lines.map((line) => JSON.parse(line)) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The functions that a group of rows stands for: those that its heading names. */
const namedIn = (what, known) => (what.match(/[A-Z][A-Z0-9]{2,}/g) ?? []).filter((word) => known.has(word));

/** @returns for each function its values from outside */
export function tally(names, groups) {
  const known = new Set(names);
  const tallies = new Map(
    names.map((name) => [name, { name, rows: 0, bases: new Map(), sources: new Set(), worst: undefined }]),
  );
  const values = new Map(names.map((name) => [name, new Set()]));
  // Examples last: one that repeats the value of another check is not a value more.
  for (const group of [...groups].sort((a, b) => Number(a.example === true) - Number(b.example === true))) {
    for (const name of namedIn(group.what, known)) {
      const seen = values.get(name);
      const rows = group.example ? group.values.filter((value) => !isIn(value, seen)).length : group.rows;
      for (const value of group.values) seen.add(value);
      add(tallies.get(name), group, rows);
    }
  }
  return [...tallies.values()];
}

/** An example shows fewer digits than the check that it was taken from. */
const isIn = (value, seen) =>
  [...seen].some(
    (other) =>
      other === value || (typeof value === "number" && Math.abs(other - value) <= 0.005 * Math.abs(value)),
  );

function add(one, { basis, source, worst, limit, unit, at }, rows) {
  one.rows += rows;
  one.sources.add(source);
  if (rows > 0) one.bases.set(basis, (one.bases.get(basis) ?? 0) + rows);
  const share = worst === 0 ? 0 : worst / limit;
  if (!one.worst || share > one.worst.share) one.worst = { share, worst, limit, unit, at };
}

const digits = (value) => (value === 0 ? "0" : Number(value.toPrecision(2)).toString());

function printTable(tallies) {
  const lines = tallies.map(({ name, rows, bases, sources, worst }) => [
    name,
    String(rows),
    [...bases].map(([basis, count]) => `${count} ${SHORT[basis]}`).join(", "),
    worst ? `${digits(worst.worst)} of ${digits(worst.limit)} ${worst.unit}` : "",
    [...sources].join("; "),
  ]);
  const heads = ["function", "values", "basis", "worst residual of limit", "sources"];
  const widths = heads.map((head, column) =>
    column === heads.length - 1 ? 0 : Math.max(...[heads, ...lines].map((line) => line[column].length)),
  );
  for (const line of [heads, ...lines]) {
    console.log(
      line
        .map((cell, column) => cell.padEnd(widths[column]))
        .join("  ")
        .trimEnd(),
    );
  }
}

const listed = (heading, tallies, words) => {
  console.log(`\n${heading}`);
  for (const one of tallies) console.log(`  ${one.name}: ${words(one)}`);
  if (tallies.length === 0) console.log("  none");
};

function main() {
  install();
  const { passed, groups } = ledgerOfTests();
  const names = functionNames();
  const tallies = tally(names, groups);
  printTable(tallies);

  const weak = ({ bases }) => (bases.get(MEMORY) ?? 0) + (bases.get(PRACTICE) ?? 0);
  listed(
    `Functions with fewer than ${FEW} values from outside:`,
    tallies.filter(({ rows }) => rows < FEW),
    ({ rows }) => `${rows}`,
  );
  listed(
    "Functions held by nothing but memory or common practice:",
    tallies.filter((one) => one.rows > 0 && weak(one) === one.rows),
    ({ bases }) => [...bases.keys()].join(", "),
  );
  listed(
    "Functions held to memory or common practice among better sources:",
    tallies.filter((one) => weak(one) > 0 && weak(one) < one.rows),
    (one) => `${weak(one)} of ${one.rows}`,
  );
  const known = new Set(names);
  const others = groups.filter(({ what }) => namedIn(what, known).length === 0);
  listed(
    "Checks of parts that are no function of their own:",
    others.map((group) => ({ name: group.what, ...group })),
    ({ rows, source }) => `${rows} against ${source}`,
  );
  if (!passed)
    console.log("\nSome tests failed; run npm test to see which. The figures above are of those that ran.");
  process.exitCode = passed ? 0 : 1;
}

main();
