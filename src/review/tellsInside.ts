/** Words by which a text tells a customer what is the office's own. */

/** What an office keeps to itself, in the words in which people write it. */
const INSIDE =
  /\b(?:costs?|cost price|margins?|mark-?up|profit|purchase|buying price|bought (?:from|for)|what we pay|bonus|lowest (?:price|offer|sum)|bottom price|floor price|minimum price|min price|(?:go|come) down (?:to|by) \d+|room to go|would do it for|haggl\w*|internal (?:only|use|price|calculation)|not for the customer|office only|confidential)\b/i;
const MONEY = /\d[\d.,' ]*\d|\d+\s*%/;
/** A path of a disc, a share or a file. */
const PATH = /(?:^|[\s"'(])(?:[A-Za-z]:[\\/]|\\\\[^\\\s]|file:)|\.xls[xmb]?\b/i;

export const tellsInside = (text: string): boolean => INSIDE.test(text.replace(/([a-z])([A-Z])/g, "$1 $2"));
export const tellsMoney = (text: string): boolean => MONEY.test(text);
export const tellsPath = (text: string): boolean => PATH.test(text);
