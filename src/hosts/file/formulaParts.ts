/** What in a formula is not code: text in double quotes, a sheet's name in single ones, a bracketed reference. */
const LITERAL = /("(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^\]]*\])/;

/** Changes the code of a formula and leaves its literals alone. */
export const mapCode = (formula: string, change: (code: string) => string): string =>
  formula
    .split(LITERAL)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join("");
