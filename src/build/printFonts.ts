/**
 * The type of our printed pages: Source Sans 3 with the characters that we
 * print, as files of our own. Its licence keeps the name "Source" for the
 * unchanged fonts, so that these have another; what it says of rights stays.
 *
 * Source: SIL Open Font License 1.1, clause 3; OpenType 1.9, "name" (format 0,
 *   platform 3, encoding 1, language 0x409).
 */
import { readFile } from "node:fs/promises";
import path from "node:path";
import subsetFont from "subset-font";
import { libraryFile } from "../hosts/headless/libraryFile";
import { PRINT_FONTS, PRINT_FONT_HOME, type PrintFont } from "../hosts/pdf/printFonts";
import { base64 } from "../workbooks/base64";
import { fontTables, writtenFont } from "./static/fontTables";
import { leanFont } from "./static/leanFont";
import { viewOf } from "./static/viewOf";

const PACKAGE = "@expo-google-fonts/source-sans-3";
const FAMILY = "Rigsheet Sans";
const LICENCE = "LICENSE_FONT";

const FACES: Readonly<Record<PrintFont, { readonly file: string; readonly style: string }>> = {
  regular: { file: "400Regular/SourceSans3_400Regular.ttf", style: "Regular" },
  strong: { file: "600SemiBold/SourceSans3_600SemiBold.ttf", style: "SemiBold" },
  italic: { file: "400Regular_Italic/SourceSans3_400Regular_Italic.ttf", style: "Italic" },
};

/** First and last of each range; what the font does not have is left out. */
const CHARACTERS: readonly (readonly [first: number, last: number, what: string])[] = [
  [0x20, 0x7e, "Latin"],
  [0xa0, 0x17f, "Latin-1 and Latin Extended-A"],
  [0x18f, 0x24f, "letters of Romanian, Azerbaijani and others"],
  [0x2c6, 0x2dd, "accents by themselves"],
  [0x300, 0x328, "accents on the letter before"],
  [0x370, 0x3ff, "Greek"],
  [0x400, 0x4ff, "Cyrillic"],
  [0x1e00, 0x1eff, "letters of Vietnamese and others"],
  [0x2010, 0x206f, "dashes, quotation marks, per mille"],
  [0x2070, 0x209f, "raised and lowered figures"],
  [0x20a0, 0x20cf, "currencies"],
  [0x2100, 0x215f, "degrees, ohm, trade mark, fractions"],
  [0x2190, 0x22ff, "arrows and signs of arithmetic"],
  [0x2500, 0x27bf, "lines, boxes to tick, ticks"],
];

/** Kerning, ligatures and accents; the rest would be asked for by name, which nobody does. */
const FEATURES = ["kern", "liga", "ccmp", "mark", "mkmk"];

/** Copyright, version, trademark, licence and its address; as in iconFont.ts, with the version. */
const SAID_OF_RIGHTS = [0, 5, 7, 13, 14];
const WINDOWS_UNICODE = [3, 1, 0x409] as const;
const NAME_RECORD_BYTES = 12;
const NAME_HEADER_BYTES = 6;
/** What a font is called (OpenType 1.9, "name"). */
const ID = { family: 1, style: 2, unique: 3, whole: 4, postScript: 6 } as const;

/** @returns files by their path below `library`, the licence among them */
export async function printFonts(): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  for (const [name, { file, style }] of Object.entries(FACES)) {
    const whole = await readFile(libraryFile(PACKAGE, file));
    files.set(
      path.posix.join(PRINT_FONT_HOME, PRINT_FONTS[name as PrintFont]),
      await printFont(whole, style),
    );
  }
  files.set(
    path.posix.join(PRINT_FONT_HOME, `${LICENCE}.txt`),
    await readFile(libraryFile(PACKAGE, LICENCE)),
  );
  return files;
}

/**
 * @param files of `printFonts`
 * @returns the same for a page: a script, which any server sends rightly
 */
export function printFontScript(files: ReadonlyMap<string, Uint8Array>): string {
  const faces = Object.entries(PRINT_FONTS).map(([face, file]) => [
    face,
    base64(files.get(path.posix.join(PRINT_FONT_HOME, file))!),
  ]);
  return `/*! Rigsheet Sans; its licence stands in NOTICES.txt */\nwindow.rigsheetType = ${JSON.stringify(Object.fromEntries(faces))};\n`;
}

/** @param style as it is told in the font's new name, in Latin letters */
export async function printFont(font: Uint8Array, style: string): Promise<Uint8Array> {
  const characters = CHARACTERS.flatMap(([first, last]) =>
    Array.from({ length: last - first + 1 }, (_, index) => String.fromCodePoint(first + index)),
  );
  const subset = await subsetFont(Buffer.from(font), characters.join(""), {
    targetFormat: "truetype",
    preserveNameIds: SAID_OF_RIGHTS,
    keepFeatures: FEATURES,
  });
  const tables = fontTables(leanFont(subset));
  const rights = saidIn(tables.get("name")!);
  const postScript = `${FAMILY.replaceAll(" ", "")}-${style}`;
  tables.set(
    "name",
    nameTable(
      new Map([
        ...rights,
        [ID.family, FAMILY],
        [ID.style, style],
        [ID.unique, postScript],
        [ID.whole, `${FAMILY} ${style}`],
        [ID.postScript, postScript],
      ]),
    ),
  );
  return writtenFont(tables);
}

/** @returns what it says in UTF-16, by its number */
function saidIn(table: Uint8Array): Map<number, string> {
  const view = viewOf(table);
  const texts = view.getUint16(4);
  const said = new Map<number, string>();
  for (let index = 0; index < view.getUint16(2); index++) {
    const at = NAME_HEADER_BYTES + NAME_RECORD_BYTES * index;
    if (view.getUint16(at) !== WINDOWS_UNICODE[0]) continue;
    const from = texts + view.getUint16(at + 10);
    const bytes = table.subarray(from, from + view.getUint16(at + 8));
    said.set(view.getUint16(at + 6), new TextDecoder("utf-16be").decode(bytes));
  }
  return said;
}

function nameTable(names: ReadonlyMap<number, string>): Uint8Array {
  const sorted = [...names].sort(([one], [other]) => one - other);
  const first = NAME_HEADER_BYTES + NAME_RECORD_BYTES * sorted.length;
  const table = new Uint8Array(first + 2 * sorted.reduce((sum, [, text]) => sum + text.length, 0));
  const view = viewOf(table);
  view.setUint16(2, sorted.length);
  view.setUint16(4, first);
  let offset = 0;
  sorted.forEach(([id, text], index) => {
    const at = NAME_HEADER_BYTES + NAME_RECORD_BYTES * index;
    [...WINDOWS_UNICODE, id, 2 * text.length, offset].forEach((word, place) =>
      view.setUint16(at + 2 * place, word),
    );
    for (let letter = 0; letter < text.length; letter++, offset += 2)
      view.setUint16(first + offset, text.charCodeAt(letter));
  });
  return table;
}
