/** Files that must be refused before the library sees them, each with a sentence that says what to do. */
import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { packed, storedPart, type Part } from "../../../src/hosts/file/archive";
import { FileTrouble } from "../../../src/hosts/file/fileTrouble";
import { MAX_ENTRIES, MAX_FILE_BYTES } from "../../../src/hosts/file/limits";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { bookOf, emptySheet, sampleBook } from "../../support/books";
import { partsOf } from "../../support/parts";
import { tries } from "../../support/tries";

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const part = (name: string, text = "<x/>"): Part => storedPart(name, encode(text));
const workbook = ["[Content_Types].xml", "_rels/.rels", "xl/workbook.xml"].map((name) => part(name));
const ole = (inside: string): Uint8Array =>
  Buffer.concat([
    Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
    Buffer.alloc(504),
    Buffer.from(inside, "utf16le"),
  ]);
/** The bytes with some of them changed, found by a text in front. */
function altered(parts: readonly Part[], change: (bytes: Buffer) => void): Uint8Array {
  const bytes = Buffer.from(packed(parts));
  change(bytes);
  return bytes;
}
const directoryOf = (bytes: Buffer): number => bytes.readUInt32LE(bytes.length - 6);

/** A part that says it unpacks to so many bytes. */
const declaring = (name: string, size: number): Part => ({
  ...part(name),
  method: 8,
  size,
  packed: deflateRawSync(encode("<x/>")),
});

describe("a file that is no workbook", () => {
  test.each<[string, Uint8Array, string]>([
    ["empty", new Uint8Array(), "The file is empty"],
    ["a table of text", encode("room,run\n101,12\n"), "a text table (CSV)"],
    ["a table with a byte-order mark", encode("\uFEFFroom;run\r\n101;12\r\n"), "a text table (CSV)"],
    ["plain text", encode("hello"), "plain text"],
    ["a PDF", encode("%PDF-1.7\n\u0000\u0001"), "a PDF document"],
    ["a web page", encode("<!DOCTYPE html><table>"), "a web page"],
    ["XML", encode('<?xml version="1.0"?><Workbook/>'), "an XML document"],
    ["an old workbook", ole("Workbook"), "an old Excel workbook (.xls)"],
    ["a protected workbook", ole("EncryptedPackage"), "protected with a password"],
    ["noise", Uint8Array.from([1, 2, 3, 4, 5, 0, 7, 8]), "it does not begin as one"],
    ["an empty archive", packed([]), "an empty ZIP archive"],
    ["a text document", packed([part("[Content_Types].xml"), part("word/document.xml")]), "a Word document"],
    ["an OpenDocument sheet", packed([part("mimetype"), part("content.xml")]), "an OpenDocument file"],
    [
      "a binary workbook",
      packed([part("[Content_Types].xml"), part("xl/workbook.bin")]),
      "a binary workbook (.xlsb)",
    ],
    ["some archive", packed([part("photo.jpg")]), "a ZIP archive of something else"],
    ["a workbook with macros", packed([...workbook, part("xl/vbaProject.bin")]), "The workbook holds macros"],
    ["parts that say nothing", packed(workbook), "could not be read"],
  ])("%s", async (_, bytes, sentence) => {
    await expect(readXlsx(bytes)).rejects.toMatchObject({
      name: "FileTrouble",
      message: expect.stringContaining(sentence) as string,
    });
  });
});

describe("an archive that is not what it says", () => {
  const big = 5 * 1024 * 1024;
  test.each<[string, () => Uint8Array, string]>([
    ["too large", () => new Uint8Array(MAX_FILE_BYTES + 1), "the most that is read is 64 MiB"],
    [
      "too many parts",
      () => packed(Array.from({ length: MAX_ENTRIES + 1 }, (_, i) => part(`a${i}`))),
      "2001 parts",
    ],
    ["a path upwards", () => packed([...workbook, part("xl/../../etc/passwd")]), "which no workbook has"],
    ["a path from the root", () => packed([...workbook, part("/etc/passwd")]), "which no workbook has"],
    ["a path of another system", () => packed([...workbook, part("xl\\a.xml")]), "which no workbook has"],
    ["one part twice", () => packed([...workbook, part("XL/workbook.xml")]), "damaged at XL/workbook.xml"],
    [
      "one part too large",
      () => packed([...workbook, declaring("xl/a.xml", 129 * 1024 * 1024)]),
      "would unpack to 129 MiB",
    ],
    ["packed too tightly", () => packed([...workbook, declaring("xl/a.xml", big)]), "packed more tightly"],
    [
      "many parts too large together",
      () =>
        packed([
          ...workbook,
          ...Array.from({ length: 130 }, (_, i) => ({ ...declaring(`xl/a${i}.xml`, 4 * 1024 * 1024) })),
        ]),
      "would unpack to 520 MiB",
    ],
    [
      "an encrypted part",
      () => altered(workbook, (bytes) => bytes.writeUInt16LE(1, directoryOf(bytes) + 8)),
      "encrypted or packed in a way",
    ],
    [
      "an unknown packing",
      () => altered(workbook, (bytes) => bytes.writeUInt16LE(14, directoryOf(bytes) + 10)),
      "encrypted or packed in a way",
    ],
    [
      "a directory beyond the file",
      () => altered(workbook, (bytes) => bytes.writeUInt32LE(bytes.length, bytes.length - 6)),
      "damaged at its directory",
    ],
    [
      "two parts over the same bytes",
      () =>
        altered(workbook, (bytes) => {
          const second = directoryOf(bytes) + 46 + "[Content_Types].xml".length;
          bytes.writeUInt32LE(0, second + 42);
        }),
      "damaged at",
    ],
    [
      "a part that unpacks to more than it says",
      () =>
        packed([
          ...workbook.slice(0, 2),
          {
            ...part("xl/workbook.xml"),
            method: 8,
            size: 2,
            packed: deflateRawSync(encode("<x/>".repeat(99))),
          },
        ]),
      "damaged at xl/workbook.xml",
    ],
    [
      "a wrong checksum",
      () => packed([...workbook.slice(0, 2), { ...part("xl/workbook.xml"), crc: 1 }]),
      "damaged at xl/workbook.xml",
    ],
  ])("%s", async (_, make, sentence) => {
    await expect(readXlsx(make())).rejects.toMatchObject({
      name: "FileTrouble",
      message: expect.stringContaining(sentence) as string,
    });
  });
});

