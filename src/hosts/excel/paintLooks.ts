/** Gives a new sheet its looks: a few calls for each look, however many cells have it. */
import type { Zone } from "../../formula/address";
import type { BookSheet, Edge, Look } from "../../workbooks/book";
import { listsOf, zonesByLook } from "./lookAreas";

const BASE_FONT = "Calibri";
const BASE_SIZE_PT = 10;
const EDGE_COLOR = "#808080";
const ALIGNED = { left: "Left", center: "Center", right: "Right" } as const;
const VERTICAL = { top: "Top", middle: "Center", bottom: "Bottom" } as const;

/** @param used the address of all cells of the sheet */
export function paintLooks(
  target: Excel.Worksheet,
  { cells }: BookSheet,
  looks: readonly Look[],
  used: string,
): void {
  const base = target.getRange(used).format.font;
  base.name = BASE_FONT;
  base.size = BASE_SIZE_PT;
  for (const [index, zones] of zonesByLook(cells)) {
    const look = looks[index];
    if (!look) continue;
    for (const list of listsOf(zones)) paint(target.getRanges(list).format, look);
    if (look.edges) drawEdges(target, zones, look.edges);
  }
}

function paint(format: Excel.RangeFormat, look: Look): void {
  if (look.bold) format.font.bold = true;
  if (look.italic) format.font.italic = true;
  if (look.size !== undefined) format.font.size = look.size;
  if (look.color !== undefined) format.font.color = `#${look.color}`;
  if (look.fill !== undefined) format.fill.color = `#${look.fill}`;
  if (look.align) format.horizontalAlignment = ALIGNED[look.align];
  if (look.vertical) format.verticalAlignment = VERTICAL[look.vertical];
  if (look.wrap) format.wrapText = true;
  if (look.locked === false) format.protection.locked = false;
}

/** Two cells share the line between them. */
const heavier = (one: Edge | undefined, other: Edge | undefined): Edge | undefined =>
  one === "medium" || other === "medium" ? "medium" : (one ?? other);

/** Every cell has the look's edges, so the lines between cells of one rectangle are drawn too, where there are any. */
function drawEdges(target: Excel.Worksheet, zones: readonly Zone[], edges: NonNullable<Look["edges"]>): void {
  const tall = zones.filter(({ top, bottom }) => bottom > top);
  const wide = zones.filter(({ left, right }) => right > left);
  const draw = (some: readonly Zone[], border: Excel.BorderIndex, edge: Edge | undefined): void => {
    if (!edge) return;
    for (const list of listsOf(some)) {
      const line = target.getRanges(list).format.borders.getItem(border);
      line.style = "Continuous";
      line.weight = edge === "medium" ? "Medium" : "Thin";
      line.color = EDGE_COLOR;
    }
  };
  draw(zones, "EdgeTop" as Excel.BorderIndex, edges.top);
  draw(zones, "EdgeBottom" as Excel.BorderIndex, edges.bottom);
  draw(zones, "EdgeLeft" as Excel.BorderIndex, edges.left);
  draw(zones, "EdgeRight" as Excel.BorderIndex, edges.right);
  draw(tall, "InsideHorizontal" as Excel.BorderIndex, heavier(edges.top, edges.bottom));
  draw(wide, "InsideVertical" as Excel.BorderIndex, heavier(edges.left, edges.right));
}
