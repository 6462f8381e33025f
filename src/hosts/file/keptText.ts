/**
 * The mark that keeps a text text when somebody edits its cell: `quotePrefix`
 * of the cell's format (ECMA-376 part 1, 18.8.45), which Excel sets where an
 * apostrophe is typed first. Without it an outlet named `3-16` becomes a date,
 * and `=1+1` a formula, as soon as its cell is edited.
 *
 * The library knows no such mark, so it is given a reading order that no look
 * of ours has, and patchedOutput.ts puts the mark in its place.
 */
import type { CellStyle } from "hucre/xlsx";

const TRUTH = /^(?:true|false)$/i;
/** A word of a month's length and then a digit: which words are months depends on the language. */
const LIKE_A_DATE = /^\p{L}{3,}[\s.,/-]*\d/u;

/** Whether Excel might take the text for anything else: it begins unlike a word, or is a date's or truth's. */
export const mightBeTaken = (text: string): boolean =>
  text !== "" && (!/^[\p{L}_]/u.test(text) || LIKE_A_DATE.test(text) || TRUTH.test(text));

const MARKED_ALIGNMENT = { readingOrder: "context" } as const;

/**
 * @param styles cell styles by index
 * @returns after them the same with the mark, and last the mark alone
 */
export const withMarkedStyles = (styles: readonly CellStyle[]): CellStyle[] => [
  ...styles,
  ...[...styles, {}].map((style) => ({ ...style, alignment: { ...style.alignment, ...MARKED_ALIGNMENT } })),
];

/** @returns the index of the style with the mark, among those of {@link withMarkedStyles} */
export const markedStyle = (look: number | undefined, looks: number): number => looks + (look ?? looks);

/** The styles as they are stored, with the mark where the library was given the reading order. */
export const withTextKept = (xml: string): string =>
  xml.replace(
    /<xf ([^>]*)>(<alignment[^>]*?) readingOrder="0"\/>/g,
    (_, attributes: string, alignment: string) => `<xf ${attributes} quotePrefix="1">${alignment}/>`,
  );
