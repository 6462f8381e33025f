/**
 * Files that are no export, and exports that somebody or something has harmed,
 * as thought up outside the project: each gets a sentence, and the shelf is as
 * it was but for whole jobs.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { unzipSync, zipSync } from "fflate";
import { FileTrouble } from "../../src/hosts/file/fileTrouble";
import { bringIn, exportOf } from "../../src/hosts/file/jobsArchive";
import { broughtInWords, type BringInReport } from "../../src/jobs/broughtInWords";
import { withPython } from "../support/tools";
import { bytesOn, newShelf, seenOn, threeJobs } from "./onShelf";

const FIXTURES = path.join(__dirname, "fixtures");
/** What is brought in from a file, onto a shelf that has one of its three jobs already. */
async function tried(
  bytes: Uint8Array,
): Promise<{ sentence: string; report?: BringInReport; problems: string[] }> {
  const { shelf, disk } = await threeJobs();
  const before = { seen: await seenOn(shelf), bytes: bytesOn(disk) };
  const problems: string[] = [];
  try {
    const report = await bringIn(shelf, bytes);
    const sentence = broughtInWords(report);
    const seen = await seenOn(shelf);
    for (const [id, job] of Object.entries(before.seen))
      if (JSON.stringify(seen[id]) !== JSON.stringify(job)) problems.push(`${id} is another than before`);
    if (!/[.!]$/.test(sentence)) problems.push(`no sentence: ${sentence}`);
    return { sentence, report, problems };
  } catch (error) {
    if (!(error instanceof FileTrouble)) problems.push(`not a sentence: ${String(error)}`);
    if (JSON.stringify(bytesOn(disk)) !== JSON.stringify(before.bytes))
      problems.push("the shelf was changed");
    const sentence = (error as Error).message;
    if (!/[.!]$/.test(sentence) || sentence.length > 400) problems.push(`no sentence: ${sentence}`);
    return { sentence, problems };
  }
}

interface Case {
  readonly file: string;
  readonly what: string;
  readonly must: string;
}
const cases = unzipSync(readFileSync(path.join(FIXTURES, "exports-outside.zip")));
const { files } = JSON.parse(Buffer.from(cases["expected.json"]!).toString()) as { files: Case[] };

/** What a file's sentence has to say beyond that it is refused. */
const SAYS: Readonly<Record<string, RegExp>> = {
  "zip-damage/password.zip": /password|not an export/,
  "no-export/zip-in-zip.zip": /not an export|Unpack it/,
  "no-export/workbook.zip": /Excel workbook.*Open \.xlsx/,
  "no-export/survey.csv": /survey|text/,
  "no-export/empty.zip": /empty/,
  "no-export/login-page.zip": /web page/,
};

test(`${files.length} files that are no export of ours: each a sentence, nothing changed`, async () => {
  const wrong: string[] = [];
  for (const { file } of files) {
    const { sentence, report, problems } = await tried(cases[file]!);
    if (report) problems.push("it was taken");
    if (SAYS[file] && !SAYS[file].test(sentence)) problems.push(`says: ${sentence}`);
    if (/\.json$/.test(file) && /CSV/.test(sentence)) problems.push(`says: ${sentence}`);
    if (problems.length > 0) wrong.push(`${file}: ${problems.join("; ")}`);
  }
  expect(wrong).toEqual([]);
}, 120_000);

withPython("a true export, harmed in every way that its outsider thought of", async (python) => {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-harmed-"));
  try {
    const { shelf } = await threeJobs();
    writeFileSync(path.join(folder, "true.zip"), await exportOf(shelf));
    const out = path.join(folder, "out");
    const made = spawnSync(python, [
      path.join(FIXTURES, "damage_export.py"),
      path.join(folder, "true.zip"),
      out,
    ]);
    if (made.status !== 0) throw new Error(made.stderr.toString());
    const harmed = JSON.parse(readFileSync(path.join(out, "expected.json"), "utf8")) as Case[];
    expect(harmed.length).toBeGreaterThan(90);
    const wrong: string[] = [];
    const original = await seenOn(shelf);
    for (const { file, must, what } of harmed) {
      const problems = await judged(new Uint8Array(readFileSync(path.join(out, file))), must, original);
      if (problems.length > 0) wrong.push(`${file} (${what}): ${problems.join("; ")}`);
    }
    console.log(`${harmed.length - wrong.length} of ${harmed.length} harmed exports as their maker expects`);
    expect(wrong).toEqual([]);
    expect(existsSync("/tmp/rigsheet-escaped-rigsheet-jobs.json")).toBe(false);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

/** Onto an empty shelf: whole jobs only, and every one that was not taken is named. */
async function judged(
  bytes: Uint8Array,
  must: string,
  original: Awaited<ReturnType<typeof seenOn>>,
): Promise<string[]> {
  const { shelf, disk } = await newShelf();
  const problems: string[] = [];
  const before = JSON.stringify(bytesOn(disk));
  let report: BringInReport;
  try {
    report = await bringIn(shelf, bytes);
  } catch (error) {
    if (!(error instanceof FileTrouble)) problems.push(`not a sentence: ${String(error)}`);
    if (JSON.stringify(bytesOn(disk)) !== before) problems.push("the shelf was changed");
    if (must === "same") problems.push("it was refused");
    return problems;
  }
  const said = broughtInWords(report);
  const seen = await seenOn(shelf).catch((error: unknown) => {
    // A frozen state that was missing in the file is told, and can't be read here either.
    if (!/revision \d+ is missing/.test(said)) problems.push(`half a job, and not told: ${String(error)}`);
    return undefined;
  });
  if (must === "refuse" && report.jobs.some(({ outcome }) => outcome === "brought in"))
    problems.push(`taken: ${said}`);
  for (const [id, job] of Object.entries(original)) {
    const one = report.jobs.find((found) => found.id === id);
    if (one?.outcome === "not read" ? one.remarks.length === 0 : !seen?.[id] && seen !== undefined)
      problems.push(`${id} is neither here nor named: ${said}`);
    if (one?.outcome === "brought in" && seen && withoutPlace(seen[id]) !== withoutPlace(job))
      problems.push(`${id} is another than it was`);
  }
  if (({} as { polluted?: string }).polluted !== undefined) problems.push("polluted");
  return problems;
}

const withoutPlace = (job: unknown): string =>
  JSON.stringify(job, (name, value: unknown) => (name === "path" ? undefined : value));

test("20,000 tiny members: an answer at once", async () => {
  const many = zipSync(
    Object.fromEntries(
      Array.from({ length: 20_000 }, (_, index) => [`job-${index}.json`, new Uint8Array(1)]),
    ),
  );
  const before = performance.now();
  expect((await tried(many)).sentence).toMatch(/not an export/);
  expect(performance.now() - before).toBeLessThan(10_000);
}, 60_000);
