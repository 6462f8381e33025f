/** What lies on a sheet's cells: pictures, shapes, text boxes, charts, objects (ECMA-376 part 1, 20.5). */
import type { SavedDrawing } from "../../workbooks/savedFile";
import { MAX_FACTS, MAX_FACT_TEXT } from "./limits";
import { attribute, elementsOf, firstOf, fromXml, isOff, isOn, textOf, type Element } from "./markup";

/** English Metric Units of a column and a row of usual size: 64 and 20 pixels at 9,525 each. */
const COLUMN_EMU = 609_600;
const ROW_EMU = 190_500;
/** Less of a cell than this share is only touched. */
const TOUCHED = 0.25;

/** @param xml a drawing part */
export function drawingsIn(xml: string): SavedDrawing[] {
  const anchors = [
    ...elementsOf(xml, "twoCellAnchor"),
    ...elementsOf(xml, "oneCellAnchor"),
    ...elementsOf(xml, "absoluteAnchor"),
  ].slice(0, MAX_FACTS);
  return anchors.flatMap((anchor): SavedDrawing[] => {
    // What is only seen on the screen is no part of the page.
    if (isOff(firstOf(anchor.inside, "clientData"), "fPrintsWithSheet")) return [];
    const at = zoneOf(anchor.inside);
    const own = firstOf(anchor.inside, "cNvPr");
    if (!at || isOn(own, "hidden")) return [];
    const written = elementsOf(anchor.inside, "p")
      .map(({ inside }) => textOf(inside, "t"))
      .filter((line) => line !== "")
      .join(" ");
    const kind = kindOf(anchor.inside, written);
    const instead = kind === "picture" && own ? attribute(own, "descr") : undefined;
    const text = (instead ?? written).slice(0, MAX_FACT_TEXT);
    return [
      {
        kind,
        name: (own && attribute(own, "name")) ?? "",
        text,
        ...at,
        ...((kind === "shape" || kind === "text box") && isClear(anchor.inside) && { clear: true as const }),
      },
    ];
  });
}

function kindOf(inside: string, text: string): SavedDrawing["kind"] {
  if (/<(?:\w+:)?pic[\s>]/.test(inside)) return "picture";
  if (/<(?:\w+:)?graphicFrame[\s>]/.test(inside)) return "chart";
  return text === "" ? "shape" : "text box";
}

/** Neither a fill of its own nor one of a style. */
function isClear(inside: string): boolean {
  const properties = firstOf(inside, "spPr")?.inside ?? "";
  if (/<(?:\w+:)?(?:solidFill|gradFill|blipFill|pattFill)[\s>]/.test(withoutLine(properties))) return false;
  return /<(?:\w+:)?noFill\b/.test(withoutLine(properties)) || firstOf(inside, "fillRef") === undefined;
}

const withoutLine = (properties: string): string =>
  properties.replace(firstOf(properties, "ln")?.inside ?? "", "");

type Zone = Pick<SavedDrawing, "top" | "left" | "bottom" | "right">;

function zoneOf(inside: string): Zone | undefined {
  const from = cornerOf(firstOf(inside, "from"));
  if (!from) return undefined;
  const top = Math.floor(from.row);
  const left = Math.floor(from.column);
  const to = cornerOf(firstOf(inside, "to"));
  if (!to) return { top, left, bottom: top, right: left };
  // The cell at its end is under it only as far as it reaches into it.
  const last = (end: number, first: number): number =>
    Math.max(first, end - Math.floor(end) < TOUCHED ? Math.floor(end) - 1 : Math.floor(end));
  return { top, left, bottom: last(to.row, top), right: last(to.column, left) };
}

/** With the share of the cell that lies before it. */
function cornerOf(corner: Element | undefined): { row: number; column: number } | undefined {
  if (!corner) return undefined;
  const value = (tag: string): number => {
    const text = firstOf(corner.inside, tag)?.inside ?? "0";
    return Number(fromXml(text)) || 0;
  };
  const share = (offset: number, whole: number): number => Math.min(0.99, Math.max(0, offset / whole));
  const row = value("row");
  const column = value("col");
  return row >= 0 && column >= 0
    ? { row: row + share(value("rowOff"), ROW_EMU), column: column + share(value("colOff"), COLUMN_EMU) }
    : undefined;
}
