/**
 * The two parts of Node's zlib that hosts/file uses, for the browser; the
 * build puts this file in its place.
 */
import { inflateSync } from "fflate";

export { checksum as crc32 } from "../../jobs/checksum";

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
