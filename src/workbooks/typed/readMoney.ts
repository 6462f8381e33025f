/** A sum in the document's own currency; another currency's sign is refused, never swallowed. */
import { asFigures } from "./plainText";
import { readNumeral } from "./readNumeral";
import type { Reading, TypedContext } from "./reading";
import { sentences } from "./sentences";
import type { NumberKind } from "./typedKind";
import { withinLimits } from "./withinLimits";

/** What each currency is written as besides its code (ISO 4217); signs that several share stand with each. */
const WRITTEN: Readonly<Record<string, readonly string[]>> = {
  eur: ["€", "euro", "euros"],
  gbp: ["£", "pound", "pounds", "pounds sterling"],
  usd: ["$", "us$", "dollar", "dollars"],
  cad: ["$", "ca$", "c$", "dollar", "dollars"],
  aud: ["$", "au$", "a$", "dollar", "dollars"],
  nzd: ["$", "nz$", "dollar", "dollars"],
  chf: ["fr", "sfr", "franken", "francs", "franc"],
  sek: ["kr", "kronor"],
  nok: ["kr", "kroner"],
  dkk: ["kr", "kroner"],
  pln: ["zł", "zl"],
  czk: ["kč", "kc"],
  huf: ["ft"],
  brl: ["r$", "reais"],
  inr: ["₹", "rs"],
  jpy: ["¥", "yen"],
  ils: ["₪", "nis"],
  try: ["₺", "tl"],
};

/** `-€ 5,00`: the minus belongs to the figures. */
const MINUS_BEFORE = /^- ?([^\d+.,' -][^\d+,'-]*?) ?(?=[.,]?\d)/;
/** No minor units: `12.-`, `12,–`. */
const ROUND = /^([^]*\d)[.,] ?[-‒–—]+$/;
const BEFORE = /^([^\d+.,'-][^\d+,'-]*?) ?(?=[+-]?[.,]?\d)/;
const BEHIND = /(?<=[\d.,\-‒–—]) ?([^\d\s.,'\-‒–—][^\d]*)$/;

export function readMoney(text: string, kind: NumberKind, context: TypedContext): Reading<number> {
  const notTaken = { refused: sentences.notTaken(text, kind, undefined) };
  const { currency } = context;
  const plain = asFigures(text).replace(MINUS_BEFORE, "$1 -");
  const before = BEFORE.exec(plain);
  const behind = BEHIND.exec(plain);
  const signs = [before?.[1], behind?.[1]].filter((sign) => sign !== undefined).map(plainSign);
  if (signs.some((sign) => !spellings(currency).has(sign))) {
    return signs.every(isCurrency) ? { refused: sentences.otherMoney(text, currency) } : notTaken;
  }
  if (signs.length > 1) return notTaken;
  const figures = plain
    .slice(before?.[0].length ?? 0, behind?.index ?? plain.length)
    .trim()
    .replace(ROUND, "$1");
  const numeral = readNumeral(figures, { context, apostrophes: true });
  if (!numeral) return notTaken;
  if ("value" in numeral) return withinLimits(text, numeral.value, kind, undefined);
  const { grouped, decimal, foreign } = numeral;
  if (foreign && grouped > (kind.max ?? Infinity)) return withinLimits(text, decimal, kind, undefined);
  const shown = String(decimal).replace(".", context.writing?.decimal ?? ".");
  return { refused: sentences.twoNumbers(text, String(grouped), shown) };
}

const plainSign = (sign: string): string => sign.trim().replace(/\.$/, "").toLowerCase();

/** Code and signs of the document's currency, whichever of them it names; its own word where it is none of ours. */
function spellings(currency: string | undefined): ReadonlySet<string> {
  const named = plainSign(currency ?? "");
  if (named === "") return new Set();
  const codes = Object.entries(WRITTEN).filter(([code, signs]) => code === named || signs.includes(named));
  // A sign that several currencies share names none of them: the document's own sign is all that is sure.
  const [only] = codes.length === 1 || Object.hasOwn(WRITTEN, named) ? codes : [];
  return new Set(only ? [only[0], ...only[1], named] : [named]);
}

const isCurrency = (sign: string): boolean =>
  /^\p{Sc}$/u.test(sign) ||
  Object.entries(WRITTEN).some(([code, signs]) => code === sign || signs.includes(sign));
