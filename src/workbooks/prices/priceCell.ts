/** One cell of a column of prices: a sum, perhaps with its currency and with what it is for; or words in its place. */
import { asFigures } from "../typed/plainText";
import { currenciesIn, withoutCurrencies } from "./currencies";
import { plainWords } from "./plainWords";
import { basisOf, type Basis } from "./saleUnits";
import type { ImportedCell } from "../imported/table";

export type CutCell =
  | { readonly kind: "blank" }
  /** Not read yet: how the column writes numbers has to be known first. */
  | {
      readonly kind: "figure";
      readonly figure: string;
      readonly number?: number;
      readonly basis?: Basis;
      readonly currencies: readonly string[];
    }
  | { readonly kind: "request" }
  | { readonly kind: "gone" }
  /** A formula of a text file: text, and never computed. */
  | { readonly kind: "formula" }
  | { readonly kind: "words" };

export const ON_REQUEST =
  /(?<![a-z])(?:on (?:request|application|demand)|request|p\.?o\.?a\.?|ask|call|tba|tbc|tbd|auf anfrage|anfrage|a\. ?a\.|preis auf anfr\.?|sur demande|nous consulter|a consultar|consultar|bajo (?:pedido|consulta|demanda)|segun consulta|op aanvraag|aanvraag|su richiesta)(?![a-z])/;
export const DISCONTINUED =
  /(?<![a-z])(?:discontinued|obsolete|end of life|eol|no longer (?:available|supplied|stocked|made)|withdrawn|deleted|replaced by|superseded by|auslauf\w*|ausgelaufen|entfallt|entfallen|eingestellt|nicht mehr lieferbar|abgekundigt|ersetzt durch|nachfolger|supprimee?|arretee?|fin de serie|fin de vie|remplacee? par|plus disponible|descatalogad[oa]|descontinuad[oa]|agotad[oa]|fuera de catalogo|sustituid[oa] por|vervallen|uitlopend|niet meer leverbaar|uit assortiment|vervangen door|fuori produzione)(?![a-z])/;
const NOTHING = /^(?:-+|–|—|n\/?a|n\.a\.|\.|\?|x|k\. ?a\.|nil|none)$/;

/** No minor units: `12.-`, `12,–`. */
const ROUND = /(\d)[.,] ?[-‒–—=]+$/;
const PER = /^([^/]*?\d[\d.,' ]*(?:[.,][-–—]+)?) ?(?:(?:\/|per|pro|je|par|por|les|le|la|p\.) ?)(.+)$/i;

export function cutCell(cell: ImportedCell | undefined, own: string | undefined): CutCell {
  if (cell === undefined || cell === "") return { kind: "blank" };
  if (typeof cell === "object") {
    const currencies = cell.format === undefined ? [] : currenciesOfFormat(cell.format, own);
    return { kind: "figure", figure: String(cell.number), number: cell.number, currencies };
  }
  // The usual cell, before anything slower is tried.
  if (/^\d+(?:[.,]\d+)?$/.test(cell)) return { kind: "figure", figure: cell, currencies: [] };
  const text = asFigures(cell);
  if (text === "") return { kind: "blank" };
  if (/^[=@]|^\+[A-Z(]/i.test(text)) return { kind: "formula" };
  const words = plainWords(text);
  if (NOTHING.test(words)) return { kind: "blank" };
  if (!/\d/.test(words)) {
    if (DISCONTINUED.test(words)) return { kind: "gone" };
    return ON_REQUEST.test(words) ? { kind: "request" } : { kind: "words" };
  }
  const currencies = currenciesIn(text, own);
  let rest = withoutCurrencies(text).replace(/\s+/g, " ").trim();
  let basis: Basis | undefined;
  const per = PER.exec(rest);
  if (per) {
    basis = basisOf(per[2]!);
    if (!basis) return { kind: "words" };
    rest = per[1]!.trim();
  }
  rest = rest.replace(ROUND, "$1").trim();
  // An amount in brackets is what bookkeepers write for a negative one: left as it is, and asked.
  return /^[+-]? ?[\d.,' ]*\d[\d.,' ]*$/.test(rest)
    ? { kind: "figure", figure: rest, currencies, ...(basis && { basis }) }
    : { kind: "words" };
}

/** `#,##0.00 [$€-407]`, `"£"#,##0.00`. */
export function currenciesOfFormat(format: string, own: string | undefined): string[] {
  if (!/[$€£¥₹₪₺"]/.test(format)) return [];
  const shown = format
    .split(";")[0]!
    .replace(/\[\$([^\]-]*)(?:-[^\]]*)?\]/g, " $1 ")
    .replace(/"([^"]*)"/g, " $1 ")
    .replace(/_.|\\/g, "");
  return currenciesIn(shown, own);
}
