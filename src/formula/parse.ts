/** Text into a tree. Nothing throws: what is no formula gives a sentence. */
import { BINDING, SIGN_BINDING } from "./precedence";
import { readReference, type Reference } from "./reference";
import { REFERENCE_FUNCTIONS } from "./referenceFunctions";
import { functionName } from "./storedNames";
import { tokensOf, type Token } from "./tokens";
import { withoutBrackets, type FormulaNode, type Operator } from "./tree";

export type Parsed =
  | { readonly tree: FormulaNode; readonly trouble?: undefined }
  | { readonly tree?: undefined; readonly trouble: string };

/** Excel nests functions 64 deep (Excel specifications and limits); brackets come on top of them. */
const DEEPEST = 256;
/** Of the tree, which a long chain of sums makes tall too: what walks it needs no more room than this. */
const TALLEST = 1_000;
/** Texts kept with their trees; a workbook has a formula a column, and asks of each many times. */
const MOST_KEPT = 4_000;
const kept = new Map<string, Parsed>();

/** @param formula with or without its equals sign */
export function parseFormula(formula: string): Parsed {
  const before = kept.get(formula);
  if (before) return before;
  if (kept.size >= MOST_KEPT) kept.clear();
  const parsed = new Reader(formula).read();
  kept.set(formula, parsed);
  return parsed;
}

/** The tree of a formula; undefined for what is none. */
export const treeOf = (formula: string): FormulaNode | undefined => parseFormula(formula).tree;

/** Stops the reading, with what is said of it. */
class Trouble extends Error {}

class Reader {
  private readonly tokens: readonly Token[];
  private at = 0;
  private depth = 0;
  /** Of what was read last. */
  private height = 0;
  /** Commas part arguments here, and join references elsewhere. */
  private inArguments = false;

  constructor(private readonly formula: string) {
    const tokens = tokensOf(formula);
    const first = tokens[0]?.kind === "sign of a formula" ? 1 : 0;
    // Blanks stay: between two references one means something.
    this.tokens = tokens.slice(first);
  }

  read(): Parsed {
    try {
      const tree = this.expression(0);
      this.skipSpace();
      const left = this.tokens[this.at];
      if (left) this.stop(left.text === ")" ? "closes no bracket" : "does not belong there");
      return { tree };
    } catch (error) {
      if (error instanceof Trouble) return { trouble: error.message };
      throw error;
    }
  }

  private expression(binding: number): FormulaNode {
    if (++this.depth > DEEPEST) this.stop(`lies more than ${DEEPEST} brackets deep: take it apart`);
    let left = this.operand();
    for (;;) {
      const after = this.follow(left, binding);
      if (!after) break;
      left = after;
    }
    this.depth -= 1;
    return left;
  }

  /** @returns undefined where nothing follows that binds tighter */
  private follow(left: FormulaNode, binding: number): FormulaNode | undefined {
    const blank = this.skipSpace();
    const token = this.tokens[this.at];
    if (!token) return undefined;
    const { start } = left;
    if (token.kind === "operator") {
      switch (token.text) {
        case "%":
          if (SIGN_BINDING <= binding) return undefined;
          this.at += 1;
          return this.grown({ kind: "percent", of: left, start, end: endOf(token) });
        case "#":
          if (!isCells(left)) this.stop("stands behind no cell");
          this.at += 1;
          return this.grown({ kind: "spill", of: left, start, end: endOf(token) });
        case "(":
          if (!blank && isCallable(left)) return this.applied(left);
          break;
        default:
          return this.operation(left, token.text, binding);
      }
    }
    const intersects = blank && isCells(left) && this.cellsFollow();
    return intersects ? this.operation(left, " ", binding, false) : undefined;
  }

