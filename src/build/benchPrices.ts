/** A supplier's whole stock, 50,000 lines as text, read and held against the firm's standards, beside just parting its cells. */
import { readCsv } from "../hosts/file/readCsv";
import { readTables } from "../hosts/file/readTables";
import type { JobInputs } from "../workbooks/definition";
import { priceBook } from "../workbooks/prices/priceBook";
import { priceTables } from "../workbooks/prices/priceTable";
import { pricesOf } from "../workbooks/prices/pricesOf";
import { sheetDate } from "../workbooks/sheetDate";
import { standardsExample } from "../workbooks/standards/demonstration";

const OFFERS = 500;
const SUPPLIER = "bench supplier";
const TODAY = sheetDate(2026, 11, 29);

export interface PriceTimes {
  readonly ms: number;
  readonly bareMs: number;
  readonly changed: number;
}

/** @param timed the least of a few runs */
export async function priceTimes(
  count: number,
  timed: (work: () => unknown) => Promise<number>,
): Promise<PriceTimes> {
  const text = listOf(count);
  const bytes = new TextEncoder().encode(text);
  const book = priceBook(withOffers(count), true, TODAY);
  let changed = 0;
  const ms = await timed(async () => {
    const { comparison } = pricesOf(priceTables(await readTables(bytes)), book, SUPPLIER, {}, TODAY);
    changed = comparison.lines.filter(({ kind }) => kind === "changed").length;
  });
  return { ms, bareMs: await timed(() => readCsv(text, ";")), changed };
}

const articleOf = (line: number): string => `B-${String(line).padStart(6, "0")}`;
const priceOf = (line: number): number => 1 + (line % 900) / 10;

/** Decimal commas, packs of many kinds, a heading and a sum now and then. */
function listOf(count: number): string {
  const lines = [
    "Price list (invented);;;;;;",
    "Article;Description;Unit;Pack;Price EUR;Price/pack EUR;Valid to",
  ];
  for (let line = 0; line < count; line++) {
    if (line % 500 === 0) lines.push(`Group ${line / 500};;;;;;`);
    const pack = [1, 10, 100][line % 3]!;
    const [price, whole] = [priceOf(line), priceOf(line) * pack].map((sum) =>
      sum.toFixed(2).replace(".", ","),
    );
    lines.push(
      `${articleOf(line)};splitter ${line % 16}-way, kind ${line};pc;${pack};${price};${whole};31.12.2027`,
    );
  }
  return lines.join("\r\n");
}

function withOffers(count: number): JobInputs {
  const step = Math.max(1, Math.floor(count / OFFERS));
  const offers = Array.from({ length: OFFERS }, (_, index) => ({
    part: "4-way splitter",
    supplier: SUPPLIER,
    article: articleOf(index * step),
    each: priceOf(index * step) * 0.9,
    unit: "piece",
    until: TODAY + 100,
  }));
  return { ...standardsExample, blocks: { ...standardsExample.blocks, offers } };
}
