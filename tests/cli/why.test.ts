/** rigsheet why: good lines, bad lines, their sentences and exit codes. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { namedValue, placeOfName } from "../../src/workbooks/named";
import { bookOf, emptySheet } from "../support/books";
import { runCommand } from "../support/fakeConsole";
import { computed } from "../support/pictureJobs";

const book = computed();
let folder: string;
const at = (name: string): string => path.join(folder, name);
let bytes: Buffer;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-why-"));
  await writeFile(at("job.xlsx"), await writeXlsx(book));
  await writeFile(at("other.xlsx"), await writeXlsx(bookOf(emptySheet("S"))));
  await writeFile(at("text.xlsx"), "no workbook");
  bytes = await readFile(at("job.xlsx"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const whyOf = (...words: string[]) => runCommand(["why", ...words]);
const { sheet, at: cell } = placeOfName(book, "quote_total")!;

test("the total: its steps, and the workbook stays as it is", async () => {
  const { code, out, err } = await whyOf(at("job.xlsx"), `${sheet}!${cell}`);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  const lines = out.split("\n");
  expect(lines[0]).toBe(`Total (Quote ${cell}): ${String(namedValue(book, "quote_total"))}`);
  expect(lines[1]).toMatch(/^ {2}= /);
  expect(lines.slice(2).every((line) => line.startsWith("  "))).toBe(true);
  expect(await readFile(at("job.xlsx"))).toEqual(bytes);
});

test("as data, and so deep as is asked for", async () => {
  const of = async (deep: string): Promise<number> => {
    const { out } = await whyOf(at("job.xlsx"), `${sheet}!${cell}`, "--json", "--deep", deep);
    const depth = (one: { from?: object[]; told?: object[] }): number =>
      Math.max(0, ...[...(one.from ?? []), ...(one.told ?? [])].map((next) => 1 + depth(next)));
    return depth(JSON.parse(out) as object);
  };
  const [one, four] = [await of("1"), await of("4")];
  expect(one).toBeGreaterThanOrEqual(1);
  expect(four).toBeGreaterThan(one);
});

test.each([
  [["job.xlsx"], /Name one workbook and one cell/],
  [["job.xlsx", "Quote!B3", "more"], /Name one workbook and one cell/],
  [["job.xlsx", "B3"], /"B3" is not one cell of a sheet.*"Quote!B23"/],
  [["job.xlsx", "Quote!B3:B5"], /is not one cell/],
  [["job.xlsx", "Quote!B"], /is not one cell/],
  [["job.xlsx", "[1]Quote!B3"], /is not one cell/],
  [["job.xlsx", "May:June!B3"], /is not one cell/],
  [["job.xlsx", "Kitchen!B3"], /has no sheet "Kitchen"\. Its sheets: About, Site,/],
  [["job.xlsx", "Quote!B3", "--deep", "0"], /--deep is "0"; it takes a whole number from 1 to 20/],
  [["job.xlsx", "Quote!B3", "--most", "many"], /--most is "many"; it takes a whole number from 1 to 1000/],
  [["job.xlsx", "Quote!B3", "--deeper"], /deeper.*See: rigsheet why --help/],
  [["nothing.xlsx", "Quote!B3"], /nothing\.xlsx/],
  [["text.xlsx", "Quote!B3"], /./],
])("%j: a sentence, code 2", async ([file, ...words], sentence) => {
  const { code, out, err } = await whyOf(at(file!), ...words);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(sentence);
  expect(err).not.toMatch(/ at .*:\d+:\d+/);
});

test.each([
  ["other.xlsx", "S!A1"],
  ["job.xlsx", "'Head units'!$C$9"],
  ["job.xlsx", "head units!c9"],
])("%s %s is told too", async (file, where) => {
  const { code, out } = await whyOf(at(file), where);
  expect(code).toBe(0);
  expect(out.length).toBeGreaterThan(5);
});
