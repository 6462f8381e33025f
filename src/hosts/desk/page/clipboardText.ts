/**
 * Rows of cells in the plain text that spreadsheet programs, word processors and pages put on the clipboard: cells
 * parted by tabs, rows by line breaks of any kind, and a cell that holds either of them in quotes, where a quote is
 * written twice.
 */

/** Ends a cell: a tab or a line break, or the end of the text. */
const isEnd = (character: string | undefined): boolean =>
  character === undefined || character === "\t" || character === "\n";

/**
 * @param text as the clipboard has it. The line break behind the last row, which many programs write, begins no
 *   further row.
 * @returns rows of cells, not all of one length; none for no text
 */
export function clipboardRows(text: string): string[][] {
  const plain = text.replace(/\r\n?/g, "\n").replace(/\n$/, "");
  // An empty cell that was copied is a line break alone.
  if (text === "") return [];
  const rows: string[][] = [[]];
  for (let at = 0; at <= plain.length;) {
    const { cell, end } = quotedCell(plain, at) ?? plainCell(plain, at);
    rows.at(-1)!.push(cell);
    if (plain[end] === "\n") rows.push([]);
    at = end + 1;
  }
  return rows;
}

function plainCell(text: string, from: number): { cell: string; end: number } {
  let end = from;
  while (!isEnd(text[end])) end++;
  return { cell: text.slice(from, end), end };
}

/** @returns undefined for a cell that is not in quotes: one that only begins with a quote is as it stands */
function quotedCell(text: string, from: number): { cell: string; end: number } | undefined {
  if (text[from] !== '"') return undefined;
  for (let at = from + 1; at < text.length; at++) {
    if (text[at] !== '"') continue;
    if (text[at + 1] === '"') at++;
    else {
      const cell = text.slice(from + 1, at).replace(/""/g, '"');
      return isEnd(text[at + 1]) ? { cell, end: at + 1 } : undefined;
    }
  }
  return undefined;
}
