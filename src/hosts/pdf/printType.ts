/**
 * The type of printed pages: how wide a text comes out in it, and which signs it
 * has. Widths are those that the PDF library sets the text with, word by word.
 */
import { create, type Font } from "fontkit";
import type { PrintFont, PrintFonts } from "./printFonts";

/** Blanks of other widths, and what breaks a line elsewhere. */
const BLANKS = /[\t\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000]/g;
/** Signs that show nothing by themselves (Unicode, Default_Ignorable_Code_Point), and control characters. */
const SHOW_NOTHING = /\p{Default_Ignorable_Code_Point}|(?!\n)\p{Cc}/gu;
const RIGHT_TO_LEFT =
  /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\p{Script=Adlam}]/u;
/** Stands for a sign that the type does not have. */
const UNKNOWN = "?";

/** A text as it can be set, and what of it can't. */
export interface Settable {
  readonly text: string;
  /** Each sign once, in order; empty where the type has all of them. */
  readonly missing: string;
}

export const isRightToLeft = (text: string): boolean => RIGHT_TO_LEFT.test(text);

export class PrintType {
  private readonly faces: Readonly<Record<PrintFont, Font>>;
  private readonly widths: Readonly<Record<PrintFont, Map<string, number>>> = {
    regular: new Map(),
    strong: new Map(),
    italic: new Map(),
  };

  constructor(readonly fonts: PrintFonts) {
    const { regular, strong, italic } = fonts;
    this.faces = { regular: create(regular), strong: create(strong), italic: create(italic) };
  }

  /** @returns points of a line without a break */
  width(text: string, size: number, face: PrintFont = "regular"): number {
    let ems = 0;
    let from = 0;
    // A word goes with the blank behind it, as the library sets it.
    for (let to = 0; to < text.length; to++) {
      if (text[to] !== " " && to < text.length - 1) continue;
      ems += this.ems(text.slice(from, to + 1), face);
      from = to + 1;
    }
    return ems * size;
  }

  /** As sheets on paper ask for it (workbooks/paperSheet.ts). */
  lineWidth(text: string, size: number, bold: boolean): number {
    return this.width(text, size, bold ? "strong" : "regular");
  }

  /** A question mark stands for each sign that no face of the type has. */
  settable(text: string): Settable {
    const plain = text
      .replace(BLANKS, " ")
      .replace(/\r\n?|[\u2028\u2029]/g, "\n")
      .replace(SHOW_NOTHING, "")
      .normalize("NFC");
    const missing = new Set<string>();
    let set = "";
    for (const sign of plain) {
      const has = sign === "\n" || this.faces.regular.hasGlyphForCodePoint(sign.codePointAt(0)!);
      if (!has) missing.add(sign);
      set += has ? sign : UNKNOWN;
    }
    return { text: set, missing: [...missing].join("") };
  }

  private ems(word: string, face: PrintFont): number {
    const known = this.widths[face].get(word);
    if (known !== undefined) return known;
    const { unitsPerEm } = this.faces[face];
    const ems = this.faces[face].layout(word).advanceWidth / unitsPerEm;
    this.widths[face].set(word, ems);
    return ems;
  }
}
