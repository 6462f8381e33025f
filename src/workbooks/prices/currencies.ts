/** The currencies that a price list names: codes (ISO 4217) and signs, in heads, titles, cells and formats. */

const CODES =
  "EUR|GBP|USD|CAD|AUD|NZD|CHF|SEK|NOK|DKK|PLN|CZK|HUF|BRL|INR|JPY|CNY|ILS|TRY|RON|ZAR|SGD|MXN|AED".split(
    "|",
  );
const KNOWN: ReadonlySet<string> = new Set(CODES);

/** What a sign can stand for; more than one where countries share it. */
const SIGNS: Readonly<Record<string, readonly string[]>> = {
  "€": ["EUR"],
  "£": ["GBP"],
  $: ["USD", "CAD", "AUD", "NZD", "SGD", "MXN"],
  us$: ["USD"],
  ca$: ["CAD"],
  c$: ["CAD"],
  au$: ["AUD"],
  a$: ["AUD"],
  nz$: ["NZD"],
  r$: ["BRL"],
  "₹": ["INR"],
  "¥": ["JPY", "CNY"],
  "₪": ["ILS"],
  "₺": ["TRY"],
  zł: ["PLN"],
  kč: ["CZK"],
  kr: ["SEK", "NOK", "DKK"],
  "fr.": ["CHF"],
  sfr: ["CHF"],
  "sfr.": ["CHF"],
  sterling: ["GBP"],
  euro: ["EUR"],
  euros: ["EUR"],
  "pound sterling": ["GBP"],
  "pounds sterling": ["GBP"],
  pounds: ["GBP"],
  franken: ["CHF"],
  dollars: ["USD", "CAD", "AUD", "NZD"],
};

const FOUND =
  /(?<![\p{L}\d])(?:EUR|GBP|USD|CAD|AUD|NZD|CHF|SEK|NOK|DKK|PLN|CZK|HUF|BRL|INR|JPY|CNY|ILS|TRY|RON|ZAR|SGD|MXN|AED)(?![\p{L}])|(?:US|CA|AU|NZ|A|C|R)\$|[€£$₹¥₪₺]|(?<![\p{L}])(?:euros?|(?:pounds? )?sterling|pounds|franken|dollars|zł|kč|sfr\.?)(?![\p{L}])|(?<![\p{L}])(?:kr|fr\.)(?![\p{L}])/giu;

/**
 * @param own the currency of the workbook: it decides what a shared sign stands for
 * @returns the currencies that the text names; a sign that several share, and that the workbook's own does not settle, stands as it is
 */
export function currenciesIn(text: string, own?: string): string[] {
  const found = new Set<string>();
  for (const [sign] of text.matchAll(FOUND)) {
    const code = sign.toUpperCase();
    // A code in small letters may be a word of some language.
    if (KNOWN.has(code)) {
      if (sign === code || /^(?:eur|gbp|usd|chf)$/i.test(sign)) found.add(code);
      continue;
    }
    const meant = SIGNS[sign.toLowerCase()] ?? [];
    const upper = own?.toUpperCase();
    const one = meant.length === 1 ? meant[0]! : meant.find((code_) => code_ === upper);
    found.add(one ?? sign);
  }
  return [...found];
}

/** Whether a sign that several currencies share can stand for this one. */
export const canStandFor = (sign: string, code: string): boolean =>
  (SIGNS[sign.toLowerCase()] ?? []).includes(code);

/** A text without the currencies that it names. */
export const withoutCurrencies = (text: string): string => text.replace(FOUND, " ");

/** The code that a person's word for a currency stands for; the word itself where it is none of ours. */
export function currencyCode(word: string, own?: string): string {
  const [only, ...others] = currenciesIn(word.trim(), own);
  return only !== undefined && others.length === 0 ? only : word.trim().toUpperCase();
}

/** Whether it is one currency's code, and not a sign that several share. */
export const isCode = (currency: string): boolean => /^[A-Z]{3}$/.test(currency);
