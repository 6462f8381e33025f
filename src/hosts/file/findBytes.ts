/** Finds a text in a file's bytes without making text of them, in one pass whatever they hold. */
const encoder = new TextEncoder();

/**
 * @param wanted a text as UTF-8, or its own bytes
 * @param from where to begin
 * @returns where it begins; -1 where there is none
 */
export function findBytes(bytes: Uint8Array, wanted: string | Uint8Array, from = 0): number {
  const sought = typeof wanted === "string" ? encoder.encode(wanted) : wanted;
  const last = bytes.length - sought.length;
  // A plain loop: asking the array for each first byte costs a call for every "<" of a sheet.
  for (let at = from; at <= last; at++) {
    let matched = 0;
    while (matched < sought.length && bytes[at + matched] === sought[matched]) matched += 1;
    if (matched === sought.length) return at;
  }
  return -1;
}
