/**
 * Lets one process at a time install and build: two at once would take each
 * other's files away. The lock names its process, so that one left by a process
 * that was killed is seen as such.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { project } from "./install.mjs";

const LOCK = path.join(project, "dist", ".lock");
const TRY_AGAIN_MS = 200;

let held = false;

export async function takeLock() {
  mkdirSync(path.dirname(LOCK), { recursive: true });
  while (!held) {
    try {
      writeFileSync(LOCK, String(process.pid), { flag: "wx" });
      held = true;
      process.once("exit", releaseLock);
    } catch (error) {
      if (error.code !== "EEXIST") throw error;
      if (isLeftBehind()) rmSync(LOCK, { force: true });
      else await wait(TRY_AGAIN_MS);
    }
  }
}

export function releaseLock() {
  if (!held) return;
  held = false;
  rmSync(LOCK, { force: true });
}

function isLeftBehind() {
  let pid;
  try {
    pid = Number(readFileSync(LOCK, "utf8"));
  } catch {
    return false; // Released just now.
  }
  if (!pid) return false; // Being written just now.
  try {
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return error.code === "ESRCH";
  }
}
