/** The columns of the one-line diagram: the same in all its pieces, so that the eye can run down them. */
import type { Hanging } from "./distribution";
import { WIDEST } from "./ink";
import { MOST_LEVELS } from "./sections";

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
const ROW_COLUMNS = {
  name: { left: 0, width: 62 },
  room: { left: 66, width: 152 },
  lead: { left: 222, width: 122 },
  levels: { left: 348, width: 68 },
  word: { left: 428, width: 68 },
} as const;
const ROW_WIDTH = 502;

/** @returns columns with room for the deepest section, never wider in all than a page can show */
export function columnsFor(sections: readonly Hanging[]): Columns {
  const levels = Math.min(MOST_LEVELS, Math.max(0, ...sections.map((section) => levelsBelow(section))));
  const fixed = 2 * MARGIN + HEAD_WIDTH + ROW_WIDTH + (levels + 1) * GAP;
  const width = levels === 0 ? 0 : Math.min(BRANCH_WIDTH, Math.floor((WIDEST - fixed) / levels));
  const first = MARGIN + HEAD_WIDTH + GAP;
  const outlet = { left: first + levels * (width + GAP), width: ROW_WIDTH };
  return {
    head: { left: MARGIN, width: HEAD_WIDTH },
    branches: Array.from({ length: levels }, (_, at) => ({ left: first + at * (width + GAP), width })),
    outlet,
    row: ROW_COLUMNS,
    gap: GAP,
    width: outlet.left + ROW_WIDTH + MARGIN,
  };
}

/** Levels of boxes between a piece's first box and its ends. */
function levelsBelow({ children }: Hanging): number {
  return Math.max(0, ...children.map((child) => (child.children.length > 0 ? 1 + levelsBelow(child) : 0)));
}
