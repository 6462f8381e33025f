import type { BookValue } from "../workbooks/book";
import { median } from "./median";

/** The middle number, or the commonest text. */
export function middleOf(values: readonly BookValue[]): BookValue | undefined {
  const numbers = values.filter((one): one is number => typeof one === "number");
  if (numbers.length > 0 && numbers.length >= values.length / 2) return median(numbers);
  const counts = new Map<BookValue, number>();
  for (const one of values) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}
