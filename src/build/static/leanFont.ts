/**
 * A TrueType font without the names of its glyphs and without hinting: nearly a fifth
 * of what the desk's two fonts weigh packed, and nothing that draws characters by
 * their outlines alone asks for them. Outlines, metrics and kerning stay.
 *
 * Source: OpenType 1.9, "The OpenType font file" (table directory, checksums) and
 *   "post": version 3.0 has a header of 32 bytes and no names.
 */
import { viewOf } from "./viewOf";
import { withoutInstructions } from "./withoutInstructions";

/** The first word of a font whose outlines are in "glyf". */
const TRUETYPE = 0x0001_0000;
const DIRECTORY_AT = 12;
const RECORD_BYTES = 16;
const POST_HEADER_BYTES = 32;
const POST_VERSION_3 = 0x0003_0000;
/** In "head". */
const ADJUSTMENT_AT = 8;
const LOCA_FORMAT_AT = 50;
const WHOLE_SUM = 0xb1b0_afba;
/** What instructions call and read, when they are followed, and times that the font's editor keeps for itself. */
const LEFT_OUT: ReadonlySet<string> = new Set(["fpgm", "prep", "cvt ", "gasp", "FFTM"]);

/** By tag, in the directory's order. */
type Tables = Map<string, Uint8Array>;

/** @throws Error when the font is not a TrueType one */
export function leanFont(font: Uint8Array): Uint8Array {
  const tables = tablesOf(font);
  const [head, loca, glyf] = ["head", "loca", "glyf"].map((tag) => tables.get(tag));
  if (head === undefined || loca === undefined || glyf === undefined)
    throw new Error("Only a TrueType font can go without hinting; this file is none.");
  const isLong = viewOf(head).getUint16(LOCA_FORMAT_AT) === 1;
  const outlines = withoutInstructions({ loca, glyf }, isLong);
  tables.set("loca", outlines.loca).set("glyf", outlines.glyf);
  const post = tables.get("post");
  if (post !== undefined) tables.set("post", withoutNames(post));
  for (const tag of LEFT_OUT) tables.delete(tag);
  return written(tables);
}

/** @returns copies, none when it is no TrueType font */
function tablesOf(font: Uint8Array): Tables {
  const tables: Tables = new Map();
  const view = viewOf(font);
  if (font.length < DIRECTORY_AT || view.getUint32(0) !== TRUETYPE) return tables;
  const count = view.getUint16(4);
  for (let index = 0; index < count; index++) {
    const at = DIRECTORY_AT + RECORD_BYTES * index;
    const start = view.getUint32(at + 8);
    const bytes = font.subarray(start, start + view.getUint32(at + 12));
    tables.set(String.fromCharCode(...font.subarray(at, at + 4)), Uint8Array.from(bytes));
  }
  return tables;
}

function withoutNames(post: Uint8Array): Uint8Array {
  const header = post.slice(0, POST_HEADER_BYTES);
  viewOf(header).setUint32(0, POST_VERSION_3);
  return header;
}

function written(tables: Tables): Uint8Array {
  const first = DIRECTORY_AT + RECORD_BYTES * tables.size;
  const whole = new Uint8Array([...tables.values()].reduce((sum, { length }) => sum + padded(length), first));
  const view = viewOf(whole);
  const selector = Math.floor(Math.log2(tables.size));
  const range = RECORD_BYTES * 2 ** selector;
  view.setUint32(0, TRUETYPE);
  view.setUint16(4, tables.size);
  view.setUint16(6, range);
  view.setUint16(8, selector);
  view.setUint16(10, RECORD_BYTES * tables.size - range);
  let at = DIRECTORY_AT;
  let start = first;
  let head = 0;
  for (const [tag, bytes] of tables) {
    if (tag === "head") {
      head = start;
      viewOf(bytes).setUint32(ADJUSTMENT_AT, 0);
    }
    for (let letter = 0; letter < tag.length; letter++) whole[at + letter] = tag.charCodeAt(letter);
    view.setUint32(at + 4, sumOf(bytes));
    view.setUint32(at + 8, start);
    view.setUint32(at + 12, bytes.length);
    whole.set(bytes, start);
    at += RECORD_BYTES;
    start += padded(bytes.length);
  }
  view.setUint32(head + ADJUSTMENT_AT, (WHOLE_SUM - sumOf(whole)) >>> 0);
  return whole;
}

const padded = (length: number): number => (length + 3) & ~3;

/** Of words of four bytes, the last filled up with zeros. */
function sumOf(bytes: Uint8Array): number {
  const whole = new Uint8Array(padded(bytes.length));
  whole.set(bytes);
  const view = viewOf(whole);
  let sum = 0;
  for (let at = 0; at < whole.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
