/**
 * The conditions under which a template asks for an input, row by row: the
 * comparisons with text that its definition writes as formulas, added or
 * multiplied. Anything else is told of no row, so that nothing is accused by it.
 */
import type { Book, BookResult } from "../workbooks/book";
import { isBookError } from "../workbooks/book";
import { isBlank, namedCells, type NamedCell } from "./namedCells";

const COMPARISON = /^\((\w+)(=|<>)"([^"]*)"\)$/;
const COUNTED = /^IFERROR\((\w+)>0,TRUE\)$/;

/** @returns whether the condition holds in the row of that index of its columns */
export function conditionOf(
  condition: true | string | undefined,
  read: Book,
  computed: Book = read,
): (index: number) => boolean {
  if (condition === true) return () => true;
  if (condition === undefined) return () => false;
  const counted = COUNTED.exec(condition);
  if (counted) {
    const cells = namedCells(computed, counted[1]!);
    return (index) => {
      const value = at(cells, index);
      return isBookError(value) || (typeof value === "number" && value > 0);
    };
  }
  const inner = /^\((.*)>0\)$/.exec(condition)?.[1] ?? condition;
  const all = inner.includes("*");
  const terms = inner.split(all ? "*" : "+").map((term) => COMPARISON.exec(term.trim()));
  if (terms.some((term) => term === null)) return () => false;
  const tests = terms.map((term) => {
    const [, name, sign, text] = term!;
    const cells = namedCells(read, name!);
    return (index: number): boolean => {
      const value = at(cells, index);
      const same = isBlank(value) ? text === "" : String(value).toLowerCase() === text!.toLowerCase();
      return sign === "=" ? same : !same;
    };
  });
  return (index) => (all ? tests.every((test) => test(index)) : tests.some((test) => test(index)));
}

/** A field has one cell for every row. */
const at = (cells: readonly NamedCell[], index: number): BookResult | undefined =>
  (cells.length === 1 ? cells[0] : cells[index])?.value;
