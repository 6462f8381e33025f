/** Files made to harm a reader. XML after ECMA-376 part 1, written by hand. */
import { writeXlsx } from "../../../../src/hosts/file/writeXlsx";
import type { JobInputs } from "../../../../src/workbooks/definition";
import { layOut } from "../../../../src/workbooks/layOut";
import { multiRoom } from "../../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../../src/workbooks/multiRoom/guestHouse";
import { zip, type Entry } from "./zip";

export interface Hostile {
  readonly name: string;
  readonly bytes: () => Uint8Array | Promise<Uint8Array>;
  /** A part of the sentence that refuses it; absent for a file that is read. */
  readonly refused?: string;
  /** For a file that is read: what its cells hold, by address of the first sheet. */
  readonly cells?: Readonly<Record<string, unknown>>;
  readonly sheet?: string;
  readonly names?: number;
  /** For a job: what is computed as well, and what then comes back as filled in. */
  readonly job?: JobInputs;
}

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELS = "http://schemas.openxmlformats.org/package/2006/relationships";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const ONE = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>';
const SHEET = "xl/worksheets/sheet1.xml";

interface Made {
  readonly before?: string;
  readonly sheet?: string;
  readonly styles?: string;
  readonly workbook?: string;
  readonly title?: string;
  readonly more?: readonly Entry[];
}

