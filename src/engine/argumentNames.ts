/**
 * Names of arguments within the sentence of a fault, marked, so that a workbook
 * can put its own words in their place: a function's `lengths` is there "Run of
 * 12-1 (Rooms H8)". Where no workbook is at hand the names stand as they are.
 */

/** Private-use characters, which nobody types, around a name, its row, and how the sentence shows them. */
const [OPEN, BAR, CLOSE] = ["\uE000", "\uE001", "\uE002"] as const;
const MARKED = new RegExp(`${OPEN}([^${BAR}]*)${BAR}(\\d*)${BAR}([^${CLOSE}]*)${CLOSE}`, "g");
const MARKS = new RegExp(`[${OPEN}${BAR}${CLOSE}]`, "g");

/**
 * @param row of a list or a table, from 1, where the sentence is about one
 * @param shownAs what stands there where no workbook is at hand
 * @returns the name, to be put into a sentence
 */
export const argument = (name: string, row?: number, shownAs = name): string =>
  `${OPEN}${name}${BAR}${row ?? ""}${BAR}${shownAs}${CLOSE}`;

/** A sentence as it is read: names of arguments without their marks. */
export const plain = (sentence: string): string => sentence.replace(MARKED, "$3");

/** Text from a cell that goes into a sentence can't bring marks of its own. */
export const withoutMarks = (text: string): string => text.replace(MARKS, "");

/** The same sentence about one row of a list, wherever it names the list. */
export const inRow = (sentence: string, name: string, row: number): string =>
  sentence.replaceAll(argument(name), argument(name, row, name));

/** @param wordsFor what the workbook calls an argument, or one row of it; undefined leaves the name as it is */
export const reworded = (
  sentence: string,
  wordsFor: (name: string, row: number | undefined) => string | undefined,
): string =>
  sentence.replace(
    MARKED,
    (_, name: string, row: string, shownAs: string) =>
      wordsFor(name, row === "" ? undefined : Number(row)) ?? shownAs,
  );

/** The same sentence where what it names are entries of one column, each in its row. */
export const asRowsOf = (sentence: string, column: string, entries: readonly string[]): string =>
  reworded(sentence, (name) => {
    const row = entries.indexOf(name) + 1;
    return row === 0 ? undefined : argument(column, row, name);
  });
