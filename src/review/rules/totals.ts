import { parseAddress } from "../../formula/address";
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding, FindingPlace } from "../finding";
import { namedCells } from "../namedCells";
import type { Reviewed, Rule } from "../rule";

/** Printed sums are whole cents: less is what lies under the last digit that a file keeps. */
const HALF_A_CENT = 0.005;

/** A discount is printed with its minus; a version without one has no such line. */
const LINES = (
  ["reception", "cable", "fittings", "labour", "sites", "provisional", "options", "discount"] as const
).map((key) => estimate.quote[key].name);
const NET = estimate.quote.net.name;
const TAX = estimate.quote.tax.name;
const TOTAL = estimate.quote.total.name;

export const totals: Rule = {
  id: "total that does not add",
  reason:
    "The customer adds up the printed lines. Named is the cell that is off, never a sum that is right beside a line that is not.",
  example: "Lines of 9,900 and a tax of 1,980 under a total of 11,000.",
  find: (reviewed) => {
    const { read } = reviewed;
    const printed = new Map([...LINES, NET, TAX, TOTAL].map((name) => [name, printedSum(read, name)]));
    if ([...printed.values()].some((value) => value === undefined)) return [];
    const value = (name: string): number => printed.get(name)!;
    const sum = LINES.reduce((all, name) => all + value(name), 0);
    const findings: Finding[] = [];
    if (Math.abs(sum - value(NET)) > HALF_A_CENT)
      findings.push(...blamed(reviewed, [...LINES, NET], NET, "the lines above it", sum));
    if (Math.abs(value(NET) + value(TAX) - value(TOTAL)) > HALF_A_CENT)
      findings.push(
        ...blamed(reviewed, [NET, TAX, TOTAL], TOTAL, "the price and the tax", value(NET) + value(TAX)),
      );
    return findings;
  },
};

/** @returns 0 for a line that is left empty; undefined for a sum that is no number */
function printedSum(book: Book, name: string): number | undefined {
  const value = namedValue(book, name);
  if (value === undefined || value === "") return LINES.includes(name) ? 0 : undefined;
  return typeof value === "number" ? value : undefined;
}

/** The cells that are off themselves among those that should add up; where none can be told, the sum. */
function blamed(
  reviewed: Reviewed,
  names: readonly string[],
  sum: string,
  of: string,
  addsUpTo: number,
): Finding[] {
  const { read, expected } = reviewed;
  const off = names.filter((name) => isOff(reviewed, name));
  // Where all that is printed follows its own formula, a formula further up is at fault, and named by its own rule.
  if (off.length === 0 && expected && reviewed.differences.length > 0) return [];
  return (off.length > 0 ? off : [sum]).flatMap((name): Finding[] => {
    const is = printedSum(read, name)!;
    const right = (expected && printedSum(expected, name)) ?? (name === sum ? addsUpTo : undefined);
    const place = namedCells(read, name)[0]?.place;
    // What was typed over a line is told there already; that its sum then differs says nothing more.
    if (!place || (name !== sum && isNamed(reviewed, place))) return [];
    const what = reviewed.labelAt(place.sheet, parseAddress(place.cell)!);
    const asked = right === undefined ? 0 : is - right;
    return [
      {
        weight: "wrong",
        place,
        message:
          name === sum
            ? `${what} is ${is.toFixed(2)}, ${of} come to ${addsUpTo.toFixed(2)}.`
            : `${what} is ${is.toFixed(2)}, so that the printed sums do not add up.`,
        expected: right?.toFixed(2),
        effect:
          (name === TOTAL || name === NET) && Math.abs(asked) > HALF_A_CENT
            ? `The customer is asked for ${Math.abs(asked).toFixed(2)} too ${asked > 0 ? "much" : "little"}.`
            : undefined,
        remedy: "Enter the template's formula in this cell again.",
      },
    ];
  });
}

/** Typed over, of another formula, or an old value: the cell's own doing, not that of what it reads. */
function isOff({ read, own, expected, differences }: Reviewed, name: string): boolean {
  const place = namedCells(read, name)[0]?.place;
  if (!place) return false;
  const [is, computed] = [printedSum(read, name), printedSum(own, name)];
  const right = expected && printedSum(expected, name);
  const same = (a: number | undefined, b: number | undefined): boolean =>
    a !== undefined && b !== undefined && Math.abs(a - b) <= HALF_A_CENT;
  if (expected && same(is, right)) return false;
  return !same(is, computed) || isNamed({ differences }, place);
}

const isNamed = ({ differences }: Pick<Reviewed, "differences">, { sheet, cell }: FindingPlace): boolean =>
  differences.some(({ place }) => place?.sheet === sheet && place.cell === cell);
