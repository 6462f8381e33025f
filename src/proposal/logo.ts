/**
 * A firm's logo as a file, known by its bytes and not by its name.
 *
 * Sources: W3C, Portable Network Graphics (PNG) Specification, 5.2 and 11.2.2; ITU-T T.81, Annex B (markers, SOF);
 *   the first bytes of the other formats from memory.
 */
import type { Logo } from "./document";

export const MOST_LOGO_BYTES = 2_000_000;
const MOST_LOGO_PIXELS = 4000;

/** A logo before anybody says whose it is. */
export type LogoFile = Omit<Logo, "alt">;

interface Size {
  readonly width: number;
  readonly height: number;
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] as const;
const JPEG = [0xff, 0xd8, 0xff] as const;

const TAKEN = "Give a PNG or JPEG file.";

export const logoTooLarge = (bytes: number): string =>
  `a logo of ${Math.ceil(bytes / 1000)} kB is too large; it may have ${MOST_LOGO_BYTES / 1000} kB. Make the picture smaller.`;

/**
 * @param bytes of the file
 * @returns the logo; or a sentence, to go on after the file's name, that says why it is none
 */
export function logoOf(bytes: Uint8Array): LogoFile | string {
  if (bytes.length === 0) return `the file is empty. ${TAKEN}`;
  if (bytes.length > MOST_LOGO_BYTES) return logoTooLarge(bytes.length);
  const format = begins(bytes, PNG) ? "png" : begins(bytes, JPEG) ? "jpeg" : undefined;
  if (!format) {
    const other = otherFormat(bytes);
    return `${other === undefined ? "this is no picture that can be read" : `this is ${other}, which is not taken`}. ${TAKEN}`;
  }
  const file = format === "png" ? { size: pngSize(bytes), bytes } : readJpeg(bytes);
  if (!file?.size || file.size.width === 0 || file.size.height === 0)
    return `the ${format.toUpperCase()} file is damaged or cut off. Save the picture anew.`;
  const { width, height } = file.size;
  if (Math.max(width, height) > MOST_LOGO_PIXELS)
    return `the picture has ${width} × ${height} pixels; a logo may have ${MOST_LOGO_PIXELS} a side. Make it smaller.`;
  if ("isTurned" in file && file.isTurned)
    return "the picture is stored lying, with a note to turn it that no paper follows. Save it upright.";
  return { bytes: file.bytes, format, width, height };
}

const begins = (bytes: Uint8Array, sign: readonly number[], from = 0): boolean =>
  sign.every((byte, at) => bytes[from + at] === byte);
const ascii = (text: string): number[] => [...text].map((sign) => sign.charCodeAt(0));

/** Within so many bytes a drawing says what it is. */
const HEAD = 1000;

function otherFormat(bytes: Uint8Array): string | undefined {
  if (begins(bytes, ascii("GIF8"))) return "a GIF";
  if (begins(bytes, ascii("RIFF")) && begins(bytes, ascii("WEBP"), 8)) return "a WebP";
  if (begins(bytes, ascii("BM"))) return "a BMP";
  if (begins(bytes, ascii("II*\0")) || begins(bytes, ascii("MM\0*"))) return "a TIFF";
  if (begins(bytes, ascii("%PDF"))) return "a PDF";
  if (begins(bytes, ascii("ftyp"), 4)) return "an AVIF or HEIC";
  const head = new TextDecoder().decode(bytes.subarray(0, HEAD));
  return /<svg[\s>]/i.test(head) ? "an SVG" : undefined;
}

/** Its head is its first chunk, and it ends with one of its own. */
function pngSize(bytes: Uint8Array): Size | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let size: Size | undefined;
  for (let at = PNG.length; at + 12 <= bytes.length;) {
    const length = view.getUint32(at);
    const kind = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (kind === "IEND") return size;
    if (!size) {
      if (kind !== "IHDR" || length !== 13) return undefined;
      size = { width: view.getUint32(at + 8), height: view.getUint32(at + 12) };
    }
    at += 12 + length;
  }
  return undefined;
}

/** All frame headers but those that lie between them: tables, a reserved one, and conditioning. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
const START_OF_SCAN = 0xda;

/** What a camera adds (place, owner, a small picture) stays out of what a customer gets; these two say how to draw. */
const KEPT_NOTES: readonly number[] = [0xe0, 0xee];
const EXIF_NOTE = 0xe1;
const COMMENT = 0xfe;
const isNote = (marker: number): boolean => (marker >= 0xe0 && marker <= 0xef) || marker === COMMENT;

interface Jpeg {
  readonly size: Size | undefined;
  readonly isTurned: boolean;
  /** Without what a camera notes. */
  readonly bytes: Uint8Array;
}

/** The head of its frame stands before its data, and its last marker behind. */
function readJpeg(bytes: Uint8Array): Jpeg | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let size: Size | undefined;
  let isTurned = false;
  for (let at = 2; at + 9 < bytes.length;) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (isFrame(marker)) size = { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    if (marker === START_OF_SCAN)
      return hasEnd(bytes, at) ? { size, isTurned, bytes: joined([...kept, bytes.subarray(at)]) } : undefined;
    const end = at + 2 + view.getUint16(at + 2);
    if (marker === EXIF_NOTE) isTurned ||= turnedBy(bytes.subarray(at + 4, end));
    if (!isNote(marker) || KEPT_NOTES.includes(marker)) kept.push(bytes.subarray(at, end));
    at = end;
  }
  return undefined;
}

function hasEnd(bytes: Uint8Array, from: number): boolean {
  for (let at = bytes.length - 2; at > from; at--)
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  return false;
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

const ORIENTATION = 0x0112;

/** @param note Exif (JEITA CP-3451, 4.6, from memory): its first directory may say how the picture is to be turned */
function turnedBy(note: Uint8Array): boolean {
  const start = 6;
  if (!begins(note, ascii("Exif\0\0")) || note.length < start + 8) return false;
  const view = new DataView(note.buffer, note.byteOffset + start, note.length - start);
  const isLittle = view.getUint8(0) === 0x49;
  const first = view.getUint32(4, isLittle);
  if (first + 2 > view.byteLength) return false;
  const count = view.getUint16(first, isLittle);
  for (let at = first + 2; at + 12 <= view.byteLength && at < first + 2 + 12 * count; at += 12)
    if (view.getUint16(at, isLittle) === ORIENTATION) return view.getUint16(at + 8, isLittle) > 1;
  return false;
}
