/**
 * Where the boxes of one piece of the diagram stand: a tree from left to right
 * whose ends, the outlets, stand under one another in the last column
 * (d3-hierarchy's cluster layout). Rows of one parent stand close; between
 * parents there is room for their boxes.
 */
import { cluster, hierarchy, type HierarchyPointNode } from "d3-hierarchy";
import type { Hanging, Item } from "./distribution";
import type { Columns } from "./diagramColumns";

export const ROW = 17;
export const LINE = 14;
/** Between a box's edge and its first and last line. */
export const PAD = 5;
const BETWEEN = 10;

/** Lines of text in each kind of box; an outlet is one row without a box. */
export const LINES = { head: 6, branch: 4, nothing: 1, outlet: 1 } as const satisfies Record<
  Item["kind"],
  number
>;
/** A head unit that is fed on the way says where. */
const linesIn = (item: Item): number => LINES[item.kind] + (item.kind === "head" && item.fedAt ? 1 : 0);
const heightOf = ({ item, children }: Hanging): number =>
  children.length === 0 ? ROW - 1 : linesIn(item) * LINE + 2 * PAD;
const BRANCH_HEIGHT = LINES.branch * LINE + 2 * PAD;

export interface Placed {
  readonly hanging: Hanging;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Index among the section's boxes of the one that feeds it; −1 for the first. */
  readonly feed: number;
}

export interface LaidOut {
  /** Each after the one that feeds it. */
  readonly boxes: readonly Placed[];
  readonly height: number;
}

type Point = HierarchyPointNode<Hanging>;

/** From the middle of a parent's box to its last row, when its rows are all it feeds. */
const halfSpan = (parent: Point | null): number =>
  parent?.children?.every(({ children }) => !children) ? ((parent.children.length - 1) / 2) * ROW : 0;

/** Pixels between two neighbours at the right end; boxes in any one column then never meet. */
function apart(one: Point, next: Point): number {
  if (one.parent === next.parent) return ROW;
  return Math.max(1.4 * ROW, BRANCH_HEIGHT + BETWEEN - halfSpan(one.parent) - halfSpan(next.parent));
}

/** @param section its children are not empty */
export function layOutSection(section: Hanging, columns: Columns): LaidOut {
  const root = cluster<Hanging>().nodeSize([1, 1]).separation(apart)(
    hierarchy(section, (one) => one.children),
  );
  const points = root.descendants();
  const index = new Map(points.map((point, at) => [point, at]));
  const tops = points.map((point) => point.x - heightOf(point.data) / 2);
  const top = Math.min(...tops);
  const boxes = points.map((point, at): Placed => {
    const height = heightOf(point.data);
    const { left, width } = point.children
      ? point.depth === 0
        ? columns.head
        : columns.branches[point.y - 1]!
      : columns.outlet;
    return {
      hanging: point.data,
      left,
      width,
      top: tops[at]! - top,
      height,
      feed: point.parent ? index.get(point.parent)! : -1,
    };
  });
  return { boxes, height: Math.max(...boxes.map((box) => box.top + box.height)) };
}
