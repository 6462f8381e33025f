/** `rigsheet proposal`: what is written, what is refused, and in which words; the pages themselves are another's. */
import { mkdir, mkdtemp, readFile, rm, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { proposalJob } from "../../src/cli/proposalJob";
import { UsageTrouble } from "../../src/cli/console";
import { FileTrouble } from "../../src/hosts/file/fileTrouble";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { PaperDocument } from "../../src/proposal/document";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { standardsExample } from "../../src/workbooks/standards/demonstration";
import { firm } from "../support/firmsJob";
import { wordsIn } from "../support/proposals";

let folder: string;
const at = (...names: readonly string[]): string => path.join(folder, ...names);
const written = async (name: string, job: JobInputs): Promise<void> =>
  writeFile(at(name), await writeXlsx(recalculate(layOut(multiRoom, job))));
const changed = (fields: Readonly<Record<string, number | string>>): JobInputs => ({
  ...hostel,
  fields: { ...hostel.fields, ...fields },
});

/** Of no colour: what its letters come to does not matter here. */
const PIXEL = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
  "base64",
);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-proposal-"));
  await mkdir(at("shelf"));
  await written("job.xlsx", hostel);
  await written("shelf/same.xlsx", changed({ site_margin: 0.3 }));
  await written("shelf/copy.xlsx", changed({}));
  await written("shelf/next.xlsx", changed({ site_revision: 2, site_margin: 0.3 }));
  await written("nobody.xlsx", changed({ site_customer: "" }));
  await written("empty.xlsx", startingPoint);
  await writeFile(at("firm.xlsx"), await writeXlsx(recalculate(firm(standardsExample))));
  await writeFile(at("logo.png"), PIXEL);
  await writeFile(at("logo.svg"), "<svg xmlns='x'/>");
  await writeFile(at("huge.png"), PIXEL);
  await truncate(at("huge.png"), 40_000_000);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly document?: PaperDocument;
  readonly paper?: string;
}

const ran = (...words: readonly string[]): Promise<Ran> => ranOn(new Date(2026, 10, 10), ...words);

async function ranOn(day: Date, ...words: readonly string[]): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const handed: { document?: PaperDocument; paper?: string } = {};
  const code = await proposalJob(
    words,
    {
      out: (line) => void out.push(line),
      err: (line) => void err.push(line),
      readInput: async () => "",
    },
    async (document, paper) => {
      Object.assign(handed, { document, paper });
      return { bytes: new TextEncoder().encode("pages"), unset: "" };
    },
    () => day,
  );
  return { code, out: out.join("\n"), err: err.join("\n"), ...handed };
}

let count = 0;
const fresh = (): string => at(`out${++count}.pdf`);

test("a job with nothing to ask", async () => {
  const out = fresh();
  const found = await ran(at("job.xlsx"), "--out", out, "--without", "diagram", "--without", "sky");
  expect(found).toMatchObject({ code: 0, err: "", paper: "a4" });
  expect(found.out).toContain("Proposal, D-40, revision 1, Hostel, 40 outlets (demonstration)");
  expect(await readFile(out, "utf8")).toBe("pages");
  expect(found.document!.parts.some(({ kind }) => kind === "picture")).toBe(false);
});

test("with a logo, the firm's standards, a part more, and another paper", async () => {
  const found = await ran(
    ...[at("job.xlsx"), "--out", fresh(), "--logo", at("logo.png"), "--standards", at("firm.xlsx")],
    ...["--with", "Sky", "--without", "diagram", "--paper", "Letter"],
  );
  expect(found).toMatchObject({ code: 0, paper: "letter" });
  expect(found.document!.parts[0]).toMatchObject({
    logo: { format: "png", alt: "Logo of Invented firm (demonstration)" },
  });
  expect(found.document!.parts.filter(({ kind }) => kind === "picture")).toHaveLength(1);
});

test("what is missing is said, and the draft written", async () => {
  const out = fresh();
  const found = await ran(at("nobody.xlsx"), "--out", out);
  expect(found).toMatchObject({ code: 1, err: expect.stringContaining("“Customer” on Site is blank") });
  expect(wordsIn(found.document!).join("\n")).toContain("Draft: not to be sent");
  expect(await readFile(out, "utf8")).toBe("pages");
});