  private operation(
    left: FormulaNode,
    operator: string,
    binding: number,
    isWritten = true,
  ): FormulaNode | undefined {
    if (!isOperator(operator) || BINDING[operator] <= binding) return undefined;
    if (operator === "," && this.inArguments) return undefined;
    const joins = operator === ":" || operator === "," || operator === " ";
    if (joins && !isCells(left)) return undefined;
    if (isWritten) this.at += 1;
    const height = this.height;
    const right = this.expression(BINDING[operator]);
    if (joins && !isCells(right)) this.stop("should name cells", this.at - 1);
    this.height = Math.max(height, this.height);
    const at = { start: left.start, end: right.end };
    const range = operator === ":" ? rangeBetween(left, right) : undefined;
    if (range) return { kind: "reference", cells: range, ...at };
    return this.grown({ kind: "operator", operator, left, right, ...at });
  }

  private operand(): FormulaNode {
    this.skipSpace();
    const token = this.tokens[this.at] ?? this.stop("");
    const { text, start } = token;
    this.at += 1;
    this.height = 1;
    const at = { start, end: endOf(token) };
    switch (token.kind) {
      case "number":
        return { kind: "number", value: Number(text), text, ...at };
      case "text":
        return { kind: "text", value: text.slice(1, -1).replaceAll('""', '"'), ...at };
      case "boolean":
        return { kind: "boolean", value: text.toUpperCase() === "TRUE", ...at };
      case "error":
        return { kind: "error", code: text.toUpperCase(), ...at };
      case "structured":
        return { kind: "structured", text, ...at };
      case "reference": {
        const cells = readReference(text);
        return cells ? { kind: "reference", cells, ...at } : { kind: "structured", text, ...at };
      }
      case "function":
        return this.called(token);
      case "name":
        return this.isCalled() ? this.called(token) : nameOf(text, at);
      case "operator":
        return this.prefixed(token);
      default:
        return this.stop("", this.at - 1);
    }
  }

  private prefixed({ text, start }: Token): FormulaNode {
    if (text === "+" || text === "-" || text === "@") {
      const of = this.expression(SIGN_BINDING);
      return this.grown({ kind: "sign", sign: text, of, start, end: of.end });
    }
    if (text === "{") return this.array(start);
    if (text !== "(") return this.stop("has nothing before it", this.at - 1);
    const outside = this.inArguments;
    this.inArguments = false;
    const of = this.expression(0);
    this.inArguments = outside;
    const end = this.take(")");
    return this.grown({ kind: "brackets", of, start, end });
  }

  private called({ text, start }: Token): FormulaNode {
    const { args, end } = this.list();
    return this.grown({ kind: "call", name: text, args, start, end });
  }

  private applied(callee: FormulaNode): FormulaNode {
    const height = this.height;
    const { args, end } = this.list();
    this.height = Math.max(height, this.height);
    return this.grown({ kind: "apply", callee, args, start: callee.start, end });
  }

  /** Arguments in their brackets. */
  private list(): { args: FormulaNode[]; end: number } {
    this.take("(");
    const args: FormulaNode[] = [];
    const outside = this.inArguments;
    this.inArguments = true;
    let tallest = 0;
    let more = !this.isNext(")");
    while (more) {
      if (this.isNext(",") || this.isNext(")")) {
        const { start } = this.tokens[this.at]!;
        args.push({ kind: "missing", start, end: start });
      } else {
        args.push(this.expression(0));
        tallest = Math.max(tallest, this.height);
      }
      more = this.isNext(",");
      if (more) this.at += 1;
    }
    this.inArguments = outside;
    this.height = tallest;
    return { args, end: this.take(")") };
  }

  private array(start: number): FormulaNode {
    const rows: FormulaNode[][] = [[]];
    for (;;) {
      rows.at(-1)!.push(this.constant());
      if (this.isNext("}")) break;
      if (this.isNext(";")) rows.push([]);
      else if (!this.isNext(",")) this.stop("does not belong into a list in braces");
      this.at += 1;
    }
    const end = this.take("}");
    if (rows.some((row) => row.length !== rows[0]!.length))
      this.stop("ends rows of unequal length", this.at - 1);
    return this.grown({ kind: "array", rows, start, end });
  }

