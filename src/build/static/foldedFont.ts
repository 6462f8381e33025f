/**
 * A font for the way to a page, which unfolds it (hosts/desk/page/unfoldedFont.ts):
 * bytes of one kind stand together, by which the desk's two fonts pack to four
 * fifths of what they do whole. Nothing is lost.
 *
 * Source: OpenType 1.9, "loca", of four bytes a place.
 */
import { eachGlyphByte, KINDS } from "../../hosts/desk/page/eachGlyphByte";
import { tableInFont } from "../../hosts/desk/page/tableInFont";
import { BLANK, unfoldedFont } from "../../hosts/desk/page/unfoldedFont";
import { viewOf } from "./viewOf";

const WORD = 4;

/**
 * @param font without instructions (see leanFont)
 * @throws Error for a font that would not come back as it is
 */
export function foldedFont(font: Uint8Array): Uint8Array {
  const [glyf, loca] = [tableInFont(font, "glyf"), tableInFont(font, "loca")];
  if (glyf === undefined || loca === undefined) throw new Error("Only a TrueType font can be folded.");
  const places = viewOf(font.subarray(loca.start, loca.end));
  const rest = Uint8Array.from(font).fill(0, glyf.start, glyf.end).fill(0, loca.start, loca.end);
  const kinds = Array.from({ length: KINDS }, (): number[] => []);
  const behind = Array.from({ length: places.byteLength / WORD - 1 }, (_, glyph) => {
    let at = glyf.start + places.getUint32(WORD * glyph);
    const end = glyf.start + places.getUint32(WORD * (glyph + 1));
    if (at === end) return BLANK;
    eachGlyphByte((kind) => {
      const byte = font[at++]!;
      kinds[kind]!.push(byte);
      return byte;
    });
    return end - at;
  });
  const pieces = [rest, behind, ...kinds];
  const lengths = new Uint8Array(WORD * pieces.length);
  pieces.forEach((piece, index) => viewOf(lengths).setUint32(WORD * index, piece.length));
  const folded = Uint8Array.from([lengths, ...pieces].flatMap((piece) => [...piece]));
  if (!isSame(unfoldedFont(folded), font)) throw new Error("This font can't be folded without a loss.");
  return folded;
}

const isSame = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);
