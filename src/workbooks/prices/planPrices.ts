/**
 * A supplier's list merged into a workbook, as the inputs that it then has: offers written, and where the offer in use
 * of a part is another or costs something else, the part with it. Nothing is changed here; whoever enters it does so in one step.
 */
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
import type { JobInputs } from "../definition";
import { log } from "../multiRoom/names/log";
import { OF } from "../names";
import { offers as offersBlock, standards, suppliers } from "../standards/names";
import { asWord } from "../typed/plainText";
import { LONGEST_TEXT } from "../typed/typedKind";
import { articleWord } from "./articleWord";
import type { ComparedLine, Comparison, GoneOffer, Offer } from "./compareOffers";
import { currencyCode } from "./currencies";
import { offerInUse, offersOf, type OfferTerms } from "./offerInUse";
import { isCableList, ON_PARTS, priceBook, supplierIn, type PriceBook, type PricedPart } from "./priceBook";
import { isLength, type SaleUnit } from "./saleUnits";

/** Where a line goes that the workbook does not have. */
export type NewPlace =
  /** An offer of a part that is there. */
  | { readonly part: string }
  /** A part of a list, under this name. */
  | { readonly list: string; readonly name: string };

export interface PriceChoices {
  /** By line; one that is not there is taken or left as the comparison has it. */
  readonly taken: ReadonlyMap<number, boolean>;
  readonly placed: ReadonlyMap<number, NewPlace>;
  /** Lines whose offers are used whatever the others cost. */
  readonly pinned: ReadonlySet<number>;
  /** Parts whose offers end, because the list has them no more. */
  readonly ended: ReadonlySet<string>;
  /** Where neither the line nor the list says how long a price holds. */
  readonly until: number;
}

export interface PriceMerge {
  readonly supplier: string;
  /** The file, for the log. */
  readonly file: string;
  readonly today: number;
  /** How the list is read, for the supplier's row. */
  readonly columns: string;
  /** Of the list, where it is the supplier's own. */
  readonly currency?: string;
  /** The day of the list, where it names one. */
  readonly from?: number;
  readonly until?: number;
}

export interface PartChange {
  readonly part: string;
  readonly list: string;
  readonly before?: number;
  readonly after: number;
  readonly supplier: string;
  readonly wasSupplier?: string;
}

/** A part for which another supplier's offer stays in use. */
export interface OtherInUse {
  readonly part: string;
  readonly supplier: string;
  /** Of the other, and of this list, for as much as Parts has it. */
  readonly price: number;
  readonly here: number;
  readonly pinned: boolean;
}

export interface PricePlan {
  readonly inputs: JobInputs;
  readonly parts: readonly PartChange[];
  readonly others: readonly OtherInUse[];
  /** Offers that are written, and new ones among them. */
  readonly written: number;
  readonly added: number;
  readonly newParts: number;
  readonly ended: number;
  /** Lines that could not be put in, and why. */
  readonly refused: readonly { readonly line: number; readonly said: string }[];
  /** As the log has it. */
  readonly said: string;
  /** The standards' new one. */
  readonly edition?: number;
}

type Row = Record<string, number | string>;
type Blocks = Record<string, Row[]>;

const rounded = (value: number): number => Number(value.toPrecision(12));
/** Prices that differ by less are the same: lists print rounded prices. */
const SAME_PRICE = 0.0005;

