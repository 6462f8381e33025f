/**
 * The parts to buy as lines of orders: by supplier, then as they stand in their lists.
 *
 * Accuracy: each sum is rounded to two decimals, and a supplier's sum is that of
 *   the lines as they are shown.
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

/** Sheets of paper go by it. */
const MONEY_DECIMALS = 2;
export const NO_SUPPLIER = "no supplier";
export const NOT_KNOWN = "open";

/**
 * @param bought what is bought, list by list
 * @param day of the order, to tell prices that have run out; null where it is not known
 */
export function orderLines(bought: readonly PartBought[], day: number | null): OrderLine[] {
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
      const shown = lines.map((one) => ({ ...one, sum: rounded(one.sum) }));
      const sums = shown.map(({ sum }) => sum);
      const together = sums.some(isFault) ? NOT_KNOWN : addMoney(sums as number[]);
      return shown.map((one, index): OrderLine => ({
        ...one,
        supplier: lines[0]!.supplier === "" ? NO_SUPPLIER : lines[0]!.supplier,
        note: noteOf(one, day),
        together: index === shown.length - 1 ? together : "",
      }));
    });
}

function noteOf({ price, until }: PartBought, day: number | null): string {
  if (price === null || price === 0) return "no price";
  if (until === null) return "no last day";
  return day !== null && until < day ? "expired" : "";
}

const rounded = (sum: number | Fault): number | Fault =>
  isFault(sum) ? sum : roundMoney(sum, MONEY_DECIMALS);
