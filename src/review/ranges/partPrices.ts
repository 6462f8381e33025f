/**
 * What one of a kind of part, a metre of cable or an hour usually costs, by the words of a line: common practice
 * without a source, in a currency like the euro, pound or dollar, and wide enough for cost and selling price.
 */
interface PartPrice {
  readonly what: RegExp;
  readonly low: number;
  readonly high: number;
}

const DISH: PartPrice = {
  what: /(?:dish|spiegel|parabole|parabola|schotel)(?![a-z])(?!.*(?:mount|bracket))/,
  low: 20,
  high: 900,
};
const KINDS: readonly PartPrice[] = [
  {
    what: /head ?-?unit|kopfeinheit|kopfstelle|unite de tete|cabecera|kopunit|kopeenheid/,
    low: 30,
    high: 1200,
  },
  { what: /clips?|clamps?|ties?|schellen|binder|attaches|grapas|bridas/, low: 0.02, high: 40 },
  {
    what: /receiver lead|flylead|patch lead|anschlusskabel|cordon|latiguillo|aansluitsnoer/,
    low: 0.5,
    high: 30,
  },
  {
    what: /splitters?|taps?(?![a-z])|verteiler|abzweiger|repartiteur|derivateur|repartidor|derivador|verdeler/,
    low: 1.5,
    high: 90,
  },
  {
    what: /wall ?plates?|antennendose|prise murale|toma de pared|contactdoo|aansluitdoos/,
    low: 1.5,
    high: 60,
  },
  { what: /connectors?|stecker|connecteur|conector/, low: 0.1, high: 15 },
  {
    what: /grounding block|earth(?:ing)? block|erdungsblock|mise a la terre|bloque de tierra|aardingsblok/,
    low: 1,
    high: 60,
  },
  {
    what: /end resistors?|terminators?|abschlusswiderst|resistance de fin|resistencia terminal|eindweerstand/,
    low: 0.2,
    high: 15,
  },
  DISH,
];
const CABLE = /(?:cable|kabel|coax|cavo)(?![a-z])/;
const METRE = { low: 0.1, high: 3.2 };
const HOUR = { low: 12, high: 250 };

export interface UsualPrice {
  readonly low: number;
  readonly high: number;
}

/** @returns undefined for a part of which nothing is known */
export function usualPrice(part: string): UsualPrice | undefined {
  const plain = part.toLowerCase().normalize("NFKD").replace(/\p{M}/gu, "").replace(/ß/g, "ss");
  const found = KINDS.find(({ what }) => what.test(plain));
  if (found && !(CABLE.test(plain) && found === DISH)) return found;
  // A reel has a price of its own.
  return CABLE.test(plain) && !/reel|roll|drum|ring|\d ?m(?![a-z])/.test(plain) ? METRE : undefined;
}

export const USUAL_RATE: UsualPrice = HOUR;
