/** Which file it was, whatever its name. */

const HEX = 16;

/** @returns SHA-256 in hex; undefined on a page that is not safe enough for the browser to offer it */
export async function fingerprintOf(bytes: Uint8Array): Promise<string | undefined> {
  const { subtle } = globalThis.crypto as { readonly subtle?: SubtleCrypto };
  if (!subtle) return undefined;
  const digest = new Uint8Array(await subtle.digest("SHA-256", Uint8Array.from(bytes)));
  return [...digest].map((byte) => byte.toString(HEX).padStart(2, "0")).join("");
}
