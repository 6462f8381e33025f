/**
 * How each kind of cell looks. The marks survive black-and-white print and
 * colour blindness: an input has a fill and a border, a result has neither, a
 * verdict is a word. Contrast of text on fill is at least 4.5:1 (WCAG 2.2).
 */
import type { Look } from "./book";
import type { Format } from "./definition";

/** A date as files store it; where a workbook says how its people write dates, the desk shows it so. */
export const DATE_FORMAT = "yyyy-mm-dd";

/** With two decimals; see moneyShown.ts for others. */
export const MONEY_FORMAT = "#,##0.00";

const FORMATS: Readonly<Record<Format, string | undefined>> = {
  text: undefined,
  general: undefined,
  integer: "0",
  one: "0.0",
  two: "0.00",
  three: "0.000",
  degrees: "0.0",
  percent: "0.0%",
  money: MONEY_FORMAT,
  date: DATE_FORMAT,
};

/** Of the lines around cells, on our own grid and on paper. */
export const EDGE_COLOR = "8A8F98";

/** What is typed into such a cell stays text, whatever it looks like: `3-16` is no date and `007` no number. */
export const TEXT_FORMAT = "@";

const INK = "1F2933";
const QUIET = "52606D";
const HEAD_FILL = "E4E7EB";
export const INPUT_FILL = "FFF6DC";
const END_FILL = "CBD2D9";
const BOX = { top: "thin", right: "thin", bottom: "thin", left: "thin" } as const;

export const LOOKS = {
  title: { bold: true, size: 15, color: INK },
  verdict: { bold: true, size: 11, color: INK, align: "left" },
  intro: { color: QUIET, italic: true },
  heading: { bold: true, size: 12, color: INK, edges: { bottom: "medium" } },
  head: {
    bold: true,
    color: INK,
    fill: HEAD_FILL,
    wrap: true,
    vertical: "bottom",
    edges: { bottom: "thin" },
  },
  unit: { color: QUIET, italic: true, size: 9, fill: HEAD_FILL, edges: { bottom: "thin" } },
  label: { color: INK, vertical: "top" },
  strongLabel: { bold: true, color: INK },
  fieldUnit: { color: QUIET, vertical: "top" },
  note: { color: QUIET, wrap: true, vertical: "top" },
  line: { color: INK, wrap: true, vertical: "top" },
  end: { fill: END_FILL },
} as const satisfies Record<string, Look>;

/** A cell that a person fills; where it holds text, nothing typed into it turns into a number or a date. */
export const inputLook = (format: Format, text: boolean): Look => ({
  color: INK,
  fill: INPUT_FILL,
  edges: BOX,
  locked: false,
  ...alignment(format),
  ...formatted(format),
  ...(text && { format: TEXT_FORMAT }),
});

/** A calculated cell; one that holds or shows a call of ours is never locked. */
export const resultLook = (format: Format, callsUs: boolean, strong = false): Look => ({
  color: INK,
  ...(strong ? { bold: true, size: 12, edges: { top: "thin" as const } } : {}),
  ...(callsUs ? { locked: false } : {}),
  ...alignment(format),
  ...formatted(format),
});

/** The look that a word needing attention takes on: bold and boxed, so that it shows without colour. */
export const ALERT_LOOK: Look = { bold: true, color: "7A1220", fill: "FBE3E6" };
/** An entry of a row that goes before its type's: bold, so that it shows without colour. */
export const OWN_LOOK: Look = { bold: true, color: INK, fill: "F3D98B" };
/** Words of a verdict that need attention. */
export const ALERT_WORDS = ["low", "high", "look", "error", "missing", "dead", "doubtful", "steep"] as const;

/** @returns the number format as files have it; undefined where a cell needs none */
export const numberFormatOf = (format: Format): string | undefined => FORMATS[format];

const formatted = (format: Format): Look => {
  const text = numberFormatOf(format);
  return text === undefined ? {} : { format: text };
};

/** Words to the left, numbers to the right. */
export const alignment = (format: Format): Pick<Look, "align" | "vertical"> =>
  format === "text" || format === "date"
    ? { align: "left", vertical: "top" }
    : { align: "right", vertical: "top" };