describe("a file that was cut or damaged on its way", () => {
  test("cut anywhere, it is refused with a sentence", async () => {
    const whole = await writeXlsx(sampleBook());
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: whole.length - 1 }), async (length) => {
        await expect(readXlsx(whole.slice(0, length))).rejects.toBeInstanceOf(FileTrouble);
      }),
      { numRuns: tries(30, 200) },
    );
  });

  test("with any byte changed, it is read or refused with a sentence, never an accident", async () => {
    const whole = await writeXlsx(bookOf({ ...emptySheet("S"), cells: { A1: { value: "x" } } }));
    await fc.assert(
      fc.asyncProperty(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), async (at, flip) => {
        const bytes = whole.slice();
        bytes[at]! ^= flip;
        await readXlsx(bytes).catch((error: unknown) => {
          expect(error).toBeInstanceOf(FileTrouble);
        });
      }),
      { numRuns: tries(50, 500) },
    );
  });
});

describe("sheets that reach too far", () => {
  const cell = (at: string, sheets = 1) =>
    bookOf(
      ...Array.from({ length: sheets }, (_, i) => ({
        ...emptySheet(`Rooms ${i}`),
        cells: { [at]: { value: 1 } },
      })),
    );
  test.each([
    ["A200001", 1, "has something in row 200001 and column 1"],
    ["BXY1", 1, "has something in row 1 and column 2001"],
    ["XFD1048576", 1, "has something in row 1048576 and column 16384"],
    ["Z200000", 4, "reach too far down and to the right"],
  ])("%s on %d sheets", async (at, sheets, sentence) => {
    await expect(readXlsx(await writeXlsx(cell(at, sheets)))).rejects.toThrow(sentence);
  });

  const sheetOf = (sheetData: string) => async (): Promise<unknown> => {
    const whole = await writeXlsx(bookOf(emptySheet("S")));
    const parts = partsOf(whole);
    parts.set(
      "xl/worksheets/sheet1.xml",
      parts.get("xl/worksheets/sheet1.xml")!.replace("<sheetData/>", `<sheetData>${sheetData}</sheetData>`),
    );
    return readXlsx(packed([...parts].map(([name, text]) => part(name, text))));
  };
  test.each([
    [
      "a row in another notation",
      '<row r="1e6"><c><v>1</v></c></row>',
      "damaged at xl/worksheets/sheet1.xml",
    ],
    [
      "a cell in another notation",
      '<row r="1"><c r="A1e6"><v>1</v></c></row>',
      "damaged at xl/worksheets/sheet1.xml",
    ],
    [
      "a position in an entity",
      '<row r="&#49;048576"><c><v>1</v></c></row>',
      "damaged at xl/worksheets/sheet1.xml",
    ],
    ["a cell without a position", '<row r="1048576"><c><v>1</v></c></row>', "in row 1048576 and column 1"],
    [
      "a position behind a quoted bracket",
      '<row r="1"><c x=">" r="A1048576"><v>1</v></c></row>',
      "in row 1048576",
    ],
    ["a cell behind a comment", '<!-- <c x=" --><row r="1048576"><c><v>1</v></c></row>', "damaged at"],
    [
      "a formula longer than any",
      `<row r="1"><c r="A1"><f>${"[".repeat(40_000)}</f></c></row>`,
      "40000 characters long",
    ],
  ])("%s", async (_, sheetData, sentence) => {
    await expect(sheetOf(sheetData)()).rejects.toMatchObject({
      name: "FileTrouble",
      message: expect.stringContaining(sentence) as string,
    });
  });
});
