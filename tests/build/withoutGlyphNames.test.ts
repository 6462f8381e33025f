/** A font without the names of its glyphs draws what it drew, and is a sound font. */
import { readFile } from "node:fs/promises";
import { libraryFile } from "../../src/hosts/headless/libraryFile";
import { withoutGlyphNames } from "../../src/build/static/withoutGlyphNames";

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

describe.each(["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"])("%s", (name) => {
  test("every table is where the directory says, with its sum, and the whole has the sum of a font", async () => {
    const font = new Uint8Array(await readFile(libraryFile("dejavu-fonts-ttf", `ttf/${name}`)));
    const lean = withoutGlyphNames(font);
    expect(lean.length).toBeLessThan(font.length - 55_000);
    const [was, is] = [font, lean].map((bytes) => new DataView(bytes.buffer, bytes.byteOffset, bytes.length));
    const count = is!.getUint16(4);
    expect(count).toBe(was!.getUint16(4));
    for (let index = 0; index < count; index++) {
      const at = 12 + 16 * index;
      const tag = String.fromCharCode(...lean.subarray(at, at + 4));
      const of = (bytes: Uint8Array, view: DataView): Uint8Array =>
        bytes.slice(view.getUint32(at + 8), view.getUint32(at + 8) + view.getUint32(at + 12));
      const table = of(lean, is!);
      if (tag === "post") {
        expect(table).toHaveLength(32);
        expect(Buffer.from(table.subarray(4)).equals(of(font, was!).subarray(4, 32))).toBe(true);
        expect(is!.getUint32(is!.getUint32(at + 8))).toBe(0x0003_0000);
      } else if (tag !== "head") expect(Buffer.from(table).equals(of(font, was!))).toBe(true);
      if (tag === "head") table.fill(0, 8, 12);
      expect([tag, is!.getUint32(at + 4)]).toEqual([tag, sum(table)]);
    }
    expect(sum(lean)).toBe(0xb1b0_afba);
  });
});
