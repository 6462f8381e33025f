/** What a check counts and the words for where it is, as formulas. */
import { chain, f, text, type Formula, type Named } from "../formula/build";
import type { Check, CountedRows } from "./definition";

/** Rows that are named; of more, their count stands beside. */
const NAMED = 3;
/** What two lines of the column hold, less the name of the sheet. */
const LONGEST = 76;

/** A column, or a labelled cell. */
type Labelled =
  { readonly words: { readonly head: string } } | { readonly words: { readonly label: string } };

/** Where to look, in the words that the sheet has for it: "Rooms, fed from". */
export const lookAt = (sheet: string, ...at: readonly Labelled[]): string =>
  [sheet, ...at.map(({ words }) => lowered("head" in words ? words.head : words.label))].join(", ");

/** A word that begins with more capitals than one, such as EIRP, keeps them. */
const lowered = (label: string): string =>
  /^\p{Lu}{2}/u.test(label) ? label : label.slice(0, 1).toLowerCase() + label.slice(1);

/** A check passes when nothing was found. */
export const NONE_FOUND = (found: Formula): Formula => f`${found}=0`;
/** It passes when anything was. */
export const SOME_FOUND = (found: Formula): Formula => f`${found}>0`;

/** How many rows are bad. */
const countedRows = (bad: Formula): Formula => f`SUMPRODUCT(--(${bad}))`;
/** How many rows are bad, over several lists. */
export const countedInAll = (bad: readonly Formula[]): Formula => chain("+", bad.map(countedRows));
/** The first of the rows that are bad, after "; ". */
export const firstBad = (of: Named, bad: Formula): Formula =>
  f`IFERROR("; "&INDEX(${of},MATCH(1,(${bad})*1,0)),"")`;

/** Rows of several lists together. */
export const inLists = (lists: readonly CountedRows[]): Pick<Check, "found" | "places"> => ({
  found: countedInAll(lists.map(({ bad }) => bad)),
  places: chain(
    "&",
    lists.map(({ of, bad }) => firstBad(of, bad)),
  ),
});
export const foundOf = ({ found }: Check): Formula =>
  typeof found === "string" ? found : countedRows(counted(found));

/** A formula for the places, each after "; "; undefined for a check that cannot say them. */
export function placesOf({ found, places }: Check): Formula | undefined {
  if (places !== undefined || typeof found === "string") return places;
  const { of } = found;
  const place = f`IF(${counted(found)},ROW(${of})-MIN(ROW(${of}))+1,"")`;
  return chain(
    "&",
    Array.from(
      { length: NAMED },
      (_, index) => f`IFERROR("; "&INDEX(${of},SMALL(${place},${index + 1})),"")`,
    ),
  );
}

const counted = ({ of, bad }: CountedRows): Formula => f`(${of}<>"")*(${bad})>0`;

/** The sheet alone while the check passes; else the places too. */
export const placesShown = (where: string, result: Formula, places: Formula): Formula =>
  f`${text(where)}&IF(${result}="ok","",IFERROR(": "&MID(${places},3,${LONGEST}),""))`;
