/**
 * SVG as text, piece by piece. Everything that a person typed is escaped;
 * numbers are cut to a hundredth of a pixel, so that the last bits of a sine do
 * not tell machines apart. No ids: two pictures may stand on one page.
 */
import { FONT_FAMILY, INK, PAPER, TEXT } from "./ink";
import type { Picture } from "./picture";
import { fittedText } from "./textWidth";

type Attributes = Readonly<Record<string, string | number | undefined>>;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Characters that XML can't hold, halves of characters among them, become the sign for an unknown one. */
export const escaped = (text: string): string =>
  text
    // eslint-disable-next-line no-control-regex -- control characters are what is looked for
    .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Cs}/gu, "\uFFFD")
    .replace(/[&<>"']/g, (mark) => ENTITIES[mark]!);

/** A number as it stands in the picture. */
export const short = (value: number): string => String(Number(value.toFixed(2)) || 0);

/** @param children text already escaped: other elements */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? short(value) : escaped(value!)}"`)
    .join("");
  return children.length > 0 ? `<${name}${written}>${children.join("")}</${name}>` : `<${name}${written}/>`;
}

export interface TextStyle {
  readonly size?: number;
  readonly bold?: boolean;
  readonly color?: string;
  readonly anchor?: "start" | "middle" | "end";
  /** Cut to this many pixels; the whole then shows when it is pointed at. */
  readonly width?: number;
}

/** One line of text; `y` is its base line. */
export function textAt(
  x: number,
  y: number,
  text: string,
  { size = TEXT, bold, color = INK, anchor, width }: TextStyle = {},
): string {
  if (text === "") return "";
  const cut = width === undefined ? text : fittedText(text, width, size, bold);
  return element(
    "text",
    {
      x,
      y,
      "font-size": size === TEXT ? undefined : size,
      "font-weight": bold ? "bold" : undefined,
      fill: color === INK ? undefined : color,
      "text-anchor": anchor,
    },
    escaped(cut),
    ...(cut === text ? [] : [element("title", {}, escaped(text))]),
  );
}

export const group = (attributes: Attributes, ...children: readonly string[]): string =>
  element("g", attributes, ...children);

/** The whole picture, with its words in it. */
export function picture(
  { title, description, width, height, empty }: Omit<Picture, "svg">,
  ...body: readonly string[]
): Picture {
  const [w, h] = [Math.ceil(width), Math.ceil(height)];
  const svg = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${w} ${h}`,
      width: w,
      height: h,
      role: "img",
      "aria-label": `${title}. ${description}`,
      "font-family": FONT_FAMILY,
      "font-size": TEXT,
      fill: INK,
    },
    element("title", {}, escaped(title)),
    element("desc", {}, escaped(description)),
    element("rect", { width: w, height: h, fill: PAPER }),
    ...body,
  );
  return { svg, title, description, width: w, height: h, ...(empty && { empty }) };
}
