/**
 * Whether Excel would cut a range in a plain formula down to the cell in the
 * formula's own row, which it does wherever it wants one value ("implicit
 * intersection").
 *
 * Source: classes of Excel's parameters as in LibreOffice core's import tables
 * (sc/source/filter/oox/formulabase.cxx, excel/xlformula.cxx); Microsoft,
 * "Formula vs Formula2".
 */
import { treeOf } from "./parse";
import { isWhole } from "./reference";
import { withoutBrackets, type FormulaNode } from "./tree";

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

/** Whether an array is wanted of operators here, and of the functions beside them. */
interface Around {
  readonly operators: boolean;
  readonly functions: boolean;
}

const ONE_VALUE: Around = { operators: false, functions: false };
const ARRAY: Around = { operators: true, functions: true };
/** Whether a name or a reference stands for several cells, or for nobody knows what. */
export type IsMany = (cells: Extract<FormulaNode, { kind: "name" | "reference" }>) => boolean;

/** Stops the walk: the formula is cut, or not understood. */
class Cut extends Error {}

/** @returns whether it is cut somewhere; also true of what is not understood */
export function isCut(formula: string, isMany: IsMany): boolean {
  const tree = treeOf(formula);
  if (!tree) return true;
  try {
    return new Walk(isMany).standsForMany(tree, ONE_VALUE);
  } catch (error) {
    if (error instanceof Cut) return true;
    throw error;
  }
}

class Walk {
  constructor(private readonly isMany: IsMany) {}

  /** @returns whether it stands for several cells as a whole, which whoever asks for it may cut */
  standsForMany(node: FormulaNode, around: Around): boolean {
    switch (node.kind) {
      case "number":
      case "text":
      case "boolean":
        return false;
      case "reference":
        // Of whole rows and columns nobody is sure how far they reach.
        return isWhole(node.cells) ? this.cut() : this.isMany(node);
      case "name":
        return this.isMany(node);
      case "brackets":
        return this.standsForMany(node.of, around);
      case "operator":
        // What joins cells is not followed here.
        if (node.operator === ":" || node.operator === " " || node.operator === ",") this.cut();
        this.takeOne(node.left, around);
        this.takeOne(node.right, around);
        return false;
      case "sign":
        // Of several cells an @ takes the one in the formula's row: that is what its writer wants.
        if (node.sign === "@") this.standsForMany(node.of, around);
        else this.takeOne(node.of, around);
        return false;
      case "percent":
        this.takeOne(node.of, around);
        return false;
      case "call":
        return this.call(node.name.toUpperCase(), node.args, around.functions);
      default:
        return this.cut();
    }
  }

  /** An operand, of which one value is wanted unless an array is. */
  private takeOne(node: FormulaNode, around: Around): void {
    if (this.standsForMany(node, around) && !around.operators) this.cut();
  }

  private call(name: string, args: readonly FormulaNode[], forArray: boolean): boolean {
    const letters = Object.hasOwn(PARAMETERS, name) ? PARAMETERS[name]! : this.cut();
    const manies = args.map((arg, index) => {
      const letter = letterAt(letters, index);
      const many = arg.kind !== "missing" && this.standsForMany(arg, insideOf(letter, forArray));
      if (many && (letter === "v" || (letter === "r" && !forArray))) this.cut();
      return many;
    });
    // These return cells themselves; INDEX all of a row or a column where it is told none, or 0.
    if (name === "IF" || name === "CHOOSE") return manies.slice(1).includes(true);
    if (name === "INDEX") return manies[0] === true && args.slice(1).some(isNone);
    return name === "OFFSET" || name === "INDIRECT";
  }

  private cut(): never {
    throw new Cut();
  }
}

function isNone(arg: FormulaNode): boolean {
  const one = withoutBrackets(arg);
  return one.kind === "missing" || (one.kind === "number" && one.value === 0);
}

function insideOf(letter: string, forArray: boolean): Around {
  if (letter === "A") return ARRAY;
  if ((letter === "r" || letter === "W") && forArray) return ARRAY;
  return letter === "X" ? { operators: forArray, functions: false } : ONE_VALUE;
}

function letterAt(letters: string, index: number): string {
  if (!letters.endsWith("…")) return letters[Math.min(index, letters.length - 1)]!;
  const pairs = letters.length - 3;
  return letters[index < pairs ? index : pairs + ((index - pairs) % 2)]!;
}
