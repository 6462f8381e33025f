/**
 * Sheets on paper as an HTML document for the browser's own printing: no
 * script, nothing loaded. Every measure is a number of `--p`, which is a point
 * of the sheet made smaller to fit the page: one declaration sets a sheet
 * smaller.
 */
import { escaped } from "../../../help/html";
import type { Look } from "../../../workbooks/book";
import { EDGE_COLOR } from "../../../workbooks/looks";
import { PAGE_MARGINS } from "../../../workbooks/pageRoom";
import {
  CELL_PADDING,
  PAPER_EDGE_POINTS,
  pictureOnPage,
  type PaperCell,
  type PaperPart,
  type PaperPictures,
  type PaperRow,
  type PaperSheet,
} from "../../../workbooks/paperSheet";

/** The first that is there; widths are counted in its digits, so any will do. */
export const FONTS = 'Calibri, Carlito, "Segoe UI", "Liberation Sans", Arial, sans-serif';

const SIZES = { a4: "210mm 297mm", letter: "8.5in 11in" } as const;
const SIZES_ACROSS = { a4: "297mm 210mm", letter: "11in 8.5in" } as const;

const STYLE = `
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0;font-family:${FONTS};line-height:1.17;color:#000;background:#fff}
section+section,table.page,figure+figure{break-before:page}
table{table-layout:fixed;border-collapse:collapse}
thead{display:table-header-group}
tr{break-inside:avoid}
.lead{break-after:avoid}
td{overflow:hidden;padding:0 ${points(CELL_PADDING)};white-space:pre;vertical-align:bottom;unicode-bidi:plaintext}
td.over{overflow:visible}
td>div{overflow:hidden}
figure{margin:0;break-inside:avoid}
figure svg{display:block}
`;

function points(count: number): string {
  return `calc(${Number(count.toFixed(2))}*var(--p))`;
}

/** @param title what the browser calls the document, and the file that it makes of it */
export function paperHtml(title: string, parts: readonly PaperPart[]): string {
  const classes = new Classes();
  const sections = parts.map((part, index) => {
    const page = `s${index}`;
    return "pictures" in part ? picturesHtml(part, page) : sheetHtml(part, page, classes);
  });
  const pages = parts.map(({ print }, index) => pageRule(`s${index}`, print)).join("\n");
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><style>${pages}${STYLE}${classes.rules}</style></head>
<body>${sections.join("\n")}</body></html>`;
}

/** A browser without margin boxes leaves the foot out: it has page numbers of its own. */
function pageRule(page: string, { paper, orientation, footLeft, footRight }: PaperSheet["print"]): string {
  const { top, right, bottom, left } = PAGE_MARGINS;
  const size = (orientation === "landscape" ? SIZES_ACROSS : SIZES)[paper];
  const foot = (side: string, content: string): string =>
    `@bottom-${side}{font:8pt ${FONTS};color:#52606d;vertical-align:top;padding-top:8pt;content:${content}}`;
  return `@page ${page}{size:${size};margin:${top}in ${right}in ${bottom}in ${left}in;${foot("left", cssText(footLeft))}${foot("center", '"Page " counter(page) " of " counter(pages)')}${foot("right", cssText(footRight))}}`;
}

/** Nothing in it can end the text, the rule or the element. */
const cssText = (text = ""): string =>
  `"${text.replace(/[^\p{L}\p{N} .,:;()+_-]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `)}"`;

function sheetHtml(
  { print, columns, scale, before, head, parts }: PaperSheet,
  page: string,
  classes: Classes,
): string {
  const width = columns.reduce((sum, one) => sum + one, 0);
  const cols = columns.map((one) => `<col style="width:${points(one)}">`).join("");
  const table = (rows: string, className: string): string =>
    `<table${className && ` class="${className}"`} style="width:${points(width)}"><colgroup>${cols}</colgroup>${rows}</table>`;
  const body = (rows: readonly PaperRow[]): string => rows.map((row) => rowHtml(row, classes)).join("\n");
  const repeated = head.length > 0 ? `<thead>${body(head)}</thead>` : "";
  const tables = parts.map((rows, index) =>
    table(`${repeated}<tbody>${body(rows)}</tbody>`, index === 0 ? "" : "page"),
  );
  const lead = before.length > 0 ? table(`<tbody>${body(before)}</tbody>`, "lead") : "";
  return `<section${print.onePage ? ' class="one"' : ""} style="page:${page};--p:${scale.toFixed(4)}pt">${lead}${tables.join("\n")}</section>`;
}

function picturesHtml({ print, pictures }: PaperPictures, page: string): string {
  const figures = pictures.map((picture) => {
    const { width, height } = pictureOnPage(picture, print);
    const size = `width:${width.toFixed(1)}pt;height:${height.toFixed(1)}pt`;
    return `<figure>${picture.svg.replace("<svg", `<svg style="${size}"`)}</figure>`;
  });
  return `<section style="page:${page}">${figures.join("\n")}</section>`;
}

function rowHtml({ height, cells }: PaperRow, classes: Classes): string {
  return `<tr style="height:${points(height)}">${cells.map((cell) => cellHtml(cell, classes)).join("")}</tr>`;
}

function cellHtml(cell: PaperCell, classes: Classes): string {
  const { text, columns, rows, over } = cell;
  const span = `${columns > 1 ? ` colspan="${columns}"` : ""}${rows > 1 ? ` rowspan="${rows}"` : ""}`;
  const name = classes.of(cell);
  const isClass = [name, over && "over"].filter(Boolean).join(" ");
  const inner = over
    ? `<div style="margin:0 ${points(-over.right)} 0 ${points(-over.left)}">${escaped(text)}</div>`
    : escaped(text);
  return `<td${isClass && ` class="${isClass}"`}${span}>${inner}</td>`;
}

/** One class for all cells that look the same. */
class Classes {
  private readonly known = new Map<string, string>();

  get rules(): string {
    return [...this.known].map(([rule, name]) => `.${name}{${rule}}`).join("\n");
  }

  of({ look, align, size, text }: PaperCell): string {
    const rule = declarations(look, text === "" ? undefined : { align, size });
    if (rule === "") return "";
    let name = this.known.get(rule);
    if (name === undefined) this.known.set(rule, (name = `c${this.known.size}`));
    return name;
  }
}

function declarations(
  { bold, italic, color, fill, vertical, wrap, edges }: Look,
  shown: Pick<PaperCell, "align" | "size"> | undefined,
): string {
  const found: string[] = [];
  if (isColor(fill)) found.push(`background:#${fill}`);
  for (const side of ["top", "right", "bottom", "left"] as const) {
    const edge = edges?.[side];
    if (edge) found.push(`border-${side}:${PAPER_EDGE_POINTS[edge]}pt solid #${EDGE_COLOR}`);
  }
  if (!shown) return found.join(";");
  found.push(`font-size:${points(shown.size)}`);
  if (shown.align !== "left") found.push(`text-align:${shown.align}`);
  if (bold) found.push("font-weight:bold");
  if (italic) found.push("font-style:italic");
  if (isColor(color)) found.push(`color:#${color}`);
  if (vertical === "top" || vertical === "middle") found.push(`vertical-align:${vertical}`);
  if (wrap) found.push("white-space:pre-wrap;overflow-wrap:anywhere");
  return found.join(";");
}

/** A file from elsewhere may hold anything there. */
const isColor = (color: string | undefined): color is string => /^[\da-f]{6}$/i.test(color ?? "");
