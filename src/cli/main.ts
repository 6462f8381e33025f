/** Runs the command with the process's own words and streams. */
import { text } from "node:stream/consumers";
import { run } from "./run";

// A reader that stops early (`rigsheet calc - | head`) is no fault of ours.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
});

void run(process.argv.slice(2), {
  out: (line) => process.stdout.write(`${line}\n`),
  err: (line) => process.stderr.write(`${line}\n`),
  ...(process.stderr.isTTY && { progress: (words) => void process.stderr.write(`\r\x1b[K${words}`) }),
  readInput: () => text(process.stdin),
}).then((code) => {
  process.exitCode = code;
});
