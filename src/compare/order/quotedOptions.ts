/** Options cost what the earlier quotation said of them, whatever their parts cost since. */
import { address, parseRange } from "../../formula/address";
import type { Book, BookCell } from "../../workbooks/book";
import type { JobInputs } from "../../workbooks/definition";
import { made, options } from "../../workbooks/multiRoom/names/terms";
import { namedColumn } from "../../workbooks/named";
import { wordsOf } from "../../workbooks/shownFigure";
import type { Row } from "../change";
import { money } from "./quoteFigures";

export interface KeptPrice {
  readonly option: string;
  /** What the earlier quotation calls it. */
  readonly called: string;
  /** Of one, in the earlier quotation. */
  readonly each: number;
  /** Of all of it, in the later workbook and as quoted. */
  readonly later: number;
  readonly quoted: number;
}

const THOUSANDTHS = 1000;
/** By so much may what the workbook rounded be off. */
const HALF_A_CENT = 5;
const sums = (book: Book): Map<string, number> => {
  const prices = namedColumn(book, options.sum.name);
  return new Map(
    namedColumn(book, options.name.name).flatMap((name, row) => {
      const sum = prices[row];
      return typeof sum === "number" ? [[wordsOf(name), Math.round(sum * THOUSANDTHS)] as const] : [];
    }),
  );
};

const quantityOf = (rows: readonly Row[], name: string): number => {
  const quantity = rows.find((row) => row.name === name)?.[options.quantity.key];
  return typeof quantity === "number" ? quantity : 0;
};

/**
 * @param older its inputs under today's names, and as it was computed
 * @returns the chosen options whose price is another than was quoted
 */
export function keptPrices(
  older: JobInputs,
  olderNow: Book,
  newer: JobInputs,
  newerNow: Book,
  named: (name: string) => string,
): KeptPrice[] {
  const quoted = new Map([...sums(olderNow)].map(([name, sum]) => [named(name), { name, sum }]));
  const later = sums(newerNow);
  const had = older.blocks?.options ?? [];
  return (newer.blocks?.options ?? []).flatMap((row): KeptPrice[] => {
    const name = String(row.name ?? "");
    const [was, is] = [quoted.get(name), later.get(name)];
    const [before, after] = [quantityOf(had, name), quantityOf([row], name)];
    if (row.chosen !== "yes" || was === undefined || is === undefined || before === 0) return [];
    const each = money(was.sum) / before;
    // As the workbook rounds it: a price of one, times how many.
    const now = before === after ? was.sum : Math.round(each * after * THOUSANDTHS);
    return Math.abs(now - is) <= HALF_A_CENT
      ? []
      : [{ option: name, called: was.name, each, later: money(is), quoted: money(now) }];
  });
}

/**
 * @param by what the job calls them
 * @returns the inputs with those options at the quoted price of one, and made of nothing
 */
export function atQuotedPrices(
  job: JobInputs,
  kept: readonly KeptPrice[],
  by: "option" | "called",
): JobInputs {
  if (kept.length === 0) return job;
  const prices = new Map(kept.map((one) => [one[by], one.each]));
  const rows = (block: string): readonly Row[] => job.blocks?.[block] ?? [];
  return {
    ...job,
    blocks: {
      ...job.blocks,
      options: rows("options").map((row) => {
        const each = prices.get(String(row.name));
        return each === undefined ? row : { ...row, each };
      }),
      made: rows("made").filter((row) => !prices.has(String(row.option))),
    },
  };
}

/** The same in a workbook, which keeps what else was typed into it. @returns not computed */
export function bookAtQuotedPrices(book: Book, kept: readonly KeptPrice[]): Book {
  const prices = new Map(kept.map(({ option, each }) => [option, each]));
  const place = book.names.find(({ name }) => name === options.name.name);
  const sheet = book.sheets.find(({ name }) => name === place?.sheet);
  if (!sheet || kept.length === 0) return book;
  const cells: Record<string, BookCell> = { ...sheet.cells };
  const type = (name: string, row: number, value: number | undefined): void => {
    const zone = parseRange(book.names.find((one) => one.name === name)?.range ?? "");
    if (!zone) return;
    const at = address(zone.top + row, zone.left);
    const { look } = cells[at] ?? {};
    cells[at] = { ...(look !== undefined && { look }), ...(value !== undefined && { value }) };
  };
  for (const [row, name] of namedColumn(book, options.name.name).entries()) {
    const each = prices.get(wordsOf(name));
    if (each !== undefined) type(options.each.name, row, each);
  }
  for (const [row, option] of namedColumn(book, made.option.name).entries())
    if (prices.has(wordsOf(option)))
      for (const column of [made.option, made.part, made.quantity, made.each, made.hours])
        type(column.name, row, undefined);
  return { ...book, sheets: book.sheets.map((one) => (one === sheet ? { ...one, cells } : one)) };
}
