/**
 * `npm test`: installs what is missing, checks types and style, builds, and
 * runs every test that this machine can run. Words after it go to the test
 * runner: `npm test -- tests/engine`.
 */
import { spawnSync } from "node:child_process";
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
steps.push(run("Tests", "jest/bin/jest.js", ...words));
process.exitCode = steps.every(Boolean) ? 0 : 1;
