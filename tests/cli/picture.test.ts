/** rigsheet picture: good lines, bad lines, their sentences and exit codes. */
import { mkdtemp, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { levelsPicture } from "../../src/pictures/levelsPicture";
import { oneLineDiagram } from "../../src/pictures/oneLineDiagram";
import { slotsPicture } from "../../src/pictures/slotsPicture";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { bookOf, emptySheet } from "../support/books";
import { runCommand } from "../support/fakeConsole";
import { computed } from "../support/pictureJobs";

const book = computed();
let folder: string;
const at = (name: string): string => path.join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-picture-"));
  await writeFile(at("job.xlsx"), await writeXlsx(book));
  await writeFile(at("empty.xlsx"), await writeXlsx(recalculate(layOut(multiRoom))));
  await writeFile(at("other.xlsx"), await writeXlsx(bookOf(emptySheet("S"))));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const picture = (...words: string[]) => runCommand(["picture", ...words]);

test.each([
  ["diagram", oneLineDiagram],
  ["levels", levelsPicture],
  ["slots", slotsPicture],
])("%s as SVG is the picture of the workbook, and its words are printed", async (kind, draw) => {
  const { code, out, err } = await picture(at("job.xlsx"), "--kind", kind, "--out", at(`${kind}.svg`));
  const { svg, title, description } = draw(book);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(await readFile(at(`${kind}.svg`), "utf8")).toBe(`${svg}\n`);
  expect(out).toBe(`${at(`${kind}.svg`)}: ${title}\n${description}`);
});

test("as PNG it is one, and the job's own file stays as it was", async () => {
  const before = await readFile(at("job.xlsx"));
  const { code } = await picture(at("job.xlsx"), "--kind", "slots", "--out", at("slots.PNG"));
  expect(code).toBe(0);
  expect((await readFile(at("slots.PNG"))).subarray(1, 4).toString("latin1")).toBe("PNG");
  expect((await readFile(at("job.xlsx"))).equals(before)).toBe(true);
});

test("an existing file is kept, unless --force says otherwise", async () => {
  await writeFile(at("kept.svg"), "mine");
  const words = [at("job.xlsx"), "--kind", "slots", "--out", at("kept.svg")];
  expect(await picture(...words)).toMatchObject({
    code: 2,
    err: expect.stringMatching(/exists and was left as it is.*--force/) as string,
  });
  expect(await readFile(at("kept.svg"), "utf8")).toBe("mine");
  expect(await picture(...words, "--force")).toMatchObject({ code: 0 });
  expect(await readFile(at("kept.svg"), "utf8")).toMatch(/^<svg/);
});

test("nothing to draw yet: nothing is written, and why", async () => {
  const found = await picture(at("empty.xlsx"), "--kind", "levels", "--out", at("none.svg"));
  expect(found).toMatchObject({
    code: 1,
    out: "",
    err: expect.stringMatching(/^Nothing was written\. There is nothing to draw yet/) as string,
  });
  expect(await readdir(folder)).not.toContain("none.svg");
});

test.each([
  [["--kind", "slots", "--out", "x.svg"], /Name one workbook/],
  [["a.xlsx", "b.xlsx", "--kind", "slots", "--out", "x.svg"], /Name one workbook/],
  [["JOB", "--out", "x.svg"], /There is no --kind. Give one of: diagram, levels, slots/],
  [
    ["JOB", "--kind", "toString", "--out", "x.svg"],
    /--kind is "toString"; the pictures are: diagram, levels, slots/,
  ],
  [["JOB", "--kind", "slots"], /There is no --out/],
  [["JOB", "--kind", "slots", "--out", "x.jpg"], /--out is "x.jpg"; its name must end in .svg or .png/],
  [["JOB", "--kind", "slots", "--out", "/no/such/folder/x.svg"], /There is no folder \/no\/such\/folder/],
  [["nowhere.xlsx", "--kind", "slots", "--out", "x.svg"], /nowhere.xlsx cannot be read: it does not exist/],
  [["OTHER", "--kind", "slots", "--out", "x.svg"], /was not made from the multi-room template/],
  [["JOB", "--size", "3"], /--size.*See: rigsheet picture --help/],
])("%j is refused with a sentence", async (words, sentence) => {
  const named = words.map((word) =>
    word === "JOB" ? at("job.xlsx") : word === "OTHER" ? at("other.xlsx") : word,
  );
  const { code, out, err } = await picture(...named);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(sentence);
});

test("--help says what there is", async () => {
  const { code, out } = await picture("--help");
  expect(code).toBe(0);
  for (const word of ["diagram", "levels", "slots", ".svg", ".png", "Exit:"]) expect(out).toContain(word);
});