export function planPrices(
  book: PriceBook,
  { lines, gone, ended }: Comparison,
  choices: PriceChoices,
  merge: PriceMerge,
): PricePlan {
  const blocks: Blocks = Object.fromEntries(
    Object.entries(book.inputs.blocks ?? {}).map(([name, rows]) => [name, rows.map((row) => ({ ...row }))]),
  );
  const rowsOf = (name: string): Row[] => (blocks[name] ??= []);
  const partsByName = new Map(book.parts.map((part) => [asWord(part.name), part]));
  const touched = new Set<string>();
  const refused: { line: number; said: string }[] = [];
  const tally = { written: 0, added: 0, newParts: 0, ended: 0 };

  for (const line of lines) {
    if (!isTaken(line, choices)) continue;
    const { listed } = line;
    const place = choices.placed.get(listed.line);
    const targets = line.offers.length > 0 ? line.offers : place ? [targetOf(place)] : [];
    for (const target of targets) {
      let part = partsByName.get(asWord(target.part));
      if (!part && place && "list" in place) {
        part = newPart(place, line, rowsOf(place.list), book);
        partsByName.set(asWord(part.name), part);
        tally.newParts++;
      }
      if (!part) {
        refused.push({
          line: listed.line,
          said: `“${target.part}” is no part of this workbook, so the line was left.`,
        });
        continue;
      }
      const row = offerRow(line, part, book, merge, choices);
      if (typeof row === "string") {
        refused.push({ line: listed.line, said: row });
        continue;
      }
      tally.written++;
      if (target.row === ON_PARTS) tally.added++;
      if (book.hasOffers) {
        const rows = rowsOf(offersBlock[OF].name);
        if (target.row === ON_PARTS) keepOther(rows, part, merge.supplier, book);
        if (choices.pinned.has(listed.line)) {
          for (const one of rows)
            if (one.pinned === "yes" && asWord(String(one.part ?? "")) === asWord(part.name))
              one.pinned = "no";
          row.pinned = "yes";
        }
        put(rows, target.row, row);
      } else onParts(rowsOf(part.list)[part.row]!, row, part);
      touched.add(asWord(part.name));
    }
  }
  for (const { offer } of [...gone, ...ended]) {
    if (!choices.ended.has(offer.part)) continue;
    endOffer(offer, blocks, partsByName, merge.today);
    touched.add(asWord(offer.part));
    tally.ended++;
  }
  if (tally.written + tally.ended === 0)
    return {
      inputs: book.inputs,
      parts: [],
      others: [],
      ...tally,
      refused,
      said: inWords(tally, 0, merge.supplier),
    };
  remember(blocks, book, merge);
  const raised = raisedEdition(book, merge.today);
  const inputs = { fields: { ...book.inputs.fields, ...raised?.fields }, blocks };
  const date = raised?.date ?? book.date;
  for (const name of book.hasOffers ? movedByDate(book, date) : []) touched.add(name);
  const parts = book.hasOffers
    ? partsInUse(touched, inputs, { ...book, date }, merge.today)
    : changedParts(touched, book, blocks);
  const said = inWords(tally, parts.length, merge.supplier, raised?.edition);
  put(rowsOf(log[OF].name), ON_PARTS, {
    date: merge.today,
    what: said,
    why: `price list ${merge.file}`.slice(0, LONGEST_TEXT),
  });
  return {
    inputs,
    parts,
    others: book.hasOffers ? othersInUse(touched, inputs, { ...book, date }, merge) : [],
    ...tally,
    refused,
    said,
    ...(raised && { edition: raised.edition }),
  };
}

interface Raised {
  readonly fields: Readonly<Record<string, number>>;
  readonly edition: number;
  readonly date: number;
}

/** Prices of today are no part of an older edition: the standards become the next one, of today. */
function raisedEdition({ hasOffers, edition, date }: PriceBook, today: number): Raised | undefined {
  if (!hasOffers || edition === undefined || date >= today) return undefined;
  return {
    fields: { [standards.edition.name]: edition + 1, [standards.date.name]: today },
    edition: edition + 1,
    date: today,
  };
}

/** Parts of which another offer is in use on the new date, because one has ended meanwhile. */
function movedByDate(book: PriceBook, date: number): string[] {
  return book.parts.flatMap((part) => {
    const own = offersOf(book.offers, part.name).filter(({ row }) => row !== ON_PARTS);
    const terms = termsOf(part, book);
    return offerInUse(own, { ...terms, date: book.date }) === offerInUse(own, { ...terms, date })
      ? []
      : [asWord(part.name)];
  });
}

const termsOf = ({ list }: PricedPart, { currency, lengths, date }: PriceBook): OfferTerms => ({
  currency,
  unit: isCableList(list) ? lengths : "piece",
  date,
});

/** Of itself, or by a person's tick; what is asked or refused never. */
export function isTaken({ kind, taken, listed, offers }: ComparedLine, choices: PriceChoices): boolean {
  if (kind === "asked" || kind === "left" || kind === "currency") return false;
  const chosen = choices.taken.get(listed.line) ?? taken;
  return chosen && (offers.length > 0 || choices.placed.has(listed.line));
}

const targetOf = (place: NewPlace): Pick<Offer, "part" | "row"> => ({
  part: "part" in place ? place.part : place.name,
  row: ON_PARTS,
});

function put(rows: Row[], at: number, row: Row): void {
  if (at === ON_PARTS) {
    const last = rows.findLastIndex((one) => Object.keys(one).length > 0);
    rows[last + 1] = row;
  } else rows[at] = { ...rows[at], ...row };
}

