/**
 * `npm run bench -- review`: the command over 1, 100 and 1,000 workbooks of 24
 * outlets, against just reading as many. `npm run bench -- hostile`: time and
 * memory of each file of the hostile corpus, as its tests measure them.
 */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import path from "node:path";
import { readXlsx } from "../hosts/file/readXlsx";
import { writeXlsx } from "../hosts/file/writeXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import { layOut } from "../workbooks/layOut";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { guestHouse } from "../workbooks/multiRoom/guestHouse";

const COUNTS = [1, 100, 1000];
/** Workbooks that differ, so that nothing is found ready from the last one. */
const KINDS = 8;
const POLL_MS = 50;
const BUDGET_MEBIBYTES = 200;

const project = path.join(process.argv[1]!, "..", "..");

/** Prints a line for each count. */
export async function benchReview(): Promise<void> {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-bench-"));
  try {
    const kinds = await Promise.all(Array.from({ length: KINDS }, (_, kind) => workbook(kind)));
    process.stdout.write(`${availableParallelism()} cores, a worker on each from 6 files on\n`);
    let made = 0;
    for (const count of COUNTS) {
      for (; made < count; made++)
        writeFileSync(path.join(folder, `job-${made + 1}.xlsx`), kinds[made % KINDS]!);
      const reading = await readAll(folder);
      const { ms, peakMebibytes } = await reviewed(folder);
      const peak = peakMebibytes === undefined ? "memory not known here" : `${peakMebibytes.toFixed(0)} MB`;
      process.stdout.write(
        `review, ${String(count).padStart(4)} workbooks ${(ms / 1000).toFixed(1).padStart(7)} s  ${(ms / reading).toFixed(1).padStart(5)} × just reading them, one after another (${(reading / 1000).toFixed(2)} s)  at most ${peak}${count === 1 ? `  budget 1 s and ${BUDGET_MEBIBYTES} MB, Node's start included` : ""}\n`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The guest house with a margin and a first run of its own. */
const workbook = async (kind: number): Promise<Uint8Array> =>
  writeXlsx(
    recalculate(
      layOut(multiRoom, {
        fields: { ...guestHouse.fields, site_margin: 0.2 + kind / 100 },
        blocks: {
          ...guestHouse.blocks,
          rooms: guestHouse.blocks!.rooms!.map((row, index) =>
            index === 0 ? { ...row, run: 9 + kind } : row,
          ),
        },
      }),
    ),
  );

async function readAll(folder: string): Promise<number> {
  const start = performance.now();
  for (const name of readdirSync(folder)) await readXlsx(readFileSync(path.join(folder, name)));
  return performance.now() - start;
}

/** The command in a process of its own, whose peak the system keeps; it is asked until the end. */
async function reviewed(folder: string): Promise<{ ms: number; peakMebibytes?: number }> {
  const start = performance.now();
  const child = spawn(
    process.execPath,
    [path.join(project, "dist", "rigsheet.js"), "review", folder, "--json"],
    { stdio: ["ignore", "ignore", "inherit"] },
  );
  let peakMebibytes: number | undefined;
  const poll = setInterval(() => (peakMebibytes = peakOf(child.pid) ?? peakMebibytes), POLL_MS);
  const code = await new Promise<number | null>((resolve) => child.once("exit", resolve));
  clearInterval(poll);
  if (code !== 0 && code !== 1) throw new Error(`the review ended with ${code}`);
  return { ms: performance.now() - start, peakMebibytes };
}

function peakOf(pid: number | undefined): number | undefined {
  try {
    const kibibytes = /^VmHWM:\s*(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
    return kibibytes === undefined ? undefined : Number(kibibytes) / 1024;
  } catch {
    // Not Linux, or it has just ended.
    return undefined;
  }
}

/** The corpus is made by a script in the tests, so the tests measure it. */
export function benchHostile(): void {
  const jest = path.join(project, "node_modules", "jest", "bin", "jest.js");
  const { stdout, stderr } = spawnSync(process.execPath, [jest, "tests/hosts/file/hostile", "--runInBand"], {
    cwd: project,
    encoding: "utf8",
    maxBuffer: 2 ** 26,
  });
  const lines = `${stdout}${stderr}`.split("\n").filter((line) => /ms of \d+ .*MiB of/.test(line));
  if (lines.length === 0) throw new Error("the hostile files were not measured; run their tests to see why");
  process.stdout.write(`${lines.map((line) => line.trim()).join("\n")}\n`);
}
