/** A look as the library's cell style, and back. */
import { resolveThemeColor } from "hucre/xlsx";
import type { CellStyle } from "hucre/xlsx";
import type { Edge, Look, OddLook } from "../../workbooks/book";
import { readFormat } from "./patchedInput";

type BorderStyle = NonNullable<CellStyle["border"]>;
type Font = NonNullable<CellStyle["font"]>;
type Color = NonNullable<Font["color"]>;

const DEFAULT_SIZE_PT = 10;
export const DEFAULT_FONT: Font = { name: "Calibri", size: DEFAULT_SIZE_PT };
const SIDES = ["top", "right", "bottom", "left"] as const;

function fontOf({ bold, italic, color }: Look): Font {
  const font: Font = {};
  if (bold) font.bold = true;
  if (italic) font.italic = true;
  if (color !== undefined) font.color = { rgb: color };
  return font;
}

function borderOf(edges: NonNullable<Look["edges"]>): BorderStyle {
  const border: BorderStyle = {};
  for (const side of SIDES) {
    const style = edges[side];
    if (style) border[side] = { style, color: { rgb: "808080" } };
  }
  return border;
}

/** The look of a cell. */
export function cellStyle(look: Look): CellStyle {
  const style: CellStyle = {};
  const font = fontOf(look);
  if (look.size !== undefined || Object.keys(font).length > 0) {
    // The library writes a font exactly as given, so the default's name and size go in too.
    style.font = { ...DEFAULT_FONT, ...font, size: look.size ?? DEFAULT_SIZE_PT };
  }
  if (look.fill !== undefined)
    style.fill = { type: "pattern", pattern: "solid", fgColor: { rgb: look.fill } };
  if (look.edges) style.border = borderOf(look.edges);
  if (look.align || look.vertical || look.wrap) {
    style.alignment = {
      ...(look.align && { horizontal: look.align }),
      ...(look.vertical && { vertical: look.vertical === "middle" ? "center" : look.vertical }),
      ...(look.wrap && { wrapText: true }),
    };
  }
  if (look.format !== undefined && look.format !== "General") style.numFmt = look.format;
  if (look.locked === false) style.protection = { locked: false };
  return style;
}

/** The part of a look that a conditional format can lay over a cell's own. */
export function markStyle(look: Look): CellStyle {
  const style: CellStyle = {};
  const font = fontOf(look);
  if (Object.keys(font).length > 0) style.font = font;
  if (look.fill !== undefined) {
    // A solid fill takes its colour from the background here, from the foreground in a cell.
    style.fill = {
      type: "pattern",
      pattern: "solid",
      fgColor: { rgb: look.fill },
      bgColor: { rgb: look.fill },
    };
  }
  if (look.edges) style.border = borderOf(look.edges);
  return style;
}

/** Index of "text 1" in a theme: the ordinary black, which is no colour of a look. */
const THEME_TEXT = 1;
/** The format's own name for "as the system has it". */
const FIRST_SYSTEM_COLOR = 64;

function colorOf(color: Color | undefined, theme: readonly string[]): string | undefined {
  if (!color) return undefined;
  if (color.rgb !== undefined) return color.rgb.toUpperCase();
  if (color.theme === undefined || (color.theme === THEME_TEXT && !color.tint)) return undefined;
  if (color.indexed !== undefined && color.indexed >= FIRST_SYSTEM_COLOR) return undefined;
  return resolveThemeColor([...theme], color.theme, color.tint).toUpperCase();
}

function edgeOf(style: string): Edge {
  return /medium|thick|double/i.test(style) ? "medium" : "thin";
}

/** Backslashes that LibreOffice puts before marks that need none: `yyyy\-mm\-dd`. */
const plainFormat = (format: string): string =>
  format.includes('"') ? format : format.replace(/\\([-/ :.,()])/g, "$1");

/**
 * @param theme the workbook's theme colours
 * @returns what of the style a look can hold; sheets' defaults are left out
 */
export function lookOf(style: CellStyle, theme: readonly string[]): Look {
  const { font, fill, border, alignment } = style;
  const color = colorOf(font?.color, theme);
  const size = font?.size;
  const fillColor =
    fill?.type === "pattern" && (fill.pattern !== "none" || fill.bgColor)
      ? fill.pattern === "none"
        ? colorOf(fill.bgColor, theme)
        : colorOf(fill.fgColor ?? fill.bgColor, theme)
      : undefined;
  const edges = border && edgesOf(border);
  const format = style.numFmt === undefined ? undefined : readFormat(style.numFmt);
  const { horizontal, vertical } = alignment ?? {};
  return {
    ...(font?.bold && { bold: true }),
    ...(font?.italic && { italic: true }),
    ...(size !== undefined && size !== DEFAULT_SIZE_PT && { size }),
    ...(color !== undefined && { color }),
    ...(fillColor !== undefined && { fill: fillColor }),
    ...((horizontal === "left" || horizontal === "center" || horizontal === "right") && {
      align: horizontal,
    }),
    // "bottom" is what a cell without a vertical alignment has.
    ...(vertical === "top" && { vertical }),
    ...(vertical === "center" && { vertical: "middle" as const }),
    ...(alignment?.wrapText && { wrap: true }),
    ...(edges && { edges }),
    ...(format !== undefined && format !== "General" && { format: plainFormat(format) }),
    ...(style.protection?.locked === false && { locked: false }),
    ...oddLookOf(style),
  };
}

/** Fonts of pictures, from memory. */
const SYMBOLS = /^(?:wingdings|webdings|symbol|marlett|zapf dingbats|opensymbol|bookshelf symbol)/i;

function oddLookOf({ font, alignment }: CellStyle): Pick<Look, "odd"> {
  const turned = alignment?.textRotation;
  const odd: OddLook = {
    ...(font?.strikethrough && { struck: true }),
    ...(font?.name !== undefined && SYMBOLS.test(font.name) && { symbols: font.name }),
    ...(alignment?.shrinkToFit && { shrinks: true }),
    ...(alignment?.horizontal === "fill" && { repeats: true }),
    ...(turned !== undefined && turned !== 0 && { turned }),
  };
  return Object.keys(odd).length > 0 ? { odd } : {};
}

function edgesOf(border: BorderStyle): Look["edges"] {
  const edges: { -readonly [S in (typeof SIDES)[number]]?: Edge } = {};
  for (const side of SIDES) {
    const style = border[side]?.style;
    if (style) edges[side] = edgeOf(style);
  }
  return Object.keys(edges).length > 0 ? edges : undefined;
}
