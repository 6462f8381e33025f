/** Which files are a logo: by their bytes, whatever they are called. */
import { deflateSync } from "node:zlib";
import { logoOf, MOST_LOGO_BYTES } from "../../src/proposal/logo";

const bytes = (...parts: readonly (string | readonly number[] | Uint8Array)[]): Uint8Array =>
  Buffer.concat(
    parts.map((part) => (typeof part === "string" ? Buffer.from(part, "latin1") : Buffer.from(part))),
  );
const number = (value: number, size: 2 | 4): number[] =>
  Array.from({ length: size }, (_, at) => (value >>> (8 * (size - 1 - at))) & 0xff);
const chunk = (kind: string, data: Uint8Array | readonly number[]): Uint8Array => {
  // Its checksum is not looked at.
  return bytes(number(data.length, 4), kind, data, [0, 0, 0, 0]);
};
const PNG_SIGN = "\x89PNG\r\n\x1a\n";
const png = (width: number, height: number): Uint8Array =>
  bytes(
    PNG_SIGN,
    chunk("IHDR", [...number(width, 4), ...number(height, 4), 1, 0, 0, 0, 0]),
    chunk("IDAT", deflateSync(Buffer.alloc((Math.ceil(width / 8) + 1) * Math.min(height, 64)))),
    chunk("IEND", []),
  );
const segment = (marker: number, data: Uint8Array | readonly number[]): Uint8Array =>
  bytes([0xff, marker], number(data.length + 2, 2), data);
/** Exif of one entry, its orientation, big or little end first. */
const exif = (orientation: number, isLittle: boolean): Uint8Array => {
  const turned = (list: number[]): number[] => (isLittle ? list.reverse() : list);
  return bytes(
    "Exif\0\0",
    isLittle ? "II" : "MM",
    turned([0, 42]),
    turned(number(8, 4)),
    turned(number(1, 2)),
    turned([1, 0x12]),
    turned([0, 3]),
    turned(number(1, 4)),
    turned(number(orientation, 2)),
    [0, 0],
    number(0, 4),
    "GPS of a house",
  );
};
const jpeg = (width: number, height: number, notes: readonly Uint8Array[] = [], frame = 0xc0): Uint8Array =>
  bytes(
    [0xff, 0xd8],
    segment(0xe0, bytes("JFIF\0", [1, 1, 0, 0, 1, 0, 1, 0, 0])),
    ...notes,
    segment(frame, [8, ...number(height, 2), ...number(width, 2), 1, 1, 0x11, 0]),
    segment(0xda, [1, 1, 0, 0, 63, 0]),
    [1, 2, 3, 0xff, 0, 4],
    [0xff, 0xd9],
  );

test.each([
  ["png", png(300, 120)],
  ["png", png(4000, 20)],
  ["jpeg", jpeg(300, 120)],
  ["jpeg", jpeg(300, 120, [], 0xc2)],
  ["jpeg", jpeg(300, 120, [segment(0xe1, exif(1, true))])],
])("a %s is taken", (format, file) => {
  expect(logoOf(file)).toMatchObject({ format });
});

test("its size is the one that it was written with", () => {
  expect(logoOf(png(300, 120))).toMatchObject({ width: 300, height: 120 });
  expect(logoOf(jpeg(300, 120, [segment(0xe1, exif(1, true))], 0xc2))).toMatchObject({
    width: 300,
    height: 120,
  });
});

test("what a camera notes stays out", () => {
  const logo = logoOf(jpeg(300, 120, [segment(0xe1, exif(1, false)), segment(0xfe, bytes("a comment"))]));
  expect(logo).toMatchObject({ format: "jpeg" });
  expect(Buffer.from((logo as { bytes: Uint8Array }).bytes)).toEqual(Buffer.from(jpeg(300, 120)));
});

test.each([
  ["nothing", bytes(), "empty"],
  ["a text", bytes("hello"), "no picture that can be read. Give a PNG or JPEG file."],
  ["a GIF", bytes("GIF89a", [1, 0, 1, 0]), "this is a GIF"],
  ["a WebP", bytes("RIFF", [1, 2, 3, 4], "WEBPVP8 "), "this is a WebP"],
  ["a TIFF", bytes("II*\0", [0, 0]), "this is a TIFF"],
  ["an SVG", bytes('<?xml version="1.0"?><svg xmlns="x"><script/></svg>'), "this is an SVG"],
  ["a PDF", bytes("%PDF-1.7"), "this is a PDF"],
  ["an AVIF", bytes([0, 0, 0, 28], "ftypavif"), "this is an AVIF or HEIC"],
  ["too wide", png(4001, 10), "4001 × 10 pixels; a logo may have 4000 a side"],
  ["too high", jpeg(10, 4001), "10 × 4001 pixels"],
  ["of 30000 pixels", png(30_000, 30_000), "30000 × 30000 pixels"],
  ["of no pixels", png(0, 10), "damaged"],
  ["a PNG cut off", png(300, 120).subarray(0, 50), "PNG file is damaged or cut off"],
  ["a PNG of its sign alone", bytes(PNG_SIGN), "PNG file is damaged or cut off"],
  ["a PNG that begins otherwise", bytes(PNG_SIGN, chunk("IDAT", []), chunk("IEND", [])), "damaged"],
  ["a JPEG cut off", jpeg(300, 120).subarray(0, -2), "JPEG file is damaged or cut off"],
  ["a JPEG of its head alone", jpeg(300, 120).subarray(0, 30), "damaged"],
  ["lying, big end first", jpeg(300, 120, [segment(0xe1, exif(6, false))]), "Save it upright"],
  ["lying, little end first", jpeg(300, 120, [segment(0xe1, exif(8, true))]), "Save it upright"],
  ["too large", bytes(png(300, 120), new Uint8Array(MOST_LOGO_BYTES)), "may have 2000 kB"],
])("%s is refused", (_, file, words) => {
  expect(logoOf(file)).toEqual(expect.stringContaining(words));
});

test("a file of 2 MB is taken, one byte more is not", () => {
  const file = png(300, 120);
  const filled = (length: number): Uint8Array => bytes(file, new Uint8Array(length - file.length));
  expect(logoOf(filled(MOST_LOGO_BYTES))).toMatchObject({ format: "png" });
  expect(logoOf(filled(MOST_LOGO_BYTES + 1))).toEqual(expect.stringContaining("2001 kB is too large"));
});
