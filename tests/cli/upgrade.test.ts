/** rigsheet upgrade: what it writes and never writes over, its sentences and exit codes. */
import { copyFile, mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { runCommand } from "../support/fakeConsole";

const fixtures = path.join(__dirname, "../fixtures/upgrade");
let folder: string;
const at = (name: string): string => path.join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-upgrade-"));
  await copyFile(path.join(fixtures, "single-drop-88f41e58-plain.xlsx"), at("drop.xlsx"));
  await copyFile(path.join(fixtures, "multi-room-da9a13aa-plain.xlsx"), at("job.xlsx"));
  await writeFile(at("text.xlsx"), "no workbook");
  await writeFile(at("there.xlsx"), "mine");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const upgradeOf = (...words: string[]) =>
  runCommand(["upgrade", ...words.map((word) => (word.endsWith(".xlsx") ? at(word) : word))]);

test("without --out it shows what would come of it and writes nothing", async () => {
  const before = await readFile(at("job.xlsx"));
  const { out, err } = await upgradeOf("job.xlsx");
  expect(err).toBe("");
  expect(out).toMatch(
    /^From version 1 of “.*” to version \d+: \d+ filled cells carried over, nothing left behind\./,
  );
  expect(out).toMatch(/\n {2}Total: 6799\.57 .*as before\n/);
  expect(out).toMatch(/Nothing was written\. Name a file/);
  expect(await readFile(at("job.xlsx"))).toEqual(before);
});

test("with -o it writes a workbook of today's version beside the older one, which then is current", async () => {
  const before = await readFile(at("drop.xlsx"));
  const { code, out } = await upgradeOf("drop.xlsx", "-o", "new.xlsx");
  expect({ code, out }).toEqual({
    code: 0,
    out: expect.stringMatching(/new\.xlsx: written\. .*drop\.xlsx is as it was\.$/),
  });
  expect(await readFile(at("drop.xlsx"))).toEqual(before);
  expect(await readXlsx(await readFile(at("new.xlsx")))).toMatchObject({
    template: "single-drop",
    templateVersion: "3",
  });
  const again = await upgradeOf("new.xlsx", "--out", "newer.xlsx");
  expect(again).toMatchObject({
    code: 0,
    out: expect.stringMatching(/already, which is today's.* Nothing was written\.$/),
  });
  await expect(stat(at("newer.xlsx"))).rejects.toThrow("ENOENT");
});

test("a file that is there is replaced only when that is asked for, the older one never", async () => {
  const kept = await upgradeOf("drop.xlsx", "--out", "there.xlsx");
  expect(kept).toMatchObject({ code: 2, err: expect.stringMatching(/exists and was left as it is/) });
  expect(await readFile(at("there.xlsx"), "utf8")).toBe("mine");
  const self = await upgradeOf("drop.xlsx", "--out", "drop.xlsx", "--force");
  expect(self).toMatchObject({ code: 2, err: expect.stringMatching(/is the workbook itself/) });
  expect((await upgradeOf("drop.xlsx", "--out", "there.xlsx", "--force")).code).toBe(0);
});

test("as data: the list and the figures, without the workbook", async () => {
  const { out } = await upgradeOf("drop.xlsx", "--json");
  expect(JSON.parse(out)).toMatchObject({ from: "1", to: "3", notCarried: [], carried: expect.any(Number) });
  expect(JSON.parse(out)).not.toHaveProperty("book");
});

test.each([
  [[], /Name one workbook/],
  [["drop.xlsx", "job.xlsx"], /Name one workbook/],
  [["text.xlsx"], /plain text, not an Excel workbook/],
  [["gone.xlsx"], /does not exist/],
  [["drop.xlsx", "--out", "new.pdf"], /must end in \.xlsx/],
])("%j is a sentence", async (words, sentence) => {
  const { code, err } = await upgradeOf(...words);
  expect({ code, err }).toEqual({ code: 2, err: expect.stringMatching(sentence) });
});