  private constant(): FormulaNode {
    const signed = this.isNext("-") || this.isNext("+");
    const sign = signed ? this.tokens[this.at++] : undefined;
    this.skipSpace();
    const kind = this.tokens[this.at]?.kind ?? this.stop("");
    const fits = kind === "number" || (!sign && (kind === "text" || kind === "boolean" || kind === "error"));
    if (!fits) this.stop("does not belong into a list in braces");
    const of = this.operand();
    return sign
      ? { kind: "sign", sign: sign.text === "-" ? "-" : "+", of, start: sign.start, end: of.end }
      : of;
  }

  private grown(node: FormulaNode): FormulaNode {
    this.height += 1;
    if (this.height > TALLEST)
      this.stop(`is the ${TALLEST}th step of the formula: take it apart`, this.at - 1);
    return node;
  }

  /** @returns whether there was any */
  private skipSpace(): boolean {
    const before = this.at;
    while (this.tokens[this.at]?.kind === "space") this.at += 1;
    return this.at > before;
  }

  private isNext(text: string): boolean {
    this.skipSpace();
    const token = this.tokens[this.at];
    return token?.kind === "operator" && token.text === text;
  }

  /** A name that is called; some write a blank before the bracket. */
  private isCalled(): boolean {
    const before = this.at;
    const found = this.isNext("(");
    this.at = before;
    return found;
  }

  private take(text: string): number {
    if (!this.isNext(text)) this.stop(`stands where ${text} is wanted`);
    return endOf(this.tokens[this.at++]!);
  }

  /** Whether cells stand next, within brackets or not. */
  private cellsFollow(): boolean {
    let next = this.at;
    const skipped = (token: Token | undefined): boolean => token?.kind === "space" || token?.text === "(";
    while (skipped(this.tokens[next])) next += 1;
    const { kind, text } = this.tokens[next] ?? { kind: "unknown", text: "" };
    const isFunction = kind === "function" && REFERENCE_FUNCTIONS.has(functionName(text));
    return kind === "name" || kind === "reference" || kind === "structured" || isFunction;
  }

  private stop(what: string, at = this.at): never {
    const token = this.tokens[at];
    if (!token) {
      const written = this.formula.trim() === "" ? "There is no formula" : "The formula ends too early";
      throw new Trouble(`${written}: look for a bracket, a quote or a value that is missing.`);
    }
    const place = `${token.text.slice(0, 20)} (character ${token.start + 1} of the formula)`;
    const said = what === "" ? "can't be read; look for a quote or a sign that is missing" : what;
    throw new Trouble(`${place} ${said}.`);
  }
}

const endOf = ({ start, text }: Token): number => start + text.length;

const isOperator = (text: string): text is Operator => Object.hasOwn(BINDING, text);

function nameOf(text: string, at: { start: number; end: number }): FormulaNode {
  const mark = text.lastIndexOf("!");
  return mark < 0
    ? { kind: "name", name: text, ...at }
    : { kind: "name", name: text.slice(mark + 1), sheet: text.slice(0, mark), ...at };
}

/** Whether it can stand for cells, and so be joined with others. */
function isCells(node: FormulaNode): boolean {
  const one = withoutBrackets(node);
  switch (one.kind) {
    case "name":
    case "reference":
    case "structured":
    case "spill":
    case "apply":
      return true;
    case "error":
      return one.code.endsWith("#REF!");
    case "operator":
      return one.operator === ":" || one.operator === " " || one.operator === ",";
    case "call":
      return REFERENCE_FUNCTIONS.has(functionName(one.name));
    default:
      return false;
  }
}

/** Two corners that were written with blanks about their colon are a range like any other. */
function rangeBetween(left: FormulaNode, right: FormulaNode): Reference | undefined {
  if (left.kind !== "reference" || right.kind !== "reference") return undefined;
  if (left.cells.to || right.cells.to || right.cells.sheet !== undefined) return undefined;
  return { ...left.cells, to: right.cells.from };
}

const isCallable = (node: FormulaNode): boolean => node.kind === "call" || node.kind === "apply";
