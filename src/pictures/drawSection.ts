/** One piece of the one-line diagram as SVG: boxes with their lines of text, rows of outlets, and the lines that feed them. */
import { line } from "d3-shape";
import type { LengthUnit } from "../engine/signal/lengthUnits";
import { FOR_GLYPH, INDENT, type Columns } from "./diagramColumns";
import { glyph, GLYPH, type Shape } from "./glyphs";
import { ALERT, ALERT_FILL, BOX_FILL, FAILING_LINE, INK, PLAIN_LINE, QUIET, TEXT } from "./ink";
import { isBox, linesOf, rowLead, spanText, type Usual } from "./itemLines";
import type { HeadUnit, Item } from "./items";
import { LINE, LINK, PAD, type LaidOut, type Part, type Placed } from "./layOutSection";
import { element, escaped, group, short, textAt } from "./svg";
import { textWidth } from "./textWidth";

/** From the middle of a line of text down to its base line. */
const BASE = 0.36 * TEXT;
const INSET = 7;
/** Of a word on a line. */
const SMALL = 9;
/** How a through port is called on a line. */
const THROUGH = "thr";

const path = line().digits(2);

const fails = ({ troubles }: Item): boolean => troubles.length > 0;
const lineOf = (failing: boolean) => ({ fill: "none", ...(failing ? FAILING_LINE : PLAIN_LINE) });

/** What a piece is drawn with. */
export interface Drawn {
  readonly columns: Columns;
  readonly unit: LengthUnit;
  readonly usual: Usual;
}

/** @param top where the piece begins on the picture */
export function drawSection({ boxes }: LaidOut, drawn: Drawn, top: number): string {
  return group(
    { transform: `translate(0 ${short(top)})` },
    ...boxes.flatMap((box, index) => {
      const from = boxes[box.feed];
      // What nothing feeds has no line; what is looped through hangs on the row above it.
      if (!from || from.hanging.item.kind === "nothing") return [];
      const before = boxes[index - 1];
      return before && isLooped(before.hanging.item, box.hanging.item)
        ? [loopLine(before, box)]
        : [feedLine(from, box, drawn.columns.gap)];
    }),
    ...boxes.map((box) => (isBox(box.hanging) ? drawBoxes(box, drawn.unit) : drawRow(box, drawn))),
  );
}

/** One stands in the row below the other and hangs on it. */
const isLooped = (one: Item, next: Item): boolean =>
  one.kind === "outlet" && next.kind === "outlet" && one.loops && next.from === one.name;

/** From shape to shape. */
function loopLine(from: Placed, to: Placed): string {
  const x = to.left + FOR_GLYPH / 2;
  return element("path", {
    d: `M${short(x)} ${short(from.outlet + GLYPH / 2 - 1)}V${short(to.inlet - GLYPH / 2 + 1)}`,
    ...lineOf(fails(to.hanging.item)),
  });
}

/** Straight out of the feeding box, down or up in the gap behind it, and straight on, with the port that it is on. */
function feedLine(from: Placed, to: Placed, gap: number): string {
  const [x1, x2] = [from.left + from.width, to.left];
  const turn = x1 + gap / 2;
  const { item, above } = to.hanging;
  const first = above?.[0] ?? item;
  const d = path([
    [x1, from.outlet],
    [turn, from.outlet],
    [turn, to.inlet],
    [x2, to.inlet],
  ]);
  return (
    element("path", { d: d!, ...lineOf(fails(first)) }) +
    textAt(x2 - 2, to.inlet - 2, first.port === "through" ? THROUGH : first.port, {
      size: SMALL,
      color: QUIET,
      anchor: "end",
    })
  );
}

/** The boxes above one another, with the lines between them. */
function drawBoxes({ hanging, left, width, parts }: Placed, unit: LengthUnit): string {
  const { item, above = [], continued } = hanging;
  const own = parts.at(-1)!;
  const several = item.kind === "head" && above.length > 1;
  return [
    ...parts.slice(0, -1).map((part, index) => {
      const next = several ? own : parts[index + 1]!;
      const cables = item.kind === "head" ? cablesFrom(item, index) : "";
      return linkLine(part, next, left, several && index < above.length - 1) + slash(part, left, cables);
    }),
    ...parts.map((part) =>
      // What comes from several stands a little in, clear of the lines from those above.
      several && part !== own
        ? drawBox(part, { left: left + INDENT, width: width - INDENT }, unit, false)
        : drawBox(part, { left, width }, unit, part === own && continued === true),
    ),
  ].join("");
}

/** Where the line between two boxes above one another runs, from their left edge. */
const LINK_AT = 24;
const ASIDE = 5;

function linkLine(from: Part, to: Part, left: number, aside: boolean): string {
  const bottom = from.top + from.height;
  const [x, y] = [left + LINK_AT, bottom + LINK / 2 + 2];
  const d = aside
    ? `M${x} ${short(bottom)}V${short(y)}H${left + ASIDE}V${short(to.top)}`
    : `M${x} ${short(bottom)}V${short(to.top)}`;
  return element("path", { d, ...lineOf(fails(to.item)) });
}

