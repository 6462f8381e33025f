/** A font that is folded for the way comes back byte for byte, and weighs less packed. */
import { readFile } from "node:fs/promises";
import { gzipSync } from "node:zlib";
import { foldedFont } from "../../src/build/static/foldedFont";
import { leanFont } from "../../src/build/static/leanFont";
import { libraryFile } from "../../src/hosts/headless/libraryFile";
import { unfoldedFont } from "../../src/hosts/desk/page/unfoldedFont";

const fontOf = (name: string): Promise<Buffer> => readFile(libraryFile("dejavu-fonts-ttf", `ttf/${name}`));
const gzipped = (bytes: Uint8Array): number => gzipSync(bytes, { level: 9 }).length;

test.each(["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"])(
  "%s comes back, a tenth lighter on its way",
  async (name) => {
    const lean = leanFont(await fontOf(name));
    const folded = foldedFont(lean);
    expect(Buffer.from(unfoldedFont(folded)).equals(lean)).toBe(true);
    expect(gzipped(folded)).toBeLessThan(0.9 * gzipped(lean));
  },
);

// Fonts by hand, after OpenType 1.9, "glyf", "loca" and "The OpenType font file".
const word = (value: number): number[] => [value >> 24, (value >> 16) & 255, (value >> 8) & 255, value & 255];
const BOX = [0, 0, 0, 0, 0, 100, 0, 100];

function fontWith(glyphs: readonly (readonly number[])[]): Uint8Array {
  const glyf = glyphs.flat();
  let end = 0;
  const loca = [0, ...glyphs.map(({ length }) => (end += length))].flatMap(word);
  const tables: [string, number[]][] = [
    ["loca", loca],
    ["maxp", [9, 8, 7, 6]],
    ["glyf", glyf],
  ];
  let start = 12 + 16 * tables.length;
  const directory = tables.flatMap(([tag, bytes]) => {
    const record = [...Buffer.from(tag), ...word(0), ...word(start), ...word(bytes.length)];
    start += bytes.length;
    return record;
  });
  return Uint8Array.from([
    ...word(0x0001_0000),
    0,
    3,
    0,
    0,
    0,
    0,
    0,
    0,
    ...directory,
    ...tables.flatMap(([, it]) => it),
  ]);
}

/** Four points of one contour: near, the same, far, and a flag that counts twice. */
const SIMPLE = [0, 1, ...BOX, 0, 3, 0, 0, 0x37, 0x30, 0x09, 1, 10, 1, 2, 3, 4, 20, 5, 6, 7, 8];
/** Of two parts: words and one scale, then bytes and two; as is, with a matrix. */
const COMPOSITE = [
  ...[0xff, 0xff, ...BOX],
  ...[0x00, 0x29, 0, 1, 0, 5, 0, 6, 0x40, 0],
  ...[0x00, 0x60, 0, 1, 5, 6, 0x40, 0, 0x20, 0],
  ...[0x00, 0x80, 0, 1, 5, 6, 0x40, 0, 0, 0, 0, 0, 0x40, 0],
];

test.each([
  ["no glyph", [[]]],
  ["points", [SIMPLE]],
  ["parts", [COMPOSITE]],
  [
    "blank ones between others, and noughts behind some",
    [[], [...SIMPLE, 0, 0], [], COMPOSITE, [...SIMPLE, 0], []],
  ],
  ["no contour", [[0, 0, ...BOX, 0, 0]]],
])("a font of %s comes back", (_, glyphs) => {
  const font = fontWith(glyphs);
  expect([...unfoldedFont(foldedFont(font))]).toEqual([...font]);
});

test("what would not come back is refused", () => {
  expect(() => foldedFont(Uint8Array.from([1, 2, 3]))).toThrow("Only a TrueType font can be folded.");
  // Three bytes of instructions, which a lean font has none of.
  const hinted = [0, 1, ...BOX, 0, 0, 0, 3, 1, 2, 3, 0x37, 10, 20];
  expect(() => foldedFont(fontWith([hinted]))).toThrow("This font can't be folded without a loss.");
  // Something that is no glyph stands behind one.
  expect(() => foldedFont(fontWith([[...SIMPLE, 7]]))).toThrow("This font can't be folded without a loss.");
});