test("what no page could show is said", async () => {
  const err: string[] = [];
  const console = {
    out: () => undefined,
    err: (line: string) => void err.push(line),
    readInput: async () => "",
  };
  const code = await proposalJob(
    [at("job.xlsx"), "--out", fresh()],
    console,
    async () => ({ bytes: new Uint8Array(1), unset: "A sign has no letter." }),
    () => new Date(2026, 10, 10),
  );
  expect([code, err]).toEqual([1, ["A sign has no letter."]]);
});

test("a quote that is over is written, and said", async () => {
  const found = await ranOn(new Date(2027, 0, 1), at("job.xlsx"), "--out", fresh());
  expect(found).toMatchObject({
    code: 1,
    err: "The quote was valid until 2026-12-31, which is past. Give it another day on Site.",
  });
});

test("a job without a price makes none", async () => {
  const out = fresh();
  const found = await ran(at("empty.xlsx"), "--out", out);
  expect(found).toMatchObject({ code: 1, out: "" });
  expect(found.err).toContain("The price can't be relied on");
  await expect(readFile(out)).rejects.toThrow("ENOENT");
});

test("another of the same number and revision is named; its copy and the next revision are not", async () => {
  const found = await ran(at("job.xlsx"), "--out", fresh(), "--shelf", at("shelf"));
  expect(found.code).toBe(1);
  expect(found.err).toContain("same.xlsx is number D-40, revision 1, too, and says something else");
  expect(found.err.split("\n")).toHaveLength(1);
});

describe("refused, and nothing written", () => {
  test.each<[string, readonly string[], RegExp]>([
    ["no job", [], /Name one workbook/],
    ["no file to write", ["job.xlsx"], /There is no --out/],
    ["another ending", ["job.xlsx", "--out", "x.docx"], /must end in \.pdf/],
    [
      "a part that there is not",
      ["job.xlsx", "--out", "x.pdf", "--without", "price"],
      /--without is "price"; the parts are: offer,/,
    ],
    [
      "with and without",
      ["job.xlsx", "--out", "x.pdf", "--with", "sky", "--without", "sky"],
      /"sky" is wanted with and without/,
    ],
    [
      "another paper",
      ["job.xlsx", "--out", "x.pdf", "--paper", "legal"],
      /--paper is "legal"; it can be a4 or letter/,
    ],
    ["no paper", ["job.xlsx", "--out", "x.pdf", "--paper", ""], /--paper is ""; it can be/],
    [
      "a drawing as a logo",
      ["job.xlsx", "--out", "x.pdf", "--logo", "logo.svg"],
      /logo\.svg: this is an SVG, which is not taken. Give a PNG or JPEG/,
    ],
    [
      "a logo of 40 MB",
      ["job.xlsx", "--out", "x.pdf", "--logo", "huge.png"],
      /huge\.png: a logo of 40000 kB is too large; it may have 2000 kB/,
    ],
    [
      "no such logo",
      ["job.xlsx", "--out", "x.pdf", "--logo", "none.png"],
      /none\.png cannot be read: it does not exist/,
    ],
    [
      "a job as standards",
      ["job.xlsx", "--out", "x.pdf", "--standards", "job.xlsx"],
      /is no workbook of a firm's standards/,
    ],
    ["standards as a job", ["firm.xlsx", "--out", "x.pdf"], /made from the template standards/],
    ["no such shelf", ["job.xlsx", "--out", "x.pdf", "--shelf", "nowhere"], /There is no folder/],
  ])("%s", async (_, words, sentence) => {
    const isFile = (word: string): boolean => /\.\w+$|^nowhere$/.test(word);
    const told = await ran(...words.map((word) => (isFile(word) ? at(word) : word))).then(
      ({ err }) => err,
      (error: unknown) => {
        expect(error instanceof UsageTrouble || error instanceof FileTrouble).toBe(true);
        return (error as Error).message;
      },
    );
    expect(told).toMatch(sentence);
    await expect(readFile(at("x.pdf"))).rejects.toThrow("ENOENT");
  });

  test("a file that is there stays, unless it is to be replaced", async () => {
    const out = fresh();
    await writeFile(out, "before");
    await expect(ran(at("job.xlsx"), "--out", out)).rejects.toThrow("exists and was left as it is");
    expect(await readFile(out, "utf8")).toBe("before");
    expect((await ran(at("job.xlsx"), "--out", out, "--force")).code).toBe(0);
    expect(await readFile(out, "utf8")).toBe("pages");
  });
});
