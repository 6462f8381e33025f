/** The right half of a card at a dish: where it points, and room for peaking by equal drops. */
import type { Book, Look } from "../../book";
import { namedColumn, namedValue } from "../../named";
import { peaks } from "../../peaking";
import { LINES_OF_A_DISH } from "../alignment";
import { estimate } from "../names";
import { boxAt, CARD, RIGHT, type CardPart } from "./cardSheet";
import { dateIn, filledRows, one, readerOf, text } from "./cardWords";

const { aimed, align, alignment } = estimate;
/** What is written side by side. */
const COLUMNS_OF_PEAKING = [[peaks.axis, peaks.step], [peaks.here], [peaks.plus], [peaks.minus]] as const;

/**
 * @param row of the dish among the dishes, counted from the first row of data
 * @param withRecord false where another card of the same dish has its record of peaking
 */
export function pointingPart(book: Book, row: number, withRecord = true): CardPart[] {
  const { at } = readerOf(book, "align");
  const aim = readerOf(book, "aimed").at;
  const dish = row + 1;
  const named = [aimed.a, aimed.b].map(({ key }) => text(aim(dish, key))).filter((slot) => slot !== "");
  const slots = named.flatMap((slot) => {
    const found = filledRows(book, align.slot.name).find((one) => text(at(one, "slot")) === slot);
    return found === undefined ? [] : [found];
  });
  const pair = named.length > 1;
  const put = (line: number, column: number, value: string, look: Look = CARD.figure): CardPart => ({
    row: line,
    column: RIGHT + column,
    value,
    look,
  });
  const line = (
    at_: number,
    label: string,
    key: "azimuth" | "compass" | "elevation" | "face" | "skew",
  ): CardPart[] => [
    put(at_, 0, label, CARD.label),
    ...slots.map((slot, index) => put(at_, 1 + index, one(at(slot, key)))),
    ...(pair && key !== "skew" ? [put(at_, 3, one(aim(dish, key)))] : []),
  ];
  return [
    put(1, 0, "Alignment", CARD.heading),
    put(2, 0, "deg", CARD.quiet),
    ...slots.map((slot, index) => put(2, 1 + index, text(at(slot, "slot")), CARD.head)),
    ...(pair ? [put(2, 3, "aim", CARD.head)] : []),
    ...line(3, "azimuth, true", "azimuth"),
    ...line(4, "bearing, compass", "compass"),
    ...line(5, "beam elevation", "elevation"),
    ...line(6, "rim angle", "face"),
    ...line(7, "polarisation skew", "skew"),
    ...(pair ? [put(8, 0, "tilt, clockwise", CARD.label), put(8, 3, one(aim(dish, "tilt")))] : []),
    put(
      9,
      0,
      `Compass: declination ${one(namedValue(book, alignment.declination.name))} deg east on ${dateIn(book, alignment.date.name)}.`,
      CARD.quiet,
    ),
    put(10, 0, "Clockwise: for a person at the dish facing the slots.", CARD.quiet),
    ...(withRecord ? peakingPart(book, row, put) : []),
  ];
}

/** Each dish has its own lines of the record on Alignment; where that is too short, there is nothing to write into. */
function peakingPart(
  book: Book,
  row: number,
  put: (line: number, column: number, value: string, look?: Look) => CardPart,
): CardPart[] {
  // Between its two thin rows.
  const prepared = Math.max(0, namedColumn(book, peaks.what.name).length - 2);
  const lines = Array.from({ length: LINES_OF_A_DISH }, (_, line) => row * LINES_OF_A_DISH + line).filter(
    (line) => line < prepared,
  );
  if (lines.length === 0)
    return [
      put(11, 0, "Peaking by equal drops", CARD.heading),
      put(12, 0, "Insert lines on Alignment and print again.", CARD.quiet),
    ];
  return [
    put(11, 0, "Peaking by equal drops", CARD.heading),
    put(12, 0, "axis, step in deg", CARD.quiet),
    ...["here, dB", "plus", "minus"].map((head, column) => put(12, 1 + column, head, CARD.head)),
    ...lines.flatMap((line, index) =>
      COLUMNS_OF_PEAKING.map((columns, column) => boxAt(13 + index, RIGHT + column, { columns, row: line })),
    ),
    put(17, 0, "Read dBµV or C/N in dB, never percent. Same step each side.", CARD.quiet),
    put(18, 0, "Turn = step/2 × (plus − minus) / (2·here − plus − minus),", CARD.quiet),
    put(
      19,
      0,
      `towards plus. Type into Alignment, lines ${lines[0]! + 1} to ${lines.at(-1)! + 1}.`,
      CARD.quiet,
    ),
  ];
}
