/** One piece of the one-line diagram as SVG: boxes with their lines of text, rows of outlets, and the lines that feed them. */
import { line } from "d3-shape";
import type { LengthUnit } from "../engine/signal/lengthUnits";
import { figure } from "./columns";
import type { Columns } from "./diagramColumns";
import type { Item, Span } from "./distribution";
import { ALERT, ALERT_FILL, BOX_FILL, FAILING_LINE, PLAIN_LINE, QUIET, TEXT } from "./ink";
import { LINE, PAD, type LaidOut, type Placed } from "./layOutSection";
import { element, group, short, textAt } from "./svg";
import { textWidth } from "./textWidth";

/** From the middle of a line of text down to its base line. */
const BASE = 0.36 * TEXT;
const INSET = 7;

const path = line().digits(2);

export const spanText = (levels: Span | undefined): string =>
  levels ? `${levels.least.toFixed(1)}–${levels.most.toFixed(1)}` : "?";

const leadText = ({ cable, length }: Item, unit: LengthUnit): string =>
  [cable, `${figure(length)} ${unit}`].filter(Boolean).join(", ");

const fails = ({ troubles }: Item): boolean => troubles.length > 0;

/** @param top where the piece begins on the picture */
export function drawSection({ boxes }: LaidOut, columns: Columns, unit: LengthUnit, top: number): string {
  return group(
    { transform: `translate(0 ${short(top)})` },
    ...boxes.flatMap((box) => {
      const from = boxes[box.feed];
      // What nothing feeds has no line.
      return from && from.hanging.item.kind !== "nothing" ? [feedLine(from, box, columns.gap)] : [];
    }),
    ...boxes.map((box) =>
      box.hanging.children.length > 0 ? drawBox(box, unit) : drawRow(box, columns, unit),
    ),
  );
}

/** Straight out of the feeding box, down or up in the gap behind it, and straight on. */
function feedLine(from: Placed, to: Placed, gap: number): string {
  const [y1, y2] = [from.top + from.height / 2, to.top + to.height / 2];
  const [x1, x2] = [from.left + from.width, to.left];
  const turn = x1 + gap / 2;
  const d = path([
    [x1, y1],
    [turn, y1],
    [turn, y2],
    [x2, y2],
  ]);
  return element("path", { d: d!, fill: "none", ...(fails(to.hanging.item) ? FAILING_LINE : PLAIN_LINE) });
}

function drawBox({ hanging, left, top, width, height }: Placed, unit: LengthUnit): string {
  const { item, continued } = hanging;
  const failing = fails(item) && !continued;
  const inside = width - 2 * INSET;
  const nameWidth = textWidth(`${item.name} `, TEXT, true);
  const [words, ...lines] = continued ? ["continued"] : linesOf(item, unit);
  const base = (row: number): number => top + PAD + (row + 0.5) * LINE + BASE;
  return group(
    {},
    element("rect", {
      x: left,
      y: top,
      width,
      height,
      fill: failing ? ALERT_FILL : BOX_FILL,
      ...(failing ? FAILING_LINE : PLAIN_LINE),
    }),
    textAt(left + INSET, base(0), item.name, { bold: true, width: inside }),
    nameWidth < inside - 2 * TEXT
      ? textAt(left + INSET + nameWidth, base(0), words!, {
          bold: failing,
          color: failing ? ALERT : QUIET,
          width: inside - nameWidth,
        })
      : "",
    ...lines.map((text, row) => textAt(left + INSET, base(row + 1), text, { width: inside })),
  );
}

/** What stands beside the name, then the lines below it. */
function linesOf(item: Item, unit: LengthUnit): string[] {
  const troubles = item.troubles.join(", ");
  switch (item.kind) {
    case "head":
      return [
        troubles,
        item.type,
        leadText(item, unit),
        ...(item.fedAt ? [`fed at ${item.fedAt}`] : []),
        item.volts,
        item.tuners,
        `${spanText(item.levels)} dBµV at its end`,
      ];
    case "branch":
      return [
        troubles || item.device,
        troubles ? item.device : leadText(item, unit),
        `${spanText(item.levels)} dBµV a port`,
        item.power,
      ];
    default:
      return [troubles];
  }
}

function drawRow(
  { hanging: { item }, left, top, width, height }: Placed,
  { row }: Columns,
  unit: LengthUnit,
): string {
  const failing = fails(item);
  const y = top + height / 2 + BASE;
  const style = { bold: failing, color: failing ? ALERT : undefined };
  const cell = (column: { left: number; width: number }, text: string, more = {}): string =>
    textAt(left + 5 + column.left, y, text, { width: column.width, ...more });
  if (item.kind === "nothing") return cell({ left: 0, width }, item.name, { color: QUIET });
  const [what, word] =
    item.kind === "outlet"
      ? [item.room, item.verdict]
      : item.kind === "branch"
        ? [item.device, ""]
        : ["", ""];
  const levels = item.levels ? spanText(item.levels) : "?";
  return group(
    {},
    failing
      ? element("rect", {
          x: left,
          y: top,
          width,
          height,
          fill: ALERT_FILL,
          ...FAILING_LINE,
          "stroke-width": 1.5,
        })
      : "",
    cell(row.name, item.name, { bold: true }),
    cell(row.room, what),
    cell(row.lead, leadText(item, unit)),
    textAt(left + 5 + row.levels.left + row.levels.width, y, levels, { ...style, anchor: "end" }),
    cell(row.word, item.troubles[0] ?? word, style),
  );
}
