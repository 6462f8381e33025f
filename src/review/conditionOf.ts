/**
 * The conditions under which a template asks for an input, row by row: the
 * comparisons with text that its definition writes as formulas, added or
 * multiplied. Anything else is told of no row, so that nothing is accused by it.
 */
import { treeOf } from "../formula/parse";
import { withoutBrackets, type FormulaNode, type Operator } from "../formula/tree";
import type { Book, BookResult } from "../workbooks/book";
import { isBookError } from "../workbooks/book";
import { isBlank, namedCells, type NamedCell } from "./namedCells";

/** @returns whether the condition holds in the row of that index of its columns */
export function conditionOf(
  condition: true | string | undefined,
  read: Book,
  computed: Book = read,
): (index: number) => boolean {
  if (condition === true) return () => true;
  if (condition === undefined) return () => false;
  const tree = treeOf(condition);
  const counted = tree && countedName(tree);
  if (counted !== undefined) {
    const cells = namedCells(computed, counted);
    return (index) => {
      const value = at(cells, index);
      return isBookError(value) || (typeof value === "number" && value > 0);
    };
  }
  const terms = tree && termsOf(tree);
  if (!terms) return () => false;
  const tests = terms.of.map(({ name, isSame, text }) => {
    const cells = namedCells(read, name);
    return (index: number): boolean => {
      const value = at(cells, index);
      const same = isBlank(value) ? text === "" : String(value).toLowerCase() === text.toLowerCase();
      return isSame ? same : !same;
    };
  });
  return (index) => (terms.all ? tests.every((test) => test(index)) : tests.some((test) => test(index)));
}

/** Of `IFERROR(name>0,TRUE)`, which asks wherever something is counted, or can't be. */
function countedName(node: FormulaNode): string | undefined {
  const [of, otherwise] = node.kind === "call" && node.name === "IFERROR" ? node.args : [];
  const isAsked = otherwise?.kind === "boolean" && otherwise.value;
  return of && isAsked && isAboveZero(of) && of.left.kind === "name" ? of.left.name : undefined;
}

interface Terms {
  /** They are multiplied: each must hold. Otherwise one is enough. */
  readonly all: boolean;
  readonly of: readonly { readonly name: string; readonly isSame: boolean; readonly text: string }[];
}

/** Of `(a="x")*(b<>"y")`, or of `((a="x")+(b="y")>0)`. */
function termsOf(node: FormulaNode): Terms | undefined {
  const bare = withoutBrackets(node);
  const sum = isAboveZero(bare) ? bare.left : bare;
  const all = sum.kind === "operator" && sum.operator === "*";
  const of = joinedBy(all ? "*" : "+", sum).map(comparisonOf);
  return of.every((one) => one !== undefined) ? { all, of } : undefined;
}

const isAboveZero = (node: FormulaNode): node is Operation =>
  node.kind === "operator" && node.operator === ">" && node.right.kind === "number" && node.right.value === 0;

type Operation = Extract<FormulaNode, { kind: "operator" }>;

const joinedBy = (operator: Operator, node: FormulaNode): FormulaNode[] =>
  node.kind === "operator" && node.operator === operator
    ? [...joinedBy(operator, node.left), ...joinedBy(operator, node.right)]
    : [node];

function comparisonOf(node: FormulaNode): Terms["of"][number] | undefined {
  const one = withoutBrackets(node);
  if (one.kind !== "operator" || one.left.kind !== "name" || one.right.kind !== "text") return undefined;
  const { operator, left, right } = one;
  return operator === "=" || operator === "<>"
    ? { name: left.name, isSame: operator === "=", text: right.value }
    : undefined;
}

/** A field has one cell for every row. */
const at = (cells: readonly NamedCell[], index: number): BookResult | undefined =>
  (cells.length === 1 ? cells[0] : cells[index])?.value;
