/**
 * Where a delimited text file opens a quoted cell that it never closes. Readers take all that follows for one
 * cell; in a survey it is a mark for "the same as above", or half of one for inches. A mark of another cell further
 * down that happens to end it is no end: behind one stands a delimiter or the end of the line.
 *
 * @returns the line on which it opens, from 1; none where every quoted cell is closed
 */
export function unclosedQuote(text: string, delimiter: string): number | undefined {
  let line = 1;
  let fresh = true;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    if (sign === '"' && fresh) {
      const end = closingQuote(text, at + 1);
      const swallows = end !== undefined && text.slice(at, end).includes("\n");
      if (end === undefined || (swallows && !isEnd(text, end + 1, delimiter))) return line;
      line += text.slice(at, end).split("\n").length - 1;
      at = end;
    }
    if (sign === "\n") line++;
    fresh = sign === delimiter || sign === "\n" || sign === "\r";
  }
  return undefined;
}

function isEnd(text: string, from: number, delimiter: string): boolean {
  let at = from;
  while (text[at] === " ") at++;
  return at >= text.length || text[at] === delimiter || text[at] === "\n" || text[at] === "\r";
}

/** Two marks inside a quoted cell are one that belongs to it. */
function closingQuote(text: string, from: number): number | undefined {
  for (let at = text.indexOf('"', from); at >= 0; at = text.indexOf('"', at + 2))
    if (text[at + 1] !== '"') return at;
  return undefined;
}
