/**
 * Looks at a file before anything is unpacked: is it a workbook at all, whole,
 * free of macros, and within the caps of limits.ts? Refuses with a sentence;
 * never repairs.
 */
import { declaredCount, entriesOf, type ArchiveEntry } from "./archive";
import { stop, troubles } from "./fileTrouble";
import { findBytes } from "./findBytes";
import { JOBS_LIST } from "./jobsFile";
import {
  MAX_ENTRIES,
  MAX_FILE_BYTES,
  MAX_PART_BYTES,
  MAX_RATIO,
  MAX_UNPACKED_BYTES,
  RATIO_FREE_BYTES,
} from "./limits";

const OLE_HEADER = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
const ZIP_HEADER = [0x50, 0x4b, 0x03, 0x04];
/** A ZIP archive without any part has only its end record. */
const EMPTY_ZIP_HEADER = [0x50, 0x4b, 0x05, 0x06];
const FLAG_ENCRYPTED = 1;
/** In UTF-16, low byte first: the letters are plain ones. */
const ENCRYPTED_STREAM = Uint8Array.from(
  [..."EncryptedPackage"].flatMap((letter) => [letter.charCodeAt(0), 0]),
);

const beginsWith = (bytes: Uint8Array, header: readonly number[]): boolean =>
  header.every((byte, index) => bytes[index] === byte);

/**
 * @param bytes the file
 * @returns the parts of the workbook, each safe to unpack within its declared size
 */
export function checkedEntries(bytes: Uint8Array): ArchiveEntry[] {
  if (bytes.length === 0) stop(troubles.empty());
  if (bytes.length > MAX_FILE_BYTES) stop(troubles.tooLarge(bytes.length, MAX_FILE_BYTES));
  if (!beginsWith(bytes, ZIP_HEADER)) stop(sentenceForOtherKind(bytes));
  const count = declaredCount(bytes);
  if (count > MAX_ENTRIES) stop(troubles.tooManyParts(count, MAX_ENTRIES));
  const entries = entriesOf(bytes);
  for (const entry of entries) checkPath(entry.name);
  checkDistinct(entries);
  checkKind(new Set(entries.map(({ name }) => name.toLowerCase())));
  for (const entry of entries) checkSize(entry);
  const total = entries.reduce((sum, { size }) => sum + size, 0);
  if (total > MAX_UNPACKED_BYTES) stop(troubles.inflated(total, MAX_UNPACKED_BYTES));
  return entries;
}

function sentenceForOtherKind(bytes: Uint8Array): string {
  // Directory names in such a container are UTF-16; an encrypted workbook has a stream of this name.
  if (beginsWith(bytes, OLE_HEADER)) return troubles.oldOrProtected(findBytes(bytes, ENCRYPTED_STREAM) >= 0);
  const kind = kindOf(bytes);
  return kind === undefined || kind === UNKNOWN ? troubles.notAnArchive() : troubles.otherKind(kind);
}

const UNKNOWN = "of another kind";

/** @returns what a file is by its beginning, in a few words; undefined where it may be an archive with something in it */
export function kindOf(bytes: Uint8Array): string | undefined {
  if (beginsWith(bytes, ZIP_HEADER)) return undefined;
  if (beginsWith(bytes, OLE_HEADER)) return "an old or protected office document";
  if (beginsWith(bytes, EMPTY_ZIP_HEADER)) return "an empty ZIP archive";
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 512));
  if (head.startsWith("%PDF")) return "a PDF document";
  if (/^(?:ï»¿)?\s*<(?:!doctype html|html)/i.test(head)) return "a web page";
  if (/^(?:ï»¿)?\s*<\?xml/i.test(head)) return "an XML document";
  if (/^\{\\rtf/.test(head)) return "a text document";
  // As JSON is written, whatever stands before it.
  if (/^(?:ï»¿)?\s*[[{]|"\s*:\s*["[{\d]/.test(head)) return "plain text";
  // eslint-disable-next-line no-control-regex -- control bytes are what tells a binary file from text
  const isText = !/[\x00-\x08\x0e-\x1f]/.test(head);
  if (isText && /[,;\t]/.test(head)) return "a text table (CSV)";
  return isText ? "plain text" : UNKNOWN;
}

function checkPath(name: string): void {
  const ways = name.split("/");
  const strange =
    name === "" || name.startsWith("/") || /[\\:\0]/.test(name) || ways.includes("..") || ways.includes(".");
  if (strange) stop(troubles.badPath(name));
}

/** Two parts of one name, or parts that share bytes, are how a file shows one thing to one reader and another to the next. */
function checkDistinct(entries: readonly ArchiveEntry[]): void {
  const seen = new Set<string>();
  for (const { name } of entries) {
    const key = name.toLowerCase();
    if (seen.has(key)) stop(troubles.damaged(name));
    seen.add(key);
  }
  let end = 0;
  for (const entry of [...entries].sort((a, b) => a.start - b.start)) {
    if (entry.start < end) stop(troubles.damaged(entry.name));
    end = entry.start + entry.packedSize;
  }
}

function checkKind(names: ReadonlySet<string>): void {
  if (names.has("xl/vbaproject.bin")) stop(troubles.macros());
  if (names.has("xl/workbook.bin")) stop(troubles.otherKind("a binary workbook (.xlsb)"));
  if (names.has("[content_types].xml") && names.has("xl/workbook.xml") && names.has("_rels/.rels")) return;
  if ([...names].some((name) => name === JOBS_LIST || name.endsWith(`/${JOBS_LIST}`)))
    stop(troubles.jobsAreNoWorkbook());
  if (names.has("word/document.xml")) stop(troubles.otherKind("a Word document"));
  if (names.has("ppt/presentation.xml")) stop(troubles.otherKind("a presentation"));
  if (names.has("mimetype") && names.has("content.xml")) stop(troubles.otherKind("an OpenDocument file"));
  stop(troubles.otherKind("a ZIP archive of something else"));
}

function checkSize({ name, flags, method, packedSize, size }: ArchiveEntry): void {
  if ((flags & FLAG_ENCRYPTED) !== 0 || (method !== 0 && method !== 8)) stop(troubles.packedOtherwise(name));
  if (size > MAX_PART_BYTES) stop(troubles.inflated(size, MAX_PART_BYTES));
  if (size > RATIO_FREE_BYTES && size > packedSize * MAX_RATIO) stop(troubles.suspiciousRatio(name));
}
