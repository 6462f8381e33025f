/**
 * The three parts of Node's zlib that hosts/file uses, for the browser; the
 * build puts this file in its place.
 */
import { deflateSync, inflateSync } from "fflate";

const CRC_POLYNOMIAL = 0xedb88320;
const TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ CRC_POLYNOMIAL : value >>> 1;
  return value;
});

/** CRC-32 as a ZIP archive has it (ISO 3309). */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = TABLE[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

export const deflateRawSync = (bytes: Uint8Array): Uint8Array => deflateSync(bytes);

/** Refuses what unpacks to more than the given length, as Node's does: a part must not grow beyond what it declares. */
export function inflateRawSync(
  bytes: Uint8Array,
  { maxOutputLength }: { readonly maxOutputLength: number },
): Uint8Array {
  // The library fills the room that it is given and drops the rest without a word: one byte more than allowed tells.
  const content = inflateSync(bytes, { out: new Uint8Array(maxOutputLength + 1) });
  if (content.length > maxOutputLength) throw new RangeError(`more than ${maxOutputLength} bytes`);
  return content;
}
