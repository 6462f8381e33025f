/**
 * The parts to buy as lines of orders: by supplier, then as they stand in their lists.
 *
 * Accuracy: each sum is rounded to the decimals of the currency, and a supplier's
 *   sum is that of the lines as they are shown; open where a line has no price.
 */
import { isFault, type Fault } from "../faults";
import { addMoney } from "./addMoney";
import { roundMoney } from "./roundMoney";

export interface PartBought {
  readonly part: string;
  readonly quantity: number | Fault;
  /** In what it is sold: "reel of 100". */
  readonly sold: string;
  readonly price: number | Fault | null;
  readonly sum: number | Fault;
  readonly supplier: string;
  readonly article: string | Fault;
  /** Sheet days. */
  readonly priced: number | null;
  readonly until: number | null;
}

export interface OrderLine extends PartBought {
  readonly note: string;
  /** In the last line of each supplier; a word where a sum is not known. */
  readonly together: number | string;
}

export const NO_SUPPLIER = "no supplier";
export const NOT_KNOWN = "open";

/**
 * @param bought what is bought, list by list
 * @param decimals of the currency
 * @param day of the order, to tell prices that have run out; null where it is not known
 */
export function orderLines(bought: readonly PartBought[], day: number | null, decimals: number): OrderLine[] {
  const bySupplier = new Map<string, PartBought[]>();
  for (const one of bought) {
    const key = one.supplier.toLowerCase();
    const lines = bySupplier.get(key);
    if (lines) lines.push(one);
    else bySupplier.set(key, [one]);
  }
  return [...bySupplier.entries()]
    .sort(([a], [b]) => Number(a === "") - Number(b === "") || (a < b ? -1 : 1))
    .flatMap(([, lines]) => {
      const shown = lines.map((one) => ({ ...one, sum: rounded(one.sum, decimals) }));
      const sums = shown.map(({ sum }) => sum);
      const isOpen = lines.some(({ price }) => price === null);
      const together = isOpen || sums.some(isFault) ? NOT_KNOWN : addMoney(sums as number[]);
      return shown.map((one, index): OrderLine => ({
        ...one,
        supplier: lines[0]!.supplier === "" ? NO_SUPPLIER : lines[0]!.supplier,
        note: noteOf(one, day),
        together: index === shown.length - 1 ? together : "",
      }));
    });
}

function noteOf({ price, until }: PartBought, day: number | null): string {
  if (price === null) return "no price";
  if (price === 0) return "free";
  if (until === null) return "no last day";
  return day !== null && until < day ? "expired" : "";
}

const rounded = (sum: number | Fault, decimals: number): number | Fault =>
  isFault(sum) ? sum : roundMoney(sum, decimals);
