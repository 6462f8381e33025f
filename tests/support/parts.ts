/**
 * The parts of an .xlsx, read for tests by code that shares nothing with the
 * file host.
 */
import { inflateRawSync } from "node:zlib";

export function partsOf(file: Uint8Array): Map<string, string> {
  const bytes = Buffer.from(file);
  const parts = new Map<string, string>();
  let at = bytes.readUInt32LE(bytes.lastIndexOf("PK\x05\x06", undefined, "latin1") + 16);
  while (bytes.toString("latin1", at, at + 4) === "PK\x01\x02") {
    const nameLength = bytes.readUInt16LE(at + 28);
    const local = bytes.readUInt32LE(at + 42);
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const packed = bytes.subarray(start, start + bytes.readUInt32LE(at + 20));
    const content = bytes.readUInt16LE(at + 10) === 8 ? inflateRawSync(packed) : packed;
    parts.set(bytes.toString("utf8", at + 46, at + 46 + nameLength), content.toString("utf8"));
    at += 46 + nameLength + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  return parts;
}

/** A part's text; one that is not there fails the test. */
export function partOf(file: Uint8Array, name: string): string {
  const part = partsOf(file).get(name);
  if (part === undefined)
    throw new Error(`no part ${name}; there are ${[...partsOf(file).keys()].join(", ")}`);
  return part;
}

/** The XML of one cell, or "" when it is not stored. */
export const cellXml = (sheetXml: string, address: string): string =>
  new RegExp(`<c r="${address}"(?:[^>]*/>|.*?</c>)`, "s").exec(sheetXml)?.[0] ?? "";
