/** The steps of `npm test` and `npm run test:quick`, each a program of the project's own packages. */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { closingLine } from "./closingLine.cjs";
import { project } from "./install.mjs";

/** What each of the checks found out before is kept here, by the content of the files. */
const CACHES = path.join(project, "node_modules", ".cache");
const cached = (name) => path.join(CACHES, name);

const programOf = (script) => path.join(project, "node_modules", script);

/** Runs beside what goes on, and prints in one piece at its end. */
function runBeside(what, script, ...args) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [programOf(script), ...args], {
      cwd: project,
      stdio: ["ignore", "pipe", "pipe"],
    });
    const end = () => child.kill();
    process.once("exit", end);
    let printed = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8");
      stream.on("data", (part) => (printed += part));
    }
    child.on("close", (status) => {
      process.off("exit", end);
      console.log(`\n${what}: ${status === 0 ? "nothing to say" : "see below"}\n${printed}`.trimEnd());
      resolve(status === 0);
    });
  });
}

const types = (name, ...args) => [
  "typescript/bin/tsc",
  "--noEmit",
  "--incremental",
  "--tsBuildInfoFile",
  cached(`types/${name}.json`),
  ...args,
];

/**
 * Types, lint and format, one after the other: what runs beside them has the other core.
 * @param files those to look at, all where it is left out; types are always those of all
 * @returns whether each of them had nothing to say
 */
export async function checks(files = ["."]) {
  const found = [
    await runBeside("Types", ...types("all")),
    // What a browser loads, without Node's names: one that slips in is an unknown name.
    await runBeside("Types in a browser", ...types("browser", "-p", "tsconfig.browser.json")),
  ];
  if (files.length === 0) return found;
  const keep = ["--cache", "--cache-strategy", "content", "--cache-location"];
  const lint = ["--no-warn-ignored", "--no-error-on-unmatched-pattern", ...keep, cached("lint/")];
  const format = [
    "--check",
    "--ignore-unknown",
    "--no-error-on-unmatched-pattern",
    "--log-level",
    "warn",
    ...keep,
  ];
  return [
    ...found,
    await runBeside("Lint", "eslint/bin/eslint.js", ...lint, ...files),
    await runBeside("Format", "prettier/bin/prettier.cjs", ...format, cached("format"), ...files),
  ];
}

/** More files than these do not fail by chance. */
const MOST_TRIED_AGAIN = 3;
/** What waits for other programs can be held up by them; what only computes cannot. */
const CAN_BE_HELD_UP = ["browser", "built", "office"];

/**
 * Runs the tests, and prints last of all how many passed and failed. When few
 * files fail, each of which drives another program, they are tried once more by
 * themselves, and named: one that fails on a busy machine only is worth a look,
 * and is not worth an hour's run.
 *
 * @param words go to the test runner
 */
export function test(...words) {
  console.log("\nTests");
  const first = counted(words);
  if (!first) return false;
  const { failedFiles } = first;
  const again =
    words.length === 0 &&
    failedFiles.length > 0 &&
    failedFiles.length <= MOST_TRIED_AGAIN &&
    failedFiles.every(({ needs }) => CAN_BE_HELD_UP.includes(needs));
  if (!again) return told(first);
  const files = failedFiles.map(({ file }) => file);
  console.log(`\nFailed beside others, tried once more by themselves: ${files.join(", ")}`);
  const second = counted(["--runInBand", "--runTestsByPath", ...files]);
  if (!second) return told(first);
  const before = (count) => failedFiles.reduce((sum, one) => sum + one[count], 0);
  console.log(
    `\nFailed beside others${second.failed === 0 ? ", and passed by themselves" : ""}: ${files.join(", ")}`,
  );
  return told({
    passed: first.passed - before("passed") + second.passed,
    failed: first.failed - before("failed") + second.failed,
    skipped: first.skipped,
  });
}

function told(counts) {
  // The test runner prints its own summary to another stream; the count must come after all of it.
  console.log(`\n${closingLine(counts)}`);
  return counts.failed === 0;
}

/** @returns what a run of the tests came to; undefined where it did not come to an end */
function counted(words) {
  // Handed on to the workers: with room for what lives short, a quarter of the time goes that was its collector's.
  const room = "--max-semi-space-size=64";
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-tests-"));
  const counts = path.join(folder, "counts.json");
  const { status } = spawnSync(process.execPath, [room, programOf("jest/bin/jest.js"), ...words], {
    cwd: project,
    stdio: "inherit",
    env: { ...process.env, RIGSHEET_TEST_COUNTS: counts },
  });
  try {
    const found = JSON.parse(readFileSync(counts, "utf8"));
    // A run that fails for another reason than a test has failed all the same.
    return status !== 0 && found.failed === 0 ? { ...found, failed: 1, failedFiles: [] } : found;
  } catch {
    return undefined;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
