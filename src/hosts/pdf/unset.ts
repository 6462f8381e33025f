/** Text that the type of the pages does not have: told by place, never left to be found on paper. */
import type { Book } from "../../workbooks/book";
import type { DrawnPage } from "./pdfPages";
import { isRightToLeft, type PrintType } from "./printType";

export interface Unset {
  /** A sheet's cell (`Quote!B4`), or a part of the document in words. */
  readonly place: string;
  /** The whole text, as it was handed in. */
  readonly text: string;
  /** The signs that are missing, each once. */
  readonly signs: string;
}

/** A PDF, and what of its text is not in it. */
export interface MadePdf {
  readonly bytes: Uint8Array;
  readonly unset: readonly Unset[];
  /** The same pages, to be shown on a screen. */
  readonly pages: readonly DrawnPage[];
}

/** A sentence names so many signs. */
const MOST_SIGNS = 60;
/** And one message so many places. */
const MOST_PLACES = 5;

/** Sets texts, and keeps what it could not set. */
export class Setter {
  private readonly found = new Map<string, Unset>();

  constructor(readonly type: PrintType) {}

  get unset(): readonly Unset[] {
    return [...this.found.values()];
  }

  /** @returns the text as it can be set */
  set(text: string, place: string): string {
    const { text: set, missing } = this.type.settable(text);
    if (missing !== "") {
      const known = this.found.get(place);
      const signs = [...new Set([...(known?.signs ?? ""), ...missing])].join("");
      this.found.set(place, { place, text: known?.text ?? text, signs });
    }
    return set;
  }
}

/** Rows are left out of a copy: what is told is the cell of the workbook that shows the text. */
export const unsetAtHome = (unset: readonly Unset[], { sheets }: Book): Unset[] =>
  unset.map((one) => {
    const sheet = sheets.find(({ name }) => one.place.startsWith(`${name}!`));
    const cells = { ...sheet?.cells, ...sheet?.results };
    const cell = Object.keys(cells).find(
      (at) => (sheet?.results[at] ?? sheet?.cells[at]?.value) === one.text,
    );
    return sheet && cell ? { ...one, place: `${sheet.name}!${cell}` } : one;
  });

/** @returns a sentence for each place, and one about what to do; empty where all was set */
export function unsetInWords(unset: readonly Unset[]): string {
  if (unset.length === 0) return "";
  const named = unset.slice(0, MOST_PLACES).map(({ place, text, signs }) => {
    // As it was typed: its signs alone, each once, would be another word.
    const all = [...text];
    const shown = `“${all.slice(0, MOST_SIGNS).join("")}${all.length > MOST_SIGNS ? " …" : ""}”`;
    return isRightToLeft(signs)
      ? `${place} holds text that is written from right to left, which these pages can't set: ${shown}`
      : `${place} holds signs that the type of the page does not have: ${shown}`;
  });
  const more = unset.length - named.length;
  return [
    ...named.map((sentence) => `${sentence}.`),
    ...(more > 0 ? [`${more} more places hold such signs.`] : []),
    "A question mark stands for each of them. Write it in Latin, Greek or Cyrillic letters, or print the workbook from a spreadsheet program.",
  ].join("\n");
}
