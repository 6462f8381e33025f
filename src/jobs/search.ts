/**
 * Finds jobs by what stands in their lines, as a person types it who looks at
 * another keyboard, a letter or a telephone note: accents, capitals, hyphens and
 * quotation marks do not count, and a part of a word is enough.
 */
import type { ShelfLine } from "../workbooks/shelfLine";
import type { ShelfEntry } from "./catalogue";
import { stateInWords, timeInWords, totalInWords } from "./entryInWords";

/** A job of the shelf, or a workbook in a folder. */
export type Findable = Partial<
  Pick<ShelfEntry, "line" | "state" | "away" | "conflictOf" | "trouble" | "savedAt">
> & { readonly file?: { readonly name: string } };

/**
 * @param more whatever else stands in its line
 * @returns what {@link finder} looks through; worth keeping, since it takes a hundred times as long as the looking
 */
export function searched({ line, file, savedAt, ...told }: Findable, ...more: string[]): string {
  const date = line?.date ?? "";
  const saved = timeInWords(savedAt ?? "");
  const fields = [
    ...(line ? [line.number, line.revision && `revision ${line.revision}`, line.name, line.customer] : []),
    stateInWords(told),
    ...[date, longDate(date), saved, longDate(saved)],
    file?.name ?? "",
    ...more,
    ...(line ? sumsOf(line) : []),
  ];
  // They stay apart: what was typed with a hyphen may not reach from one into the next.
  const apart = fields.map((field) => field.replace(/\n/g, " "));
  return bare([...apart, ...apart.filter((field) => IS_SPELLED.test(field)).map(spelledOut)].join("\n"));
}

/** @returns whether all the words typed stand in what {@link searched} made; nothing typed is in everything */
export function finder(typed: string): (searchedText: string) => boolean {
  const words = typed
    .split(/\s+/)
    .map((word) => [...new Set([word, spelledOut(word)].map(bare))])
    .filter(([word]) => word !== "");
  return (text) => words.every((spellings) => spellings.some((word) => text.includes(word)));
}

/** Letters that are no accented ones for a computer but are for a person; all of them small. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  ł: "l",
  đ: "d",
  ð: "d",
  þ: "th",
  ħ: "h",
  ı: "i",
  ς: "σ",
};
const LETTER = new RegExp(`[${Object.keys(LETTERS).join("")}]`, "g");
/** Where the letter is not on the keyboard. */
const SPELLED_OUT: Readonly<Record<string, string>> = { ä: "ae", ö: "oe", ü: "ue", ø: "oe", å: "aa" };
const SPELLED = /[äöüøå]/g;
/** Or as a letter with a mark of its own behind it. */
const IS_SPELLED = /[äöüøå]|\u0308|\u030a/i;

const QUOTES = /[´‘’‚‛“”„‟«»‹›′″ʼʹ]/g;
/** Marks that are put on a letter of any script, and those of Hebrew; the vowel signs of Indic scripts are letters. */
const MARKS = /\p{Script=Inherited}|(?=\p{Mn})\p{Script=Hebrew}|\p{Cf}/gu;
const GAPS = /[\s\p{Pd}\u2212]/gu;

/** As it is without its marks. Few letters are not plain ones, and only they cost. */
const bare = (text: string): string =>
  text
    .replace(/[^\0-\x7f]+/g, (run) =>
      run
        // One of them would come apart into a space and a mark.
        .replace(QUOTES, "")
        .normalize("NFKD")
        .replace(MARKS, "")
        .toLowerCase()
        .replace(LETTER, (letter) => LETTERS[letter]!)
        .replace(GAPS, " "),
    )
    .toLowerCase()
    .replace(/["'`]/g, "")
    // The line's end keeps the fields apart.
    .replace(/[ \t\v\f\r-]+/g, " ")
    .replace(/^ | $/gm, "");

const spelledOut = (text: string): string =>
  text
    .normalize("NFC")
    .toLowerCase()
    .replace(SPELLED, (letter) => SPELLED_OUT[letter]!);

const MONTHS = "January February March April May June July August September October November December".split(
  " ",
);

/** @param date beginning as 2026-11-02 does */
function longDate(date: string): string {
  const month = MONTHS[Number(date.slice(5, 7)) - 1];
  return month === undefined ? "" : `${Number(date.slice(8, 10))} ${month} ${date.slice(0, 4)}`;
}

/** The total as it is shown, bare, and as others write it, with the currency or its sign before and behind. */
function sumsOf(line: ShelfLine): string[] {
  const { total, currency } = line;
  if (total === undefined) return [currency];
  const shown = totalInWords({ total, currency: "" });
  const written = new Set([String(total), total.toFixed(2), shown].flatMap((one) => [one, exchanged(one)]));
  const names = new Set([currency, signOf(currency)]);
  return [...names].map((name) => ["", ...written, ""].join(name || " "));
}

/** Point for comma, comma for point. */
const exchanged = (sum: string): string => sum.replace(/[.,]/g, (sign) => (sign === "." ? "," : "."));

const signs = new Map<string, string>();

/** @param currency by its three letters; anything else is a sign or a name of its own */
function signOf(currency: string): string {
  const known = signs.get(currency);
  if (known !== undefined) return known;
  let sign = currency;
  if (/^[a-z]{3}$/i.test(currency)) {
    const format = new Intl.NumberFormat("en", {
      style: "currency",
      currency,
      currencyDisplay: "narrowSymbol",
    });
    sign = format.formatToParts(0).find(({ type }) => type === "currency")?.value ?? currency;
  }
  signs.set(currency, sign);
  return sign;
}
