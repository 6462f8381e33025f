/** A font without glyph names and hinting draws what it drew, and is a sound font. */
import { readFile } from "node:fs/promises";
import { leanFont } from "../../src/build/static/leanFont";
import { libraryFile } from "../../src/hosts/headless/libraryFile";
import type * as Renderer from "../../src/hosts/headless/pngRenderer";

const FONTS = ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"];
const LEFT_OUT = ["fpgm", "prep", "cvt ", "gasp", "FFTM"];
const SHORT_LOCA = 0;
const LONG_LOCA = 1;

const fontOf = (name: string): Promise<Buffer> => readFile(libraryFile("dejavu-fonts-ttf", `ttf/${name}`));

/** Of all words of four bytes, as "The OpenType font file" has it. */
function sum(bytes: Uint8Array): number {
  let all = 0;
  for (let at = 0; at < bytes.length; at += 4)
    all =
      (all +
        (bytes[at] ?? 0) * 2 ** 24 +
        (bytes[at + 1] ?? 0) * 2 ** 16 +
        (bytes[at + 2] ?? 0) * 2 ** 8 +
        (bytes[at + 3] ?? 0)) %
      2 ** 32;
  return all;
}

interface Table {
  readonly tag: string;
  readonly sum: number;
  readonly start: number;
  readonly bytes: Buffer;
}

function directory(bytes: Uint8Array): Table[] {
  const font = Buffer.from(bytes);
  return Array.from({ length: font.readUInt16BE(4) }, (_, index) => {
    const at = 12 + 16 * index;
    const start = font.readUInt32BE(at + 8);
    return {
      tag: font.toString("latin1", at, at + 4),
      sum: font.readUInt32BE(at + 4),
      start,
      bytes: font.subarray(start, start + font.readUInt32BE(at + 12)),
    };
  });
}

const tableOf = (font: Uint8Array, tag: string): Buffer =>
  directory(font).find((table) => table.tag === tag)!.bytes;

/** In "head": its adjustment is of the whole file. */
function withoutAdjustment(head: Buffer): Buffer {
  const copy = Buffer.from(head);
  copy.writeUInt32BE(0, 8);
  return copy;
}

function places(font: Uint8Array): number[] {
  const loca = tableOf(font, "loca");
  return tableOf(font, "head").readUInt16BE(50) === LONG_LOCA
    ? Array.from({ length: loca.length / 4 }, (_, index) => loca.readUInt32BE(4 * index))
    : Array.from({ length: loca.length / 2 }, (_, index) => 2 * loca.readUInt16BE(2 * index));
}

function glyphs(font: Uint8Array): Buffer[] {
  const glyf = tableOf(font, "glyf");
  const at = places(font);
  return at.slice(1).map((end, index) => glyf.subarray(at[index], end));
}

interface Glyph {
  readonly kind: "empty" | "simple" | "composite";
  readonly outline: Buffer;
  readonly instructions: number;
}

/** A glyph as "glyf" describes it; its outline is all of it but what is about instructions and filling. */
function read(glyph: Buffer): Glyph {
  if (glyph.length === 0) return { kind: "empty", outline: glyph, instructions: 0 };
  const contours = glyph.readInt16BE(0);
  return contours < 0 ? readComposite(glyph) : readSimple(glyph, contours);
}

function readSimple(glyph: Buffer, contours: number): Glyph {
  const ends = 10 + 2 * contours;
  const points = contours === 0 ? 0 : glyph.readUInt16BE(ends - 2) + 1;
  const instructions = glyph.readUInt16BE(ends);
  const start = ends + 2 + instructions;
  let at = start;
  let coordinates = 0;
  for (let point = 0; point < points;) {
    const flags = glyph[at++]!;
    const times = flags & 0x08 ? 1 + glyph[at++]! : 1;
    const across = flags & 0x02 ? 1 : flags & 0x10 ? 0 : 2;
    const up = flags & 0x04 ? 1 : flags & 0x20 ? 0 : 2;
    coordinates += times * (across + up);
    point += times;
  }
  const outline = Buffer.concat([glyph.subarray(0, ends), glyph.subarray(start, at + coordinates)]);
  return { kind: "simple", outline, instructions };
}

function readComposite(glyph: Buffer): Glyph {
  const parts = [glyph.subarray(0, 10)];
  let at = 10;
  let more = true;
  let hinted = false;
  while (more) {
    const flags = glyph.readUInt16BE(at);
    const scale = flags & 0x0008 ? 2 : flags & 0x0040 ? 4 : flags & 0x0080 ? 8 : 0;
    const length = 4 + (flags & 0x0001 ? 4 : 2) + scale;
    const component = Buffer.from(glyph.subarray(at, at + length));
    component.writeUInt16BE(flags & ~0x0100);
    parts.push(component);
    at += length;
    more = (flags & 0x0020) !== 0;
    hinted ||= (flags & 0x0100) !== 0;
  }
  const instructions = hinted ? glyph.readUInt16BE(at) : 0;
  return { kind: "composite", outline: Buffer.concat(parts), instructions };
}

