/** What a line of a price list is: a price, or one of the lines that people put between them. */
import { type ImportedLine, textOf } from "../imported/table";
import { plainWords } from "./plainWords";
import type { CutCell } from "./priceCell";

export type PriceLineKind = "price" | "words" | "total" | "repeated";

const TOTAL =
  /^(?:(?:grand|sub)[ -]?)?totals?(?![a-z])|^(?:sum|subtotaal|zwischensumme|summe|insgesamt|gesamt\w*|somme|sous[ -]?total|suma|subtotal|totaal|totale|ubertrag|uebertrag|carried forward|brought forward|report|a reporter|transport)(?![a-z])/;

export interface NamedPlaces {
  readonly article: number;
  readonly description: number;
  readonly unit: number;
  /** As the head row has them. */
  readonly heads: readonly string[];
}

/** @param cuts of the columns of prices */
export function priceLineKind(
  { cells }: ImportedLine,
  cuts: readonly CutCell[],
  { article, description, unit, heads }: NamedPlaces,
): PriceLineKind {
  const texts = cells.map((cell) => textOf(cell));
  const filled = texts.filter((text) => text !== "");
  const first = plainWords(filled[0] ?? "");
  const own = texts[article] ?? "";
  if (TOTAL.test(first) && (own === "" || own === filled[0])) return "total";
  const priced = cuts.some(({ kind }) => kind !== "blank");
  // In a merged cell the same words stand in every column.
  const different = new Set(filled);
  if (!priced && (different.size === 1 || (own === "" && different.size <= 2 && (texts[unit] ?? "") === "")))
    return "words";
  if (!priced && (texts[description] ?? "") === "" && different.size < 3 && /\p{L}.* /u.test(own))
    return "words";
  if (cuts.every(({ kind }) => kind === "blank" || kind === "words")) {
    if (heads.filter((head, index) => head !== "" && texts[index] === head).length >= 2) return "repeated";
  }
  if (different.size === 1 && cuts.every(({ kind }) => kind === "blank" || kind === "words")) return "words";
  return "price";
}
