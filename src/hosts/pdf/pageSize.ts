/** Papers in points: ISO 216, A4 is 210 by 297 mm; Letter is 8.5 by 11 inches. */
import type { BookPrint } from "../../workbooks/book";

const POINTS_PER_MILLIMETRE = 72 / 25.4;
const PAPERS = {
  a4: [210 * POINTS_PER_MILLIMETRE, 297 * POINTS_PER_MILLIMETRE],
  letter: [612, 792],
} as const;

/** @returns width and height in points, to a hundredth */
export function pageSize({
  paper,
  orientation,
}: Pick<BookPrint, "paper" | "orientation">): readonly [width: number, height: number] {
  const [short, long] = PAPERS[paper].map((points) => Math.round(100 * points) / 100) as [number, number];
  return orientation === "landscape" ? [long, short] : [short, long];
}
