/** A supplier's file held against a workbook: read as the supplier's lists were read before, and as a person says now. */
import type { ImportedTable } from "../imported/table";
import { compareOffers, type Comparison } from "./compareOffers";
import type { PriceAnswers, PriceList } from "./list";
import { supplierIn, type PriceBook } from "./priceBook";
import type { PriceTables } from "./priceTable";
import { readPriceList } from "./readPriceList";
import { rememberedAnswers } from "./remembered";

export interface PricesFound {
  readonly list: PriceList;
  readonly comparison: Comparison;
  /** What was remembered and what a person says, together. */
  readonly answers: PriceAnswers;
  readonly table: ImportedTable;
  /** Of how the supplier's lists were read before. */
  readonly notes: readonly string[];
}

/** A list's columns show in its first lines. */
const LOOKED_AT = 400;

/**
 * @param said by a person now; it goes before what is remembered
 * @param today a sheet's date number
 */
export function pricesOf(
  { tables, chosen, sheets }: PriceTables,
  book: PriceBook,
  supplier: string,
  said: PriceAnswers,
  today: number,
): PricesFound {
  const known = supplierIn(book, supplier);
  const context = {
    ...(book.currency !== undefined && { currency: book.currency }),
    ...(known?.currency !== undefined && { supplierCurrency: known.currency }),
    today,
    sheets,
  };
  const tableOf = (sheet: string | undefined): ImportedTable =>
    tables.find((table) => sheet !== undefined && table.sheet === sheet) ?? tables[chosen]!;
  const notes: string[] = [];
  let answers = said;
  if (known?.columns !== undefined) {
    const sheet = /(?:^|; )sheet = ([^;]*)$/.exec(known.columns)?.[1];
    const looked = tableOf(said.sheet ?? sheet);
    const before = readPriceList({ ...looked, lines: looked.lines.slice(0, LOOKED_AT) }, context);
    const { answers: remembered, missing } = rememberedAnswers(known.columns, before.columns);
    answers = {
      ...remembered,
      ...said,
      ...((remembered.columns ?? said.columns) && {
        columns: new Map([...(remembered.columns ?? []), ...(said.columns ?? [])]),
      }),
    };
    notes.push(
      missing.length === 0
        ? `Read as this supplier's last list was.`
        : `Read as this supplier's last list was, but for ${missing.map((head) => `“${head}”`).join(", ")}, which this one does not have: look at the columns again.`,
    );
  }
  const table = tableOf(answers.sheet);
  const list = readPriceList(table, context, answers);
  return {
    list,
    comparison: compareOffers(list, book.offers, supplier, book.currency),
    answers,
    table,
    notes,
  };
}
