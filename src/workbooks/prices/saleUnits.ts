/**
 * In what a supplier sells: metres, pieces, packs and reels, and the quantity for which a price holds ("100 m",
 * "C", "PE 100"). From memory of price lists in English, German, French, Spanish and Dutch; the codes in capitals
 * are those of UN/ECE Recommendation 20, from memory.
 */
import { plainWords } from "./plainWords";

/** A pack or a reel holds a number of the others. */
export type SaleUnit = "m" | "ft" | "pc" | "pack" | "reel" | "set" | "pair";

export interface Basis {
  /** For so many a price holds. */
  readonly quantity: number;
  readonly unit?: SaleUnit;
}

const words = (unit: SaleUnit, list: string): [string, SaleUnit][] =>
  list.split(" ").map((word) => [word, unit]);

const UNITS: ReadonlyMap<string, SaleUnit> = new Map([
  ...words(
    "m",
    "m mt mts mtr mtrs mtr. meter meters metre metres metro metros lfm lfdm lfd.m lm ml rm strekkende",
  ),
  ...words("ft", "ft feet foot lf"),
  ...words(
    "pc",
    "pc pcs pce pces piece pieces ea each st stk stck stuck stucke pz pza pzas pieza piezas ud uds u un und unid unidad unidades unit units unite unites eenheid einheit p stuk stuks stks nr no c62 h87 nar ste item",
  ),
  ...words(
    "pack",
    "pack packs pk pkt pkg pck packet packung packungen pckg pkg. box boxes bx bag bags bg ve vpe karton kart ktn ctn carton beutel btl boite boites bte sachet sac paquet paquets pqt lot cond caja cajas cja bolsa bolsas paquete paquetes envase doos dozen ds zak zakken zk pak pakken verpakking verp blister tube schachtel gebinde colis",
  ),
  ...words(
    "reel",
    "reel reels roll rolls rl rll ro rol rollen rolle ring ringe rg rng coil coils drum drums spool spools spule spulen trommel trommeln trm touret tourets rouleau rouleaux rlx couronne couronnes bobine bobines bob bobina bobinas rollo rollos haspel haspels bund bd krans",
  ),
  ...words("set", "set sets satz kit kits jeu juego garnitur stel"),
  ...words("pair", "pair pairs paar paire par pares pr prs"),
]);

const spelled = (text: string): string =>
  plainWords(text)
    .replace(/[.:\s]+$/, "")
    .replace(/^[./:\s]+/, "");

/** @returns undefined for a word that is no unit of sale */
export const saleUnit = (text: string): SaleUnit | undefined => UNITS.get(spelled(text));

const PREFIX =
  /^(?:(?:price|preis|prix|precio|prijs) )?(?:per|pro|je|par|por|les|le|la|aux|au|for|fur|voor|a|pe|\/)(?: (?:a|the))?(?![a-z]) ?/;
