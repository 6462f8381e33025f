/**
 * Parts whose names are nearest to a supplier's words: word by word, a slip of a letter allowed in a long one, and
 * numbers exact: a 6-way splitter is never offered for an 8-way one.
 */
import { plainWords } from "./plainWords";

const words = (text: string): string[] => plainWords(text).match(/\p{L}+|\d+(?:[.,]\d+)?/gu) ?? [];
const isNumber = (word: string): boolean => /^\d/.test(word);

/** At most one letter put in, left out or changed; in words of five letters and more. */
function alike(one: string, other: string): boolean {
  if (one === other) return true;
  if (isNumber(one) || isNumber(other)) return one.replace(",", ".") === other.replace(",", ".");
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  // A plural is the same word.
  if (long === `${short}s` || long === `${short}es`) return true;
  if (short.length < 5 || long.length - short.length > 1) return false;
  let from = 0;
  while (from < short.length && short[from] === long[from]) from++;
  const rest = short.length === long.length ? short.slice(from + 1) : short.slice(from);
  return rest === long.slice(from + 1);
}

const LIKELY = 0.5;

/** @returns the likeliest first; none where no name has half of its words in the text */
export function nearestParts(text: string, names: readonly string[], most = 3): string[] {
  const said = words(text);
  const saidNumbers = said.filter(isNumber);
  return names
    .map((name) => {
      const own = words(name);
      const found = own.filter((word) => said.some((one) => alike(word, one))).length;
      // A number of the name that the text lacks, where the text has others, is another part.
      const numbers = own.filter(isNumber);
      const otherNumber =
        numbers.some((word) => !saidNumbers.some((one) => alike(word, one))) && saidNumbers.length > 0;
      return { name, share: own.length === 0 || otherNumber ? 0 : found / own.length, found };
    })
    .filter(({ share }) => share >= LIKELY)
    .sort((a, b) => b.share - a.share || b.found - a.found)
    .slice(0, most)
    .map(({ name }) => name);
}

/** The list of Parts in which a new part most likely stands, by its words; from memory of what such parts are called. */
const LIST_WORDS: readonly (readonly [string, RegExp])[] = [
  [
    "fittings",
    /(?<![a-z])(?:connectors?|plugs?|clips?|clamps?|boots?|f-?type|stecker|connecteurs?|conector\w*|connector\w*|schell\w*|masts?|brackets?|mounts?|tape|joints?|barrel|earth\w*|dish(?:es)?|cabinets?|box(?:es)?|trunking)(?![a-z])/,
  ],
  [
    "plates",
    /(?<![a-z])(?:plates?|wall ?plates?|outlets?|dosen?|antennendose|prises?|tomas?|wandcontactdo\w*)(?![a-z])/,
  ],
  ["resistors", /(?<![a-z])(?:resistors?|terminat\w*|abschluss\w*|end ?resistor)(?![a-z])/],
  [
    "passives",
    /(?<![a-z])(?:splitters?|taps?|verteiler|abzweiger|repartiteurs?|derivat\w*|repartidor\w*|verdelers?|attenuators?|equali[sz]ers?|amplifiers?|filters?)(?![a-z])/,
  ],
  ["units", /(?<![a-z])(?:head ?units?|multi ?switch\w*|switch(?:es)?|cabecera|kopf\w*)(?![a-z])/],
  [
    "supplies",
    /(?<![a-z])(?:inserters?|suppl(?:y|ies)|power units?|netzteile?|fuentes?|alimentations?|voeding\w*)(?![a-z])/,
  ],
  ["feeds", /(?<![a-z])(?:feeds?|outputs? feed)(?![a-z])/],
  ["cables", /(?<![a-z])(?:cables?|drops?|trunks?|coax\w*|kabel\w*|koax\w*|cavo|reel)(?![a-z])/],
];

export const likelyList = (description: string): string =>
  LIST_WORDS.find(([, pattern]) => pattern.test(plainWords(description)))?.[0] ?? "fittings";