/** What another supplier asks stands on Parts alone: it becomes an offer too, so that the two stand side by side. */
function keepOther(rows: Row[], part: PricedPart, supplier: string, book: PriceBook): void {
  const other = book.offers.find(
    (offer) =>
      offer.row === ON_PARTS &&
      asWord(offer.part) === asWord(part.name) &&
      asWord(offer.supplier) !== asWord(supplier),
  );
  const known = rows.some(
    (row) =>
      other &&
      asWord(String(row.part ?? "")) === asWord(part.name) &&
      asWord(String(row.supplier ?? "")) === asWord(other.supplier),
  );
  if (!other || known || other.perUnit === undefined) return;
  put(rows, ON_PARTS, {
    part: part.name,
    supplier: other.supplier,
    ...(other.article !== "" && { article: other.article }),
    each: rounded(other.perUnit),
    unit: other.unit,
    ...(other.pack !== undefined && { pack: other.pack }),
    ...(other.pack !== undefined && other.perPack !== undefined && { pack_price: other.perPack }),
    ...(other.priced !== undefined && { priced: other.priced }),
    ...(other.until !== undefined && { until: other.until }),
  });
}

function newPart(
  place: { readonly list: string; readonly name: string },
  { listed }: ComparedLine,
  rows: Row[],
  book: PriceBook,
): PricedPart {
  const { list, name } = place;
  const factor = isLength(listed.unit) ? lengthFactor(listed.unit, book.lengths) : 1;
  const pack = listed.pack === undefined ? undefined : rounded(listed.pack * factor);
  const own: Row = {
    name,
    ...(isCableList(list) && pack !== undefined && pack > 1 && { reel: pack }),
    ...(list === "fittings" && { pack: pack ?? 1 }),
  };
  const last = rows.findLastIndex((one) => Object.keys(one).length > 0);
  rows[last + 1] = own;
  const amount = Number(own.reel ?? own.pack ?? 1);
  return { list, row: last + 1, name, amount };
}

/** So many units of the workbook's are one of the list's. */
const lengthFactor = (unit: SaleUnit, lengths: "m" | "ft"): number =>
  unit === lengths ? 1 : unit === "ft" ? METRES_PER_FOOT : 1 / METRES_PER_FOOT;

/** @returns a sentence where the line can't be an offer of the part */
function offerRow(
  { listed }: ComparedLine,
  part: PricedPart,
  { lengths, currency: own }: PriceBook,
  merge: PriceMerge,
  choices: PriceChoices,
): Row | string {
  const cable = isCableList(part.list);
  const unit = listed.unit ?? (cable ? lengths : "pc");
  if (cable && !isLength(unit))
    return `“${part.name}” is a cable, and its line is priced by the ${unit === "pc" ? "piece" : unit} without a length. Put the length of a reel into the list.`;
  if (!cable && isLength(unit))
    return `“${part.name}” is counted by the piece, and its line is priced by the ${unit}. Choose a cable, or leave it out.`;
  const factor = isLength(unit) ? lengthFactor(unit, lengths) : 1;
  const pack = listed.pack === undefined ? undefined : rounded(listed.pack * factor);
  const each = listed.perUnit === undefined ? undefined : rounded(listed.perUnit / factor);
  const { perPack } = listed;
  const until = listed.until ?? choices.until;
  return {
    part: part.name,
    supplier: merge.supplier,
    ...(listed.article !== "" && { article: listed.article }),
    ...(listed.description !== "" && { words: listed.description }),
    ...(each !== undefined && { each }),
    unit: cable ? lengths : "piece",
    ...(pack !== undefined && { pack }),
    ...(perPack !== undefined && pack !== undefined && { pack_price: perPack }),
    ...(listed.currency !== undefined &&
      currencyCode(own ?? "") !== listed.currency && { currency: listed.currency }),
    priced: listed.from ?? merge.from ?? merge.today,
    until,
  };
}

/** A job has no offers: the line goes to its part. */
function onParts(row: Row, offer: Row, part: PricedPart): void {
  const one = Number(offer.pack_price ?? NaN) / Number(offer.pack ?? 1);
  row.price = rounded((Number.isNaN(one) ? Number(offer.each) : one) * part.amount);
  for (const key of ["supplier", "article", "priced", "until"] as const)
    if (offer[key] !== undefined) row[key] = offer[key];
}

/** It holds no longer: its last day is the day before, if it was not over already. */
function endOffer(
  offer: GoneOffer["offer"],
  blocks: Blocks,
  parts: ReadonlyMap<string, PricedPart>,
  today: number,
): void {
  const last = Math.min(offer.until ?? today - 1, today - 1);
  if (offer.row !== ON_PARTS) blocks[offersBlock[OF].name]![offer.row]!.until = last;
  else {
    const part = parts.get(asWord(offer.part));
    if (part) blocks[part.list]![part.row]!.until = last;
  }
}

