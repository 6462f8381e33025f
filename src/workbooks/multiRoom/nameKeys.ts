/**
 * Counting and adding by names. COUNTIF and SUMIFS take a text that looks like a number for that number, so that
 * `007` and `7`, or `1E5` and `100000`, are one; `1-1` may be a day to them, and `*`, `?` and `~` stand for others.
 * So a column of names has one of keys beside it, with a sign in front that no number, day or comparison begins
 * with, and a name that is looked for gets the same sign, and a `~` before each of the three.
 */
import { f, type Formula, type Named } from "../../formula/build";
import { result } from "../names";

/** By REPLACE, because the grid's library joins a whole column where `&` stands before it. */
const signed = (names: Named | Formula): Formula => f`REPLACE(${names},1,0,"_")`;

/** The column of keys beside one of names. */
export const keyed = (head: string) => result(`${head}, as counted`, { width: 12 });

export const keysOf = (names: Named | Formula): Formula => f`IF(${names}="","",${signed(names)})`;

/** The three signs of a comparison stand for themselves. */
export const escaped = (names: Named | Formula): Formula =>
  f`SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${names},"~","~~"),"*","~*"),"?","~?")`;

/** What is looked for among the keys. */
export const sought = (names: Named): Formula => signed(escaped(names));

/** One key of several names together. */
export const keyOfAll = (first: Named | Formula, ...others: readonly (Named | Formula)[]): Formula =>
  others.reduce<Formula>((key, one) => f`REPLACE(${key},1,0,${signed(one)})`, signed(first));

/** How often each of the keys of one column stands in another. */
export const countOfKeys = (keys: Named, of: Named | Formula): Formula => f`COUNTIF(${keys},${escaped(of)})`;

/** How often the key of a row stands in its column. */
export const countOfOwn = (keys: Named): Formula => countOfKeys(keys, keys);

/** How often each of the names stands in a column, by its keys. */
export const countOf = (keys: Named, names: Named): Formula => f`COUNTIF(${keys},${sought(names)})`;

/** @param sum what is added of the rows in which a column has each of the names, by its keys */
export const sumOf = (sum: Named, keys: Named, names: Named): Formula =>
  f`SUMIFS(${sum},${keys},${sought(names)})`;
