/** rigsheet standards, and new --standards: what they write and never write over, their sentences and exit codes. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import type { JobInputs } from "../../src/workbooks/definition";
import { standardsExample } from "../../src/workbooks/standards/demonstration";
import { runCommand, type Ran } from "../support/fakeConsole";
import { firm, nextEdition } from "../support/firmsJob";

let folder: string;
const at = (name: string): string => path.join(folder, name);
const rigsheet = (...words: string[]): Promise<Ran> =>
  runCommand(words.map((word) => (word.endsWith(".xlsx") ? at(word) : word)));
const write = async (name: string, inputs: JobInputs): Promise<void> =>
  writeFile(at(name), await writeXlsx(recalculate(firm(inputs))));
const jobIn = async (name: string): Promise<JobInputs> =>
  jobInputsOf(multiRoom, await readXlsx(await readFile(at(name))));

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-standards-"));
  await rigsheet("standards", "new", "--demonstration", "--out", "firm.xlsx");
  await rigsheet("new", "multi-room", "--standards", "firm.xlsx", "--out", "job.xlsx");
  await write("next.xlsx", nextEdition);
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test("a new job has the parts of the standards, and their days of validity", async () => {
  const { fields = {}, blocks } = await jobIn("job.xlsx");
  expect(blocks!.cables).toEqual(standardsExample.blocks!.cables);
  expect(Number(fields.site_until) - Number(fields.site_date)).toBe(60);
});

test("check says what needs attention", async () => {
  expect(await rigsheet("standards", "check", "firm.xlsx")).toEqual({
    code: 0,
    out: "Invented firm (demonstration), edition 3: all checks pass",
    err: "",
  });
  const [first, ...rest] = standardsExample.blocks!.offers!;
  await write("bad.xlsx", {
    ...standardsExample,
    blocks: { ...standardsExample.blocks, offers: [{ ...first!, pack_price: 39 }, ...rest] },
  });
  const { code, out } = await rigsheet("standards", "check", "bad.xlsx");
  expect(code).toBe(1);
  expect(out).toMatch(
    /1 check needs attention\n {2}look: Parts whose price is not that of the offer in use: 1 \(Offers, price as Parts has it, price on Parts: indoor drop\)/,
  );
});

test("update shows what differs and writes nothing; with --out it writes a new workbook", async () => {
  const before = await readFile(at("job.xlsx"));
  const shown = await rigsheet("standards", "update", "job.xlsx", "--standards", "next.xlsx");
  expect(shown.code).toBe(1);
  expect(shown.out).toMatch(/^Standards of Invented firm \(demonstration\), edition 4 of 2027-01-04\.\n/);
  expect(shown.out).toMatch(
    /1 price changed, \+0\.00 on what is bought; 24 parts new; usual cable indoor drop → new cable 3\./,
  );
  expect(shown.out).toMatch(/Nothing was written\. Name a file to write: --out new\.xlsx$/);
  const done = await rigsheet(
    "standards",
    "update",
    "job.xlsx",
    "--standards",
    "next.xlsx",
    "--leave",
    "1",
    "-o",
    "new.xlsx",
  );
  expect(done).toMatchObject({ code: 0, err: "" });
  const { fields, blocks } = await jobIn("new.xlsx");
  // The first difference is the usual cable.
  expect(fields).toMatchObject({ site_usual_cable: "indoor drop", site_standards_edition: 4 });
  expect(blocks!.plates).toEqual(nextEdition.blocks!.plates);
  expect(await readFile(at("job.xlsx"))).toEqual(before);
});

test("--json has each difference with its number", async () => {
  const { out } = await rigsheet("standards", "update", "job.xlsx", "--standards", "next.xlsx", "--json");
  const told = JSON.parse(out) as { differences: readonly Record<string, unknown>[] };
  expect(told.differences).toHaveLength(26);
  expect(told.differences[0]).toMatchObject({
    number: 1,
    line: "Usual cable",
    from: "indoor drop",
    to: "new cable 3",
    taken: true,
  });
});

test.each<[string, readonly string[], RegExp]>([
  ["no word", ["standards"], /^Say what is to be done: new, check, update/],
  ["a word that is none", ["standards", "burn"], /^There is no "standards burn"/],
  ["no standards", ["standards", "update", "job.xlsx"], /^There is no --standards/],
  [
    "a number that is none",
    ["standards", "update", "job.xlsx", "--standards", "next.xlsx", "--leave", "99"],
    /^--leave names 99; no difference that can be taken has that number/,
  ],
  [
    "the job for the standards",
    ["standards", "update", "job.xlsx", "--standards", "job.xlsx"],
    /job\.xlsx is no workbook of a firm's standards/,
  ],
  [
    "the standards for the job",
    ["standards", "update", "firm.xlsx", "--standards", "firm.xlsx"],
    /firm\.xlsx is no multi-room estimate of ours/,
  ],
  [
    "another template",
    ["new", "single-drop", "--standards", "firm.xlsx", "--out", "drop.xlsx"],
    /^Only the template multi-room draws on standards/,
  ],
  [
    "two bases",
    ["new", "multi-room", "--standards", "firm.xlsx", "--demonstration", "--out", "two.xlsx"],
    /^Give --standards by itself/,
  ],
])("%s: a sentence, and nothing is written", async (_, words, sentence) => {
  const { code, err } = await rigsheet(...words);
  expect(code).toBe(2);
  expect(err).toMatch(sentence);
});
