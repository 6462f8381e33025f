/**
 * Whether all of a PNG is there, as it was written: what embeds one takes damage without a word, or unpacks what a
 * small file only pretends to hold.
 *
 * Source: W3C, Portable Network Graphics (PNG) Specification, 5.3 to 5.5 (chunks), 8.2 (Adam7), 11.2.2 (IHDR).
 */
import { crc32, inflateRawSync } from "node:zlib";

const SIGNATURE_BYTES = 8;
/** Samples of a pixel by colour type. */
const SAMPLES: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
/** Where each pass of an interlaced picture begins, and how far its pixels lie apart: across, then down. */
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;
/** RFC 1950, 2.2: two bytes of head and four of a checksum around the data. */
const ZLIB_HEAD = 2;

/** @param bytes with the head of a PNG */
export function isWholePng(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const data: Uint8Array[] = [];
  let unpacked: number | undefined;
  for (let at = SIGNATURE_BYTES; at + 12 <= bytes.length;) {
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > bytes.length || crc32(bytes.subarray(at + 4, end - 4)) !== view.getUint32(end - 4))
      return false;
    const kind = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (kind === "IHDR") unpacked = unpackedLength(view, at + 8);
    if (kind === "IDAT") data.push(bytes.subarray(at + 8, end - 4));
    if (kind === "IEND") return unpacked !== undefined && holds(data, unpacked);
    at = end;
  }
  return false;
}

function unpackedLength(view: DataView, at: number): number | undefined {
  const [width, height] = [view.getUint32(at), view.getUint32(at + 4)];
  const [depth, colour, interlaced] = [view.getUint8(at + 8), view.getUint8(at + 9), view.getUint8(at + 12)];
  const samples = SAMPLES[colour];
  if (samples === undefined) return undefined;
  const rows = (across: number, down: number): number =>
    across === 0 ? 0 : down * (1 + Math.ceil((across * samples * depth) / 8));
  if (interlaced === 0) return rows(width, height);
  return PASSES.reduce(
    (sum, [left, top, right, below]) =>
      sum + rows(Math.ceil((width - left) / right), Math.ceil((height - top) / below)),
    0,
  );
}

function holds(data: readonly Uint8Array[], length: number): boolean {
  const all = new Uint8Array(data.reduce((sum, one) => sum + one.length, 0));
  let at = 0;
  for (const one of data) {
    all.set(one, at);
    at += one.length;
  }
  try {
    return inflateRawSync(all.subarray(ZLIB_HEAD), { maxOutputLength: length }).length === length;
  } catch {
    return false;
  }
}
