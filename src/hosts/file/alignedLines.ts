/** A table typed with blanks, as in a mail or a note: two blanks or more part its cells, and they stand below one another. */
import type { ImportedLine } from "../../workbooks/imported/table";

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

const RULE = /^[\s\-=_+|*.]+$/;

/** @returns undefined for a text that has no such table */
export function alignedLines(text: string): ImportedLine[] | undefined {
  const lines = text.split("\n").map((line) => piecesOf(line));
  const widest = Math.max(...lines.map(({ length }) => length));
  if (widest < 2) return undefined;
  // The first of the widest lines is the head, or stands for it.
  const head = lines.find(({ length }) => length === widest)!;
  const aligned = lines.map((pieces, index) => ({ line: index + 1, cells: cellsOf(pieces, head) }));
  const wide = aligned.filter(({ cells }) => cells.filter((cell) => cell !== "").length > 1).length;
  return wide < 2 ? undefined : aligned;
}

function piecesOf(line: string): Piece[] {
  const plain = line.trimEnd();
  if (RULE.test(plain)) return [];
  return [...plain.matchAll(/\S+(?: \S+)*/g)].map((found) => ({
    from: found.index,
    to: found.index + found[0].length,
    text: found[0],
  }));
}

/** Each piece goes below the head over which it lies, or that is nearest; two in one place are one text. */
function cellsOf(pieces: readonly Piece[], head: readonly Piece[]): string[] {
  const cells = head.map(() => "");
  // As many as there are heads: each has its own, however carelessly they were aligned.
  if (pieces.length === head.length) return pieces.map(({ text }) => text);
  for (const piece of pieces) {
    const distances = head.map((one) => Math.max(0, one.from - piece.to + 1, piece.from - one.to + 1));
    const at = distances.indexOf(Math.min(...distances));
    cells[at] = cells[at] === "" ? piece.text : `${cells[at]} ${piece.text}`;
  }
  return cells;
}
