/** `npm run static`: the desk as a folder for any web server (dist/static), and as one file (dist/rigsheet.html). */
import { spawnSync } from "node:child_process";
import { rmSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "./build.mjs";
import { project } from "./install.mjs";
import { releaseLock, takeLock } from "./lock.mjs";

/** Each is written last of its kind. */
const ONE_FILE = path.join(project, "dist", "rigsheet.html");
const BUILT = path.join(project, "dist", "NOTICES.txt");

/**
 * Leaves what is newer than the build as it is: several processes may want it,
 * and one that reads it must find it whole.
 *
 * @returns whether it went well
 */
export async function writeStatic() {
  await takeLock();
  try {
    const made = statSync(ONE_FILE, { throwIfNoEntry: false });
    if (made && made.mtimeMs >= statSync(BUILT).mtimeMs) return true;
    const words = [path.join(project, "dist", "generate.js"), "--static", project];
    const { status } = spawnSync(process.execPath, words, { stdio: "inherit" });
    if (status !== 0) rmSync(ONE_FILE, { force: true });
    return status === 0;
  } finally {
    releaseLock();
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await build();
  if (!(await writeStatic())) process.exitCode = 1;
}
