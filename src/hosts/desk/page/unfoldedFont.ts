/**
 * A font as the build folded it for the way (build/static/foldedFont.ts), as it was.
 * It begins with the lengths of its pieces, in words of four bytes: the font with
 * noughts where its glyphs and their places are, the noughts behind each glyph (BLANK
 * where there is none), and the bytes of each kind.
 */
import { eachGlyphByte, KINDS } from "./eachGlyphByte";
import { tableInFont } from "./tableInFont";

export const BLANK = 255;
/** The font and what is behind each glyph come before the kinds. */
const PIECES = 2 + KINDS;
const WORD = 4;

export function unfoldedFont(folded: Uint8Array): Uint8Array {
  const lengths = new DataView(folded.buffer, folded.byteOffset);
  let start = WORD * PIECES;
  const [font, behind, ...kinds] = Array.from({ length: PIECES }, (_, index) => {
    const end = start + lengths.getUint32(WORD * index);
    const piece = folded.slice(start, end);
    start = end;
    return piece;
  }) as [Uint8Array, Uint8Array, ...Uint8Array[]];
  const glyphs = tableInFont(font, "glyf")!.start;
  const places = new DataView(font.buffer, tableInFont(font, "loca")!.start);
  const taken = new Uint32Array(KINDS);
  let end = glyphs;
  behind.forEach((noughts, glyph) => {
    if (noughts !== BLANK) {
      eachGlyphByte((kind) => (font[end++] = kinds[kind]![taken[kind]!++]!));
      end += noughts;
    }
    places.setUint32(WORD * (glyph + 1), end - glyphs);
  });
  return font;
}
