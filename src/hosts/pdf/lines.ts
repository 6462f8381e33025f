/** Text broken into lines of a width. */

/** A last digit's rounding must not break a line. */
const SLACK = 0.01;

/**
 * @param text its own line breaks stay
 * @param room points
 * @param width of a line, in points
 * @returns lines that fit; a word that is longer than one is broken anywhere
 */
export function lines(text: string, room: number, width: (text: string) => number): string[] {
  return text.split("\n").flatMap((line) => linesOf(line, room + SLACK, width));
}

function linesOf(line: string, room: number, width: (text: string) => number): string[] {
  if (width(line) <= room) return [line];
  const made: string[] = [];
  let current: string | undefined;
  for (const word of line.split(" ")) {
    const longer: string = current === undefined ? word : `${current} ${word}`;
    if (width(longer) <= room) {
      current = longer;
      continue;
    }
    if (current !== undefined && current.trim() !== "") made.push(current);
    const pieces = width(word) <= room ? [word] : piecesOf(word, room, width);
    made.push(...pieces.slice(0, -1));
    current = pieces.at(-1)!;
  }
  if (current !== undefined) made.push(current);
  return made;
}

function piecesOf(word: string, room: number, width: (text: string) => number): string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const sign of word) {
    if (piece !== "" && width(piece + sign) > room) {
      pieces.push(piece);
      piece = "";
    }
    piece += sign;
  }
  return [...pieces, piece];
}
