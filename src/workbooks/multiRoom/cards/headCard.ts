/** The card of one head unit: supply and level, alignment, room for peaking by equal drops, the order of work. */
import type { Book, Look } from "../../book";
import { namedValue } from "../../named";
import { estimate } from "../names";
import { CARD, COLUMNS, RIGHT, type Card, type CardPart, type CardShape } from "./cardSheet";
import { dateIn, filledRows, jobMark, one, range, readerOf, text } from "./cardWords";

export const HEAD_CARD: CardShape = { rows: 23, columns: COLUMNS.length, across: 1, down: 2 };

/** The order of work; its reasons stand on Commissioning. */
const ORDER = [
  "☐ 1 Fit and bond: local code, licensed practice.",
  "☐ 2 Give the head unit its minimum volts before aiming.",
  "☐ 3 First slot; tilt on the second; then equal drops.",
  "☐ 4 While aiming, one meter or one receiver commands",
  "      the head unit; the others are off.",
  "☐ 5 Each run: lowest, highest frequency, and volts.",
  "☐ 6 What feeds the cable is off before a connector is",
  "      opened or made.",
] as const;

const CAUTIONS = [
  "Falls: safe footing, the right gear, a second person. Overhead lines: keep mast, ladder and cable well clear. Stop in wind and lightning.",
  "Bonding, lightning protection and mains: local code and licensed practice decide. Supply off before it is opened. Not a safety certificate.",
] as const;

/** Slots that fit side by side. */
const SLOTS_SHOWN = 2;

export function headCards(book: Book): Card[] {
  const { at, field } = readerOf(book, "heads");
  const tolerance = one(field(estimate.commissioningLimits.tolerance.name));
  const volts = one(field(estimate.commissioningLimits.volts_tolerance.name));
  const unit = text(field(estimate.site.unit.name));
  const sight = alignmentPart(book);
  return filledRows(book, estimate.heads.id.name).map((row): Card => {
    const word = (key: string): string => text(at(row, key));
    const left = (index: number, value: string, look: Look = CARD.label): CardPart => ({
      row: index,
      column: 0,
      value,
      look,
    });
    const predicted = (index: number, label: string, value: string, within: string): CardPart[] => [
      left(index, label),
      { row: index, column: 1, value, look: CARD.figure },
      { row: index, column: 2, value: within, look: CARD.figure },
      { row: index, column: 3, look: CARD.box },
    ];
    return [
      { row: 0, column: 0, value: `Head unit ${word("id")}`, look: CARD.title },
      { row: 0, column: COLUMNS.length - 1, value: jobMark(book), look: { ...CARD.quiet, align: "right" } },
      left(1, `${word("type")}; ${word("tuners")} tuners on ${word("bands")} user bands`),
      left(
        2,
        `${word("source")}${word("shares") === "" ? "" : ` shared with ${word("shares")},`} ${word("at") === "" ? "at the lower end of" : `at ${word("at")}; then`} ${one(at(row, "length"))} ${unit} ${word("cable")}`,
      ),
      { row: 3, column: 1, value: "predicted", look: CARD.head },
      { row: 3, column: 2, value: "within ±", look: CARD.head },
      { row: 3, column: 3, value: "measured", look: CARD.head },
      ...predicted(4, "volts at head unit", one(at(row, "volts")), volts),
      ...predicted(
        5,
        `dBµV at ${one(field(estimate.site.low.name), 0)} MHz`,
        range(at(row, "level_low_hot"), at(row, "level_low_cold")),
        tolerance,
      ),
      ...predicted(
        6,
        `dBµV at ${one(field(estimate.site.high.name), 0)} MHz`,
        range(at(row, "level_high_hot"), at(row, "level_high_cold")),
        tolerance,
      ),
      ...predicted(7, "amperes", one(at(row, "current"), 2), ""),
      left(
        8,
        `Minimum ${one(at(row, "least"))} V; predicted volts ${word("power") || "not found"}; supply at most ${one(at(row, "amps"), 2)} A.`,
      ),
      left(9, "Volts with the cable hot; levels at the lower end of its cable.", CARD.quiet),
      left(11, "Order of work", CARD.heading),
      ...ORDER.map((line, index) => left(12 + index, line)),
      ...sight,
      ...CAUTIONS.map((line, index) => left(21 + index, line, CARD.quiet)),
    ];
  });
}

/** The same for every head unit: the figures are the site's. */
function alignmentPart(book: Book): CardPart[] {
  const { at } = readerOf(book, "align");
  const slots = filledRows(book, estimate.align.slot.name);
  const pair = text(namedValue(book, estimate.pair.b.name)) !== "";
  const shown = slots.slice(0, SLOTS_SHOWN);
  const put = (row: number, column: number, value: string, look: Look = CARD.figure): CardPart => ({
    row,
    column: RIGHT + column,
    value,
    look,
  });
  const line = (row: number, label: string, key: string, aim: string | undefined): CardPart[] => [
    put(row, 0, label, CARD.label),
    ...shown.map((slot, index) => put(row, 1 + index, one(at(slot, key)))),
    ...(pair && aim !== undefined ? [put(row, 3, one(namedValue(book, aim)))] : []),
  ];
  const box = (row: number): CardPart[] =>
    [0, 1, 2, 3].map((column) => ({ row, column: RIGHT + column, look: CARD.box }));
  return [
    put(1, 0, "Alignment", CARD.heading),
    put(2, 0, "deg", CARD.quiet),
    ...shown.map((slot, index) => put(2, 1 + index, text(at(slot, "slot")), CARD.head)),
    ...(pair ? [put(2, 3, "aim", CARD.head)] : []),
    ...line(3, "azimuth, true", "azimuth", estimate.alignment.aim_azimuth.name),
    ...line(4, "bearing, compass", "compass", estimate.alignment.aim_compass.name),
    ...line(5, "beam elevation", "elevation", estimate.alignment.aim_elevation.name),
    ...line(6, "rim angle", "face", estimate.alignment.aim_face.name),
    ...line(7, "polarisation skew", "skew", undefined),
    ...(pair
      ? [
          put(8, 0, "tilt, clockwise", CARD.label),
          put(8, 3, one(namedValue(book, estimate.alignment.tilt.name))),
        ]
      : []),
    put(
      9,
      0,
      `Compass: declination ${one(namedValue(book, estimate.alignment.declination.name))} deg east on ${dateIn(book, estimate.alignment.date.name)}${slots.length > SLOTS_SHOWN ? "; more slots on Alignment" : ""}.`,
      CARD.quiet,
    ),
    put(10, 0, "Clockwise: for a person at the dish facing the slots.", CARD.quiet),
    put(11, 0, "Peaking by equal drops", CARD.heading),
    put(12, 0, "axis, step in deg", CARD.quiet),
    put(12, 1, "here, dB", CARD.head),
    put(12, 2, "plus", CARD.head),
    put(12, 3, "minus", CARD.head),
    ...[13, 14, 15, 16].flatMap(box),
    put(17, 0, "Read dBµV or C/N in dB, never percent. Same step each side.", CARD.quiet),
    put(18, 0, "Turn = step/2 × (plus − minus) / (2·here − plus − minus),", CARD.quiet),
    put(19, 0, "towards plus; the sheet Alignment also says how sure it is.", CARD.quiet),
  ];
}
