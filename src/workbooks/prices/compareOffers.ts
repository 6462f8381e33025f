/**
 * Holds a supplier's list against what the workbook keeps of that supplier: what is new, changed, gone, or so far off
 * that it is more likely a slip of a unit than a price.
 */
import { METRES_PER_FOOT } from "../../engine/signal/lengthUnits";
import { isoDate } from "../sheetDate";
import { asWord } from "../typed/plainText";
import { currencyCode } from "./currencies";
import { articleWord } from "./articleWord";
import { waits, type ListedPrice, type PriceList } from "./list";
import { isLength, saleUnit, type SaleUnit } from "./saleUnits";

/** What the workbook keeps: one supplier's price for one part. */
export interface Offer {
  /** Its place among the workbook's offers. */
  readonly row: number;
  readonly part: string;
  readonly supplier: string;
  readonly article: string;
  /** In the supplier's words; how a line without an article number is found again. */
  readonly description: string;
  readonly unit: string;
  readonly pack?: number;
  readonly perUnit?: number;
  readonly perPack?: number;
  readonly currency: string;
  readonly priced?: number;
  readonly until?: number;
  readonly pinned: boolean;
}

export type ChangeKind = "new" | "changed" | "same" | "suspicious" | "currency" | "unit" | "asked" | "left";

export interface ComparedLine {
  readonly listed: ListedPrice;
  readonly kind: ChangeKind;
  /** Of the workbook; none for a new line, more than one where an article stands for several parts. */
  readonly offers: readonly Offer[];
  /** The price before and now, for the same quantity. */
  readonly before?: number;
  readonly now?: number;
  /** (now − before) ÷ before. */
  readonly share?: number;
  /** Why it is not taken of itself, or what else to look at. */
  readonly said?: string;
  /** Taken without a person's tick. */
  readonly taken: boolean;
}

export interface GoneOffer {
  readonly offer: Offer;
  readonly said: string;
}

export interface Comparison {
  readonly lines: readonly ComparedLine[];
  /** On no line of the list. */
  readonly gone: readonly GoneOffer[];
  /** On a line that says that there is no price: discontinued, or on request. */
  readonly ended: readonly GoneOffer[];
}

/** So many times dearer or cheaper is more often a pack taken for a piece than a price. */
export const SUSPICIOUS_FACTOR = 5;
const SAME = 1e-9;

export function compareOffers(
  list: PriceList,
  offers: readonly Offer[],
  supplier: string,
  own: string | undefined,
): Comparison {
  const wanted = asWord(supplier);
  const kept = offers.filter((offer) => asWord(offer.supplier) === wanted);
  const byArticle = new Map<string, Offer[]>();
  const byWords = new Map<string, Offer[]>();
  const bySpoilt = new Map<string, Offer[]>();
  const put = (map: Map<string, Offer[]>, key: string, offer: Offer): void => {
    if (key === "") return;
    const before = map.get(key);
    if (before) before.push(offer);
    else map.set(key, [offer]);
  };
  for (const offer of kept) {
    put(byArticle, articleWord(offer.article), offer);
    put(bySpoilt, spoilt(offer.article), offer);
    put(byWords, asWord(offer.description), offer);
  }
  const matching = ({ article, description }: ListedPrice): readonly Offer[] => {
    const found = article === "" ? undefined : byArticle.get(articleWord(article));
    if (found) return found;
    const words = description === "" ? [] : (byWords.get(asWord(description)) ?? []);
    // An article number that differs is another article, whatever its words.
    return words.filter((offer) => article === "" || offer.article === "");
  };
  const listed = new Set<Offer>();
  const ended = new Map<Offer, string>();
  const stays = new Set<Offer>();
  const code = own === undefined ? undefined : currencyCode(own);
  const asked = waits(list.questions);
  const lines = list.lines.map((line) => {
    const found = matching(line);
    const perhaps =
      found.length === 0 && line.article !== "" ? bySpoilt.get(spoilt(line.article)) : undefined;
    if (perhaps) {
      for (const offer of perhaps) {
        listed.add(offer);
        stays.add(offer);
      }
      const said = `The article ${line.article} can be ${perhaps[0]!.article} of “${perhaps[0]!.part}”, which a workbook program has spoilt. Put the number right in the list, or leave the line out.`;
      return compared({ ...line, doubts: [...line.doubts, said] }, [], code, asked);
    }
    for (const offer of found) {
      listed.add(offer);
      if (line.state === undefined) stays.add(offer);
      else ended.set(offer, line.left ?? line.state);
    }
    return compared(line, found, code, asked);
  });
  return {
    lines,
    gone: kept
      // What never came from a list can't be missing in one.
      .filter((offer) => !listed.has(offer) && (offer.article !== "" || offer.description !== ""))
      .map((offer) => ({ offer, said: "It is not in the list any more." })),
    ended: kept.flatMap((offer) => {
      const said = stays.has(offer) ? undefined : ended.get(offer);
      return said === undefined ? [] : [{ offer, said }];
    }),
  };
}

const MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split(" ");

/** What a workbook program leaves of an article number: no noughts in front, a power of ten, a day of a month. */
function spoilt(article: string): string {
  const plain = article.trim();
  const pair = /^(\d{1,2})[-./](\d{1,2})(?:[-./](?:19|20)\d\d)?$/.exec(plain);
  if (pair) return `day ${[Number(pair[1]), Number(pair[2])].sort((a, b) => a - b).join("-")}`;
  const words = /^(?:(\p{L}{3})\p{L}*\.?[ -](\d{1,2})|(\d{1,2})[.-] ?(\p{L}{3})\p{L}*\.?)$/u.exec(plain);
  const month = words ? MONTHS.indexOf((words[1] ?? words[4]!).toLowerCase()) + 1 : 0;
  if (words && month > 0)
    return `day ${[month, Number(words[2] ?? words[3])].sort((a, b) => a - b).join("-")}`;
  const figure = plain.replace(",", ".");
  return /^\d+(?:\.\d+)?(?:E\+?\d+)?$/i.test(figure) ? `number ${Number(figure)}` : "";
}

function compared(
  listed: ListedPrice,
  offers: readonly Offer[],
  own: string | undefined,
  asked: boolean,
): ComparedLine {
  const line = { listed, offers };
  const { doubts, left, currency } = listed;
  if (left !== undefined) return { ...line, kind: "left", said: left, taken: false };
  if (doubts.length > 0) return { ...line, kind: "asked", said: doubts.join(" "), taken: false };
  if (asked)
    return { ...line, kind: "asked", said: "Answer first what is asked of the whole list.", taken: false };
  if (own !== undefined && currency !== undefined && currency !== own)
    return {
      ...line,
      kind: "currency",
      said: `Its price is in ${currency}, and prices here are in ${own}. It is not taken: put a list in ${own} in its place.`,
      taken: false,
    };
  const late = listed.expired ? `Its price ended on ${isoDate(listed.until!)}.` : undefined;
  const [offer] = offers;
  if (!offer) return { ...line, kind: "new", ...(late && { said: late }), taken: late === undefined };
  const pair = comparable(listed, offer);
  if (!pair)
    return {
      ...line,
      kind: "unit",
      said: `Its price is per ${listed.unit ?? "unit"}, and the one kept is per ${offer.unit || "unit"}. Tick it if the new one is meant.`,
      taken: false,
    };
  const [before, now] = pair;
  const share = (now - before) / before;
  const prices = { before, now, share };
  const older =
    listed.from !== undefined && offer.priced !== undefined && listed.from < offer.priced
      ? `It is of ${isoDate(listed.from)}, older than the one kept, of ${isoDate(offer.priced)}.`
      : undefined;
  const factor = Math.max(now / before, before / now);
  if (factor >= SUSPICIOUS_FACTOR - SAME)
    return {
      ...line,
      ...prices,
      kind: "suspicious",
      said: `${before} became ${now}, ${Number(factor.toPrecision(3))} times ${now > before ? "as much" : "less"}. Look at its unit and its pack; it is not taken unless you tick it.`,
      taken: false,
    };
  const packs =
    listed.pack !== undefined && offer.pack !== undefined && listed.pack !== offer.pack
      ? `A pack or reel held ${offer.pack}, and now holds ${listed.pack}.`
      : undefined;
  const same = Math.abs(now - before) <= SAME * before && packs === undefined;
  const said = [late, older, packs].filter((one) => one !== undefined).join(" ");
  return {
    ...line,
    ...prices,
    kind: same ? "same" : "changed",
    ...(said !== "" && { said }),
    taken: late === undefined && older === undefined,
  };
}

/** The two prices for the same quantity, in the offer's own; undefined where they measure different things. */
function comparable(listed: ListedPrice, offer: Offer): readonly [number, number] | undefined {
  const [one, other] = [listed.unit, saleUnit(offer.unit)];
  const factor = between(one, other);
  if (
    factor !== undefined &&
    listed.perUnit !== undefined &&
    offer.perUnit !== undefined &&
    offer.perUnit > 0
  )
    return [offer.perUnit, listed.perUnit * factor];
  if (listed.perPack !== undefined && offer.perPack !== undefined && offer.perPack > 0)
    return listed.pack === offer.pack || listed.pack === undefined || offer.pack === undefined
      ? [offer.perPack, listed.perPack]
      : undefined;
  return undefined;
}

/** What a price per one unit is multiplied with for the other; undefined where nothing leads from one to the other. */
function between(one: SaleUnit | undefined, other: SaleUnit | undefined): number | undefined {
  if (one === other || one === undefined || other === undefined) return 1;
  if (isLength(one) && isLength(other)) return one === "ft" ? 1 / METRES_PER_FOOT : METRES_PER_FOOT;
  const pieces: readonly SaleUnit[] = ["pc", "set", "pair"];
  return pieces.includes(one) && pieces.includes(other) ? 1 : undefined;
}
