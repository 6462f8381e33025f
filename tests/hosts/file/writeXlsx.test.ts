/** The stored XML, read by code that shares nothing with the writer. */
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { bookOf, emptySheet, sampleBook } from "../../support/books";
import { cellXml, partOf, partsOf } from "../../support/parts";

const SHEET = "xl/worksheets/sheet1.xml";

describe("a working workbook", () => {
  let file: Uint8Array;
  let sheet: string;
  beforeAll(async () => {
    file = await writeXlsx(sampleBook());
    sheet = partOf(file, SHEET);
  });

  test("stores our column formula as a dynamic array with its cached value", () => {
    expect(cellXml(sheet, "C2")).toMatch(
      /^<c r="C2" s="\d+" cm="1"><f t="array" ref="C2:C4">_xldudf_RIG_CABLELOSS\(A2:A4,runs,"RIG.X\("\)<\/f><v>2.5<\/v><\/c>$/,
    );
    expect(cellXml(sheet, "C3")).toMatch(/^<c r="C3" s="\d+"><v>6<\/v><\/c>$/);
  });

  test("stores a single call of ours as a dynamic array of one cell, with its error", () => {
    expect(cellXml(sheet, "B6")).toMatch(
      /^<c r="B6" s="\d+" cm="1" t="e"><f t="array" ref="B6">_xldudf_RIG_LONGEST\(B5\)<\/f><v>#VALUE!<\/v><\/c>$/,
    );
  });

  test("stores native formulas plainly", () => {
    expect(cellXml(sheet, "C5")).toMatch(/^<c r="C5" s="\d+"><f>SUM\(C2:C4\)<\/f><v>8.5<\/v><\/c>$/);
    expect(cellXml(sheet, "D2")).toMatch(
      /^<c r="D2" t="str"><f>IF\(C2&gt;5,"high","ok"\)<\/f><v>ok<\/v><\/c>$/,
    );
  });

  test("has the part that says what a dynamic array is, declared and linked", () => {
    // As in [MS-XLSX] 2.3.8 and 3.1; the extension's identifier is from there.
    const metadata = partOf(file, "xl/metadata.xml");
    expect(metadata).toContain('<metadataType name="XLDAPR"');
    expect(metadata).toContain("{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}");
    expect(metadata).toContain('fDynamic="1"');
    expect(partOf(file, "[Content_Types].xml")).toContain("/xl/metadata.xml");
    expect(partOf(file, "xl/_rels/workbook.xml.rels")).toContain('Target="metadata.xml"');
  });

  test("text that begins like a formula is text", () => {
    expect(cellXml(sheet, "A2")).toMatch(/^<c r="A2" t="s" s="\d+"><v>\d+<\/v><\/c>$/);
    expect(partOf(file, "xl/sharedStrings.xml")).toContain("<t>=Lobby</t>");
  });

  test("names, also the reserved ones, quote the sheet", () => {
    const workbook = partOf(file, "xl/workbook.xml");
    expect(workbook).toContain(`<definedName name="runs">'Rooms &amp; runs'!$B$2:$B$4</definedName>`);
    expect(workbook).toContain(`<definedName name="total">'Rooms &amp; runs'!$C$5</definedName>`);
    expect(workbook).toContain(
      `<definedName name="_xlnm.Print_Area" localSheetId="0">'Rooms &amp; runs'!$A$1:$D$8</definedName>`,
    );
    expect(workbook).toContain(
      `<definedName name="_xlnm.Print_Titles" localSheetId="0">'Rooms &amp; runs'!$1:$1</definedName>`,
    );
    expect(workbook).toContain('state="hidden"');
  });

  test("keeps cached values on opening; asks for a calculation only where one is missing", async () => {
    expect(partOf(file, "xl/workbook.xml")).toContain('<calcPr calcId="191029"/>');
    const book = sampleBook();
    delete book.sheets[0]!.results.C5;
    expect(partOf(await writeXlsx(book), "xl/workbook.xml")).toContain(
      '<calcPr calcId="191029" fullCalcOnLoad="1"/>',
    );
  });

  test("validations", () => {
    const one = (range: string): string =>
      new RegExp(`<dataValidation [^>]*sqref="${range}".*?</dataValidation>`).exec(sheet)![0];
    expect(one("B2:B4")).toContain('type="decimal"');
    expect(one("B2:B4")).toContain('prompt="Length of the run in metres,&#10;for example 12.5"');
    expect(one("B2:B4")).toContain('errorStyle="stop"');
    expect(one("B2:B4")).toContain("<formula1>0.5</formula1><formula2>150</formula2>");
    expect(one("F2:F4")).toContain('errorStyle="warning"');
    expect(one("A2:A4")).toContain("<formula1>kinds</formula1>");
    expect(one("D2:D4")).toContain('<formula1>"ok,low ""cold"",high"</formula1>');
    expect(one("H2:H4")).toContain('type="textLength"');
  });

  test("protection without a password, open for what a person needs", () => {
    // ECMA-376 part 1, 18.3.1.85: an attribute of 0 means that the action is allowed.
    const protection = /<sheetProtection [^>]*>/.exec(sheet)![0];
    expect(protection).toContain('sheet="1"');
    for (const allowed of [
      "selectLockedCells",
      "selectUnlockedCells",
      "formatColumns",
      "formatRows",
      "insertRows",
    ]) {
      expect(protection).toContain(`${allowed}="0"`);
    }
    expect(protection).not.toMatch(/password|hashValue/);
    expect(partOf(file, "xl/styles.xml")).toContain('<protection locked="0"/>');
  });

  test("print set-up", () => {
    expect(sheet).toContain('<pageSetUpPr fitToPage="1"/>');
    expect(sheet).toContain(
      '<pageSetup paperSize="9" orientation="landscape" fitToWidth="1" fitToHeight="0"/>',
    );
    expect(sheet).toContain(
      "<oddFooter>&amp;LSmith &amp;&amp; Sons&amp;CPage &amp;P of &amp;N&amp;R2026-07-04 rev 3</oddFooter>",
    );
    expect(sheet).not.toContain("gridLines=");
  });

  test("marks are equal-to rules with a quoted text", () => {
    expect(sheet).toMatch(
      /<cfRule type="cellIs" priority="1" dxfId="0" operator="equal"><formula>"low"<\/formula><\/cfRule>/,
    );
    expect(partOf(file, "xl/styles.xml")).toMatch(/<dxf>.*FF9C0006.*<bgColor rgb="FFFFC7CE"\/>.*<\/dxf>/);
  });

  test("says what it is", () => {
    expect(partOf(file, "docProps/core.xml")).toContain("<dc:creator>Rigsheet</dc:creator>");
    expect(partOf(file, "docProps/core.xml")).toContain(
      "<dc:title>Guest house &amp; annexe (demonstration)</dc:title>",
    );
    expect(partOf(file, "docProps/app.xml")).toContain("<Application>Rigsheet</Application>");
    expect(partOf(file, "docProps/custom.xml")).toContain(">estimate<");
    expect(partOf(file, "docProps/custom.xml")).toContain(">1.2.0<");
  });

  test("the same book gives the same bytes at another time", async () => {
    jest.useFakeTimers({
      now: new Date("2031-01-02T03:04:05Z"),
      doNotFake: ["nextTick", "setImmediate", "queueMicrotask"],
    });
    try {
      expect(Buffer.compare(await writeXlsx(sampleBook()), file)).toBe(0);
    } finally {
      jest.useRealTimers();
    }
  });

  test("comes back whole", async () => {
    expect(await readXlsx(file)).toStrictEqual(sampleBook());
  });
});