function parts({
  before = "",
  sheet = ONE,
  styles = "",
  workbook = "",
  title = "S",
  more = [],
}: Made): Entry[] {
  return [
    {
      name: "[Content_Types].xml",
      content: '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    },
    {
      name: "_rels/.rels",
      content: `<Relationships xmlns="${RELS}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    },
    {
      name: "xl/_rels/workbook.xml.rels",
      content: `<Relationships xmlns="${RELS}"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`,
    },
    {
      name: "xl/workbook.xml",
      content: `${before}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="${title}" sheetId="1" r:id="rId1"/></sheets>${workbook}</workbook>`,
    },
    { name: SHEET, content: `<worksheet xmlns="${MAIN}">${sheet}</worksheet>` },
    { name: "xl/styles.xml", content: `<styleSheet xmlns="${MAIN}">${styles}</styleSheet>` },
    ...more,
  ];
}
const SHEET_OF_ONE = `<worksheet xmlns="${MAIN}">${ONE}</worksheet>`;
/** The sheet in bytes of its own. */
const withSheet = (content: Buffer): Entry[] =>
  parts({}).map((part) => (part.name === SHEET ? { ...part, content } : part));
const file = (made: Made) => (): Buffer => zip(parts(made));
const many = (count: number, one: (index: number) => string): string =>
  Array.from({ length: count }, (_, i) => one(i)).join("");
const spaces = (bytes: number): Buffer => Buffer.alloc(bytes, " ");
const inline = (at: string, text: string): string => `<c r="${at}" t="inlineStr"><is><t>${text}</t></is></c>`;

type Row = Readonly<Record<string, number | string>>;
/** The demonstration with another text in every cell of Rooms and Site that takes any text. */
function withText(text: string): JobInputs {
  const rooms = guestHouse.blocks!.rooms!.map((row, index): Row => ({
    ...row,
    floor: text,
    room: `${text}${index}`,
    note: text,
  }));
  return {
    fields: {
      ...guestHouse.fields,
      site_job: text,
      site_customer: text,
      site_place: text,
      site_prepared_by: text,
    },
    blocks: { ...guestHouse.blocks, rooms },
  };
}
const renamed = (name: string): JobInputs => ({
  fields: guestHouse.fields!,
  blocks: {
    ...guestHouse.blocks,
    cables: guestHouse.blocks!.cables!.map((row) => (row.name === "indoor drop" ? { ...row, name } : row)),
    rooms: guestHouse.blocks!.rooms!.map((row, index) => ({
      ...row,
      ...(row.cable === "indoor drop" && { cable: name }),
      ...(index === 0 && { outlet: name, room: "constructor" }),
    })),
  },
});
const job = (name: string, inputs: JobInputs): Hostile => ({
  name,
  bytes: () => writeXlsx(layOut(multiRoom, inputs)),
  job: inputs,
});
const ring = (): JobInputs => ({
  ...guestHouse,
  blocks: {
    ...guestHouse.blocks,
    branches: guestHouse.blocks!.branches!.map((row, index, all) => ({
      ...row,
      from: all[(index + 1) % all.length]!.id!,
    })),
  },
});

export const corpus: readonly Hostile[] = [
  {
    name: "padding in a part",
    bytes: file({ more: [{ name: "xl/sharedStrings.xml", content: spaces(100 * 2 ** 20) }] }),
    refused: "packed more tightly",
  },
  {
    name: "padding after the archive",
    bytes: () => Buffer.concat([file({})(), Buffer.alloc(65 * 2 ** 20)]),
    refused: "the most that is read",
  },
  {
    name: "entry-count bomb",
    bytes: () =>
      zip(parts({ more: Array.from({ length: 30_000 }, (_, i) => ({ name: `xl/a${i}.xml`, content: "" })) })),
    refused: "parts; the most that is read",
  },
  {
    name: "ratio bomb",
    bytes: file({ sheet: "<sheetData/>" + " ".repeat(60 * 2 ** 20) }),
    refused: "packed more tightly",
  },
  {
    name: "many parts that are large together",
    bytes: file({
      more: Array.from({ length: 200 }, (_, i) => ({
        name: `xl/media/${i}.png`,
        content: "",
        size: 3 * 2 ** 20,
      })),
    }),
    refused: "would unpack to",
  },
  {
    name: "nested archive",
    bytes: file({ more: [{ name: "xl/embeddings/inner.xlsx", content: zip(parts({})) }] }),
    cells: { A1: 1 },
  },
  {
    name: "lying sizes",
    bytes: () => zip(parts({}).map((part) => (part.name === SHEET ? { ...part, size: 9 } : part))),
    refused: `damaged at ${SHEET}`,
  },
  {
    name: "DTD",
    bytes: file({ before: '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>' }),
    refused: "declarations of its own",
  },
  {
    name: "external entity",
    bytes: file({ before: '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/hostname">]>' }),
    refused: "declarations of its own",
  },
  {
    name: "external entity in a sheet",
    bytes: () =>
      zip(
        parts({}).map((part) =>
          part.name === SHEET
            ? { ...part, content: `<!DOCTYPE x SYSTEM "http://192.0.2.1/x.dtd">${part.content as string}` }
            : part,
        ),
      ),
    refused: "declarations of its own",
  },
  {
    name: "a row beyond the sheet",
    bytes: file({ sheet: '<sheetData><row r="1048577"><c r="A1048577"><v>1</v></c></row></sheetData>' }),
    refused: SHEET,
  },
  {
    name: "a column beyond the sheet",
    bytes: file({ sheet: '<sheetData><row r="1"><c r="XFE1"><v>1</v></c></row></sheetData>' }),
    refused: SHEET,
  },
  {
    name: "whole-sheet merge",
    bytes: file({ sheet: `${ONE}<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>` }),
    cells: { A1: 1 },
  },
  {
    name: "whole-sheet validation",
    bytes: file({
      sheet: `${ONE}<dataValidations><dataValidation type="decimal" operator="lessThan" sqref="A1:XFD1048576"><formula1>9</formula1></dataValidation></dataValidations>`,
    }),
    cells: { A1: 1 },
  },
  {
    name: "a million names",
    bytes: file({
      workbook: `<definedNames>${many(1_000_000, (i) => `<definedName name="n${i}">S!$A$1</definedName>`)}</definedNames>`,
    }),
    refused: "names; the most that is read",
  },
  {
    name: "a hundred thousand styles",
    bytes: file({ styles: `<cellXfs>${many(100_000, (i) => `<xf numFmtId="${i}"/>`)}</cellXfs>` }),
    refused: "styles; the most that is read",
  },
  {
    name: "a million texts, in a part of another name",
    bytes: file({
      more: [
        {
          name: "xl/texts.xml",
          content: `<sst xmlns="${MAIN}">${many(1_000_000, (i) => `<si><t>${i}</t></si>`)}</sst>`,
        },
      ],
    }),
    refused: "1000000 texts; the most that is read is 250000",
  },
  {
    name: "a text of a million pieces",
    bytes: file({
      more: [
        {
          name: "xl/sharedStrings.xml",
          content: `<sst xmlns="${MAIN}"><si>${many(1_000_000, (i) => `<r><t>${i}</t></r>`)}</si></sst>`,
        },
      ],
    }),
    refused: "texts; the most that is read is 250000",
  },
  {
    name: "a sheet in UTF-16 with its mark",
    bytes: () =>
      zip(withSheet(Buffer.from(`\uFEFF<?xml version="1.0" encoding="UTF-16"?>${SHEET_OF_ONE}`, "utf16le"))),
    cells: { A1: 1 },
  },
  {
    name: "a sheet in UTF-16, the other way round and without its mark",
    bytes: () =>
      zip(
        withSheet(
          Buffer.from(`<?xml version='1.0' encoding='UTF-16BE'?>${SHEET_OF_ONE}`, "utf16le").swap16(),
        ),
      ),
    cells: { A1: 1 },
  },
  {
    name: "a declaration hidden in UTF-16",
    bytes: () =>
      zip(
        withSheet(
          Buffer.from(`\uFEFF<!DOCTYPE x SYSTEM "http://192.0.2.1/x.dtd">${SHEET_OF_ONE}`, "utf16le"),
        ),
      ),
    refused: "declarations of its own",
  },
  {
    name: "a sheet in Latin-1",
    bytes: () =>
      zip(withSheet(Buffer.from(`<?xml version="1.0" encoding="ISO-8859-1"?>${SHEET_OF_ONE}`, "latin1"))),
    refused: `${SHEET} of the file is written in "ISO-8859-1"`,
  },
  {
    name: "path with ..",
    bytes: file({ more: [{ name: "xl/../../../outside.xml", content: "x" }] }),
    refused: "which no workbook has",
  },
  {
    name: "duplicate entries",
    bytes: file({ more: [{ name: SHEET, content: "<worksheet/>" }] }),
    refused: `damaged at ${SHEET}`,
  },
  { name: "truncated", bytes: () => file({})().subarray(0, 700), refused: "cut short" },
  {
    name: "encrypted part",
    bytes: () => zip(parts({}).map((part) => ({ ...part, flags: 1 }))),
    refused: "encrypted",
  },
  {
    name: "encrypted workbook",
    bytes: () =>
      Buffer.concat([
        Buffer.from("d0cf11e0a1b11ae1", "hex"),
        Buffer.alloc(504),
        Buffer.from("EncryptedPackage", "utf16le"),
      ]),
    refused: "protected with a password",
  },
  {
    name: "macro-enabled",
    bytes: file({ more: [{ name: "xl/vbaProject.bin", content: "x" }] }),
    refused: "holds macros",
  },
  { name: "wrong extension", bytes: () => Buffer.from("room;run\n1;2\n"), refused: "a text table (CSV)" },
  { name: "empty", bytes: () => Buffer.alloc(0), refused: "The file is empty" },
  {
    name: "external links",
    bytes: file({
      sheet: '<sheetData><row r="1"><c r="A1"><f>[1]S!A1</f><v>7</v></c></row></sheetData>',
      more: [
        { name: "xl/externalLinks/externalLink1.xml", content: "<externalLink/>" },
        {
          name: "xl/externalLinks/_rels/externalLink1.xml.rels",
          content: `<Relationships xmlns="${RELS}"><Relationship Id="rId1" Type="${OFFICE}/externalLinkPath" Target="http://192.0.2.1/a.xlsx" TargetMode="External"/></Relationships>`,
        },
      ],
    }),
    cells: { A1: 7 },
  },
  {
    name: "a prototype key as the sheet's and a range's name",
    bytes: file({
      title: "__proto__",
      workbook:
        '<definedNames><definedName name="__proto__">__proto__!$A$1</definedName><definedName name="constructor">__proto__!$A$1</definedName></definedNames>',
    }),
    sheet: "__proto__",
    names: 2,
    cells: { A1: 1 },
  },
  {
    name: "a prototype key as text",
    bytes: file({
      sheet: `<sheetData><row r="1">${inline("A1", "__proto__")}${inline("B1", "constructor")}</row></sheetData>`,
    }),
    cells: { A1: "__proto__", B1: "constructor" },
  },
  {
    name: "deep nesting",
    bytes: file({ sheet: `${ONE}${"<a>".repeat(200_000)}${"</a>".repeat(200_000)}` }),
    cells: { A1: 1 },
  },
  job("prototype keys as outlet, room and part names", renamed("__proto__")),
  job("formula text in every text field", withText('=HYPERLINK("http://192.0.2.1",1)')),
  job("HTML and script in every text field", withText("<script>alert(1)</script>")),
  job("a cyclic tree", ring()),
  {
    name: "a spill collision",
    bytes: file({
      sheet:
        '<sheetData><row r="1"><c r="A1" t="str"><f t="array" ref="A1:A2">_xldudf_RIG_CASCADELOSS(C1:C2)</f><v/></c></row><row r="2"><c r="A2"><f t="array" ref="A2:A3">C1:C2</f><v>5</v></c></row></sheetData>',
    }),
    cells: { A2: 5 },
  },
];
