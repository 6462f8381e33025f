/** Text as it was typed, with the many signs that mean the same brought to one. */

// Beyond blanks, what comes along unseen from web pages and phones.
const OUTER = /[\s\u200b\u200e\u200f\u2060\ufeff]/;

/** A pattern that looks for the end would begin anew at each blank inside: seconds for a long text. */
function withoutOuter(text: string): string {
  let from = 0;
  let to = text.length;
  while (from < to && OUTER.test(text[from]!)) from++;
  while (to > from && OUTER.test(text[to - 1]!)) to--;
  return text.slice(from, to);
}

/** Without the blanks around it, and with its accents in one form: what a name is stored as. */
export const asName = (text: string): string => withoutOuter(text).normalize("NFC");

const FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/**
 * For numbers, units and dates only: full-width digits as digits, every blank as one blank, every minus,
 * apostrophe and inch mark as the keyboard's own, a fraction sign written out. Names are never put through this.
 */
export const asFigures = (text: string): string =>
  asName(text)
    .replace(/\s*[½⅓⅔¼¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign.trim()]!}`)
    .replace(/[ºo˚]\s*(?=[CF]$)/, "°")
    .normalize("NFKC")
    .replace(/[‘’‛`´′]/g, "'")
    .replace(/[“”„‟″]/g, '"')
    .replace(/''/g, '"')
    .replace(/[\u2212\ufe63]/g, "-")
    .replace(/^[‒–](?=\s?[\d.,])/, "-")
    .replace(/\s+/g, " ")
    .trim();

/** Two words are the same to a person: neither case nor blanks part them. */
export const asWord = (text: string): string =>
  asName(text).normalize("NFKC").replace(/\s+/g, " ").toLowerCase();
