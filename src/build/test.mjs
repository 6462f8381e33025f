/**
 * `npm test`: installs what is missing, builds and beside that checks types and
 * style, then runs every test that this machine can run. Words after it go to
 * the test runner: `npm test -- tests/engine`.
 */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "./build.mjs";
import { install, project } from "./install.mjs";
import { writeFunctionList } from "./list-functions.mjs";

const words = process.argv.slice(2);

function run(what, script, ...args) {
  console.log(`\n${what}`);
  const { status } = spawnSync(process.execPath, [path.join(project, "node_modules", script), ...args], {
    cwd: project,
    stdio: "inherit",
  });
  return status === 0;
}

/** Runs beside what goes on, and prints in one piece at its end. */
function runBeside(what, script, ...args) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [path.join(project, "node_modules", script), ...args], {
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

/** One after the other: the build has the other core. */
async function checks() {
  return [
    await runBeside("Types", "typescript/bin/tsc", "--noEmit"),
    // What a browser loads, without Node's names: one that slips in is an unknown name.
    await runBeside("Types in a browser", "typescript/bin/tsc", "--noEmit", "-p", "tsconfig.browser.json"),
    await runBeside("Lint", "eslint/bin/eslint.js", "."),
    await runBeside("Format", "prettier/bin/prettier.cjs", "--check", "--log-level", "warn", "."),
  ];
}

install();
// All of them read it.
writeFunctionList();
const [steps] = await Promise.all([words.length > 0 ? [true] : checks(), build()]);
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
