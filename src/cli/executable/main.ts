/** The first thing that a single executable runs: it puts its files into a folder and hands over to the command there. */
import { readSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { carriedFiles } from "./carried";
import { filesFolder, markUsed, usualPlaces } from "./filesFolder";
import { wordsFor } from "./wordsFor";

const given = process.argv.slice(2);
process.argv.splice(2, given.length, ...wordsFor(given));

const found = filesFolder(carriedFiles(), usualPlaces());
if (given.length === 0) keepWindowOpen();
if ("trouble" in found) {
  process.stderr.write(`${found.trouble}\n`);
  process.exitCode = 1;
} else {
  if (found.kept) useDaily(found.folder);
  else removeAtTheEnd(found.folder);
  const command = path.join(found.folder, "dist", "rigsheet.js");
  createRequire(command)(command);
}

/** A desk may run for weeks, and a newer version takes away what has not been used for long. */
function useDaily(folder: string): void {
  const DAY_MS = 86_400_000;
  setInterval(() => markUsed(folder), DAY_MS).unref();
}

function removeAtTheEnd(folder: string): void {
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  for (const [signal, number] of [
    ["SIGINT", 2],
    ["SIGTERM", 15],
    ["SIGHUP", 1],
  ] as const)
    process.once(signal, () => {
      // The desk has its own way of ending.
      if (process.listenerCount(signal) === 0) process.exit(128 + number);
    });
}

/** A window that Windows opened for a double click closes with the program, and takes the sentence along. */
function keepWindowOpen(): void {
  if (process.platform !== "win32" || !process.stdin.isTTY) return;
  process.once("exit", (code) => {
    if (code === 0) return;
    process.stderr.write("Press Enter to close this window.\n");
    try {
      readSync(0, Buffer.alloc(1));
    } catch {
      // Nobody is there to press it.
    }
  });
}
