/** Which of a list's columns of prices is used: for the unit, for the pack, before a discount; the rest is said. */
import { isCode } from "./currencies";
import type { ListQuestion, PriceAnswers } from "./list";
import { PRICE_KEYS } from "./headMeaning";
import type { PriceColumn } from "./priceColumns";

export interface PriceChoice {
  /** A price whose unit the line has to tell. */
  readonly bare?: PriceColumn;
  readonly unit?: PriceColumn;
  readonly pack?: PriceColumn;
  /** Before the discount; used where none of the others is there, else only held against them. */
  readonly list?: PriceColumn;
  readonly discount?: PriceColumn;
  readonly questions: readonly ListQuestion[];
  readonly notes: readonly string[];
  /** The list's own share of tax is in its prices. */
  readonly withTax: boolean;
}

const named = (columns: readonly PriceColumn[]): string =>
  columns.map(({ head }) => `“${head}”`).join(" and ");

export function choosePrices(
  all: readonly PriceColumn[],
  own: string | undefined,
  answers: PriceAnswers,
): PriceChoice {
  const questions: ListQuestion[] = [];
  const notes: string[] = [];
  let prices = all.filter(({ key }) => key !== undefined && PRICE_KEYS.has(key));
  const discount = all.find(({ key }) => key === "discount");
  const drop = (dropped: readonly PriceColumn[], why: string): void => {
    if (dropped.length === 0) return;
    prices = prices.filter((column) => !dropped.includes(column));
    notes.push(`${named(dropped)} ${dropped.length === 1 ? "is" : "are"} not used: ${why}.`);
  };
  const of = (key: string): PriceColumn[] => prices.filter((column) => column.key === key);

  const money = new Set(
    prices.flatMap(({ meaning: { currencies } }) => (currencies.length === 1 ? currencies : [])),
  );
  if (money.size > 1) {
    const wanted = own !== undefined && money.has(own) ? own : [...money][0]!;
    drop(
      prices.filter(({ meaning: { currencies } }) => currencies.length > 0 && !currencies.includes(wanted)),
      `its prices are in another currency than ${wanted}`,
    );
    if (own !== undefined && wanted !== own && isCode(wanted))
      notes.push(`None of the columns is in ${own}.`);
  }
  const beside = (dropped: readonly PriceColumn[], why: string): void => {
    if (dropped.length > 0 && dropped.length < prices.length) drop(dropped, why);
  };
  const scales = prices.filter(({ meaning }) => meaning.from !== undefined);
  if (scales.length > 0) {
    const whole = prices.some(
      ({ meaning, key }) => meaning.from === undefined && (key === "price" || key === "perUnit"),
    );
    const least = Math.min(...scales.map(({ meaning }) => meaning.from!));
    drop(
      scales.filter(({ meaning }) => whole || meaning.from !== least),
      "the price is that of the smallest quantity",
    );
    if (!whole && least > 1) notes.push(`The smallest quantity with a price is ${least}.`);
  }
  beside(of("withTax"), "the prices without tax are taken");
  beside(
    prices.filter(({ meaning, key }) => key === "listPrice" && meaning.retail),
    "it is the price for consumers",
  );
  // Beside a net price, a price that does not call itself so is the one before the discount.
  const net = prices.filter(({ meaning, key }) => meaning.net && key !== "listPrice");
  let list = of("listPrice")[0];
  if (!list && net.length > 0) {
    list = prices.find(
      ({ key, meaning }) => !meaning.net && key !== "withTax" && net.some((other) => other.key === key),
    );
  }
  beside(
    of("listPrice").filter((column) => column !== list),
    "another column has the price before the discount",
  );
  const group = all.find(({ meaning }) => meaning.discountGroup);
  const taxed = of("withTax");
  const others = prices.filter((column) => column !== list && column.key !== "withTax");

  const one = (key: string): PriceColumn | undefined => {
    const [first, ...more] = others.filter((column) => column.key === key);
    if (more.length > 0) {
      questions.push({
        id: "columns",
        sentence: `${named([first!, ...more])} can each be the price. Choose what each of them is.`,
      });
    }
    return first;
  };
  const [bare, unit, pack] = [one("price") ?? taxed[0], one("perUnit"), one("perPack")];
  const main = bare ?? unit ?? pack;
  if (!main && !list) {
    questions.push({
      id: "columns",
      sentence:
        "No column of prices was found. Say which column is the price per unit, or the price per pack or reel.",
    });
  }
  if (!main && list && !discount && answers.discount === undefined) {
    questions.push({
      id: "discount",
      sentence: list.meaning.gross
        ? `“${list.head}” can be a price with tax, or one before your discount. Say which: the tax that it holds, or the discount that comes off (0 for none).`
        : `“${list.head}” is a price before discount, and no column names the discount${group ? `, only the discount group “${group.head}” without its rate` : ""}. Say what comes off (0 for none).`,
    });
  }
  if (main && !main.meaning.net && group && !discount && answers.discount === undefined) {
    questions.push({
      id: "discount",
      sentence: `“${group.head}” names a discount group for each line, and no column its rate: “${main.head}” is before discount. Say what comes off (0 for none), or put the rates into a column of the list.`,
    });
  }
  if (main && !list && discount && !main.meaning.net && answers.discount === undefined) {
    questions.push({
      id: "discount",
      sentence: `“${main.head}” can be before or after “${discount.head}”. Choose “Price before discount” for it, or leave “${discount.head}” unused.`,
    });
  }
  if (taxed.length > 0 && answers.tax === undefined) {
    questions.push({
      id: "tax",
      sentence: `“${taxed[0]!.head}” holds tax (VAT), and costs are kept without. Say which share of tax is in it.`,
    });
  }
  return {
    ...(bare && { bare }),
    ...(unit && { unit }),
    ...(pack && { pack }),
    ...(list && { list }),
    ...(discount && { discount }),
    questions,
    notes,
    withTax: taxed.length > 0,
  };
}
