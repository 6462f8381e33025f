/** What a page holds between its margins. */
import type { BookPrint } from "./book";

/** In inches: wide sheets need the width, and a home printer leaves about 5 mm. */
export const PAGE_MARGINS = { left: 0.4, right: 0.4, top: 0.5, bottom: 0.7, header: 0.3, footer: 0.3 };
/** Of a column's width: seven pixels of 1/96 inch with the usual font (from memory). */
export const POINTS_PER_CHARACTER = 5.25;
/** In characters, where a sheet names none (from memory). */
export const USUAL_WIDTH = 8.43;

const POINTS_PER_INCH = 72;
/** Width and height upright, in points: ISO 216; 8.5 by 11 inches. */
const PAPERS = { a4: [595, 842], letter: [612, 792] } as const;

/** @returns width and height in points */
export function pageRoom({ paper, orientation }: Pick<BookPrint, "paper" | "orientation">): {
  readonly across: number;
  readonly down: number;
} {
  const [short, long] = PAPERS[paper];
  const [across, down] = orientation === "landscape" ? [long, short] : [short, long];
  const { left, right, top, bottom } = PAGE_MARGINS;
  return {
    across: across - (left + right) * POINTS_PER_INCH,
    down: down - (top + bottom) * POINTS_PER_INCH,
  };
}