function remember(blocks: Blocks, book: PriceBook, { supplier, columns, currency }: PriceMerge): void {
  if (!book.hasOffers) return;
  const known = supplierIn(book, supplier);
  const rows = (blocks[suppliers[OF].name] ??= []);
  const money: Row =
    currency !== undefined && currency !== currencyCode(book.currency ?? "") ? { currency } : {};
  if (known) rows[known.row] = { ...rows[known.row], columns };
  else put(rows, ON_PARTS, { name: supplier, ...money, columns });
}

/** Parts take over what the offer in use of each says now. */
function partsInUse(
  touched: ReadonlySet<string>,
  inputs: JobInputs,
  before: PriceBook,
  today: number,
): PartChange[] {
  const after = priceBook(inputs, true, today);
  return after.parts.flatMap((part): PartChange[] => {
    if (!touched.has(asWord(part.name))) return [];
    const own = offersOf(after.offers, part.name).filter(({ row }) => row !== ON_PARTS);
    const used = offerInUse(own, termsOf(part, before));
    if (!used) return [];
    const price = rounded(used.perUnit! * part.amount);
    const row = (inputs.blocks![part.list] as Row[])[part.row]!;
    const same =
      part.price !== undefined &&
      Math.abs(part.price - price) < SAME_PRICE &&
      asWord(part.supplier ?? "") === asWord(used.supplier) &&
      articleWord(part.article ?? "") === articleWord(used.article);
    row.price = same ? part.price! : price;
    row.supplier = used.supplier;
    if (used.article !== "") row.article = used.article;
    else delete row.article;
    if (used.priced !== undefined) row.priced = used.priced;
    if (used.until !== undefined) row.until = used.until;
    if (same) return [];
    return [
      {
        part: part.name,
        list: part.list,
        after: price,
        supplier: used.supplier,
        ...(part.price !== undefined && { before: part.price }),
        ...(part.supplier !== undefined && { wasSupplier: part.supplier }),
      },
    ];
  });
}

/** Where this supplier is dearer, or another is pinned. */
function othersInUse(
  touched: ReadonlySet<string>,
  inputs: JobInputs,
  before: PriceBook,
  { supplier, today }: PriceMerge,
): OtherInUse[] {
  const after = priceBook(inputs, true, today);
  return after.parts.flatMap((part): OtherInUse[] => {
    if (!touched.has(asWord(part.name))) return [];
    const own = offersOf(after.offers, part.name).filter(({ row }) => row !== ON_PARTS);
    const used = offerInUse(own, termsOf(part, before));
    const here = own.find((offer) => asWord(offer.supplier) === asWord(supplier))?.perUnit;
    if (!used || here === undefined || asWord(used.supplier) === asWord(supplier)) return [];
    return [
      {
        part: part.name,
        supplier: used.supplier,
        price: rounded(used.perUnit! * part.amount),
        here: rounded(here * part.amount),
        pinned: used.pinned,
      },
    ];
  });
}

/** Of a job: what the lines did to its parts. */
function changedParts(touched: ReadonlySet<string>, book: PriceBook, blocks: Blocks): PartChange[] {
  const after = priceBook({ ...book.inputs, blocks }, false, book.date);
  const old = new Map(book.parts.map((part) => [asWord(part.name), part]));
  return after.parts.flatMap(({ name, list, price, supplier }): PartChange[] => {
    const was = old.get(asWord(name));
    if (!touched.has(asWord(name)) || price === undefined || price === was?.price) return [];
    return [
      {
        part: name,
        list,
        after: price,
        supplier: supplier ?? "",
        ...(was?.price !== undefined && { before: was.price }),
        ...(was?.supplier !== undefined && { wasSupplier: was.supplier }),
      },
    ];
  });
}

const plural = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

function inWords(
  { written, added, newParts, ended }: Pick<PricePlan, "written" | "added" | "newParts" | "ended">,
  parts: number,
  supplier: string,
  edition?: number,
): string {
  const said = [
    `${plural(written, "price")} of ${supplier}${added > 0 ? `, ${added} of them new` : ""}`,
    ...(newParts > 0 ? [plural(newParts, "new part")] : []),
    ...(ended > 0 ? [`${plural(ended, "offer")} ended`] : []),
    `${plural(parts, "price")} on Parts changed`,
    ...(edition !== undefined ? [`edition ${edition}`] : []),
  ];
  return `${said.join("; ")}.`.slice(0, LONGEST_TEXT);
}
