/**
 * Which native formulas have to be stored as arrays. In a plain one Excel cuts
 * a range down to the cell in the formula's own row wherever it wants one value
 * ("implicit intersection"); our engine never does, so a formula that would be
 * cut is stored as a dynamic array, as Excel itself stores what is typed there.
 *
 * Source: classes of Excel's parameters as in LibreOffice core's import tables
 * (sc/source/filter/oox/formulabase.cxx, excel/xlformula.cxx); Microsoft,
 * "Formula vs Formula2". What is not known here, or not understood, is stored
 * as an array, which is never wrong.
 */
import { parseRange } from "../formula/address";
import type { Book, BookCell } from "./book";
import { callsUs } from "./callsUs";

/**
 * How each parameter takes several cells; the last one repeats, `…` the last two.
 * v one value, whatever surrounds the function; r one value, or an array where
 * the function itself stands for one; R cells as a whole; W cells as a whole, all
 * else as r; X the same, but a function in it stands for one value; A an array.
 */
const PARAMETERS: Readonly<Record<string, string>> = {
  ...grouped("r", "ABS DATE INT ISBLANK ISERR ISERROR ISNA ISNUMBER ISTEXT LEFT LEN MID MOD NOT RIGHT ROUND"),
  ...grouped("r", "ROUNDDOWN ROUNDUP SIGN SQRT SUBSTITUTE TEXT TRIM VALUE YEAR INDIRECT FALSE TRUE NA"),
  ...grouped("X", "AND AVERAGE COUNT COUNTA MAX MIN OR SUM"),
  ...grouped("R", "COLUMN COLUMNS COUNTBLANK N ROW ROWS T"),
  ...grouped("A", "MMULT SUMPRODUCT"),
  ...grouped("vR", "CHOOSE IF IFERROR"),
  ...grouped("vRRv", "HLOOKUP VLOOKUP"),
  ...grouped("Xr", "LARGE SMALL"),
  COUNTIF: "Rr",
  COUNTIFS: "Rr…",
  INDEX: "Av",
  LOOKUP: "rA",
  MATCH: "rXW",
  OFFSET: "Rr",
  SUBTOTAL: "rR",
  SUMIF: "RrR",
  SUMIFS: "RRr…",
  TRANSPOSE: "v",
};

function grouped(letters: string, names: string): Record<string, string> {
  return Object.fromEntries(names.split(" ").map((name) => [name, letters]));
}

const TOKEN =
  /\s+|"(?:[^"]|"")*"|(?:'(?:[^']|'')+'!|[\p{L}_][\p{L}\p{N}_.]*!)?\$?[A-Z]{1,3}\$?[1-9]\d*(?::\$?[A-Z]{1,3}\$?[1-9]\d*)?(?![\p{L}\p{N}_.(!])|\d*\.?\d+(?:E[+-]?\d+)?|[\p{L}_][\p{L}\p{N}_.]*|<>|<=|>=|[-+*/^&=<>%(),@]/giuy;
const OPERATOR = /^(?:[-+*/^&=<>]|<>|<=|>=)$/;

/** Whether an array is wanted of operators here, and of the functions beside them. */
interface Around {
  readonly operators: boolean;
  readonly functions: boolean;
}

const ONE_VALUE: Around = { operators: false, functions: false };
const ARRAY: Around = { operators: true, functions: true };
/** The reach of an array with one result. */
const ONE_CELL = { rows: 1, columns: 1 } as const;

/** Marks the formulas of a book that have one result and are arrays all the same. */
export function markArrays({ names, sheets }: Pick<Book, "names" | "sheets">): void {
  const arrayOf = arrayFormulas({ names });
  for (const { cells } of sheets) {
    for (const cell of Object.values(cells)) {
      const spill = cell.formula !== undefined && !cell.spill ? arrayOf(cell.formula) : undefined;
      if (spill) cell.spill = spill;
    }
  }
}

/**
 * @param names the workbook's names
 * @returns what to say of a formula whose result fills one cell: the reach of
 *   an array, or undefined for a plain formula and for a call of ours, which is
 *   stored as an array anyway
 */
