/**
 * `npm run test:quick`: types, lint and format, and the tests of what needs
 * neither the calculation engine, nor a build, nor another program. With
 * `--changed` only what differs from the last commit, and then the tests of it
 * that need the engine too; other words go to the test runner.
 */
import { spawnSync } from "node:child_process";
import { install, project } from "./install.mjs";
import { writeFunctionList } from "./list-functions.mjs";
import { checks, test } from "./testSteps.mjs";

const CHANGED = "--changed";
const words = process.argv.slice(2);
const isChanged = words.includes(CHANGED);

/** @returns the files that were changed or added since the last commit */
function changedFiles() {
  const list = (...args) => {
    const { status, stdout, stderr } = spawnSync("git", args, { cwd: project, encoding: "utf8" });
    if (status !== 0) throw new Error(`What has changed is not known: ${stderr}`);
    return stdout.split("\0").filter(Boolean);
  };
  return [
    ...list("diff", "--name-only", "-z", "--diff-filter=d", "HEAD"),
    ...list("ls-files", "--others", "--exclude-standard", "-z"),
  ];
}

install();
writeFunctionList();
const steps = await checks(isChanged ? changedFiles() : undefined);
const which = isChanged
  ? ["--onlyChanged", "--passWithNoTests", "--selectProjects", "pure", "engine"]
  : ["--selectProjects", "pure"];
// The words first: --selectProjects takes all that follow it.
steps.push(test(...words.filter((word) => word !== CHANGED), ...which));
process.exitCode = steps.every(Boolean) ? 0 : 1;
