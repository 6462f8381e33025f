/** Which of a part's offers is used: the pinned one, else the cheapest that holds; of equal ones the upper. */
import { asWord } from "../typed/plainText";
import type { Offer } from "./compareOffers";
import { currencyCode } from "./currencies";
import { saleUnit } from "./saleUnits";

export interface OfferTerms {
  /** Of the workbook. */
  readonly currency: string | undefined;
  /** By what the part is counted. */
  readonly unit: "m" | "ft" | "piece";
  /** On which an offer must hold. */
  readonly date: number;
}

/** @param offers of one part, in the order of the sheet */
export function offerInUse(
  offers: readonly Offer[],
  { currency, unit, date }: OfferTerms,
): Offer | undefined {
  const own = currency === undefined ? undefined : currencyCode(currency);
  const fitting = offers.filter(
    ({ perUnit, unit: word, currency: money }) =>
      perUnit !== undefined &&
      perUnit > 0 &&
      (word === "" || saleUnit(word) === saleUnit(unit)) &&
      (money === "" || own === undefined || currencyCode(money) === own),
  );
  const pinned = fitting.filter((offer) => offer.pinned);
  const standing =
    pinned.length > 0 ? pinned : fitting.filter(({ until }) => until !== undefined && until >= date);
  return standing.reduce<Offer | undefined>(
    (best, offer) => (best === undefined || offer.perUnit! < best.perUnit! - 1e-6 ? offer : best),
    undefined,
  );
}

export const offersOf = (offers: readonly Offer[], part: string): Offer[] =>
  offers.filter((offer) => asWord(offer.part) === asWord(part));