const hinted = (font: Uint8Array, kind: Glyph["kind"]): number =>
  glyphs(font).filter((glyph) => {
    const is = read(glyph);
    return is.kind === kind && is.instructions > 0;
  }).length;

/** In the order given, with sums of nought: nothing here reads them. */
function fontWith(tables: Record<string, readonly number[]>, version = 0x0001_0000): Buffer {
  const entries = Object.entries(tables);
  const head = Buffer.alloc(12 + 16 * entries.length);
  head.writeUInt32BE(version);
  head.writeUInt16BE(entries.length, 4);
  const parts = [head];
  let start = head.length;
  for (const [index, [tag, bytes]] of entries.entries()) {
    const at = 12 + 16 * index;
    head.write(tag, at, "latin1");
    head.writeUInt32BE(start, at + 8);
    head.writeUInt32BE(bytes.length, at + 12);
    const part = Buffer.alloc(4 * Math.ceil(bytes.length / 4));
    part.set(bytes);
    parts.push(part);
    start += part.length;
  }
  return Buffer.concat(parts);
}

describe.each(FONTS)("%s", (name) => {
  test("every table is where the directory says, with its sum, and the whole has the sum of a font", async () => {
    const lean = leanFont(await fontOf(name));
    let start = 12 + 16 * directory(lean).length;
    for (const table of directory(lean)) {
      const bytes = table.tag === "head" ? withoutAdjustment(table.bytes) : table.bytes;
      expect([table.tag, table.start, table.sum]).toEqual([table.tag, start, sum(bytes)]);
      start += 4 * Math.ceil(bytes.length / 4);
    }
    expect(lean).toHaveLength(start);
    expect(sum(lean)).toBe(0xb1b0_afba);
  });

  test("what is left out is names and hinting; every other table is the font's own", async () => {
    const font = await fontOf(name);
    const lean = leanFont(font);
    const tags = directory(font).map(({ tag }) => tag);
    expect(tags).toEqual(expect.arrayContaining(LEFT_OUT));
    expect(directory(lean).map(({ tag }) => tag)).toEqual(tags.filter((tag) => !LEFT_OUT.includes(tag)));
    for (const { tag, bytes } of directory(lean)) {
      const was = tableOf(font, tag);
      if (tag === "post") {
        expect(bytes).toHaveLength(32);
        expect(bytes.readUInt32BE(0)).toBe(0x0003_0000);
        expect(bytes.subarray(4).equals(was.subarray(4, 32))).toBe(true);
      } else if (tag === "head") expect(withoutAdjustment(bytes).equals(withoutAdjustment(was))).toBe(true);
      else if (tag !== "glyf" && tag !== "loca") expect([tag, bytes.equals(was)]).toEqual([tag, true]);
    }
  });

  test("every glyph has its outline, byte for byte, and no instructions", async () => {
    const font = await fontOf(name);
    const lean = leanFont(font);
    const [was, is] = [glyphs(font), glyphs(lean)];
    expect(was.length).toBe(tableOf(font, "maxp").readUInt16BE(4));
    expect(is).toHaveLength(was.length);
    expect(hinted(font, "simple")).toBeGreaterThan(0);
    expect(hinted(font, "composite")).toBeGreaterThan(0);
    const wrong = was.flatMap((glyph, index) => {
      const [before, after] = [read(glyph), read(is[index]!)];
      return before.outline.equals(after.outline) && after.instructions === 0 ? [] : [index];
    });
    expect(wrong).toEqual([]);
    expect(places(lean).at(-1)).toBe(tableOf(lean, "glyf").length);
  });

  test("the font that was given stays as it was", async () => {
    const font = await fontOf(name);
    leanFont(font);
    expect(font.equals(await fontOf(name))).toBe(true);
  });
});

// Source of the numbers: OpenType 1.9, "The OpenType font file".
test.each([
  ["DejaVuSans.ttf", [15, 128, 3, 112]],
  ["DejaVuSans-Bold.ttf", [14, 128, 3, 96]],
])("%s: the directory's head says how to search so many tables", async (name, expected) => {
  const lean = Buffer.from(leanFont(await fontOf(name)));
  expect([4, 6, 8, 10].map((at) => lean.readUInt16BE(at))).toEqual(expected);
});

