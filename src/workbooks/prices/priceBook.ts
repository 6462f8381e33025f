/** What a workbook keeps of prices: its parts, who offers them, and how each supplier's list is read. */
import type { JobInputs } from "../definition";
import { PRICED } from "../multiRoom/priceChecks";
import { site } from "../multiRoom/names/site";
import { OF } from "../names";
import { offers, standards, suppliers } from "../standards/names";
import { asWord } from "../typed/plainText";
import type { Offer } from "./compareOffers";

/** A part with a price, in one of the lists of Parts. */
export interface PricedPart {
  /** The list: `cables`. */
  readonly list: string;
  /** Its place in the list, counted from 0. */
  readonly row: number;
  readonly name: string;
  /** Units that its price is for: those of a reel or a pack. */
  readonly amount: number;
  readonly supplier?: string;
  readonly article?: string;
  readonly price?: number;
  readonly priced?: number;
  readonly until?: number;
}

export interface PriceBook {
  readonly inputs: JobInputs;
  /** The firm's standards have offers; a job has nothing but its parts. */
  readonly hasOffers: boolean;
  readonly currency?: string;
  readonly lengths: "m" | "ft";
  /** On which offers must hold: the date of the edition, or today. */
  readonly date: number;
  /** Of the standards, where they have one. */
  readonly edition?: number;
  readonly parts: readonly PricedPart[];
  readonly offers: readonly Offer[];
}

type Row = Readonly<Record<string, number | string>>;

/** The lists of parts that carry prices, and how they are called. */
export const PART_LISTS: readonly string[] = PRICED.map((block) => block[OF].name);
export const isCableList = (list: string): boolean => list === "cables";
/** An offer that stands on Parts alone. */
export const ON_PARTS = -1;

const text = (value: unknown): string => (value === undefined ? "" : String(value).trim());
const figure = (value: unknown): number | undefined => (typeof value === "number" ? value : undefined);

/** @param today a sheet's date number */
export function priceBook(inputs: JobInputs, hasOffers: boolean, today: number): PriceBook {
  const field = (name: string): unknown => inputs.fields?.[name];
  const currency = text(field(site.currency.name));
  const lengths = field(site.unit.name) === "ft" ? "ft" : "m";
  const parts = PART_LISTS.flatMap((list) =>
    (inputs.blocks?.[list] ?? []).flatMap((row, index) => partIn(list, row, index)),
  );
  const own = hasOffers ? (inputs.blocks?.[offers[OF].name] ?? []) : [];
  const kept = own.flatMap((row, index) => offerIn(row, index, currency));
  const known = new Set(kept.map(({ part, supplier }) => `${asWord(part)}\n${asWord(supplier)}`));
  const onParts = parts.flatMap((part) =>
    part.supplier === undefined || known.has(`${asWord(part.name)}\n${asWord(part.supplier)}`)
      ? []
      : [offerOnParts(part, currency, lengths)],
  );
  return {
    inputs,
    hasOffers,
    ...(currency !== "" && { currency }),
    lengths,
    date: figure(field(standards.date.name)) ?? today,
    ...(figure(field(standards.edition.name)) !== undefined && {
      edition: figure(field(standards.edition.name))!,
    }),
    parts,
    offers: [...kept, ...onParts],
  };
}

function partIn(list: string, row: Row, index: number): PricedPart[] {
  const name = text(row.name);
  if (name === "") return [];
  const amount = figure(list === "cables" ? row.reel : list === "fittings" ? row.pack : 1);
  const [supplier, article] = [text(row.supplier), text(row.article)];
  const [price, priced, until] = [figure(row.price), figure(row.priced), figure(row.until)];
  return [
    {
      list,
      row: index,
      name,
      amount: amount !== undefined && amount > 0 ? amount : 1,
      ...(supplier !== "" && { supplier }),
      ...(article !== "" && { article }),
      ...(price !== undefined && { price }),
      ...(priced !== undefined && { priced }),
      ...(until !== undefined && { until }),
    },
  ];
}

function offerIn(row: Row, index: number, currency: string): Offer[] {
  const part = text(row.part);
  if (part === "") return [];
  const [each, pack, perPack] = [figure(row.each), figure(row.pack), figure(row.pack_price)];
  const perUnit = perPack === undefined ? each : perPack / (pack ?? 1);
  const [priced, until] = [figure(row.priced), figure(row.until)];
  return [
    {
      row: index,
      part,
      supplier: text(row.supplier),
      article: text(row.article),
      description: text(row.words),
      unit: text(row.unit),
      ...(pack !== undefined && { pack }),
      ...(perUnit !== undefined && { perUnit }),
      ...(perPack !== undefined && { perPack }),
      currency: text(row.currency) || currency,
      ...(priced !== undefined && { priced }),
      ...(until !== undefined && { until }),
      pinned: row.pinned === "yes",
    },
  ];
}

const offerOnParts = (
  { list, name, supplier, article, price, amount, priced, until }: PricedPart,
  currency: string,
  lengths: "m" | "ft",
): Offer => ({
  row: ON_PARTS,
  part: name,
  supplier: supplier!,
  article: article ?? "",
  description: "",
  unit: list === "cables" ? lengths : "piece",
  ...(amount !== 1 && { pack: amount }),
  ...(price !== undefined && { perUnit: price / amount, perPack: price }),
  currency,
  ...(priced !== undefined && { priced }),
  ...(until !== undefined && { until }),
  pinned: false,
});

/** How this supplier quotes and how its list is read, as the workbook remembers it. */
export function supplierIn(
  { inputs }: PriceBook,
  name: string,
): { readonly row: number; readonly currency?: string; readonly columns?: string } | undefined {
  const rows = inputs.blocks?.[suppliers[OF].name] ?? [];
  const row = rows.findIndex((one) => asWord(text(one.name)) === asWord(name));
  if (row < 0) return undefined;
  const [currency, columns] = [text(rows[row]!.currency), text(rows[row]!.columns)];
  return { row, ...(currency !== "" && { currency }), ...(columns !== "" && { columns }) };
}

/** Suppliers that the workbook names, on Suppliers and on Parts. */
export function supplierNames({ inputs, parts }: PriceBook): string[] {
  const names = [
    ...(inputs.blocks?.[suppliers[OF].name] ?? []).map(({ name }) => text(name)),
    ...parts.map(({ supplier }) => supplier ?? ""),
  ].filter((name) => name !== "");
  return [...new Map(names.map((name) => [asWord(name), name])).values()];
}
