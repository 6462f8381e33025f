/**
 * Counting and adding by names. COUNTIF and SUMIFS take a text that looks like a number for that number, so that
 * `007` and `7`, or `1E5` and `100000`, are one; `1-1` may be a day to them, and `*`, `?` and `~` stand for others.
 * So a column of names has one of keys beside it, with a sign in front that no number, day or comparison begins
 * with, and a name that is looked for gets the same sign, and a `~` before each of the three.
 */
import type { Column } from "../definition";

/** By REPLACE, because the grid's library joins a whole column where `&` stands before it. */
const signed = (names: string): string => `REPLACE(${names},1,0,"_")`;

/** @param key of the block's column of names */
export const keyColumn = (block: string, key: string, head: string): Column => ({
  key: `${key}_key`,
  head: `${head}, as counted`,
  width: 12,
  formula: `IF(${block}_${key}="","",${signed(`${block}_${key}`)})`,
});

const sought = (names: string): string =>
  signed(`SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${names},"~","~~"),"*","~*"),"?","~?")`);

/** How often each of the names stands in a column that has keys. */
export const countOf = (column: string, names: string): string => `COUNTIF(${column}_key,${sought(names)})`;

/** @param sum what is added of the rows in which a column that has keys has each of the names */
export const sumOf = (sum: string, column: string, names: string): string =>
  `SUMIFS(${sum},${column}_key,${sought(names)})`;
