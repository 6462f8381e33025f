/** The steps of `npm test` and `npm run test:quick`, each a program of the project's own packages. */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
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

/**
 * Runs the tests, and prints last of all how many passed and failed.
 * @param words go to the test runner
 */
export function test(...words) {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-tests-"));
  const line = path.join(folder, "line");
  console.log("\nTests");
  const { status } = spawnSync(process.execPath, [programOf("jest/bin/jest.js"), ...words], {
    cwd: project,
    stdio: "inherit",
    env: { ...process.env, RIGSHEET_CLOSING_LINE: line },
  });
  try {
    // The test runner prints its own summary to another stream; the count must come after all of it.
    console.log(`\n${readFileSync(line, "utf8")}`);
    return status === 0;
  } catch {
    return false;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
