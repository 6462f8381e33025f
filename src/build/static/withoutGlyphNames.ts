/**
 * A TrueType font without the names of its glyphs: a sixth of what the desk's two
 * fonts weigh packed, and nothing that draws by characters asks for them.
 *
 * Source: OpenType 1.9, "The OpenType font file" (table directory, checksums) and
 *   "post": version 3.0 has a header of 32 bytes and no names.
 */
const DIRECTORY_AT = 12;
const RECORD_BYTES = 16;
const POST_HEADER_BYTES = 32;
const POST_VERSION_3 = 0x0003_0000;
/** In "head". */
const ADJUSTMENT_AT = 8;
const WHOLE_SUM = 0xb1b0_afba;

interface Table {
  readonly tag: string;
  readonly bytes: Uint8Array;
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.length);

/** @returns the font with the same tables in the same order, its "post" without names */
export function withoutGlyphNames(font: Uint8Array): Uint8Array {
  const view = viewOf(font);
  const count = view.getUint16(4);
  const tables = Array.from({ length: count }, (_, index): Table => {
    const at = DIRECTORY_AT + RECORD_BYTES * index;
    const [start, length] = [view.getUint32(at + 8), view.getUint32(at + 12)];
    return { tag: tagAt(font, at), bytes: lean(tagAt(font, at), font.slice(start, start + length)) };
  });
  const first = DIRECTORY_AT + RECORD_BYTES * count;
  const whole = new Uint8Array(first + tables.reduce((sum, { bytes }) => sum + padded(bytes.length), 0));
  whole.set(font.subarray(0, first));
  const written = viewOf(whole);
  let start = first;
  let head = 0;
  for (const [index, { tag, bytes }] of tables.entries()) {
    const at = DIRECTORY_AT + RECORD_BYTES * index;
    if (tag === "head") {
      head = start;
      viewOf(bytes).setUint32(ADJUSTMENT_AT, 0);
    }
    written.setUint32(at + 4, sumOf(bytes));
    written.setUint32(at + 8, start);
    written.setUint32(at + 12, bytes.length);
    whole.set(bytes, start);
    start += padded(bytes.length);
  }
  written.setUint32(head + ADJUSTMENT_AT, (WHOLE_SUM - sumOf(whole)) >>> 0);
  return whole;
}

const tagAt = (font: Uint8Array, at: number): string => String.fromCharCode(...font.subarray(at, at + 4));

const padded = (length: number): number => (length + 3) & ~3;

function lean(tag: string, bytes: Uint8Array): Uint8Array {
  if (tag !== "post") return bytes;
  const header = bytes.slice(0, POST_HEADER_BYTES);
  viewOf(header).setUint32(0, POST_VERSION_3);
  return header;
}

/** Of words of four bytes, the last filled up with zeros. */
function sumOf(bytes: Uint8Array): number {
  const whole = new Uint8Array(padded(bytes.length));
  whole.set(bytes);
  const view = viewOf(whole);
  let sum = 0;
  for (let at = 0; at < whole.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
