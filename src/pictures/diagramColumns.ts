/** The columns of the one-line diagram: the same in all its pieces, so that the eye can run down them. */
import type { LengthUnit } from "../engine/signal/lengthUnits";
import { isBox, linesOf } from "./itemLines";
import type { Hanging, Item } from "./items";
import { TEXT, WIDEST } from "./ink";
import { MOST_LEVELS } from "./sections";
import { textWidth } from "./textWidth";

interface Column {
  readonly left: number;
  readonly width: number;
}

export interface Columns {
  readonly head: Column;
  readonly devices: readonly Column[];
  readonly outlet: Column;
  /** Within the outlet's row, from its left edge. */
  readonly row: {
    readonly name: Column;
    readonly room: Column;
    readonly lead: Column;
    readonly receiver: Column;
    readonly levels: Column;
    readonly word: Column;
  };
  /** Between a box and the next column, where the lines turn. */
  readonly gap: number;
  readonly width: number;
}

const MARGIN = 10;
const GAP = 30;
/** From the least to the most. */
const HEAD_WIDTH = [140, 230] as const;
const DEVICE_WIDTH = [110, 190] as const;
/** What a box keeps free beside its text. */
const SIDES = 16;
/** Where several feed one head unit, their boxes stand so much in, clear of the lines from those above. */
export const INDENT = 12;
/** Of an outlet's row: the least and what is between two of its columns. */
const NAME_WIDTH = 36;
const LEAD_WIDTH = 72;
const ROOM_WIDTH = 80;
const RECEIVER_WIDTH = 100;
const LEVELS_WIDTH = 66;
const WORD_WIDTH = 40;
const APART = 6;
/** Before a name or a receiver, where its shape stands. */
export const FOR_GLYPH = 17;

/** What each of the columns that grow would like to have, in pixels. */
interface Wishes {
  readonly name: number;
  readonly room: number;
  readonly lead: number;
  readonly receiver: number;
  readonly word: number;
}

function rowColumns({
  name,
  room,
  lead,
  receiver,
  word,
}: Wishes): Columns["row"] & { readonly width: number } {
  let left = FOR_GLYPH;
  const column = (width: number): Column => {
    const found = { left, width };
    left += width + APART;
    return found;
  };
  return {
    name: column(name),
    room: column(room),
    lead: column(lead),
    receiver: column(receiver),
    levels: column(LEVELS_WIDTH),
    word: column(word),
    width: left,
  };
}

/**
 * @param leadOf what an outlet's row says of its cable
 * @returns columns with room for the deepest section, never wider in all than a page can show
 */
export function columnsFor(
  sections: readonly Hanging[],
  unit: LengthUnit,
  leadOf: (one: Hanging) => string,
): Columns {
  const levels = Math.min(MOST_LEVELS, Math.max(0, ...sections.map((section) => levelsBelow(section))));
  const head = within(HEAD_WIDTH, longestInBoxes(sections, 0, unit));
  const device = within(DEVICE_WIDTH, longestInBoxes(sections, 1, unit));
  const least = {
    name: NAME_WIDTH,
    room: ROOM_WIDTH,
    lead: LEAD_WIDTH,
    receiver: RECEIVER_WIDTH,
    word: WORD_WIDTH,
  };
  const fixed = 2 * MARGIN + head + rowColumns(least).width + (levels + 1) * GAP;
  const width = levels === 0 ? 0 : Math.min(device, Math.floor((WIDEST - fixed) / levels));
  // Long texts take what the boxes leave, each in turn.
  let left = WIDEST - fixed - levels * width;
  const grown = (of: (one: Hanging) => string, from: number, bold = false): number => {
    const more = Math.max(0, Math.min(Math.ceil(longest(sections, of, bold)) - from, left));
    left -= more;
    return from + more;
  };
  const row = rowColumns({
    name: grown(({ item }) => (item.kind === "nothing" ? "" : item.name), NAME_WIDTH, true),
    word: grown(({ item }) => item.troubles[0] ?? "ok", WORD_WIDTH, true),
    room: grown(({ item }) => (item.kind === "outlet" ? item.room : ""), ROOM_WIDTH),
    receiver:
      grown(({ item }) => (item.kind === "outlet" ? item.receiver : ""), RECEIVER_WIDTH - FOR_GLYPH) +
      FOR_GLYPH,
    lead: grown(leadOf, LEAD_WIDTH),
  });
  const first = MARGIN + head + GAP;
  const outlet = { left: first + levels * (width + GAP), width: row.width };
  return {
    head: { left: MARGIN, width: head },
    devices: Array.from({ length: levels }, (_, at) => ({ left: first + at * (width + GAP), width })),
    outlet,
    row,
    gap: GAP,
    width: outlet.left + outlet.width + MARGIN,
  };
}

const within = ([least, most]: readonly [number, number], wish: number): number =>
  Math.ceil(Math.max(least, Math.min(most, wish)));

/** How wide the longest line comes out in the first boxes of all pieces, or in those behind them, in pixels. */
function longestInBoxes(all: readonly Hanging[], depth: 0 | 1, unit: LengthUnit): number {
  const own = (item: Item): number => {
    const [beside, ...lines] = linesOf(item, unit);
    return Math.max(
      FOR_GLYPH +
        textWidth(`${item.name} `, TEXT, true) +
        textWidth(beside.text, TEXT, item.troubles.length > 0),
      ...lines.map(({ text, shape }) => textWidth(text, TEXT) + (shape ? FOR_GLYPH : 0)),
    );
  };
  return all.reduce((most, one) => {
    if (!isBox(one)) return most;
    if (depth === 1) return Math.max(most, longestBehind(one, own));
    // Boxes side by side stand a little in.
    return Math.max(most, ...[...(one.above ?? []), one.item].map((item) => own(item) + SIDES + INDENT));
  }, 0);
}

const longestBehind = ({ children }: Hanging, own: (item: Item) => number): number =>
  children.reduce(
    (most, child) =>
      isBox(child)
        ? Math.max(
            most,
            ...[...(child.above ?? []), child.item].map((item) => own(item) + SIDES),
            longestBehind(child, own),
          )
        : most,
    0,
  );

/** How wide the longest text of the ends comes out, in pixels. */
function longest(sections: readonly Hanging[], of: (one: Hanging) => string, bold: boolean): number {
  return sections.reduce(
    (most, one) =>
      Math.max(most, isBox(one) ? longest(one.children, of, bold) : textWidth(of(one), TEXT, bold)),
    0,
  );
}

/** Levels of boxes between a piece's first box and its ends. */
function levelsBelow({ children }: Hanging): number {
  return Math.max(0, ...children.map((child) => (isBox(child) ? 1 + levelsBelow(child) : 0)));
}
