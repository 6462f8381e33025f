/** What moved a cell between two revisions, as lines of text. */
import { figure } from "../review/namedCells";
import { valueInWords } from "../review/whyInWords";
import type { Moved, Shown } from "./whyMoved";

const WIDE = 12;

/** @returns a figure's own difference, with its sign; what a word or an error became */
export function stepInWords(before: Shown, after: Shown, format: string | undefined): string {
  if (typeof before === "number" && typeof after === "number" && !/y/i.test(format ?? "")) {
    const by = after - before;
    return `${by > 0 ? "+" : ""}${format?.includes("%") ? valueInWords(by, format) : figure(by)}`;
  }
  return `${shownInWords(before, format)} -> ${shownInWords(after, format)}`;
}

/** An error is told as it is, without the marks of a word. */
export const shownInWords = (shown: Shown, format: string | undefined): string =>
  typeof shown === "string" && shown.startsWith("#") ? shown : valueInWords(shown, format);

/** @returns what is told of the changes that did nothing to the cell; none where there are none */
export const idleInWords = (idle: number): readonly string[] =>
  idle === 0 ? [] : [`${idle === 1 ? "1 change left it" : `${idle} changes left it`} as it was.`];

/**
 * @param label the cell's own words, as "Total (Quote B23)"
 * @param format the cell's number format
 * @returns lines without line ends
 */
export function movedInWords(label: string, moved: Moved, format: string | undefined): string[] {
  const { before, after, steps, idle, notes } = moved;
  const told = `${label}: ${shownInWords(before, format)} in the older workbook, ${shownInWords(after, format)} now`;
  return [
    before === after && steps.length === 0
      ? `${label}: ${shownInWords(after, format)} in both workbooks`
      : told,
    ...steps.map((step) => `  ${stepInWords(step.before, step.after, format).padStart(WIDE)}  ${step.what}`),
    ...idleInWords(idle),
    ...notes,
  ];
}