const NUMBER_AND_WORD = /^(\d{1,3}(?:[.,' ]\d{3})+|\d+)(?:[.,]0{1,2})? ?(?:x )?([^\d].*)?$/;

/**
 * "100 m", "per 100 pcs", "C", "1000", "je Stück", "km", "/100m".
 * @param letters whether C and M are hundred and thousand, as they are in a column of price units
 */
export function basisOf(text: string, letters = false): Basis | undefined {
  let plain = plainWords(text)
    .replace(/[.:]+$/, "")
    .replace(/^[(/\s]+|[)\s]+$/g, "");
  const without = plain.replace(PREFIX, "").trim();
  if (without !== "") plain = without;
  if (letters) {
    const letter = { c: 100, m: 1000, e: 1, mil: 1000, t: 1000 }[plain];
    if (letter !== undefined) return { quantity: letter };
  }
  if (/^(?:%|hundred|hundert|cent|cien|ciento|honderd|cto)$/.test(plain)) return { quantity: 100 };
  if (/^(?:‰|o\/oo|thousand|tausend|tsd|mille|mil|duizend)$/.test(plain)) return { quantity: 1000 };
  if (plain === "km") return { quantity: 1000, unit: "m" };
  if (/^(?:mft|m ft|kft)$/.test(plain)) return { quantity: 1000, unit: "ft" };
  if (/^(?:cft|c ft)$/.test(plain)) return { quantity: 100, unit: "ft" };
  const percent = /^% ?(.+)$/.exec(plain);
  if (percent) {
    const unit = saleUnit(percent[1]!);
    return unit && { quantity: 100, unit };
  }
  const alone = saleUnit(plain);
  if (alone) return { quantity: 1, unit: alone };
  const counted = NUMBER_AND_WORD.exec(plain);
  if (!counted) return undefined;
  const quantity = Number(counted[1]!.replace(/\D/g, ""));
  if (!(quantity > 0)) return undefined;
  if (counted[2] === undefined) return { quantity };
  const word = counted[2].trim();
  if (word === "'") return { quantity, unit: "ft" };
  if (word === "km") return { quantity: quantity * 1000, unit: "m" };
  const unit = saleUnit(word) ?? lengthOfReel(word);
  return unit && { quantity, unit };
}

/** "100 m reel", "100 m Rolle": so many metres. */
function lengthOfReel(words_: string): SaleUnit | undefined {
  const [first, second, third] = words_.split(/[ -]+/).map(saleUnit);
  return third === undefined &&
    (second === "reel" || second === "pack") &&
    first !== undefined &&
    first !== "reel"
    ? first
    : undefined;
}

export const isLength = (unit: SaleUnit | undefined): unit is "m" | "ft" => unit === "m" || unit === "ft";

const REEL =
  "reel|roll|drum|coil|ring|spool|rolle|spule|trommel|bund|touret|couronne|rouleau|bobine|bobina|rollo|haspel|rol|krans";
const PACK =
  "bag|box|pack|packet|pack size|carton|pkt|pk|beutel|packung|karton|schachtel|vpe|ve|sachet|boite|paquet|lot|bolsa|caja|paquete|envase|zak|doos|pak|verpakking|cond";
const OF = "(?: ?(?:of|a|de|mit|zu|con|van|x|:|=)(?![a-z]))? ?";
const LENGTH = "(m|mtr|mtrs|metres?|meters?|metros?|ft|feet|')(?![a-z])";
const COUNT = "(?:pcs?|pieces?|stk|stck|stuck|st|uds?|unidades|stuks?|pieces|ea|pz)?(?![a-z])";

const IN_WORDS: readonly (readonly [RegExp, "length" | "count"])[] = [
  [
    new RegExp(`(\\d+(?:[.,]\\d{3})?) ?-?${LENGTH}[ ./-]*(?:auf |op |sur |en |on )?(?:${REEL})s?(?![a-z])`),
    "length",
  ],
  [new RegExp(`(?<![a-z])(?:${REEL})s?${OF}(\\d+(?:[.,]\\d{3})?) ?${LENGTH}`), "length"],
  [new RegExp(`(?<![a-z])(?:${PACK})s?${OF}(\\d+) ?${COUNT}`), "count"],
  [new RegExp(`(?<![\\d.,])(\\d+)(?:er)?[ -]?(?:${PACK})(?![a-z])`), "count"],
  [/(?<![\d.,-])(\d+) ?(?:pcs|pieces|stk|stck|stuck|uds|unidades|stuks) ?(?:$|[),.;/])/, "count"],
];

/** What a description says of its own pack or reel: "100 m reel", "bag of 100". */
export function packInWords(text: string): Basis | undefined {
  const plain = plainWords(text);
  for (const [pattern, kind] of IN_WORDS) {
    const found = pattern.exec(plain);
    if (!found) continue;
    const quantity = Number(found[1]!.replace(/\D/g, ""));
    if (!(quantity > 0)) continue;
    if (kind === "count") return { quantity, unit: "pc" };
    return { quantity, unit: /^(?:ft|feet|')$/.test(found[2]!) ? "ft" : "m" };
  }
  return undefined;
}