export function arrayFormulas({ names }: Pick<Book, "names">): (formula: string) => BookCell["spill"] {
  const ranges = new Map(names.map(({ name, range }) => [name.toUpperCase(), range]));
  const isMany = (cells: string): boolean => {
    const zone = parseRange(ranges.get(cells.toUpperCase()) ?? cells.slice(cells.lastIndexOf("!") + 1));
    return !zone || zone.top < zone.bottom || zone.left < zone.right;
  };
  return (formula) => (callsUs(formula) || !isCut(formula, isMany) ? undefined : ONE_CELL);
}

/** Stops the walk: the formula is cut, or not understood. */
class Cut extends Error {}
/** Excel nests functions 64 deep (Excel specifications and limits); brackets come on top of them. */
const DEEPEST = 256;

function isCut(formula: string, isMany: (cells: string) => boolean): boolean {
  const tokens = tokensOf(formula);
  if (!tokens) return true;
  let at = 0;
  let depth = 0;
  const cut = (): never => {
    throw new Cut();
  };
  const take = (wanted: string): void => void (tokens[at++] === wanted || cut());

  /** @returns whether it stands for several cells as a whole, which whoever asks for it may cut */
  const expression = (around: Around): boolean => {
    let many = operand(around);
    while (OPERATOR.test(tokens[at] ?? "")) {
      at += 1;
      const next = operand(around);
      if ((many || next) && !around.operators) cut();
      many = false;
    }
    return many;
  };
  const operand = (around: Around): boolean => {
    if (++depth > DEEPEST) cut();
    let many = operandItself(around);
    for (; tokens[at] === "%"; many = false) {
      at += 1;
      if (many && !around.operators) cut();
    }
    depth -= 1;
    return many;
  };
  const operandItself = (around: Around): boolean => {
    const token = tokens[at++] ?? cut();
    if (token === "(") {
      const many = expression(around);
      take(")");
      return many;
    }
    if (token === "+" || token === "-" || token === "@") {
      // Of several cells an @ takes the one in the formula's row: that is what its writer wants.
      if (operand(around) && token !== "@" && !around.operators) cut();
      return false;
    }
    if (/^["\d.]/.test(token)) return false;
    if (!/^[\p{L}_'$]/u.test(token)) cut();
    if (tokens[at] === "(") return call(token.toUpperCase(), around.functions);
    return !/^(?:true|false)$/i.test(token) && isMany(token);
  };
  const call = (name: string, forArray: boolean): boolean => {
    const letters = Object.hasOwn(PARAMETERS, name) ? PARAMETERS[name]! : cut();
    const manies: boolean[] = [];
    const blanks: boolean[] = [];
    take("(");
    for (let more = tokens[at] !== ")"; more; more = tokens[at] === "," && ++at > 0) {
      const letter = letterAt(letters, manies.length);
      const start = at;
      const left = tokens[at] === "," || tokens[at] === ")";
      const many = !left && expression(insideOf(letter, forArray));
      const written = tokens.slice(start, at).filter((token) => !/^[()]$/.test(token));
      blanks.push(left || (written.length === 1 && Number(written[0]) === 0));
      if (many && (letter === "v" || (letter === "r" && !forArray))) cut();
      manies.push(many);
    }
    take(")");
    // These return cells themselves; INDEX all of a row or a column where it is told none, or 0.
    if (name === "IF" || name === "CHOOSE") return manies.slice(1).includes(true);
    if (name === "INDEX") return manies[0] === true && blanks.slice(1).includes(true);
    return name === "OFFSET" || name === "INDIRECT";
  };

  try {
    return expression(ONE_VALUE) || at < tokens.length;
  } catch (error) {
    if (error instanceof Cut) return true;
    throw error;
  }
}

function insideOf(letter: string, forArray: boolean): Around {
  if (letter === "A") return ARRAY;
  if ((letter === "r" || letter === "W") && forArray) return ARRAY;
  return letter === "X" ? { operators: forArray, functions: false } : ONE_VALUE;
}

function tokensOf(formula: string): string[] | undefined {
  const tokens: string[] = [];
  let end = 0;
  for (const [token] of formula.matchAll(TOKEN)) {
    end += token.length;
    if (token.trim() !== "") tokens.push(token);
  }
  return end === formula.length ? tokens : undefined;
}

function letterAt(letters: string, index: number): string {
  if (!letters.endsWith("…")) return letters[Math.min(index, letters.length - 1)]!;
  const pairs = letters.length - 3;
  return letters[index < pairs ? index : pairs + ((index - pairs) % 2)]!;
}
