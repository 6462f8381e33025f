/**
 * How wide a line of text comes out, without a font at hand: the advances of
 * DejaVu Sans 2.37 in hundredths of its size, as its horizontal metrics have
 * them for the printable ASCII characters; other characters are taken as wide.
 */

const FIRST = 32;
const REGULAR = widths(
  "32 40 46 84 64 95 78 27 39 39 50 84 32 36 32 34 64 64 64 64 64 64 64 64 64 64 34 34 84 84 84 53 100 68 69 70 77 63 58 77 75 29 29 66 56 86 75 79 60 79 69 63 61 73 68 99 69 61 69 39 34 39 84 50 50 61 63 55 63 62 35 63 63 28 28 58 28 97 63 61 63 63 41 52 39 63 59 82 59 59 52 64 34 64 84",
);
const BOLD = widths(
  "35 46 52 84 70 100 87 31 46 46 52 84 38 42 38 37 70 70 70 70 70 70 70 70 70 70 40 40 84 84 84 58 100 77 76 73 83 68 68 82 84 37 37 77 64 100 84 85 73 85 77 72 68 81 77 110 77 72 73 46 37 46 84 50 50 67 72 59 72 68 44 72 71 34 34 67 34 104 71 69 72 72 49 60 48 71 65 92 65 65 58 71 37 71 84",
);
/** Letters of other alphabets up to Cyrillic; what lies beyond may be as wide as it is high. */
const OTHER_LETTER = 80;
const LAST_NARROW = 0x58f;
const FULL = 105;
const ELLIPSIS = "…";

function widths(list: string): readonly number[] {
  return list.split(" ").map(Number);
}

/** In hundredths of the text's size. */
function advance(letter: string, bold: boolean): number {
  const code = letter.codePointAt(0)!;
  return (bold ? BOLD : REGULAR)[code - FIRST] ?? (code <= LAST_NARROW ? OTHER_LETTER : FULL);
}

/** @returns pixels, a little more rather than less */
export function textWidth(text: string, size: number, bold = false): number {
  let hundredths = 0;
  for (const letter of text) hundredths += advance(letter, bold);
  return (hundredths / 100) * size;
}

/** Cuts a text to a width, with an ellipsis where something is left out; reads no more of it than fits. */
export function fittedText(text: string, width: number, size: number, bold = false): string {
  const room = (100 * width) / size;
  const withEllipsis = room - advance(ELLIPSIS, bold);
  let used = 0;
  let at = 0;
  let kept = 0;
  for (const letter of text) {
    used += advance(letter, bold);
    at += letter.length;
    if (used <= withEllipsis) kept = at;
    if (used > room) return text.slice(0, kept).trimEnd() + ELLIPSIS;
  }
  return text;
}