// A font by hand, after OpenType 1.9, "glyf", "loca" and "head".
describe("a font whose places are short", () => {
  const box = [0, 0, 0, 0, 0, 100, 0, 100];
  const head = Array.from({ length: 54 }, (_, at) => (at === 51 ? SHORT_LOCA : 0));
  const points = [0x37, 0x37, 0x37, 10, 20, 30, 40, 50, 60];
  const simple = [0, 1, ...box, 0, 2];
  const scaled = [0x00, 0x2b, 0, 1, 0, 5, 0, 6, 0x40, 0];
  const turned = [0x00, 0xa2, 0, 1, 5, 6, 0x40, 0, 0, 0, 0, 0, 0x40, 0];
  const stretched = [0, 1, 5, 6, 0x40, 0, 0x20, 0];
  const composite = [0xff, 0xff, ...box, ...scaled, ...turned];
  const font = fontWith({
    glyf: [
      ...[...simple, 0, 5, 1, 2, 3, 4, 5, ...points],
      ...[...composite, 0x01, 0x42, ...stretched, 0, 3, 1, 2, 3, 0],
      ...[0, 0, ...box],
    ],
    head,
    // No glyph, then 28, 50 and 10 bytes.
    loca: [0, 0, 0, 0, 0, 14, 0, 39, 0, 44],
    prep: [1, 2, 3],
  });

  test("glyphs of an odd length are filled up, and half their places written", () => {
    const lean = leanFont(font);
    expect(directory(lean).map(({ tag }) => tag)).toEqual(["glyf", "head", "loca"]);
    expect([...tableOf(lean, "glyf")]).toEqual([
      ...[...simple, 0, 0, ...points, 0],
      ...[...composite, 0x00, 0x42, ...stretched],
      ...[0, 0, ...box],
    ]);
    // No glyph, then 24, 44 and 10 bytes.
    expect([...tableOf(lean, "loca")]).toEqual([0, 0, 0, 0, 0, 12, 0, 34, 0, 39]);
  });
});

test("what is no TrueType font is refused", () => {
  const refusal = "Only a TrueType font can go without hinting; this file is none.";
  const OTTO = 0x4f54_544f;
  const tables = { glyf: [], head: Array<number>(54).fill(0), loca: [0, 0] };
  expect(() => leanFont(fontWith(tables))).not.toThrow();
  expect(() => leanFont(fontWith(tables, OTTO))).toThrow(refusal);
  expect(() => leanFont(fontWith({ head: tables.head, "CFF ": [1] }))).toThrow(refusal);
  expect(() => leanFont(Buffer.from("no font"))).toThrow(refusal);
  expect(() => leanFont(new Uint8Array())).toThrow(refusal);
});

describe("a page of text", () => {
  /** First and last letters of a row: Latin, accents, Greek, Cyrillic, ligatures, arrows, signs. */
  const ROWS = [
    [0x21, 0x7e],
    [0xa1, 0xff],
    [0x100, 0x17f],
    [0x386, 0x3ff],
    [0x400, 0x45f],
    [0x1e00, 0x1e7f],
    [0x2190, 0x21df],
    [0x2200, 0x225f],
    [0xfb00, 0xfb06],
  ];
  const letters = ROWS.map(([first, last]) =>
    Array.from({ length: last! - first! + 1 }, (_, index) => `&#${first! + index};`).join(""),
  );
  const LINES = [
    "Café, naïve, Ångström, Łódź, ﬁn, office",
    "AVATAR To We 1 × 5 dB → 74 dBµV, ≤ 2,5 Ω",
    ...letters,
  ];

  const svg = (lines: readonly string[]): string =>
    [
      '<svg xmlns="http://www.w3.org/2000/svg" width="1600" height="720" font-family="DejaVu Sans">',
      '<rect width="1600" height="720" fill="#fff"/>',
      ...["normal", "bold"].flatMap((weight, half) =>
        lines.map(
          (line, row) =>
            `<text x="4" y="${360 * half + 30 * row + 24}" font-size="${9 + row}" font-weight="${weight}">${line}</text>`,
        ),
      ),
      "</svg>",
    ].join("");

  /** Anew each time: a renderer keeps the fonts that it began with. */
  async function drawn(fonts: readonly Uint8Array[], lines = LINES): Promise<Buffer> {
    const wasm = await readFile(libraryFile("@resvg/resvg-wasm", "index_bg.wasm"));
    let png: Uint8Array = new Uint8Array();
    await jest.isolateModulesAsync(async () => {
      const { pngRenderer } = (await import("../../src/hosts/headless/pngRenderer")) as typeof Renderer;
      png = await pngRenderer(() => Promise.resolve({ wasm, fonts }))({
        svg: svg(lines),
        width: 1600,
        height: 720,
      });
    });
    return Buffer.from(png);
  }

  test("is the same picture with the lean fonts, and another without a letter or with a font the less", async () => {
    const full = await Promise.all(FONTS.map(fontOf));
    const lean = full.map(leanFont);
    const picture = await drawn(full);
    expect((await drawn(lean)).equals(picture)).toBe(true);
    const lacking = LINES.map((line) => line.replace("é", "e"));
    expect((await drawn(lean, lacking)).equals(picture)).toBe(false);
    expect((await drawn(lean.slice(0, 1))).equals(picture)).toBe(false);
  });
});
