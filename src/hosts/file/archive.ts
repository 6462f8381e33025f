/**
 * The ZIP archive that an .xlsx is (PKWARE APPNOTE 6.3): its directory, one
 * part unpacked within its declared size, and an archive packed from parts.
 * Reading trusts nothing: sizes, offsets and checksums must all agree.
 */
import { crc32, inflateRawSync } from "node:zlib";
import { deflateSync } from "fflate";
import { stop, troubles } from "./fileTrouble";

export interface ArchiveEntry {
  readonly name: string;
  readonly flags: number;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly crc: number;
  readonly packedSize: number;
  readonly size: number;
  /** Where the packed bytes begin. */
  readonly start: number;
}

const LOCAL = 0x04034b50;
const DIRECTORY = 0x02014b50;
const END = 0x06054b50;
const LOCAL_BYTES = 30;
const DIRECTORY_BYTES = 46;
const END_BYTES = 22;
const LONGEST_COMMENT = 0xffff;
/** In these fields the value lies in a ZIP64 record, which a file within our caps never needs. */
const ZIP64_32 = 0xffffffff;
const ZIP64_16 = 0xffff;
/** 1980-01-01, the format's first day, so that the same parts give the same bytes. */
const FIXED_DATE = 0x21;

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** How many parts the end record declares, and where their directory lies. */
function endRecord(bytes: Uint8Array): { count: number; offset: number; size: number } {
  const view = viewOf(bytes);
  const first = Math.max(0, bytes.length - END_BYTES - LONGEST_COMMENT);
  for (let at = bytes.length - END_BYTES; at >= first; at--) {
    if (view.getUint32(at, true) !== END) continue;
    const count = view.getUint16(at + 10, true);
    const size = view.getUint32(at + 12, true);
    const offset = view.getUint32(at + 16, true);
    const split = view.getUint16(at + 4, true) !== 0 || view.getUint16(at + 8, true) !== count;
    if (split || count === ZIP64_16 || size === ZIP64_32 || offset === ZIP64_32 || offset + size > at) {
      return stop(troubles.damaged("its directory"));
    }
    return { count, offset, size };
  }
  return stop(troubles.truncated());
}

export const declaredCount = (bytes: Uint8Array): number => endRecord(bytes).count;

/** The parts as the archive's directory lists them, in its order. */
export function entriesOf(bytes: Uint8Array): ArchiveEntry[] {
  const view = viewOf(bytes);
  const { count, offset, size } = endRecord(bytes);
  const decoder = new TextDecoder("utf-8");
  const entries: ArchiveEntry[] = [];
  let at = offset;
  for (let index = 0; index < count; index++) {
    if (at + DIRECTORY_BYTES > offset + size || view.getUint32(at, true) !== DIRECTORY) {
      return stop(troubles.damaged("its directory"));
    }
    const nameLength = view.getUint16(at + 28, true);
    const name = decoder.decode(bytes.subarray(at + DIRECTORY_BYTES, at + DIRECTORY_BYTES + nameLength));
    const local = view.getUint32(at + 42, true);
    const packedSize = view.getUint32(at + 20, true);
    if (local + LOCAL_BYTES > offset || view.getUint32(local, true) !== LOCAL) {
      return stop(troubles.damaged(name));
    }
    const start = local + LOCAL_BYTES + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    if (start + packedSize > offset) return stop(troubles.damaged(name));
    entries.push({
      name,
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedSize,
      size: view.getUint32(at + 24, true),
      start,
    });
    at += DIRECTORY_BYTES + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** The part's own bytes; a part that unpacks to anything but its declared size and checksum is refused. */
export function unpacked(bytes: Uint8Array, entry: ArchiveEntry): Uint8Array {
  const packed = bytes.subarray(entry.start, entry.start + entry.packedSize);
  let content: Uint8Array = packed;
  if (entry.method === 8) {
    try {
      content = inflateRawSync(packed, { maxOutputLength: Math.max(1, entry.size) });
    } catch (error) {
      return stop(troubles.damaged(entry.name), error);
    }
  }
  if (content.length !== entry.size || crc32(content) !== entry.crc) {
    return stop(troubles.damaged(entry.name));
  }
  return content;
}

/** A part ready to be packed. */
export interface Part {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly size: number;
  readonly packed: Uint8Array;
}

export const storedPart = (name: string, content: Uint8Array): Part => ({
  name,
  method: 0,
  crc: crc32(content),
  size: content.length,
  packed: content,
});

/** By one packer on every host: each browser's own, and each version of Node, gives other bytes. */
export const deflatedPart = (name: string, content: Uint8Array): Part => ({
  ...storedPart(name, content),
  method: 8,
  packed: deflateSync(content),
});

/** A part of another archive, as it lies there. */
export const copiedPart = (bytes: Uint8Array, entry: ArchiveEntry): Part => ({
  ...entry,
  packed: bytes.subarray(entry.start, entry.start + entry.packedSize),
});

/** An archive of the parts in their order; nothing in it depends on the clock. */
export function packed(parts: readonly Part[]): Uint8Array {
  const encoder = new TextEncoder();
  const named = parts.map((part) => ({ part, name: encoder.encode(part.name) }));
  const bytes = new Uint8Array(
    named.reduce(
      (sum, { part, name }) => sum + LOCAL_BYTES + DIRECTORY_BYTES + 2 * name.length + part.packed.length,
      END_BYTES,
    ),
  );
  const view = viewOf(bytes);
  let at = 0;
  /** The fields that a local and a directory record share, from the flags to the name's length. */
  const shared = (from: number, part: Part, nameLength: number): void => {
    view.setUint16(from + 2, part.method, true);
    view.setUint16(from + 6, FIXED_DATE, true);
    view.setUint32(from + 8, part.crc, true);
    view.setUint32(from + 12, part.packed.length, true);
    view.setUint32(from + 16, part.size, true);
    view.setUint16(from + 20, nameLength, true);
  };
  const offsets = named.map(({ part, name }) => {
    const offset = at;
    view.setUint32(at, LOCAL, true);
    view.setUint16(at + 4, 20, true);
    shared(at + 6, part, name.length);
    bytes.set(name, at + LOCAL_BYTES);
    bytes.set(part.packed, at + LOCAL_BYTES + name.length);
    at += LOCAL_BYTES + name.length + part.packed.length;
    return offset;
  });
  const directory = at;
  named.forEach(({ part, name }, index) => {
    view.setUint32(at, DIRECTORY, true);
    view.setUint16(at + 4, 20, true);
    view.setUint16(at + 6, 20, true);
    shared(at + 8, part, name.length);
    view.setUint32(at + 42, offsets[index]!, true);
    bytes.set(name, at + DIRECTORY_BYTES);
    at += DIRECTORY_BYTES + name.length;
  });
  view.setUint32(at, END, true);
  view.setUint16(at + 8, parts.length, true);
  view.setUint16(at + 10, parts.length, true);
  view.setUint32(at + 12, at - directory, true);
  view.setUint32(at + 16, directory, true);
  return bytes;
}
