/** The width of a bold character in plain ones. */
const BOLD_CHARACTERS = 1.15;

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
