/** Files as Excel writes them after a person's edits; the XML is written by hand after ECMA-376 part 1. */
import { Workbook } from "@cj-tech-master/excelts";
import { packed, storedPart } from "../../../src/hosts/file/archive";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { bookOf, emptySheet } from "../../support/books";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELS = "http://schemas.openxmlformats.org/package/2006/relationships";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

interface Written {
  /** What stands between the worksheet's tags. */
  readonly sheet: string;
  readonly styles?: string;
  readonly strings?: string;
  readonly workbook?: string;
  readonly more?: Record<string, string>;
}

function fileOf({ sheet, styles = "", strings = "", workbook = "", more = {} }: Written): Uint8Array {
  const encoder = new TextEncoder();
  const parts: Record<string, string> = {
    "[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    "_rels/.rels": `<Relationships xmlns="${RELS}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${RELS}"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/styles" Target="styles.xml"/><Relationship Id="rId3" Type="${OFFICE}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${workbook.includes("<workbookPr") ? workbook : ""}<sheets><sheet name="Rooms" sheetId="1" r:id="rId1"/></sheets>${workbook.includes("<workbookPr") ? "" : workbook}</workbook>`,
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${MAIN}">${sheet}</worksheet>`,
    "xl/styles.xml": `<styleSheet xmlns="${MAIN}">${styles}</styleSheet>`,
    "xl/sharedStrings.xml": `<sst xmlns="${MAIN}">${strings}</sst>`,
    ...more,
  };
  return packed(Object.entries(parts).map(([name, text]) => storedPart(name, encoder.encode(text))));
}

const read = async (written: Written) => {
  const book = await readXlsx(fileOf(written));
  return { book, sheet: book.sheets[0]! };
};

describe("formulas", () => {
  test("a filled-down formula is shared by its cells", async () => {
    const { sheet } = await read({
      sheet: `<sheetData>
        <row r="2"><c r="C2"><f t="shared" ref="C2:C4" si="0">A2*$B$1+LOG10(B2)+SUM(D:D)+SUM($3:3)+Site!A2&amp;"A2"&amp;'A2'!B2</f><v>1</v></c></row>
        <row r="3"><c r="C3"><f t="shared" si="0"/><v>2</v></c></row>
        <row r="4"><c r="C4"><f t="shared" si="0"/><v>3</v></c></row></sheetData>`,
    });
    expect(sheet.cells.C3!.formula).toBe(`A3*$B$1+LOG10(B3)+SUM(D:D)+SUM($3:4)+Site!A3&"A2"&'A2'!B3`);
    expect(sheet.cells.C4!.formula).toBe(`A4*$B$1+LOG10(B4)+SUM(D:D)+SUM($3:5)+Site!A4&"A2"&'A2'!B4`);
    expect(sheet.results).toEqual({ C2: 1, C3: 2, C4: 3 });
  });

  test("a shared formula that would leave the sheet refers to nothing", async () => {
    const { sheet } = await read({
      sheet: `<sheetData><row r="1"><c r="A1"><f t="shared" si="0"/></c></row>
        <row r="2"><c r="B2"><f t="shared" ref="A1:B2" si="0">A1+B$2</f></c></row></sheetData>`,
    });
    expect(sheet.cells.A1!.formula).toBe("#REF!+A$2");
  });

  test("our calls in any letter case, newer native functions, and text left alone", async () => {
    const { sheet } = await read({
      sheet: `<sheetData><row r="1">
        <c r="A1"><f>_xldudf_rig_cableloss(A2)+_xldudf_RIG_SLOPE(1)</f></c>
        <c r="B1"><f>_xlfn.IFNA(_xlfn._xlws.SORT(A2:A4),"_xlfn.IFNA(")&amp;"_xldudf_RIG_X("</f></c>
        <c r="C1"><f>_xlfn.LET(_xlpm.x,1,_xlpm.x)</f></c></row></sheetData>`,
    });
    expect(sheet.cells.A1!.formula).toBe("RIG.CABLELOSS(A2)+RIG.SLOPE(1)");
    expect(sheet.cells.B1!.formula).toBe('IFNA(SORT(A2:A4),"_xlfn.IFNA(")&"_xldudf_RIG_X("');
    expect(sheet.cells.C1!.formula).toBe("_xlfn.LET(_xlpm.x,1,_xlpm.x)");
  });

  test.each([
    "RIG.CABLELOSS(rooms_cable,rooms_run,low)",
    'IF(A1="RIG.X(",RIG.SLOPE(1),IFNA(B1,"IFNA("))',
    "SUM('RIG.X('!A1:A3)",
    "SORT(FILTER(A1:A9,B1:B9>0))",
    "MYRIG.X(1)+A_RIG.X(1)",
    "STDEV.S(A1:A9)+NORM.S.DIST(1,TRUE)",
    'A1&"_x0041_"',
  ])("%s is the same after writing and reading", async (formula) => {
    const book = bookOf({ ...emptySheet("S"), cells: { A1: { formula } }, results: { A1: 1 } });
    expect((await readXlsx(await writeXlsx(book))).sheets[0]!.cells.A1).toEqual({ formula });
  });

  test("what an array formula fills are results, not what somebody typed", async () => {
    const { sheet } = await read({
      sheet: `<sheetData>
        <row r="1"><c r="A1" t="str"><f t="array" ref="A1:B2">_xldudf_RIG_LOOKANGLES(D1:D2)</f><v>x</v></c><c r="B1"><v>2</v></c><c r="C1"><v>9</v></c></row>
        <row r="2"><c r="A2" t="e"><v>#N/A</v></c><c r="B2" t="b"><v>1</v></c></row></sheetData>`,
    });
    expect(sheet.cells).toEqual({
      A1: { formula: "RIG.LOOKANGLES(D1:D2)", spill: { rows: 2, columns: 2 } },
      C1: { value: 9 },
    });
    expect(sheet.results).toEqual({ A1: "x", B1: 2, A2: { error: "#N/A" }, B2: true });
  });
});

