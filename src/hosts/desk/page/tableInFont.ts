/** Source: OpenType 1.9, "The OpenType font file" (table directory). */
const COUNT_AT = 4;
const DIRECTORY_AT = 12;
const RECORD_BYTES = 16;

/** @returns where the table's bytes are in the font; undefined when it has none of this tag, or is no font */
export function tableInFont(font: Uint8Array, tag: string): { start: number; end: number } | undefined {
  const view = new DataView(font.buffer, font.byteOffset, font.length);
  if (font.length < DIRECTORY_AT) return undefined;
  const end = Math.min(DIRECTORY_AT + RECORD_BYTES * view.getUint16(COUNT_AT), font.length);
  for (let at = DIRECTORY_AT; at + RECORD_BYTES <= end; at += RECORD_BYTES)
    if (String.fromCharCode(...font.subarray(at, at + 4)) === tag) {
      const start = view.getUint32(at + 8);
      return { start, end: start + view.getUint32(at + 12) };
    }
  return undefined;
}
