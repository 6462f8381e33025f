/** Price lists as a test types them: a line of text each, its cells parted by semicolons. */
import type { ImportedTable } from "../../../src/workbooks/imported/table";
import type { ListedPrice, PriceAnswers, PriceList } from "../../../src/workbooks/prices/list";
import { readPriceList, type PriceContext } from "../../../src/workbooks/prices/readPriceList";
import { sheetDate } from "../../../src/workbooks/sheetDate";

export const TODAY = sheetDate(2026, 11, 29);

/** @param text not trimmed, so that a line can be blank and cells can stand in its place */
export const tableOf = (text: string): ImportedTable => ({
  source: "text",
  lines: text
    .split("\n")
    .map((line, index) => ({ line: index + 1, cells: line.split(";").map((cell) => cell.trim()) })),
});

export const read = (
  text: string,
  answers: PriceAnswers = {},
  context: Partial<PriceContext> = {},
): PriceList => readPriceList(tableOf(text), { currency: "EUR", today: TODAY, ...context }, answers);

export function only(list: PriceList): ListedPrice {
  expect(list.lines).toHaveLength(1);
  return list.lines[0]!;
}

/** What a line or an offer does not say is absent, not undefined. */
export const without = <Of extends object, Key extends keyof Of>(from: Of, ...keys: Key[]): Omit<Of, Key> =>
  Object.fromEntries(Object.entries(from).filter(([key]) => !keys.includes(key as Key))) as Omit<Of, Key>;