describe("values", () => {
  test("a date is the number that is stored, whatever the format's number or text", async () => {
    const { book, sheet } = await read({
      styles: `<numFmts count="1"><numFmt numFmtId="170" formatCode="dd/mm/yyyy &quot;at&quot; hh:mm"/></numFmts>
        <fonts><font/></fonts><cellXfs><xf/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="46"/><xf numFmtId="4"/></cellXfs>`,
      sheet: `<sheetData><row r="1"><c r="A1" s="1"><v>46000.12345678901</v></c><c r="B1" s="2"><v>60</v></c><c r="C1" s="3"><v>1.5</v></c><c r="D1" s="4"><v>1E-300</v></c></row></sheetData>`,
    });
    expect(sheet.cells.A1!.value).toBe(46_000.12345678901);
    expect(sheet.cells.B1!.value).toBe(60);
    expect(sheet.cells.C1!.value).toBe(1.5);
    expect(sheet.cells.D1!.value).toBe(1e-300);
    expect(["A1", "B1", "C1", "D1"].map((at) => book.looks[sheet.cells[at]!.look!]!.format)).toEqual([
      "yyyy-mm-dd",
      'dd/mm/yyyy "at" hh:mm',
      "[h]:mm:ss",
      "#,##0.00",
    ]);
  });

  test("text with several fonts, escapes and line ends", async () => {
    const { sheet } = await read({
      strings: `<si><r><rPr><b/></rPr><t xml:space="preserve">No </t></r><r><t>smoking</t></r></si><si><t>a_x000D_
b_x005F_x000D_</t></si>`,
      sheet: `<sheetData><row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="inlineStr"><is><t>=1</t></is></c></row></sheetData>`,
    });
    expect(sheet.cells).toEqual({
      A1: { value: "No smoking" },
      B1: { value: "a\r\nb_x000D_" },
      C1: { value: "=1" },
    });
  });
});

