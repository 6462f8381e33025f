/** `rigsheet copy` and `rigsheet print`. */
import { existsSync } from "node:fs";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { copyJob } from "../../src/cli/copyJob";
import { UsageTrouble, type Console } from "../../src/cli/console";
import { printJob } from "../../src/cli/printJob";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedValue } from "../../src/workbooks/named";
import { estimate } from "../../src/workbooks/multiRoom/names";
import type { BookSheet } from "../../src/workbooks/book";
import { WRITING_FIELD } from "../../src/workbooks/typed/writing";
import { bookOf, emptySheet } from "../support/books";
import { runCommand } from "../support/fakeConsole";
import { referencePrice, type Job } from "../support/referencePrice";
import { readPdf, type ReadPdf } from "../support/pdfPages";
import { withPoppler } from "../support/tools";

const demonstration = path.join(__dirname, "../../templates/multi-room-demonstration.xlsx");
let folder: string;
const at = (name: string): string => path.join(folder, name);

beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-copy-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** The demonstration with a run of -3 m, which Materials and Price show. */
async function brokenJob(): Promise<string> {
  const inputs = JSON.parse(JSON.stringify(guestHouse)) as Required<JobInputs>;
  (inputs.blocks.rooms![0] as Record<string, unknown>).run = -3;
  await writeFile(at("broken.xlsx"), await writeXlsx(recalculate(layOut(multiRoom, inputs))));
  return at("broken.xlsx");
}

const quiet: Console = { out: () => undefined, err: () => undefined, readInput: async () => "" };

describe("rigsheet copy", () => {
  test("an office copy says when it was made, by the clock that it is given", async () => {
    const words = [demonstration, "--office", "--out", at("office.xlsx")];
    expect(await copyJob(words, quiet, () => new Date("2027-01-31T23:59:30Z"))).toBe(0);
    const { sheets } = await readXlsx(await readFile(at("office.xlsx")));
    expect(sheets.find(({ name }) => name === "About")!.cells.A3!.value).toMatch(
      /^Copy without add-in, made 2027-01-31 23:59 UTC by Rigsheet \d/,
    );
  });

  test("the job is recalculated first: a value that was stored stale does not get into the copy", async () => {
    const book = recalculate(layOut(multiRoom, guestHouse));
    const right = namedValue(book, "quote_total");
    for (const { results } of book.sheets)
      for (const cell of Object.keys(results)) if (typeof results[cell] === "number") results[cell] = 1;
    await writeFile(at("stale.xlsx"), await writeXlsx(book));
    await runCommand(["copy", at("stale.xlsx"), "--sealed", "--out", at("sealed.xlsx")]);
    expect(namedValue(await readXlsx(await readFile(at("sealed.xlsx"))), "quote_total")).toBe(right);
  });

  test("a sealed copy of every sheet warns that costs show; of one sheet holds it and About", async () => {
    const all = await runCommand(["copy", demonstration, "--sealed", "--out", at("all.xlsx")]);
    expect(all).toMatchObject({ code: 0, out: expect.stringMatching(/costs and margin show/) as string });
    const one = await runCommand([
      "copy",
      demonstration,
      "--sealed",
      "--sheet",
      "quote",
      "--out",
      at("one.xlsx"),
    ]);
    expect(one.out).not.toMatch(/costs/);
    const { sheets } = await readXlsx(await readFile(at("one.xlsx")));
    expect(sheets.map(({ name }) => name)).toEqual(["About", "Quote"]);
  });

  test("cells in error are counted and placed, and the copy is written", async () => {
    const { code, err } = await runCommand([
      "copy",
      await brokenJob(),
      "--office",
      "--out",
      at("office.xlsx"),
    ]);
    expect(code).toBe(1);
    expect(err).toMatch(/^\d+ cells show an error: \w+!\w+, .* more\. rigsheet price/);
    expect(existsSync(at("office.xlsx"))).toBe(true);
  });

  test.each([
    ["no kind", [demonstration, "--out", "OUT.xlsx"], /--without-add-in or --values-only/],
    [
      "both kinds",
      [demonstration, "--office", "--sealed", "--out", "OUT.xlsx"],
      /--without-add-in or --values-only/,
    ],
    ["no workbook", ["--office", "--out", "OUT.xlsx"], /Name one workbook/],
    ["two workbooks", ["a.xlsx", "b.xlsx", "--office", "--out", "OUT.xlsx"], /Name one workbook/],
    ["no --out", [demonstration, "--office"], /There is no --out/],
    ["another ending", [demonstration, "--office", "--out", "OUT.ods"], /must end in \.xlsx/],
    ["onto itself", [demonstration, "--office", "--force", "--out", demonstration], /is the workbook itself/],
    [
      "sheets of an office copy",
      [demonstration, "--office", "--sheet", "Quote", "--out", "OUT.xlsx"],
      /for a values-only copy/,
    ],
    [
      "a sheet that is not there",
      [demonstration, "--sealed", "--sheet", "Quotes", "--out", "OUT.xlsx"],
      /no sheet "Quotes"/,
    ],
    ["a file that is not there", ["nowhere.xlsx", "--office", "--out", "OUT.xlsx"], /does not exist/],
    [
      "a file that is no workbook",
      [path.join(__dirname, "copyAndPrint.test.ts"), "--office", "--out", "OUT.xlsx"],
      /not an Excel workbook/,
    ],
  ])("%s: a sentence, exit 2, nothing written", async (_, words, sentence) => {
    const before = await readFile(demonstration);
    const { code, err } = await runCommand(["copy", ...words.map((word) => word.replace(/^OUT/, at("out")))]);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
    expect(await readdir(folder)).toEqual([]);
    expect(before.equals(await readFile(demonstration))).toBe(true);
  });

  test("an existing file stays unless --force is given", async () => {
    await writeFile(at("copy.xlsx"), "precious");
    const words = ["copy", demonstration, "--sealed", "--out", at("copy.xlsx")];
    expect(await runCommand(words)).toMatchObject({ code: 2 });
    expect(await readFile(at("copy.xlsx"), "utf8")).toBe("precious");
    expect(await runCommand([...words, "--force"])).toMatchObject({ code: 0 });
  });
});

