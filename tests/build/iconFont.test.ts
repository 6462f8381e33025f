/** Of the icons those stay that are named by any of their names; the others go. */
import { readFile } from "node:fs/promises";
import subsetFont from "subset-font";
import { withIconsOf } from "../../src/build/static/iconFont";
import { libraryFile } from "../../src/hosts/headless/libraryFile";

const GLASS = "\uf000";
const CLOSE = "\uf00d";
const HEART = "\uf004";
const STYLE =
  '.fa-glass:before{content:"\\f000"}.fa-heart:before{content:"\\f004"}.fa-remove:before,.fa-close:before{content:"\\f00d"}';

const font = (): Promise<Buffer> => readFile(libraryFile("font-awesome", "fonts/fontawesome-webfont.woff2"));

/** How many glyphs are left when only these characters are asked for, the one of what is missing included (OpenType 1.9, "maxp"). */
async function glyphsFor(icons: Uint8Array, characters: string): Promise<number> {
  const bytes = await subsetFont(Buffer.from(icons), characters, { targetFormat: "truetype" });
  const at = Array.from({ length: bytes.readUInt16BE(4) }, (_, index) => 12 + 16 * index).find(
    (record) => bytes.toString("latin1", record, record + 4) === "maxp",
  )!;
  return bytes.readUInt16BE(bytes.readUInt32BE(at + 8) + 4);
}

test.each([
  [["<i class='fa fa-close'/>"], CLOSE, GLASS + HEART],
  [["fa-remove", 'a("fa-glass")'], CLOSE + GLASS, HEART],
])("%j", async (users, kept, gone) => {
  const whole = await font();
  expect(await glyphsFor(whole, kept + gone)).toBe(4);
  const icons = await withIconsOf(whole, STYLE, users);
  expect(await glyphsFor(icons, kept + gone)).toBe(1 + kept.length);
  expect(icons.length).toBeLessThan(whole.length / 10);
});
