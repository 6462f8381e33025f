/** The type of printed pages: one family in three faces, made at build (build/printFonts.ts). */

/** Each by what it is used for. */
export type PrintFont = "regular" | "strong" | "italic";

/** The bytes of the TrueType files. */
export type PrintFonts = Readonly<Record<PrintFont, Uint8Array>>;

/** Their folder in `library`, and their files in it. */
export const PRINT_FONT_HOME = "rigsheet-sans";
export const PRINT_FONTS: Readonly<Record<PrintFont, string>> = {
  regular: "RigsheetSans-Regular.ttf",
  strong: "RigsheetSans-SemiBold.ttf",
  italic: "RigsheetSans-Italic.ttf",
};