describe("around the cells", () => {
  test("ranges that Excel has parted after rows were inserted", async () => {
    const { sheet } = await read({
      sheet: `<sheetData/><dataValidations><dataValidation type="decimal" operator="lessThanOrEqual" errorStyle="information" sqref="B5:B9 B12"><formula1>9</formula1></dataValidation>
        <dataValidation type="custom" sqref="C1"><formula1>A1&gt;2</formula1></dataValidation>
        <dataValidation type="whole" sqref="D1"><formula1>A1</formula1><formula2>9</formula2></dataValidation></dataValidations>`,
    });
    const rule = { kind: "number", max: 9 };
    expect(sheet.validations).toEqual([
      { range: "B5:B9", rule, warnOnly: true },
      { range: "B12", rule, warnOnly: true },
    ]);
  });

  test("only widths that somebody set, and colours of the theme", async () => {
    const { book, sheet } = await read({
      styles: `<fonts><font/><font><b/><color theme="1"/></font><font><color theme="4"/></font></fonts>
        <fills><fill/><fill/><fill><patternFill patternType="solid"><fgColor rgb="FFFFF2CC"/></patternFill></fill></fills>
        <cellXfs><xf/><xf fontId="1" fillId="2"/><xf fontId="2"/></cellXfs>`,
      sheet: `<cols><col min="1" max="1" width="20" customWidth="1"/><col min="2" max="16384" width="8.6"/></cols>
        <sheetData><row r="1"><c r="A1" s="1"/><c r="B1" s="2"/></row></sheetData>`,
      more: {
        "xl/theme/theme1.xml": `<a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"><a:themeElements><a:clrScheme name="x">${["dk1", "lt1", "dk2", "lt2", "accent1", "accent2", "accent3", "accent4", "accent5", "accent6", "hlink", "folHlink"].map((name, index) => `<a:${name}><a:srgbClr val="0000${(16 + index).toString(16).toUpperCase()}"/></a:${name}>`).join("")}</a:clrScheme></a:themeElements></a:theme>`,
      },
    });
    expect(sheet.columnWidths).toEqual({ 0: 20 });
    expect(book.looks[sheet.cells.A1!.look!]).toEqual({ bold: true, fill: "FFF2CC" });
    expect(book.looks[sheet.cells.B1!.look!]).toEqual({ color: "000014" });
  });

  test("names of one range; broken, local and multiple ones are none of a book", async () => {
    const { book } = await read({
      sheet: "<sheetData/>",
      workbook: `<definedNames><definedName name="a">Rooms!$A$1</definedName><definedName name="b">Rooms!#REF!</definedName><definedName name="c" localSheetId="0">Rooms!$A$1</definedName><definedName name="d">Rooms!$A$1,Rooms!$B$1</definedName><definedName name="e">Elsewhere!$A$1</definedName></definedNames>`,
    });
    expect(book.names).toEqual([{ name: "a", sheet: "Rooms", range: "A1" }]);
  });

  test("a workbook that is not ours has no template", async () => {
    const { book } = await read({ sheet: "<sheetData/>" });
    expect([book.template, book.templateVersion, book.title]).toEqual(["", "", ""]);
  });

  test("dates counted from 1904 are refused", async () => {
    await expect(read({ sheet: "<sheetData/>", workbook: `<workbookPr date1904="1"/>` })).rejects.toThrow(
      "counts its dates from 1904",
    );
  });
});

test("rows and columns that another program hid are known; unused columns to the right are not told", async () => {
  const workbook = new Workbook();
  const sheet = workbook.addWorksheet("S");
  for (const row of [1, 2, 3]) sheet.getRow(row).values = [1, 2, 3];
  sheet.getRow(2).hidden = true;
  sheet.getColumn(2).hidden = true;
  sheet.getColumn(9).hidden = true;
  const book = await readXlsx(new Uint8Array(await workbook.xlsx.writeBuffer()));
  expect(book.sheets[0]).toMatchObject({ hiddenRows: [1], hiddenColumns: [1] });
});
