/**
 * Where the boxes of one piece of the diagram stand: a tree from left to right
 * whose ends, the outlets, stand under one another in the last column. Each box
 * and all that hangs on it have a band of the height for themselves, so that
 * nothing ever stands on anything else.
 */
import type { LengthUnit } from "../engine/signal/lengthUnits";
import type { Columns } from "./diagramColumns";
import { isBox, linesOf } from "./itemLines";
import type { Hanging, Item } from "./items";

export const ROW = 17;
export const LINE = 14;
/** Between a box's edge and its first and last line. */
export const PAD = 5;
/** Between what hangs on one box and what hangs on the next. */
const BETWEEN = 9;
/** Between two boxes above one another, where the line has room for a word. */
export const LINK = 18;

/** One of the boxes above one another. */
export interface Part {
  readonly item: Item;
  readonly top: number;
  readonly height: number;
}

export interface Placed {
  readonly hanging: Hanging;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Its boxes from above; the last is its own. */
  readonly parts: readonly Part[];
  /** Where the line that feeds it comes in, and where those to what it feeds go out. */
  readonly inlet: number;
  readonly outlet: number;
  /** Index among the section's boxes of the one that feeds it; −1 for the first. */
  readonly feed: number;
}

export interface LaidOut {
  /** Each after the one that feeds it. */
  readonly boxes: readonly Placed[];
  readonly height: number;
}

/** Of each of the boxes above one another; an end is one row. */
function heightsOf({ item, above = [], children, continued }: Hanging, unit: LengthUnit): number[] {
  const box = (lines: number): number => lines * LINE + 2 * PAD;
  if (children.length === 0) return [ROW - 1];
  return [
    ...above.map((one) => box(linesOf(one, unit).length)),
    box(continued ? 1 : linesOf(item, unit).length),
  ];
}

const heightOf = (hanging: Hanging, unit: LengthUnit): number => {
  const heights = heightsOf(hanging, unit);
  return heights.reduce((sum, height) => sum + height, (heights.length - 1) * LINK);
};

/** Rows of one box stand close. */
const gapBetween = (one: Hanging, next: Hanging): number => (isBox(one) || isBox(next) ? BETWEEN : 1);

/** How high the band of a box with all that hangs on it is. */
const bandOf = (hanging: Hanging, unit: LengthUnit): number =>
  Math.max(heightOf(hanging, unit), childrenHeight(hanging.children, unit));

const childrenHeight = (children: readonly Hanging[], unit: LengthUnit): number =>
  children.reduce(
    (sum, child, index) =>
      sum + bandOf(child, unit) + (index > 0 ? gapBetween(children[index - 1]!, child) : 0),
    0,
  );

/** @param section its children are not empty */
export function layOutSection(section: Hanging, columns: Columns, unit: LengthUnit): LaidOut {
  const boxes: Placed[] = [];
  const place = (hanging: Hanging, top: number, depth: number, feed: number): void => {
    const { children } = hanging;
    const heights = heightsOf(hanging, unit);
    const [own, below] = [heightOf(hanging, unit), childrenHeight(children, unit)];
    const band = Math.max(own, below);
    const { left, width } = !isBox(hanging)
      ? columns.outlet
      : depth === 0
        ? columns.head
        : columns.devices[depth - 1]!;
    const first = top + (band - own) / 2;
    let next = first;
    const parts = [...(hanging.above ?? []), hanging.item].map((item, index): Part => {
      const part = { item, top: next, height: heights[index]! };
      next += part.height + LINK;
      return part;
    });
    const middle = ({ top: from, height }: Part): number => from + height / 2;
    const at = boxes.length;
    boxes.push({
      hanging,
      left,
      width,
      top: first,
      height: own,
      parts,
      inlet: middle(parts[0]!),
      outlet: middle(parts.at(-1)!),
      feed,
    });
    let child = top + (band - below) / 2;
    children.forEach((one, index) => {
      if (index > 0) child += gapBetween(children[index - 1]!, one);
      place(one, child, depth + 1, at);
      child += bandOf(one, unit);
    });
  };
  place(section, 0, 0, -1);
  return { boxes, height: bandOf(section, unit) };
}
