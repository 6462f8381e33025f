/**
 * How the pictures look: dark on white, told apart by words, line widths and
 * dashes, so that nothing is lost in black and white. Every ink has a contrast
 * of 4.5:1 or more on white and on the fills (WCAG 2.2, 1.4.3).
 */
export const INK = "#1F2933";
export const QUIET = "#52606D";
export const ALERT = "#7A1220";
export const PAPER = "#FFFFFF";
export const BOX_FILL = "#F5F7FA";
export const ALERT_FILL = "#FDF1F2";
/** For grid lines that carry no meaning of their own. */
export const FAINT = "#CBD2D9";
/** Reads on white and on black: for a bar that stands for something solid. */
export const SOLID = "#9AA5B1";

/** The first is installed with us, so that a picture is the same everywhere; the others are of like width. */
export const FONT_FAMILY = "'DejaVu Sans', Verdana, Arial, sans-serif";

/** Text as drawn, in pixels. */
export const TEXT = 11;
export const TITLE = 14;
/** The least that text may measure on paper, in pixels. */
const LEAST_PRINTED = 9;
/** What a landscape page of A4 or Letter holds at 96 pixels to the inch, within 0.7 inch margins. */
export const PAGE_WIDTH = 980;
/** No picture is wider, so that its text on such a page keeps the least size. */
export const WIDEST = Math.floor((PAGE_WIDTH * TEXT) / LEAST_PRINTED);

/** Lines: of what passes, and of what fails. */
export const PLAIN_LINE = { stroke: INK, "stroke-width": 1 } as const;
export const FAILING_LINE = { stroke: ALERT, "stroke-width": 2.5, "stroke-dasharray": "6 3" } as const;
