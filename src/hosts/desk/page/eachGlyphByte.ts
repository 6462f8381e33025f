/**
 * What each byte of a glyph is, in the order in which they stand: bytes of one kind
 * are much alike, and pack to three quarters of what whole glyphs pack to.
 *
 * Source: OpenType 1.9, "glyf"; the thought of one stream for each kind is that of
 * WOFF File Format 2.0, 5.1.
 */

/** Of the flags of points. */
const SHORT = [0x02, 0x04] as const;
const SAME_OR_PLUS = [0x10, 0x20] as const;
const REPEATED = 0x08;
/** Of the flags of a component. */
const WORDS = 0x0001;
const ONE_SCALE = 0x0008;
const MORE_COMPONENTS = 0x0020;
const TWO_SCALES = 0x0040;
const MATRIX = 0x0080;

const BOX_BYTES = 8;

/** Kinds of byte. */
export const KINDS = 9;
const CONTOURS = 0;
const BOX = 1;
const END = 2;
const FLAG = 3;
const NEAR = [4, 5] as const;
const FAR = [6, 7] as const;
const COMPONENT = 8;

/**
 * Walks one glyph that has no instructions.
 *
 * @param next gives the next byte of the glyph, which is of this kind
 */
export function eachGlyphByte(next: (kind: number) => number): void {
  const word = (kind: number): number => next(kind) * 256 + next(kind);
  const contours = word(CONTOURS);
  for (let at = 0; at < BOX_BYTES; at += 2) word(BOX);
  if (contours >= 0x8000) components(next, word);
  else points(contours, next, word);
}

function points(contours: number, next: (kind: number) => number, word: (kind: number) => number): void {
  let count = 0;
  for (let contour = 0; contour < contours; contour++) count = word(END) + 1;
  word(CONTOURS);
  const flags: number[] = [];
  while (flags.length < count) {
    const flag = next(FLAG);
    for (let times = flag & REPEATED ? next(FLAG) : 0; times >= 0; times--) flags.push(flag);
  }
  for (const axis of [0, 1] as const)
    for (const flag of flags)
      if (flag & SHORT[axis]) next(NEAR[axis]);
      else if (!(flag & SAME_OR_PLUS[axis])) word(FAR[axis]);
}

function components(next: (kind: number) => number, word: (kind: number) => number): void {
  let flags;
  do {
    flags = word(COMPONENT);
    const scales = flags & ONE_SCALE ? 2 : flags & TWO_SCALES ? 4 : flags & MATRIX ? 8 : 0;
    const length = 2 + (flags & WORDS ? 4 : 2) + scales;
    for (let at = 0; at < length; at++) next(COMPONENT);
  } while (flags & MORE_COMPONENTS);
}
