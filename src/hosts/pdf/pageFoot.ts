/** The foot of printed pages: what is told left and right, and which page of how many between, or right where nothing is told there. */
import { lines } from "./lines";
import type { PdfPages } from "./pdfPages";
import type { PrintType } from "./printType";

export interface Foot {
  readonly left: string;
  readonly right: string;
  /** From 1. */
  readonly page: number;
  readonly pages: number;
}

export interface FootPlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** So much may stand below `top`. */
  readonly height: number;
}

const SIZE = 8;
const LEAST_SIZE = 4;
const COLOR = "#52606d";
const GAP = 12;
const LEADING = 1.2;
/** From the top of a line to its base. */
const BASE = 0.92;

/** A long name takes more lines, and then smaller ones: nothing is cut and nothing meets. */
export function drawFoot(pages: PdfPages, type: PrintType, foot: Foot, place: FootPlace): void {
  const middle = `Page ${foot.page} of ${foot.pages}`;
  const across = place.right - place.left;
  const middleWidth = type.width(middle, SIZE);
  const isAlone = foot.right === "";
  const room = (isAlone ? across - middleWidth : (across - middleWidth) / 2) - GAP;
  const broken = (text: string): { readonly size: number; readonly set: readonly string[] } => {
    for (let size = SIZE; ; size -= 0.5) {
      const set = lines(text, room, (line) => type.width(line, size));
      if (size <= LEAST_SIZE || set.length * size * LEADING <= place.height) return { size, set };
    }
  };
  const draw = (text: string, left: (width: number) => number): void => {
    const { size, set } = broken(text);
    set.forEach((line, index) =>
      pages.text(line, left(type.width(line, size)), place.top + (index * LEADING + BASE) * size, {
        size,
        face: "regular",
        color: COLOR,
      }),
    );
  };
  pages.artifact("Pagination", () => {
    draw(foot.left, () => place.left);
    pages.text(middle, place.left + (across - middleWidth) / (isAlone ? 1 : 2), place.top + BASE * SIZE, {
      size: SIZE,
      face: "regular",
      color: COLOR,
    });
    draw(foot.right, (width) => place.right - width);
  });
}
