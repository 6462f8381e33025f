/**
 * Takes the signature off a Windows program: what is put into it afterwards
 * would make it invalid, and whoever signs the program anew wants none there.
 * The places are those of the format's specification, "PE Format" (Microsoft).
 */
const OFFSET_OF_HEADER = 0x3c;
/** After the mark (4 bytes) and the file header (20). */
const OPTIONAL_HEADER = 24;
const PLUS = 0x20b;
const CHECKSUM = 64;
/** The directories begin here in a program of 64 bits; each has a place and a size of 4 bytes. */
const DIRECTORIES = 112;
const CERTIFICATES = 4;

/** @returns the same bytes where they are no Windows program of 64 bits, or it is not signed */
export function withoutSignature(bytes) {
  if (bytes.toString("latin1", 0, 2) !== "MZ") return bytes;
  const header = bytes.readUInt32LE(OFFSET_OF_HEADER);
  const optional = header + OPTIONAL_HEADER;
  if (bytes.toString("latin1", header, header + 4) !== "PE\0\0" || bytes.readUInt16LE(optional) !== PLUS)
    return bytes;
  const entry = optional + DIRECTORIES + CERTIFICATES * 8;
  const at = bytes.readUInt32LE(entry);
  const size = bytes.readUInt32LE(entry + 4);
  if (size === 0) return bytes;
  // It stands last, and is part of no section.
  if (at + size !== bytes.length)
    throw new Error("The signature of the Windows program does not stand at its end.");
  const rest = Buffer.from(bytes.subarray(0, at));
  rest.writeBigUInt64LE(0n, entry);
  // Only drivers must have a right one; none is better than a wrong one.
  rest.writeUInt32LE(0, optional + CHECKSUM);
  return rest;
}
