/** Whether two formulas are the same but for how programs write them. */
import { LAST_COLUMN, LAST_ROW } from "./address";
import { treeOf } from "./parse";
import { printFormula } from "./print";
import type { Corner, Reference } from "./reference";
import { functionName } from "./storedNames";
import { tokensOf } from "./tokens";
import type { FormulaNode } from "./tree";

/** Whether a name stands for one cell. */
export type IsOneCell = (name: string) => boolean;

/**
 * Blanks, case, brackets and marks that change nothing do not count, nor what
 * files put before the names of functions.
 *
 * @param isOneCell an `@` before one cell changes nothing; without this, no name is known to be one
 */
export const sameFormula = (one: string, other: string, isOneCell: IsOneCell = () => false): boolean =>
  one === other || normalForm(one, isOneCell) === normalForm(other, isOneCell);

/** A formula as `sameFormula` compares it. */
export function normalForm(formula: string, isOneCell: IsOneCell = () => false): string {
  const tree = treeOf(formula);
  if (tree) return printFormula(normal(tree, isOneCell));
  // What is no formula is the same only if it is written the same.
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  return tokens.map(({ kind, text }) => (kind === "text" ? text : text.toUpperCase())).join(" ");
}

function normal(node: FormulaNode, isOneCell: IsOneCell): FormulaNode {
  const inside = (one: FormulaNode): FormulaNode => normal(one, isOneCell);
  switch (node.kind) {
    case "number":
      return { ...node, text: String(node.value) };
    case "name":
      return {
        ...node,
        name: functionName(node.name),
        ...(node.sheet !== undefined && { sheet: node.sheet.toUpperCase() }),
      };
    case "reference":
      return { ...node, cells: normalCells(node.cells) };
    case "structured":
      return { ...node, text: node.text.toUpperCase() };
    case "brackets":
      return inside(node.of);
    case "call": {
      const name = functionName(node.name);
      const args = node.args.map(inside);
      const [of] = args;
      if (of === undefined && (name === "TRUE" || name === "FALSE")) {
        return { ...node, kind: "boolean", value: name === "TRUE" };
      }
      if (of && args.length === 1 && name === "SINGLE") return cutDown(node, of, isOneCell);
      if (of && args.length === 1 && name === "ANCHORARRAY") return { ...node, kind: "spill", of };
      return { ...node, name, args };
    }
    case "apply":
      return { ...node, callee: inside(node.callee), args: node.args.map(inside) };
    case "operator":
      return { ...node, left: inside(node.left), right: inside(node.right) };
    case "sign":
      return node.sign === "@" ? cutDown(node, inside(node.of), isOneCell) : { ...node, of: inside(node.of) };
    case "percent":
    case "spill":
      return { ...node, of: inside(node.of) };
    default:
      return node;
  }
}

/** With an `@`, where it takes one of several. */
const cutDown = ({ start, end }: FormulaNode, of: FormulaNode, isOneCell: IsOneCell): FormulaNode =>
  isOne(of, isOneCell) ? of : { kind: "sign", sign: "@", of, start, end };

/** Whether it is one value or one cell for certain, so that an `@` before it changes nothing. */
export function isOne(node: FormulaNode, isOneCell: IsOneCell): boolean {
  switch (node.kind) {
    case "number":
    case "text":
    case "boolean":
    case "error":
      return true;
    case "name":
      return isOneCell(node.name);
    case "reference":
      return node.cells.to === undefined && node.cells.lastSheet === undefined;
    case "call": {
      // Picked by a row and a column that are no 0, it is one cell; so is a column's or a row's by one of them.
      const [of, ...picked] = node.args;
      return (
        node.name === "INDEX" &&
        of !== undefined &&
        picked.length === 2 &&
        picked.every((one) => one.kind === "number" && one.value > 0)
      );
    }
    case "brackets":
      return isOne(node.of, isOneCell);
    default:
      return false;
  }
}

function normalCells({ from, to, ...sheets }: Reference): Reference {
  const corners = to ? normalCorners(from, to) : { from };
  const capitals = Object.entries(sheets).map(([key, text]) => [key, text?.toUpperCase()]);
  return { ...(Object.fromEntries(capitals) as typeof sheets), ...corners };
}

/** The upper left one first; of whole rows and columns without the other's end, which some programs write out. */
function normalCorners(a: Corner, b: Corner): Pick<Reference, "from" | "to"> {
  const [high, low] = (a.row ?? 0) <= (b.row ?? 0) ? [a, b] : [b, a];
  const [left, right] = (a.column ?? 0) <= (b.column ?? 0) ? [a, b] : [b, a];
  const wholeColumns = high.row === undefined || (high.row === 0 && low.row === LAST_ROW);
  const wholeRows = left.column === undefined || (left.column === 0 && right.column === LAST_COLUMN);
  const corner = (row: Corner, column: Corner): Corner => ({
    ...(wholeColumns ? {} : { row: row.row! }),
    ...(wholeRows ? {} : { column: column.column! }),
    rowFixed: !wholeColumns && row.rowFixed,
    columnFixed: !wholeRows && column.columnFixed,
  });
  return { from: corner(high, left), to: corner(low, right) };
}