/** Width and height of each page in whole points. */
const sizesOf = ({ pages }: ReadPdf): string[] =>
  pages.map(({ width, height }) => `${Math.round(width)}x${Math.round(height)}`);
const textOf = ({ pages }: ReadPdf): string => pages.flatMap(({ lines }) => lines).join("\n");
const pdfAt = async (file: string): Promise<ReadPdf> => readPdf(await readFile(file));

describe("rigsheet print", () => {
  withPoppler("the quote on A4 and on Letter, one page wide, with page, revision and date", async () => {
    // A4 is 210 × 297 mm, Letter 8.5 × 11 in (ISO 216; ANSI Y14.1), at 72 points to the inch.
    for (const [paper, size] of [
      ["a4", "595x842"],
      ["letter", "612x792"],
    ] as const) {
      const out = at(`quote-${paper}.pdf`);
      // By the definition of the demonstration two checks fail.
      expect(await runCommand(["print", demonstration, "--paper", paper, "--out", out])).toMatchObject({
        code: 1,
        err: "Quote is marked as a draft: 2 checks need attention. See Checks, or print with --anyway.",
        out: `${out}: Quote`,
      });
      const draft = textOf(await pdfAt(out));
      expect(draft).toContain("Draft: not to be sent");
      expect(draft).not.toMatch(/checks?\b/i);
      expect(
        await runCommand(["print", demonstration, "--anyway", "--paper", paper, "--out", out, "--force"]),
      ).toMatchObject({ code: 0, err: "" });
      const pdf = await pdfAt(out);
      expect(textOf(pdf)).not.toContain("Draft");
      expect(new Set(sizesOf(pdf))).toEqual(new Set([size]));
      const text = textOf(pdf);
      expect(text).toContain(`Quote Page 1 of ${pdf.pages.length} D-24, revision 1, 2026-11-02`);
      const { total } = referencePrice(guestHouse as unknown as Job);
      expect(text).toContain(Number(total).toLocaleString("en-US", { minimumFractionDigits: 2 }));
    }
  });

  withPoppler("a wide sheet lies on its side; a long one repeats its head", async () => {
    const job = path.join(__dirname, "../../templates/multi-room-apartment-block.xlsx");
    expect(await runCommand(["print", job, "--sheet", "Rooms", "--out", at("rooms.pdf")])).toMatchObject({
      code: expect.any(Number) as number,
    });
    const pdf = await pdfAt(at("rooms.pdf"));
    expect(pdf.pages.length).toBeGreaterThan(1);
    expect(new Set(sizesOf(pdf))).toEqual(new Set(["842x595"]));
    for (const { words } of pdf.pages)
      expect(words.map(({ text }) => text)).toEqual(expect.arrayContaining(["Wall", "plate"]));
  });

  withPoppler("an error prints as a word, and the command says where", async () => {
    const { code, err } = await runCommand([
      "print",
      await brokenJob(),
      "--sheet",
      "Materials",
      "--sheet",
      "Quote",
      "--out",
      at("two.pdf"),
    ]);
    expect(code).toBe(1);
    expect(err).toMatch(/cells show an error: Materials!/);
    const text = textOf(await pdfAt(at("two.pdf")));
    expect(text).toContain("error");
    expect(text).not.toMatch(/#(?:VALUE|N\/A|NAME|REF|DIV)|Err:/);
  });

  withPoppler("cards: one page for eight outlets, the same number of pages on both papers", async () => {
    for (const paper of ["a4", "letter"]) {
      const out = at(`cards-${paper}.pdf`);
      expect(await runCommand(["print", demonstration, "--cards", "--paper", paper, "--out", out])).toEqual({
        code: 0,
        err: "",
        out: `${out}: Dish cards, Head unit cards, Outlet cards`,
      });
      const pdf = await pdfAt(out);
      // A dish apart from its head units; three head units, two to a page; 24 outlets, eight to a page.
      expect(sizesOf(pdf)).toEqual(Array(1 + 2 + 3).fill(paper === "a4" ? "595x842" : "612x792"));
      const text = textOf(pdf);
      expect(text).toContain("Outlet A-07");
      expect(text).toContain("Head unit H3");
    }
  });

  withPoppler("a workbook without a quote prints all its sheets; one sheet by name in any case", async () => {
    const cell = (value: string): BookSheet["cells"] => ({ A1: { value } });
    const book = bookOf(
      { ...emptySheet("One"), cells: cell("first") },
      { ...emptySheet("Two"), cells: cell("second") },
    );
    await writeFile(at("other.xlsx"), await writeXlsx(book));
    for (const [more, words] of [
      [[], ["first", "second"]],
      [["--sheet", "ONE"], ["first"]],
      [
        ["--sheet", "All"],
        ["first", "second"],
      ],
    ] as const) {
      const ran = await runCommand(["print", at("other.xlsx"), ...more, "--out", at("x.pdf"), "--force"]);
      expect(ran).toMatchObject({ code: 0, err: "" });
      const { pages } = await pdfAt(at("x.pdf"));
      expect(pages.map((page) => page.words[0]!.text)).toEqual(words);
    }
    const { code, err } = await runCommand([
      "print",
      at("other.xlsx"),
      "--sheet",
      "Three",
      "--out",
      at("y.pdf"),
    ]);
    expect({ code, err }).toMatchObject({
      code: 2,
      err: expect.stringMatching(/no sheet "Three"/) as string,
    });
  });

  withPoppler("the same bytes twice at one time of the clock, which is the file's own", async () => {
    const clock = (): Date => new Date("2027-01-31T23:59:30Z");
    for (const name of ["one.pdf", "two.pdf"])
      expect(await printJob([demonstration, "--anyway", "--out", at(name)], quiet, clock)).toBe(0);
    const [one, two] = [await readFile(at("one.pdf")), await readFile(at("two.pdf"))];
    expect(one.equals(two)).toBe(true);
    expect(readPdf(one).info).toMatch(/CreationDate: +Sun Jan 31 23:59:30 2027/);
  });

  withPoppler("signs that the type lacks are told by cell, and a question mark stands for each", async () => {
    const inputs = JSON.parse(JSON.stringify(guestHouse)) as Required<JobInputs>;
    (inputs.fields as Record<string, unknown>)[estimate.site.customer.name] = "山田 and sons";
    const book = recalculate(layOut(multiRoom, inputs));
    await writeFile(at("named.xlsx"), await writeXlsx(book));
    const { code, err } = await runCommand(["print", at("named.xlsx"), "--out", at("named.pdf")]);
    const quote = book.sheets.find(({ name }) => name === "Quote")!;
    const cell = Object.keys(quote.results).find((one) => quote.results[one] === "山田 and sons")!;
    expect(code).toBe(1);
    expect(err).toContain(
      `Quote!${cell} holds signs that the type of the page does not have: “山田 and sons”.`,
    );
    const printed = textOf(await pdfAt(at("named.pdf")));
    expect(printed).toContain("?? and sons");
    // Nobody signs for what is not on the page.
    expect(printed).toContain("Draft: not to be sent");
  });

  withPoppler("figures are written as Site says", async () => {
    const inputs = JSON.parse(JSON.stringify(guestHouse)) as Required<JobInputs>;
    (inputs.fields as Record<string, unknown>)[WRITING_FIELD] = "German";
    await writeFile(at("german.xlsx"), await writeXlsx(recalculate(layOut(multiRoom, inputs))));
    await runCommand(["print", at("german.xlsx"), "--out", at("german.pdf")]);
    const { total } = referencePrice(guestHouse as unknown as Job);
    expect(textOf(await pdfAt(at("german.pdf")))).toContain(
      Number(total).toLocaleString("de-DE", { minimumFractionDigits: 2 }),
    );
  });

  test.each([
    [
      "cards and a sheet",
      [demonstration, "--cards", "--sheet", "Quote", "--out", "OUT.pdf"],
      /Cards are printed by themselves/,
    ],
    ["another paper", [demonstration, "--paper", "a5", "--out", "OUT.pdf"], /"a5"; it can be a4 or letter/],
    ["another ending", [demonstration, "--out", "OUT.xlsx"], /must end in \.pdf/],
    ["no --out", [demonstration], /There is no --out/],
    ["no workbook", ["--out", "OUT.pdf"], /Name one workbook/],
    ["an unknown sheet", [demonstration, "--sheet", "Attic", "--out", "OUT.pdf"], /no sheet "Attic"/],
  ])("%s: a sentence, exit 2, nothing written", async (_, words, sentence) => {
    const { code, err } = await runCommand([
      "print",
      ...words.map((word) => word.replace(/^OUT/, at("out"))),
    ]);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
    expect(await readdir(folder)).toEqual([]);
  });
});

test("both have help with their exit codes", async () => {
  for (const name of ["copy", "print"]) {
    const { code, out } = await runCommand([name, "--help"]);
    expect(code).toBe(0);
    expect(out).toMatch(/Exit: 0/);
  }
  await expect(
    copyJob(["x.xlsx"], { out: () => undefined, err: () => undefined, readInput: async () => "" }),
  ).rejects.toThrow(UsageTrouble);
});
