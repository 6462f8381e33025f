/** A page of a PDF on a screen: an SVG picture out of the very calls that wrote the page, in the same type. */
import { escaped } from "../../help/html";
import { base64 } from "../../workbooks/base64";
import type { Box, DrawnPage, Mark } from "./pdfPages";
import type { PrintFont } from "./printFonts";
import type { PrintType } from "./printType";

/** By these the page that shows it knows the three faces of the type. */
export const SCREEN_FAMILY = "Rigsheet Sans";
export const SCREEN_FACES: Readonly<
  Record<PrintFont, { readonly weight?: string; readonly style?: string }>
> = { regular: { weight: "400" }, strong: { weight: "600" }, italic: { style: "italic" } };

const PNG_BEGINS = 0x89;

/** @returns an SVG element, as large as the page in points */
export const pageSvg = ({ width, height, marks }: DrawnPage, type: PrintType): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}pt" height="${height}pt" font-family="${SCREEN_FAMILY}"><rect width="${width}" height="${height}" fill="#ffffff"/>${marks.map((mark) => markSvg(mark, type)).join("")}</svg>`;

function markSvg(mark: Mark, type: PrintType): string {
  switch (mark.kind) {
    case "text": {
      const { text, left, baseline, look } = mark;
      const { weight, style } = SCREEN_FACES[look.face];
      // As wide as on paper, whatever a screen makes of small letters.
      const width = type.width(text, look.size, look.face);
      const face = `${weight ? ` font-weight="${weight}"` : ""}${style ? ` font-style="${style}"` : ""}`;
      return `<text x="${short(left)}" y="${short(baseline)}" font-size="${short(look.size)}"${face} fill="${look.color}" textLength="${short(width)}" xml:space="preserve">${escaped(text)}</text>`;
    }
    case "fill":
      return `<rect ${boxed(mark.box)} fill="${mark.color}"/>`;
    case "line": {
      const { from, to, width, color } = mark;
      return `<line x1="${short(from[0])}" y1="${short(from[1])}" x2="${short(to[0])}" y2="${short(to[1])}" stroke="${color}" stroke-width="${width}"/>`;
    }
    case "svg":
      return mark.svg
        .replace(/^(<svg[^>]*?) font-family="[^"]*"/, "$1")
        .replace("<svg", `<svg ${boxed(mark.box)} preserveAspectRatio="xMinYMin meet"`);
    case "image": {
      const kind = mark.bytes[0] === PNG_BEGINS ? "png" : "jpeg";
      return `<image ${boxed(mark.box)} preserveAspectRatio="none" href="data:image/${kind};base64,${base64(mark.bytes)}"/>`;
    }
  }
}

const boxed = ({ left, top, width, height }: Box): string =>
  `x="${short(left)}" y="${short(top)}" width="${short(width)}" height="${short(height)}"`;

const short = (points: number): string => String(Number(points.toFixed(3)));
