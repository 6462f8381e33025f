/**
 * A 64-bit checksum of a text: FNV-1a over its UTF-8 bytes.
 *
 * Source: Fowler, Noll, Vo; RFC 9923, "The FNV Non-Cryptographic Hash
 *   Algorithm" (constants from memory, held to published test vectors). It
 *   spreads texts out; it keeps no secret.
 */
const OFFSET = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

/** @returns an unsigned integer of 64 bits */
export function fnv1a(text: string): bigint {
  let hash = OFFSET;
  for (const byte of new TextEncoder().encode(text)) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * PRIME);
  }
  return hash;
}
