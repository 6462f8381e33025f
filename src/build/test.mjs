/**
 * `npm test`: installs what is missing, checks types and style, builds, and
 * runs every test that this machine can run. Words after it go to the test
 * runner: `npm test -- tests/engine`.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "./build.mjs";
import { install, project } from "./install.mjs";

const words = process.argv.slice(2);

function run(what, script, ...args) {
  console.log(`\n${what}`);
  const { status } = spawnSync(process.execPath, [path.join(project, "node_modules", script), ...args], {
    cwd: project,
    stdio: "inherit",
  });
  return status === 0;
}

install();
await build();
const steps =
  words.length > 0
    ? [true]
    : [
        run("Types", "typescript/bin/tsc", "--noEmit"),
        run("Lint", "eslint/bin/eslint.js", "."),
        run("Format", "prettier/bin/prettier.cjs", "--check", "--log-level", "warn", "."),
      ];
const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-tests-"));
process.env.RIGSHEET_CLOSING_LINE = path.join(folder, "line");
steps.push(run("Tests", "jest/bin/jest.js", ...words));
// The test runner prints its own summary to another stream; the count must come after all of it.
try {
  console.log(`\n${readFileSync(process.env.RIGSHEET_CLOSING_LINE, "utf8")}`);
} catch {
  steps.push(false);
}
rmSync(folder, { recursive: true, force: true });
process.exitCode = steps.every(Boolean) ? 0 : 1;
