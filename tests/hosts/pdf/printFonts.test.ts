/** The type of printed pages as it is built: what it has, what it is called, what it says of rights. */
import { create } from "fontkit";
import { readFileSync } from "node:fs";
import { printFont, printFonts } from "../../../src/build/printFonts";
import { PRINT_FONTS, PRINT_FONT_HOME } from "../../../src/hosts/pdf/printFonts";

/** What issue and trade ask for; the font's own list is in build/printFonts.ts. */
const SIGNS = "AzÄßéñøœőřžČŁłşţșțĞİıŐůΑΩαωµμБЯжёєїґЎ0123456789+−×÷±=≈≠≤≥°–—‘’“”„…€£¥→←✓☐½¼²³‰%&@©®™Ω";

interface Named {
  readonly familyName: string;
  readonly postscriptName: string;
  readonly copyright: string;
}

let files: ReadonlyMap<string, Uint8Array>;
beforeAll(async () => void (files = await printFonts()), 60_000);

test.each(Object.values(PRINT_FONTS))("%s has the signs, a name of its own, and whose work it is", (file) => {
  const font = create(files.get(`${PRINT_FONT_HOME}/${file}`)!);
  expect([...SIGNS].filter((sign) => !font.hasGlyphForCodePoint(sign.codePointAt(0)!))).toEqual([]);
  const { familyName, postscriptName, copyright } = font as unknown as Named;
  expect(familyName).toBe("Rigsheet Sans");
  expect(postscriptName).not.toContain("Source");
  expect(copyright).toMatch(/Adobe/);
});

/** The italic's nought is a thousandth of the size narrower in the font itself. */
const NOTHING_SEEN = 0.0011;

test("figures are all of one width, so that columns stand under each other", () => {
  for (const file of Object.values(PRINT_FONTS)) {
    const font = create(files.get(`${PRINT_FONT_HOME}/${file}`)!);
    const widths = [..."0123456789"].map((figure) => font.layout(figure).advanceWidth);
    expect(Math.max(...widths) - Math.min(...widths)).toBeLessThan(NOTHING_SEEN * font.unitsPerEm);
  }
});

test("the licence goes with them", () => {
  const text = new TextDecoder().decode(files.get(`${PRINT_FONT_HOME}/LICENSE_FONT.txt`));
  expect(text).toMatch(/SIL OPEN FONT LICENSE Version 1\.1/);
});

test("the same font gives the same bytes twice", async () => {
  const whole = readFileSync(
    require.resolve("@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf"),
  );
  const [one, two] = [await printFont(whole, "Regular"), await printFont(whole, "Regular")];
  expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  expect(one.length).toBeLessThan(0.5 * whole.length);
});