describe("copies", () => {
  test("an office copy has values where our functions were, and native formulas alive", async () => {
    const file = await writeXlsx(sampleBook(), { frozen: true });
    const sheet = partOf(file, SHEET);
    expect([...partsOf(file).values()].join("")).not.toContain("_xldudf");
    expect(cellXml(sheet, "C2")).toMatch(/^<c r="C2" s="\d+"><v>2.5<\/v><\/c>$/);
    expect(cellXml(sheet, "C3")).toMatch(/^<c r="C3" s="\d+"><v>6<\/v><\/c>$/);
    expect(cellXml(sheet, "B6")).toMatch(/^<c r="B6" t="e" s="\d+"><v>#VALUE!<\/v><\/c>$/);
    expect(cellXml(sheet, "C5")).toContain("<f>SUM(C2:C4)</f>");
    expect(partsOf(file).has("xl/metadata.xml")).toBe(false);
    const read = (await readXlsx(file)).sheets[0]!;
    expect(read.cells.C2!.note).toMatch(/^Frozen: the value that RIG\.CABLELOSS/);
    expect(read.results.B6).toEqual({ error: "#VALUE!" });
  });

  test("a sealed copy has no formula at all", async () => {
    const file = await writeXlsx(sampleBook(), { sealed: true });
    const sheet = partOf(file, SHEET);
    expect(sheet).not.toContain("<f>");
    expect(sheet).not.toContain("<f ");
    expect(cellXml(sheet, "C5")).toContain("<v>8.5</v>");
    expect(cellXml(sheet, "B7")).toContain("#VALUE!");
  });

  test("a cell without a result can't be frozen", async () => {
    const book = sampleBook();
    delete book.sheets[0]!.results.C2;
    await expect(writeXlsx(book, { frozen: true })).rejects.toThrow(
      'Cell C2 of sheet "Rooms & runs" has not been calculated yet',
    );
    await expect(writeXlsx(book)).resolves.toBeInstanceOf(Uint8Array);
  });
});

describe("what can't be stored is refused with a sentence", () => {
  const cell = (value: string | number) => bookOf({ ...emptySheet("S"), cells: { B5: { value } } });
  const named = (...names: string[]) => bookOf(...names.map(emptySheet));
  const choices = (...list: string[]) =>
    bookOf({ ...emptySheet("S"), validations: [{ range: "A1", rule: { kind: "choice", choices: list } }] });

  test.each([
    ["half a character", cell("a\uD83D"), 'Cell B5 of sheet "S" holds half of a character'],
    ["too long a text", cell("x".repeat(32_768)), "32768 characters long; a workbook can hold 32767"],
    ["not a number", cell(NaN), "not a finite number"],
    ["infinity", cell(-Infinity), "not a finite number"],
    ["no sheet", bookOf(), "at least one sheet"],
    ["all sheets hidden", bookOf({ ...emptySheet("S"), hidden: true }), "at least one sheet"],
    ["sheet name with a slash", named("a/b"), "it holds one of"],
    ["sheet name too long", named("x".repeat(32)), "longer than 31"],
    ["sheet name twice", named("Site", "site"), "another sheet has that name"],
    ["empty sheet name", named(""), "no letters"],
    ["reserved sheet name", named("History"), "Excel keeps that name"],
    ["sheet name like an escape", named("_x0041_"), "escaped character"],
    ["choice with a comma", choices("1,5", "2"), "named range"],
    ["choices too long", choices(...Array.from({ length: 60 }, (_, i) => `choice ${i}`)), "named range"],
    [
      "a name without a range",
      { ...named("S"), names: [{ name: "x", sheet: "S", range: "??" }] },
      "no range",
    ],
    [
      "a name like an address",
      { ...named("S"), names: [{ name: "AB12", sheet: "S", range: "A1" }] },
      "can't be named",
    ],
    [
      "a name with a blank",
      { ...named("S"), names: [{ name: "a b", sheet: "S", range: "A1" }] },
      "can't be named",
    ],
    ["a cell beyond the sheet", bookOf({ ...emptySheet("S"), cells: { XFE1: { value: 1 } } }), "no range"],
  ])("%s", async (_, book, sentence) => {
    await expect(writeXlsx(book)).rejects.toMatchObject({
      name: "FileTrouble",
      message: expect.stringContaining(sentence) as string,
    });
  });
});

describe("prompts are cut, not refused", () => {
  test("at 255 and 32 characters, without splitting a character", async () => {
    const book = bookOf({
      ...emptySheet("S"),
      validations: [
        {
          range: "A1",
          rule: { kind: "text", maxLength: 9 },
          prompt: `${"p".repeat(253)}📡📡`,
          promptTitle: "t".repeat(40),
          refusal: "r".repeat(300),
        },
      ],
    });
    const [validation] = (await readXlsx(await writeXlsx(book))).sheets[0]!.validations;
    expect(validation!.prompt).toBe(`${"p".repeat(253)}…`);
    expect(validation!.promptTitle).toBe(`${"t".repeat(31)}…`);
    expect(validation!.refusal).toHaveLength(255);
  });

  test("a long foot is cut so that the whole stays within the format's 255 characters", async () => {
    const print = {
      orientation: "portrait",
      paper: "letter",
      footLeft: "&".repeat(300),
      footRight: "x".repeat(300),
    } as const;
    const foot = /<oddFooter>(.*)<\/oddFooter>/.exec(
      partOf(await writeXlsx(bookOf({ ...emptySheet("S"), print })), SHEET),
    )![1]!;
    expect(foot.replace(/&amp;/g, "&").length).toBeLessThanOrEqual(255);
  });
});
