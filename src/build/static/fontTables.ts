/**
 * A TrueType font taken apart into its tables, and put together again.
 *
 * Source: OpenType 1.9, "The OpenType font file" (table directory, checksums).
 */
import { viewOf } from "./viewOf";

/** The first word of a font whose outlines are in "glyf". */
const TRUETYPE = 0x0001_0000;
const DIRECTORY_AT = 12;
const RECORD_BYTES = 16;
/** Of the sum of the whole font, in "head". */
const ADJUSTMENT_AT = 8;
const WHOLE_SUM = 0xb1b0_afba;

/** By tag, in the directory's order. */
export type FontTables = Map<string, Uint8Array>;

/** @returns copies, none when it is no TrueType font */
export function fontTables(font: Uint8Array): FontTables {
  const tables: FontTables = new Map();
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

export function writtenFont(tables: FontTables): Uint8Array {
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