/** A stroke over a line of several cables, with their number. */
function slash(from: Part, left: number, cables: string): string {
  if (cables === "") return "";
  const [x, y] = [left + LINK_AT, from.top + from.height + LINK / 2 - 2];
  return (
    element("path", { d: `M${x - 4} ${short(y + 3)}L${x + 4} ${short(y - 3)}`, stroke: INK }) +
    textAt(x + 8, y + SMALL * 0.36 + 1, cables, { size: SMALL })
  );
}

function cablesFrom({ inlets }: HeadUnit, index: number): string {
  const numbers = inlets[index]!.feeders.map(({ cables }) => cables);
  return numbers.length === 0
    ? ""
    : numbers.includes(undefined)
      ? "?"
      : String(numbers.reduce<number>((sum, cables) => sum + cables!, 0));
}

function shapeOf(item: Item): Shape | undefined {
  switch (item.kind) {
    case "dish":
      return "dish";
    case "head":
      return item.isSwitch ? "switch" : "head unit";
    case "device":
      return item.shape;
    case "outlet":
      return item.ends ? "last loop-through outlet" : item.loops ? "loop-through outlet" : "outlet";
    default:
      return undefined;
  }
}

function drawBox(
  { item, top, height }: Part,
  { left, width }: { readonly left: number; readonly width: number },
  unit: LengthUnit,
  continued: boolean,
): string {
  const failing = fails(item) && !continued;
  const shape = shapeOf(item);
  const indent = INSET + (shape ? FOR_GLYPH : 0);
  const inside = width - INSET - indent;
  const nameWidth = textWidth(`${item.name} `, TEXT, true);
  const [beside, ...lines] = continued ? [{ text: "continued" }] : linesOf(item, unit);
  const base = (row: number): number => top + PAD + (row + 0.5) * LINE + BASE;
  return group(
    {},
    ...(item.sentence && !continued ? [element("title", {}, escaped(item.sentence))] : []),
    element("rect", {
      x: left,
      y: top,
      width,
      height,
      fill: failing ? ALERT_FILL : BOX_FILL,
      ...(failing ? FAILING_LINE : PLAIN_LINE),
    }),
    shape ? glyph(shape, left + INSET, top + PAD + (LINE - GLYPH) / 2) : "",
    textAt(left + indent, base(0), item.name, { bold: true, width: inside }),
    nameWidth < inside - 2 * TEXT
      ? textAt(left + indent + nameWidth, base(0), beside!.text, {
          bold: failing,
          color: failing ? ALERT : QUIET,
          width: inside - nameWidth,
        })
      : "",
    ...lines.flatMap(({ text, shape: before }, row) => {
      const from = left + INSET + (before ? FOR_GLYPH : 0);
      return [
        before ? glyph(before, left + INSET, top + PAD + (row + 1) * LINE + (LINE - GLYPH) / 2) : "",
        textAt(from, base(row + 1), text, { width: left + width - INSET - from }),
      ];
    }),
  );
}

function drawRow(
  { hanging: { item }, left, top, width, height }: Placed,
  { columns, unit, usual }: Drawn,
): string {
  const { row } = columns;
  const failing = fails(item);
  const y = top + height / 2 + BASE;
  const glyphTop = top + (height - GLYPH) / 2;
  const style = { bold: failing, color: failing ? ALERT : undefined };
  const cell = (column: { left: number; width: number }, text: string, more = {}): string =>
    textAt(left + column.left, y, text, { width: column.width, ...more });
  if (item.kind === "nothing") return cell({ left: 5, width }, item.name, { color: QUIET });
  const shape = shapeOf(item);
  const levels = item.levels ? spanText(item.levels) : item.kind === "dish" ? "" : "?";
  const isOutlet = item.kind === "outlet";
  const receiver = isOutlet ? receiverOf(item.receiver) : undefined;
  return group(
    {},
    ...(item.sentence ? [element("title", {}, escaped(item.sentence))] : []),
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
    shape ? glyph(shape, left + (FOR_GLYPH - GLYPH) / 2, glyphTop) : "",
    cell(row.name, item.name, { bold: true }),
    cell(row.room, isOutlet ? item.room : item.kind === "device" ? item.part : ""),
    cell(row.lead, rowLead(item, unit, usual)),
    ...(receiver
      ? [
          glyph(receiver.shape, left + row.receiver.left, glyphTop),
          cell(
            { left: row.receiver.left + FOR_GLYPH, width: row.receiver.width - FOR_GLYPH },
            receiver.words,
            receiver.shape === "spare" ? { color: QUIET } : {},
          ),
        ]
      : []),
    textAt(left + row.levels.left + row.levels.width, y, levels, { ...style, anchor: "end" }),
    cell(row.word, item.troubles[0] ?? (isOutlet ? item.verdict : ""), style),
  );
}

const receiverOf = (words: string): { readonly shape: Shape; readonly words: string } =>
  words === "" ? { shape: "spare", words: "spare" } : { shape: "receiver", words };
