/** What a finding is weighed by: what the job comes to, and what of it would not work. */
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn, namedValue } from "../workbooks/named";
import type { Counts, Sums } from "./finding";
import { isBlank } from "./namedCells";

const { quote, price, rooms, heads } = estimate;

/** Names of what the sums are read from, and of the counts'. */
export const SUMS = [quote.total.name, price.profit.name, price.discount.name] as const;
export const VERDICTS = [rooms.verdict.name, heads.check.power.name] as const;

export function sumsOf(book: Book): Sums {
  const [total, profit, discount = 0] = SUMS.map((name) => numberOf(namedValue(book, name)));
  return {
    ...(total !== undefined && { total }),
    ...(profit !== undefined && { margin: profit - discount }),
  };
}

export function countsOf(book: Book): Counts {
  const [verdicts, power] = VERDICTS.map((name) => namedColumn(book, name));
  return {
    ...(verdicts!.length > 0 && { outlets: verdicts!.filter((one) => !isBlank(one) && one !== "ok").length }),
    ...(power!.length > 0 && { volts: power!.filter((one) => one === "low").length }),
  };
}

const numberOf = (value: unknown): number | undefined =>
  typeof value === "number" && Number.isFinite(value) ? value : undefined;
