/** rigsheet standards learn over a folder of quotes with strangers among them, and the review that goes by what was learned. */
import type { Finding } from "../../src/review/finding";
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { standardsWorkbook } from "../../src/workbooks/standards/definition";
import { mendedGuestHouse } from "../review/cleanJobs";
import { runCommand, type Ran } from "../support/fakeConsole";

let folder: string;
const at = (name: string): string => path.join(folder, name);
const rigsheet = (...words: string[]): Promise<Ran> =>
  runCommand(words.map((word) => (/\.xlsx$|^accepted/.test(word) ? at(word) : word)));

/** The guest house with a price of its reel and the minutes for a wall plate. */
async function quote(file: string, number: string, reel: number, minutes: number): Promise<void> {
  const job = mendedGuestHouse();
  job.fields.site_quote = number;
  job.blocks.cables!.find(({ name }) => name === "indoor drop")!.price = reel;
  job.blocks.labour!.find(({ name }) => name === "fit a wall plate")!.minutes = minutes;
  await writeFile(at(file), await writeXlsx(recalculate(layOut(multiRoom, job))));
}

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-learn-"));
  await mkdir(at("accepted"));
  for (const [index, reel] of [36, 37, 38, 40, 41].entries())
    await quote(`accepted/${index}.xlsx`, `P-${index}`, reel, 8 + index);
  await writeFile(at("accepted/broken.xlsx"), "no workbook");
  await rigsheet("standards", "new", "--demonstration", "--out", "firm.xlsx");
  await writeFile(at("accepted/standards.xlsx"), await readFile(at("firm.xlsx")));
  await quote("job.xlsx", "Q-1", 39, 100);
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test("a folder is learned from, strangers are named and left out, and the firm's file stays as it was", async () => {
  const before = await readFile(at("firm.xlsx"));
  const { code, out, err } = await rigsheet(
    "standards",
    "learn",
    "accepted",
    "firm.xlsx",
    "--out",
    "new.xlsx",
  );
  expect({ code, err }).toEqual({ code: 1, err: expect.stringContaining("written") as string });
  expect(out).toContain("5 accepted quotes");
  expect(out).toMatch(/broken\.xlsx can't be read, and was left out/);
  expect(out).toMatch(/standards\.xlsx is no multi-room job, and was left out/);
  expect(out).toContain(
    "Price per m of indoor drop: 0.36 to 0.41, middle 0.38 demonstration money per m (from 5 quotes)",
  );
  expect(await readFile(at("firm.xlsx"))).toEqual(before);
  const { blocks } = jobInputsOf(standardsWorkbook, await readXlsx(await readFile(at("new.xlsx"))));
  expect(blocks!.ranges).toContainEqual(
    expect.objectContaining({
      what: "Minutes each",
      of: "fit a wall plate",
      low: 8,
      middle: 10,
      high: 12,
      quotes: 5,
    }),
  );
}, 300_000);

test("the review says what is unusual beside them, in its cell", async () => {
  const { code, out } = await rigsheet("review", "job.xlsx", "--standards", "new.xlsx", "--json");
  const { findings } = JSON.parse(out) as { findings: Finding[] };
  // What else is said of the same cell may stand above it.
  const own = findings
    .flatMap((one) => [one, ...(one.leadsTo ?? [])])
    .filter(({ rule }) => rule === "unlike accepted quotes");
  expect(code).toBe(1);
  expect(own).toHaveLength(1);
  expect(own[0]).toMatchObject({
    weight: "doubtful",
    usual: { low: 8, high: 12 },
    message: expect.stringContaining("in 5 accepted quotes it was 8 to 12 min") as string,
  });
}, 300_000);

test("a folder without quotes, and --out without standards, are refused", async () => {
  await mkdir(at("accepted-none"), { recursive: true });
  expect(await rigsheet("standards", "learn", "accepted-none")).toMatchObject({ code: 2 });
  expect((await rigsheet("standards", "learn", "accepted", "--out", "new.xlsx")).code).toBe(2);
}, 60_000);
