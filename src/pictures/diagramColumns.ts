/** The columns of the one-line diagram: the same in all its pieces, so that the eye can run down them. */
import type { Hanging } from "./distribution";
import { TEXT, WIDEST } from "./ink";
import { MOST_LEVELS } from "./sections";
import { textWidth } from "./textWidth";

interface Column {
  readonly left: number;
  readonly width: number;
}

export interface Columns {
  readonly head: Column;
  readonly branches: readonly Column[];
  readonly outlet: Column;
  /** Within the outlet's row, from its left edge. */
  readonly row: {
    readonly name: Column;
    readonly room: Column;
    readonly lead: Column;
    readonly levels: Column;
    readonly word: Column;
  };
  /** Between a box and the next column, where the lines turn. */
  readonly gap: number;
  readonly width: number;
}

const MARGIN = 10;
const GAP = 26;
const HEAD_WIDTH = 196;
const BRANCH_WIDTH = 172;
const ROOM_WIDTH = 152;
const ROW_WIDTH = 502;

/** @param more than the usual width for what names the room */
const rowColumns = (more: number): Columns["row"] => ({
  name: { left: 0, width: 62 },
  room: { left: 66, width: ROOM_WIDTH + more },
  lead: { left: 222 + more, width: 122 },
  levels: { left: 348 + more, width: 68 },
  word: { left: 428 + more, width: 68 },
});

/** @returns columns with room for the deepest section, never wider in all than a page can show */
export function columnsFor(sections: readonly Hanging[]): Columns {
  const levels = Math.min(MOST_LEVELS, Math.max(0, ...sections.map((section) => levelsBelow(section))));
  const fixed = 2 * MARGIN + HEAD_WIDTH + ROW_WIDTH + (levels + 1) * GAP;
  const width = levels === 0 ? 0 : Math.min(BRANCH_WIDTH, Math.floor((WIDEST - fixed) / levels));
  // Long names of rooms take what the boxes leave.
  const longest = Math.ceil(Math.max(0, ...sections.map((section) => longestRoom(section))));
  const more = Math.max(0, Math.min(longest - ROOM_WIDTH, WIDEST - fixed - levels * width));
  const first = MARGIN + HEAD_WIDTH + GAP;
  const outlet = { left: first + levels * (width + GAP), width: ROW_WIDTH + more };
  return {
    head: { left: MARGIN, width: HEAD_WIDTH },
    branches: Array.from({ length: levels }, (_, at) => ({ left: first + at * (width + GAP), width })),
    outlet,
    row: rowColumns(more),
    gap: GAP,
    width: outlet.left + outlet.width + MARGIN,
  };
}

/** How wide the longest name of a room comes out, in pixels. */
function longestRoom({ item, children }: Hanging): number {
  const own = item.kind === "outlet" ? textWidth(item.room, TEXT) : 0;
  return Math.max(own, ...children.map((child) => longestRoom(child)));
}

/** Levels of boxes between a piece's first box and its ends. */
function levelsBelow({ children }: Hanging): number {
  return Math.max(0, ...children.map((child) => (child.children.length > 0 ? 1 + levelsBelow(child) : 0)));
}
