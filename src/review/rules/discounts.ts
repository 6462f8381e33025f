import { address } from "../../formula/address";
import { treeOf } from "../../formula/parse";
import { nodesIn, withoutBrackets, type FormulaNode } from "../../formula/tree";
import { estimate } from "../../workbooks/multiRoom/names";
import { expectedFormulas } from "../expectedFormulas";
import type { Finding, Undoing } from "../finding";
import { inputsIn } from "../inputsIn";
import { filledCells } from "../namedCells";
import { clearing } from "../rowCells";
import type { Reviewed, Rule } from "../rule";

/** Words of a line that takes money off. */
export const DISCOUNT = /discount|rebate|reduction|price off|money off/i;
/** Sheets on which money is summed. */
const MONEY_SHEETS = new Set(["Price", "Quote", "Materials", "Labour"]);

export const discounts: Rule = {
  id: "discount given twice",
  reason: "A discount entered as a line and again in a formula, or in two lines, is money lost.",
  example: "A line “discount 5 %” under Terms, and a total of =ROUND((price_net+price_tax)*0.95,2).",
  find: (reviewed) => {
    const inputs = inputsIn(reviewed.read, reviewed.definition);
    const lines = (["options", "provisional"] as const).flatMap((block) =>
      filledCells(reviewed.read, estimate[block].name.name)
        .filter(({ value }) => DISCOUNT.test(String(value)))
        .map((cell) => ({
          ...cell,
          undoing: clearing(reviewed.read, inputs, block, cell.index),
        })),
    );
    const own = [estimate.discount.sum.name, estimate.discount.share.name]
      .flatMap((name) => filledCells(reviewed.read, name))
      .filter(({ value }) => value !== 0)
      // That both are filled is told as what cannot be.
      .slice(0, 1)
      .map(({ place, value }) => ({ place, what: `${String(value)} under Discount on Terms` }));
    const formulas = takingOff(reviewed);
    const all: { place: Finding["place"]; what: string; undoing?: readonly Undoing[] }[] = [
      ...own,
      ...lines.map(({ place, value, undoing }) => ({ place, what: String(value), undoing })),
      ...formulas.map(({ place, formula }) => ({ place, what: `=${formula}` })),
    ];
    return all.slice(1).map(({ place, what, undoing }): Finding => ({
      weight: "doubtful",
      place,
      ...(undoing && { undoing, isGuess: true }),
      message: `A second discount: ${what}. The first is ${all[0]!.what}.`,
      expected: "One discount.",
      effect: "The price is reduced twice.",
      remedy: "Take one of them back, or say under Assumptions that both are meant.",
    }));
  },
};

/** Formulas of money that the template has otherwise, and that take a share away. */
function takingOff({ read, definition }: Reviewed): { place: Finding["place"]; formula: string }[] {
  if (!definition) return [];
  return expectedFormulas(read, definition).formulas.flatMap(({ sheet, place, formula }) => {
    if (!MONEY_SHEETS.has(sheet)) return [];
    const cell = address(place.row, place.column);
    const here = read.sheets.find(({ name }) => name === sheet)?.cells[cell]?.formula;
    return here !== undefined && here !== formula && takesOff(here) && !takesOff(formula)
      ? [{ place: { sheet, cell }, formula: here }]
      : [];
  });
}

/** Whether a formula takes a share away: times 0.9, times (1-5%), less 10 %. */
function takesOff(formula: string): boolean {
  const tree = treeOf(formula);
  return tree !== undefined && [...nodesIn(tree)].some(isShareOff);
}

function isShareOff(node: FormulaNode): boolean {
  if (node.kind !== "operator") return false;
  if (node.operator === "-") return isPercentage(node.right);
  return node.operator === "*" && (isPartOfOne(node.left) || isPartOfOne(node.right));
}

const isPercentage = (node: FormulaNode): boolean => node.kind === "percent" && node.of.kind === "number";

function isPartOfOne(node: FormulaNode): boolean {
  if (node.kind === "number") return node.value > 0 && node.value < 1;
  if (node.kind === "percent") return node.of.kind === "number" && node.of.value < 100;
  const one = withoutBrackets(node);
  return (
    one.kind === "operator" && one.operator === "-" && one.left.kind === "number" && one.left.value === 1
  );
}
