/** The width of a bold character in plain ones. */
const BOLD_CHARACTERS = 1.1;
/** Letters are narrower than the digits that a column's width counts. */
const LETTERS_A_DIGIT = 1.12;

/** How much wider than most letters these are, in characters. */
const WIDE_LETTERS = 0.6;
/** What the edges of a cell take, in characters. */
const CELL_EDGES = 2;

/** @returns the least width of a column, in characters, in which no word of its head is broken */
export const leastWidthOf = (head: string): number =>
  Math.max(
    ...head
      .split(" ")
      .map((word) =>
        Math.ceil(word.length + (word.match(/[mw]/gi) ?? []).length * WIDE_LETTERS + CELL_EDGES),
      ),
  );

/** A head that is taller pushes the rows below it off the screen. */
const MOST_HEAD_LINES = 3;

/** @returns the width of a column, in characters, at which its head has at most three lines and no word is broken */
export function headWidthOf(head: string, wanted: number): number {
  let width = Math.max(wanted, leastWidthOf(head));
  while (linesOf(head, width) > MOST_HEAD_LINES) width++;
  return width;
}

/** Words on lines of at most so many characters. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/**
 * @param text of a cell that wraps, not in bold
 * @param width of its column, in digits
 */
export const wrappedLinesOf = (text: string, width: number): number =>
  wrapped(text, width * LETTERS_A_DIGIT).length;

/**
 * @param text of a head, in bold; words are kept whole
 * @param width of its column, in characters
 * @returns how many lines the text takes
 */
export function linesOf(text: string, width: number): number {
  let lines = 1;
  let left = width;
  for (const word of text.split(" ")) {
    const length = word.length * BOLD_CHARACTERS;
    if (length > left && left < width) {
      lines++;
      left = width;
    }
    left -= length + 1;
  }
  return lines;
}
