/**
 * The glyphs of a TrueType font without their instructions, which fit outlines to
 * coarse pixels.
 *
 * Source: OpenType 1.9, "glyf" (simple and composite glyphs) and "loca".
 */
import { viewOf } from "./viewOf";

/** The number of contours and the box around them. */
const HEADER_BYTES = 10;
/** Flags of a component. */
const WORDS = 0x0001;
const ONE_SCALE = 0x0008;
const MORE_COMPONENTS = 0x0020;
const TWO_SCALES = 0x0040;
const MATRIX = 0x0080;
const INSTRUCTIONS = 0x0100;

interface Outlines {
  /** Where each glyph starts in "glyf", and where the last one ends. */
  readonly loca: Uint8Array;
  readonly glyf: Uint8Array;
}

/** @param isLong as "head" says: four bytes for each place, or two for half of it */
export function withoutInstructions({ loca, glyf }: Outlines, isLong: boolean): Outlines {
  const entry = isLong ? 4 : 2;
  const places = viewOf(loca);
  const place = (index: number): number =>
    isLong ? places.getUint32(entry * index) : 2 * places.getUint16(entry * index);
  const bare = {
    loca: new Uint8Array(loca.length),
    glyf: new Uint8Array(glyf.length),
  };
  const barePlaces = viewOf(bare.loca);
  let end = 0;
  for (let index = 1; index < loca.length / entry; index++) {
    const glyph = bareGlyph(glyf.slice(place(index - 1), place(index)));
    bare.glyf.set(glyph, end);
    end += glyph.length + (glyph.length % 2);
    if (isLong) barePlaces.setUint32(entry * index, end);
    else barePlaces.setUint16(entry * index, end / 2);
  }
  return { loca: bare.loca, glyf: bare.glyf.slice(0, end) };
}

/** @param glyph is changed */
function bareGlyph(glyph: Uint8Array): Uint8Array {
  if (glyph.length <= HEADER_BYTES) return glyph;
  const view = viewOf(glyph);
  const contours = view.getInt16(0);
  if (contours < 0) return glyph.subarray(0, clearedComponents(view));
  const lengthAt = HEADER_BYTES + 2 * contours;
  const after = lengthAt + 2;
  const length = view.getUint16(lengthAt);
  view.setUint16(lengthAt, 0);
  glyph.copyWithin(after, after + length);
  return glyph.subarray(0, glyph.length - length);
}

/** @returns the end of the last component, which its instructions follow */
function clearedComponents(view: DataView): number {
  let at = HEADER_BYTES;
  let flags;
  do {
    flags = view.getUint16(at);
    view.setUint16(at, flags & ~INSTRUCTIONS);
    at += flags & WORDS ? 8 : 6;
    at += flags & ONE_SCALE ? 2 : flags & TWO_SCALES ? 4 : flags & MATRIX ? 8 : 0;
  } while (flags & MORE_COMPONENTS);
  return at;
}
