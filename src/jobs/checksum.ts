/** CRC-32 as in ISO 3309 (the polynomial of zip and PNG), without a host's library: the page has none. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest >>> 0;
});

/**
 * @returns from 0 to 2³² − 1. Another for every change of one bit, and of any bits that lie within 32 of each other,
 *   whatever the length (a property of every such code of 32 bits)
 */
export function checksum(bytes: Uint8Array): number {
  let state = 0xffffffff;
  // Not by the bytes' iterator: all that is kept passes through here.
  for (let at = 0; at < bytes.length; at++) state = TABLE[(state ^ bytes[at]!) & 0xff]! ^ (state >>> 8);
  return (state ^ 0xffffffff) >>> 0;
}
