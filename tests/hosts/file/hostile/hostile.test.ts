/** Each file of the corpus in a process of its own: a named refusal or a correct reading, within memory, no write, no network. */
import { execFile } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import ts from "typescript";
import type { JobInputs } from "../../../../src/workbooks/definition";
import { troubles } from "../../../../src/hosts/file/fileTrouble";
import {
  MAX_ENTRIES,
  MAX_FILE_BYTES,
  MAX_NAMES,
  MAX_PART_BYTES,
  MAX_SHEETS,
  MAX_STRINGS,
  MAX_STYLES,
  MAX_UNPACKED_BYTES,
} from "../../../../src/hosts/file/limits";
import { runCommand } from "../../../support/fakeConsole";
import { corpus } from "./corpus";

/** What the files are held to, alone on an idle machine; measured values are printed. */
const BUDGET_MS = 1000;
const BUDGET_MEBIBYTES = 250;
/** A loaded machine is slower; a bomb that goes off takes minutes. */
const PATIENCE = 10;

const project = path.join(__dirname, "../../../..");
const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-hostile-"));
const measured: string[] = [];

/** The sources as plain JavaScript, so that a child measures the reader and not a compiler. */
function compile(from: string, to: string): void {
  mkdirSync(to, { recursive: true });
  for (const entry of readdirSync(from, { withFileTypes: true })) {
    const source = path.join(from, entry.name);
    if (entry.isDirectory()) compile(source, path.join(to, entry.name));
    else if (entry.name.endsWith(".ts")) {
      const options = {
        module: ts.ModuleKind.CommonJS,
        target: ts.ScriptTarget.ES2022,
        esModuleInterop: true,
      };
      const { outputText } = ts.transpileModule(readFileSync(source, "utf8"), { compilerOptions: options });
      writeFileSync(path.join(to, entry.name.replace(/\.ts$/, ".js")), outputText);
    }
  }
}

beforeAll(() => {
  compile(path.join(project, "src"), path.join(folder, "src"));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  console.info(measured.join("\n"));
});

interface Answer {
  readonly trouble?: string;
  readonly sentence?: string;
  readonly ms: number;
  readonly computedMs?: number;
  readonly peakMebibytes: number;
  readonly polluted: boolean;
  readonly sheet?: string;
  readonly names?: number;
  readonly cells?: readonly [string, unknown][];
  readonly inputs?: JobInputs;
}

const permission =
  Number(process.versions.node.split(".")[0]) < 24 ? "--experimental-permission" : "--permission";

async function readInChild(file: string, isJob: boolean): Promise<Answer> {
  const words = [permission, "--allow-fs-read=*", "--no-warnings", path.join(__dirname, "child.cjs")];
  const { stdout } = await promisify(execFile)(
    process.execPath,
    [...words, path.join(folder, "src"), file, isJob ? "job" : "read"],
    {
      env: { ...process.env, NODE_PATH: path.join(project, "node_modules") },
      maxBuffer: 2 ** 26,
      timeout: 50_000,
    },
  );
  return JSON.parse(stdout) as Answer;
}

/** A blank of the demonstration is no value of a workbook. */
const filled = (job: JobInputs, block: string) =>
  job.blocks![block]!.map((row) =>
    Object.fromEntries(Object.entries(row).filter(([, value]) => value !== "")),
  );

/** Each cap as the sentence says it that refuses a file for it. */
const REFUSALS: readonly (readonly [cap: string, sentence: string])[] = [
  ["64 MiB", troubles.tooLarge(MAX_FILE_BYTES + 1, MAX_FILE_BYTES)],
  ["512 MiB", troubles.inflated(MAX_UNPACKED_BYTES + 1, MAX_UNPACKED_BYTES)],
  ["128 MiB", troubles.inflated(MAX_PART_BYTES + 1, MAX_PART_BYTES)],
  ["200 times", troubles.suspiciousRatio("x.xml")],
  ["2000", troubles.tooManyParts(MAX_ENTRIES + 1, MAX_ENTRIES)],
  ["250", troubles.tooManySheets(MAX_SHEETS + 1, MAX_SHEETS)],
  ["200000 rows and 2000 columns", troubles.sheetTooLarge("S", 1, 1)],
  ["5000000", troubles.tooManyCells("S")],
  ["20000000", troubles.tooManySlots()],
  ["250000", troubles.tooManyTexts(MAX_STRINGS + 1, MAX_STRINGS)],
  ["20000", troubles.tooManyNames(MAX_NAMES + 1, MAX_NAMES)],
  ["65490", troubles.tooManyStyles(MAX_STYLES + 1, MAX_STYLES)],
];

test.each(REFUSALS)("the help and the refusal name the same cap: %s", async (cap, sentence) => {
  const { out } = await runCommand(["price", "--help"]);
  expect(out.replace(/\s+/g, " ")).toContain(cap);
  expect(sentence.replace(/\.$/, "")).toContain(cap);
});

test("the corpus has at least 24 files of different names", () => {
  expect(new Set(corpus.map(({ name }) => name)).size).toBe(corpus.length);
  expect(corpus.length).toBeGreaterThanOrEqual(24);
});

test.each(corpus.map((one) => [one.name, one] as const))("%s", async (name, hostile) => {
  const file = path.join(folder, "input.xlsx");
  writeFileSync(file, await hostile.bytes());
  const answer = await readInChild(file, hostile.job !== undefined);
  measured.push(
    `${name.padEnd(52)} ${answer.ms.toFixed(0).padStart(6)} ms of ${BUDGET_MS}  ${answer.peakMebibytes.toFixed(0).padStart(5)} MiB of ${BUDGET_MEBIBYTES}  ${answer.sentence ? "refused" : "read"}`,
  );
  if (hostile.refused === undefined) {
    expect(answer.sentence).toBeUndefined();
    if (hostile.cells) expect(Object.fromEntries(answer.cells!)).toMatchObject(hostile.cells);
    if (hostile.sheet) expect(answer.sheet).toBe(hostile.sheet);
    if (hostile.names !== undefined) expect(answer.names).toBe(hostile.names);
    if (hostile.job) {
      expect(answer.inputs!.fields).toEqual(hostile.job.fields);
      expect(answer.inputs!.blocks!.rooms).toEqual(filled(hostile.job, "rooms"));
      expect(answer.inputs!.blocks!.cables).toEqual(filled(hostile.job, "cables"));
    }
  } else {
    expect(answer).toMatchObject({ trouble: "FileTrouble" });
    expect(answer.sentence).toContain(hostile.refused);
  }
  expect(answer.polluted).toBe(false);
  expect(answer.ms).toBeLessThan(BUDGET_MS * PATIENCE);
  // The spreadsheet library that a job is computed with comes on top of the reader.
  expect(answer.peakMebibytes).toBeLessThan(BUDGET_MEBIBYTES * (hostile.job ? 2 : 1));
});
